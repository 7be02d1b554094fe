// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/parts/chain_geometry.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

#include "core/study/chain_run.h"
#include "tests/core/support.h"

namespace layshaft::test {
namespace {

constexpr double kPitchOf520M = 0.015875;

// p / (2·sin(π/z)), as in every sprocket catalogue.
TEST(ChainGeometry, PitchRadii) {
  struct Row {
    int teeth;
    double radiusMm;
  };
  for (const Row& row :
       {Row{13, 33.167}, Row{14, 35.671}, Row{15, 38.177}, Row{16, 40.686}, Row{17, 43.197}, Row{41, 103.691},
        Row{42, 106.216}, Row{43, 108.740}, Row{44, 111.264}, Row{45, 113.789}, Row{46, 116.313},
        Row{47, 118.838}, Row{48, 121.363}, Row{52, 131.462}})
    EXPECT_NEAR(pitchRadiusM(kPitchOf520M, row.teeth) * 1000, row.radiusMm, 6e-4) << row.teeth;
}

// N teeth of pitch p go N·p round.
TEST(ChainGeometry, PullRadii) {
  EXPECT_NEAR(2 * std::numbers::pi * pullRadiusM(0.014, 71), 0.994, 1e-15);
  EXPECT_LT(pullRadiusM(0.014, 71), pitchRadiusM(0.014, 71)) << "inside the rollers of a chain";
}

TEST(ChainGeometry, ThereAndBack) {
  for (const double pitch : {0.0127, kPitchOf520M, 0.014})
    for (const int small : {9, 13, 17, 33})
      for (const int large : {17, 38, 52, 71})
        for (const double centre : {0.35, 0.667, 1.1}) {
          const ChainPair pair{.pitchM = pitch, .teeth1 = small, .teeth2 = large};
          const auto back = pair.centreM(pair.links(centre));
          ASSERT_TRUE(back) << small << "/" << large << " " << centre;
          EXPECT_NEAR(*back, centre, 1e-12) << small << "/" << large;
        }
}

TEST(ChainGeometry, DoesNotCareWhichSprocketIsFirst) {
  const ChainPair pair{.pitchM = kPitchOf520M, .teeth1 = 16, .teeth2 = 43}, other{kPitchOf520M, 43, 16};
  EXPECT_EQ(pair.links(0.66), other.links(0.66));
  EXPECT_EQ(pair.centreM(114), other.centreM(114));
  EXPECT_EQ(pair.smallerWrapDeg(0.66), other.smallerWrapDeg(0.66));
}

TEST(ChainGeometry, EqualSprocketsWrapHalfTheirTeeth) {
  const ChainPair pair{.pitchM = 0.0127, .teeth1 = 20, .teeth2 = 20};
  EXPECT_NEAR(pair.links(0.5), 2 * 0.5 / 0.0127 + 20, 1e-12);
  EXPECT_NEAR(*pair.centreM(100), 40 * 0.0127, 1e-12);
  EXPECT_NEAR(pair.smallerWrapDeg(0.5), 180, 1e-12);
}

// N = 2C/p + (z1 + z2)/2 + ((z2 − z1)/2π)²·p/C, the catalogues' series (ISO 606 and 10823, from memory): a
// few µm off in the centre distance.
TEST(ChainGeometry, AgreesWithTheCatalogues) {
  const auto catalogue = [](double centre, int z1, int z2) {
    return 2 * centre / kPitchOf520M + (z1 + z2) / 2.0 +
           std::pow((z2 - z1) / (2 * std::numbers::pi), 2) * kPitchOf520M / centre;
  };
  for (const int z2 : {38, 43, 47, 52}) {
    const ChainPair pair{.pitchM = kPitchOf520M, .teeth1 = 15, .teeth2 = z2};
    EXPECT_NEAR(pair.links(0.65), catalogue(0.65, 15, z2), 2.5e-3) << z2;
  }
  const auto centre = ChainPair{kPitchOf520M, 16, 43}.centreM(114);
  ASSERT_TRUE(centre);
  EXPECT_NEAR(*centre * 1000, 667.228, 6e-4);
  EXPECT_NEAR(*centre * 1000, 667.231, 0.005);  // by the series
}

TEST(ChainGeometry, AxleShifts) {
  const double stock = ChainPair{kPitchOf520M, 16, 43}.centreM(114).value();
  struct Row {
    int front, rear;
    double shiftMm;
  };
  for (const Row& row : {Row{15, 43, 3.726}, Row{17, 43, -3.733}, Row{16, 42, 4.243}, Row{16, 44, -4.256},
                         Row{16, 45, -8.527}, Row{15, 45, -4.820}, Row{15, 41, 12.219}})
    EXPECT_NEAR((ChainPair{kPitchOf520M, row.front, row.rear}.centreM(114).value() - stock) * 1000,
                row.shiftMm, 0.002)
        << row.front << "/" << row.rear;
}

TEST(ChainGeometry, MoreLinksGoFurther) {
  const ChainPair pair{.pitchM = kPitchOf520M, .teeth1 = 14, .teeth2 = 48};
  double before = 0;
  for (int links = 80; links <= 130; ++links) {
    const auto centre = pair.centreM(links);
    ASSERT_TRUE(centre) << links;
    EXPECT_GT(*centre, before + 0.49 * kPitchOf520M);
    before = *centre;
  }
  // Two links more are one pitch of centre distance, a little more on unequal sprockets.
  EXPECT_NEAR(*pair.centreM(116) - *pair.centreM(114), kPitchOf520M, 0.0004);
}

TEST(ChainGeometry, TooFewLinksDoNotReachRound) {
  const ChainPair pair{.pitchM = kPitchOf520M, .teeth1 = 16, .teeth2 = 43};
  EXPECT_FALSE(pair.centreM(30));
  EXPECT_FALSE(pair.centreM(0));
  // The pitch circles touch at 149.4 mm; a little more than that needs is enough.
  const double least = pair.links(pitchRadiusM(kPitchOf520M, 16) + pitchRadiusM(kPitchOf520M, 43));
  EXPECT_FALSE(pair.centreM(least - 0.01));
  EXPECT_TRUE(pair.centreM(least + 0.01));
}

TEST(ChainGeometry, WrapOnTheSmallerSprocket) {
  // asin((108.740 − 40.686)/667.228) = 5.85407°
  EXPECT_NEAR((ChainPair{kPitchOf520M, 16, 43}.smallerWrapDeg(0.667228)), 180 - 2 * 5.85407, 2e-4);
}

Setup chainSetup(int frontTeeth, int rearTeeth, int links) {
  Setup setup = bareSetup();
  setup.frontTeeth = front(frontTeeth);
  setup.rearTeeth = rear(rearTeeth);
  setup.options.links = links;
  for (const ChainSize& size : kChainSizes)
    if (size.pitchMm == 15.875) setup.options.chainSize = size;
  return setup;
}

TEST(AxleShift, OfChangedSprockets) {
  EXPECT_NEAR(*axleShiftM(chainSetup(16, 43, 114), chainSetup(15, 43, 114)) * 1000, 3.726, 0.002);
  EXPECT_NEAR(*axleShiftM(chainSetup(16, 43, 114), chainSetup(16, 45, 114)) * 1000, -8.527, 0.002);
  EXPECT_EQ(axleShiftM(chainSetup(16, 43, 114), chainSetup(16, 43, 114)), 0.0);
  // Another chain: two links longer, a pitch to the rear.
  EXPECT_NEAR(*axleShiftM(chainSetup(16, 43, 114), chainSetup(16, 43, 116)) * 1000, 15.95, 0.06);
}

TEST(AxleShift, AWornChainIsALongerOne) {
  auto worn = chainSetup(16, 43, 114);
  worn.options.chainElongationPercent = 1;
  // Everything grows with the pitch: one per cent of the centre distance.
  EXPECT_NEAR(*axleShiftM(chainSetup(16, 43, 114), worn) * 1000, 6.67228, 1e-5);
}

TEST(AxleShift, NoneWithoutAChainOrWhereItDoesNotReach) {
  auto none = chainSetup(16, 43, 114);
  none.options.links.reset();
  EXPECT_FALSE(axleShiftM(none, chainSetup(15, 43, 114)));
  EXPECT_FALSE(axleShiftM(chainSetup(15, 43, 114), none));
  none = chainSetup(16, 43, 114);
  none.options.chainSize.reset();
  EXPECT_FALSE(axleShiftM(chainSetup(16, 43, 114), none));
  EXPECT_FALSE(axleShiftM(chainSetup(16, 43, 114), chainSetup(16, 43, 40)));
}

TEST(AxleShift, OfABeltByItsPitchAndTeeth) {
  auto belt = chainSetup(33, 71, 114);
  belt.options.finalDrive = FinalDrive::Belt;
  EXPECT_FALSE(driveLoop(belt));  // chain and links are not the belt's
  belt.options.beltPitchMm = 14;
  EXPECT_FALSE(driveLoop(belt));
  belt.options.beltTeeth = 146;
  const auto loop = driveLoop(belt);
  ASSERT_TRUE(loop);
  EXPECT_EQ(loop->links, 146);
  EXPECT_NEAR(loop->pair.pitchM, 0.014, 1e-15);
  auto shorter = belt;
  shorter.frontTeeth = front(32);
  EXPECT_GT(*axleShiftM(belt, shorter), 0.003);
  EXPECT_LT(*axleShiftM(belt, shorter), 0.0035);  // about a quarter pitch
}

}  // namespace
}  // namespace layshaft::test
