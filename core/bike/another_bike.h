// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/bike/profile.h"

namespace layshaft {

/// Another bike of the same kind to begin with: what belongs to this one alone is gone, which is its
/// customer, how worn it is, and what was measured, done and tried on it.
Profile anotherBike(Profile profile);

}  // namespace layshaft
