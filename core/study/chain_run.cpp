// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/chain_run.h"

#include "core/units.h"

namespace layshaft {

std::optional<DriveLoop> driveLoop(const Setup& setup) {
  const SetupOptions& options = setup.options;
  const auto loop = [&](double pitchMm, int links) {
    return DriveLoop{.pair = {.pitchM = units::metresFromMillimetres(pitchMm),
                              .teeth1 = setup.frontTeeth.count(),
                              .teeth2 = setup.rearTeeth.count()},
                     .links = links};
  };
  if (options.finalDrive.value_or(FinalDrive::Chain) == FinalDrive::Belt) {
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

}  // namespace layshaft
