// SPDX-License-Identifier: GPL-3.0-or-later
//
// What the report says of a small bike, beside numbers worked out by hand.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <sstream>

#include "core/report.h"
#include "tests/core/support.h"

namespace layshaft::test {
namespace {

using Cells = std::vector<std::string>;

/// 16/43 on 114 links of 520, a rolling radius of 0.32 m, an axle slot, a swingarm and a longer chain on
/// hand.
Json reportBike() {
  Json profile = minimalProfile();
  profile["stock"]["rollout_mm"] = 2000 * std::numbers::pi * 0.32;
  profile["stock"]["chain_size"] = "520";
  profile["stock"]["links"] = 114;
  profile["stock"]["rear_sprocket"] = {{"mass_kg", 0.9}};
  profile["proposed"] = {{"front_teeth", 15}, {"rear_sprocket", {{"mass_kg", 0.6}}}};
  profile["pins"] = {{{"name", "Big"}, {"rear_teeth", 50}}};
  profile["bike"]["chassis"] = {{"wheelbase_mm", 1400}, {"cg_height_mm", 620}};
  profile["bike"]["chain_run"] = {{"adjuster_forward_mm", 13},        {"adjuster_back_mm", 20},
                                  {"largest_rear_teeth", 48},         {"swingarm_length_mm", 600},
                                  {"swingarm_angle_deg", 10},         {"countershaft_ahead_of_pivot_mm", 80},
                                  {"countershaft_above_pivot_mm", 10}};
  profile["spares_box"] = {{"chains", {{{"size", "520"}, {"links", 118}}}}};
  return profile;
}

/// 50 N·m at the rear wheel to 9000 rpm, 15/45 and a primary ratio of 2: 540, 360 and 180 rpm per m/s and
/// 18π, 12π and 6π newtons per N·m; 200 kg with rider.
Json flatBike() {
  Json profile = minimalProfile();
  profile["bike"]["engine"] = {
      {"rev_limit_rpm", 9000},
      {"idle_rpm", 1000},
      {"curve_measured_at", "rear_wheel"},
      {"torque_curve", {{{"rpm", 2000}, {"torque_nm", 50}}, {{"rpm", 8000}, {"torque_nm", 50}}}}};
  profile["stock"]["front_teeth"] = 15;
  profile["stock"]["rear_teeth"] = 45;
  profile["stock"]["primary_ratio"] = 2;
  profile["stock"]["gear_ratios"] = {3, 2, 1};
  profile["stock"]["rollout_mm"] = 2000;
  profile["bike"]["chassis"] = {{"mass_kg", 130}, {"rider_mass_kg", 70}, {"drag_area_m2", 0.4}};
  profile["ride"] = {{"drive", {{"exit_speed_kmh", 54}, {"length_m", 150}}}};
  return profile;
}

Json reportOf(const Json& profile) {
  return Json::parse(reportJson(planFor(profile)));
}

std::vector<Cells> cellsOf(const std::string& csv) {
  std::vector<Cells> rows;
  std::istringstream lines(csv);
  for (std::string line; std::getline(lines, line);) {
    Cells cells;
    std::istringstream fields(line + ',');  // so that an empty last field counts
    for (std::string field; std::getline(fields, field, ',');) cells.push_back(field);
    rows.push_back(std::move(cells));
  }
  return rows;
}

const std::string& cell(const std::vector<Cells>& rows, std::size_t row, const char* column) {
  const auto at = std::find(rows[0].begin(), rows[0].end(), column);
  if (at == rows[0].end()) throw std::runtime_error("no such column");
  return rows.at(row).at(static_cast<std::size_t>(at - rows[0].begin()));
}

// Worked out from L = 2√(C² − (r2 − r1)²)/p + N1(π − 2a)/2π + N2(π + 2a)/2π by bisection, apart from the
// program: stock's centre distance is 667.2284 mm.
TEST(ReportValues, LinksThatFit) {
  const Json lengths = reportOf(reportBike())["proposed"]["chain_run"]["links_that_fit"];
  ASSERT_EQ(lengths.size(), 3U);
  struct Row {
    int links;
    double shiftMm;
    Json shortenBy;
    int shortenSpareBy;
  };
  const Row rows[] = {{114, 3.726059, 0, 4}, {112, -12.240114, 2, 6}, {116, 19.687960, nullptr, 2}};
  for (std::size_t i = 0; i < 3; ++i) {
    EXPECT_EQ(lengths[i]["links"], rows[i].links);
    EXPECT_NEAR(lengths[i]["axle_shift_mm"].get<double>(), rows[i].shiftMm, 1e-6) << rows[i].links;
    EXPECT_EQ(lengths[i]["shorten_by_links"], rows[i].shortenBy) << rows[i].links;
    EXPECT_EQ(lengths[i]["spare_links"], 118);
    EXPECT_EQ(lengths[i]["shorten_spare_by_links"], rows[i].shortenSpareBy) << rows[i].links;
  }
}

TEST(ReportValues, Misfits) {
  const Json report = reportOf(reportBike());
  EXPECT_EQ(report["proposed"]["chain_run"]["misfits"], Json::array());
  EXPECT_EQ(report["proposed"]["chain_run"]["fits"], true);
  // 50 teeth pull the axle 30.09 mm forward, out of 13, and are over the 48 there is room for.
  const Json big = report["pins"][0]["chain_run"];
  EXPECT_EQ(big["misfits"], (Json{"rear_too_large", "axle_too_far_forward"}));
  EXPECT_EQ(big["fits"], false);
  EXPECT_NEAR(big["axle_shift_mm"].get<double>(), -30.090825, 1e-6);
  EXPECT_EQ(big["links_that_fit"], Json::array());
  Json mixed = reportBike();
  mixed["proposed"]["rear_sprocket"]["size"] = "530";
  mixed["proposed"]["links"] = 40;
  EXPECT_EQ(reportOf(mixed)["proposed"]["chain_run"]["misfits"],
            (Json{"mixed_sizes", "chain_does_not_reach"}));
}

TEST(ReportValues, LacksAndAssumed) {
  const Json bare = reportOf(minimalProfile());
  EXPECT_EQ(bare["lacks"]["pull"], (Json{"bike.engine.torque_curve"}));
  EXPECT_EQ(bare["lacks"]["resistance"], (Json{"bike.chassis.mass_kg", "bike.chassis.drag_area_m2"}));
  EXPECT_EQ(bare["lacks"]["bounds"],
            (Json{"bike.chassis.cg_height_mm", "bike.chassis.cg_ahead_of_rear_axle_mm",
                  "bike.chassis.wheelbase_mm", "bike.chassis.tyre_grip"}));
  EXPECT_EQ(bare["lacks"]["chain_run"], (Json{"stock.chain_size", "stock.links"}));
  EXPECT_EQ(reportOf(reportBike())["lacks"]["chain_run"], Json::array());
  Json profile = flatBike();
  profile["bike"]["chassis"].erase("rider_mass_kg");
  EXPECT_EQ(reportOf(profile)["assumed"], (Json{{"bike.engine.torque_curve", 8000.0},
                                                {"bike.chassis.rider_mass_kg", 75.0},
                                                {"bike.chassis.shift_time_s", 0.15},
                                                {"bike.chassis.rolling_resistance", 0.015}}));
  EXPECT_EQ(reportOf(profile)["lacks"]["pull"], Json::array());
  profile["bike"]["engine"]["curve_estimated"] = true;
  EXPECT_EQ(reportOf(profile)["assumed"]["bike.engine.curve_estimated"], true);
}

// ½·m·r²·(1 + 0.4²) about the axle, r = p/(2·sin(π/43)) = 108.740 mm, over 0.32² beside the mass itself.
TEST(ReportValues, Sprockets) {
  const Json sprockets = reportOf(reportBike())["proposed"]["sprockets"];
  EXPECT_EQ(sprockets["rear"]["mass_kg"], 0.6);
  EXPECT_EQ(sprockets["rear"]["estimated"], false);
  EXPECT_TRUE(sprockets["front"]["mass_kg"].is_null());
  EXPECT_NEAR(sprockets["saved_kg"].get<double>(), 0.3, 1e-12);
  EXPECT_NEAR(sprockets["saved_equivalent_kg"].get<double>(), 0.3 + 0.58 * 0.3 * 0.0118244 / 0.1024, 1e-6);
  EXPECT_EQ(sprockets["saving_counted"], true);
  EXPECT_TRUE(sprockets["saved_quarter_mile_s"].is_null()) << "nothing is known of its runs";
}

// The row of 10° of tests/reference/swingarm_test.cpp.
TEST(ReportValues, Swingarm) {
  const Json arm = reportOf(reportBike())["stock"]["chain_run"]["swingarm"];
  EXPECT_NEAR(arm["upper_run_deg"].get<double>(), 3.9203, 1e-4);
  EXPECT_NEAR(arm["anti_squat_percent"].get<double>(), 111.280, 1e-3);
  EXPECT_NEAR(arm["tight_spot_deg"].get<double>(), 7.125, 1e-3);
  EXPECT_NEAR(arm["tight_spot_gain_mm"].get<double>(), 0.090, 1e-3);
  EXPECT_NEAR(arm["least_play_mm"].get<double>(), 15.53, 0.01);
}

// One front tooth less of 16 is 16/15, 6.667 % shorter in every gear: as much as 43/15 = 2.867 rear teeth. On
// a rollout a fiftieth longer the whole gearing is 4.575 % shorter and 1.967 teeth.
TEST(ReportValues, WhatTheWholeChangeIsWorth) {
  Json profile = reportBike();
  const Json front = reportOf(profile)["change"];
  EXPECT_NEAR(front["whole_gearing_teeth_equivalent"].get<double>(), 43.0 / 15, 1e-9);
  ASSERT_EQ(front["gears_percent"].size(), 3U);
  for (const Json& gear : front["gears_percent"]) EXPECT_NEAR(gear.get<double>(), 100.0 / 15, 1e-9);
  profile["proposed"]["rollout_mm"] = 2000 * std::numbers::pi * 0.32 * 1.02;
  profile["proposed"]["gear_ratios"] = {3, 2.06, 1.24};
  const Json tyre = reportOf(profile)["change"];
  EXPECT_NEAR(tyre["whole_gearing_teeth_equivalent"].get<double>(), 43 * (16 / 15.0 / 1.02 - 1), 1e-9);
  EXPECT_NEAR(tyre["rear_teeth_equivalent"].get<double>(), 43.0 / 15, 1e-9) << "of the sprockets alone";
  EXPECT_NEAR(tyre["gears_percent"][0].get<double>(), 100 * (16 / 15.0 / 1.02 * 3 / 2.71 - 1), 1e-9);
  EXPECT_NEAR(tyre["gears_percent"][2].get<double>(), 100 * (16 / 15.0 / 1.02 - 1), 1e-9);
}

TEST(ReportValues, CornerExit) {
  Json profile = flatBike();
  EXPECT_TRUE(reportOf(profile)["stock"]["corner_exit_rpm"].is_null()) << "no lean angle";
  profile["ride"]["lean_deg"] = 60;
  profile["ride"]["drive"]["exit_gear"] = 1;
  profile["stock"]["crown_radius_mm"] = 100;
  // 15 m/s in first gear, 8100 rpm upright; the radius falls from 318.310 mm by half of the crown's 100.
  const Json report = reportOf(profile);
  EXPECT_NEAR(report["stock"]["corner_exit_rpm"].get<double>(), 8100 * 318.309886 / 268.309886, 1e-4);
}

TEST(ReportValues, OfTheStraightItsPlan) {
  Json profile = flatBike();
  profile["ride"]["drive"]["exit_gear"] = 1;
  const Json drive = reportOf(profile)["stock"]["run"]["drive"];
  EXPECT_EQ(drive["start_gear"], 1);
  EXPECT_EQ(drive["shifts"], drive["end_gear"].get<int>() - 1);
  EXPECT_GE(drive["shifts"], 1);
  profile["ride"]["drive"].erase("exit_gear");
  EXPECT_LT(reportOf(profile)["stock"]["run"]["drive"]["time_s"], drive["time_s"]);
  profile["ride"]["drive"]["exit_gear"] = 4;  // there is none
  EXPECT_TRUE(reportOf(profile)["stock"]["run"]["drive"]["start_gear"].is_null());
}

TEST(ReportValues, WhereGripOrTheFrontWheelLimitsAGear) {
  Json profile = flatBike();
  const Json open = reportOf(profile)["stock"]["pull"]["gears"][0];
  EXPECT_TRUE(open["limit"].is_null() && open["limited_from_kmh"].is_null() &&
              open["limited_to_kmh"].is_null());
  Json& chassis = profile["bike"]["chassis"];
  chassis["wheelbase_mm"] = 1400;
  chassis["cg_height_mm"] = 600;
  chassis["cg_ahead_of_rear_axle_mm"] = 700;
  chassis["tyre_grip"] = 0.7;
  const Json gears = reportOf(profile)["stock"]["pull"]["gears"];
  // First has 900·π N of 200 kg, grip takes about 7 m/s²: all of the range from the launch to the limit.
  EXPECT_EQ(gears[0]["limit"], "grip");
  EXPECT_NEAR(gears[0]["limited_from_kmh"].get<double>(), 2000 / 540.0 * 3.6, 1e-9);
  EXPECT_NEAR(gears[0]["limited_to_kmh"].get<double>(), 9000 / 540.0 * 3.6, 1e-9);
  EXPECT_TRUE(gears[2]["limit"].is_null());
  chassis["tyre_grip"] = 3.0;
  chassis["cg_ahead_of_rear_axle_mm"] = 400;
  EXPECT_EQ(reportOf(profile)["stock"]["pull"]["gears"][0]["limit"], "lift");
}

// ---- columns ----

TEST(CsvColumns, OfTheGears) {
  const auto rows = cellsOf(reportCsv(planFor(flatBike())));
  EXPECT_EQ(rows[0], (Cells{"setup", "front_teeth", "rear_teeth", "final_ratio", "rollout_m",
                            "rollout_source", "gear", "ratio", "overall_ratio", "speed_at_rev_limit_mps",
                            "speed_per_1000_rpm_mps", "shift_rpm", "shift_speed_mps", "rpm_after_shift"}));
  ASSERT_EQ(rows.size(), 7U);
  EXPECT_EQ(rows[2], (Cells{"stock", "15", "45", "3", "2", "measured", "2", "2", "12", "25",
                            cell(rows, 2, "speed_per_1000_rpm_mps"), "9000", "25", "4500"}));
  EXPECT_NEAR(std::stod(cell(rows, 2, "speed_per_1000_rpm_mps")), 25 / 9.0, 1e-12);
}

TEST(CsvColumns, OfThePull) {
  Json profile = flatBike();
  const auto rows = cellsOf(pullCsv(planFor(profile)));
  EXPECT_EQ(rows[0], (Cells{"setup", "gear", "speed_mps", "force_n", "acceleration_mps2"}));
  EXPECT_EQ(rows[1][0], "stock");
  EXPECT_EQ(rows[1][1], "1");
  EXPECT_NEAR(std::stod(rows[1][2]), 1000 / 540.0, 1e-9) << "from idle";
  EXPECT_NEAR(std::stod(rows[1][3]), 900 * std::numbers::pi, 1e-6);
  // 0.015 of the weight, and half of 1.225 · 0.4 · v², against it.
  const double resistance = 0.015 * 200 * 9.80665 + 0.245 * std::pow(1000 / 540.0, 2);
  EXPECT_NEAR(std::stod(rows[1][4]), (900 * std::numbers::pi - resistance) / 200, 1e-6);
  EXPECT_EQ(rows.back()[0], "proposed");
  EXPECT_EQ(rows.back()[1], "3");
  EXPECT_NEAR(std::stod(rows.back()[2]), 50, 1e-9) << "to the limit";
  EXPECT_NEAR(std::stod(rows.back()[3]), 300 * std::numbers::pi, 1e-6);
  profile["bike"].erase("chassis");
  EXPECT_EQ(cellsOf(pullCsv(planFor(profile)))[1].size(), 5U);
  EXPECT_EQ(cellsOf(pullCsv(planFor(profile)))[1][4], "") << "without masses nothing accelerates";
}

TEST(CsvColumns, OfTheRuns) {
  Json profile = flatBike();
  profile["ride"]["drive"]["exit_gear"] = 1;
  const auto rows = cellsOf(runCsv(planFor(profile)));
  EXPECT_EQ(rows[0], (Cells{"setup", "run", "time_s", "distance_m", "speed_mps", "gear", "rpm"}));
  EXPECT_EQ(rows[1], (Cells{"stock", "standing_start", "0", "0", "0", "1", "2000"}));
  const auto drive = std::find_if(rows.begin(), rows.end(), [](const Cells& c) { return c[1] == "drive"; });
  ASSERT_NE(drive, rows.end());
  EXPECT_NEAR(std::stod((*(drive - 1))[3]), 402.336, 1e-9);
  EXPECT_EQ((*drive)[0], "stock");
  EXPECT_NEAR(std::stod((*drive)[4]), 15, 1e-12);
  EXPECT_EQ((*drive)[5], "1");
  EXPECT_NEAR(std::stod((*drive)[6]), 8100, 1e-9);
  EXPECT_EQ(rows.back()[0], "proposed");
  EXPECT_NEAR(std::stod(rows.back()[3]), 150, 1e-9);
}

TEST(CsvColumns, OfTheChainRun) {
  const auto rows = cellsOf(chainRunCsv(planFor(reportBike())));
  EXPECT_EQ(rows[0], (Cells{"setup",
                            "front_teeth",
                            "rear_teeth",
                            "links",
                            "centre_distance_mm",
                            "axle_shift_mm",
                            "wheelbase_mm",
                            "fits",
                            "front_wrap_deg",
                            "top_chain_speed_mps",
                            "peak_tension_n",
                            "safety_factor",
                            "common_factor_front",
                            "common_factor_rear",
                            "chordal_front_percent",
                            "chordal_rear_percent",
                            "measured_centre_off_links",
                            "swingarm_upper_run_deg",
                            "swingarm_anti_squat_percent",
                            "swingarm_tight_spot_deg",
                            "swingarm_tight_spot_gain_mm",
                            "swingarm_least_play_mm",
                            "sprocket_front_mass_kg",
                            "sprocket_front_estimated",
                            "sprocket_rear_mass_kg",
                            "sprocket_rear_estimated",
                            "sprocket_saved_kg",
                            "sprocket_saved_equivalent_kg",
                            "sprocket_saving_counted",
                            "sprocket_saved_zero_to_100_kmh_s",
                            "sprocket_saved_quarter_mile_s",
                            "sprocket_saved_drive_s",
                            "sprocket_saved_zero_to_60_mph_s",
                            "slack_note"}));
  ASSERT_EQ(rows.size(), 4U);
  EXPECT_EQ(rows[2][0], "proposed");
  EXPECT_NEAR(std::stod(cell(rows, 2, "centre_distance_mm")), 670.954471, 1e-6);
  EXPECT_NEAR(std::stod(cell(rows, 2, "wheelbase_mm")), 1403.726059, 1e-6);
  EXPECT_EQ(cell(rows, 2, "fits"), "true");
  EXPECT_EQ(cell(rows, 2, "common_factor_front"), "3");
  EXPECT_EQ(cell(rows, 2, "peak_tension_n"), "");
  EXPECT_EQ(cell(rows, 2, "sprocket_rear_mass_kg"), "0.6");
  EXPECT_EQ(cell(rows, 3, "setup"), "Big");
  EXPECT_EQ(cell(rows, 3, "fits"), "false");
}

/// A number that binds the chain when it is set is never given without saying so; a belt has none.
TEST(CsvColumns, TheLimitOfSlackSaysThatItIsNoSetting) {
  const auto rowsOf = [](const char* sample) {
    return cellsOf(chainRunCsv(plan(loadProfile(sourceFolder() / "sample-profiles" / sample).value())));
  };
  const auto chain = rowsOf("motocross-450.bike.json"), belt = rowsOf("tourer-belt.bike.json");
  EXPECT_NE(cell(chain, 2, "swingarm_least_play_mm"), "");
  EXPECT_NE(cell(chain, 2, "slack_note").find("never a setting"), std::string::npos);
  EXPECT_NE(cell(belt, 2, "swingarm_tight_spot_deg"), "");
  EXPECT_EQ(cell(belt, 2, "swingarm_least_play_mm"), "");
  EXPECT_EQ(cell(belt, 2, "slack_note"), "");
}

}  // namespace
}  // namespace layshaft::test
