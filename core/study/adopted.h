// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "core/bike/profile.h"

namespace layshaft {

/// The profile once its proposal has become stock and nothing is proposed any more. What was measured on
/// stock goes along: where the axle stands now decides what travel is left, centre distance, wheelbase,
/// swingarm and centre of gravity; what weighed sprockets change is in the bike's mass and rear wheel. Pins
/// go on meaning the same parts.
Profile adopted(const Profile& profile);

/// What `reads_high_percent` must be once the proposal is stock and nobody has set the speedometer anew, so
/// that it shows at any speed what it showed with the proposal; to a thousandth of a per cent. None where the
/// proposal does not move what it shows; may lie outside what is allowed.
std::optional<double> readsHighPercentCarried(const Profile& profile);

}  // namespace layshaft
