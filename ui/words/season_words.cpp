// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/season_words.h"

#include <QCoreApplication>
#include <algorithm>

#include "core/number_text.h"
#include "core/report.h"
#include "ui/words/chart_words.h"
#include "ui/words/figure_rows.h"
#include "ui/words/lap_book.h"
#include "ui/words/lap_words.h"
#include "ui/words/numbers.h"
#include "ui/words/pair_laps_words.h"
#include "ui/words/plain_text.h"

namespace layshaft::ui {
namespace {

struct SeasonWords {
  Q_DECLARE_TR_FUNCTIONS(SeasonWords)
};

constexpr int kTimeDecimals = 2;

QString textOf(const SeasonPair& pair) {
  return pairText(pair.frontTeeth, pair.rearTeeth);
}

/// What one pair for all loses.
QString lossWords(const SeasonBook& book) {
  const SeasonPair& one = book.season.one();
  const int tracks = static_cast<int>(book.ridden.size());
  if (tracks == 1)
    return SeasonWords::tr("%1 loses %2 s over a lap of %3.", "pair, seconds, track")
        .arg(textOf(one), secondsText(one.lossS), shownName(book.tracks[book.ridden.front()].track.name));
  return SeasonWords::tr("%1 for the %n tracks loses %2 s over a lap of each.", "pair, seconds", tracks)
      .arg(textOf(one), number(one.lossS, kTimeDecimals));
}

/// What is changed on the way if every track has its own pair.
QString savingWords(const SeasonBook& book) {
  const Season& season = book.season;
  if (season.swaps == 0) return {};
  const QString sprockets = book.belt ? SeasonWords::tr("%n pulleys", "that are changed", season.swaps)
                                      : SeasonWords::tr("%n sprockets", "that are changed", season.swaps);
  if (season.chainChanges == 0)
    return SeasonWords::tr("With the best pair for each you would change %1 on the way.").arg(sprockets);
  return SeasonWords::tr("With the best pair for each you would change %1 and %2 on the way.")
      .arg(sprockets, book.belt ? SeasonWords::tr("the belt %n times", nullptr, season.chainChanges)
                                : SeasonWords::tr("the chain %n times", nullptr, season.chainChanges));
}

QString noLapWords(const SeasonBook& book, std::size_t track) {
  const Track& of = book.tracks[track].track;
  const auto& refusal = book.tracks[track].refusal;
  return refusal ? lapRefusalWords(*refusal, of) : stopsForGoodWords(of);
}

/// Of one that does not fit as the bike is, with the length that it takes.
QString quickestText(const LapRow& row, bool belt) {
  const QString pair = pairText(row.frontTeeth, row.rearTeeth);
  if (row.fits || !row.links) return pair;
  return (belt ? SeasonWords::tr("%1, belt of %2", "a pair and the teeth of its belt")
               : SeasonWords::tr("%1, %2 links", "a pair and its chain"))
      .arg(pair)
      .arg(*row.links);
}

/// The pairs that may as well be the one, and which of all these to take.
QStringList equalsWords(const SeasonBook& book, const PairTeeth& stock) {
  const auto pick = book.pick(stock);
  if (!pick || pick->equal.empty()) return {};
  const auto& pairs = book.season.pairs;
  QStringList names;
  for (const std::size_t place : pick->equal) names << textOf(pairs[place]);
  const SeasonPair& taken = pairs[pick->taken];
  const bool isStock = taken.frontTeeth == stock.front && taken.rearTeeth == stock.rear;
  return {equalPairsWords(names), takenWords(textOf(taken), isStock, pick->decidedBy, book.belt)};
}

/// What each track loses, and all of the season; none as soon as one of them has none.
struct Losses {
  std::vector<std::optional<double>> each;
  std::optional<double> sum = 0.0;
};

template <class LapOf>
Losses lossesOf(const SeasonBook& book, const LapOf& lapOf) {
  Losses losses;
  for (std::size_t track = 0; track < book.tracks.size(); ++track)
    losses.each.push_back(book.lossS(track, lapOf(track)));
  for (const std::size_t track : book.ridden)
    losses.sum =
        losses.sum && losses.each[track] ? std::optional(*losses.sum + *losses.each[track]) : std::nullopt;
  if (book.ridden.empty()) losses.sum.reset();
  return losses;
}

/// Of the pair for all, stock and the proposal.
struct AllLosses {
  Losses one, stock, proposed;
};

AllLosses allLosses(const SeasonBook& book, const PairTeeth& proposed) {
  const auto ofOne = [&](std::size_t track) -> std::optional<double> {
    if (book.season.empty()) return std::nullopt;
    return book.lapS(track, {book.season.one().frontTeeth, book.season.one().rearTeeth});
  };
  return {.one = lossesOf(book, ofOne),
          .stock = lossesOf(book, [&](std::size_t track) { return book.tracks[track].stockS; }),
          .proposed = lossesOf(book, [&](std::size_t track) { return book.lapS(track, proposed); })};
}

QStringList titlesOf(const SeasonBook& book, const PairTeeth& stock, const PairTeeth& proposed) {
  const QString one = book.season.empty()
                          ? SeasonWords::tr("One for All Loses, s")
                          : SeasonWords::tr("%1 for All Loses, s", "a pair").arg(textOf(book.season.one()));
  return {SeasonWords::tr("Track"),
          SeasonWords::tr("Quickest Pair"),
          SeasonWords::tr("Its Lap, s"),
          one,
          SeasonWords::tr("Stock %1 Loses, s", "a pair").arg(pairText(stock.front, stock.rear)),
          SeasonWords::tr("Proposed %1 Loses, s", "a pair").arg(pairText(proposed.front, proposed.rear))};
}

std::string cell(const std::optional<double>& x) {
  return x ? numberText(*x) : std::string();
}

}  // namespace

QString seasonWords(const SeasonBook& book, const PairTeeth& stock) {
  if (!book.worked) return SeasonWords::tr("Every pair in reach laps every track.");
  QStringList sentences;
  if (!book.season.empty()) {
    sentences << lossWords(book) << equalsWords(book, stock);
    if (book.bandS && *book.bandS > 0.0)
      sentences
          << SeasonWords::tr("The loss may be off by ±%1 s.").arg(bandText(std::max(*book.bandS, kLapBandS)));
    if (const QString saving = savingWords(book); !saving.isEmpty()) sentences << saving;
    if (!book.season.one().fits)
      sentences << SeasonWords::tr("No pair that laps them all fits the bike as it is.");
  } else if (!book.ridden.empty()) {
    sentences << SeasonWords::tr("No pair in reach laps all of them.");
  } else {
    sentences << SeasonWords::tr("Tick the tracks of the season.");
  }
  for (std::size_t track = 0; track < book.tracks.size(); ++track)
    if (!book.tracks[track].laps()) sentences << noLapWords(book, track);
  return sentences.join(QLatin1Char(' '));
}

std::vector<QStringList> seasonTable(const SeasonBook& book, const PairTeeth& stock,
                                     const PairTeeth& proposed) {
  std::vector<QStringList> rows{titlesOf(book, stock, proposed)};
  const AllLosses losses = allLosses(book, proposed);
  std::optional<double> lapsS = book.ridden.empty() ? std::nullopt : std::optional(0.0);
  for (std::size_t track = 0; track < book.tracks.size(); ++track) {
    const auto best = book.quickest(track);
    const bool rides = std::count(book.ridden.begin(), book.ridden.end(), track) > 0;
    if (rides && lapsS) lapsS = best ? std::optional(*lapsS + *best->lapS) : std::nullopt;
    const bool none = book.worked && !book.tracks[track].laps();
    rows.push_back({shownName(book.tracks[track].track.name),
                    best   ? quickestText(*best, book.belt)
                    : none ? SeasonWords::tr("no lap")
                           : noValue(),
                    figureText(best ? best->lapS : std::nullopt, kTimeDecimals),
                    figureText(losses.one.each[track], kTimeDecimals),
                    figureText(losses.stock.each[track], kTimeDecimals),
                    figureText(losses.proposed.each[track], kTimeDecimals)});
  }
  rows.push_back({SeasonWords::tr("A lap of each that is ticked"), QString(),
                  figureText(lapsS, kTimeDecimals), figureText(losses.one.sum, kTimeDecimals),
                  figureText(losses.stock.sum, kTimeDecimals),
                  figureText(losses.proposed.sum, kTimeDecimals)});
  return rows;
}

std::vector<QStringList> seasonPairsTable(const SeasonBook& book) {
  std::vector<QStringList> rows{{SeasonWords::tr("One Pair for All"), SeasonWords::tr("Loses, s"),
                                 SeasonWords::tr("Most on One Track, s"), SeasonWords::tr("Fits")}};
  const auto& pairs = book.season.pairs;
  for (std::size_t i = 0; i < std::min(pairs.size(), kSeasonPairsTold); ++i)
    rows.push_back({textOf(pairs[i]), number(pairs[i].lossS, kTimeDecimals),
                    number(*std::max_element(pairs[i].laterS.begin(), pairs[i].laterS.end()), kTimeDecimals),
                    lapFitWords(pairs[i].fits, pairs[i].links, book.belt)});
  return rows;
}

QString seasonCsv(const SeasonBook& book, const PairTeeth& proposed) {
  std::string out =
      "track,in_season,quickest_front_teeth,quickest_rear_teeth,lap_s,one_for_all_loss_s,stock_loss_s,"
      "proposed_loss_s\n";
  const AllLosses losses = allLosses(book, proposed);
  for (std::size_t track = 0; track < book.tracks.size(); ++track) {
    const auto best = book.quickest(track);
    out += csvField(book.tracks[track].track.name) + (book.tracks[track].chosen ? ",true," : ",false,");
    out += best ? std::to_string(best->frontTeeth) + ',' + std::to_string(best->rearTeeth) + ',' +
                      cell(best->lapS)
                : std::string(",,");
    for (const Losses* of : {&losses.one, &losses.stock, &losses.proposed})
      out += ',' + cell(of->each[track]);
    out += '\n';
  }
  return QString::fromStdString(out);
}

}  // namespace layshaft::ui
