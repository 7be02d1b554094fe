// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "core/study/lap.h"

namespace layshaft {

/// A lap under the name of its setup.
struct NamedLap {
  std::string name;
  std::vector<LapPoint> points;
};

/// A row for each point of each lap, in SI: `setup,distance_m,time_s,speed_mps,gear,rpm,limiter`.
std::string lapCsv(const std::vector<NamedLap>& laps);

}  // namespace layshaft
