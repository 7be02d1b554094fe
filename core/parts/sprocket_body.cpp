// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/parts/sprocket_body.h"

#include <algorithm>
#include <cmath>

#include "core/parts/chain_geometry.h"
#include "core/units.h"

namespace layshaft {
namespace {

constexpr double kSteelKgM3 = 7850.0, kAluminiumKgM3 = 2810.0;
constexpr double kRearFill = 0.5, kFrontFill = 1.0;
constexpr double kBore = 0.4;
constexpr double kThinPitchMm = 12.7;

}  // namespace

SprocketShape sprocketShape(const ChainSize& size, int teeth) {
  const double pitch = units::metresFromMillimetres(size.pitchMm);
  const double radius = pitchRadiusM(pitch, teeth);
  const double width = units::metresFromMillimetres(size.innerWidthMm);
  return {.pitchRadiusM = radius,
          .tipRadiusM = 0.5 * pitch * (0.6 + 1.0 / std::tan(units::kPi / teeth)),
          .rootRadiusM = radius - units::metresFromMillimetres(size.rollerDiameterMm) / 2.0,
          .boreRadiusM = kBore * radius,
          .thicknessM = (size.pitchMm <= kThinPitchMm ? 0.93 : 0.95) * width};
}

double estimatedMassKg(const SprocketShape& shape, SprocketPlace place, SprocketMaterial material) {
  const double ring =
      units::kPi * (shape.pitchRadiusM * shape.pitchRadiusM - shape.boreRadiusM * shape.boreRadiusM);
  return ring * shape.thicknessM * (place == SprocketPlace::Rear ? kRearFill : kFrontFill) *
         (material == SprocketMaterial::Steel ? kSteelKgM3 : kAluminiumKgM3);
}

double sprocketInertiaKgM2(double pitchRadiusM, double massKg) {
  return 0.5 * massKg * pitchRadiusM * pitchRadiusM * (1.0 + kBore * kBore);
}

std::vector<ChainPoint> sprocketOutline(const ChainSize& size, int teeth) {
  const SprocketShape shape = sprocketShape(size, teeth);
  const double seat = units::metresFromMillimetres(size.rollerDiameterMm) / 2.0;
  const double step = 2.0 * units::kPi / teeth;
  // A seat's arc ends where it would leave the tooth: a third of a tooth either side keeps a land at the tip.
  constexpr int kSeatPoints = 5;  // a tenth of a millimetre from round
  constexpr double kSeatHalfAngle = units::radiansFromDegrees(60.0);
  const double land = 0.11 * step;
  std::vector<ChainPoint> outline;
  outline.reserve(static_cast<std::size_t>(teeth) * (kSeatPoints + 2));
  for (int tooth = 0; tooth < teeth; ++tooth) {
    const double at = tooth * step;
    const double cx = shape.pitchRadiusM * std::cos(at), cy = shape.pitchRadiusM * std::sin(at);
    for (int i = 0; i < kSeatPoints; ++i) {
      // Round the side of the roller that looks at the axle.
      const double turn = kSeatHalfAngle * (2.0 * i / (kSeatPoints - 1) - 1.0);
      const double direction = at + units::kPi - turn;
      outline.push_back({cx + seat * std::cos(direction), cy + seat * std::sin(direction)});
    }
    for (const double edge : {at + step / 2.0 - land, at + step / 2.0 + land})
      outline.push_back({shape.tipRadiusM * std::cos(edge), shape.tipRadiusM * std::sin(edge)});
  }
  return outline;
}

}  // namespace layshaft
