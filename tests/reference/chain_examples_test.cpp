// SPDX-License-Identifier: GPL-3.0-or-later
//
// Published worked examples of chain drives. Handbooks print the series, a little short of the exact length:
// the tolerance is theirs, 0.01 pitch of length and 0.01 pitch of centre distance.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <stdexcept>
#include <string>
#include <vector>

#include "core/parts/chain.h"
#include "core/parts/chain_geometry.h"
#include "core/parts/sprocket_body.h"
#include "core/study/chain_run.h"
#include "core/units.h"
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

// Khurmi and Gupta, Theory of Machines, example 11.23: a pitch of 600·sin 4.5° mm, 20 and 40 teeth, 800 mm.
// Their series has a term of its own for the wrap; the length agrees to 3 mm.
TEST(ChainExamples, KhurmiExample11_23) {
  const double pitch = 0.6 * std::sin(4.5 * units::kPi / 180);
  const InPitches drive = sprockets(20, 40, pitch);
  EXPECT_NEAR(2 * pitchRadiusM(pitch, 40), 0.6, 1e-12);
  EXPECT_NEAR(drive.pair.links(0.8) * pitch, 3.0402, 3e-3);
  EXPECT_NEAR(drive.pair.links(0.8), 64.5860, 1e-3);
}

// Khurmi, Machine Design, example 21.2 (from memory): 19.05 mm, 25 and 71 teeth, 568 mm take 110 links, 2.096
// m.
TEST(ChainExamples, KhurmiMachineDesignExample21_2) {
  const double links = sprockets(25, 71, 0.01905).pair.links(0.568);
  EXPECT_NEAR(links, 109.43, 0.01);
  EXPECT_EQ(std::ceil(links), 110);
  EXPECT_NEAR(110 * 0.01905, 2.096, 1e-3);
}

// Wentzell, Machine Design for Technology Students, example 14.4: half an inch, 12 and 24 teeth, 10 in.
TEST(ChainExamples, WentzellExample14_4) {
  const InPitches drive = sprockets(12, 24, 0.5 * kInchM);
  EXPECT_NEAR(drive.pair.links(10 * kInchM), 58.18, 0.01);
  EXPECT_NEAR(drive.pair.links(10 * kInchM) * 0.5, 29.09, 0.01) << "inches of chain";
  // 1800 rpm of 12 teeth: 900 ft/min; 5.31 hp then pull 194.62 lb.
  const double feetPerMinute = 12 * 0.5 / 12 * 1800;
  EXPECT_NEAR(feetPerMinute, 900, 1e-9);
  EXPECT_NEAR(5.31 * 33000 / feetPerMinute, 194.62, 0.1);
}

// Mott, example 7-2 (from memory): three quarters of an inch, 17 and 65 teeth, 40 pitches; 122 links then.
TEST(ChainExamples, MottExample7_2) {
  const InPitches drive = sprockets(17, 65, 0.75 * kInchM);
  EXPECT_NEAR(drive.links(40), 122.5, 0.06);
  EXPECT_NEAR(drive.centre(122), 39.766, 0.01);
  EXPECT_NEAR(2 * pitchRadiusM(0.75 * kInchM, 17) / kInchM, 4.082, 6e-4);
  EXPECT_NEAR(2 * pitchRadiusM(0.75 * kInchM, 65) / kInchM, 15.524, 6e-4);
}

// Mott, example 7-3: angles of contact.
TEST(ChainExamples, WrapOfMottExample7_3) {
  const ChainPair pair = sprockets(17, 65, 0.5 * kInchM).pair;
  EXPECT_NEAR(pair.smallerWrapDeg(pair.centreM(104).value()), 151.07, 0.02);
}

// DIN 8196's example: 34 teeth of 12.7 mm with rollers of 7.75 and 8.51 mm.
TEST(ChainExamples, RootDiameterOfDin8196) {
  const SprocketShape thin = sprocketShape(*chainSize("420"), 34),
                      thick = sprocketShape(*chainSize("428"), 34);
  EXPECT_NEAR(2000 * thin.pitchRadiusM, 137.64, 0.01);
  EXPECT_NEAR(2000 * thin.rootRadiusM, 129.89, 0.01);
  EXPECT_NEAR(2000 * thick.rootRadiusM, 129.13, 0.01);
}

// The numbers' own code (common practice, no source; 415 and 428 are its known exceptions): first digit the
// pitch in eighths of an inch, last two the inner width in eightieths.
TEST(ChainSizes, FollowTheirNumbers) {
  for (const ChainSize& size : kChainSizes) {
    const int number = std::stoi(std::string(size.name));
    EXPECT_NEAR(size.pitchMm, (number / 100) * 25.4 / 8, 1e-9) << number;
    if (number != 415 && number != 428) {
      EXPECT_NEAR(size.innerWidthMm, (number % 100) * 25.4 / 80, 0.02) << number;
    }
  }
}

// Dealers' dimension tables; widths of 420, 520, 525 and 530 as a chain maker's guide gives them (table 1.9).
TEST(ChainSizes, AgreeWithDimensionTables) {
  struct Row {
    const char* name;
    double pitch, roller, leastWidth, mostWidth;
  };
  for (const Row& row : {Row{"415", 12.70, 7.75, 4.76, 4.88}, Row{"420", 12.70, 7.75, 6.25, 6.35},
                         Row{"428", 12.70, 8.51, 7.75, 7.94}, Row{"520", 15.875, 10.16, 6.25, 6.35},
                         Row{"525", 15.875, 10.16, 7.85, 7.95}, Row{"530", 15.875, 10.16, 9.40, 9.53}}) {
    const ChainSize size = chainSize(row.name).value();
    EXPECT_EQ(size.pitchMm, row.pitch) << row.name;
    EXPECT_EQ(size.rollerDiameterMm, row.roller) << row.name;
    EXPECT_GE(size.innerWidthMm, row.leastWidth) << row.name;
    EXPECT_LE(size.innerWidthMm, row.mostWidth) << row.name;
  }
}

// The minima of ISO 10190 are from memory. Seen: 17.8 kN for a 428 in a trade text, and the least strengths
// of ANSI B29.1 in Shigley's table 17-19 for chains of the same pitch and roller (41: 6.67 kN, 50: 21.7 kN),
// which motorcycle chains exceed.
TEST(ChainSizes, MinimumStrengths) {
  for (const ChainSize& size : kChainSizes) {
    const double newtons = minimumTensileStrengthN(size).value();
    EXPECT_GE(newtons, size.pitchMm < 13 ? 6670 : 21700) << size.name;
    EXPECT_LE(newtons, 35000) << size.name << ": below what makers claim for sealed chains";
  }
  EXPECT_NEAR(minimumTensileStrengthN(*chainSize("428")).value(), 17800, 0.07 * 17800);
}

// Outside diameters lie between the least and the greatest of ISO 606 (greatest d + 1.25·p − d1; least, from
// memory, d + p·(1 − 1.6/z) − d1).
TEST(ChainExamples, OutsideDiametersLieInsideIso606) {
  const ChainSize size = *chainSize("520");
  for (const int teeth : {13, 15, 43, 45, 48, 52}) {
    const SprocketShape shape = sprocketShape(size, teeth);
    const double d = 2000 * shape.pitchRadiusM, tip = 2000 * shape.tipRadiusM;
    EXPECT_LE(tip, d + 1.25 * size.pitchMm - size.rollerDiameterMm) << teeth;
    EXPECT_GE(tip, d + size.pitchMm * (1 - 1.6 / teeth) - size.rollerDiameterMm) << teeth;
  }
}

// Common practice, no source: rear sprockets for 520 weigh about 1.8 lb in steel and 0.8 lb in aluminium; the
// estimates for 40 to 52 teeth hold both.
TEST(ChainExamples, RearSprocketsOf520WeighWhatTheTradeSays) {
  const auto pounds = [](int teeth, SprocketMaterial material) {
    return units::poundsFromKilograms(
        estimatedMassKg(sprocketShape(*chainSize("520"), teeth), SprocketPlace::Rear, material));
  };
  EXPECT_LT(pounds(40, SprocketMaterial::Steel), 1.8);
  EXPECT_GT(pounds(52, SprocketMaterial::Steel), 1.8);
  EXPECT_LT(pounds(40, SprocketMaterial::Aluminium), 0.8);
  EXPECT_GT(pounds(52, SprocketMaterial::Aluminium), 0.8);
}

// Wentzell, examples 14.2 and 14.3: flat lengths round two pulleys, the geometry of a toothed belt. Many
// small teeth make a pulley of any diameter.
TEST(ChainExamples, WentzellBelts) {
  // Diameters of 4 and 6 in, a belt of 54 in: 19.12 in apart, wrap 174.01°.
  const double fine = units::kPi * kInchM / 1000;  // pitch of 1000 teeth to an inch of diameter
  const ChainPair belt{.pitchM = fine, .teeth1 = 4000, .teeth2 = 6000};
  const double centre = belt.centreM(54 * kInchM / fine).value();
  EXPECT_NEAR(centre / kInchM, 19.12, 0.01);
  EXPECT_NEAR(belt.smallerWrapDeg(centre), 174.01, 0.01);
  // 8 and 16 in, 20 in apart: 78.5 in.
  const ChainPair wide{.pitchM = fine, .teeth1 = 8000, .teeth2 = 16000};
  EXPECT_NEAR(wide.links(20 * kInchM) * fine / kInchM, 78.5, 0.05);
}

// Belt sets of large V-twins from an owners' chart (140 teeth on 32/68, 133 on 32/66; 14 mm): the centres
// they imply.
TEST(ChainExamples, BeltSetsOfLargeTwins) {
  const ChainPair tourer{.pitchM = 0.014, .teeth1 = 32, .teeth2 = 68},
      cruiser{.pitchM = 0.014, .teeth1 = 32, .teeth2 = 66};
  EXPECT_NEAR(tourer.centreM(140).value() * 1000, 624.844, 0.01);
  EXPECT_NEAR(cruiser.centreM(133).value() * 1000, 583.071, 0.01);
}

/// A builder's example, 34 and 70 teeth 584 mm apart, without and with the term for unequal pulleys.
TEST(ChainExamples, ABuildersBelt) {
  EXPECT_NEAR((ChainPair{.pitchM = 0.0138, .teeth1 = 34, .teeth2 = 70}).links(0.584), 137.41, 0.01);
  EXPECT_NEAR((ChainPair{.pitchM = 0.014, .teeth1 = 34, .teeth2 = 70}).links(0.584), 136.22, 0.01);
}

/// Rigid links laid round two sprockets: rollers in their seats, a taut loop is the convex hull of the seats,
/// and its two straight runs must be whole numbers of links. Shares nothing with the tangent formula.
/// Pitches.
class SeatedRollers {
 public:
  SeatedRollers(int front, int rear) : front_(front), rear_(rear) {}

  /// The centre distance that closes a chain of so many links with the front sprocket turned by `phase` of a
  /// tooth.
  double centre(int links, double phase, double near) const {
    double low = near - 0.25, high = near + 0.25;
    for (int i = 0; i < 50; ++i) {
      const double middle = (low + high) / 2;
      (closed(middle, phase) < links ? low : high) = middle;
    }
    return low;
  }

 private:
  struct Place {
    double x, y;
    bool front;
  };
  struct Hull {
    double upper, lower;  // straight runs
    int seated;           // links between seated neighbours
  };

  Hull hull(double centre, double frontTurn, double rearTurn) const {
    std::vector<Place> seats;
    const auto add = [&](int teeth, double x, double turn, bool isFront) {
      const double radius = 0.5 / std::sin(units::kPi / teeth);
      for (int i = 0; i < teeth; ++i) {
        const double angle = 2 * units::kPi * (i + turn) / teeth;
        seats.push_back({x + radius * std::cos(angle), radius * std::sin(angle), isFront});
      }
    };
    add(front_, 0, frontTurn, true);
    add(rear_, centre, rearTurn, false);
    std::sort(seats.begin(), seats.end(), [](const Place& a, const Place& b) { return a.x < b.x; });
    // Andrew's monotone chain, the lower half and then the upper one.
    std::vector<Place> ring;
    const auto half = [&](auto first, auto last) {
      const std::size_t start = ring.size();
      for (auto it = first; it != last; ++it) {
        const auto turnsLeft = [&] {
          const Place &a = ring[ring.size() - 2], &b = ring.back();
          return (b.x - a.x) * (it->y - a.y) - (b.y - a.y) * (it->x - a.x) > 0;
        };
        while (ring.size() >= start + 2 && !turnsLeft()) ring.pop_back();
        ring.push_back(*it);
      }
      ring.pop_back();
    };
    half(seats.begin(), seats.end());
    half(seats.rbegin(), seats.rend());
    Hull result{0, 0, 0};
    for (std::size_t i = 0; i < ring.size(); ++i) {
      const Place &a = ring[i], &b = ring[(i + 1) % ring.size()];
      const double length = std::hypot(b.x - a.x, b.y - a.y);
      if (a.front == b.front)
        ++result.seated;
      else
        (a.front ? result.lower : result.upper) = length;
    }
    return result;
  }

  /// Links of a loop whose upper run is a whole number of them; the lower run takes what is left.
  double closed(double centre, double frontTurn) const {
    const auto off = [&](double rearTurn) {
      const double upper = hull(centre, frontTurn, rearTurn).upper;
      return upper - std::round(upper);
    };
    constexpr int kParts = 24;
    for (int part = 0; part < kParts; ++part) {
      double low = double(part) / kParts, high = double(part + 1) / kParts;
      const double a = off(low), b = off(high);
      if (a * b > 0 || std::abs(a - b) > 0.5) continue;  // no root, or where the nearest whole number jumps
      for (int i = 0; i < 40; ++i) {
        const double middle = (low + high) / 2;
        (off(middle) * a > 0 ? low : high) = middle;
      }
      const Hull loop = hull(centre, frontTurn, low);
      return std::round(loop.upper) + loop.lower + loop.seated;
    }
    throw std::runtime_error("the upper run is never whole");
  }

  int front_, rear_;
};

// The ranges over the phases of a tooth as another such solver gave them, which tried others than these.
TEST(ChainExamples, TheSeatedRollerPolygonIsAnIndependentSolver) {
  struct Row {
    int small, large, links;
    double least, most;
  };
  for (const Row& row : {Row{15, 45, 108, 38.70443, 38.70559}, Row{13, 49, 114, 41.09938, 41.10024},
                         Row{16, 43, 112, 41.02358, 41.02551}, Row{17, 34, 76, 25.10381, 25.10418},
                         Row{17, 65, 104, 30.53896, 30.53987}, Row{20, 63, 114, 35.58938, 35.59035}}) {
    const SeatedRollers rollers(row.small, row.large);
    const double exact = sprockets(row.small, row.large).centre(row.links);
    double least = 1e9, most = -1e9;
    for (int k = 0; k < 24; ++k) {
      const double centre = rollers.centre(row.links, k / 24.0, exact);
      least = std::min(least, centre);
      most = std::max(most, centre);
    }
    EXPECT_GE(exact, row.least) << row.small << "/" << row.large;
    EXPECT_LE(exact, row.most) << row.small << "/" << row.large;
    EXPECT_LE(least, exact) << row.small << "/" << row.large;
    EXPECT_GE(most, exact) << row.small << "/" << row.large;
    EXPECT_NEAR(least, row.least, 5e-4) << row.small << "/" << row.large;
    EXPECT_NEAR(most, row.most, 5e-4) << row.small << "/" << row.large;
  }
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

// The factor f4 of ISO 606 and 10823, a = p·f4·(2X − (z1 + z2)); table from memory.
TEST(ChainExamples, AgreeWithTheF4Table) {
  struct Row {
    double u, f4;
  };
  for (const Row& row :
       {Row{13, 0.24991},  Row{12, 0.24990},  Row{11, 0.24988},  Row{10, 0.24986},  Row{9, 0.24983},
        Row{8, 0.24978},   Row{7, 0.24970},   Row{6, 0.24958},   Row{5, 0.24937},   Row{4.6, 0.24925},
        Row{4.2, 0.24907}, Row{4, 0.24896},   Row{3.8, 0.24883}, Row{3.6, 0.24868}, Row{3.4, 0.24849},
        Row{3.2, 0.24825}, Row{3, 0.24795},   Row{2.8, 0.24758}, Row{2.6, 0.24708}, Row{2.5, 0.24678},
        Row{2.4, 0.24643}, Row{2.3, 0.24602}, Row{2.2, 0.24552}, Row{2.1, 0.24493}, Row{2, 0.24421},
        Row{1.9, 0.24333}, Row{1.8, 0.24222}, Row{1.7, 0.24081}, Row{1.6, 0.23897}}) {
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
  for (const auto& [teeth, percent] : {std::pair{10, 4.894},
                                       {11, 4.051},
                                       {12, 3.407},
                                       {13, 2.906},
                                       {14, 2.507},
                                       {15, 2.185},
                                       {16, 1.921},
                                       {17, 1.703},
                                       {20, 1.231},
                                       {21, 1.117},
                                       {25, 0.789},
                                       {38, 0.342},
                                       {42, 0.28},
                                       {45, 0.244},
                                       {48, 0.214},
                                       {52, 0.182}})
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
