// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/lap_csv.h"

#include "core/number_text.h"
#include "core/report.h"

namespace layshaft {

std::string lapCsv(const std::vector<NamedLap>& laps) {
  std::string out = "setup,distance_m,time_s,speed_mps,gear,rpm,limiter\n";
  for (const NamedLap& lap : laps)
    for (const LapPoint& point : lap.points)
      out += csvField(lap.name) + ',' + numberText(point.distanceM) + ',' + numberText(point.timeS) + ',' +
             numberText(point.speedMps) + ',' + (point.gear ? std::to_string(*point.gear) : "") + ',' +
             (point.rpm ? numberText(*point.rpm) : "") + ',' + (point.limiter ? "true" : "false") + '\n';
  return out;
}

}  // namespace layshaft
