// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <optional>
#include <utility>
#include <vector>

#include "core/study/fitted.h"
#include "core/study/lap.h"
#include "core/study/lean.h"
#include "tests/core/support.h"

namespace layshaft::test {

/// A profile's bike on a track.
struct OnTrack {
  std::shared_ptr<const PullBike> bike;
  AllowedSpeed allowed;

  OnTrack(const Profile& profile, const Track& track)
      : bike(std::make_shared<const PullBike>(pullBike(profile.bike, profile.ride.value_or(Ride{})))),
        allowed(lapCourse(profile.bike, profile.ride.value_or(Ride{}), track), *bike) {}

  RoadModel modelOf(const Profile& profile, const layshaft::Setup& setup) const {
    return {bike, roadOf(profile.bike, profile.ride.value_or(Ride{})), setup, rolloutOf(setup),
            fitted(profile.stock, setup)};
  }
  std::optional<LapFigures> lapOf(const Profile& profile, const layshaft::Setup& setup) const {
    return lap(allowed, modelOf(profile, setup), crownShare(setup, rolloutOf(setup)));
  }
  std::optional<LapFigures> lapOf(const Profile& profile) const { return lapOf(profile, profile.stock); }
  std::optional<std::size_t> stopOf(const Profile& profile) const {
    return lapStop(allowed, modelOf(profile, profile.stock),
                   crownShare(profile.stock, rolloutOf(profile.stock)));
  }
};

/// 280 kg that pull with one force at any speed in their only gear, without any resistance: what closed forms
/// know. The rollout is 2 m.
inline Profile evenBike(double newtons, double grip) {
  Json json = minimalProfile();
  const double torque = newtons * (2.0 / (2.0 * 3.14159265358979323846)) / (2.0 * 2.0 * 40 / 16);
  json["bike"]["engine"] = {
      {"rev_limit_rpm", 30000},
      {"torque_curve", {{{"rpm", 100}, {"torque_nm", torque}}, {{"rpm", 30000}, {"torque_nm", torque}}}},
      {"torque_follows_air", false}};
  json["bike"]["chassis"] = {{"mass_kg", 200},          {"rider_mass_kg", 80},          {"drag_area_m2", 0},
                             {"rolling_resistance", 0}, {"drivetrain_efficiency", 1.0}, {"tyre_grip", grip}};
  json["stock"]["front_teeth"] = 16;
  json["stock"]["rear_teeth"] = 40;
  json["stock"]["primary_ratio"] = 2.0;
  json["stock"]["gear_ratios"] = {2.0};
  json["stock"]["rollout_mm"] = 2000;
  return profileFrom(json.dump());
}

inline TrackSegment straight(double metres) {
  TrackSegment segment;
  segment.lengthM = metres;
  return segment;
}
inline TrackSegment bend(double radiusM, double angleDeg) {
  TrackSegment segment;
  segment.radiusM = radiusM;
  segment.angleDeg = angleDeg;
  return segment;
}
inline TrackSegment corner(double metres, double kmh) {
  TrackSegment segment;
  segment.lengthM = metres;
  segment.cornerSpeedKmh = kmh;
  return segment;
}
inline Track trackOf(std::vector<TrackSegment> segments, bool closed) {
  Track track;
  track.name = "Test";
  track.closed = closed;
  track.cornerSharePercent = track.brakeSharePercent = 100.0;
  track.segments = std::move(segments);
  return track;
}

}  // namespace layshaft::test
