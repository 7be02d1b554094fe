// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string_view>

#include "core/profile_file/access.h"

/// Fields of one entry of the records, a `WearMeasurement`, a `Service` or a `TrackNote`, or of a
/// `TrackSegment`, by the keys that it has in the file, such as `lap_time_s` or `setup.front_teeth`. As in
/// `access.h` otherwise.
namespace layshaft {

template <class Entry>
std::optional<FieldRule> entryRule(std::string_view key);

template <class Entry>
FieldValue entryValue(const Entry& entry, std::string_view key);

template <class Entry>
std::optional<Problem> setEntryField(Entry& entry, std::string_view key, const FieldValue& value);

/// What a file could not hold of an entry, with its key path in the entry; nothing if it could.
template <class Entry>
std::optional<Problem> entryProblem(const Entry& entry);

}  // namespace layshaft
