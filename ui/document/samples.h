// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <utility>
#include <vector>

#include "core/bike/profile.h"

namespace layshaft::ui {

/// The track bike of the samples, which a first start opens: the worked example that the documentation shows.
Profile firstSample();

/// The invented bikes that come with the program, built into it: name and profile, the track bike first.
const std::vector<std::pair<QString, Profile>>& samples();

/// Whether a bike is one of them, as it came.
bool isSample(const Profile& profile);

}  // namespace layshaft::ui
