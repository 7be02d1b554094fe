// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/document/record_edits.h"

#include "tests/ui/support.h"

namespace layshaft::test {
namespace {

class RecordEditsTest : public testing::Test {
 protected:
  const Wear& wear() const { return document_.profile().wear.value(); }
  static WearMeasurement measured(const char* date, std::vector<double> lengthsMm) {
    WearMeasurement entry;
    entry.date = Date::parse(date).value();
    entry.at = 4.0;
    entry.lengthsMm = std::move(lengthsMm);
    return entry;
  }

  ui::Document document_{bike()};
  ui::RecordEdits edits_{document_};
};

TEST_F(RecordEditsTest, EachMeasurementIsAStepOfItsOwn) {
  const Profile before = document_.profile();
  EXPECT_EQ(edits_.addMeasurement(measured("2026-03-01", {318.2})), std::nullopt);
  EXPECT_EQ(edits_.addMeasurement(measured("2026-03-08", {318.6, 318.9})), std::nullopt);
  ASSERT_EQ(wear().measurements.size(), 2U);
  EXPECT_EQ(wear().measurements[1].lengthsMm.back(), 318.9);
  document_.undoStack().undo();
  EXPECT_EQ(wear().measurements.size(), 1U);
  document_.undoStack().undo();
  EXPECT_TRUE(same(document_.profile(), before));
  document_.undoStack().redo();
  EXPECT_EQ(wear().measurements.size(), 1U);
}

TEST_F(RecordEditsTest, WhatAFileCannotHoldIsRefused) {
  const auto far = edits_.addMeasurement(measured("2026-03-01", {318.2, 4000.0}));
  ASSERT_TRUE(far);
  EXPECT_EQ(far->path, "wear.measurements[0].lengths_mm[1]");
  WearMeasurement many = measured("2026-03-01", std::vector<double>(51, 318.0));
  EXPECT_EQ(edits_.addMeasurement(many)->kind, Problem::Kind::WrongCount);
  many.lengthsMm.resize(50);
  many.pitches = 0;
  EXPECT_EQ(edits_.addMeasurement(many)->path, "wear.measurements[0].pitches");
  EXPECT_FALSE(document_.profile().wear);
}

TEST_F(RecordEditsTest, WhatIsStruckThroughStaysWithItsFirstReason) {
  edits_.addMeasurement(measured("2026-03-01", {330.0}));
  edits_.strike({RecordKind::Measurement, 0},
                {.date = Date::parse("2026-03-02").value(), .reason = "counted pins"});
  edits_.strike({RecordKind::Measurement, 0}, {.date = Date::parse("2026-03-03").value(), .reason = "again"});
  edits_.strike({RecordKind::Measurement, 7}, {});
  ASSERT_EQ(wear().measurements.size(), 1U);
  EXPECT_EQ(wear().measurements[0].struck->reason, "counted pins");
  EXPECT_EQ(wear().measurements[0].lengthsMm.front(), 330.0);
  document_.undoStack().undo();
  EXPECT_FALSE(wear().measurements[0].struck);
}

Date day(const char* text) {
  return Date::parse(text).value();
}

Service served(const char* date, double at, bool newChain) {
  Service entry;
  entry.date = day(date);
  entry.at = at;
  if (newChain) entry.newChain = true;
  entry.parts = "chain and sprockets";
  return entry;
}

TEST_F(RecordEditsTest, AServiceWithANewChainSaysWhereItWasFitted) {
  EXPECT_EQ(edits_.addService(served("2026-03-01", 10.0, true)), std::nullopt);
  EXPECT_EQ(wear().chainFittedAt, 10.0);
  edits_.addService(served("2026-04-01", 20.0, false));
  EXPECT_EQ(wear().chainFittedAt, 10.0);
  edits_.addService(served("2026-05-01", 30.0, true));
  EXPECT_EQ(wear().chainFittedAt, 30.0);
  // One that is written down late is older than the chain on the bike.
  edits_.addService(served("2026-04-15", 25.0, true));
  EXPECT_EQ(wear().chainFittedAt, 30.0);
  edits_.strike({RecordKind::Service, 2}, {.date = day("2026-05-02"), .reason = "other bike", .extras = {}});
  EXPECT_EQ(wear().chainFittedAt, 25.0);
  EXPECT_EQ(document_.profile().records->services.size(), 4U);
  document_.undoStack().undo();
  EXPECT_EQ(wear().chainFittedAt, 30.0);
  EXPECT_FALSE(document_.profile().records->services[2].struck);
}

TEST_F(RecordEditsTest, ANewChainIsNotAsLongAsTheOldOneWasTyped) {
  const auto elongation = [&] { return document_.profile().stock.options.chainElongationPercent; };
  document_.edit({.field = "typed", .title = "typed", .shown = {}},
                 [](Profile& profile) { profile.stock.options.chainElongationPercent = 0.6; });
  edits_.addService(served("2026-04-01", 20.0, false));
  EXPECT_EQ(elongation(), 0.6);
  edits_.addService(served("2026-05-01", 30.0, true));
  EXPECT_EQ(elongation(), std::nullopt);
  document_.undoStack().undo();
  EXPECT_EQ(elongation(), 0.6);
}

TEST_F(RecordEditsTest, WhereAChainWasFittedByHandStaysUntilAServiceSaysOtherwise) {
  document_.edit({.field = "typed", .title = "typed", .shown = {}}, [](Profile& profile) {
    profile.wear.emplace();
    profile.wear->chainFittedAt = 7.0;
  });
  edits_.addService(served("2026-04-01", 20.0, false));
  EXPECT_EQ(wear().chainFittedAt, 7.0);
}

TEST_F(RecordEditsTest, ANoteOfMoreThanAFileHoldsIsRefused) {
  TrackNote note;
  note.date = day("2026-05-12");
  note.rating = 11;
  EXPECT_EQ(edits_.addTrackNote(note)->path, "records.track_notes[0].rating");
  EXPECT_FALSE(document_.profile().records);
}

TEST_F(RecordEditsTest, TheSetupOfANoteBecomesTheProposalWhateverStockIsByThen) {
  TrackNote note;
  note.date = day("2026-05-12");
  note.setup = SetupChange{.frontTeeth = front(15), .rearTeeth = rear(45)};
  edits_.addTrackNote(note);
  document_.edit({.field = "stock", .title = "stock", .shown = {}},
                 [](Profile& profile) { profile.stock.rearTeeth = rear(45); });
  EXPECT_EQ(edits_.proposeSetupOf(0), std::nullopt);
  EXPECT_EQ(document_.profile().proposed.frontTeeth, front(15));
  EXPECT_FALSE(document_.profile().proposed.rearTeeth);  // stock has them
  EXPECT_EQ(proposedSetup(document_).rearTeeth, rear(45));
  document_.undoStack().undo();
  EXPECT_TRUE(document_.profile().proposed.changesNothing());
}

TEST_F(RecordEditsTest, WhatWasReadIsOneStep) {
  RecordEntries entries;
  entries.services = {served("2026-03-01", 10.0, true), served("2026-04-01", 20.0, false)};
  entries.trackNotes.resize(1);
  entries.measurements = {measured("2026-03-20", {318.2})};
  const Profile before = document_.profile();
  EXPECT_EQ(edits_.add(entries), std::nullopt);
  EXPECT_EQ(document_.profile().records->services.size(), 2U);
  EXPECT_EQ(wear().measurements.size(), 1U);
  EXPECT_EQ(wear().chainFittedAt, 10.0);
  document_.undoStack().undo();
  EXPECT_TRUE(same(document_.profile(), before));
}

TEST_F(RecordEditsTest, SlackIsFromLowToHigh) {
  EXPECT_EQ(edits_.setSlack(LengthRange{25, 35}), std::nullopt);
  EXPECT_EQ(wear().slackMm, (LengthRange{25, 35}));
  EXPECT_EQ(edits_.setSlack(LengthRange{35, 25})->path, "wear.slack_mm[1]");
  EXPECT_EQ(edits_.setSlack(LengthRange{-1, 25})->path, "wear.slack_mm[0]");
  EXPECT_EQ(wear().slackMm, (LengthRange{25, 35}));
  edits_.setSlack(std::nullopt);
  EXPECT_FALSE(wear().slackMm);
}

}  // namespace
}  // namespace layshaft::test
