// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/profile_file/entry_access.h"

#include <string>

#include "core/bike/records.h"
#include "core/bike/track.h"
#include "core/profile_file/accessor.h"
#include "core/profile_file/reader.h"
#include "core/profile_file/writer.h"

namespace layshaft {

template <class Entry>
std::optional<FieldRule> entryRule(std::string_view key) {
  Entry any;
  profile_file::Asked asked{.key = key};
  profile_file::Access io(asked, key);
  profile_file::fields(io, any);
  return asked.rule;
}

template <class Entry>
FieldValue entryValue(const Entry& entry, std::string_view key) {
  profile_file::Asked asked{.key = key};
  profile_file::Access io(asked, key);
  // The field list is shared with the reader, which fills what it is given; asking only looks.
  profile_file::fields(io, const_cast<Entry&>(entry));
  return asked.value;
}

template <class Entry>
std::optional<Problem> setEntryField(Entry& entry, std::string_view key, const FieldValue& value) {
  profile_file::Asked asked{.key = key, .put = &value};
  profile_file::Access io(asked, key);
  profile_file::fields(io, entry);
  if (!asked.rule) return Problem{.kind = Problem::Kind::MissingKey, .path = std::string(key)};
  return asked.problem;
}

template <class Entry>
std::optional<Problem> entryProblem(const Entry& entry) {
  profile_file::Json json;
  profile_file::Writer writer(json);
  profile_file::fields(writer, const_cast<Entry&>(entry));
  std::optional<Problem> problem;
  profile_file::Reader reader(json, {}, problem);
  Entry back;
  profile_file::fields(reader, back);
  return problem;
}

#define LAYSHAFT_ENTRY(Entry)                                                                        \
  template std::optional<FieldRule> entryRule<Entry>(std::string_view);                              \
  template FieldValue entryValue<Entry>(const Entry&, std::string_view);                             \
  template std::optional<Problem> setEntryField<Entry>(Entry&, std::string_view, const FieldValue&); \
  template std::optional<Problem> entryProblem<Entry>(const Entry&);

LAYSHAFT_ENTRY(WearMeasurement)
LAYSHAFT_ENTRY(Service)
LAYSHAFT_ENTRY(TrackNote)
LAYSHAFT_ENTRY(TrackSegment)

}  // namespace layshaft
