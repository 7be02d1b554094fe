// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cmath>
#include <cstdio>
#include <functional>
#include <random>
#include <string>
#include <vector>

#include "core/import/recording.h"
#include "core/units.h"

/// Recordings of lines that are known.
namespace layshaft::test {

struct RideOn {
  double stepM = 2.0;
  double turns = 1.0;  ///< how often around; 1 ends a step before it began
  double noiseM = 0.0;
  unsigned seed = 1;
};

/// An ellipse (a circle if the halves are equal) in a plane, ridden to the left from its right end.
inline Recording ellipse(double halfXM, double halfYM, const RideOn& ride = {}) {
  std::mt19937 random(ride.seed);
  std::normal_distribution<> noise(0.0, ride.noiseM > 0.0 ? ride.noiseM : 1.0);
  Recording recording{.kind = Recording::Kind::Table, .onEarth = false, .fixes = {}, .source = "ellipse"};
  for (double t = 0.0; t < 2.0 * units::kPi * ride.turns - 1e-9;) {
    const double dx = ride.noiseM > 0.0 ? noise(random) : 0.0, dy = ride.noiseM > 0.0 ? noise(random) : 0.0;
    recording.fixes.push_back({.east = halfXM * std::cos(t) + dx, .north = halfYM * std::sin(t) + dy});
    // The middle of the step: fine enough for steps that are all but equal.
    const double half = 0.5 * ride.stepM / std::hypot(halfXM * std::sin(t), halfYM * std::cos(t));
    t += ride.stepM / std::hypot(halfXM * std::sin(t + half), halfYM * std::cos(t + half));
  }
  return recording;
}

/// A line through given places in a plane.
inline Recording through(const std::vector<std::pair<double, double>>& places) {
  Recording recording{.kind = Recording::Kind::Table, .onEarth = false};
  for (const auto& [x, y] : places) recording.fixes.push_back({.east = x, .north = y});
  return recording;
}

inline std::string gpxOf(const std::string& points) {
  return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
         "<gpx version=\"1.1\" creator=\"a logger\" xmlns=\"http://www.topografix.com/GPX/1/1\">\n"
         "<trk><trkseg>\n" +
         points + "</trkseg></trk></gpx>\n";
}

/// Once around a circle of about 500 m at 48° N, 11° E, with heights and times, in `count` points.
inline std::string gpxCircle(int count) {
  std::string points;
  for (int i = 0; i < count; ++i) {
    const double t = 2.0 * units::kPi * i / count;
    char line[200];
    std::snprintf(
        line, sizeof line,
        "<trkpt lat=\"%.7f\" lon=\"%.7f\"><ele>%.2f</ele><time>2026-05-12T%02d:%02d:%02dZ</time></trkpt>\n",
        48.0 + 0.0045 * std::sin(t), 11.0 + 0.00672 * std::cos(t), 400.0 + 10.0 * std::sin(t), i / 3600 % 24,
        i / 60 % 60, i % 60);
    points += line;
  }
  return gpxOf(points);
}

}  // namespace layshaft::test
