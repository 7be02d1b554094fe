// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QStringList>
#include <string_view>
#include <vector>

#include "core/plan.h"
#include "ui/words/units_shown.h"

/// Words for what a setup does on the road: runs, limits, and what a profile lacks for them.
namespace layshaft::ui {

/// "drag", "the rev limit", …: what stops the speed from rising.
QString limitWords(LimitedBy limit);

/// Names of fields as the window shows them, for key paths that a study lacks.
QStringList fieldNames(const std::vector<std::string_view>& keys);

/// One sentence on everything that was taken because the profile leaves it open; empty if nothing was.
QString assumedWords(const PullBike& bike, const UnitsShown& units);

/// "The sawtooth takes … Missing: the rev limit.": what something needs, and the fields that are missing for
/// it.
QString lackingWords(const QString& what, const std::vector<std::string_view>& keys);

/// What of the bike is only usual in its class, in a sentence; empty where nothing is.
QString typicalWords(const PullBike& bike, const UnitsShown& units);

/// That the torque curve is an estimate; empty where it is not, or there is none.
QString estimatedCurveWords(const PullBike& bike);

/// The usual figures of runs: titles, then a row each with stock, proposed, difference, how uncertain they
/// are, and pins.
std::vector<QStringList> runTable(const Plan& plan, const UnitsShown& units);

/// The straight in a sentence per setup: its gears, engine speed, rev range left or time on the limiter; and
/// which one is quicker, or that they are equal.
QString driveWords(const Plan& plan, const UnitsShown& units);

/// In which gear the quarter mile starts and how often it shifts; empty where one setup does not get there.
QString standingStartWords(const Plan& plan);

}  // namespace layshaft::ui
