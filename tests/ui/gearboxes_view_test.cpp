// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/gearboxes_view.h"

#include <QElapsedTimer>
#include <QSignalSpy>

#include "core/plan.h"
#include "tests/ui/lap_view_test.h"
#include "ui/document/setup_edits.h"
#include "ui/words/field_table.h"
#include "ui/words/gearbox_words.h"
#include "ui/words/numbers.h"

namespace layshaft::test {
namespace {

using ui::GearboxModel;

SpareGearPair spareGear(int gear, int driving, int driven) {
  return {.gear = gear, .driving = driving, .driven = driven, .note = {}, .extras = {}};
}

/// The worked lap with some gears on hand: 2.71 2.06 1.72 1.49 1.34 1.24 in it.
Profile bikeWithGears(std::vector<SpareGearPair> gears) {
  Profile profile = profileFrom(contentsOf(sourceFolder() / "tests/reference/data/lap-club-600.bike.json"));
  if (!profile.sparesBox) profile.sparesBox.emplace();
  profile.sparesBox->gearPairs = std::move(gears);
  return profile;
}
std::vector<SpareGearPair> someGears() {
  return {spareGear(1, 14, 35), spareGear(2, 18, 36), spareGear(6, 25, 30)};
}
/// Far more than are tried.
std::vector<SpareGearPair> manyGears() {
  std::vector<SpareGearPair> gears;
  const auto ratios = bikeWithGears({}).stock.gearRatios;
  for (int gear = 1; gear <= 6; ++gear)
    for (int more = 1; more <= 5; ++more)
      gears.push_back(
          spareGear(gear, 200, static_cast<int>(200 * ratios[static_cast<std::size_t>(gear - 1)]) - more));
  return gears;
}

class GearboxesViewTest : public LapViewTest<ui::GearboxesView, ui::GearboxStudy> {
 protected:
  GearboxesViewTest() : LapViewTest("Gearboxes") {}

  QTableView& table() { return control<QTableView>(*view_, "Gearboxes"); }
  const GearboxModel& model() { return dynamic_cast<const GearboxModel&>(*table().model()); }
  QString cell(int row, int column) { return model().index(row, column).data().toString(); }
  QString words() { return control<QLabel>(*view_, "The gearboxes in words").text(); }
  QCheckBox& ownPairBox() { return *view_->findChild<QCheckBox*>(); }
  GearboxSearch searchOf(const Profile& of) {
    return GearboxSearch(ladderInput(of), of.tracks.front(), of.sparesBox->gearPairs);
  }
};

TEST_F(GearboxesViewTest, ListsEveryGearboxWithItsBestPairAsTheCoreDoes) {
  open(bikeWithGears(someGears()));
  const LadderInput input = ladderInput(profile());
  const GearboxSearch search = searchOf(profile());
  const auto rows = search.rows(pairsThatFit(input, usualRange(input)));
  ASSERT_EQ(model().rowCount(), 8);
  for (int r = 0; r < 8; ++r) {
    const GearboxRow& row = rows[static_cast<std::size_t>(r)];
    EXPECT_EQ(cell(r, GearboxModel::Gears).section(", proposed", 0, 0),
              ui::gearsText(search.choices().gearboxes[row.gearbox]));
    EXPECT_EQ(cell(r, GearboxModel::Pair), ui::pairText(row.pair.front, row.pair.rear));
    EXPECT_EQ(cell(r, GearboxModel::Lap), ui::number(row.lapS, 2));
    EXPECT_EQ(cell(r, GearboxModel::Gained), ui::signedNumber(-*row.changeS, 2));
    EXPECT_TRUE(cell(r, GearboxModel::Band).startsWith("±")) << "of all of so few";
  }
  EXPECT_THAT(words().toStdString(), testing::AllOf(testing::HasSubstr("make 8 gearboxes"),
                                                    testing::HasSubstr("Quickest round Reedmace Short: " +
                                                                       cell(0, 0).toStdString() + " with ")));
}

/// Each row against the plan of a proposal with those gears.
TEST_F(GearboxesViewTest, WithTheProposalsPairEachRowIsThatPlansLap) {
  open(bikeWithGears(someGears()));
  ownPairBox().click();
  wait();
  const QString pair = ui::teethPair(proposedSetup(document()));
  ASSERT_EQ(model().rowCount(), 8);
  double before = 0.0;
  for (int r = 0; r < 8; ++r) {
    Profile with = profile();
    with.proposed = withGears(with.proposed, with.stock, model().taken(r)).value();
    const auto planned = plan(with);
    EXPECT_NEAR(model().rows()[static_cast<std::size_t>(r)].lapS, planned.proposed.lap->timeS, 1e-9);
    EXPECT_EQ(cell(r, GearboxModel::Pair), pair);
    EXPECT_GE(planned.proposed.lap->timeS, before - 1e-9) << "the quickest first";
    before = planned.proposed.lap->timeS;
  }
}

TEST_F(GearboxesViewTest, GearsAndPairBecomeTheProposalInOneStepAndTheListStays) {
  open(bikeWithGears(someGears()));
  const Profile before = profile();
  QSignalSpy tried(study_, &ui::GearboxStudy::tried);
  const QStringList list = view_->numbers()[1];
  int row = 0;
  while (model().taken(row).size() < 2) ++row;
  const GearsTaken gears = model().taken(row);
  const QString pair = cell(row, GearboxModel::Pair);
  table().setFocus();
  table().setCurrentIndex(model().index(row, 0));
  QTest::keyClick(&table(), Qt::Key_Return);
  const layshaft::Setup proposed = proposedSetup(document());
  EXPECT_EQ(ui::teethPair(proposed), pair);
  for (const SpareGearPair& one : gears) {
    const auto index = static_cast<std::size_t>(one.gear - 1);
    EXPECT_EQ(proposed.gearRatios[index], teethIn(one).ratio());
    EXPECT_EQ(layshaft::teethOf(proposed.options.gearTeeth, index), teethIn(one));
  }
  EXPECT_EQ(history().count(), 1);
  EXPECT_EQ(history().undoText(), "propose " + ui::gearsText(gears) + " with " + pair);
  EXPECT_TRUE(soon([&] { return cell(row, 0).endsWith(", proposed"); })) << cell(row, 0).toStdString();
  QTest::qWait(100);
  EXPECT_EQ(tried.count(), 0) << "nothing is asked that is known";
  // Another one comes in place of the first, not on top of it.
  const int stock = model().rowOf(0);
  table().setCurrentIndex(model().index(stock, 0));
  button("Propose This Gearbox").click();
  EXPECT_EQ(proposedSetup(document()).gearRatios, before.stock.gearRatios);
  EXPECT_EQ(history().count(), 2);
  history().undo();
  history().undo();
  EXPECT_TRUE(same(profile(), before));
}

TEST_F(GearboxesViewTest, WhatCannotBePutInIsRefused) {
  ui::Document document(bikeWithGears(someGears()));
  const Profile before = document.profile();
  const auto problem = ui::SetupEdits::proposeGearbox(document, {spareGear(3, 20, 50)}, 15, 43);
  ASSERT_TRUE(problem);
  EXPECT_EQ(problem->path, "proposed.gear_ratios[2]");
  EXPECT_EQ(ui::SetupEdits::proposeGearbox(document, {}, 1, 43)->path, "proposed.front_teeth");
  EXPECT_TRUE(same(document.profile(), before));
}

TEST_F(GearboxesViewTest, WithNothingOnHandItLeadsToWhereGearsAreTyped) {
  open(bikeWithGears({}));
  auto* lacking = view_->findChild<ui::LackingPanel*>();
  ASSERT_TRUE(lacking->isVisible());
  EXPECT_FALSE(table().isVisible());
  std::string key;
  QObject::connect(page_, &ui::Page::detailsWanted, page_, [&](std::string_view wanted) { key = wanted; });
  lacking->findChild<QPushButton*>()->click();
  EXPECT_EQ(key, "spares_box.gear_pairs");
  EXPECT_TRUE(ui::fieldRow(key));
  open(bikeWithGears(someGears()));
  EXPECT_FALSE(view_->csv().isEmpty());
  document().edit({.field = "box", .title = "box", .shown = {}},
                  [](Profile& p) { p.sparesBox->gearPairs.clear(); });
  EXPECT_TRUE(soon([&] { return view_->findChild<ui::LackingPanel*>()->isVisible(); }));
  EXPECT_TRUE(view_->csv().isEmpty()) << "nothing is left of gears that are gone";
}

TEST_F(GearboxesViewTest, TheButtonLeadsToTheTableOfGears) {
  open(bikeWithGears({}));
  button("Fill Them In").click();
  EXPECT_TRUE(soon([&] {
    const QWidget* there = QApplication::focusWidget();
    for (; there; there = there->parentWidget())
      if (there->accessibleName() == "Gears") return there->isVisible();
    return false;
  }));
}

TEST(GearboxWords, SayWhatTheGearsThemselvesGain) {
  const GearboxChoices choices{.gearboxes = {{}, {spareGear(1, 14, 35)}}};
  ui::QuickestGearbox quickest{
      .taken = choices.gearboxes[1],
      .row = {.gearbox = 1, .pair = {16, 48}, .lapS = 58.40, .changeS = -0.50},
      .bandS = 0.05,
      .without = GearboxRow{.gearbox = 0, .pair = {15, 45}, .lapS = 58.60, .changeS = -0.30}};
  const auto said = [&] { return ui::gearboxesWords(choices, "Fen", quickest).toStdString(); };
  EXPECT_THAT(said(),
              testing::HasSubstr("The gears alone gain 0.20 s of it: beside 15/45 with no other gears."));
  quickest.without->lapS = 58.43;
  EXPECT_THAT(said(), testing::HasSubstr("15/45 with no other gears is equal to it within ±0.05 s"));
  quickest.without.reset();
  EXPECT_THAT(said(), testing::Not(testing::HasSubstr("no other gears")));
}

TEST_F(GearboxesViewTest, GearsThatMakeNoOtherGearboxAreSaidToMakeNone) {
  open(bikeWithGears({spareGear(9, 20, 20)}));
  EXPECT_THAT(words().toStdString(), testing::StartsWith("The gears on hand make no other gearbox"));
  EXPECT_EQ(model().rowCount(), 1);
}

TEST_F(GearboxesViewTest, OfTooManyTheFirstAreTriedAndAStopIsHeardAtOnce) {
  openPage(bikeWithGears(manyGears()));
  look();
  ASSERT_TRUE(soon([&] { return model().rowCount() > 100; })) << "what is ready is shown";
  EXPECT_THAT(words().toStdString(), testing::HasSubstr("more than 5,000 gearboxes; only these are tried"));
  ASSERT_TRUE(study_->running());
  QElapsedTimer watch;
  watch.start();
  button("Stop").click();
  EXPECT_FALSE(study_->running());
  EXPECT_LT(watch.elapsed(), 50);
  const int listed = model().rowCount();
  EXPECT_GT(listed, 0);
  EXPECT_TRUE(button("Recalculate").isVisible());
  QTest::qWait(300);
  EXPECT_EQ(model().rowCount(), listed);
  ui::SetupEdits(document(), ui::Side::Proposed).setRearTeeth(45);
  QTest::qWait(100);
  EXPECT_FALSE(study_->running()) << "a step elsewhere does not begin it again";
  button("Recalculate").click();
  EXPECT_TRUE(soon([&] { return model().rowCount() > listed; })) << "goes on where it was";
}

TEST_F(GearboxesViewTest, AfterAStopAnotherPairLeavesTheOldListGreyAndNothingOfItIsTaken) {
  openPage(bikeWithGears(manyGears()));
  look();
  ASSERT_TRUE(soon([&] { return model().rowCount() > 0; }));
  ASSERT_TRUE(study_->running());
  button("Stop").click();
  ASSERT_FALSE(model().faded());
  ASSERT_EQ(ui::SetupEdits(document(), ui::Side::Proposed).setPair(14, 44), std::nullopt);
  ASSERT_TRUE(soon([&] { return model().faded(); }));
  table().setCurrentIndex(model().index(0, 0));
  const int steps = history().count();
  button("Propose").click();
  EXPECT_EQ(history().count(), steps);
}

TEST_F(GearboxesViewTest, NothingIsWorkedOutUnlessSomebodyLooks) {
  openPage(bikeWithGears(manyGears()));
  QSignalSpy tried(study_, &ui::GearboxStudy::tried);
  QTest::qWait(100);
  EXPECT_EQ(tried.count(), 0);
  look();
  ASSERT_TRUE(soon([&] { return tried.count() > 2; }));
  look("One Lap");
  EXPECT_FALSE(study_->running());
  const auto before = tried.count();
  QTest::qWait(100);
  EXPECT_EQ(tried.count(), before);
  look();
  EXPECT_TRUE(study_->running());
}

TEST_F(GearboxesViewTest, AnEditThatNoLapDependsOnCostsNothing) {
  open(bikeWithGears(someGears()));
  QSignalSpy tried(study_, &ui::GearboxStudy::tried), prepared(study_, &ui::GearboxStudy::prepared);
  document().edit({.field = "notes", .title = "notes", .shown = {}}, [](Profile& p) {
    p.notes = "Oiled.";
    p.sparesBox->gearPairs.front().note = "on the shelf";
  });
  ui::SetupEdits(document(), ui::Side::Proposed).setRearTeeth(45);
  QTest::qWait(100);
  EXPECT_EQ(tried.count() + prepared.count(), 0);
  document().edit({.field = "box", .title = "box", .shown = {}},
                  [](Profile& p) { p.sparesBox->gearPairs.pop_back(); });
  EXPECT_TRUE(soon([&] { return model().rowCount() == 4; }));
}

TEST_F(GearboxesViewTest, TheChoiceOfPairsIsKept) {
  open(bikeWithGears(someGears()));
  ownPairBox().click();
  const QVariantMap state = view_->state();
  open(bikeWithGears(someGears()));
  EXPECT_FALSE(ownPairBox().isChecked());
  view_->restore(state);
  EXPECT_TRUE(ownPairBox().isChecked());
}

TEST_F(GearboxesViewTest, OtherProgramsGetTheTeethOfEachGear) {
  open(bikeWithGears(someGears()));
  const QStringList lines = view_->csv().split('\n', Qt::SkipEmptyParts);
  ASSERT_EQ(lines.size(), 9);
  EXPECT_TRUE(lines.front().startsWith("gear_1_driving_teeth,gear_1_driven_teeth,gear_2_driving_teeth"))
      << lines.front().toStdString();
  for (const QString& line : lines) EXPECT_EQ(line.count(','), lines.front().count(','));
  EXPECT_EQ(view_->numbers().size(), 9U);
}

TEST_F(GearboxesViewTest, NothingIsCutOnAUsualScreenNorOnANarrowOne) {
  open(bikeWithGears(someGears()));
  expectNothingCut("The gearboxes in words", ownPairBox(), table(), table().rowHeight(0));
}

}  // namespace
}  // namespace layshaft::test
