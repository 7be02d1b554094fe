// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace layshaft {

/// What the tyres run on.
enum class Surface { Asphalt, WetAsphalt, Hardpack, Loam, Sand };

}  // namespace layshaft
