// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/ui/drive_line.h"

namespace layshaft::test {
namespace {

using testing::ElementsAre;

class DriveLineKeys : public DriveLineTest {};

TEST_F(DriveLineKeys, TypingIntoEachBoxChangesTheProposal) {
  typeInto(box("Front teeth"), "15");
  EXPECT_EQ(proposed().frontTeeth.count(), 15);
  typeInto(box("Rear teeth"), "47");
  EXPECT_EQ(proposed().rearTeeth.count(), 47);
  typeInto(decimal("Primary"), "2.0255");
  EXPECT_EQ(proposed().primaryRatio, 2.0255);
  typeInto(box("Links"), "112");
  EXPECT_EQ(proposed().options.links, 112);
  typeInto(decimal("Rollout"), "1955.5");
  EXPECT_EQ(proposed().options.rolloutMm, 1955.5);
  typeInto(tyreField(), "190/50ZR17");
  EXPECT_EQ(proposed().rearTyre.text(), "190/50ZR17");
  EXPECT_EQ(stock(), bike().stock) << "the strip edits the proposal";
}

TEST_F(DriveLineKeys, TypingIntoAGearGoesThroughWhatMayNotStayInBetween) {
  typeInto(gear(2), "1.95");
  EXPECT_THAT(proposed().gearRatios.values(), ElementsAre(2.71, 1.95, 1.24));
  EXPECT_EQ(message(), "") << "the 1 on the way there was refused, 1.95 is not";
  EXPECT_EQ(gear(2).text(), "1.95");
}

TEST_F(DriveLineKeys, ARatioMayBeTypedAsTeeth) {
  for (const char* pair : {"27/16", "27:16", "27-16"}) {
    typeInto(decimal("Primary"), "1.9");
    typeInto(decimal("Primary"), pair);
    EXPECT_EQ(proposed().primaryRatio, 1.6875) << pair;
    EXPECT_EQ(message(), "") << pair;
  }
  typeInto(gear(2), "35/18");
  EXPECT_NEAR(proposed().gearRatios[1], 35.0 / 18.0, 0.00005);
  leave();
  EXPECT_NEAR(proposed().gearRatios[1], 35.0 / 18.0, 0.00005) << "what it shows is what it is";
}

TEST_F(DriveLineKeys, TheTeethThatWereTypedAreKeptAndTold) {
  auto& second = gear(2);
  typeInto(second, "35/18");
  leave();
  EXPECT_EQ(teethOf(proposed().options.gearTeeth, 1), (GearTeeth{18, 35}));
  settle();
  EXPECT_TRUE(second.toolTip().startsWith("1.944 = 35/18")) << second.toolTip().toStdString();
  EXPECT_EQ(second.accessibleDescription(), "1.944 = 35/18");
  typeInto(second, "1.9");
  leave();
  settle();
  EXPECT_TRUE(proposed().options.gearTeeth.empty());
  EXPECT_EQ(second.accessibleDescription(), QString());
}

TEST_F(DriveLineKeys, TeethThatMakeTheRatioThatIsThereAreKept) {
  use(bike({{"/stock/gear_ratios", {2.4, 2.0, 1.0}}}));
  typeInto(gear(1), "36/15");
  leave();
  EXPECT_EQ(proposed().gearRatios[0], 2.4);
  EXPECT_EQ(teethOf(proposed().options.gearTeeth, 0), (GearTeeth{15, 36}));
}

TEST_F(DriveLineKeys, TeethThatGiveNoRatioAreRefusedInWordsAndTheRatioStays) {
  for (const char* pair : {"27/0", "27/", "99/3"}) {
    const double before = proposed().primaryRatio;
    typeInto(decimal("Primary"), pair);
    leave();
    EXPECT_EQ(proposed().primaryRatio, before) << pair;
    EXPECT_TRUE(message().contains(pair)) << pair << ": " << message().toStdString();
  }
}

TEST_F(DriveLineKeys, EngineSpeedsBelongToTheBike) {
  typeInto(box("Rev limit"), "12500");
  EXPECT_EQ(document_.profile().bike.engine.revLimitRpm, 12500);
  settle();
  typeInto(box("Shift at"), "11800");
  EXPECT_EQ(document_.profile().bike.engine.shiftRpm, 11800);
}

TEST_F(DriveLineKeys, EmptyingAFieldTakesItsValueBack) {
  use(bike({{"/bike/engine/shift_rpm", 9000}, {"/proposed/rollout_mm", 1955}, {"/proposed/links", 112}}));
  for (QAbstractSpinBox* field :
       {static_cast<QAbstractSpinBox*>(&box("Shift at")), static_cast<QAbstractSpinBox*>(&decimal("Rollout")),
        static_cast<QAbstractSpinBox*>(&box("Links"))}) {
    field->setFocus(Qt::TabFocusReason);
    QTest::keyClick(field, Qt::Key_A, Qt::ControlModifier);
    QTest::keyClick(field, Qt::Key_Delete);
    leave();
  }
  EXPECT_EQ(document_.profile().bike.engine.shiftRpm, std::nullopt);
  EXPECT_EQ(proposed().options.rolloutMm, std::nullopt);
  EXPECT_EQ(proposed().options.links, std::nullopt);
}

TEST_F(DriveLineKeys, ArrowKeysStep) {
  QTest::keyClick(&box("Front teeth"), Qt::Key_Down);
  EXPECT_EQ(proposed().frontTeeth.count(), 15);
  QTest::keyClick(&box("Rear teeth"), Qt::Key_Up);
  EXPECT_EQ(proposed().rearTeeth.count(), 44);
  QTest::keyClick(&gear(3), Qt::Key_Up);
  EXPECT_NEAR(proposed().gearRatios[2], 1.25, 1e-12);
  QTest::keyClick(&box("Rev limit"), Qt::Key_Up);
  EXPECT_EQ(document_.profile().bike.engine.revLimitRpm, 10100);
}

TEST_F(DriveLineKeys, SteppingStartsSensiblyWhereNothingIsGiven) {
  QTest::keyClick(&box("Links"), Qt::Key_Up);
  EXPECT_EQ(proposed().options.links, 112);
  QTest::keyClick(&box("Shift at"), Qt::Key_Down);
  EXPECT_EQ(document_.profile().bike.engine.shiftRpm, 9900) << "below the limit";
  const double estimate = planner_.current().proposed.gearing.rollout.metres * 1000;
  QTest::keyClick(&decimal("Rollout"), Qt::Key_Up);
  EXPECT_NEAR(proposed().options.rolloutMm.value_or(0), estimate + 1, 0.01);
}

TEST_F(DriveLineKeys, ARunOfStepsIsOneUndo) {
  box("Rear teeth").setFocus();
  for (int i = 0; i < 5; ++i) QTest::keyClick(&box("Rear teeth"), Qt::Key_Up);
  EXPECT_EQ(proposed().rearTeeth.count(), 48);
  EXPECT_EQ(steps(), 1);
  EXPECT_EQ(document_.undoStack().undoText(), "proposed rear teeth 43 → 48");
  document_.undoStack().undo();
  settle();
  EXPECT_EQ(box("Rear teeth").value(), 43);
}

TEST_F(DriveLineKeys, AStepThatWouldBreakTheOrderOfGearsIsRefusedAndExplained) {
  use(bike({{"/stock/gear_ratios", {2.0, 1.995, 1.0}}}));
  gear(2).setFocus();
  QTest::keyClick(&gear(2), Qt::Key_Up);
  EXPECT_EQ(proposed().gearRatios[1], 1.995);
  EXPECT_TRUE(message().contains("Gear 2")) << message().toStdString();
  leave();
  EXPECT_EQ(gear(2).value(), 1.995) << "a refused value does not stay in the box";
}

TEST_F(DriveLineKeys, AUnitMayBeTypedBehindTheNumber) {
  for (const char* typed : {"11200 rpm", "11100 1/min", "11200rpm", "11,100 RPM", "11200 /min"}) {
    typeInto(box("Rev limit"), typed);
    leave();
    EXPECT_EQ(document_.profile().bike.engine.revLimitRpm,
              QString(typed).remove(',').startsWith("112") ? 11200 : 11100)
        << typed;
    EXPECT_EQ(message(), "") << typed;
    EXPECT_FALSE(box("Rev limit").text().contains("m")) << typed;
  }
  typeInto(box("Shift at"), "9000 1/min");
  leave();
  EXPECT_EQ(document_.profile().bike.engine.shiftRpm, 9000);
  typeInto(decimal("Rollout"), "1955.5 mm");
  EXPECT_EQ(proposed().options.rolloutMm, 1955.5);
  // The inch is 25.4 mm exactly since 1959: https://www.nist.gov/pml/owm/metric-si/us-survey-foot
  typeInto(decimal("Rollout"), "78 in");
  leave();
  EXPECT_EQ(proposed().options.rolloutMm, 1981.2);
  showIn(ui::UnitSystem::Imperial);
  typeInto(decimal("Rollout"), "1955.8 mm");
  leave();
  EXPECT_EQ(proposed().options.rolloutMm, 1955.8);
  typeInto(box("Width"), "7 in");
  leave();
  EXPECT_EQ(box("Width").value(), 178);
}

TEST_F(DriveLineKeys, AUnitThatDoesNotFitIsRefusedInWords) {
  const struct {
    const char *field, *typed, *says;
  } entries[] = {{"Rev limit", "110 km/h", "Rev limit: 110 km/h is not a number in rpm (1,000 to 30,000)"},
                 {"Front teeth", "15 mm", "Front teeth: 15 mm is not a plain number (6 to 48)"},
                 {"Rollout", "1955 kg", "Rollout: 1955 kg is not a number in mm"},
                 {"Primary", "1.9 x", "Primary: 1.9 x is not a plain number"},
                 {"Rollout", "999 in", "Rollout: 999 in is out of range"},
                 {"Rollout", "99999", "Rollout: 99999 mm is out of range"}};
  for (const auto& [field, typed, says] : entries) {
    const Profile before = document_.profile();
    const QString shown = box(field).text();
    typeInto(box(field), typed);
    leave();
    EXPECT_TRUE(same(document_.profile(), before)) << typed;
    EXPECT_EQ(box(field).text(), shown) << typed;
    EXPECT_TRUE(message().startsWith(says)) << message().toStdString();
  }
}

TEST_F(DriveLineKeys, AnInputMethodReplacesWords) {
  auto& shift = box("Shift at");
  ASSERT_TRUE(shift.isNone());
  shift.setFocus(Qt::MouseFocusReason);
  settle();
  shift.findChild<QLineEdit*>()->end(false);
  QInputMethodEvent begun("9", {});
  QApplication::sendEvent(&shift, &begun);
  QInputMethodEvent done;
  done.setCommitString("9000");
  QApplication::sendEvent(&shift, &done);
  leave();
  EXPECT_EQ(document_.profile().bike.engine.shiftRpm, 9000);
  box("Rear teeth").setFocus(Qt::MouseFocusReason);
  settle();
  QInputMethodEvent tooMany;
  tooMany.setCommitString("999");
  QApplication::sendEvent(&box("Rear teeth"), &tooMany);
  leave();
  EXPECT_EQ(box("Rear teeth").value(), 43) << "the value from before comes back";
}

TEST_F(DriveLineKeys, ARefusedRevLimitDoesNotStayInTheBox) {
  use(bike({{"/bike/engine/shift_rpm", 9000}}));
  typeInto(box("Rev limit"), "8000");
  EXPECT_EQ(document_.profile().bike.engine.revLimitRpm, 10000);
  EXPECT_FALSE(message().isEmpty());
  leave();
  EXPECT_EQ(box("Rev limit").value(), 10000);
}

TEST_F(DriveLineKeys, AFieldEmptiedWhereStockGivesAValueShowsThatAgain) {
  use(bike({{"/stock/links", 114}}));
  box("Links").setFocus(Qt::TabFocusReason);
  QTest::keyClick(&box("Links"), Qt::Key_A, Qt::ControlModifier);
  QTest::keyClick(&box("Links"), Qt::Key_Delete);
  leave();
  EXPECT_EQ(proposed().options.links, 114);
  EXPECT_EQ(box("Links").text(), "114");
}

TEST_F(DriveLineKeys, AMeasuredRolloutIsKeptToTheDigitTyped) {
  for (int mm = 1800; mm < 2100; mm += 7) {
    typeInto(decimal("Rollout"), QString::number(mm));
    EXPECT_EQ(proposed().options.rolloutMm, mm);
  }
}

TEST_F(DriveLineKeys, ARolloutTypedEqualToStockFollowsStock) {
  use(bike({{"/stock/rollout_mm", 1941.3}}));
  typeInto(decimal("Rollout"), "1950");
  typeInto(decimal("Rollout"), "1941.3");
  EXPECT_TRUE(document_.profile().proposed.changesNothing());
}

TEST_F(DriveLineKeys, EitherDecimalSignIsUnderstood) {
  typeInto(decimal("Primary"), "1,9");
  EXPECT_DOUBLE_EQ(proposed().primaryRatio, 1.9);
  typeInto(decimal("Primary"), "1,955");
  EXPECT_DOUBLE_EQ(proposed().primaryRatio, 1.955);
  typeInto(gear(2), "2,1");
  EXPECT_DOUBLE_EQ(proposed().gearRatios[1], 2.1);
  typeInto(decimal("Rollout"), "1950,5");
  EXPECT_EQ(proposed().options.rolloutMm, 1950.5);
  typeInto(decimal("Rollout"), "1,951");
  EXPECT_EQ(proposed().options.rolloutMm, 1951) << "thousands, as the program writes them itself";
  EXPECT_EQ(message(), "");
}

TEST_F(DriveLineKeys, TheSwitchTurnsTheStripToStock) {
  line_.setSide(ui::Side::Stock);
  typeInto(box("Front teeth"), "15");
  EXPECT_EQ(stock().frontTeeth.count(), 15);
  EXPECT_TRUE(document_.profile().proposed.changesNothing());
  EXPECT_EQ(document_.undoStack().undoText(), "stock front teeth 16 → 15");
}

TEST_F(DriveLineKeys, BackToStockTakesOneStationBack) {
  use(bike({{"/proposed/front_teeth", 15}, {"/proposed/rear_teeth", 45}}));
  ASSERT_TRUE(backButton("Front teeth").isVisible());
  EXPECT_TRUE(backButton("Front teeth").text().startsWith("−1"));
  backButton("Front teeth").click();
  settle();
  EXPECT_EQ(document_.profile().proposed.frontTeeth, std::nullopt);
  EXPECT_EQ(proposed().rearTeeth.count(), 45);
  EXPECT_FALSE(backButton("Front teeth").isVisible());
  EXPECT_TRUE(box("Front teeth").hasFocus()) << "the focus does not fall through the button that hid";
}

TEST_F(DriveLineKeys, AllBackToStockIsThereWhileSomethingIsProposed) {
  for (auto* button : line_.findChildren<QPushButton*>())
    if (button->text() == "All Back to Stock") {
      EXPECT_FALSE(button->isEnabled());
      typeInto(box("Rear teeth"), "45");
      EXPECT_TRUE(button->isEnabled());
      button->click();
      settle();
      EXPECT_TRUE(document_.profile().proposed.changesNothing());
      return;
    }
  FAIL() << "no such button";
}

}  // namespace
}  // namespace layshaft::test
