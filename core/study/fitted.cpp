// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/fitted.h"

#include "core/units.h"

namespace layshaft {
namespace {

const std::optional<SprocketDetails>& detailsOf(const Setup& setup, SprocketPlace place) {
  return place == SprocketPlace::Front ? setup.options.frontSprocket : setup.options.rearSprocket;
}

Teeth teethOf(const Setup& setup, SprocketPlace place) {
  return place == SprocketPlace::Front ? setup.frontTeeth : setup.rearTeeth;
}

std::optional<double> weighedKg(const Setup& setup, SprocketPlace place) {
  const auto& details = detailsOf(setup, place);
  return details ? details->massKg : std::nullopt;
}

std::optional<double> estimatedKg(const Setup& stock, const Setup& setup, SprocketPlace place) {
  const auto& details = detailsOf(setup, place);
  const auto size = cutFor(stock, setup, place);
  if (!details || !details->material || !size) return std::nullopt;
  return estimatedMassKg(sprocketShape(*size, teethOf(setup, place).count()), place, *details->material);
}

/// Of a sprocket of that mass about its axle; none where the pitch is not known.
std::optional<double> inertia(const Setup& setup, SprocketPlace place, double kg) {
  std::optional<double> pitchMm;
  if (isBelt(setup))
    pitchMm = setup.options.beltPitchMm;
  else if (setup.options.chainSize)
    pitchMm = setup.options.chainSize->pitchMm;
  if (!pitchMm) return std::nullopt;
  const double radius = pitchRadiusM(units::metresFromMillimetres(*pitchMm), teethOf(setup, place).count());
  return sprocketInertiaKgM2(radius, kg);
}

}  // namespace

bool isBelt(const Setup& setup) {
  return setup.options.finalDrive.value_or(FinalDrive::Chain) == FinalDrive::Belt;
}

std::optional<DriveLoop> driveLoop(const Setup& setup) {
  const SetupOptions& options = setup.options;
  const auto loop = [&](double pitchMm, int links) {
    return DriveLoop{.pair = {.pitchM = units::metresFromMillimetres(pitchMm),
                              .teeth1 = setup.frontTeeth.count(),
                              .teeth2 = setup.rearTeeth.count()},
                     .links = links};
  };
  if (isBelt(setup)) {
    if (!options.beltPitchMm || !options.beltTeeth) return std::nullopt;
    return loop(*options.beltPitchMm, *options.beltTeeth);
  }
  if (!options.chainSize || !options.links) return std::nullopt;
  // A worn chain is a longer one.
  return loop(options.chainSize->pitchMm * (1.0 + options.chainElongationPercent.value_or(0.0) / 100.0),
              *options.links);
}

std::optional<double> axleShiftM(const Setup& stock, const Setup& setup) {
  const auto before = driveLoop(stock), after = driveLoop(setup);
  if (!before || !after) return std::nullopt;
  const auto from = before->pair.centreM(before->links), to = after->pair.centreM(after->links);
  if (!from || !to) return std::nullopt;
  return *to - *from;
}

std::optional<ChainSize> cutFor(const Setup& stock, const Setup& setup, SprocketPlace place) {
  if (isBelt(setup)) return std::nullopt;
  if (const auto& details = detailsOf(setup, place); details && details->size) return details->size;
  const bool stays = teethOf(setup, place) == teethOf(stock, place) && !isBelt(stock);
  return stays && stock.options.chainSize ? stock.options.chainSize : setup.options.chainSize;
}

std::optional<SprocketMass> sprocketMass(const Setup& stock, const Setup& setup, SprocketPlace place) {
  if (const auto kg = weighedKg(setup, place)) return SprocketMass{*kg, false};
  if (const auto kg = estimatedKg(stock, setup, place)) return SprocketMass{*kg, true};
  return std::nullopt;
}

std::optional<SprocketDifference> sprocketDifference(const Setup& stock, const Setup& setup,
                                                     SprocketPlace place) {
  auto before = weighedKg(stock, place), after = weighedKg(setup, place);
  const bool weighed = before && after;
  if (!weighed) {
    before = estimatedKg(stock, stock, place);
    after = estimatedKg(stock, setup, place);
  }
  if (!before || !after) return std::nullopt;
  SprocketDifference difference{.kg = *after - *before, .wheelInertiaKgM2 = 0.0, .weighed = weighed};
  const auto was = inertia(stock, place, *before), is = inertia(setup, place, *after);
  // The front sprocket turns by the final ratio as often as the wheel.
  const double turns = place == SprocketPlace::Front ? finalRatio(setup.frontTeeth, setup.rearTeeth) : 1.0;
  if (was && is) difference.wheelInertiaKgM2 = (*is - *was) * turns * turns;
  return difference;
}

Fitted fitted(const Setup& stock, const Setup& setup) {
  Fitted result{.axleShiftM = axleShiftM(stock, setup).value_or(0.0)};
  for (const SprocketPlace place : {SprocketPlace::Front, SprocketPlace::Rear}) {
    const auto difference = sprocketDifference(stock, setup, place);
    if (difference && difference->weighed) result.add(*difference);
  }
  return result;
}

}  // namespace layshaft
