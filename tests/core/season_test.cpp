// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/season.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "tests/core/lap_support.h"

namespace layshaft::test {
namespace {

LapRow rowOf(int front, int rear, std::optional<double> lapS, bool fits = true,
             std::optional<int> links = 114) {
  return {.frontTeeth = front,
          .rearTeeth = rear,
          .finalRatio = static_cast<double>(rear) / front,
          .lapS = lapS,
          .changeS = {},
          .bandS = {},
          .fits = fits,
          .links = links};
}

TEST(Season, ThePairThatLosesLeastOverAllTracks) {
  // Each of the first two is the quickest of one track, the third one nearly so on both.
  const Season all = season({{rowOf(15, 43, 60.0), rowOf(16, 45, 60.3), rowOf(15, 44, 60.05)},
                             {rowOf(15, 43, 80.4), rowOf(16, 45, 80.0), rowOf(15, 44, 80.1)}});
  ASSERT_EQ(all.pairs.size(), 3U);
  EXPECT_EQ(all.one().frontTeeth, 15);
  EXPECT_EQ(all.one().rearTeeth, 44);
  EXPECT_NEAR(all.one().lossS, 0.15, 1e-12);
  ASSERT_EQ(all.quickest.size(), 2U);
  EXPECT_EQ(all.pairs[all.quickest[0]].rearTeeth, 43);
  EXPECT_EQ(all.pairs[all.quickest[1]].rearTeeth, 45);
  EXPECT_EQ(all.pairs[all.quickest[0]].laterS[0], 0.0);
  EXPECT_NEAR(all.pairs[all.quickest[0]].laterS[1], 0.4, 1e-12);
  EXPECT_EQ(all.swaps, 2) << "front and rear";
  EXPECT_EQ(all.chainChanges, 0);
}

TEST(Season, AChainThatMustBeCutIsCountedAndThePairThatFitsIsTheOneForAll) {
  const Season all = season({{rowOf(15, 43, 60.0), rowOf(15, 47, 61.0, false, 116)},
                             {rowOf(15, 43, 81.0), rowOf(15, 47, 80.0, false, 116)},
                             {rowOf(15, 43, 70.0), rowOf(15, 47, 72.0, false, 116)}});
  EXPECT_EQ(all.one().rearTeeth, 43);
  EXPECT_EQ(all.swaps, 2);
  EXPECT_EQ(all.chainChanges, 2);
}

TEST(Season, APairThatNoLengthMakesFitIsNobodysQuickest) {
  const Season all = season({{rowOf(15, 43, 60.0), rowOf(20, 43, 59.0, false, std::nullopt)},
                             {rowOf(15, 43, 80.0), rowOf(20, 43, 79.0, false, std::nullopt)}});
  EXPECT_EQ(all.pairs[all.quickest[0]].frontTeeth, 15);
  EXPECT_EQ(all.pairs.size(), 2U);
  EXPECT_EQ(all.pairs[1].laterS[0], -1.0);
}

TEST(Season, OnlyPairsWithALapOnEveryTrackCount) {
  EXPECT_TRUE(season({}).empty());
  EXPECT_TRUE(season({{rowOf(15, 43, 60.0)}, {rowOf(15, 43, std::nullopt)}}).empty());
  const Season all = season({{rowOf(15, 43, 60.0), rowOf(15, 44, 59.0)}, {rowOf(15, 43, 60.0)}});
  ASSERT_EQ(all.pairs.size(), 1U);
  EXPECT_EQ(all.one().rearTeeth, 43);
}

TEST(SeasonInput, WhichTrackIsRiddenAndWhatIsAimedForChangesNothingOfIt) {
  Profile profile = loadProfile(sourceFolder() / "sample-profiles/club-600.bike.json").value();
  const SeasonInput before = seasonInput(profile);
  EXPECT_EQ(before.tracks.size(), profile.tracks.size());
  profile.ride->track = profile.tracks.back().name;
  profile.aims = {{.want = Aim::Want::LeastLapTime}};
  profile.proposed.rearTeeth = rear(44);
  profile.tracks.front().extras = profile.extras;
  EXPECT_EQ(seasonInput(profile), before);
  profile.tracks.back().cornerSharePercent = 71;
  EXPECT_NE(seasonInput(profile), before);
}

/// Against a search of everything: no pair that fits has a smaller sum of lap times over the sample's tracks.
TEST(Season, NoPairThatFitsHasLessTimeOverTheTracksOfASample) {
  const Profile profile = loadProfile(sourceFolder() / "sample-profiles/club-600.bike.json").value();
  ASSERT_GE(profile.tracks.size(), 2U);
  const LadderRange range{14, 17, 40, 48};
  std::vector<std::vector<LapRow>> rows;
  for (const Track& track : profile.tracks)
    rows.push_back(LapLadder(ladderInput(profile), track).rows(range, LapLadder::Bands::None));
  const Season all = season(rows);
  ASSERT_FALSE(all.empty());
  const auto sumOf = [&](int front, int rear) {
    double sum = 0.0;
    for (const auto& ofTrack : rows)
      for (const LapRow& row : ofTrack)
        if (row.frontTeeth == front && row.rearTeeth == rear) sum += row.lapS.value();
    return sum;
  };
  const double least = sumOf(all.one().frontTeeth, all.one().rearTeeth);
  EXPECT_TRUE(all.one().fits);
  for (const SeasonPair& pair : all.pairs) {
    if (!pair.fits) continue;
    EXPECT_GE(sumOf(pair.frontTeeth, pair.rearTeeth), least - 1e-9);
  }
}

}  // namespace
}  // namespace layshaft::test
