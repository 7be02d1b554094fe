// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "core/study/ladder.h"
#include "ui/words/units_shown.h"

/// Words for what the ladder is asked for and what it answers.
namespace layshaft::ui {

/// "top gear at 12,800 rpm at 205 km/h".
QString aimWords(const Aim& aim, const UnitsShown& units);

/// By how much a pair reaches or misses an aim: "120 rpm off", "3 km/h short"; empty where it cannot be told.
QString marginWords(const Aim& aim, const AimOutcome& outcome, const UnitsShown& units);

/// Which pair answers the aims best, by how much, and why a better one was left out; empty without aims.
QString aimAnswerWords(const std::vector<LadderRow>& rows, const std::vector<Aim>& aims,
                       const UnitsShown& units);

}  // namespace layshaft::ui
