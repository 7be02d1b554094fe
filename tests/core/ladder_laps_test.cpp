// SPDX-License-Identifier: GPL-3.0-or-later
// What a ladder knows of laps, and how it answers who aims for a quick one.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "core/plan.h"
#include "core/study/ladder.h"
#include "tests/core/lap_support.h"

namespace layshaft::test {
namespace {

constexpr LadderRange kReach{14, 17, 38, 50};

Profile bikeOnTrack() {
  return loadProfile(sourceFolder() / "tests/reference/data/lap-club-600.bike.json").value();
}

std::vector<LadderRow> rowsFor(const Profile& profile) {
  return Ladder(ladderInput(profile)).rows(kReach);
}

Profile aimingForLaps(std::vector<Aim> others = {}) {
  Profile profile = bikeOnTrack();
  profile.aims = {{.want = Aim::Want::LeastLapTime}};
  profile.aims.insert(profile.aims.end(), others.begin(), others.end());
  return profile;
}

TEST(LadderLaps, EveryRowHasTheLapOfItsPair) {
  const Profile profile = bikeOnTrack();
  const OnTrack on(profile, profile.tracks.front());
  for (const LadderRow& row : rowsFor(profile)) {
    layshaft::Setup setup = profile.stock;
    setup.frontTeeth = Teeth::front(row.frontTeeth).value();
    setup.rearTeeth = Teeth::rear(row.rearTeeth).value();
    ASSERT_TRUE(row.lapS);
    EXPECT_NEAR(*row.lapS, on.lapOf(profile, setup)->timeS, 1e-9) << row.frontTeeth << '/' << row.rearTeeth;
    EXPECT_FALSE(row.lapBandS) << "nobody asked";
  }
}

TEST(LadderLaps, OnlyWhereATrackIsRidden) {
  Profile profile = bikeOnTrack();
  profile.tracks.clear();
  for (const LadderRow& row : rowsFor(profile)) EXPECT_FALSE(row.lapS);
}

TEST(LadderLaps, TheBestIsTheQuickestThatFits) {
  const Profile profile = aimingForLaps();
  const auto rows = rowsFor(profile);
  const AimAnswer answer = aimAnswer(rows, profile.aims);
  ASSERT_TRUE(answer.best);
  for (const LadderRow& row : rows)
    if (row.fits()) {
      EXPECT_LE(*rows[*answer.best].lapS, *row.lapS);
    }
  const std::size_t misfits =
      static_cast<std::size_t>(std::count_if(rows.begin(), rows.end(), [&](const LadderRow& r) {
        return !r.fits() && *r.lapS < *rows[*answer.best].lapS;
      }));
  EXPECT_GT(misfits, 0U) << "or it shows nothing";
  EXPECT_EQ(answer.betterLeftOut.size(), misfits);
  EXPECT_TRUE(std::all_of(answer.betterBy.begin(), answer.betterBy.end(),
                          [](BetterBy by) { return by == BetterBy::LapTime; }));
}

TEST(LadderLaps, TheMarginIsWhatAPairTakesLessThanStock) {
  const Profile profile = aimingForLaps();
  const auto rows = rowsFor(profile);
  const auto stock = std::find_if(rows.begin(), rows.end(), [](const LadderRow& row) {
    return row.frontTeeth == 16 && row.rearTeeth == 43;
  });
  ASSERT_NE(stock, rows.end());
  for (const LadderRow& row : rows) {
    EXPECT_NEAR(row.aims[0].margin.value(), *stock->lapS - *row.lapS, 1e-12);
    EXPECT_EQ(row.aims[0].bandS, row.lapBandS.value());
  }
}

TEST(LadderLaps, EqualAreThoseWithinTheBandOfEither) {
  const Profile profile = aimingForLaps();
  const auto rows = rowsFor(profile);
  const AimAnswer answer = aimAnswer(rows, profile.aims);
  const LadderRow& best = rows[answer.best.value()];
  std::size_t equal = 0;
  double widest = kEqualTimesS;
  for (const LadderRow& row : rows) {
    if (&row == &best || !row.fits()) continue;
    const double band = std::max({kEqualTimesS, *row.lapBandS, *best.lapBandS});
    if (*row.lapS - *best.lapS > band) continue;
    ++equal;
    widest = std::max(widest, band);
  }
  EXPECT_GT(equal, 0U) << "or it shows nothing";
  EXPECT_EQ(answer.asQuick.size(), equal);
  EXPECT_EQ(answer.asQuickWithinS, widest);
}

TEST(LadderLaps, OfTwoTimesTheOneAimedForFirstDecides) {
  Profile profile = aimingForLaps({{.want = Aim::Want::LeastDriveTime}});
  profile.ride->drive = Drive{.exitSpeedKmh = 60, .lengthM = 900};
  const auto fastest = [](const Profile& p) {
    const auto rows = rowsFor(p);
    const LadderRow& row = rows[aimAnswer(rows, p.aims).best.value()];
    return std::pair(row.frontTeeth, row.rearTeeth);
  };
  const auto lapFirst = fastest(profile);
  std::swap(profile.aims[0], profile.aims[1]);
  const auto driveFirst = fastest(profile);
  EXPECT_NE(lapFirst, driveFirst) << "a long straight asks for other gearing than the corners";
}

TEST(LadderLaps, WithoutATrackTheAimIsNotReached) {
  Profile profile = aimingForLaps();
  profile.tracks.clear();
  const auto rows = rowsFor(profile);
  for (const LadderRow& row : rows) EXPECT_FALSE(row.aims[0].reached);
  EXPECT_FALSE(aimAnswer(rows, profile.aims).best);
}

}  // namespace
}  // namespace layshaft::test
