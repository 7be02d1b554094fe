// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QStringList>
#include <vector>

#include "ui/words/units_shown.h"
#include "ui/words/wear_book.h"

/// Sentences on how worn chain and sprockets are, and on how that is measured.
namespace layshaft::ui {

/// What to do with chain and both sprockets, and why; says so where nothing was measured or seen.
QString wearVerdictWords(const WearFigures& figures);
/// One word for a verdict: "good".
QString verdictWord(WearVerdict verdict);
/// The limit and where it comes from.
QString wearLimitWords(const WearFigures& figures);
/// How fast the chain wears, and when it reaches the limit; or why that cannot be told.
QString wearTrendWords(const WearFigures& figures, const UnitsShown& units);
/// What is wrong with running new beside worn parts; nothing for none.
QStringList wearMixWords(const std::vector<WearMix>& mixes);
/// Why a measurement is kept but left out of the trend; empty where it counts.
QString slipWords(const MeasuredElongation& measured);

/// What is said of a belt in place of all this.
QString beltWearWords();

/// How a chain is measured, a sentence or two each.
QStringList measuringAdvice();
/// How long so many links of a new chain are, and at the limit.
QString expectedLengthWords(const ChainSize& size, int pitches, double limitPercent, const UnitsShown& units);
/// A measured length, with its unit.
QString measuredLengthText(double lengthMm, const UnitsShown& units);

/// What lengths come to while they are typed, and what looks wrong with them; empty without any.
QString livePlacesWords(const ChainSize& size, int pitches, const std::vector<double>& lengthsMm);

/// The manual's slack, and how the bike stands for it; empty where it is not known.
QString slackWords(const Wear& wear, const UnitsShown& units);

/// The gauge in words: elongation, limit, places and unevenness.
QString wearGaugeWords(const WearFigures& figures);
/// The teeth drawing in words, for a chain that is so much longer than new.
QString toothDrawingWords(const WearBook& book, double elongationPercent, bool newChain,
                          const UnitsShown& units);
/// What stands under that drawing.
QString toothDrawingCaption(const WearBook& book, double elongationPercent, bool newChain,
                            const UnitsShown& units);

/// Titles, and the measurements below, newest first.
std::vector<QStringList> measurementTable(const WearBook& book, const UnitsShown& units);
/// The place in the profile's list of each of the table's rows below the titles.
std::vector<std::size_t> measurementOrder(const Wear& wear);
/// The text report's section; nothing for belts, or without anything of wear.
QStringList wearReport(const Plan& plan, const UnitsShown& units);

}  // namespace layshaft::ui
