// SPDX-License-Identifier: GPL-3.0-or-later
#include <gmock/gmock.h>

#include <QTemporaryDir>
#include <algorithm>

#include "core/bike/pair.h"
#include "core/pairs_report.h"
#include "core/plan.h"
#include "core/units.h"
#include "tests/core/support.h"
#include "tests/ui/program.h"

namespace layshaft::test {
namespace {

Outcome ladder(const QStringList& words) {
  return run(QStringList{QStringLiteral("ladder")} + words);
}

Json rowsOf(const QStringList& words) {
  return Json::parse(ladder(QStringList{"--format", "json"} + words).out.toStdString())["rows"];
}

TEST(LadderCommand, EachRowIsThePlanOfThatPair) {
  const QString file = samplePath("club-600");
  Profile profile = sampleBike("club-600");
  const Json rows = rowsOf({file});
  ASSERT_GT(rows.size(), 20U);
  for (const std::size_t i : {std::size_t{0}, rows.size() / 2, rows.size() - 1}) {
    const Json& row = rows[i];
    profile.proposed = proposalWithPair(profile, Teeth::front(row["front_teeth"].get<int>()).value(),
                                        Teeth::rear(row["rear_teeth"].get<int>()).value());
    const SetupPlan& of = plan(profile).proposed;
    EXPECT_NEAR(row["final_ratio"].get<double>(), of.gearing.finalRatio, 1e-12);
    EXPECT_NEAR(row["lap_s"].get<double>(), of.lap->timeS, 1e-9);
    EXPECT_NEAR(row["drive_s"].get<double>(), of.road.run.drive->timeS, 1e-9);
    EXPECT_NEAR(row["top_speed_kmh"].get<double>(), units::kmhFromMps(of.road.topSpeed->speedMps), 1e-9);
    EXPECT_EQ(row["fits"].get<bool>(), of.chainRun->fits.value_or(true));
    if (!row["fits"].get<bool>()) continue;
    EXPECT_EQ(row["links"].get<int>(), of.chainRun->links);
  }
}

TEST(LadderCommand, StandsByWhatIsAskedForWithThoseThatFitFirst) {
  const QString file = samplePath("club-600");
  const auto sorted = [](const Json& rows, const char* key, bool fitsFirst) {
    return std::is_sorted(rows.begin(), rows.end(), [&](const Json& a, const Json& b) {
      if (fitsFirst && a["fits"] != b["fits"]) return a["fits"].get<bool>();
      return a[key].get<double>() < b[key].get<double>();
    });
  };
  EXPECT_TRUE(sorted(rowsOf({file}), "lap_s", true)) << "the bike has tracks";
  EXPECT_TRUE(sorted(rowsOf({file, "--by", "drive"}), "drive_s", true));
  Json byRatio = rowsOf({file, "--by=ratio"});
  std::reverse(byRatio.begin(), byRatio.end());
  EXPECT_TRUE(sorted(byRatio, "final_ratio", false));
  const Json fitting = rowsOf({file, "--fits"});
  EXPECT_LT(fitting.size(), byRatio.size());
  EXPECT_TRUE(
      std::all_of(fitting.begin(), fitting.end(), [](const Json& row) { return row["fits"].get<bool>(); }));
}

TEST(LadderCommand, ABikeWithoutCurveOrTrackStandsByRatio) {
  const QString file = samplePath("tourer-belt");
  const Json rows = rowsOf({file});
  ASSERT_GT(rows.size(), 5U);
  EXPECT_TRUE(rows[0]["lap_s"].is_null());
  EXPECT_GE(rows[0]["final_ratio"].get<double>(), rows[rows.size() - 1]["final_ratio"].get<double>());
}

TEST(LadderCommand, SaysThatThereIsNothingToStandBy) {
  const QString file = samplePath("tourer-belt");
  const Outcome byLap = ladder({file, "--by", "lap"});
  EXPECT_EQ(byLap.code, 0);
  EXPECT_THAT(byLap.err.toStdString(), testing::HasSubstr("no pair has a lap"));
  const Json rows = rowsOf({file, "--by", "lap"});
  EXPECT_TRUE(std::is_sorted(rows.begin(), rows.end(), [](const Json& a, const Json& b) {
    if (a["fits"] != b["fits"]) return a["fits"].get<bool>();
    return a["final_ratio"].get<double>() > b["final_ratio"].get<double>();
  }));
  EXPECT_TRUE(ladder({file}).err.isEmpty()) << "nothing was asked for";
}

TEST(LadderCommand, TextAndCsvHaveTheSameRows) {
  const QString file = samplePath("club-600");
  const Profile profile = sampleBike("club-600");
  const auto pairs = pairsInReach(profile, PairOrder::Lap);
  EXPECT_EQ(ladder({file, "--format", "csv"}).out.toStdString(), pairsCsv(pairs));
  const Outcome text = ladder({file});
  EXPECT_EQ(text.code, 0);
  EXPECT_EQ(static_cast<std::size_t>(text.out.count('\n')), pairs.size() + 1);
  EXPECT_TRUE(QString::fromUtf8(text.out).contains(
      QStringLiteral("%1/%2").arg(pairs.front().frontTeeth).arg(pairs.front().rearTeeth)));
  const QTemporaryDir folder;
  const QString out = folder.filePath("pairs.csv");
  EXPECT_EQ(ladder({file, "--format", "csv", "--output", out}).code, 0);
  EXPECT_EQ(contentsOf(out.toStdString()), pairsCsv(pairs));
}

TEST(LadderCommand, SaysWhatItNeeds) {
  const QString file = samplePath("club-600");
  expectOneLineError(ladder({}), 2, {"a bike profile is needed", "usage: layshaft ladder FILE"});
  expectOneLineError(ladder({file, "--by", "colour"}), 2, {"unknown by colour", "lap, drive, ratio"});
  expectOneLineError(ladder({file, "--by"}), 2, {"--by needs a value"});
  expectOneLineError(ladder({file, "--fits=yes"}), 2, {"unknown option --fits=yes"});
  expectOneLineError(ladder({file, "--output", file}), 2, {"is the bike profile itself"});
  expectOneLineError(ladder({"nothing.json"}), 1, {"nothing.json", "cannot be read"});
}

TEST(ReportOfATrack, IsAskedForByItsName) {
  const QString file = samplePath("club-600");
  Profile profile = sampleBike("club-600");
  ASSERT_GE(profile.tracks.size(), 2U);
  const auto lapOf = [&](const QString& name) {
    const Outcome outcome = run({"report", file, "--format", "json", "--track", name});
    EXPECT_EQ(outcome.code, 0) << outcome.err.toStdString();
    return Json::parse(outcome.out.toStdString())["stock"]["lap"];
  };
  for (const Track& track : profile.tracks) {
    profile.ride->track = track.name;
    const Json lap = lapOf(QString::fromStdString(track.name));
    EXPECT_EQ(lap["track"].get<std::string>(), track.name);
    EXPECT_NEAR(lap["time_s"].get<double>(), plan(profile).stock.lap->timeS, 1e-9);
  }
  expectOneLineError(run({"report", file, "--track", "Nowhere"}), 1,
                     {"no track Nowhere", QString::fromStdString(profile.tracks[1].name)});
  expectOneLineError(run({"report", samplePath("tourer-belt"), "--track", "Nowhere"}), 1,
                     {"the bike has none"});
}

}  // namespace
}  // namespace layshaft::test
