// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/bike/profile.h"

namespace layshaft {

/// The profile once its proposal has become stock and nothing is proposed any more. What was measured on
/// stock goes along: where the axle stands now decides what travel is left, centre distance, wheelbase,
/// swingarm and centre of gravity; what weighed sprockets change is in the bike's mass and rear wheel. Pins
/// go on meaning the same parts.
Profile adopted(const Profile& profile);

}  // namespace layshaft
