// SPDX-License-Identifier: GPL-3.0-or-later
//
// Published worked examples of chain drives. Handbooks print the series, a little short of the exact length:
// the tolerance is theirs, 0.01 pitch of length and 0.01 pitch of centre distance.
#include <gtest/gtest.h>

#include <cmath>

#include "core/parts/chain.h"
#include "core/parts/chain_geometry.h"
#include "core/study/chain_run.h"
#include "tests/core/support.h"

namespace layshaft::test {
namespace {

constexpr double kInchM = 0.0254;

/// Lengths and centre distances in pitches of a pair.
struct InPitches {
  ChainPair pair;
  double links(double centrePitches) const { return pair.links(centrePitches * pair.pitchM); }
  double centre(double links) const { return pair.centreM(links).value() / pair.pitchM; }
};

InPitches sprockets(int small, int large, double pitchM = 0.015875) {
  return {{.pitchM = pitchM, .teeth1 = small, .teeth2 = large}};
}

// Mott, Machine Elements in Mechanical Design, 4th edition, example 7-3.
TEST(ChainExamples, MottExample7_3) {
  const InPitches drive = sprockets(17, 65, 0.5 * kInchM);
  EXPECT_NEAR(drive.links(30), 102.9, 0.06) << "printed to a tenth";
  EXPECT_NEAR(drive.centre(104), 30.54, 0.01);
  EXPECT_NEAR(drive.pair.centreM(104).value() / kInchM, 15.272, 0.003);
  EXPECT_NEAR(2 * pitchRadiusM(0.5 * kInchM, 17) / kInchM, 2.721, 5e-4);
  EXPECT_NEAR(2 * pitchRadiusM(0.5 * kInchM, 65) / kInchM, 10.349, 5e-4);
}

// Budynas, Shigley's Mechanical Engineering Design, solutions to chapter 17.
TEST(ChainExamples, ShigleyChapter17) {
  EXPECT_NEAR(sprockets(19, 38, kInchM).links(40), 108.7, 0.06);
  EXPECT_NEAR(sprockets(19, 38, kInchM).centre(110), 40.64, 0.01);
  EXPECT_NEAR(sprockets(21, 84, 0.5 * kInchM).links(40), 135.0134, 0.02);
  // Example 17-5, lengths from memory.
  EXPECT_NEAR(sprockets(17, 34).links(25), 75.79, 0.01);
  EXPECT_NEAR(sprockets(17, 34).centre(76), 25.10, 0.01);
}

// Jindal, Machine Design, examples 30-1, 30-3 and 30-5.
TEST(ChainExamples, Jindal) {
  EXPECT_NEAR(sprockets(21, 42, 0.00952).links(50) * 9.52, 1254.01, 0.05);
  EXPECT_NEAR(sprockets(17, 34, 0.01588).links(40) * 15.88, 1678.25, 0.05);
  const ChainPair pair = sprockets(17, 51, 0.00952).pair;
  EXPECT_NEAR(pair.centreM(97.9544).value() * 1000, 300.0, 0.05);
}

// A chain maker's formula with its example: 12.7 mm, 16 and 42 teeth, 96 links give 422.18 mm.
TEST(ChainExamples, MakersCentreDistance) {
  EXPECT_NEAR(sprockets(16, 42, 0.0127).pair.centreM(96).value() * 1000, 422.18, 0.01);
}

// A paper's "exact" 114.305 links and 35.8447 pitches for 20 and 63 teeth are half a pitch off: an odd sum of
// teeth was halved to a whole number. The handbook's 114.8 and 35.6 are right.
TEST(ChainExamples, AnOddSumOfTeethLosesNoHalfPitch) {
  const InPitches drive = sprockets(20, 63);
  EXPECT_NEAR(drive.links(36), 114.8050, 1e-4);
  EXPECT_NEAR(drive.centre(114), 35.5900, 1e-4);
  EXPECT_GT(std::abs(drive.links(36) - 114.305), 0.49);
  EXPECT_GT(std::abs(drive.centre(114) - 35.8447), 0.2);
}

// Rigid links laid round both sprockets, tooth by tooth, at every phase: nearest and farthest centre in
// pitches.
TEST(ChainExamples, LieInsideTheSeatedRollerPolygon) {
  struct Row {
    int small, large, links;
    double least, most;
  };
  for (const Row& row : {Row{15, 45, 108, 38.70443, 38.70559}, Row{13, 49, 114, 41.09938, 41.10024},
                         Row{16, 43, 112, 41.02358, 41.02551}, Row{17, 34, 76, 25.10381, 25.10418},
                         Row{17, 65, 104, 30.53896, 30.53987}, Row{20, 63, 114, 35.58938, 35.59035}}) {
    const double centre = sprockets(row.small, row.large).centre(row.links);
    EXPECT_GE(centre, row.least) << row.small << "/" << row.large;
    EXPECT_LE(centre, row.most) << row.small << "/" << row.large;
  }
}

// The factor f4 of ISO 606 and 10823, a = p·f4·(2X − (z1 + z2)); table from memory.
TEST(ChainExamples, AgreeWithTheF4Table) {
  struct Row {
    double u, f4;
  };
  for (const Row& row : {Row{13, .24991}, Row{10, .24986}, Row{7, .24970}, Row{5, .24937}, Row{4, .24896},
                         Row{3, .24795}, Row{2.5, .24678}, Row{2, .24421}, Row{1.6, .23897}}) {
    const int z1 = 20, z2 = 60;
    const double links = z1 + row.u * (z2 - z1);
    EXPECT_NEAR(sprockets(z1, z2).centre(links), row.f4 * (2 * links - z1 - z2), 2e-5 * (2 * links - z1 - z2))
        << row.u;
  }
}

// Pitch diameters for a pitch of 25.4 mm from a published table.
TEST(ChainExamples, PitchDiameters) {
  struct Row {
    int teeth;
    double diameterMm;
  };
  for (const Row& row : {Row{11, 90.16}, Row{12, 98.14}, Row{13, 106.14}, Row{14, 114.15}, Row{15, 122.17},
                         Row{16, 130.20}, Row{17, 138.23}, Row{20, 162.37}, Row{30, 243.00}, Row{40, 323.74},
                         Row{45, 364.12}, Row{48, 388.36}, Row{50, 404.52}, Row{60, 485.33}})
    EXPECT_NEAR(2000 * pitchRadiusM(kInchM, row.teeth), row.diameterMm, 6e-3) << row.teeth;
}

// Chordal speed variation, (max − min)/max.
TEST(ChainExamples, ChordalVariation) {
  for (const auto& [teeth, percent] :
       {std::pair{10, 4.894}, {13, 2.906}, {15, 2.185}, {16, 1.921}, {17, 1.703}, {45, 0.244}})
    EXPECT_NEAR(chordalVariationPercent(teeth), percent, 6e-4) << teeth;
}

// Common practice, no source: one tooth, front or rear, moves the axle about a quarter pitch.
TEST(ChainExamples, AToothMovesTheAxleAboutAQuarterPitch) {
  auto stock = bareSetup();
  stock.options.chainSize = chainSize("520");
  stock.options.links = 114;
  for (const auto& [frontTeeth, rearTeeth] : {std::pair{15, 43}, {17, 43}, {16, 42}, {16, 44}}) {
    auto other = stock;
    other.frontTeeth = front(frontTeeth);
    other.rearTeeth = rear(rearTeeth);
    EXPECT_NEAR(std::abs(axleShiftM(stock, other).value()) * 1000, 15.875 / 4, 0.3);
  }
}

}  // namespace
}  // namespace layshaft::test
