// SPDX-License-Identifier: GPL-3.0-or-later
//
// A lap between the points that are kept of it, against the same lap worked out far more densely.
#include "core/study/lap_place.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/study/lap_trace.h"
#include "tests/core/lap_support.h"

namespace layshaft::test {
namespace {

/// Speed and time along a lap, by the quadrature that the lap itself is made of: hundreds of places of each
/// leg.
class DenseLap {
 public:
  DenseLap(const OnTrack& on, const Profile& profile, const layshaft::Setup& setup)
      : rollout_(rolloutOf(setup)),
        model_(on.bike, roadOf(profile.bike, *profile.ride), setup, rollout_, fitted(profile.stock, setup)),
        bike_(model_, crownShare(setup, rollout_), on.allowed) {
    LapSearch search(bike_);
    const double start = on.allowed.stretches().front().entryMps;
    const RiddenLap lap = riddenLap(bike_, search.from(start).value(), start);
    for (const LapLeg& leg : lap.legs) {
      add(leg.start);
      if (leg.kind == LapLeg::Kind::Pull) addPull(leg);
      if (leg.kind == LapLeg::Kind::Follow && leg.end.mps < leg.start.mps) addBrakes(leg);
      add(leg.end);
    }
  }

  struct Place {
    double distanceM, timeS, speedMps;
  };
  const std::vector<Place>& places() const { return places_; }
  double timeAt(double distanceM) const {
    const auto above =
        std::lower_bound(places_.begin(), places_.end(), distanceM,
                         [](const Place& place, double metres) { return place.distanceM < metres; });
    if (above == places_.begin() || above == places_.end())
      return above == places_.end() ? places_.back().timeS : 0.0;
    const Place &a = *(above - 1), &b = *above;
    return a.timeS + (b.timeS - a.timeS) * (distanceM - a.distanceM) / (b.distanceM - a.distanceM);
  }

 private:
  static constexpr int kParts = 300;

  void add(const LapPlace& place) {
    places_.push_back(
        {bike_.allowed().stretches()[place.stretch].startM + place.offsetM, place.timeS, place.mps});
  }
  void addPull(const LapLeg& leg) {
    const std::size_t stretch = leg.start.stretch;
    const BendPace pace(bike_.bendMps(stretch), std::max(leg.start.mps, leg.end.mps));
    const double from = pace.measure(leg.start.mps), to = pace.measure(leg.end.mps);
    for (int part = 1; part < kParts; ++part) {
      const double q = from + (to - from) * part / kParts;
      const SpeedSums sums = speedSums(
          [&](double measure) {
            const LapPush push = bike_.push(stretch, leg.on, pace.mps(measure), pace.left(measure));
            return pace.rate(measure, push.mps2, push.fades());
          },
          from, q);
      add({leg.start.timeS + sums.timeS, stretch, leg.start.offsetM + sums.distanceM, pace.mps(q)});
    }
  }
  void addBrakes(const LapLeg& leg) {
    for (int part = 1; part < kParts; ++part) {
      const double mps = leg.start.mps + (leg.end.mps - leg.start.mps) * part / kParts;
      const ToTheEnd left = bike_.allowed().braking(leg.start.stretch, mps);
      add({leg.end.timeS - left.timeS, leg.start.stretch, leg.end.offsetM - left.distanceM, mps});
    }
  }

  Rollout rollout_;
  RoadModel model_;
  LapBike bike_;
  std::vector<Place> places_;
};

class LapPlaceTest : public testing::Test {
 protected:
  Profile profile_ = loadProfile(sourceFolder() / "tests/reference/data/lap-club-600.bike.json").value();
  OnTrack on_{profile_, profile_.tracks.front()};
  layshaft::Setup proposed_ = applied(profile_.proposed, profile_.stock);
};

TEST_F(LapPlaceTest, BetweenPointsALapIsWhereItIs) {
  for (const auto& setup : {profile_.stock, proposed_}) {
    const LapFigures figures = on_.lapOf(profile_, setup).value();
    const DenseLap dense(on_, profile_, setup);
    ASSERT_NEAR(dense.places().back().timeS, figures.timeS, 1e-9);
    double late = 0.0, fast = 0.0;
    for (const DenseLap::Place& place : dense.places()) {
      const auto point = lapPointAt(figures.points, std::min(place.distanceM, on_.allowed.lengthM()));
      ASSERT_TRUE(point) << place.distanceM;
      late = std::max(late, std::abs(point->timeS - place.timeS));
      fast = std::max(fast, std::abs(point->speedMps - place.speedMps));
    }
    EXPECT_LT(late, 5e-5);
    EXPECT_LT(fast, 5e-3);
  }
}

/// As it is drawn, with a straight line from place to place. Times that were straight lines between the
/// points of a lap would be off by 0.05 s, and their difference would have a tooth wherever one of the two
/// shifts.
TEST_F(LapPlaceTest, TheDifferenceIsThatOfTheLapsEverywhere) {
  const DenseLap stock(on_, profile_, profile_.stock), proposed(on_, profile_, proposed_);
  const auto difference = lapDifference(on_.lapOf(profile_, profile_.stock).value().points,
                                        on_.lapOf(profile_, proposed_).value().points);
  ASSERT_GT(difference.size(), 20U);
  double off = 0.0;
  for (std::size_t i = 0; i + 1 < difference.size(); ++i) {
    const LapDifference &a = difference[i], &b = difference[i + 1];
    for (const double share : {0.0, 0.25, 0.5, 0.75}) {
      const double metres = a.distanceM + share * (b.distanceM - a.distanceM);
      const double drawn = a.laterS + share * (b.laterS - a.laterS);
      off = std::max(off, std::abs(drawn - (proposed.timeAt(metres) - stock.timeAt(metres))));
    }
  }
  EXPECT_LT(off, 5e-4);
}

/// From a standstill with 5 m/s², then braked: t = √(2d/a), v = √(2ad).
TEST(LapPlace, OneAccelerationIsMetExactly) {
  const std::vector<LapPoint> points{{0.0, 0.0, 0.0, 1, 4000.0, false}, {10.0, 2.0, 10.0, 1, 8000.0, false}};
  const auto place = lapPointAt(points, 2.5);
  ASSERT_TRUE(place);
  EXPECT_NEAR(place->timeS, 1.0, 1e-12);
  EXPECT_NEAR(place->speedMps, 5.0, 1e-12);
  EXPECT_EQ(lapPointAt(points, 10.0)->timeS, 2.0);
  EXPECT_EQ(lapPointAt(points, 0.0)->timeS, 0.0);
  for (const double outside : {-0.1, 10.1, std::nan("")}) EXPECT_FALSE(lapPointAt(points, outside));
  EXPECT_FALSE(lapPointAt({}, 0.0));
}

}  // namespace
}  // namespace layshaft::test
