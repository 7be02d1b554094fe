// SPDX-License-Identifier: GPL-3.0-or-later
//
// The local plane beside geodesics on the WGS 84 ellipsoid by another method (GeographicLib's GeodesicExact,
// after Karney, J. Geodesy 87 (2013), 43-55), and beside lengths of a degree at 47.5° N from the series that
// handbooks of geodesy give: 111180.55 m of latitude, 75343.60 m of longitude.
#include "core/track/plane.h"

#include <gtest/gtest.h>

#include <GeographicLib/GeodesicExact.hpp>
#include <cmath>
#include <random>

#include "core/track/recorded_track.h"
#include "tests/core/recordings.h"

namespace layshaft::test {
namespace {

const GeographicLib::GeodesicExact& earth() {
  return GeographicLib::GeodesicExact::WGS84();
}

double geodesicM(double lat1, double lon1, double lat2, double lon2) {
  double metres = 0.0;
  earth().Inverse(lat1, lon1, lat2, lon2, metres);
  return metres;
}

TEST(LocalPlane, LengthOfADegree) {
  const LocalPlane plane({.latitudeDeg = 47.5, .longitudeDeg = 11.0, .heightM = 0.0});
  constexpr double kPart = 0.01;  // of a degree: small, as a track is
  const PlanePoint north = plane.onPlane(47.5 + kPart / 2, 11.0),
                   south = plane.onPlane(47.5 - kPart / 2, 11.0);
  EXPECT_NEAR((north.yM - south.yM) / kPart, 111180.55, 0.04);
  EXPECT_NEAR(north.yM - south.yM, geodesicM(47.5 + kPart / 2, 11.0, 47.5 - kPart / 2, 11.0), 1e-5);
  const PlanePoint east = plane.onPlane(47.5, 11.0 + kPart / 2), west = plane.onPlane(47.5, 11.0 - kPart / 2);
  EXPECT_NEAR((east.xM - west.xM) / kPart, 75343.60, 0.04);
}

TEST(LocalPlane, DistancesAndDirectionsAreThoseOfGeodesics) {
  std::mt19937 random(7);
  std::uniform_real_distribution<> latitude(-90, 90), longitude(-180, 180), metres(1, 5000), degrees(0, 360);
  for (int i = 0; i < 500; ++i) {
    // Poles and the 180th meridian too.
    const double lat = i == 0   ? 90.0
                       : i == 1 ? -90.0
                                : latitude(random),
                 lon = i == 2 ? 180.0 : longitude(random);
    const LocalPlane plane({.latitudeDeg = lat, .longitudeDeg = lon, .heightM = 0.0});
    const double length = metres(random), azimuth = degrees(random);
    double lat2 = 0.0, lon2 = 0.0;
    earth().Direct(lat, lon, azimuth, length, lat2, lon2);
    const PlanePoint there = plane.onPlane(lat2, lon2);
    EXPECT_NEAR(std::hypot(there.xM, there.yM), length, 4e-7 * length + 1e-8) << lat << " " << lon;
    const double off = std::remainder(std::atan2(there.xM, there.yM) * 180.0 / units::kPi - azimuth, 360.0);
    EXPECT_NEAR(off, 0.0, 1e-4) << lat << " " << lon;
    const EarthPoint back = plane.onEarth(there);
    EXPECT_NEAR(geodesicM(back.latitudeDeg, back.longitudeDeg, lat2, lon2), 0.0, 0.002 + 3e-7 * length);
  }
}

TEST(LocalPlane, AtAHeightLengthsAreLonger) {
  const LocalPlane sea({.latitudeDeg = 47.5, .longitudeDeg = 11.0, .heightM = 0.0}),
      pass({.latitudeDeg = 47.5, .longitudeDeg = 11.0, .heightM = 2000.0});
  EXPECT_NEAR(pass.onPlane(47.51, 11.0).yM / sea.onPlane(47.51, 11.0).yM, 1.0 + 2000.0 / 6.37e6, 2e-6);
}

// A lap of geodesics, as long as those are, wherever on earth.
TEST(LocalPlane, LengthOfARecordedLap) {
  for (const auto& [lat, lon] : {std::pair{48.0, 11.0}, {-33.0, 179.999}, {89.99, 30.0}, {0.0, -179.998}}) {
    Recording recording{.kind = Recording::Kind::Gpx};
    constexpr int kPoints = 720;
    constexpr double kRadiusM = 400.0;
    double around = 0.0;
    for (int i = 0; i <= kPoints; ++i) {
      double lat2 = 0.0, lon2 = 0.0;
      earth().Direct(lat, lon, 360.0 * i / kPoints, kRadiusM, lat2, lon2);
      if (i > 0) around += geodesicM(recording.fixes.back().north, recording.fixes.back().east, lat2, lon2);
      recording.fixes.push_back({.east = lon2, .north = lat2});
    }
    const auto track = recordedTrack(recording);
    ASSERT_TRUE(track.ok()) << lat;
    EXPECT_TRUE(track->closed);
    // The polygon is shorter than its circle by (π/720)²/6.
    EXPECT_NEAR(track->lengthM, around * (1.0 + std::pow(units::kPi / kPoints, 2) / 6.0), 1e-5 * around)
        << lat;
    EXPECT_NEAR(track->smallestRadiusM.value(), kRadiusM, 0.5) << lat;
  }
}

}  // namespace
}  // namespace layshaft::test
