// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/ui/drive_line.h"

namespace layshaft::test {
namespace {

/// Showing a document is not changing it.
class DriveLineRefresh : public DriveLineTest {};

TEST_F(DriveLineRefresh, ShowingEverySampleOnBothSidesAndInAllUnitsIsNoEdit) {
  for (const char* name : {"club-600", "adventure-twin", "enduro-250", "motocross-450", "roadster-classic",
                           "tourer-belt", "two-stroke-125", "youth-85"}) {
    const Profile sample = sampleBike(name);
    use(sample);
    for (const auto side : {ui::Side::Stock, ui::Side::Proposed}) {
      line_.setSide(side);
      for (const auto system : {ui::UnitSystem::Imperial, ui::UnitSystem::Mixed, ui::UnitSystem::Metric})
        showIn(system);
    }
    EXPECT_TRUE(same(document_.profile(), sample));
    EXPECT_EQ(steps(), 0) << name << ": " << document_.undoStack().undoText().toStdString();
  }
}

TEST_F(DriveLineRefresh, AMeasuredRolloutSurvivesAChangeOfUnits) {
  use(bike({{"/stock/rollout_mm", 1930}}));
  showIn(ui::UnitSystem::Imperial);
  showIn(ui::UnitSystem::Metric);
  EXPECT_EQ(proposed().options.rolloutMm, 1930);
  EXPECT_EQ(steps(), 0);
}

TEST_F(DriveLineRefresh, OpeningABikeWithALowerRevLimitIsNoEdit) {
  use(bike({{"/bike/engine/rev_limit_rpm", 15000}, {"/bike/engine/shift_rpm", 14000}}));
  const Profile slow = bike({{"/bike/engine/rev_limit_rpm", 9000}});
  use(slow);
  EXPECT_TRUE(same(document_.profile(), slow));
  EXPECT_EQ(steps(), 0);
}

TEST_F(DriveLineRefresh, UndoingRevLimitAndShiftPointWithinOneFrameIsNoEdit) {
  use(bike());
  typeInto(box("Rev limit"), "12000");
  settle();
  typeInto(box("Shift at"), "11500");
  settle();
  while (document_.undoStack().canUndo()) document_.undoStack().undo();
  settle();
  EXPECT_TRUE(same(document_.profile(), bike()));
  EXPECT_TRUE(document_.undoStack().canRedo()) << "what was undone can still be redone";
}

TEST_F(DriveLineRefresh, DigitsThatTheBoxesDoNotShowAreKept) {
  const Profile fine = bike({{"/stock/primary_ratio", 1.9555555},
                             {"/stock/gear_ratios", {2.7142857, 2.0588235, 1.2380952}},
                             {"/bike/engine/rev_limit_rpm", 10000.5},
                             {"/stock/rollout_mm", 1933.123456}});
  use(fine);
  for (QWidget* field :
       {static_cast<QWidget*>(&decimal("Primary")), static_cast<QWidget*>(&gear(2)),
        static_cast<QWidget*>(&box("Rev limit")), static_cast<QWidget*>(&decimal("Rollout"))}) {
    field->setFocus(Qt::TabFocusReason);
    leave();
  }
  EXPECT_TRUE(same(document_.profile(), fine));
  EXPECT_EQ(steps(), 0);
}

TEST_F(DriveLineRefresh, TheBoxesFollowTheDocument) {
  use(sampleBike("two-stroke-125"));
  EXPECT_EQ(box("Front teeth").value(), 16);
  EXPECT_EQ(box("Rear teeth").value(), 37);
  EXPECT_EQ(decimal("Primary").value(), 3.12);
  EXPECT_EQ(gear(6).value(), 1.0);
  EXPECT_EQ(box("Shift at").value(), 12600);
  EXPECT_EQ(box("Links").value(), 116);
  EXPECT_EQ(decimal("Rollout").value(), 1886);
  line_.setSide(ui::Side::Stock);
  EXPECT_EQ(box("Front teeth").value(), 17);
  EXPECT_EQ(box("Rear teeth").value(), 38);
}

TEST_F(DriveLineRefresh, AFollowingStationIsMutedAndADifferingOneStandsOut) {
  const auto label = [this](const char* station) {
    for (auto* caption : line_.findChildren<QLabel*>())
      if (caption->buddy() == &box(station)) return caption;
    throw std::runtime_error("no label");
  };
  EXPECT_EQ(label("Rear teeth")->foregroundRole(), QPalette::PlaceholderText);
  EXPECT_FALSE(box("Rear teeth").font().bold());
  typeInto(box("Rear teeth"), "45");
  settle();
  EXPECT_EQ(label("Rear teeth")->foregroundRole(), QPalette::WindowText);
  EXPECT_TRUE(box("Rear teeth").font().bold());
  EXPECT_EQ(backButton("Rear teeth").text(), "+2 ↺");
  EXPECT_FALSE(backButton("Front teeth").isVisible());
}

TEST_F(DriveLineRefresh, TheStripReadsAsASumThatEndsInTheOverallRatio) {
  QStringList sums;
  const auto read = [&] {
    sums.clear();
    for (auto* label : line_.findChildren<QLabel*>())
      if (label->text().startsWith("Primary ×") || label->text().startsWith("Final") ||
          label->text().startsWith("Overall"))
        sums << label->text();
    sums.sort();
  };
  read();
  EXPECT_EQ(sums, (QStringList{"Final 2.688", "Overall in 3rd: 6.52 engine turns per wheel turn",
                               "Primary × 3rd: 2.424"}));
  typeInto(box("Rear teeth"), "45");
  settle();
  read();
  EXPECT_EQ(sums,
            (QStringList{"Final 2.688 → 2.813", "Overall in 3rd: 6.52 → 6.82 engine turns per wheel turn",
                         "Primary × 3rd: 2.424"}));
}

}  // namespace
}  // namespace layshaft::test
