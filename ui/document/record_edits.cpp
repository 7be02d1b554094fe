// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/document/record_edits.h"

#include <QString>
#include <functional>
#include <string>
#include <utility>

#include "core/bike/entries.h"
#include "core/limits.h"
#include "core/number_text.h"
#include "core/profile_file/entry_access.h"
#include "ui/words/dates.h"

namespace layshaft::ui {
namespace {

/// A number that a file could not hold.
std::optional<Problem> outside(const std::optional<double>& value, const Limit& limit, std::string path) {
  if (!value || limit.contains(*value)) return std::nullopt;
  return Problem{.kind = Problem::Kind::OutOfRange,
                 .path = std::move(path),
                 .given = numberText(*value),
                 .low = limit.low,
                 .high = limit.high,
                 .unit = limit.unit};
}

std::optional<Problem> tooMany(std::size_t count, int most, std::string path) {
  if (count <= static_cast<std::size_t>(most)) return std::nullopt;
  return Problem{.kind = Problem::Kind::WrongCount,
                 .path = std::move(path),
                 .given = std::to_string(count),
                 .low = 0.0,
                 .high = static_cast<double>(most)};
}

std::string placed(const char* list, std::size_t index) {
  return std::string(list) + '[' + std::to_string(index) + ']';
}

/// Edits are told apart by their fields: two entries are never one step of the history.
EditName added(const char* list, std::size_t index, const QString& title) {
  return {.field = QString::fromStdString(placed(list, index)), .title = title, .shown = {}};
}

template <class Entry>
void strikeOut(Entries<Entry>& entries, std::size_t index, const Struck& why) {
  if (index >= entries.size() || entries[index].struck) return;
  Entry entry = entries[index];
  entry.struck = why;
  entries.put(index, std::move(entry));
}

constexpr const char* kMeasurements = "wear.measurements";
constexpr const char* kServices = "records.services";
constexpr const char* kTrackNotes = "records.track_notes";

/// What a file could not hold of an entry that comes to stand at a place in its list.
template <class Entry>
std::optional<Problem> wrongAt(const char* list, std::size_t index, const Entry& entry) {
  if (auto problem = tooMany(index + 1, limits::kMostRecords, list)) return problem;
  auto problem = entryProblem(entry);
  if (problem) problem->path = placed(list, index) + '.' + problem->path;
  return problem;
}

/// Where the chain on the bike was fitted, after the services have changed from `before`.
void followNewChain(Profile& profile, const std::optional<double>& before) {
  const auto now = lastChainFittedAt(profile);
  if (now == before) return;
  if (!profile.wear) profile.wear.emplace();
  if (now || profile.wear->chainFittedAt == before) profile.wear->chainFittedAt = now;
  const bool newer = now && (!before || *now > *before);
  if (newer) profile.stock.options.chainElongationPercent.reset();  // that of the old one
}

Records& recordsOf(Profile& profile) {
  return profile.records ? *profile.records : profile.records.emplace();
}

/// How many entries of a kind there are.
std::size_t serviceCount(const Profile& profile) {
  return profile.records ? profile.records->services.size() : 0;
}
std::size_t noteCount(const Profile& profile) {
  return profile.records ? profile.records->trackNotes.size() : 0;
}
std::size_t measurementCount(const Profile& profile) {
  return profile.wear ? profile.wear->measurements.size() : 0;
}

}  // namespace

std::optional<Problem> RecordEdits::addMeasurement(const WearMeasurement& entry) {
  const std::size_t index = measurementCount(document_.profile());
  if (auto problem = wrongAt(kMeasurements, index, entry)) return problem;
  return document_.edit(added(kMeasurements, index, tr("measurement of %1").arg(shownDate(entry.date))),
                        [&](Profile& profile) {
                          if (!profile.wear) profile.wear.emplace();
                          profile.wear->measurements.add(entry);
                        });
}

std::optional<Problem> RecordEdits::addService(const Service& entry) {
  const std::size_t index = serviceCount(document_.profile());
  if (auto problem = wrongAt(kServices, index, entry)) return problem;
  return document_.edit(added(kServices, index, tr("service of %1").arg(shownDate(entry.date))),
                        [&](Profile& profile) {
                          const auto fitted = lastChainFittedAt(profile);
                          recordsOf(profile).services.add(entry);
                          followNewChain(profile, fitted);
                        });
}

std::optional<Problem> RecordEdits::addTrackNote(const TrackNote& entry) {
  const std::size_t index = noteCount(document_.profile());
  if (auto problem = wrongAt(kTrackNotes, index, entry)) return problem;
  return document_.edit(added(kTrackNotes, index, tr("track note of %1").arg(shownDate(entry.date))),
                        [&](Profile& profile) { recordsOf(profile).trackNotes.add(entry); });
}

std::optional<Problem> RecordEdits::add(const RecordEntries& entries) {
  const Profile& now = document_.profile();
  const auto room = [](std::size_t held, std::size_t more, const char* list) {
    return tooMany(held + more, limits::kMostRecords, list);
  };
  const std::size_t measured = measurementCount(now);
  if (auto problem = room(serviceCount(now), entries.services.size(), kServices)) return problem;
  if (auto problem = room(noteCount(now), entries.trackNotes.size(), kTrackNotes)) return problem;
  if (auto problem = room(measured, entries.measurements.size(), kMeasurements)) return problem;
  const std::size_t before = serviceCount(now) + noteCount(now) + measured;
  const QString title = tr("%n records read", nullptr, static_cast<int>(entries.size()));
  return document_.edit(added("records.read", before, title), [&](Profile& profile) {
    const auto fitted = lastChainFittedAt(profile);
    for (const Service& entry : entries.services) recordsOf(profile).services.add(entry);
    for (const TrackNote& entry : entries.trackNotes) recordsOf(profile).trackNotes.add(entry);
    if (!entries.measurements.empty() && !profile.wear) profile.wear.emplace();
    for (const WearMeasurement& entry : entries.measurements) profile.wear->measurements.add(entry);
    followNewChain(profile, fitted);
  });
}

void RecordEdits::strike(const RecordRef& ref, const Struck& why) {
  const Profile& now = document_.profile();
  const std::size_t index = ref.index;
  const auto put = [&](const char* list, const QString& title, const std::function<void(Profile&)>& change) {
    document_.edit(added(list, index, title), change);
  };
  switch (ref.kind) {
    case RecordKind::Measurement:
      if (index >= measurementCount(now)) return;
      return put("wear.measurements.struck",
                 tr("strike measurement of %1").arg(shownDate(now.wear->measurements[index].date)),
                 [&](Profile& profile) { strikeOut(profile.wear->measurements, index, why); });
    case RecordKind::Service:
      if (index >= serviceCount(now)) return;
      return put("records.services.struck",
                 tr("strike service of %1").arg(shownDate(now.records->services[index].date)),
                 [&](Profile& profile) {
                   const auto fitted = lastChainFittedAt(profile);
                   strikeOut(profile.records->services, index, why);
                   followNewChain(profile, fitted);
                 });
    case RecordKind::TrackNote:
      if (index >= noteCount(now)) return;
      return put("records.track_notes.struck",
                 tr("strike track note of %1").arg(shownDate(now.records->trackNotes[index].date)),
                 [&](Profile& profile) { strikeOut(profile.records->trackNotes, index, why); });
  }
}

std::optional<Problem> RecordEdits::proposeSetupOf(std::size_t trackNote) {
  const Profile& now = document_.profile();
  if (trackNote >= noteCount(now) || !now.records->trackNotes[trackNote].setup) return std::nullopt;
  const TrackNote& note = now.records->trackNotes[trackNote];
  return document_.edit({.field = QStringLiteral("proposed.note.%1").arg(trackNote),
                         .title = tr("proposal from the note of %1").arg(shownDate(note.date)),
                         .shown = {}},
                        [&note](Profile& profile) {
                          SetupChange setup = withoutStockValues(*note.setup, profile.stock);
                          setup.options.extras = profile.proposed.options.extras;
                          profile.proposed = std::move(setup);
                        });
}

std::optional<Problem> RecordEdits::setSlack(const std::optional<LengthRange>& slack) {
  if (slack) {
    if (auto problem = outside(slack->lowMm, limits::kSlackMm, "wear.slack_mm[0]")) return problem;
    const Limit above{slack->lowMm, limits::kSlackMm.high, limits::kSlackMm.unit};
    if (auto problem = outside(slack->highMm, above, "wear.slack_mm[1]")) return problem;
  }
  return document_.edit(
      {.field = QStringLiteral("wear.slack_mm"), .title = tr("the manual's slack"), .shown = {}},
      [&](Profile& profile) {
        if (!profile.wear && slack) profile.wear.emplace();
        if (profile.wear) profile.wear->slackMm = slack;
      });
}

}  // namespace layshaft::ui
