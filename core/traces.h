// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/plan.h"
#include "core/study/pull_curves.h"

/// What is drawn of a setup's plan, worked out when somebody asks; empty where there is no data for it.
namespace layshaft {

PullCurves pullCurves(const SetupPlan& setup);

/// From a standstill over the quarter mile, by the plan with the least time for it.
RunTrace standingStartTrace(const SetupPlan& setup);

/// Down the straight of the plan that the setup is of, in the least time.
RunTrace driveTrace(const SetupPlan& setup, const std::optional<DriveRequest>& drive);

}  // namespace layshaft
