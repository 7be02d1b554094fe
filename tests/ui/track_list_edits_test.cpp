// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/document/track_list_edits.h"

#include "core/bike/track_rules.h"
#include "core/limits.h"
#include "tests/ui/support.h"
#include "ui/document/track_edits.h"

namespace layshaft::test {
namespace {

class TrackListEditsTest : public testing::Test {
 protected:
  static Track named(const std::string& name) {
    Track track;
    track.name = name;
    track.segments = {{.name = "Straight", .lengthM = 300.0}};
    return track;
  }
  std::vector<std::string> names() const {
    std::vector<std::string> names;
    for (const Track& track : document_.profile().tracks) names.push_back(track.name);
    return names;
  }
  QString undoText() { return document_.undoStack().undoText(); }
  /// Undo takes back exactly one step, and redo brings it again.
  void expectOneStep(const Profile& before) {
    const Profile after = document_.profile();
    document_.undoStack().undo();
    EXPECT_TRUE(same(document_.profile(), before));
    document_.undoStack().redo();
    EXPECT_TRUE(same(document_.profile(), after));
  }

  ui::Document document_{bike()};
  ui::TrackListEdits edits_{document_};
};

TEST_F(TrackListEditsTest, TracksAreAddedUnderNamesOfTheirOwn) {
  const Profile before = document_.profile();
  EXPECT_EQ(edits_.add(named("Ring")), std::nullopt);
  EXPECT_EQ(undoText(), "new track Ring");
  expectOneStep(before);
  const Profile one = document_.profile();
  EXPECT_EQ(edits_.add({named("Ring"), named("Hill"), named("Ring")}), std::nullopt);
  EXPECT_EQ(undoText(), "3 new tracks");
  EXPECT_THAT(names(), testing::ElementsAre("Ring", "Ring 2", "Hill", "Ring 3"));
  expectOneStep(one);
  EXPECT_EQ(edits_.duplicate(2), std::nullopt);
  EXPECT_EQ(names().back(), "Hill 2");
  EXPECT_EQ(document_.profile().tracks.back().segments, document_.profile().tracks[2].segments);
}

TEST_F(TrackListEditsTest, WhatAFileCannotHoldIsRefused) {
  EXPECT_EQ(edits_.add(named(""))->kind, Problem::Kind::OutOfRange);
  for (int i = 0; i < limits::kMostTracks; ++i) ASSERT_EQ(edits_.add(named("Track")), std::nullopt);
  const auto full = edits_.add(named("One more"));
  ASSERT_TRUE(full);
  EXPECT_EQ(full->kind, Problem::Kind::WrongCount);
  EXPECT_EQ(full->path, "tracks");
  EXPECT_EQ(names().size(), static_cast<std::size_t>(limits::kMostTracks));
  EXPECT_EQ(edits_.setStartSpeed(0, 501.0)->path, "tracks[0].start_speed_kmh");
  EXPECT_EQ(edits_.rename(0, "  ")->kind, Problem::Kind::OutOfRange);
  EXPECT_EQ(edits_.rename(0, QString(201, 'x'))->kind, Problem::Kind::OutOfRange);
  EXPECT_EQ(edits_.rename(0, "Track 2")->kind, Problem::Kind::NameTaken);
  EXPECT_EQ(names().front(), "Track");
}

TEST_F(TrackListEditsTest, ALongNameStaysWithinTheLimitWithItsNumber) {
  const std::string longest(limits::kLongestName, 'x');
  ASSERT_EQ(edits_.add(named(longest)), std::nullopt);
  ASSERT_EQ(edits_.add(named(longest)), std::nullopt);
  EXPECT_LE(names().back().size(), static_cast<std::size_t>(limits::kLongestName));
  EXPECT_TRUE(profileFrom(writeProfile(document_.profile())) == document_.profile());
}

TEST_F(TrackListEditsTest, ARideFollowsTheNameOfItsTrackAndLeavesOneThatIsGone) {
  edits_.add({named("Ring"), named("Hill")});
  ui::TrackEdits(document_).ride("Hill");
  const Profile before = document_.profile();
  EXPECT_EQ(edits_.rename(1, " Long  Hill "), std::nullopt);
  EXPECT_EQ(document_.profile().ride->track, "Long Hill");
  EXPECT_EQ(undoText(), "track's name Hill → Long Hill");
  expectOneStep(before);
  const Profile renamed = document_.profile();
  EXPECT_EQ(edits_.remove(1), std::nullopt);
  EXPECT_EQ(undoText(), "removal of track Long Hill");
  ASSERT_TRUE(trackOfTheRide(document_.profile()));
  EXPECT_EQ(trackOfTheRide(document_.profile())->name, "Ring");
  expectOneStep(renamed);
}

TEST_F(TrackListEditsTest, ClosingStartAndSegmentsAreStepsOfTheirOwn) {
  edits_.add(named("Ring"));
  Profile before = document_.profile();
  EXPECT_EQ(edits_.setClosed(0, false), std::nullopt);
  EXPECT_TRUE(same(document_.profile(), before)) << "open is what it is without saying so";
  EXPECT_EQ(edits_.setClosed(0, true), std::nullopt);
  EXPECT_EQ(undoText(), "track Ring open → closed");
  expectOneStep(before);
  before = document_.profile();
  EXPECT_EQ(edits_.setStartSpeed(0, 80.0), std::nullopt);
  EXPECT_EQ(document_.profile().tracks[0].startSpeedKmh, 80.0);
  expectOneStep(before);
  before = document_.profile();
  EXPECT_EQ(edits_.setSegments(0, {{.lengthM = 100.0}, {.radiusM = 50.0, .angleDeg = 90.0}}, 1),
            std::nullopt);
  EXPECT_EQ(edits_.setSegments(0, {{.lengthM = 120.0}, {.radiusM = 50.0, .angleDeg = 90.0}}, 2),
            std::nullopt);
  document_.undoStack().undo();
  EXPECT_EQ(document_.profile().tracks[0].segments[0].lengthM, 100.0) << "two edits are two steps";
  expectOneStep(before);
  EXPECT_EQ(edits_.setSegments(0, {{.name = "nothing"}}, 3)->kind, Problem::Kind::NotASegment);
  EXPECT_EQ(edits_.remove(7), std::nullopt);
  EXPECT_EQ(edits_.rename(7, "x"), std::nullopt);
}

}  // namespace
}  // namespace layshaft::test
