// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/traces.h"

namespace layshaft {
namespace {

bool runs(const SetupPlan& setup) {
  return setup.model && setup.model->bike().accelerates();
}

}  // namespace

PullCurves pullCurves(const SetupPlan& setup) {
  return setup.model ? pullCurves(*setup.model) : PullCurves{};
}

RunTrace standingStartTrace(const SetupPlan& setup) {
  return runs(setup) ? standingStartTrace(*setup.model) : RunTrace{};
}

RunTrace driveTrace(const SetupPlan& setup, const std::optional<DriveRequest>& drive) {
  return runs(setup) && drive ? driveTrace(*setup.model, *drive) : RunTrace{};
}

}  // namespace layshaft
