// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/document/setup_edits.h"

#include "tests/ui/support.h"

namespace layshaft::test {
namespace {

using testing::ElementsAre;
using ui::Document;
using ui::SetupEdits;
using ui::Side;

class SetupEditsTest : public testing::Test {
 protected:
  void start(const std::vector<std::pair<std::string, Json>>& values) {
    document_.load(bike(values), QString());
  }
  const SetupChange& change() const { return document_.profile().proposed; }
  const layshaft::Setup& stockSetup() const { return document_.profile().stock; }

  Document document_{bike()};
  SetupEdits stock_{document_, Side::Stock};
  SetupEdits proposed_{document_, Side::Proposed};
};

TEST_F(SetupEditsTest, AProposedValueEqualToStockIsNotWrittenDown) {
  proposed_.setFrontTeeth(15);
  ASSERT_TRUE(change().frontTeeth);
  proposed_.setFrontTeeth(16);
  EXPECT_TRUE(change().changesNothing());
  proposed_.setPrimaryRatio(2.0);
  proposed_.setPrimaryRatio(1.955);
  EXPECT_TRUE(change().changesNothing());
  proposed_.setGearRatio(0, 2.8);
  proposed_.setGearRatio(0, 2.71);
  EXPECT_TRUE(change().changesNothing());
  proposed_.setTyre("190/55ZR17");
  proposed_.setTyre("180/55-17");
  EXPECT_TRUE(change().changesNothing()) << "the same tyre, written another way";
}

TEST_F(SetupEditsTest, AProposalFollowsStockInEveryFieldItDoesNotChange) {
  proposed_.setFrontTeeth(15);
  stock_.setRearTeeth(47);
  stock_.setTyre("160/60-17");
  EXPECT_EQ(proposedSetup(document_).rearTeeth.count(), 47);
  EXPECT_EQ(proposedSetup(document_).rearTyre.text(), "160/60-17");
  EXPECT_EQ(proposedSetup(document_).frontTeeth.count(), 15);
}

TEST_F(SetupEditsTest, AProposedValueStaysWhereStockPassesThroughIt) {
  proposed_.setRearTeeth(45);
  for (const int teeth : {44, 45, 46}) stock_.setRearTeeth(teeth);
  EXPECT_EQ(proposedSetup(document_).rearTeeth.count(), 45);
}

TEST_F(SetupEditsTest, AStockGearMovesTheProposedGearThatFollowedIt) {
  proposed_.setGearRatio(2, 1.2);
  stock_.setGearRatio(0, 2.8);
  EXPECT_THAT(proposedSetup(document_).gearRatios.values(), ElementsAre(2.8, 2.06, 1.2));
  stock_.setGearRatio(2, 1.3);
  EXPECT_THAT(proposedSetup(document_).gearRatios.values(), ElementsAre(2.8, 2.06, 1.2)) << "its own";
  EXPECT_EQ(document_.undoStack().undoText(), "stock gear 3 1.240 → 1.300");
}

TEST_F(SetupEditsTest, ANewGearCountIsProposedAndTakenBack) {
  EXPECT_EQ(proposed_.setGearCount(4), std::nullopt);
  EXPECT_EQ(proposedSetup(document_).gearRatios.count(), 4u);
  EXPECT_EQ(stockSetup().gearRatios.count(), 3u);
  EXPECT_EQ(proposed_.setGearCount(3), std::nullopt);
  EXPECT_TRUE(change().changesNothing());
}

TEST_F(SetupEditsTest, TheTeethOfAGearComeAndGoWithItsRatio) {
  EXPECT_EQ(stock_.setPrimaryRatio(2.0571, GearTeeth{35, 72}), std::nullopt);
  EXPECT_EQ(stock_.setGearRatio(1, 2.0, GearTeeth{16, 32}), std::nullopt);
  EXPECT_EQ(document_.undoStack().undoText(), "stock gear 2 2.060 → 2.000 (32/16)");
  EXPECT_EQ(stockSetup().options.primaryTeeth, (GearTeeth{35, 72}));
  EXPECT_EQ(proposedSetup(document_).options, stockSetup().options) << "with the ratio";
  proposed_.setGearRatio(1, 1.9);
  EXPECT_TRUE(proposedSetup(document_).options.gearTeeth.empty()) << "stock's teeth make another ratio";
  stock_.setGearRatio(1, 2.0);
  EXPECT_EQ(teethOf(stockSetup().options.gearTeeth, 1), (GearTeeth{16, 32})) << "the same ratio";
  stock_.setGearRatio(1, 2.01);
  EXPECT_TRUE(stockSetup().options.gearTeeth.empty());
  document_.undoStack().undo();
  EXPECT_EQ(stockSetup().gearRatios[1], 2.0);
  EXPECT_EQ(teethOf(stockSetup().options.gearTeeth, 1), (GearTeeth{16, 32}));
}

TEST_F(SetupEditsTest, TeethOfTheProposalGoWhenStocksRatioMovesAwayFromThem) {
  proposed_.setGearRatio(0, 2.71, GearTeeth{100, 271});
  EXPECT_EQ(teethOf(change().options.gearTeeth, 0), (GearTeeth{100, 271}));
  EXPECT_EQ(stock_.setGearRatio(0, 2.8), std::nullopt);
  EXPECT_TRUE(change().changesNothing());
  proposed_.setGearRatio(2, 1.2, GearTeeth{20, 24});
  EXPECT_EQ(proposed_.setGearCount(2), std::nullopt);
  EXPECT_TRUE(change().options.gearTeeth.empty());
}

TEST_F(SetupEditsTest, GearsStayFallingAndBetweenOneAndTen) {
  EXPECT_EQ(proposed_.setGearRatio(1, 2.9)->path, "proposed.gear_ratios[1]");
  EXPECT_EQ(stock_.setGearRatio(1, 2.9)->path, "stock.gear_ratios[1]");
  EXPECT_TRUE(proposed_.setGearCount(0));
  EXPECT_TRUE(proposed_.setGearCount(11));
  EXPECT_EQ(document_.undoStack().count(), 0);
}

TEST_F(SetupEditsTest, RefusesWhatIsOutsideTheLimits) {
  EXPECT_EQ(proposed_.setFrontTeeth(5)->path, "proposed.front_teeth");
  EXPECT_EQ(stock_.setRearTeeth(121)->path, "stock.rear_teeth");
  EXPECT_TRUE(proposed_.setPrimaryRatio(0.1));
  EXPECT_TRUE(proposed_.setRollout(499.0));
  EXPECT_TRUE(proposed_.setRollingAllowance(10.5));
  EXPECT_TRUE(proposed_.setLinks(29));
  EXPECT_TRUE(proposed_.setBeltTeeth(501));
  EXPECT_EQ(proposed_.setTyre("bald")->kind, Kind::BadTyreSize);
  EXPECT_EQ(proposed_.setTyre("bald")->path, "proposed.rear_tyre");
  EXPECT_EQ(document_.undoStack().count(), 0);
}

TEST_F(SetupEditsTest, AnotherStockTyreTakesItsMeasuredRolloutAlong) {
  start({{"/stock/rollout_mm", 1930}, {"/stock/tread_wear_mm", 1}});
  stock_.setTyre("190/55ZR17");
  EXPECT_FALSE(stockSetup().options.rolloutMm);
  EXPECT_FALSE(stockSetup().options.treadWearMm);
  document_.undoStack().undo();
  EXPECT_EQ(stockSetup().options.rolloutMm, 1930);
}

TEST_F(SetupEditsTest, TheSameTyreWrittenAnotherWayKeepsItsRollout) {
  start({{"/stock/rollout_mm", 1930}});
  stock_.setTyre("180/55 ZR 17 73W");
  EXPECT_EQ(stockSetup().options.rolloutMm, 1930);
}

TEST_F(SetupEditsTest, AProposedTyreDoesNotRollLikeStocksMeasuredOneAndBackAgain) {
  start({{"/stock/rollout_mm", 1930}});
  proposed_.setTyre("190/55ZR17");
  EXPECT_FALSE(proposedSetup(document_).options.rolloutMm);
  proposed_.setRollout(1980.0);
  EXPECT_EQ(proposedSetup(document_).options.rolloutMm, 1980);
  proposed_.setTyre("180/55ZR17");
  EXPECT_EQ(proposedSetup(document_).options.rolloutMm, 1930) << "1980 was measured on the other tyre";
}

TEST_F(SetupEditsTest, AProposedRolloutGoesWithTheStockTyreItWasMeasuredOn) {
  proposed_.setRollout(1950.0);
  stock_.setTyre("160/60-17");
  EXPECT_FALSE(proposedSetup(document_).options.rolloutMm) << "measured on a 180/55, not on a 160/60";
}

TEST_F(SetupEditsTest, AnotherToothCountIsAnotherSprocketAndItsMassIsNotKnown) {
  start({{"/stock/rear_sprocket", {{"material", "steel"}, {"mass_kg", 0.9}}}});
  proposed_.setRearTeeth(45);
  ASSERT_TRUE(proposedSetup(document_).options.rearSprocket);
  EXPECT_FALSE(proposedSetup(document_).options.rearSprocket->massKg);
  EXPECT_EQ(proposedSetup(document_).options.rearSprocket->material, SprocketMaterial::Steel);
  stock_.setRearTeeth(44);
  EXPECT_FALSE(stockSetup().options.rearSprocket->massKg);
}

TEST_F(SetupEditsTest, AllBackToStockIsOneStepAndKeepsUnknownKeys) {
  start({{"/proposed", {{"front_teeth", 15}, {"colour", "gold"}}}});
  proposed_.setTyre("190/55ZR17");
  SetupEdits::clearProposal(document_);
  EXPECT_TRUE(change().changesNothing());
  EXPECT_EQ(change().options.extras.at("colour"), "\"gold\"");
  document_.undoStack().undo();
  EXPECT_EQ(proposedSetup(document_).frontTeeth.count(), 15);
}

TEST_F(SetupEditsTest, TheProposalBecomesStock) {
  proposed_.setFrontTeeth(15);
  proposed_.setTyre("190/55ZR17");
  const layshaft::Setup wanted = proposedSetup(document_);
  SetupEdits::makeProposalStock(document_);
  EXPECT_EQ(stockSetup(), wanted);
  EXPECT_TRUE(change().changesNothing());
  document_.undoStack().undo();
  EXPECT_EQ(stockSetup().frontTeeth.count(), 16);
  EXPECT_EQ(proposedSetup(document_), wanted);
}

TEST_F(SetupEditsTest, APinStaysTheSetupItWasWhenTheProposalBecomesStock) {
  document_.edit({.field = "pin", .title = "pin", .shown = {}}, [](Profile& p) {
    p.pins = {{.name = "taller", .change = {.rearTeeth = layshaft::test::rear(41)}}};
  });
  const auto pinned = [&] { return applied(document_.profile().pins[0].change, stockSetup()); };
  const layshaft::Setup wanted = pinned();
  proposed_.setFrontTeeth(15);
  proposed_.setTyre("190/55ZR17");
  proposed_.setRollout(1990);
  SetupEdits::makeProposalStock(document_);
  EXPECT_EQ(pinned(), wanted);
  EXPECT_FALSE(document_.profile().pins[0].change.primaryRatio) << "still follows what did not change";
  document_.undoStack().undo();
  EXPECT_EQ(pinned(), wanted);
}

TEST_F(SetupEditsTest, ChainBeltAndDriveAreNamedEdits) {
  proposed_.setChainSize(chainSize("520"));
  EXPECT_EQ(document_.undoStack().undoText(), "proposed chain size none → 520");
  proposed_.setLinks(112);
  EXPECT_EQ(document_.undoStack().undoText(), "proposed links none → 112");
  stock_.setFinalDrive(FinalDrive::Belt);
  EXPECT_EQ(document_.undoStack().undoText(), "stock final drive chain → belt");
  proposed_.setRollingAllowance(2.5);
  EXPECT_EQ(document_.undoStack().undoText(), "proposed rolling allowance 2.0 % → 2.5 %");
  proposed_.setPrimaryRatio(1.9551);
  EXPECT_EQ(document_.undoStack().undoText(), "proposed primary ratio 1.955 → 1.9551")
      << "a step that the box can take must be seen in its name";
}

/// What the rider reads does not change by calling the proposal stock.
TEST(MakeProposalStock, ASpeedometerThatWasNotSetAnewReadsAsBefore) {
  Profile profile = sampleBike("club-600");
  ui::Document document(profile);
  const double shown = plan(profile).proposed.speedometer->at100KmhIndicatedKmh;
  SetupEdits::makeProposalStock(document, false);
  EXPECT_NEAR(plan(document.profile()).stock.speedometer->at100KmhIndicatedKmh, shown, 1e-3);
  document.undoStack().undo();
  EXPECT_TRUE(same(document.profile(), profile)) << "one step of the history";
  SetupEdits::makeProposalStock(document, true);
  EXPECT_EQ(document.profile().bike.speedometer->readsHighPercent,
            profile.bike.speedometer->readsHighPercent);
}

class MakeProposalStockMenu : public testing::Test {
 protected:
  /// Chooses the menu's entry, and in the question that follows the button with that text. The work is not
  /// written down.
  void choose(const QString& button) {
    std::optional<DialogAnswer> form;
    DialogAnswer answer([&](QDialog& dialog) {
      asked_ = true;
      form.emplace();
      for (auto* each : dialog.findChildren<QAbstractButton*>())
        if (each->text().remove('&') == button) return each->click();
      ADD_FAILURE() << "no button " << button.toStdString();
      dialog.reject();
    });
    for (auto* action : window_->findChildren<QAction*>())
      if (action->text().remove('&') == "Make the Proposal Stock") action->trigger();
  }
  double readsHigh() { return window_.profile().bike.speedometer->readsHighPercent.value_or(0.0); }

  Window window_{sampleBike("club-600")};
  bool asked_ = false;
};

TEST_F(MakeProposalStockMenu, AsksWhetherTheSpeedometerWasSetAnew) {
  const double before = readsHigh(), shown = plan(window_.profile()).proposed.speedometer->indicatedOverTrue;
  choose("Cancel");
  EXPECT_TRUE(asked_);
  EXPECT_FALSE(window_.profile().proposed.changesNothing()) << "nothing has happened";
  choose("No, It Stays as It Is");
  EXPECT_TRUE(window_.profile().proposed.changesNothing());
  EXPECT_NEAR(readsHigh(), 100 * (shown - 1), 1e-3);
  window_->document().undoStack().undo();
  choose("Yes, Recalibrated");
  EXPECT_EQ(readsHigh(), before);
  window_->document().undoStack().undo();
}

TEST_F(MakeProposalStockMenu, AsksNothingWhereTheSpeedometerIsNotMoved) {
  window_->document().edit({.field = "sensor", .title = "sensor", .shown = {}},
                           [](Profile& p) { p.bike.speedometer->sensor = SpeedSensor::FrontWheel; });
  bool asked = false;
  DialogAnswer form([&](QDialog& dialog) {
    asked = qobject_cast<QMessageBox*>(&dialog);
    dialog.reject();
  });
  for (auto* action : window_->findChildren<QAction*>())
    if (action->text().remove('&') == "Make the Proposal Stock") action->trigger();
  EXPECT_TRUE(window_.profile().proposed.changesNothing());
  EXPECT_TRUE(form.seen());
  EXPECT_FALSE(asked) << "only the work could be written down";
  window_->document().undoStack().setIndex(0);
}

}  // namespace
}  // namespace layshaft::test
