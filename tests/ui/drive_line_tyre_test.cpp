// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/ui/drive_line.h"

namespace layshaft::test {
namespace {

class DriveLineTyre : public DriveLineTest {
 protected:
  /// Something else in the document changes while the field has the focus.
  void changeSomethingElse() {
    document_.edit({.field = "cruise", .title = "cruise", .shown = {}},
                   [](Profile& p) { p.cruiseSpeedKmh = p.cruiseSpeedKmh.value_or(99) + 1; });
    settle();
  }
};

TEST_F(DriveLineTyre, UnderstandsSizesAsTheyArePrinted) {
  for (const char* size :
       {"190/50ZR17", "120/80 - 19", "4.00-18", "mt90b16", "200/660R17", "160/60R17 69H"}) {
    typeInto(tyreField(), size);
    EXPECT_EQ(proposed().rearTyre.text(), size);
    EXPECT_EQ(tyreField().text(), size) << "nothing is rewritten while it is typed";
  }
}

TEST_F(DriveLineTyre, TheFrontOfALongSizeStaysInView) {
  typeInto(tyreField(), "190/50ZR17 M/C (73W)");
  leave();
  EXPECT_EQ(tyreField().cursorPosition(), 0);
}

TEST_F(DriveLineTyre, HalfTypedSizesAreNoEditAndAreNotLost) {
  typeInto(tyreField(), "190/5");
  EXPECT_EQ(steps(), 0);
  EXPECT_EQ(proposed().rearTyre.text(), "180/55ZR17");
  changeSomethingElse();
  EXPECT_EQ(tyreField().text(), "190/5") << "another change must not overwrite what is being typed";
  QTest::keyClicks(&tyreField(), "5ZR17");
  EXPECT_EQ(proposed().rearTyre.text(), "190/55ZR17");
}

TEST_F(DriveLineTyre, FastTypingPastAWholeSizeIsNotOverwrittenByAPlanThatComesLate) {
  // "160/60R17" is a whole size on the way to "160/60R17 M/C 69H", and each plan waits for its frame.
  typeInto(tyreField(), "160/60R17 M/");
  settle();
  EXPECT_EQ(tyreField().text(), "160/60R17 M/");
  QTest::keyClicks(&tyreField(), "C 69H");
  settle();
  EXPECT_EQ(tyreField().text(), "160/60R17 M/C 69H");
  EXPECT_EQ(proposed().rearTyre.text(), "160/60R17 M/C 69H");
}

TEST_F(DriveLineTyre, ABadSizeIsRefusedWithWordsAndTheOldOneComesBack) {
  typeInto(tyreField(), "180/55-5");
  leave();
  EXPECT_EQ(tyreField().text(), "180/55ZR17");
  EXPECT_TRUE(message().contains("180/55-5") && message().contains("rim")) << message().toStdString();
  EXPECT_EQ(steps(), 0);
  typeInto(tyreField(), "round and black");
  leave();
  EXPECT_EQ(tyreField().text(), "180/55ZR17");
  EXPECT_TRUE(message().contains("does not read as a tyre size")) << message().toStdString();
}

TEST_F(DriveLineTyre, WidthAspectAndRimFollowTheSizeTyped) {
  typeInto(tyreField(), "160/60R17");
  settle();
  EXPECT_EQ(box("Width").value(), 160);
  EXPECT_EQ(box("Aspect").value(), 60);
  EXPECT_EQ(decimal("Rim").value(), 17);
}

TEST_F(DriveLineTyre, TheSizeFollowsWidthAspectAndRim) {
  QTest::keyClick(&box("Width"), Qt::Key_Up);
  EXPECT_EQ(proposed().rearTyre.text(), "190/55ZR17") << "the construction stays";
  QTest::keyClick(&box("Aspect"), Qt::Key_Down);
  EXPECT_EQ(proposed().rearTyre.text(), "190/50ZR17");
  typeInto(decimal("Rim"), "16.5");
  EXPECT_EQ(proposed().rearTyre.text(), "190/50ZR16.5");
  settle();
  EXPECT_EQ(tyreField().text(), "190/50ZR16.5");
}

TEST_F(DriveLineTyre, SizesThatAreNotMetricAreOnePiece) {
  typeInto(tyreField(), "4.00-18");
  settle();
  EXPECT_FALSE(box("Width").isEnabled());
  EXPECT_FALSE(box("Aspect").isEnabled());
  EXPECT_FALSE(decimal("Rim").isEnabled());
  typeInto(tyreField(), "110/90-18");
  settle();
  EXPECT_TRUE(box("Width").isEnabled());
}

TEST_F(DriveLineTyre, BackToStockTakesTheTyreAndItsNumbersBack) {
  typeInto(tyreField(), "190/50ZR17");
  settle();
  backButton("Width").click();
  settle();
  EXPECT_EQ(proposed().rearTyre.text(), "180/50ZR17");
  backButton("Rear tyre").click();
  settle();
  EXPECT_TRUE(document_.profile().proposed.changesNothing());
  EXPECT_EQ(tyreField().text(), "180/55ZR17");
}

TEST_F(DriveLineTyre, AMeasurementOfStocksTyreIsNotTakenBackToForAnotherTyre) {
  use(bike({{"/stock/rollout_mm", 1930}, {"/proposed/rear_tyre", "190/55ZR17"}}));
  typeInto(decimal("Rollout"), "1980");
  settle();
  ASSERT_TRUE(backButton("Rollout").isVisible());
  backButton("Rollout").click();
  EXPECT_EQ(proposed().options.rolloutMm, std::nullopt) << "1930 was measured on the stock tyre";
}

TEST_F(DriveLineTyre, AMeasuredRolloutIsShownWithThousandsApart) {
  for (const char* typed : {"2068", "2,068"}) {
    typeInto(decimal("Rollout"), typed);
    leave();
    EXPECT_EQ(proposed().options.rolloutMm, 2068) << typed;
    EXPECT_EQ(decimal("Rollout").text(), "2,068") << typed;
    typeInto(decimal("Rollout"), "1950.5");
    leave();
    EXPECT_EQ(decimal("Rollout").text(), "1,950.5");
  }
}

TEST_F(DriveLineTyre, RolloutIsTypedInInchesWhereInchesAreShown) {
  showIn(ui::UnitSystem::Imperial);
  typeInto(decimal("Rollout"), "77");
  EXPECT_NEAR(proposed().options.rolloutMm.value_or(0), 1955.8, 1e-6);
  settle();
  EXPECT_NEAR(decimal("Rollout").value(), 77, 1e-9);
}

TEST_F(DriveLineTyre, StepsFromTheEstimateInInches) {
  showIn(ui::UnitSystem::Imperial);
  QTest::keyClick(&decimal("Rollout"), Qt::Key_Up);
  const double estimate = bike().stock.rearTyre.diameterM() * 3.14159265358979 * 980;
  EXPECT_NEAR(proposed().options.rolloutMm.value_or(0), estimate + 25.4, 0.2);
}

TEST_F(DriveLineTyre, TheEstimateIsShownAsOneWhateverTheUnits) {
  for (const auto system : {ui::UnitSystem::Imperial, ui::UnitSystem::Metric, ui::UnitSystem::Imperial}) {
    showIn(system);
    EXPECT_EQ(decimal("Rollout").text(), system == ui::UnitSystem::Imperial ? "≈ 76.34" : "≈ 1,939");
    EXPECT_TRUE(decimal("Rollout").isNone());
  }
}

}  // namespace
}  // namespace layshaft::test
