// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <optional>

#include "core/study/gear_reading.h"
#include "ui/words/units_shown.h"

/// Revs, road speeds, and the one at the other, as they are typed.
namespace layshaft::ui {

/// Revs may be typed with their unit: "12500 rpm".
QString withoutRpm(QString text);

/// Road speed, m/s, in the units shown or in the ones typed behind it.
std::optional<double> typedSpeedMps(QString text, const UnitsShown& units);

/// "5000@110": what the rev counter shows at a road speed. Nothing if it is no such reading.
std::optional<GearReading> typedReading(const QString& text, const UnitsShown& units);

}  // namespace layshaft::ui
