// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "core/bike/setup.h"

/// How numbers are written for people.
namespace layshaft::ui {

QString number(double value, int decimals);  ///< in the desktop's locale, thousands grouped
/// A number as it is written with so many decimals: one just below a half is rounded down there.
double asWritten(double value, int decimals);
QString signedNumber(double value,
                     int decimals);  ///< with + or a true minus sign; "±0" where it rounds to nothing
QString percent(double value);       ///< unsigned, one decimal below 10

/// A pair's teeth, front first: "15/43".
QString pairText(int frontTeeth, int rearTeeth);
QString teethPair(const Setup& setup);
/// Two gears as they are typed, the driven one first: "72/35".
QString teethWords(const GearTeeth& teeth);

}  // namespace layshaft::ui
