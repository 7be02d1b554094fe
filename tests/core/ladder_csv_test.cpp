// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/ladder_csv.h"

#include <gtest/gtest.h>

#include <sstream>

#include "tests/core/lap_support.h"

namespace layshaft::test {
namespace {

using CsvCells = std::vector<std::string>;

std::vector<CsvCells> csvCells(const std::string& csv) {
  std::vector<CsvCells> rows;
  std::istringstream lines(csv);
  for (std::string line; std::getline(lines, line);) {
    CsvCells cells;
    std::istringstream fields(line + ',');  // so that an empty last field counts
    for (std::string field; std::getline(fields, field, ',');) cells.push_back(field);
    rows.push_back(std::move(cells));
  }
  return rows;
}

Profile aimingBike() {
  Profile profile = profileFrom(contentsOf(sourceFolder() / "sample-profiles/club-600.bike.json"));
  profile.aims = {{.want = Aim::Want::RevAtSpeed, .speedKmh = 205, .rpm = 13400},
                  {.want = Aim::Want::LeastDriveTime}};
  return profile;
}

TEST(LadderCsv, HasAColumnForEveryFigure) {
  const auto rows = Ladder(ladderInput(aimingBike())).rows({15, 16, 42, 44});
  const auto table = csvCells(ladderCsv(rows, aimingBike().aims));
  EXPECT_EQ(table.at(0), (CsvCells{"front_teeth",
                                   "rear_teeth",
                                   "final_ratio",
                                   "gearing_percent",
                                   "rear_teeth_equivalent",
                                   "speed_at_rev_limit_gear_1_mps",
                                   "speed_at_rev_limit_gear_2_mps",
                                   "speed_at_rev_limit_gear_3_mps",
                                   "speed_at_rev_limit_gear_4_mps",
                                   "speed_at_rev_limit_gear_5_mps",
                                   "speed_at_rev_limit_gear_6_mps",
                                   "cruise_rpm",
                                   "top_speed_mps",
                                   "zero_to_60_mph_s",
                                   "zero_to_100_kmh_s",
                                   "quarter_mile_s",
                                   "drive_s",
                                   "drive_end_gear",
                                   "drive_end_rpm",
                                   "drive_end_speed_mps",
                                   "lap_s",
                                   "fits",
                                   "axle_shift_mm",
                                   "links",
                                   "links_that_fit",
                                   "common_factor_front",
                                   "common_factor_rear",
                                   "front_in_spares_box",
                                   "rear_in_spares_box",
                                   "aim_1_reached",
                                   "aim_1_margin_rpm",
                                   "aim_2_reached",
                                   "aim_2_margin_s"}));
  ASSERT_EQ(table.size(), rows.size() + 1);
  for (const CsvCells& cells : table) EXPECT_EQ(cells.size(), table[0].size());
}

TEST(LadderCsv, HasTheFiguresOfTheRowsInTheirOrder) {
  LadderInput input = ladderInput(aimingBike());
  input.track = trackOf({straight(300), bend(30, 180)}, false);
  const auto rows = Ladder(input).rows({15, 16, 42, 44});
  const auto table = csvCells(ladderCsv(rows));
  for (std::size_t r = 0; r < rows.size(); ++r) {
    const CsvCells& cells = table.at(r + 1);
    const LadderRow& row = rows[r];
    const auto number = [&](std::size_t column) { return std::stod(cells.at(column)); };
    EXPECT_EQ(cells[0], std::to_string(row.frontTeeth));
    EXPECT_EQ(cells[1], std::to_string(row.rearTeeth));
    EXPECT_EQ(number(2), row.finalRatio);
    EXPECT_EQ(number(3), row.change.gearingPercent);
    EXPECT_EQ(number(4), row.change.rearTeethEquivalent);
    for (std::size_t g = 0; g < 6; ++g) EXPECT_EQ(number(5 + g), row.speedAtLimitMps[g]);
    EXPECT_EQ(number(11), row.cruiseRpm);
    EXPECT_EQ(number(12), row.topSpeedMps);
    EXPECT_EQ(number(13), row.zeroTo60MphS);
    EXPECT_EQ(number(14), row.zeroTo100KmhS);
    EXPECT_EQ(number(15), row.quarterMileS);
    EXPECT_EQ(number(16), row.driveS());
    EXPECT_EQ(number(17), row.drive->endGear);
    EXPECT_EQ(number(18), row.drive->endRpm);
    EXPECT_EQ(number(19), row.drive->endSpeedMps);
    EXPECT_EQ(number(20), row.lapS);
    EXPECT_EQ(cells[21], *row.chainRun->fits ? "true" : "false");
    EXPECT_NEAR(number(22), *row.chainRun->axleShiftM * 1000, 1e-9);
    EXPECT_EQ(number(23), row.chainRun->links);
    EXPECT_EQ(number(25), row.chainRun->commonFactorFront);
    EXPECT_EQ(number(26), row.chainRun->commonFactorRear);
    EXPECT_EQ(cells[27], row.frontInSparesBox ? "true" : "false");
    EXPECT_EQ(cells[28], row.rearInSparesBox ? "true" : "false");
    EXPECT_EQ(cells[29], row.aims[0].reached ? "true" : "false");
    EXPECT_EQ(number(30), row.aims[0].margin);
    EXPECT_EQ(cells[31], row.aims[1].reached ? "true" : "false");
    EXPECT_EQ(number(32), row.aims[1].margin);
  }
}

TEST(LadderCsv, NamesEachLengthThatFitsOnce) {
  auto rows = Ladder(ladderInput(aimingBike())).rows({15, 15, 43, 43});
  rows.at(0).chainRun->lengthsThatFit = {{112, 0.001, 2, {}}, {112, 0.002, {}, {}}, {114, 0.003, {}, {}}};
  EXPECT_EQ(csvCells(ladderCsv(rows)).at(1).at(24), "112 114");
}

TEST(LadderCsv, LeavesEmptyWhatTheProfileLacks) {
  const auto rows = Ladder(ladderInput(profileFrom(minimalProfile().dump()))).rows({16, 16, 43, 43});
  const auto table = csvCells(ladderCsv(rows));
  ASSERT_EQ(table.size(), 2U);
  ASSERT_EQ(table[1].size(), table[0].size());
  ASSERT_EQ(table[0].at(9), "top_speed_mps");
  EXPECT_EQ(std::stod(table[1][9]), rows[0].speedAtLimitMps.back()) << "the rev limit bounds it in any case";
  for (const std::size_t c : {8, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
    EXPECT_EQ(table[1][c], "") << table[0][c];
  EXPECT_EQ(table[1].back(), "false") << "what is not in the box is known";
}

TEST(LadderCsv, RowsOfTwoLaddersHaveTheSameNumberOfCells) {
  auto rows = Ladder(ladderInput(aimingBike())).rows({15, 15, 43, 44});
  rows[1].aims.clear();
  rows[1].speedAtLimitMps.pop_back();
  const auto table = csvCells(ladderCsv(rows));
  EXPECT_EQ(table.at(2).size(), table.at(0).size());
  EXPECT_EQ(table[2].at(10), "");
}

}  // namespace
}  // namespace layshaft::test
