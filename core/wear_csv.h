// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>

#include "core/study/wear.h"

namespace layshaft {

/// The measurements as comma-separated values, in the order of the profile: numbers at full precision with
/// the units in the titles, empty where there is none. `figures` are those of `wear`.
std::string wearCsv(const Wear& wear, const WearFigures& figures);

}  // namespace layshaft
