// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QStringList>
#include <functional>
#include <optional>

#include "core/bike/setup.h"
#include "core/limits.h"
#include "core/study/gear_reading.h"
#include "ui/words/units_shown.h"

/// A gearbox as it is typed in one line: ratios, teeth, or revs at a road speed.
namespace layshaft::ui {

/// The gears of the line, first gear first. Between blanks a comma is a decimal mark, unless points are:
/// "2,71 2,06", "2.71, 2.06" and "2.71,2.06" all read.
QStringList gearParts(const QString& text);

/// Whether a gear is given as revs at a road speed: "5000@110".
bool isReading(const QString& part);
/// Whether all of them are, and so have the primary ratio within them.
bool areReadings(const QStringList& parts);

/// The ratio of a gear: as typed, as its teeth make it, or as what the rev counter shows at a road speed
/// tells it, to four decimals, on the tyre and the sprockets of `setup`. Nothing if it reads as none.
std::optional<double> typedGear(const QString& part, const UnitsShown& units, const Setup& setup);

/// All of them, none for an empty line; nothing, with what is wrong in `complaint`, if they make no gearbox.
std::optional<GearRatios> typedGears(const QStringList& parts, const UnitsShown& units,
                                     const std::function<std::optional<double>(const QString&)>& ratioOf,
                                     QString& complaint);

/// Whether a number is there and allowed; if not, `complaint` says what is.
bool inside(const QString& label, const std::optional<double>& x, const Limit& limit, QString& complaint);

}  // namespace layshaft::ui
