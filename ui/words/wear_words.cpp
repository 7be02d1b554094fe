// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/wear_words.h"

#include <QCoreApplication>
#include <algorithm>
#include <numeric>

#include "core/bike/words.h"
#include "core/parts/sprocket_tooth.h"
#include "core/units.h"
#include "ui/words/chart_words.h"
#include "ui/words/choice_words.h"
#include "ui/words/dates.h"
#include "ui/words/numbers.h"
#include "ui/words/plain_text.h"
#include "ui/words/use_words.h"

namespace layshaft::ui {
namespace {

struct Say {
  Q_DECLARE_TR_FUNCTIONS(WearWords)
};

constexpr int kElongationDecimals = 2;
constexpr double kUsePerRate = 1000.0;  // kilometres or miles that a rate of wear is told for

QString elongation(double percent) {
  return number(percent, kElongationDecimals);
}

QString reasonWords(WearReason reason, const WearFigures& figures) {
  const auto chain = [&](const QString& words) {
    return words.arg(elongation(figures.elongationPercent.value_or(0.0)), number(figures.limitPercent, 1));
  };
  switch (reason) {
    case WearReason::ChainPastLimit:
      return chain(Say::tr("the chain is %1 % longer than new, past its limit of %2 %"));
    case WearReason::ChainNearLimit:
      return chain(Say::tr("the chain is %1 % longer than new, near its limit of %2 %"));
    case WearReason::ChainLiftsOff:
      return Say::tr("the chain can be pulled off the rear sprocket by half a tooth");
    case WearReason::FrontHooked:
      return Say::tr("front teeth are hooked, pointed or broken");
    case WearReason::RearHooked:
      return Say::tr("rear teeth are hooked, pointed or broken");
    case WearReason::FrontWorn:
      return Say::tr("front teeth are visibly worn");
    case WearReason::RearWorn:
      break;
  }
  return Say::tr("rear teeth are visibly worn");
}

QString reasonsWords(const WearFigures& figures) {
  QStringList reasons;
  for (const WearReason reason : figures.reasons) reasons << reasonWords(reason, figures);
  return reasons.join(Say::tr("; ", "between reasons"));
}

/// Where everything that is known is good.
QString goodWords(const WearFigures& figures) {
  if (!figures.chain)
    return Say::tr("Good as far as seen: no teeth are worn. Measure the chain to judge the set.");
  const QString chain = Say::tr("the chain is %1 % longer than new; its limit is %2 %")
                            .arg(elongation(*figures.elongationPercent), number(figures.limitPercent, 1));
  if (figures.front && figures.rear)
    return Say::tr("Good, chain and both sprockets: %1, and no teeth are worn.").arg(chain);
  return Say::tr("Good so far: %1. Look at the teeth of both sprockets, too.").arg(chain);
}

QString rateWords(const WearFigures& figures, const UnitsShown& units) {
  const double perShown = *figures.trendPercentPerUse * fileUse(figures.useUnit, 1.0, units);
  if (figures.useUnit == UseUnit::Hours) return Say::tr("Wears %1 % an hour.").arg(number(perShown, 3));
  return Say::tr("Wears %1 % in %2 %3.")
      .arg(number(perShown * kUsePerRate, 3), number(kUsePerRate, 0), useName(figures.useUnit, units));
}

/// What else is to be said of an entry: that it is struck through, or left out, what was seen, and its own
/// note.
QString remark(const WearMeasurement& entry, const MeasuredElongation* measured) {
  QStringList words;
  const auto seen = [](TeethSeen teeth) { return choiceWord(wordFor(teeth, kTeethSeenWords)); };
  if (entry.struck)
    words << Say::tr("struck through: %1", "an entry, and the reason").arg(shownName(entry.struck->reason));
  else if (measured)
    words << slipWords(*measured);
  if (entry.front) words << Say::tr("front %1", "teeth").arg(seen(*entry.front));
  if (entry.rear) words << Say::tr("rear %1", "teeth").arg(seen(*entry.rear));
  if (entry.liftsOffHalfTooth.value_or(false)) words << Say::tr("chain lifts off");
  words << shownName(entry.note);
  words.removeAll(QString());
  return words.join(QStringLiteral(" · "));
}

}  // namespace

QString verdictWord(WearVerdict verdict) {
  switch (verdict) {
    case WearVerdict::Good:
      return Say::tr("good");
    case WearVerdict::Watch:
      return Say::tr("watch");
    case WearVerdict::Replace:
      break;
  }
  return Say::tr("replace");
}

QString wearVerdictWords(const WearFigures& figures) {
  if (!figures.set) return Say::tr("Nothing measured yet: how worn chain and sprockets are is not known.");
  switch (*figures.set) {
    case WearVerdict::Replace:
      return Say::tr("Replace chain and both sprockets as a set: %1.").arg(reasonsWords(figures));
    case WearVerdict::Watch:
      return Say::tr("Watch chain and both sprockets, and have the set at hand: %1.")
          .arg(reasonsWords(figures));
    case WearVerdict::Good:
      break;
  }
  return goodWords(figures);
}

QString wearLimitWords(const WearFigures& figures) {
  const QString limit = number(figures.limitPercent, 1);
  switch (figures.limitSource) {
    case WearLimitSource::Manual:
      return Say::tr("Limit %1 %, from the bike's manual.").arg(limit);
    case WearLimitSource::PlainChain:
      return Say::tr(
                 "Limit %1 %, usual for plain chains by chain makers' instructions; the bike's manual goes "
                 "first.")
          .arg(limit);
    case WearLimitSource::SealedChain:
      return Say::tr(
                 "Limit %1 %, usual for sealed chains by chain makers' instructions; the bike's manual goes "
                 "first.")
          .arg(limit);
    case WearLimitSource::UnknownChain:
      break;
  }
  return Say::tr(
             "Limit %1 %, that of sealed chains, the stricter one: the kind of chain is not given. The "
             "bike's manual goes first.")
      .arg(limit);
}

QString wearTrendWords(const WearFigures& figures, const UnitsShown& units) {
  if (!figures.trendPercentPerUse) return Say::tr("Two measurements at different use make a trend.");
  if (figures.trendDoesNotRise)
    return Say::tr("The measurements do not rise with use: no end of life can be told from them.");
  if (!figures.endOfLife) return rateWords(figures, units);
  const EndOfLife& end = *figures.endOfLife;
  const QString at = useText(figures.useUnit, end.at, units);
  if (!end.low || !end.high)
    return Say::tr("%1 At that rate the limit is reached at %2; a third measurement tells how sure that is.",
                   "the rate, and the end of life")
        .arg(rateWords(figures, units), at);
  const auto use = [&](double x) {
    return number(shownUse(figures.useUnit, std::max(x, 0.0), units), useDecimals(figures.useUnit));
  };
  return Say::tr("%1 At that rate the limit is reached at %2, nine times in ten between %3 and %4.",
                 "the rate, and the end of life")
      .arg(rateWords(figures, units), at, use(*end.low), use(*end.high));
}

QStringList wearMixWords(const std::vector<WearMix>& mixes) {
  QStringList words;
  for (const WearMix mix : mixes) switch (mix) {
      case WearMix::NewSprocketUnderWornChain:
        words << Say::tr(
            "The proposal puts a new sprocket under a worn chain, which wears it out early: fit a new chain "
            "and "
            "both sprockets.");
        break;
      case WearMix::NewChainOverWornSprockets:
        words << Say::tr(
            "The proposal puts a new chain on worn sprockets, which wear it out early: fit both sprockets "
            "new, "
            "too.");
        break;
      case WearMix::FrontSprocketLeftOld:
        words << Say::tr(
            "The proposal leaves the old front sprocket under a new chain; it costs little: fit it new, "
            "too.");
        break;
    }
  return words;
}

QString slipWords(const MeasuredElongation& measured) {
  if (measured.earlierChain) return Say::tr("an earlier chain");
  if (!measured.slip) return {};
  switch (*measured.slip) {
    case MeasuringSlip::ShorterThanNew:
      return Say::tr("shorter than new: not in the trend; count the links again");
    case MeasuringSlip::UseGoesBack:
      return Say::tr("less use than before: not in the trend");
    case MeasuringSlip::UseNotGiven:
      break;
  }
  return Say::tr("no use given: not in the trend");
}

QString beltWearWords() {
  return Say::tr(
      "Belts do not grow longer as chains do. Judge the belt and its pulleys by the bike's manual: cracks, "
      "missing "
      "teeth, frayed edges, and the distance it gives for a replacement.");
}

QStringList measuringAdvice() {
  return {
      Say::tr(
          "Key out, neutral, bike steady on a stand; turn the wheel by hand only, with fingers and rags away "
          "from where the chain meets a sprocket."),
      Say::tr(
          "Clean the chain, then pull the run that you measure straight: on the bike tighten it, or put a "
          "weight on the other run; off the bike pull with about 20 kg (45 lb)."),
      Say::tr("Count links, not pins: from the middle of a pin to the middle of the 21st are 20 links."),
      Say::tr("Measure at several places along the chain: it wears unevenly, and the longest place counts."),
      Say::tr("Plain and sealed chains are measured alike; a sealed chain's limit is lower, as once it has "
              "grown longer its seals have let go.")};
}

QString measuredLengthText(double lengthMm, const UnitsShown& units) {
  const int decimals =
      units.decimals(Quantity::SmallLength) + (units.system() == UnitSystem::Imperial ? 1 : 0);
  return units.withUnit(
      number(units.shown(Quantity::SmallLength, units::metresFromMillimetres(lengthMm)), decimals),
      Quantity::SmallLength);
}

QString expectedLengthWords(const ChainSize& size, int pitches, double limitPercent,
                            const UnitsShown& units) {
  const double fresh = newLengthMm(size, pitches);
  return Say::tr("%n links of a new %1 chain are %2 long, %3 at the limit.", nullptr, pitches)
      .arg(QString::fromUtf8(size.name.data()), measuredLengthText(fresh, units),
           measuredLengthText(fresh * (1.0 + limitPercent / 100.0), units));
}

QString wearGaugeWords(const WearFigures& figures) {
  if (!figures.latest)
    return Say::tr("A scale of elongation from new to the limit of %1 % and beyond; nothing is measured yet.")
        .arg(number(figures.limitPercent, 1));
  const MeasuredElongation& latest = figures.measured[*figures.latest];
  QStringList places;
  for (const double percent : latest.placesPercent) places << elongation(percent);
  QString words = Say::tr("Elongation %1 % of a limit of %2 %.")
                      .arg(elongation(latest.greatestPercent), number(figures.limitPercent, 1));
  if (places.size() > 1)
    words += QLatin1Char(' ') +
             Say::tr("Places measured: %1 %. Unevenness %2 %.")
                 .arg(places.join(Say::tr(", ", "between places")), elongation(latest.unevennessPercent));
  return words;
}

QString toothDrawingCaption(const WearBook& book, double elongationPercent, bool newChain,
                            const UnitsShown& units) {
  const auto length = [&](double metres) {
    const int decimals = units.decimals(Quantity::SmallLength) + 1;
    return units.withUnit(number(units.shown(Quantity::SmallLength, metres), decimals),
                          Quantity::SmallLength);
  };
  if (newChain)
    return Say::tr("New chain on teeth worn with a chain of %1 %: %2 of slop (a sketch).")
        .arg(elongation(elongationPercent),
             length(flankLossM(*book.size, book.rearTeeth, elongationPercent)));
  return Say::tr("%1 % longer: on %2 teeth the rollers ride %3 higher.")
      .arg(elongation(elongationPercent))
      .arg(book.rearTeeth)
      .arg(length(rideOutM(*book.size, book.rearTeeth, elongationPercent)));
}

QString toothDrawingWords(const WearBook& book, double elongationPercent, bool newChain,
                          const UnitsShown& units) {
  const QString what =
      newChain
          ? Say::tr(
                "Teeth of the rear sprocket, cut back on their loaded side, with a new chain's rollers "
                "in the wide gaps.")
          : Say::tr(
                "Teeth of the rear sprocket with the chain's rollers, which climb the teeth as the chain "
                "grows longer.");
  return what + QLatin1Char(' ') + toothDrawingCaption(book, elongationPercent, newChain, units);
}

std::vector<std::size_t> measurementOrder(const Wear& wear) {
  std::vector<std::size_t> order(wear.measurements.size());
  std::iota(order.rbegin(), order.rend(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return wear.measurements[a].date > wear.measurements[b].date;
  });
  return order;
}

std::vector<QStringList> measurementTable(const WearBook& book, const UnitsShown& units) {
  std::vector<QStringList> rows{{Say::tr("Measurement"),
                                 Say::tr("Use, %1").arg(useName(book.figures.useUnit, units)),
                                 Say::tr("Longer, %"), Say::tr("Uneven, %")}};
  for (const std::size_t index : measurementOrder(book.wear)) {
    const WearMeasurement& entry = book.wear.measurements[index];
    const MeasuredElongation* measured = measuredAt(book.figures, index);
    const auto percentCell = [&](double MeasuredElongation::*member) {
      return measured ? elongation(measured->*member) : noValue();
    };
    const QString more = remark(entry, measured), day = shownDate(entry.date);
    rows.push_back({more.isEmpty() ? day : Say::tr("%1: %2", "day and remark").arg(day, more),
                    entry.at ? number(shownUse(book.figures.useUnit, *entry.at, units),
                                      useDecimals(book.figures.useUnit))
                             : noValue(),
                    percentCell(&MeasuredElongation::greatestPercent),
                    percentCell(&MeasuredElongation::unevennessPercent)});
  }
  return rows;
}

QString slackWords(const Wear& wear, const UnitsShown& units) {
  if (!wear.slackMm) return {};
  const auto length = [&](double mm) {
    return number(units.shown(Quantity::SmallLength, units::metresFromMillimetres(mm)),
                  units.system() == UnitSystem::Imperial ? 2 : 0);
  };
  const QString range = units.withUnit(
      Say::tr("%1 to %2", "lengths").arg(length(wear.slackMm->lowMm), length(wear.slackMm->highMm)),
      Quantity::SmallLength);
  const QString posture = shownName(wear.slackPosture).simplified();
  return posture.isEmpty()
             ? Say::tr("Slack by the manual: %1.").arg(range)
             : Say::tr("Slack by the manual: %1, %2.", "slack, and how the bike stands").arg(range, posture);
}

QString livePlacesWords(const ChainSize& size, int pitches, const std::vector<double>& lengthsMm) {
  if (lengthsMm.empty()) return {};
  const auto [least, greatest] = std::minmax_element(lengthsMm.begin(), lengthsMm.end());
  const double low = elongationPercent(size, pitches, *least),
               high = elongationPercent(size, pitches, *greatest);
  QString words = Say::tr("Longest place: %1 % longer than new.").arg(elongation(high));
  if (lengthsMm.size() > 1)
    words += QLatin1Char(' ') + Say::tr("Unevenness %1 %.").arg(elongation(high - low));
  // A link miscounted is a pitch more or less.
  const double halfLink = 100.0 * 0.5 / pitches;
  if (low < 0.0)
    words +=
        QLatin1Char(' ') +
        Say::tr("Shorter than a new chain: count the links again. It is kept, but left out of the trend.");
  else if (high > halfLink)
    words += QLatin1Char(' ') + Say::tr("That is half a link or more: count the links again.");
  return words;
}

QStringList wearReport(const Plan& plan, const UnitsShown& units) {
  if (!plan.wear) return {};
  const WearFigures& figures = *plan.wear;
  QStringList lines{wearVerdictWords(figures), wearLimitWords(figures)};
  if (figures.latest) {
    const MeasuredElongation& latest = figures.measured[*figures.latest];
    lines << Say::tr("Measured %1: %2").arg(shownDate(latest.date), wearGaugeWords(figures));
    lines << wearTrendWords(figures, units);
  }
  return lines;
}

}  // namespace layshaft::ui
