// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>

#include "core/bike/profile.h"

namespace layshaft::ui {

/// Whether the field with that key means anything for the bike: of chain and belt the setup has one, and the
/// bike may have both if the proposal exchanges them. What a file holds of the other kind stays there.
bool fieldApplies(std::string_view key, const Profile& profile);

}  // namespace layshaft::ui
