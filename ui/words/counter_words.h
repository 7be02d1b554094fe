// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QStringList>
#include <vector>

#include "core/plan.h"
#include "ui/words/units_shown.h"

/// What a customer across the counter is told of a choice, in everyday words.
namespace layshaft::ui {

/// Whether something speaks for a choice, against it, or neither.
enum class Worth { Gain, Cost, Same };

/// The mark of it, which is never left to colour: ▲, ▼ or =.
QString worthMark(Worth worth);
/// The same for who hears it: "Gain".
QString worthName(Worth worth);
/// What each mark means: "▲ gains   ▼ costs   = stays".
QString worthKey();

struct CounterLine {
  Worth worth;
  QString words;
  bool operator==(const CounterLine&) const = default;
};

/// "Front 15 · Rear 45".
QString counterHeading(const Setup& setup);
/// How the bike would feel, in one sentence.
QString counterSentence(const Plan& plan);
/// What the plan's proposal gains and costs against stock, always four lines: pull in first gear, revs at
/// cruise, top speed, and whether it fits, with which chain.
std::vector<CounterLine> counterLines(const Plan& plan, const UnitsShown& units);
/// Sentence and lines in one text, for who hears them.
QString counterDescription(const Plan& plan, const UnitsShown& units);

}  // namespace layshaft::ui
