// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/parts/chain_path.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "core/parts/chain.h"

namespace layshaft::test {
namespace {

constexpr double kPitchM = 0.015875;

ChainPath pathOf(int front, int rear, int links) {
  const ChainPair pair{.pitchM = kPitchM, .teeth1 = front, .teeth2 = rear};
  return ChainPath(pair, pair.centreM(links).value());
}

double apart(const ChainPoint& a, const ChainPoint& b) {
  return std::hypot(a.x - b.x, a.y - b.y);
}

TEST(ChainPath, IsAsLongAsTheChain) {
  EXPECT_NEAR(pathOf(16, 43, 114).links(), 114.0, 1e-9);
  EXPECT_NEAR(pathOf(43, 16, 114).links(), 114.0, 1e-9);  // also with the larger one in front
  EXPECT_NEAR(pathOf(20, 20, 80).links(), 80.0, 1e-9);
}

TEST(ChainPath, NeighboursAreAPitchApart) {
  for (const auto& [front, rear] : {std::pair{16, 43}, {12, 52}, {43, 16}, {20, 20}}) {
    const ChainPath path = pathOf(front, rear, 114);
    for (double u = -3.0; u < 117.0; u += 0.37) {
      const double chord = apart(path.at(u), path.at(u + 1.0));
      // On a sprocket and on a straight exactly; over the end of a wrap the chord cuts a corner of a tooth's
      // sagitta.
      EXPECT_NEAR(chord, kPitchM, kPitchM * 0.01) << u;
    }
    EXPECT_NEAR(apart(path.at(1.0), path.at(2.0)), kPitchM, 1e-12);
  }
}

TEST(ChainPath, PolygonIsTheLineItself) {
  const ChainPath path = pathOf(16, 43, 114);
  const auto polygon = path.polygon();
  double length = 0;
  for (std::size_t i = 0; i < polygon.size(); ++i)
    length += apart(polygon[i], polygon[(i + 1) % polygon.size()]);
  // Half chords round the sprockets are a little longer than whole ones.
  EXPECT_NEAR(length, 114 * kPitchM, 0.002 * 114 * kPitchM);
  EXPECT_GE(length, 114 * kPitchM);
}

TEST(ChainPath, StraightRunsTouchBothPitchCircles) {
  const ChainPath path = pathOf(16, 43, 114);
  const double r1 = pitchRadiusM(kPitchM, 16), r2 = pitchRadiusM(kPitchM, 43), c = path.centreM();
  const ChainPoint a = path.topFront(), b = path.topRear();
  EXPECT_NEAR(std::hypot(a.x, a.y), r1, 1e-12);
  EXPECT_NEAR(std::hypot(b.x - c, b.y), r2, 1e-12);
  // The run is at right angles to both radii.
  EXPECT_NEAR((b.x - a.x) * a.x + (b.y - a.y) * a.y, 0.0, 1e-12);
  EXPECT_NEAR((b.x - a.x) * (b.x - c) + (b.y - a.y) * b.y, 0.0, 1e-12);
  EXPECT_GT(a.y, 0.0);
}

TEST(ChainPath, RollersSitInSeatsOfBothSprockets) {
  const ChainPath path = pathOf(16, 43, 114);
  const double c = path.centreM();
  for (const double travel : {0.0, 0.3, 7.9}) {
    int onFront = 0, onRear = 0;
    for (int j = 0; j < 114; ++j) {
      const ChainPoint p = path.at(j + travel);
      const auto inSeat = [](double angle, double seat, int teeth) {
        const double seats = (angle - seat) * teeth / (2 * std::numbers::pi);
        return std::abs(seats - std::round(seats)) < 1e-9;
      };
      if (std::abs(std::hypot(p.x, p.y) - pitchRadiusM(kPitchM, 16)) < 1e-12) {
        ++onFront;
        EXPECT_TRUE(inSeat(std::atan2(p.y, p.x), path.frontSeatRad(travel), 16)) << j;
      } else if (std::abs(std::hypot(p.x - c, p.y) - pitchRadiusM(kPitchM, 43)) < 1e-12) {
        ++onRear;
        EXPECT_TRUE(inSeat(std::atan2(p.y, p.x - c), path.rearSeatRad(travel), 43)) << j;
      }
    }
    EXPECT_NEAR(onFront, 16 * (0.5 - 5.854 / 180), 1.0);
    EXPECT_NEAR(onRear, 43 * (0.5 + 5.854 / 180), 1.0);
  }
}

TEST(ChainPath, OneTurnOfTheRearTurnsTheFrontByTheFinalRatio) {
  const ChainPath path = pathOf(16, 43, 114);
  const auto turns = [](double from, double to) { return (to - from) / (2 * std::numbers::pi); };
  EXPECT_NEAR(turns(path.rearSeatRad(0), path.rearSeatRad(43)), 1.0, 1e-12);
  EXPECT_NEAR(turns(path.frontSeatRad(0), path.frontSeatRad(43)), 43.0 / 16.0, 1e-12);
}

// As the bike rolls forward, to the left in this view, the wheel's top moves left and so does the upper run.
TEST(ChainPath, UpperRunMovesToTheFrontSprocket) {
  const ChainPath path = pathOf(16, 43, 114);
  const double upper = path.links() - 10;
  EXPECT_LT(path.at(upper + 1).x, path.at(upper).x);
  EXPECT_GT(path.at(upper).y, 0);
}

}  // namespace
}  // namespace layshaft::test
