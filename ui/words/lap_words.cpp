// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/lap_words.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>

#include "core/lap_csv.h"
#include "core/short_text.h"
#include "ui/words/chart_words.h"
#include "ui/words/csv_units.h"
#include "ui/words/figure_rows.h"
#include "ui/words/numbers.h"
#include "ui/words/plain_text.h"
#include "ui/words/road_words.h"

namespace layshaft::ui {
namespace {

struct LapWords {
  Q_DECLARE_TR_FUNCTIONS(LapWords)
};

constexpr int kTimeDecimals = 2;
constexpr double kWorthTellingS = 0.05;  // on the limiter: less is a shift made a little late
constexpr std::size_t kMostTold = 4;     // parts, on either side

}  // namespace

QString secondsText(double s) {
  return number(std::abs(s), kTimeDecimals);
}

QString bandText(double s) {
  const double perUnit = std::pow(10.0, kTimeDecimals);
  return number(std::ceil(s * perUnit - 1e-9) / perUnit, kTimeDecimals);
}

namespace {

/// What a noisy recording alone does to a difference; nothing where it cannot be told.
QString noiseWords(const std::optional<LapChange>& change) {
  if (!change || change->noiseS < kLapBandS) return {};
  return QLatin1Char(' ') + LapWords::tr("The noise of the recording alone makes it uncertain by ±%1 s.")
                                .arg(bandText(change->noiseS));
}

/// How far a difference may be off, and what of it the axle does.
QString changeRests(const LapChange& change) {
  const QString band =
      LapWords::tr("The difference may be off by ±%1 s.").arg(bandText(std::max(change.bandS, kLapBandS))) +
      noiseWords(change);
  if (std::abs(change.axleS) < kLapBandS) return band;
  // Where the two work against each other, the axle does not win or lose a part of what is told.
  const double gearingS = change.seconds - change.axleS;
  if (std::abs(gearingS) >= kLapBandS && gearingS * change.axleS < 0.0)
    return band + QLatin1Char(' ') +
           (change.axleS < 0.0
                ? LapWords::tr("The axle's new place wins %1 s, the gearing by itself loses %2 s.")
                : LapWords::tr("The axle's new place loses %1 s, the gearing by itself wins %2 s."))
               .arg(secondsText(change.axleS), secondsText(gearingS));
  return band + QLatin1Char(' ') +
         (change.axleS < 0.0 ? LapWords::tr("Of it the axle's new place wins %1 s.")
                             : LapWords::tr("Of it the axle's new place loses %1 s."))
             .arg(secondsText(change.axleS));
}

/// What a part changes, greatest first.
struct PartChange {
  std::size_t part;
  double wonS;
};

std::vector<PartChange> changes(const LapBook& book, bool won) {
  std::vector<PartChange> all;
  for (std::size_t i = 0; i < book.parts.size(); ++i) {
    const double s = wonS(book.proposed(), book.parts[i].fromM, book.parts[i].toM);
    if ((won ? s : -s) >= kLapBandS) all.push_back({i, s});
  }
  std::stable_sort(all.begin(), all.end(), [](const PartChange& a, const PartChange& b) {
    return std::abs(a.wonS) > std::abs(b.wonS);
  });
  if (all.size() > kMostTold) all.resize(kMostTold);
  return all;
}

/// The bend from which a straight leads away; null where there is none.
const LapPart* bendBefore(const LapBook& book, std::size_t part) {
  const bool closed = book.track->closed.value_or(false);
  for (std::size_t step = 1; step <= book.parts.size(); ++step) {
    if (step > part && !closed) return nullptr;
    const LapPart& before = book.parts[(part + book.parts.size() - step) % book.parts.size()];
    if (before.bend) return &before;
  }
  return nullptr;
}

/// "0.13 s on Long Meadow, where it sits 0.9 s on the limiter".
QString changeWords(const LapBook& book, const PartChange& change) {
  const LapPart& part = book.parts[change.part];
  const QString time = secondsText(change.wonS);
  const LapPart* bend = part.bend || part.named ? nullptr : bendBefore(book, change.part);
  const QString what = part.bend ? LapWords::tr("%1 s in %2", "seconds, a corner").arg(time, part.name)
                       : bend    ? LapWords::tr("%1 s out of %2", "seconds, a corner").arg(time, bend->name)
                                 : LapWords::tr("%1 s on %2", "seconds, a straight").arg(time, part.name);
  const bool won = change.wonS > 0.0;
  const LapOfSetup& held = won ? book.stock() : book.proposed();
  const double limiter = partFigures(book, held, change.part).limiterS;
  if (limiter < kWorthTellingS) return what;
  return won ? LapWords::tr("%1, where stock sits %2 s on the limiter", "%1 is what is won on a straight")
                   .arg(what, secondsText(limiter))
             : LapWords::tr("%1, where it sits %2 s on the limiter", "%1 is what is lost on a straight")
                   .arg(what, secondsText(limiter));
}

QString changesWords(const LapBook& book, const std::vector<PartChange>& changes) {
  QStringList items;
  for (const PartChange& change : changes) items << changeWords(book, change);
  return listedWords(items);
}

QString speed(double mps, const UnitsShown& units) {
  return units.withUnit(number(units.shown(Quantity::Speed, mps), 0), Quantity::Speed);
}

/// One figure where both read alike, else stock → proposed.
QString compared(const std::optional<double>& stock, const std::optional<double>& proposed, int decimals) {
  const QString was = figureText(stock, decimals), is = figureText(proposed, decimals);
  return was == is ? is : LapWords::tr("%1 → %2", "stock and proposed").arg(was, is);
}

QString lapTimes(const LapBook& book) {
  const double stock = book.stock().figures->timeS, proposed = book.proposed().figures->timeS;
  const QString name = shownName(book.track->name);
  const ComparedTexts texts = comparedTexts(stock, proposed, kTimeDecimals);
  if (book.plan->stock.setup == book.plan->proposed.setup)
    return LapWords::tr("%1: %2 s with stock; nothing else is proposed.", "track").arg(name, texts.stock);
  if (book.bandPending)
    return LapWords::tr(
               "%1: %2 s with stock and %3 s with the proposal; how far the difference may be off is "
               "being worked out.",
               "track")
        .arg(name, texts.stock, texts.proposed);
  const double band = std::max(book.bandS, kLapBandS);
  if (std::abs(stock - proposed) < band)
    return LapWords::tr("%1: equal within ±%2 s, %3 s with stock and %4 s with the proposal.", "track")
               .arg(name, bandText(band), texts.stock, texts.proposed) +
           noiseWords(book.change);
  const QString sentence =
      proposed < stock
          ? LapWords::tr("%1: %2 s with the proposal, %3 s quicker than stock with %4 s.", "track")
          : LapWords::tr("%1: %2 s with the proposal, %3 s slower than stock with %4 s.", "track");
  QString words = sentence.arg(name, texts.proposed, secondsText(stock - proposed), texts.stock);
  if (book.change) words += QLatin1Char(' ') + changeRests(*book.change);
  return words;
}

/// Out of corners in which first gear would turn too slowly. That a clutch slips from the start of an open
/// track nobody needs to be told.
QString slippingWords(const Plan& plan) {
  constexpr double kRollingMps = 1.0;
  const SetupPlan& proposed = plan.proposed;
  if (!proposed.lap || !proposed.model) return {};
  const double launchRpm = proposed.model->launchRpm();
  const auto slips = [&](const LapPullFigures& pull) {
    return pull.firstGear == 1 && pull.fromMps > kRollingMps &&
           proposed.model->rpm(pull.fromMps, 0) < launchRpm;
  };
  const auto& pulls = proposed.lap->pulls;
  if (std::none_of(pulls.begin(), pulls.end(), slips)) return {};
  return LapWords::tr(
             "Out of corners where first gear turns slower than %1 rpm the clutch is taken to slip, as "
             "from a standstill.")
      .arg(number(launchRpm, 0));
}

/// A segment by its name or number; of a recorded line how far round the stretch is.
QString segmentWords(const Track& track, std::size_t segment) {
  if (track.path)
    return LapWords::tr("the stretch at %1 % of its length")
        .arg(number(100.0 * (static_cast<double>(segment) + 0.5) /
                        static_cast<double>(track.path->curvaturePerKm.size()),
                    0));
  const auto& segments = track.segments;
  return segment < segments.size() && !segments[segment].name.empty()
             ? shownName(segments[segment].name)
             : LapWords::tr("segment %1").arg(segment + 1);
}

std::optional<double> optionalOf(const std::optional<int>& gear) {
  return gear ? std::optional(static_cast<double>(*gear)) : std::nullopt;
}

}  // namespace

QString listedWords(const QStringList& items) {
  if (items.size() < 2) return items.value(0);
  return LapWords::tr("%1 and %2", "the last two of a list")
      .arg(items.mid(0, items.size() - 1).join(LapWords::tr(", ", "between parts of a track")), items.back());
}

QString wonText(double wonS) {
  return signedNumber(wonS, kTimeDecimals);
}

QString lapWords(const LapBook& book) {
  if (!book.laps()) return {};
  QStringList sentences{lapTimes(book)};
  if (book.bandPending) return sentences.front();
  const auto won = changes(book, true), lost = changes(book, false);
  if (!won.empty() && !lost.empty())
    sentences
        << LapWords::tr("It wins %1; it loses %2.").arg(changesWords(book, won), changesWords(book, lost));
  else if (!won.empty())
    sentences << LapWords::tr("It wins %1.").arg(changesWords(book, won));
  else if (!lost.empty())
    sentences << LapWords::tr("It loses %1.").arg(changesWords(book, lost));
  return sentences.join(QLatin1Char(' '));
}

QString lapHonesty(const Plan& plan) {
  QStringList sentences{
      LapWords::tr("Lap times depend on grip and rider; what a change wins or loses depends on them "
                   "far less.")};
  if (plan.input.track && plan.input.track->path)
    sentences << LapWords::tr(
        "The line is a recording: its bends, and with them the times, are only as good "
        "as its positions.");
  if (const QString words = slippingWords(plan); !words.isEmpty()) sentences << words;
  if (plan.input.shared.ride.headwindKmh.value_or(0.0) != 0.0)
    sentences << LapWords::tr("The wind blows against the rider all round the lap.");
  const PullBike& bike = *plan.pullBike;
  if (!bike.cgHeightM || !bike.wheelbaseM || !bike.cgAheadM)
    sentences << LapWords::tr(
        "Without wheelbase and centre of gravity no wheel lifts here: only grip limits pull "
        "and brakes.");
  if (const QString words = estimatedCurveWords(bike); !words.isEmpty()) sentences << words;
  return sentences.join(QLatin1Char(' '));
}

QString lapName(const Plan& plan) {
  constexpr std::size_t kLetters = 24;  // of the track's name: what stands beside it must not be pushed out
  const auto& track = plan.input.track;
  if (!track || track->name.empty()) return LapWords::tr("Lap");
  return LapWords::tr("Lap of %1", "track").arg(shownName(shortText(track->name, kLetters)));
}

QString lapRefusalWords(const LapRefusal& refusal, const Track& track) {
  switch (refusal.why) {
    case LapRefusal::Why::NoBend:
      return LapWords::
          tr("%1 is closed and has no bend that asks for the brakes: no lap of it has a beginning. Give it "
             "a corner.")
              .arg(shownName(track.name));
    case LapRefusal::Why::BrakesTooWeak: {
      return LapWords::tr("Full brakes cannot slow the bike on %1: it falls too steeply for its surface.",
                          "a segment")
          .arg(segmentWords(track, refusal.segment));
    }
    case LapRefusal::Why::Empty:
      break;
  }
  return LapWords::tr("%1 has nothing to ride on yet.", "track").arg(shownName(track.name));
}

QString stopsForGoodWords(const Track& track) {
  return LapWords::tr("The bike stops on %1 for good: no gear pulls there.", "track")
      .arg(shownName(track.name));
}

QString stopsForGoodWords(const Plan& plan) {
  const Track& track = *plan.input.track;
  const SetupPlan& stopped = plan.stock.lap ? plan.proposed : plan.stock;
  const auto where = plan.laps->stop(plan.stock.setup, stopped.setup);
  if (!where) return stopsForGoodWords(track);
  const QString words = plan.stock.lap
                            ? LapWords::tr(
                                  "With the proposal the bike stops on %1 for good, on %2: no gear "
                                  "pulls there.",
                                  "track, and the place on it")
                            : LapWords::tr("The bike stops on %1 for good, on %2: no gear pulls there.",
                                           "track, and the place on it");
  return words.arg(shownName(track.name), segmentWords(track, *where));
}

QString noLapWords(const Plan& plan) {
  if (const auto lacks = lapLacks(plan); !lacks.empty())
    return LapWords::tr("Not known: it needs %1.")
        .arg(fieldNames(lacks).join(LapWords::tr(", ", "between fields that are missing")));
  const auto& refusal = plan.laps->allowed().refusal();
  return refusal ? lapRefusalWords(*refusal, *plan.input.track) : stopsForGoodWords(plan);
}

std::vector<QStringList> lapTable(const LapBook& book, const UnitsShown& units) {
  const QString unit = units.name(Quantity::Speed);
  std::vector<QStringList> rows{{LapWords::tr("Corner"), LapWords::tr("Lowest Speed, %1").arg(unit),
                                 LapWords::tr("Gear There"), LapWords::tr("Engine There, rpm"),
                                 LapWords::tr("Exit Gear"), LapWords::tr("End of Straight, rpm"),
                                 LapWords::tr("Shifts"), LapWords::tr("Limiter, s"), LapWords::tr("Won, s")}};
  if (!book.laps()) return rows;
  const auto corners = cornerParts(book);
  const LapOfSetup &stock = book.stock(), &proposed = book.proposed();
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const LapPart& part = book.parts[corners[i]];
    const LapPartFigures was = partFigures(book, stock, corners[i]),
                         is = partFigures(book, proposed, corners[i]);
    const auto wasAfter = straightAfter(book, stock, corners[i]),
               isAfter = straightAfter(book, proposed, corners[i]);
    const auto after = [&](auto value, int decimals) {
      const auto of = [&](const std::optional<LapStraight>& straight) {
        return straight ? std::optional<double>(static_cast<double>((*straight).*value)) : std::nullopt;
      };
      return compared(of(wasAfter), of(isAfter), decimals);
    };
    const auto shown = [&](double mps) { return std::optional(units.shown(Quantity::Speed, mps)); };
    // Up to the next corner; round a closed track the last one's straight goes on behind the start.
    const bool last = i + 1 == corners.size();
    double won = wonS(proposed, part.fromM, last ? book.lengthM : book.parts[corners[i + 1]].fromM);
    if (last) won += wonS(proposed, 0.0, book.parts[corners.front()].fromM);
    rows.push_back({part.name, compared(shown(was.minMps), shown(is.minMps), 0),
                    compared(optionalOf(was.gearAtMin), optionalOf(is.gearAtMin), 0),
                    compared(was.rpmAtMin, is.rpmAtMin, 0),
                    compared(optionalOf(was.exitGear), optionalOf(is.exitGear), 0),
                    after(&LapStraight::endRpm, 0), after(&LapStraight::shifts, 0),
                    after(&LapStraight::limiterS, kTimeDecimals), wonText(won)});
  }
  const auto& a = *stock.figures;
  const auto& b = *proposed.figures;
  rows.push_back({LapWords::tr("Whole lap"), QString(), QString(), QString(), QString(), QString(),
                  compared(a.shifts, b.shifts, 0), compared(a.limiterS, b.limiterS, kTimeDecimals),
                  wonText(a.timeS - b.timeS)});
  return rows;
}

QString lapChartWords(const LapBook& book, const UnitsShown& units) {
  if (!book.laps()) return {};
  QStringList sentences{
      LapWords::tr("Road speed along the lap, below it the time won against stock and the gears.")};
  sentences << LapWords::tr("Stock %1, proposed %2.", "pairs")
                   .arg(teethPair(book.plan->stock.setup), teethPair(book.plan->proposed.setup))
            << LapWords::tr("Fastest: stock %1, proposed %2.")
                   .arg(speed(book.stock().figures->topMps, units),
                        speed(book.proposed().figures->topMps, units))
            << lapWords(book) << LapWords::tr("File ▸ Export ▸ Show Data as a Table has the numbers.");
  return sentences.join(QLatin1Char(' '));
}

QString trackMapWords(const LapBook& book, const UnitsShown& units) {
  if (!book.hasTrack()) return {};
  QStringList corners;
  for (std::size_t i = 0; i < book.parts.size(); ++i) {
    if (!book.parts[i].bend) continue;
    corners << (book.laps()
                    ? LapWords::tr("%1 %2", "a corner and the lowest speed in it")
                          .arg(book.parts[i].name, speed(partFigures(book, book.proposed(), i).minMps, units))
                    : book.parts[i].name);
  }
  const QString length =
      units.withUnit(number(units.shown(Quantity::Length, book.lengthM), 0), Quantity::Length);
  QStringList sentences{LapWords::tr("%1 to scale, %2 round the lap.", "a track and its length")
                            .arg(shownName(book.track->name), length)};
  if (!corners.isEmpty())
    sentences
        << LapWords::tr("Corners: %1.").arg(corners.join(LapWords::tr(", ", "between parts of a track")));
  return sentences.join(QLatin1Char(' '));
}

QString placeWords(const LapBook& book, double distanceM, const UnitsShown& units) {
  const auto was = lapAt(book.stock(), distanceM), is = lapAt(book.proposed(), distanceM);
  const auto later = laterAt(book.proposed(), distanceM);
  if (!was || !is || !later) return {};
  const LapPart* part = book.partAt(distanceM);
  const QString place = units.withUnit(number(units.shown(Quantity::Length, distanceM), 0), Quantity::Length);
  return LapWords::tr("%1, %2: stock %3, proposed %4; won %5 s.", "distance, name, speeds, time")
      .arg(place, part ? part->name : noValue(), speed(was->speedMps, units), speed(is->speedMps, units),
           wonText(-*later));
}

QString lapNumbersCsv(const LapBook& book, const UnitsShown& units) {
  std::vector<NamedLap> laps;
  for (std::size_t i = 0; i < book.setups.size(); ++i) {
    const char* role = i == 0 ? "stock" : "proposed";
    laps.push_back({i < 2 ? role : book.setups[i].setup->name, book.setups[i].points});
  }
  return QString::fromStdString(csvInUnits(lapCsv(laps), units));
}

}  // namespace layshaft::ui
