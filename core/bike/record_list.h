// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "core/bike/profile.h"
#include "core/bike/words.h"

/// The entries of all kinds that a profile holds, as one list.
namespace layshaft {

enum class RecordKind { Service, TrackNote, Measurement };
inline constexpr Words<RecordKind, 3> kRecordKindWords{{{RecordKind::Service, "service"},
                                                        {RecordKind::TrackNote, "track_note"},
                                                        {RecordKind::Measurement, "measurement"}}};

/// Where an entry is: its kind, and its place among those of that kind.
struct RecordRef {
  RecordKind kind{};
  std::size_t index = 0;
  bool operator==(const RecordRef&) const = default;
};

/// Calls `each` with every entry and where it is: services, track notes, measurements, each as written down.
template <class Each>
void forEachRecord(const Profile& profile, Each each) {
  const auto all = [&](const auto& entries, RecordKind kind) {
    for (std::size_t i = 0; i < entries.size(); ++i) each(entries[i], RecordRef{kind, i});
  };
  if (profile.records) {
    all(profile.records->services, RecordKind::Service);
    all(profile.records->trackNotes, RecordKind::TrackNote);
  }
  if (profile.wear) all(profile.wear->measurements, RecordKind::Measurement);
}

/// All entries, the newest first; of one day the one of a kind that was written down last.
std::vector<RecordRef> newestFirst(const Profile& profile);

/// What use is counted in: hours where nothing is said.
UseUnit useUnitOf(const Profile& profile);

/// The most use of the bike that an entry knows which is not struck through, in the unit of the profile.
std::optional<double> latestUse(const Profile& profile);

/// The use at which the newest chain of the services was fitted, by their days; none where no service says
/// so.
std::optional<double> lastChainFittedAt(const Profile& profile);

}  // namespace layshaft
