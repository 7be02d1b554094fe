// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/parts/sprocket_tooth.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

#include "core/parts/chain_geometry.h"
#include "core/units.h"

namespace layshaft {
namespace {

constexpr double kFlankSine = 0.5;    // of a flank's lean, 30°
constexpr double kMostLoss = 0.25;    // of the pitch
constexpr double kTipShare = 0.3;     // of the loss, at the tip
constexpr double kHookHeight = 0.45;  // of the way from the seat's end to the tip the full loss reaches

ChainPoint turned(const ChainPoint& p, double angle) {
  return {p.x * std::cos(angle) - p.y * std::sin(angle), p.x * std::sin(angle) + p.y * std::cos(angle)};
}

ChainPoint between(const ChainPoint& a, const ChainPoint& b, double share) {
  return {a.x + share * (b.x - a.x), a.y + share * (b.y - a.y)};
}

}  // namespace

double ridingRadiusM(const ChainSize& size, int teeth, double elongationPercent) {
  const double pitch = units::metresFromMillimetres(size.pitchMm) * (1.0 + elongationPercent / 100.0);
  return pitchRadiusM(pitch, teeth);
}

double rideOutM(const ChainSize& size, int teeth, double elongationPercent) {
  return ridingRadiusM(size, teeth, elongationPercent) - ridingRadiusM(size, teeth, 0.0);
}

double flankLossM(const ChainSize& size, int teeth, double elongationPercent) {
  return kFlankSine * rideOutM(size, teeth, elongationPercent);
}

std::vector<ChainPoint> wornSprocketOutline(const ChainSize& size, int teeth, double lossM) {
  const auto whole = sprocketOutline(size, teeth);
  const double pitch = units::metresFromMillimetres(size.pitchMm);
  const double turn = std::clamp(lossM, 0.0, kMostLoss * pitch) / ridingRadiusM(size, teeth, 0.0);
  // Of each tooth: the seat's points, clockwise end first, and the two edges of its tip.
  const std::size_t perTooth = whole.size() / static_cast<std::size_t>(teeth);
  const std::size_t seat = perTooth - 2, bottom = seat / 2;
  std::vector<ChainPoint> worn;
  worn.reserve(whole.size() + 2 * static_cast<std::size_t>(teeth));
  for (std::size_t tooth = 0; tooth < whole.size(); tooth += perTooth) {
    const auto at = [&](std::size_t i) { return whole[tooth + i]; };
    for (std::size_t i = 0; i <= bottom; ++i) worn.push_back(at(i));
    for (std::size_t i = bottom; i < seat; ++i) worn.push_back(turned(at(i), turn));
    worn.push_back(turned(between(at(seat - 1), at(seat), kHookHeight), turn));
    worn.push_back(turned(at(seat), kTipShare * turn));
    worn.push_back(at(seat + 1));
  }
  return worn;
}

}  // namespace layshaft
