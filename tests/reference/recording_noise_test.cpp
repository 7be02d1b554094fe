// SPDX-License-Identifier: GPL-3.0-or-later
// What the noise of a recording does to the difference between two pairs, against recording the same line
// again and again: the standard deviation of the differences (general statistics, no source).
#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "core/profile_file.h"
#include "core/study/lap_comparison.h"
#include "core/track/recorded_track.h"
#include "core/track_report.h"
#include "tests/core/recordings.h"
#include "tests/core/support.h"

namespace layshaft::test {
namespace {

struct Found {
  double differenceS, noiseS;
};

/// A narrow ellipse with bends of 22 m, recorded with noise and lapped with two pairs.
Found lapped(const Profile& profile, double noiseM, unsigned seed) {
  const auto recorded =
      recordedTrack(ellipse(220, 70, {.stepM = 3.0, .turns = 1.15, .noiseM = noiseM, .seed = seed}));
  const PlanInput input = planInput(profile);
  const LapComparison laps(input.shared, asked(input.shared), profileTrack(recorded.value()));
  const auto change = laps.change(input.stock, laps.times(input.stock, input.stock), input.proposed);
  return {change->seconds, change->noiseS};
}

TEST(RecordingNoise, MovesTheDifferenceAsMuchAsIsSaid) {
  const Profile profile = loadProfile(sourceFolder() / "tests/reference/data/lap-club-600.bike.json").value();
  constexpr unsigned kRecordings = 24;
  for (const double noiseM : {0.3, 1.0}) {
    std::vector<Found> all;
    for (unsigned seed = 1; seed <= kRecordings; ++seed) all.push_back(lapped(profile, noiseM, seed));
    double mean = 0.0, said = 0.0, scatter = 0.0;
    for (const Found& found : all) {
      mean += found.differenceS / kRecordings;
      said += found.noiseS * found.noiseS / kRecordings;
    }
    for (const Found& found : all)
      scatter += (found.differenceS - mean) * (found.differenceS - mean) / (kRecordings - 1);
    scatter = std::sqrt(scatter);
    said = std::sqrt(said);
    EXPECT_GT(said, 0.6 * scatter) << noiseM;
    EXPECT_LT(said, 1.7 * scatter) << noiseM;
    RecordProperty("said_ms_" + std::to_string(noiseM), static_cast<int>(1e6 * said));
    RecordProperty("scatter_ms_" + std::to_string(noiseM), static_cast<int>(1e6 * scatter));
  }
}

TEST(RecordingNoise, IsPartOfTheBand) {
  const Profile profile = loadProfile(sourceFolder() / "tests/reference/data/lap-club-600.bike.json").value();
  const PlanInput input = planInput(profile);
  Track track =
      profileTrack(recordedTrack(ellipse(220, 70, {.stepM = 3.0, .turns = 1.15, .noiseM = 1.0})).value());
  const auto changeOn = [&](const Track& on) {
    const LapComparison laps(input.shared, asked(input.shared), on);
    return laps.change(input.stock, laps.times(input.stock, input.stock), input.proposed).value();
  };
  const LapChange noisy = changeOn(track);
  TrackPath exact = *track.path;
  exact.curvatureNoisePerKm.reset();
  track.path = SharedPath(exact);
  const LapChange taken = changeOn(track);
  EXPECT_GT(noisy.noiseS, 0.0);
  EXPECT_EQ(taken.noiseS, 0.0);
  EXPECT_EQ(noisy.seconds, taken.seconds);
  EXPECT_NEAR(noisy.bandS, std::hypot(taken.bandS, noisy.noiseS), 1e-12);
}

}  // namespace
}  // namespace layshaft::test
