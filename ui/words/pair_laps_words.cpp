// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/pair_laps_words.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>

#include "core/lap_csv.h"
#include "core/study/run.h"
#include "ui/words/chart_words.h"
#include "ui/words/csv_units.h"
#include "ui/words/figure_rows.h"
#include "ui/words/lap_words.h"
#include "ui/words/numbers.h"

namespace layshaft::ui {
namespace {

struct PairWords {
  Q_DECLARE_TR_FUNCTIONS(PairLapsWords)
};

constexpr int kTimeDecimals = 2, kRatioDecimals = 3;

QString pairOf(const LapRow& row) {
  return pairText(row.frontTeeth, row.rearTeeth);
}

double bandOf(const LapRow& row) {
  return std::max(row.bandS.value_or(0.0), kEqualTimesS);
}

QString quickestWords(const PairBook& book, const LapRow& row) {
  if (book.isStock(row)) return PairWords::tr("Stock, %1, is the quickest that fits.").arg(pairOf(row));
  const double change = row.changeS.value_or(0.0);
  if (equalTimes(change, 0.0, bandOf(row)))
    return PairWords::tr("%1 is the quickest that fits; it equals stock within ±%2 s.")
        .arg(pairOf(row), bandText(bandOf(row)));
  return (change < 0.0 ? PairWords::tr("%1 is the quickest that fits: %2 s a lap quicker than stock, ±%3 s.")
                       : PairWords::tr("%1 is the quickest that fits: %2 s a lap slower than stock, ±%3 s."))
      .arg(pairOf(row), secondsText(change), bandText(bandOf(row)));
}

QString equalWords(const PairBook& book) {
  QStringList names;
  for (const std::size_t place : book.pick()->equal) names << pairOf(book.pairs()[place].row);
  return equalPairsWords(names);
}

/// The quickest pair that only lacks a chain for it; empty where none is quicker than those that fit.
QString otherLengthWords(const PairBook& book, const LapRow& quickest) {
  for (const RankedPair& pair : book.pairs()) {
    const LapRow& row = pair.row;
    if (row.fits || !row.links || !row.lapS) continue;
    if (*row.lapS > *quickest.lapS || equalLaps(row, quickest)) return {};  // nor are those after it
    const double gain = *quickest.lapS - *row.lapS;
    return (book.ground().belt ? PairWords::tr("%1 would be %2 s quicker still, with a belt of %n teeth.",
                                               "a pair and seconds", *row.links)
                               : PairWords::tr("%1 would be %2 s quicker still, with %n links.",
                                               "a pair and seconds", *row.links))
        .arg(pairOf(row), secondsText(gain));
  }
  return {};
}

/// What a pair is beside its figures.
QStringList notesOn(const PairBook& book, const LapRow& row) {
  QStringList notes;
  if (book.isStock(row)) notes << PairWords::tr("stock");
  if (book.isProposed(row)) notes << PairWords::tr("proposed");
  if (book.isTaken(row)) notes << PairWords::tr("the one to take");
  const auto& pick = book.pick();
  if (!pick) return notes;
  const LapRow& quickest = book.pairs()[pick->quickest].row;
  if (row.frontTeeth == quickest.frontTeeth && row.rearTeeth == quickest.rearTeeth)
    notes << PairWords::tr("the quickest that fits");
  else if (book.isAsQuick(row))
    notes << PairWords::tr("equal to the quickest");
  return notes;
}

QString changeWords(const LapRow& row) {
  const double change = *row.changeS;
  if (!row.bandS)
    return (change < 0.0 ? PairWords::tr("%1 s quicker than stock") : PairWords::tr("%1 s slower than stock"))
        .arg(secondsText(change));
  if (equalTimes(change, 0.0, bandOf(row)))
    return PairWords::tr("equal to stock within ±%1 s").arg(bandText(bandOf(row)));
  return (change < 0.0 ? PairWords::tr("%1 s quicker than stock, ±%2 s")
                       : PairWords::tr("%1 s slower than stock, ±%2 s"))
      .arg(secondsText(change), bandText(bandOf(row)));
}

}  // namespace

QString lapFitWords(bool fits, const std::optional<int>& links, bool belt) {
  if (fits) return links ? PairWords::tr("fits") : noValue();
  if (!links) return PairWords::tr("does not fit");
  return belt ? PairWords::tr("fits with %n teeth", "a belt", *links)
              : PairWords::tr("fits with %n links", "a chain", *links);
}

QString equalPairsWords(const QStringList& pairs) {
  constexpr qsizetype kMostNamed = 4;
  const qsizetype named = pairs.size() <= kMostNamed ? pairs.size() : kMostNamed - 1;
  if (const auto more = static_cast<int>(pairs.size() - named))
    return PairWords::tr("%1 and %n more are equal to it.", "pairs", more)
        .arg(pairs.first(named).join(PairWords::tr(", ", "between pairs")));
  return (pairs.size() == 1 ? PairWords::tr("%1 is equal to it.", "a pair")
                            : PairWords::tr("%1 are equal to it.", "pairs"))
      .arg(listedWords(pairs));
}

QString takenWords(const QString& pair, bool isStock, LapDecidedBy by, bool belt) {
  if (isStock) return PairWords::tr("Stock is one of them: no swap is worth its while.");
  switch (by) {
    case LapDecidedBy::Nothing:
      return {};
    case LapDecidedBy::FewestSwaps:
      return (belt ? PairWords::tr("Take %1: it alone swaps one pulley only.")
                   : PairWords::tr("Take %1: it alone swaps one sprocket only."))
          .arg(pair);
    case LapDecidedBy::SmallestChange:
      return PairWords::tr("Take %1: of those with the fewest swaps it changes the ratio least.").arg(pair);
    case LapDecidedBy::LapTime:
      break;
  }
  return PairWords::tr("Take %1: the others are as much work, and no quicker.").arg(pair);
}

QString pairPickWords(const PairBook& book) {
  if (!book.settled()) return {};
  QStringList sentences;
  if (const auto& pick = book.pick()) {
    const LapRow& quickest = book.pairs()[pick->quickest].row;
    sentences << quickestWords(book, quickest);
    const LapRow& taken = book.pairs()[pick->taken].row;
    if (!pick->equal.empty())
      sentences << equalWords(book)
                << takenWords(pairOf(taken), book.isStock(taken), pick->decidedBy, book.ground().belt);
    sentences << otherLengthWords(book, quickest);
    if (!quickest.links)
      sentences << PairWords::tr("Whether pairs fit is not known: how the chain runs is not given.");
  } else {
    sentences << PairWords::tr("No pair in reach that fits gets round.");
  }
  if (book.ground().otherParts)
    sentences << PairWords::tr("All of them have the proposal's tyre, gearbox and chain.");
  const auto [front, rear] = book.proposed();
  if (!book.ground().range.contains(front, rear))
    sentences << PairWords::tr("The proposal, %1, is none of these pairs.").arg(pairText(front, rear));
  sentences.removeAll(QString());
  return sentences.join(QLatin1Char(' '));
}

QString pairWords(const PairBook& book, const RankedPair& pair) {
  const LapRow& row = pair.row;
  QStringList facts;
  if (row.lapS) {
    facts << PairWords::tr("%1 s a lap").arg(number(*row.lapS, kTimeDecimals));
    if (row.changeS && !book.isStock(row)) facts << changeWords(row);
  } else {
    facts << PairWords::tr("does not get round");
  }
  facts << PairWords::tr("final ratio %1").arg(number(row.finalRatio, kRatioDecimals));
  if (const QString fit = lapFitWords(row.fits, row.links, book.ground().belt); fit != noValue())
    facts << fit;
  facts << notesOn(book, row);
  if (pair.old) facts << PairWords::tr("out of date");
  return PairWords::tr("%1: %2.", "a pair and what is said of it")
      .arg(pairOf(row), facts.join(PairWords::tr("; ", "between facts about a pair")));
}

QString pairMapLegend(const PairBook& book, bool inTenths) {
  const QString figures = inTenths ? PairWords::tr(
                                         "Tenths of a second a lap against stock, − is quicker; "
                                         "blank: ten seconds or more.")
                                   : PairWords::tr("Seconds a lap against stock, − is quicker.");
  const QString fits = book.ground().belt
                           ? PairWords::tr("Hatched: does not fit; crossed: with no length of belt.")
                           : PairWords::tr("Hatched: does not fit; crossed: with no length of chain.");
  const QString marks = PairWords::tr(
      "Thick outline: equal to the quickest that fits, bold the one to take. Triangle: proposal; dashed: "
      "stock. Slanted: same final ratio, stock's dashed; + is shorter.");
  return QStringList{figures, fits, marks}.join(QLatin1Char(' '));
}

QString pairMapWords(const PairBook& book) {
  const LadderRange& range = book.ground().range;
  QStringList sentences{
      PairWords::tr(
          "Map of pairs: %1 to %2 front teeth down, %3 to %4 rear teeth across; in each the seconds "
          "a lap takes more or less than with stock.")
          .arg(range.fewestFront)
          .arg(range.mostFront)
          .arg(range.fewestRear)
          .arg(range.mostRear)};
  sentences << pairPickWords(book)
            << PairWords::tr("The arrow keys go from pair to pair, Enter proposes one.")
            << PairWords::tr("File ▸ Export ▸ Show Data as a Table has the numbers.");
  sentences.removeAll(QString());
  return sentences.join(QLatin1Char(' '));
}

std::vector<QStringList> pairTable(const PairBook& book) {
  std::vector<QStringList> table{{PairWords::tr("Pair"), PairWords::tr("Lap, s"),
                                  PairWords::tr("Against Stock, s"), PairWords::tr("Band, ± s"),
                                  PairWords::tr("Final Ratio"), PairWords::tr("Fits")}};
  for (const RankedPair& pair : book.pairs()) {
    const LapRow& row = pair.row;
    const QStringList name = QStringList{pairOf(row)} + notesOn(book, row);
    table.push_back({name.join(PairWords::tr(", ", "between pairs")), figureText(row.lapS, kTimeDecimals),
                     row.changeS ? signedNumber(*row.changeS, kTimeDecimals) : noValue(),
                     row.bandS ? bandText(*row.bandS) : noValue(), number(row.finalRatio, kRatioDecimals),
                     lapFitWords(row.fits, row.links, book.ground().belt)});
  }
  return table;
}

QString pairLapsCsv(const PairBook& book, const UnitsShown& units) {
  return QString::fromStdString(csvInUnits(lapLadderCsv(book.rows()), units));
}

}  // namespace layshaft::ui
