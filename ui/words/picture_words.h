// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "core/plan.h"

namespace layshaft::ui {

/// What stands above a picture that leaves the window: whose it is, and which pairs it compares.
QString pictureHeading(const Plan& plan);

}  // namespace layshaft::ui
