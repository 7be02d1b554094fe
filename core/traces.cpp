// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/traces.h"

namespace layshaft {
PullCurves pullCurves(const SetupPlan& setup) {
  return setup.model ? pullCurves(*setup.model) : PullCurves{};
}

RunTrace standingStartTrace(const SetupPlan& setup) {
  const auto& plan = setup.road.run.quarterMilePlan;
  return plan ? standingStartTrace(*setup.model, *plan) : RunTrace{};
}

RunTrace driveTrace(const SetupPlan& setup, const std::optional<DriveRequest>& drive) {
  const auto& figures = setup.road.run.drive;
  return figures && drive ? driveTrace(*setup.model, *drive, figures->plan) : RunTrace{};
}

}  // namespace layshaft
