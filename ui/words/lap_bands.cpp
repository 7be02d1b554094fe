// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/lap_bands.h"

#include <algorithm>

namespace layshaft::ui {
namespace {

/// The same doubts about another lap time.
LapTimes moved(LapTimes times, double seconds) {
  const double later = seconds - *times.seconds;
  times.seconds = seconds;
  for (auto& sides : times.off)
    for (auto& side : sides)
      if (side) *side += later;
  for (auto& day : times.otherDays)
    if (day) *day += later;
  return times;
}

std::vector<const SetupPlan*> setupsOf(const Plan& plan) {
  std::vector<const SetupPlan*> all{&plan.stock, &plan.proposed};
  for (const SetupPlan& pin : plan.pins) all.push_back(&pin);
  return all;
}

}  // namespace

LapBands LapBands::of(const Plan& plan) {
  LapBands bands;
  bands.on_ = plan.laps;
  bands.track_ = plan.input.track;
  for (const SetupPlan* setup : setupsOf(plan))
    bands.setups_.push_back({.setup = setup->setup, .laps = setup->lap != nullptr});
  return bands;
}

void LapBands::keep(const LapBands& before) {
  const bool sameStock = !before.setups_.empty() && before.setups_.front().setup == setups_.front().setup;
  if (before.on_ != on_ || !sameStock) return;
  for (Known& known : setups_) {
    const auto same = std::find_if(before.setups_.begin(), before.setups_.end(), [&](const Known& other) {
      return other.times && !other.guessed && other.setup == known.setup;
    });
    if (same != before.setups_.end()) known.times = same->times;
  }
}

LapBands LapBands::workedOut(const Plan& plan, const LapBands& before) {
  LapBands bands = of(plan);
  bands.keep(before);
  for (Known& known : bands.setups_)
    if (known.laps && !known.times) known.times = plan.laps->times(plan.stock.setup, known.setup);
  return bands;
}

LapBands LapBands::guessed(const Plan& plan, const LapBands& before) {
  LapBands bands = of(plan);
  bands.keep(before);
  if (before.track_ != bands.track_) return bands;
  const auto setups = setupsOf(plan);
  for (std::size_t i = 0; i < std::min(bands.setups_.size(), before.setups_.size()); ++i) {
    Known& known = bands.setups_[i];
    const auto& there = before.setups_[i].times;
    if (!known.laps || known.times || !there || !there->seconds) continue;
    known.times = moved(*there, setups[i]->lap->timeS);
    known.guessed = true;
  }
  return bands;
}

std::optional<double> LapBands::betweenS(std::size_t from, std::size_t to) const {
  if (from >= setups_.size() || to >= setups_.size()) return std::nullopt;
  const auto &a = setups_[from].times, &b = setups_[to].times;
  if (!a || !b || !a->seconds || !b->seconds) return std::nullopt;
  return lapBandS(*a, *b);
}

bool LapBands::isGuessed() const {
  return std::any_of(setups_.begin(), setups_.end(), [](const Known& known) { return known.guessed; });
}

bool LapBands::isWhole() const {
  return std::all_of(setups_.begin(), setups_.end(),
                     [](const Known& known) { return !known.laps || known.times; });
}

}  // namespace layshaft::ui
