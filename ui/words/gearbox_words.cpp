// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/gearbox_words.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>

#include "core/number_text.h"
#include "ui/words/gear_words.h"
#include "ui/words/lap_book.h"
#include "ui/words/lap_words.h"
#include "ui/words/numbers.h"
#include "ui/words/plain_text.h"

namespace layshaft::ui {
namespace {

struct GearboxWords {
  Q_DECLARE_TR_FUNCTIONS(GearboxWords)
};

QString countWords(const GearboxChoices& choices) {
  const int count = static_cast<int>(choices.gearboxes.size());
  if (count == 1)
    return GearboxWords::tr(
        "The gears on hand make no other gearbox: each is of a gear that the bike does not have, makes the "
        "ratio that is in, or does not lie between its neighbours.");
  if (choices.more)
    return GearboxWords::tr("The gears on hand make more than %1 gearboxes; only these are tried.")
        .arg(number(count, 0));
  return GearboxWords::tr("The gears on hand make %n gearboxes, the one that is in among them.", nullptr,
                          count);
}

/// What it gains, and how far that may be off.
QString gainWords(const QuickestGearbox& quickest) {
  if (!quickest.row.changeS) return {};
  const double gained = -*quickest.row.changeS, band = std::max(quickest.bandS.value_or(0.0), kLapBandS);
  if (std::abs(gained) < band)
    return GearboxWords::tr("Within ±%1 s that is no other lap than stock's.").arg(bandText(band));
  const QString gain = (gained > 0.0 ? GearboxWords::tr("It gains %1 s on stock.")
                                     : GearboxWords::tr("It loses %1 s to stock."))
                           .arg(secondsText(gained));
  if (!quickest.bandS) return gain;
  return gain + QLatin1Char(' ') +
         GearboxWords::tr("The difference may be off by ±%1 s.").arg(bandText(band));
}

/// What of it the gears do, and not the sprockets: whether the box need be opened.
QString gearsGainWords(const QuickestGearbox& quickest) {
  if (quickest.taken.empty() || !quickest.without) return {};
  const double gained = quickest.without->lapS - quickest.row.lapS;
  const double band = std::max(quickest.bandS.value_or(0.0), kLapBandS);
  const QString pair = pairText(quickest.without->pair.front, quickest.without->pair.rear);
  if (gained < band)
    return GearboxWords::tr(
               "%1 with no other gears is equal to it within ±%2 s: opening the gearbox gains nothing "
               "that can be told.",
               "a pair")
        .arg(pair, bandText(band));
  return GearboxWords::tr("The gears alone gain %1 s of it: beside %2 with no other gears.",
                          "seconds, a pair")
      .arg(secondsText(gained), pair);
}

std::string cell(const std::optional<double>& x) {
  return x ? numberText(*x) : std::string();
}

/// Which gears are changed in any gearbox; 0 is the primary.
std::vector<int> gearsChanged(const GearboxChoices& choices) {
  std::vector<int> gears;
  for (const GearsTaken& taken : choices.gearboxes)
    for (const SpareGearPair& pair : taken)
      if (std::find(gears.begin(), gears.end(), pair.gear) == gears.end()) gears.push_back(pair.gear);
  std::sort(gears.begin(), gears.end());
  return gears;
}

}  // namespace

QString gearsText(const GearsTaken& taken) {
  if (taken.empty()) return GearboxWords::tr("no other gears");
  QStringList gears;
  for (const SpareGearPair& pair : taken) {
    const QString teeth = teethWords(teethIn(pair));
    gears << (pair.gear == 0
                  ? GearboxWords::tr("primary %1", "teeth").arg(teeth)
                  : GearboxWords::tr("%1 %2", "a gear and its teeth").arg(gearOrdinal(pair.gear), teeth));
  }
  return gears.join(GearboxWords::tr(", ", "between gears"));
}

QString gearboxesWords(const GearboxChoices& choices, const std::string& track,
                       const std::optional<QuickestGearbox>& quickest) {
  QStringList sentences{countWords(choices)};
  if (choices.gearboxes.size() > 1 && quickest) {
    sentences << (quickest->all ? GearboxWords::tr("Quickest round %1: %2 with %3, %4 s.",
                                                   "track, gears, pair, seconds")
                                : GearboxWords::tr("Quickest so far round %1: %2 with %3, %4 s.",
                                                   "track, gears, pair, seconds"))
                     .arg(shownName(track), gearsText(quickest->taken),
                          pairText(quickest->row.pair.front, quickest->row.pair.rear),
                          secondsText(quickest->row.lapS));
    for (const QString& words : {gainWords(*quickest), gearsGainWords(*quickest)})
      if (!words.isEmpty()) sentences << words;
  }
  return sentences.join(QLatin1Char(' '));
}

QString gearboxesCsv(const GearboxChoices& choices, const std::vector<GearboxRow>& rows,
                     const std::vector<std::optional<double>>& bands) {
  const std::vector<int> gears = gearsChanged(choices);
  std::string out;
  for (const int gear : gears) {
    const std::string name = gear == 0 ? "primary" : "gear_" + std::to_string(gear);
    out += name + "_driving_teeth," + name + "_driven_teeth,";
  }
  out += "front_teeth,rear_teeth,lap_s,change_s,band_s\n";
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const GearsTaken& taken = choices.gearboxes[rows[i].gearbox];
    for (const int gear : gears) {
      const auto pair = std::find_if(taken.begin(), taken.end(),
                                     [gear](const SpareGearPair& one) { return one.gear == gear; });
      out += pair == taken.end() ? ",,"
                                 : std::to_string(pair->driving) + ',' + std::to_string(pair->driven) + ',';
    }
    out += std::to_string(rows[i].pair.front) + ',' + std::to_string(rows[i].pair.rear) + ',' +
           numberText(rows[i].lapS) + ',' + cell(rows[i].changeS) + ',' + cell(bands[i]) + '\n';
  }
  return QString::fromStdString(out);
}

}  // namespace layshaft::ui
