// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <memory>

#include "core/plan.h"

namespace layshaft::ui {

/// What a chart draws of each setup of a plan, made once for each model: setups that a plan takes over from
/// the one before keep theirs.
template <class Drawn>
class PerModel {
 public:
  /// Makes what is missing and forgets what the plan no longer shows.
  template <class Make>
  void update(const Plan& plan, const Make& make) {
    std::map<std::shared_ptr<const RoadModel>, Drawn> shown;
    const auto take = [&](const SetupPlan& setup) {
      if (shown.contains(setup.model)) return;
      const auto old = drawn_.find(setup.model);
      shown.emplace(setup.model, old == drawn_.end() ? make(setup) : std::move(old->second));
    };
    take(plan.stock);
    take(plan.proposed);
    for (const SetupPlan& pin : plan.pins) take(pin);
    drawn_ = std::move(shown);
  }
  void clear() { drawn_.clear(); }

  /// Of a setup of the plan it was updated with last.
  const Drawn& of(const SetupPlan& setup) const { return drawn_.at(setup.model); }

 private:
  std::map<std::shared_ptr<const RoadModel>, Drawn> drawn_;
};

}  // namespace layshaft::ui
