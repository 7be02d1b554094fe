// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace layshaft {

/// Of the limit of elongation, from where a chain is to be watched; common practice.
inline constexpr double kWatchShareOfLimit = 0.75;

}  // namespace layshaft
