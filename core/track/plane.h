// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>

/// A plane that touches the earth, for lines of some kilometres.
namespace layshaft {

struct PlanePoint {
  double xM = 0.0, yM = 0.0;
  bool operator==(const PlanePoint&) const = default;
};

struct EarthPoint {
  double latitudeDeg = 0.0, longitudeDeg = 0.0;
  double heightM = 0.0;  ///< above the ellipsoid
  bool operator==(const EarthPoint&) const = default;
};

/// x to the east and y to the north of an origin, at the origin's height. Lengths at d from the origin are
/// too short by at most (d/6371 km)²/2 of themselves: 3e-7 at 5 km, 3e-5 at 50 km (GeographicLib's
/// LocalCartesian, which also puts poles and the 180th meridian inside such planes). Latitudes are within
/// ±90°.
class LocalPlane {
 public:
  explicit LocalPlane(const EarthPoint& origin);
  ~LocalPlane();
  LocalPlane(LocalPlane&&) noexcept;
  LocalPlane& operator=(LocalPlane&&) noexcept;

  PlanePoint onPlane(double latitudeDeg, double longitudeDeg) const;
  EarthPoint onEarth(const PlanePoint& point) const;

 private:
  struct Projection;
  std::unique_ptr<const Projection> projection_;
};

}  // namespace layshaft
