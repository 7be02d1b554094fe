// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/parts/chain_path.h"

#include <cmath>

#include "core/units.h"

namespace layshaft {
namespace {

constexpr double kFullTurn = 2.0 * units::kPi;

ChainPoint between(const ChainPoint& a, const ChainPoint& b, double share) {
  return {std::lerp(a.x, b.x, share), std::lerp(a.y, b.y, share)};
}

}  // namespace

ChainPath::ChainPath(const ChainPair& pair, double centreM)
    : centreM_(centreM),
      frontRadiusM_(pitchRadiusM(pair.pitchM, pair.teeth1)),
      rearRadiusM_(pitchRadiusM(pair.pitchM, pair.teeth2)),
      alphaRad_(std::asin((rearRadiusM_ - frontRadiusM_) / centreM)),
      frontTeeth_(pair.teeth1),
      rearTeeth_(pair.teeth2),
      frontWrap_(pair.teeth1 * (0.5 - alphaRad_ / units::kPi)),
      straight_(centreM * std::cos(alphaRad_) / pair.pitchM),
      rearWrap_(pair.teeth2 * (0.5 + alphaRad_ / units::kPi)),
      links_(2.0 * straight_ + frontWrap_ + rearWrap_) {}

double ChainPath::frontAngleRad(double pitches) const {
  return units::kPi / 2.0 + alphaRad_ + pitches * kFullTurn / frontTeeth_;
}

double ChainPath::rearAngleRad(double pitches) const {
  return -units::kPi / 2.0 - alphaRad_ + (pitches - frontWrap_ - straight_) * kFullTurn / rearTeeth_;
}

double ChainPath::frontSeatRad(double travel) const {
  return frontAngleRad(travel);
}

double ChainPath::rearSeatRad(double travel) const {
  return rearAngleRad(travel);
}

ChainPoint ChainPath::at(double pitches) const {
  double u = std::fmod(pitches, links_);
  if (u < 0.0) u += links_;
  const auto onFront = [this](double at) {
    const double angle = frontAngleRad(at);
    return ChainPoint{frontRadiusM_ * std::cos(angle), frontRadiusM_ * std::sin(angle)};
  };
  const auto onRear = [this](double at) {
    const double angle = rearAngleRad(at);
    return ChainPoint{centreM_ + rearRadiusM_ * std::cos(angle), rearRadiusM_ * std::sin(angle)};
  };
  const double rearStart = frontWrap_ + straight_, rearEnd = rearStart + rearWrap_;
  if (u <= frontWrap_) return onFront(u);
  if (u < rearStart) return between(onFront(frontWrap_), onRear(rearStart), (u - frontWrap_) / straight_);
  if (u <= rearEnd) return onRear(u);
  return between(onRear(rearEnd), onFront(0.0), (u - rearEnd) / straight_);
}

std::vector<ChainPoint> ChainPath::polygon() const {
  constexpr double kStep = 0.5;  // pitches
  std::vector<ChainPoint> points;
  const auto wrap = [&](double from, double length) {
    const int steps = static_cast<int>(std::ceil(length / kStep));
    for (int i = 0; i <= steps; ++i) points.push_back(at(from + length * i / steps));
  };
  wrap(0.0, frontWrap_);
  wrap(frontWrap_ + straight_, rearWrap_);
  return points;
}

}  // namespace layshaft
