// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/track_words.h"

#include <QCoreApplication>
#include <QFileInfo>
#include <algorithm>
#include <cmath>

#include "core/limits.h"
#include "core/units.h"
#include "ui/words/numbers.h"
#include "ui/words/plain_text.h"
#include "ui/words/problem_words.h"
#include "ui/words/record_words.h"

namespace layshaft::ui {
namespace {

struct Say {
  Q_DECLARE_TR_FUNCTIONS(TrackWords)
};

constexpr double kAgreesM = 0.5, kAgreesDeg = 0.5;  // below them nothing is worth a word

/// How the heading at the end misses a whole turn; nothing where it hardly does.
enum class TurnMiss { None, TooLittle, TooFar, Askew };

struct Turned {
  TurnMiss miss = TurnMiss::None;
  double deg = 0.0;
};

/// A loop turns once around in all, or some times; an eight, as much to the left as to the right.
Turned turnedOf(const TrackLine& line) {
  constexpr double kRoundRad = 2.0 * units::kPi;
  constexpr double kEightRad = 1.5 * kRoundRad, kAboutStraightRad = kRoundRad / 4.0;
  double bothWaysRad = 0.0;
  for (std::size_t i = 0; i + 1 < line.places.size(); ++i)
    bothWaysRad += std::abs(line.places[i + 1].headingRad - line.places[i].headingRad);
  const double netRad = std::abs(line.places.back().headingRad - line.places.front().headingRad);
  const bool eight = netRad < kAboutStraightRad && bothWaysRad >= kEightRad;
  const double wholeRad = eight ? 0.0 : kRoundRad * std::max(1.0, std::round(netRad / kRoundRad));
  Turned turned{.miss = TurnMiss::None, .deg = std::abs(units::degreesFromRadians(netRad - wholeRad))};
  if (turned.deg < kAgreesDeg) return turned;
  turned.miss = eight ? TurnMiss::Askew : netRad < wholeRad ? TurnMiss::TooLittle : TurnMiss::TooFar;
  return turned;
}

QString gapWords(const QString& length, const QString& gap, const Turned& turned) {
  const QString deg = number(turned.deg, 0);
  switch (turned.miss) {
    case TurnMiss::None:
      return Say::tr("%1; ends %2 from its start.").arg(length, gap);
    case TurnMiss::TooLittle:
      return Say::tr("%1; ends %2 from its start, turned %3° too little.").arg(length, gap, deg);
    case TurnMiss::TooFar:
      return Say::tr("%1; ends %2 from its start, turned %3° too far.").arg(length, gap, deg);
    case TurnMiss::Askew:
      break;
  }
  return Say::tr("%1; ends %2 from its start, heading %3° off.").arg(length, gap, deg);
}

QString meetingWords(const QString& length, const Turned& turned) {
  const QString deg = number(turned.deg, 0);
  switch (turned.miss) {
    case TurnMiss::None:
      return Say::tr("%1; its end meets its start.").arg(length);
    case TurnMiss::TooLittle:
      return Say::tr("%1; its end meets its start, but turned %2° too little.").arg(length, deg);
    case TurnMiss::TooFar:
      return Say::tr("%1; its end meets its start, but turned %2° too far.").arg(length, deg);
    case TurnMiss::Askew:
      break;
  }
  return Say::tr("%1; its end meets its start, but heading %2° off.").arg(length, deg);
}

QString heightWords(double heightM, const UnitsShown& units) {
  if (std::abs(heightM) < kAgreesM) return {};
  const QString height = shortDistanceText(std::abs(heightM), units);
  return heightM > 0.0 ? Say::tr("By its slopes it ends %1 above its start.").arg(height)
                       : Say::tr("By its slopes it ends %1 below its start.").arg(height);
}

QStringList leftOutWords(const RecordedTrack& track) {
  const auto count = [](std::size_t n) { return static_cast<int>(n); };
  const LeftOut& out = track.leftOut;
  QStringList said;
  if (out.outside > 0) said << Say::tr("%n points before and after the lap", nullptr, count(out.outside));
  if (out.noFix > 0) said << Say::tr("%n without a position", nullptr, count(out.noFix));
  if (out.damaged > 0) said << Say::tr("%n damaged lines", nullptr, count(out.damaged));
  if (out.repeated > 0) said << Say::tr("%n repeated points", nullptr, count(out.repeated));
  if (out.standing > 0) said << Say::tr("%n where the bike stood", nullptr, count(out.standing));
  if (out.leaps > 0) said << Say::tr("%n leaps", nullptr, count(out.leaps));
  QStringList sentences;
  if (!said.isEmpty())
    sentences << Say::tr("Left out: %1.", "of a recording").arg(said.join(Say::tr(", ", "in a list")));
  if (track.heightsLeftOut > 0)
    sentences << Say::tr(
        "The heights are left out: too few points have one, or they make slopes that no "
        "road has. The track is taken as level.");
  return sentences;
}

/// What lies between two fixes nobody recorded: where they are far apart a tight bend is a guess.
QString farApartWords(const RecordedTrack& track, const UnitsShown& units) {
  constexpr double kFarApartM = 12.0;  // about a second in a slow bend; common practice, no source
  if (track.used == 0) return {};
  const double apartM = track.lengthM / static_cast<double>(track.used);
  if (apartM < kFarApartM) return {};
  return Say::
      tr("They are about %1 apart: bends tighter than that may come out too sharp or too wide. A receiver "
         "that records more often tells more.")
          .arg(shortDistanceText(apartM, units));
}

}  // namespace

double trackLengthM(const Track& track) {
  if (track.path) return track.path->spacingM * static_cast<double>(track.path->curvaturePerKm.size());
  return trackLine(track).lengthM;
}

QString trackLengthText(double metres, const UnitsShown& units) {
  if (units.system() == UnitSystem::Imperial) {
    constexpr double kFeetUpToM = units::kMetresPerMile / 4.0;
    if (metres >= kFeetUpToM) return Say::tr("%1 mi").arg(number(metres / units::kMetresPerMile, 2));
  } else if (metres >= units::kMetresPerKilometre) {
    return Say::tr("%1 km").arg(number(metres / units::kMetresPerKilometre, 2));
  }
  return units.withUnit(number(units.shown(Quantity::Length, metres), 0), Quantity::Length);
}

QString shortDistanceText(double metres, const UnitsShown& units) {
  constexpr double kTenthsBelow = 10.0;
  const double shown = units.shown(Quantity::Length, metres);
  return units.withUnit(number(shown, shown < kTenthsBelow ? 1 : 0), Quantity::Length);
}

QString trackKindWords(const Track& track) {
  const bool closed = track.closed.value_or(false);
  if (track.path) return closed ? Say::tr("Recording, closed") : Say::tr("Recording, open");
  return closed ? Say::tr("Segments, closed") : Say::tr("Segments, open");
}

QString trackShapeWords(const Track& track, const TrackLine& line, const UnitsShown& units) {
  if (line.places.size() < 2) return Say::tr("Nothing to draw yet: type or paste segments.");
  const QString length = trackLengthText(line.lengthM, units);
  if (!line.closingGapM) return Say::tr("%1, open.", "length of a track").arg(length);
  const Turned turned = turnedOf(line);
  QStringList words;
  words << (*line.closingGapM < kAgreesM
                ? meetingWords(length, turned)
                : gapWords(length, shortDistanceText(*line.closingGapM, units), turned));
  const double heightM = line.places.back().heightM - line.places.front().heightM;
  if (!track.path) words << heightWords(heightM, units);
  words.removeAll(QString());
  return words.join(QLatin1Char(' '));
}

QString recordedPathWords(const TrackPath& path, const UnitsShown& units) {
  const QString spacing = shortDistanceText(path.spacingM, units);
  const auto count = static_cast<int>(path.curvaturePerKm.size());
  const QString stretches = Say::tr("%n stretches of %1", nullptr, count).arg(spacing);
  const QString source = shownName(path.source);
  return source.isEmpty() ? Say::tr("A recorded line, kept as %1.").arg(stretches)
                          : Say::tr("A recorded line from “%1”, kept as %2.").arg(source, stretches);
}

QString lapOption(const RecordedLap& lap, std::size_t number, const UnitsShown& units) {
  const QString length = trackLengthText(lap.lengthM, units);
  const QString gap = shortDistanceText(lap.closingGapM, units);
  if (lap.timeS)
    return Say::tr("Lap %1: %2, %3, gap %4").arg(number).arg(lapTimeText(*lap.timeS), length, gap);
  return Say::tr("Lap %1: %2, gap %3").arg(number).arg(length, gap);
}

QStringList recordedTrackWords(const RecordedTrack& track, const UnitsShown& units) {
  QStringList words;
  const QString length = trackLengthText(track.lengthM, units);
  if (!track.closed)
    words << Say::tr("The line comes by nowhere twice: taken whole, %1, open.").arg(length);
  else if (track.closingGapM)
    words << Say::tr("%1 once around; its end was %2 from its start, which is spread over the lap.")
                 .arg(length, shortDistanceText(*track.closingGapM, units));
  words << Say::tr("The points lie about %1 beside the line.").arg(shortDistanceText(track.noiseM, units));
  if (const QString apart = farApartWords(track, units); !apart.isEmpty()) words << apart;
  if (track.smallestRadiusM)
    words << Say::tr("Smallest radius: %1.").arg(shortDistanceText(*track.smallestRadiusM, units));
  return words + leftOutWords(track);
}

QString recordingRefusalWords(const QString& file, const Problem& problem) {
  return Say::tr("%1: %2.", "a file and what is wrong with it").arg(file, sentence(problem));
}

QString trackNameFromFile(const QString& file) {
  const QString name = onOneLine(QFileInfo(file).completeBaseName()).simplified();
  return name.isEmpty() ? Say::tr("Recorded track") : name.left(limits::kLongestName / 2);
}

}  // namespace layshaft::ui
