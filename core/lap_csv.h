// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "core/study/lap.h"
#include "core/study/lap_ladder.h"

namespace layshaft {

/// A lap under the name of its setup.
struct NamedLap {
  std::string name;
  std::vector<LapPoint> points;
};

/// A row for each point of each lap, in SI: `setup,distance_m,time_s,speed_mps,gear,rpm,limiter`.
std::string lapCsv(const std::vector<NamedLap>& laps);

/// A row for each pair, in the order given:
/// `front_teeth,rear_teeth,final_ratio,lap_s,lap_change_s,lap_band_s, fits,links`; empty where there is none.
std::string lapLadderCsv(const std::vector<LapRow>& rows);

}  // namespace layshaft
