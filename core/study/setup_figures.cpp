// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/setup_figures.h"

namespace layshaft {

SetupFigures setupFigures(const Circumstances& given, const Asked& asked, const Setup& stock,
                          const Setup& setup, FiguresWanted wanted) {
  SetupFigures figures{.fitted = fitted(stock, setup),
                       .model = {},
                       .gearing = {},
                       .pull = {},
                       .limits = {},
                       .topSpeed = {},
                       .run = {},
                       .chainRun = {}};
  if (asked.bike->hasForce()) {
    figures.model =
        std::make_shared<const RoadModel>(asked.bike, asked.road, setup, rolloutOf(setup), figures.fitted);
    figures.pull = peakPull(*figures.model);
    if (wanted.limits) figures.limits = gearLimits(*figures.model, figures.pull);
  }
  const RoadModel* model = figures.model.get();
  figures.gearing = gearing(
      setup, gearingConditions(
                 given, model ? model->shifts()
                              : shiftPoints(given.bike.engine.shiftRpm, setup.gearRatios.count(), nullptr)));
  if (asked.bike->accelerates()) {
    figures.topSpeed = topSpeed(*model);
    figures.run = runFigures(*model, asked.drive, wanted.rollOns ? std::optional(asked.rollOn) : std::nullopt,
                             wanted.rollOns);
  } else if (const auto& gears = figures.gearing.gears; !gears.empty() && gears.back().speedAtRevLimitMps) {
    // Only the gearing is known: the last gear at the limit.
    figures.topSpeed = TopSpeed{*gears.back().speedAtRevLimitMps, gears.back().gear, std::nullopt};
  }
  figures.chainRun = chainRun(given.bike, stock, setup, model, given.chainsOnHand);
  return figures;
}

}  // namespace layshaft
