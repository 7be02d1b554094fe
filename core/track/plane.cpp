// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/track/plane.h"

#include <GeographicLib/LocalCartesian.hpp>

namespace layshaft {

struct LocalPlane::Projection {
  GeographicLib::LocalCartesian local;
  double heightM;
};

LocalPlane::LocalPlane(const EarthPoint& origin)
    : projection_(std::make_unique<const Projection>(
          Projection{GeographicLib::LocalCartesian(origin.latitudeDeg, origin.longitudeDeg, origin.heightM),
                     origin.heightM})) {}
LocalPlane::~LocalPlane() = default;
LocalPlane::LocalPlane(LocalPlane&&) noexcept = default;
LocalPlane& LocalPlane::operator=(LocalPlane&&) noexcept = default;

PlanePoint LocalPlane::onPlane(double latitudeDeg, double longitudeDeg) const {
  PlanePoint point;
  double up = 0.0;
  projection_->local.Forward(latitudeDeg, longitudeDeg, projection_->heightM, point.xM, point.yM, up);
  return point;
}

EarthPoint LocalPlane::onEarth(const PlanePoint& point) const {
  EarthPoint there;
  projection_->local.Reverse(point.xM, point.yM, 0.0, there.latitudeDeg, there.longitudeDeg, there.heightM);
  return there;
}

}  // namespace layshaft
