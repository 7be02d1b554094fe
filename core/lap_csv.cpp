// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/lap_csv.h"

#include "core/number_text.h"
#include "core/report.h"

namespace layshaft {
namespace {

std::string cell(const std::optional<double>& seconds) {
  return seconds ? numberText(*seconds) : std::string();
}

}  // namespace

std::string lapCsv(const std::vector<NamedLap>& laps) {
  std::string out = "setup,distance_m,time_s,speed_mps,gear,rpm,limiter\n";
  for (const NamedLap& lap : laps)
    for (const LapPoint& point : lap.points)
      out += csvField(lap.name) + ',' + numberText(point.distanceM) + ',' + numberText(point.timeS) + ',' +
             numberText(point.speedMps) + ',' + (point.gear ? std::to_string(*point.gear) : "") + ',' +
             (point.rpm ? numberText(*point.rpm) : "") + ',' + (point.limiter ? "true" : "false") + '\n';
  return out;
}

std::string lapLadderCsv(const std::vector<LapRow>& rows) {
  std::string out = "front_teeth,rear_teeth,final_ratio,lap_s,lap_change_s,lap_band_s,fits,links\n";
  for (const LapRow& row : rows)
    out += std::to_string(row.frontTeeth) + ',' + std::to_string(row.rearTeeth) + ',' +
           numberText(row.finalRatio) + ',' + cell(row.lapS) + ',' + cell(row.changeS) + ',' +
           cell(row.bandS) + ',' + (row.fits ? "true" : "false") + ',' +
           (row.links ? std::to_string(*row.links) : "") + '\n';
  return out;
}

}  // namespace layshaft
