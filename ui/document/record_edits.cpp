// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/document/record_edits.h"

#include <QString>
#include <string>
#include <utility>

#include "core/bike/entries.h"
#include "core/limits.h"
#include "core/number_text.h"
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
void strike(Entries<Entry>& entries, std::size_t index, const Struck& why) {
  if (index >= entries.size() || entries[index].struck) return;
  Entry entry = entries[index];
  entry.struck = why;
  entries.put(index, std::move(entry));
}

constexpr const char* kMeasurements = "wear.measurements";

std::optional<Problem> wrongIn(const WearMeasurement& entry, std::size_t index) {
  const std::string path = placed(kMeasurements, index);
  if (auto problem = tooMany(index + 1, limits::kMostRecords, kMeasurements)) return problem;
  if (auto problem = outside(entry.at, limits::kUse, path + ".at")) return problem;
  const auto pitches = entry.pitches ? std::optional<double>(*entry.pitches) : std::nullopt;
  if (auto problem = outside(pitches, limits::kMeasuredPitches, path + ".pitches")) return problem;
  const std::string lengths = path + ".lengths_mm";
  if (auto problem = tooMany(entry.lengthsMm.size(), limits::kMostPlaces, lengths)) return problem;
  for (std::size_t i = 0; i < entry.lengthsMm.size(); ++i)
    if (auto problem = outside(entry.lengthsMm[i], limits::kMeasuredLengthMm, placed(lengths.c_str(), i)))
      return problem;
  return std::nullopt;
}

}  // namespace

std::optional<Problem> RecordEdits::addMeasurement(const WearMeasurement& entry) {
  const auto& wear = document_.profile().wear;
  const std::size_t index = wear ? wear->measurements.size() : 0;
  if (auto problem = wrongIn(entry, index)) return problem;
  return document_.edit(added(kMeasurements, index, tr("measurement of %1").arg(shownDate(entry.date))),
                        [&](Profile& profile) {
                          if (!profile.wear) profile.wear.emplace();
                          profile.wear->measurements.add(entry);
                        });
}

void RecordEdits::strikeMeasurement(std::size_t index, const Struck& why) {
  const auto& wear = document_.profile().wear;
  if (!wear || index >= wear->measurements.size()) return;
  const QString day = shownDate(wear->measurements[index].date);
  document_.edit(added("wear.measurements.struck", index, tr("strike measurement of %1").arg(day)),
                 [&](Profile& profile) { strike(profile.wear->measurements, index, why); });
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
