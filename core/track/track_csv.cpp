// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/track/track_csv.h"

#include "core/number_text.h"
#include "core/profile_file/entry_access.h"
#include "core/report.h"
#include "core/track/segment_columns.h"

namespace layshaft {
namespace {

std::string cellOf(const TrackSegment& segment, std::string_view key) {
  const FieldValue value = entryValue(segment, key);
  if (const auto* number = std::get_if<double>(&value)) return numberText(*number);
  if (const auto* text = std::get_if<std::string>(&value)) return csvField(*text);
  return {};
}

}  // namespace

std::string segmentsCsv(const std::vector<TrackSegment>& segments) {
  std::string out;
  for (const std::string_view key : kSegmentKeys) out += (out.empty() ? "" : ",") + std::string(key);
  out += '\n';
  for (const TrackSegment& segment : segments) {
    for (const std::string_view key : kSegmentKeys)
      out += (key == kSegmentKeys.front() ? "" : ",") + cellOf(segment, key);
    out += '\n';
  }
  return out;
}

std::string pathCsv(const TrackPath& path) {
  std::string out = "distance_m,curvature_per_km,slope_percent,x_m,y_m\n";
  const auto cell = [](const std::vector<double>& list, std::size_t i) {
    return ',' + (i < list.size() ? numberText(list[i]) : std::string());
  };
  for (std::size_t i = 0; i < path.curvaturePerKm.size(); ++i)
    out += numberText(withoutNoise(static_cast<double>(i) * path.spacingM)) + cell(path.curvaturePerKm, i) +
           cell(path.slopePercent, i) + cell(path.xM, i) + cell(path.yM, i) + '\n';
  return out;
}

std::string trackCsv(const Track& track) {
  return track.path ? pathCsv(*track.path) : segmentsCsv(track.segments);
}

}  // namespace layshaft
