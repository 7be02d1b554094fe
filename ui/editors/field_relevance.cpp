// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/field_relevance.h"

#include <algorithm>
#include <array>

#include "core/study/fitted.h"

namespace layshaft::ui {
namespace {

constexpr std::string_view kStock = "stock.", kProposed = "proposed.";
constexpr std::array<std::string_view, 6> kOfChains = {
    "chain_size",          "chain_kind",        "links", "chain_elongation_percent",
    "front_sprocket.size", "rear_sprocket.size"};
constexpr std::array<std::string_view, 2> kOfBelts = {"belt_pitch_mm", "belt_teeth"};

template <std::size_t N>
bool isOneOf(std::string_view name, const std::array<std::string_view, N>& names) {
  return std::find(names.begin(), names.end(), name) != names.end();
}

/// The same of a field of a setup, without where the setup stands.
bool appliesTo(const Setup& setup, std::string_view name) {
  if (isOneOf(name, kOfChains)) return !isBelt(setup);
  if (isOneOf(name, kOfBelts)) return isBelt(setup);
  return true;
}

}  // namespace

bool fieldApplies(std::string_view key, const Profile& profile) {
  if (key.starts_with(kStock)) return appliesTo(profile.stock, key.substr(kStock.size()));
  if (key.starts_with(kProposed)) {
    const std::string_view name = key.substr(kProposed.size());
    if (!isOneOf(name, kOfChains) && !isOneOf(name, kOfBelts)) return true;
    return appliesTo(applied(profile.proposed, profile.stock), name);
  }
  if (key == "bike.chain_run.belt_lengths_teeth")
    return isBelt(profile.stock) || isBelt(applied(profile.proposed, profile.stock));
  if (key.starts_with("wear.")) return !isBelt(profile.stock);
  return true;
}

}  // namespace layshaft::ui
