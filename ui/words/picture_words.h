// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "core/plan.h"

namespace layshaft::ui {

/// What stands above a picture that leaves the window: whose it is, and which pairs it compares.
QString pictureHeading(const Plan& plan);

/// What stands under it: the cautions that the readout says while it is in the window, after a word that what
/// it shows is estimated. `fromTorque`: it is worked out from the torque curve.
QString pictureCaption(const Plan& plan, bool fromTorque);

}  // namespace layshaft::ui
