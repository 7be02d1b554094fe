// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/bike/record_list.h"

#include <algorithm>
#include <type_traits>

namespace layshaft {

std::vector<RecordRef> newestFirst(const Profile& profile) {
  struct Dated {
    Date date;
    RecordRef ref;
  };
  std::vector<Dated> all;
  forEachRecord(profile, [&](const auto& entry, RecordRef ref) { all.push_back({entry.date, ref}); });
  std::reverse(all.begin(), all.end());
  std::stable_sort(all.begin(), all.end(), [](const Dated& a, const Dated& b) { return a.date > b.date; });
  std::vector<RecordRef> refs;
  refs.reserve(all.size());
  for (const Dated& dated : all) refs.push_back(dated.ref);
  return refs;
}

UseUnit useUnitOf(const Profile& profile) {
  return profile.wear ? profile.wear->useUnit.value_or(UseUnit::Hours) : UseUnit::Hours;
}

std::optional<double> latestUse(const Profile& profile) {
  std::optional<double> latest;
  forEachRecord(profile, [&](const auto& entry, RecordRef) {
    if constexpr (!std::is_same_v<std::decay_t<decltype(entry)>, TrackNote>)
      if (entry.at && !entry.struck) latest = std::max(latest.value_or(*entry.at), *entry.at);
  });
  return latest;
}

std::optional<double> lastChainFittedAt(const Profile& profile) {
  const Service* last = nullptr;
  if (!profile.records) return std::nullopt;
  const auto& services = profile.records->services;
  for (std::size_t i = 0; i < services.size(); ++i) {
    const Service& service = services[i];
    if (service.struck || !service.newChain.value_or(false) || !service.at) continue;
    if (!last || service.date >= last->date) last = &service;
  }
  return last ? last->at : std::nullopt;
}

}  // namespace layshaft
