// SPDX-License-Identifier: GPL-3.0-or-later
//
// Anti-squat and the tight spot beside a table worked out apart from the program from Cossalter's geometry
// (Motorcycle Dynamics, chapter 6: squat line through the intersection of swingarm line and upper run), and
// beside that geometry itself, drawn here with lines that meet. No complete published example was found.
#include "core/study/swingarm.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/units.h"

namespace layshaft::test {
namespace {

constexpr double kRollingRadiusM = 0.320;

Bike armedBike(double angleDeg, double ahead = 80, double above = 10) {
  Bike bike;
  bike.chassis = Chassis{.wheelbaseMm = 1400, .cgHeightMm = 620};
  bike.chainRun = ChainRun{.swingarmLengthMm = 600,
                           .swingarmAngleDeg = angleDeg,
                           .countershaftAheadOfPivotMm = ahead,
                           .countershaftAbovePivotMm = above};
  return bike;
}

SwingarmFigures armOf(const Bike& bike, int front, int rear) {
  return swingarm(bike, {.pitchM = 0.015875, .teeth1 = front, .teeth2 = rear}, kRollingRadiusM, 0.0).value();
}

TEST(Swingarm, AntiSquatOfChangedSprockets) {
  struct Row {
    int front, rear;
    double upperRunDeg, percent;
  };
  for (const Row& row :
       {Row{16, 43, 3.9203, 111.280}, Row{15, 43, 3.7080, 113.766}, Row{17, 43, 4.1328, 108.791},
        Row{16, 41, 4.3474, 109.513}, Row{16, 45, 3.4930, 112.890}, Row{16, 47, 3.0652, 114.363}}) {
    const SwingarmFigures figures = armOf(armedBike(10), row.front, row.rear);
    EXPECT_NEAR(figures.upperRunDeg, row.upperRunDeg, 1e-4) << row.front << "/" << row.rear;
    EXPECT_NEAR(figures.antiSquatPercent.value(), row.percent, 1e-3) << row.front << "/" << row.rear;
  }
}

TEST(Swingarm, AntiSquatOverTheTravel) {
  for (const auto& [angle, percent] : {std::pair{14.0, 134.49},
                                       {12.0, 122.75},
                                       {10.0, 111.28},
                                       {8.0, 100.04},
                                       {6.0, 89.00},
                                       {4.0, 78.12},
                                       {2.0, 67.39}})
    EXPECT_NEAR(armOf(armedBike(angle), 16, 43).antiSquatPercent.value(), percent, 6e-3) << angle;
  EXPECT_NEAR(armOf(armedBike(10, 0, 0), 16, 43).antiSquatPercent.value(), 116.35, 6e-3);
}

// The squat line as it is drawn: where swingarm line and upper run meet, seen from the contact patch.
TEST(Swingarm, AntiSquatIsTheSlopeOfTheSquatLine) {
  for (const auto& [front, rear, angle] : {std::tuple{13, 50, 9.0}, {15, 45, 12.0}, {17, 38, 6.0}}) {
    const double a = angle * units::kPi / 180, pitch = 0.015875;
    const double r1 = pitch / 2 / std::sin(units::kPi / front), r2 = pitch / 2 / std::sin(units::kPi / rear);
    const double px = 0.6 * std::cos(a), py = kRollingRadiusM + 0.6 * std::sin(a);
    const double cx = px + 0.08, cy = py + 0.01;
    // Tangent over both circles: find its slope by turning a line until it touches the front one.
    double slope = std::atan2(cy - kRollingRadiusM, cx);
    for (int i = 0; i < 200; ++i)
      slope = std::atan2(cy + r1 * std::cos(slope) - (kRollingRadiusM + r2 * std::cos(slope)),
                         cx - r1 * std::sin(slope) - (0 - r2 * std::sin(slope)));
    const double tx = -r2 * std::sin(slope), ty = kRollingRadiusM + r2 * std::cos(slope);
    // y = R + x·tan a meets y = ty + (x − tx)·tan slope.
    const double x = (ty - tx * std::tan(slope) - kRollingRadiusM) / (std::tan(a) - std::tan(slope));
    const double y = kRollingRadiusM + x * std::tan(a);
    EXPECT_NEAR(armOf(armedBike(angle), front, rear).antiSquatPercent.value(),
                100 * (y / x) / (0.620 / 1.400), 1e-6);
  }
}

// The same squat line with pulleys as large as their teeth's pitches are long, N·p/2π.
TEST(Swingarm, ABeltPullsAtThePitchCirclesOfItsPulleys) {
  constexpr double kPitchM = 0.014, kAngle = 9 * units::kPi / 180;
  const double r1 = 30 * kPitchM / (2 * units::kPi), r2 = 68 * kPitchM / (2 * units::kPi);
  const double px = 0.6 * std::cos(kAngle), py = kRollingRadiusM + 0.6 * std::sin(kAngle);
  const double cx = px + 0.08, cy = py + 0.01;
  double slope = std::atan2(cy - kRollingRadiusM, cx);
  for (int i = 0; i < 200; ++i)
    slope = std::atan2(cy - kRollingRadiusM - (r2 - r1) * std::cos(slope), cx + (r2 - r1) * std::sin(slope));
  const double tx = -r2 * std::sin(slope), ty = kRollingRadiusM + r2 * std::cos(slope);
  const double x = (ty - tx * std::tan(slope) - kRollingRadiusM) / (std::tan(kAngle) - std::tan(slope));
  const double y = kRollingRadiusM + x * std::tan(kAngle);
  const auto figures =
      swingarm(armedBike(9), {.pitchM = kPitchM, .teeth1 = 30, .teeth2 = 68}, kRollingRadiusM, 0.0, true)
          .value();
  EXPECT_NEAR(figures.upperRunDeg, slope * 180 / units::kPi, 1e-9);
  EXPECT_NEAR(figures.antiSquatPercent.value(), 100 * (y / x) / (0.620 / 1.400), 1e-6);
}

TEST(Swingarm, TightSpot) {
  struct Row {
    double angle, gainMm, playMm;
  };
  for (const Row& row : {Row{16, 680.623 - 679.771, 47.90}, Row{14, 680.623 - 680.111, 37.12},
                         Row{12, 0.258, 26.33}, Row{10, 0.090, 15.53}, Row{8, 0.009, 4.73},
                         Row{4, 0.106, 16.88}, Row{0, 0.549, 38.47}, Row{-2, 0.900, 49.25}}) {
    const auto tight = armOf(armedBike(row.angle), 16, 43).tightSpot;
    ASSERT_TRUE(tight);
    EXPECT_NEAR(tight->angleDeg, 7.125, 1e-3);
    EXPECT_NEAR(tight->gainM * 1000, row.gainMm, 1e-3) << row.angle;
    EXPECT_NEAR(tight->leastPlayM * 1000, row.playMm, 0.01) << row.angle;
  }
  const double aligned = std::atan2(10, 80) * 180 / units::kPi;
  EXPECT_NEAR(armOf(armedBike(aligned), 16, 43).tightSpot->leastPlayM, 0.0, 1e-6);
}

TEST(Swingarm, TheChainIsTightestWhereTheTightSpotIs) {
  const auto apart = [](double angleDeg) {
    const double a = angleDeg * units::kPi / 180;
    return std::hypot(0.6 * std::cos(a) + 0.08, 0.6 * std::sin(a) + 0.01);
  };
  double farthest = 0, at = 0;
  for (double angle = -20; angle <= 30; angle += 0.001)
    if (apart(angle) > farthest) {
      farthest = apart(angle);
      at = angle;
    }
  EXPECT_NEAR(armOf(armedBike(10), 16, 43).tightSpot->angleDeg, at, 2e-3);
}

TEST(Swingarm, NeedsItsGeometry) {
  Bike bike = armedBike(10);
  bike.chainRun->swingarmAngleDeg.reset();
  EXPECT_FALSE(swingarm(bike, {.pitchM = 0.015875, .teeth1 = 16, .teeth2 = 43}, kRollingRadiusM, 0.0));
  bike = armedBike(10);
  bike.chassis.reset();
  const auto figures = armOf(bike, 16, 43);
  EXPECT_FALSE(figures.antiSquatPercent);
  EXPECT_TRUE(figures.tightSpot);
  EXPECT_FALSE(armOf(armedBike(10, -80, 10), 16, 43).tightSpot) << "a countershaft behind the pivot";
}

}  // namespace
}  // namespace layshaft::test
