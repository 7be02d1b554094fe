// SPDX-License-Identifier: GPL-3.0-or-later
//
// What is typed stays as it is typed; what is refused at its end leaves nothing of itself.
#include "core/study/rollout.h"
#include "core/units.h"
#include "tests/ui/drive_line.h"

namespace layshaft::test {
namespace {

class DriveLineTyping : public DriveLineTest {
 protected:
  DriveLineTyping() : DriveLineTest(bike({{"/stock/gear_ratios", {2.4, 1.944, 1.24}}})) {}

  /// Types, sees the text stay as typed, and leaves with a key.
  void typeAndLeave(QAbstractSpinBox& field, const QString& text, Qt::Key with) {
    typeInto(field, text);
    EXPECT_TRUE(field.text().startsWith(text)) << field.text().toStdString();
    QTest::keyClick(&field, with);
    settle();
  }
};

TEST_F(DriveLineTyping, ARatioThatIsRefusedAtItsEndLeavesNothingOfItself) {
  for (const Qt::Key key : {Qt::Key_Return, Qt::Key_Tab}) {
    const Profile before = document_.profile();
    typeAndLeave(gear(1), "27/16", key);
    EXPECT_TRUE(same(document_.profile(), before)) << "the 2 on the way there was allowed";
    EXPECT_EQ(gear(1).text(), "2.40");
    EXPECT_EQ(steps(), 0);
    EXPECT_FALSE(document_.isModified());
    EXPECT_TRUE(message().contains("1.944")) << message().toStdString();
  }
}

TEST_F(DriveLineTyping, WhatWasTypedBeforeStaysAStepOfItsOwn) {
  typeAndLeave(gear(1), "2.5", Qt::Key_Return);
  typeAndLeave(gear(1), "27/16", Qt::Key_Return);
  EXPECT_EQ(proposed().gearRatios[0], 2.5);
  EXPECT_EQ(steps(), 1);
  EXPECT_EQ(document_.undoStack().undoText(), "proposed gear 1 2.400 → 2.500");
  QTest::keyClick(&gear(1), Qt::Key_Escape);
  EXPECT_EQ(proposed().gearRatios[0], 2.5) << "what was confirmed stays";
}

TEST_F(DriveLineTyping, WhatBelongsToTheValueFromBeforeComesBackWithIt) {
  use(bike({{"/stock/gear_ratios", {2.4, 1.944, 1.24}},
            {"/stock/front_sprocket", {{"mass_kg", 0.31}}},
            {"/proposed/gear_ratios", {2.5, 1.944, 1.24}},
            {"/proposed/gear_teeth", {{14, 35}}}}));
  const Profile before = document_.profile();
  typeAndLeave(gear(1), "99", Qt::Key_Return);
  EXPECT_TRUE(same(document_.profile(), before)) << "the teeth, too";
  line_.setSide(ui::Side::Stock);
  typeAndLeave(box("Front teeth"), "155", Qt::Key_Return);
  EXPECT_TRUE(same(document_.profile(), before)) << "the mass of the sprocket, too";
  EXPECT_EQ(steps(), 0);
}

TEST_F(DriveLineTyping, UndoneWhileItIsTypedNothingIsTakenBackTwice) {
  typeAndLeave(box("Rear teeth"), "45", Qt::Key_Return);
  typeInto(gear(1), "27/16");
  document_.undoStack().undo();
  document_.undoStack().undo();
  ASSERT_TRUE(document_.profile().proposed.changesNothing());
  leave();
  EXPECT_TRUE(document_.profile().proposed.changesNothing());
  EXPECT_EQ(gear(1).text(), "2.40");
}

TEST_F(DriveLineTyping, WhatIsNoNumberIsRefusedAsItWasTyped) {
  const struct {
    const char *field, *typed, *says;
  } entries[] = {{"Front teeth", "-3", "Front teeth: -3 is out of range (6 to 48)"},
                 {"Front teeth", "abc", "Front teeth: abc is not a plain number (6 to 48)"},
                 {"Front teeth", "15.5", "Front teeth: 15.5 is not a whole number (6 to 48)"},
                 {"Primary", "5000@110", "Primary: 5000@110 is not a plain number"},
                 {"Rev limit", "1.2 krpm", "Rev limit: 1.2 krpm is not a number in rpm"},
                 {"Rollout", "long", "Rollout: long is not a number in mm"}};
  for (const auto& [field, typed, says] : entries) {
    const Profile before = document_.profile();
    const QString shown = box(field).text();
    typeAndLeave(box(field), typed, Qt::Key_Tab);
    EXPECT_TRUE(same(document_.profile(), before)) << typed;
    EXPECT_EQ(box(field).text(), shown) << typed;
    EXPECT_TRUE(message().startsWith(says)) << message().toStdString();
  }
}

TEST_F(DriveLineTyping, MoreDecimalsThanShownAreRounded) {
  typeAndLeave(decimal("Primary"), "1.9555555", Qt::Key_Return);
  EXPECT_EQ(proposed().primaryRatio, 1.9556);
  typeInto(decimal("Primary"), "1,95444");
  leave();
  EXPECT_EQ(proposed().primaryRatio, 1.9544);
  EXPECT_EQ(message(), "");
}

TEST_F(DriveLineTyping, AGearTakesRevsAtASpeedInTheUnitsShown) {
  // i = n·C / (v · primary · final): a turn of the wheel for each C metres, and so many of the engine.
  const double final = 43.0 / 16.0, rpm = 5000.0;
  const auto expected = [&](double speedMps) {
    return rpm / 60.0 * rolloutOf(stock()).atSpeed(speedMps) / (speedMps * 1.955 * final);
  };
  typeAndLeave(gear(2), "5000@72", Qt::Key_Return);
  EXPECT_NEAR(proposed().gearRatios[1], expected(20.0), 0.00005);
  EXPECT_EQ(message(), "");
  showIn(ui::UnitSystem::Imperial);
  typeAndLeave(gear(2), "5000@45", Qt::Key_Return);
  EXPECT_NEAR(proposed().gearRatios[1], expected(units::mpsFromMph(45.0)), 0.00005);
  const double before = proposed().gearRatios[1];
  typeAndLeave(gear(2), "5000@1", Qt::Key_Return);
  EXPECT_TRUE(message().startsWith("Gear 2 ratio: 5000@1 is out of range")) << message().toStdString();
  typeAndLeave(gear(2), "5000@", Qt::Key_Return);
  EXPECT_TRUE(message().startsWith("Gear 2 ratio: 5000@ is not a plain number")) << message().toStdString();
  EXPECT_EQ(proposed().gearRatios[1], before);
}

TEST_F(DriveLineTyping, TheMnemonicSelectsAllOfAFieldThatHasTheFocusToo) {
  auto& teeth = box("Front teeth");
  teeth.setFocus();
  QTest::keyClick(&teeth, Qt::Key_End);
  ASSERT_FALSE(teeth.findChild<QLineEdit*>()->hasSelectedText());
  QTest::keyClick(&teeth, Qt::Key_N, Qt::AltModifier);
  EXPECT_EQ(teeth.findChild<QLineEdit*>()->selectedText(), "16");
  QTest::keyClicks(&teeth, "15");
  EXPECT_EQ(proposed().frontTeeth.count(), 15);
}

TEST(DriveLineAtStart, TheFirstDigitsReplaceTheFrontTeeth) {
  Window window(bike());
  QTest::keyClicks(QApplication::focusWidget(), "15");
  EXPECT_EQ(proposedSetup(window->document()).frontTeeth.count(), 15);
}

}  // namespace
}  // namespace layshaft::test
