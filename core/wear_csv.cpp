// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/wear_csv.h"

#include <algorithm>
#include <utility>

#include "core/bike/words.h"
#include "core/number_text.h"
#include "core/report.h"

namespace layshaft {
namespace {

std::string flagText(const std::optional<bool>& flag) {
  if (!flag) return {};
  return *flag ? "true" : "false";
}

std::string teethText(const std::optional<TeethSeen>& teeth) {
  return teeth ? std::string(wordFor(*teeth, kTeethSeenWords)) : std::string();
}

}  // namespace

std::string wearCsv(const Wear& wear, const WearFigures& figures) {
  std::string out = std::string("date,") + (figures.useUnit == UseUnit::Hours ? "at_hours" : "at_km") +
                    ",pitches,greatest_length_mm,elongation_percent,unevenness_percent,front,rear,"
                    "lifts_off_half_tooth,struck,note\n";
  for (std::size_t i = 0; i < wear.measurements.size(); ++i) {
    const WearMeasurement& entry = wear.measurements[i];
    const MeasuredElongation* measured = measuredAt(figures, i);
    const auto& lengths = entry.lengthsMm;
    const std::string cells[] = {
        entry.date.text(),
        entry.at ? numberText(*entry.at) : "",
        std::to_string(entry.pitches.value_or(kUsualPitches)),
        lengths.empty() ? "" : numberText(*std::max_element(lengths.begin(), lengths.end())),
        measured ? numberText(measured->greatestPercent) : "",
        measured ? numberText(measured->unevennessPercent) : "",
        teethText(entry.front),
        teethText(entry.rear),
        flagText(entry.liftsOffHalfTooth),
        flagText(entry.struck.has_value()),
        csvField(entry.note)};
    for (bool first = true; const std::string& cell : cells) {
      if (!std::exchange(first, false)) out += ',';
      out += cell;
    }
    out += '\n';
  }
  return out;
}

}  // namespace layshaft
