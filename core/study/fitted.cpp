// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/fitted.h"

#include "core/units.h"

namespace layshaft {
namespace {

const std::optional<SprocketDetails>& detailsOf(const Setup& setup, SprocketPlace place) {
  return place == SprocketPlace::Front ? setup.options.frontSprocket : setup.options.rearSprocket;
}

/// Adds what one sprocket changes; false where a mass is not known, or is only estimated and that does not
/// do.
bool addDifference(Fitted& sum, const Setup& stock, const Setup& setup, SprocketPlace place, bool estimates) {
  const auto before = sprocketMass(stock, place), after = sprocketMass(setup, place);
  if (!before || !after || (!estimates && (before->estimated || after->estimated))) return false;
  const double ratio = place == SprocketPlace::Front ? finalRatio(setup.frontTeeth, setup.rearTeeth) : 1.0;
  sum.massKg += after->kg - before->kg;
  sum.wheelInertiaKgM2 += (after->inertiaKgM2 - before->inertiaKgM2) * ratio * ratio;
  return true;
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

std::optional<SprocketMass> sprocketMass(const Setup& setup, SprocketPlace place) {
  const auto& details = detailsOf(setup, place);
  const auto size = details && details->size ? details->size : setup.options.chainSize;
  if (!details || !size || isBelt(setup)) return std::nullopt;
  const int teeth = place == SprocketPlace::Front ? setup.frontTeeth.count() : setup.rearTeeth.count();
  const SprocketShape shape = sprocketShape(*size, teeth);
  if (details->massKg)
    return SprocketMass{*details->massKg, false, sprocketInertiaKgM2(shape, *details->massKg)};
  if (!details->material) return std::nullopt;
  const double kg = estimatedMassKg(shape, place, *details->material);
  return SprocketMass{kg, true, sprocketInertiaKgM2(shape, kg)};
}

Fitted fitted(const Setup& stock, const Setup& setup) {
  Fitted result{.axleShiftM = axleShiftM(stock, setup).value_or(0.0)};
  for (const SprocketPlace place : {SprocketPlace::Front, SprocketPlace::Rear})
    addDifference(result, stock, setup, place, false);
  return result;
}

std::optional<Fitted> fittedByEstimate(const Setup& stock, const Setup& setup) {
  Fitted result{.axleShiftM = axleShiftM(stock, setup).value_or(0.0)};
  bool known = false;
  for (const SprocketPlace place : {SprocketPlace::Front, SprocketPlace::Rear})
    known |= addDifference(result, stock, setup, place, true);
  return known ? std::optional(result) : std::nullopt;
}

}  // namespace layshaft
