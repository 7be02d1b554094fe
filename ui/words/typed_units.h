// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <optional>

namespace layshaft::ui {

/// A number as it is typed, and what stands behind it.
struct NumberAndUnit {
  QString number;
  QString unit;
};

/// Takes a text apart where a unit stands behind its number; nothing if none does.
std::optional<NumberAndUnit> numberAndUnit(const QString& text);

/// Whether a text may go on to a unit that begins with a digit, as "11200 1" does to "11200 1/min".
bool beginsUnit(const QString& text, const QString& unit);

/// What is `x` in the unit that was typed, in the unit of the field: 69 "mph" are 111 "km/h". Nothing if that
/// unit is not known or measures something else.
std::optional<double> inUnitOf(const QString& unit, double x, const QString& typedUnit);

}  // namespace layshaft::ui
