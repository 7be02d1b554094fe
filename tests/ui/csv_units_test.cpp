// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/csv_units.h"

#include "core/ladder_csv.h"
#include "core/number_text.h"
#include "core/report.h"
#include "tests/ui/support.h"

namespace layshaft::test {
namespace {

using ui::UnitsShown;
using ui::UnitSystem;

QStringList lineOf(const std::string& csv, int line) {
  return QString::fromStdString(csv).split('\n').at(line).split(',');
}

/// A column of the second row, by its title.
double valueOf(const std::string& csv, const QString& title) {
  const auto at = lineOf(csv, 0).indexOf(title);
  if (at < 0) throw std::runtime_error("no column " + title.toStdString());
  return numberFromText(lineOf(csv, 2).at(at).toStdString()).value();
}

TEST(CsvUnits, TitlesNameTheUnitAndNumbersAreInIt) {
  const std::string csv =
      "setup,speed_at_rev_limit_mps,rollout_m,axle_shift_mm,force_n,acceleration_mps2,top_chain_speed_mps,"
      "saved_kg,distance_m,time_s\n\"a, \"\"b\"\"\",44.704,2.54,25.4,4.4482216152605,3.048,30.48,0.45359237,"
      "304.8,\n";
  EXPECT_EQ(
      ui::csvInUnits(csv, UnitsShown(UnitSystem::Imperial)),
      "setup,speed_at_rev_limit_mph,rollout_in,axle_shift_in,force_lbf,acceleration_ftps2,"
      "top_chain_speed_ftps,saved_lb,distance_ft,time_s\n\"a, \"\"b\"\"\",100,100,1,1,10,100,1,1000,\n");
  EXPECT_EQ(ui::csvInUnits(csv, UnitsShown(UnitSystem::Mixed)),
            "setup,speed_at_rev_limit_mph,rollout_mm,axle_shift_mm,force_n,acceleration_mps2,"
            "top_chain_speed_mps,saved_kg,distance_m,time_s\n\"a, \"\"b\"\"\",100,2540,25.4,4.4482216152605,"
            "3.048,30.48,0.45359237,304.8,\n");
  EXPECT_EQ(lineOf(ui::csvInUnits(csv, UnitsShown(UnitSystem::Metric)), 0).at(1), "speed_at_rev_limit_kmh");
  EXPECT_EQ(ui::csvInUnits("", UnitsShown()), "");
}

TEST(CsvUnits, OfEveryTableHaveTheFiguresOfThePlan) {
  const Plan planned = plan(workedExample());
  const UnitsShown imperial(UnitSystem::Imperial), metric;
  const std::string gears = ui::csvInUnits(reportCsv(planned), imperial);
  const double mps = *planned.stock.gearing.gears[1].speedAtRevLimitMps;
  EXPECT_NEAR(valueOf(gears, "speed_at_rev_limit_mph"), mps / 0.44704, 1e-9);
  EXPECT_NEAR(valueOf(ui::csvInUnits(reportCsv(planned), metric), "speed_at_rev_limit_kmh"), mps * 3.6, 1e-9);
  EXPECT_NEAR(valueOf(gears, "rollout_in"), planned.stock.gearing.rollout.metres / 0.0254, 1e-9);
  EXPECT_NEAR(valueOf(gears, "ratio"), 2.06, 1e-12);

  const std::string chain = ui::csvInUnits(chainRunCsv(planned), imperial);
  EXPECT_NEAR(valueOf(chain, "wheelbase_in"), *planned.proposed.chainRun->wheelbaseM / 0.0254, 1e-9);
  EXPECT_NEAR(valueOf(chain, "peak_tension_lbf"), *planned.proposed.chainRun->peakTensionN / 4.4482216152605,
              1e-8);
  EXPECT_NEAR(valueOf(chain, "top_chain_speed_ftps"), *planned.proposed.chainRun->topChainSpeedMps / 0.3048,
              1e-9);
}

TEST(CsvUnits, OfTheLadderTheStartGoesWithTheUnitOfSpeed) {
  Profile profile = workedExample();
  profile.aims = {{.want = Aim::Want::TopSpeedAtLeast, .speedKmh = 240}};
  const auto rows = Ladder(ladderInput(profile)).rows({15, 15, 42, 44});
  const std::string csv = ladderCsv(rows, profile.aims);
  const std::string metric = ui::csvInUnits(csv, UnitsShown()),
                    mixed = ui::csvInUnits(csv, UnitsShown(UnitSystem::Mixed));
  EXPECT_NEAR(valueOf(metric, "zero_to_100_kmh_s"), *rows[1].zeroTo100KmhS, 1e-9);
  EXPECT_FALSE(lineOf(metric, 0).contains("zero_to_60_mph_s"));
  EXPECT_NEAR(valueOf(mixed, "zero_to_60_mph_s"), *rows[1].zeroTo60MphS, 1e-9);
  EXPECT_FALSE(lineOf(mixed, 0).contains("zero_to_100_kmh_s"));
  EXPECT_NEAR(valueOf(mixed, "aim_1_margin_mph"), *rows[1].aims[0].margin / 0.44704, 1e-9);
  EXPECT_EQ(lineOf(mixed, 0).size(), lineOf(mixed, 2).size());
}

}  // namespace
}  // namespace layshaft::test
