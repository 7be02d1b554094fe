// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/record_words.h"

#include <QCoreApplication>
#include <QLocale>
#include <QStringList>
#include <cmath>

#include "core/number_text.h"
#include "core/short_text.h"
#include "ui/words/choice_words.h"
#include "ui/words/dates.h"
#include "ui/words/numbers.h"
#include "ui/words/plain_text.h"
#include "ui/words/problem_words.h"

namespace layshaft::ui {
namespace {

struct Say {
  Q_DECLARE_TR_FUNCTIONS(RecordWords)
};

constexpr double kSecondsPerMinute = 60.0;
constexpr std::size_t kLongestWords = 120;  // bytes of somebody's words in a message

/// What somebody wrote, where it is not empty.
void add(QStringList& parts, const std::string& text) {
  if (const QString line = onOneLine(QString::fromStdString(text)).simplified(); !line.isEmpty())
    parts << line;
}

QString joined(const QStringList& parts) {
  return parts.join(Say::tr(" · ", "between what a record says"));
}

QString teethSeen(const QString& form, TeethSeen seen) {
  return form.arg(choiceWord(wordFor(seen, kTeethSeenWords)));
}

}  // namespace

QString recordKindName(RecordKind kind) {
  switch (kind) {
    case RecordKind::TrackNote:
      return Say::tr("Track note");
    case RecordKind::Measurement:
      return Say::tr("Measurement");
    case RecordKind::Service:
      break;
  }
  return Say::tr("Service");
}

QString recordText(const Service& service) {
  QStringList parts, fresh;
  add(parts, service.parts);
  if (service.newChain.value_or(false)) fresh << Say::tr("chain");
  if (service.newFrontSprocket.value_or(false)) fresh << Say::tr("front sprocket");
  if (service.newRearSprocket.value_or(false)) fresh << Say::tr("rear sprocket");
  if (!fresh.isEmpty()) parts << Say::tr("new: %1").arg(fresh.join(Say::tr(", ")));
  add(parts, service.note);
  return joined(parts);
}

QString recordText(const TrackNote& note) {
  QStringList parts;
  add(parts, note.words);
  if (note.surface) parts << choiceWord(wordFor(*note.surface, kSurfaceWords));
  add(parts, note.weather);
  if (note.gearAtEnd && note.rpmAtEnd)
    parts
        << Say::tr("straight ends in gear %1 at %2 rpm").arg(*note.gearAtEnd).arg(number(*note.rpmAtEnd, 0));
  else if (note.gearAtEnd)
    parts << Say::tr("straight ends in gear %1").arg(*note.gearAtEnd);
  else if (note.rpmAtEnd)
    parts << Say::tr("straight ends at %1 rpm").arg(number(*note.rpmAtEnd, 0));
  if (note.limiterHit)
    parts << (*note.limiterHit ? Say::tr("on the limiter") : Say::tr("limiter not reached"));
  return joined(parts);
}

QString recordText(const WearMeasurement& measurement, const UnitsShown& units) {
  QStringList parts, lengths;
  for (const double mm : measurement.lengthsMm)
    lengths << number(units.shown(Quantity::SmallLength, mm / 1000.0), units.decimals(Quantity::SmallLength));
  if (!lengths.isEmpty()) {
    const QString all =
        units.withUnit(lengths.join(Say::tr(" / ", "between lengths")), Quantity::SmallLength);
    parts << (measurement.pitches ? Say::tr("%1 over %n links", nullptr, *measurement.pitches).arg(all)
                                  : all);
  }
  if (measurement.front) parts << teethSeen(Say::tr("front teeth %1"), *measurement.front);
  if (measurement.rear) parts << teethSeen(Say::tr("rear teeth %1"), *measurement.rear);
  if (measurement.liftsOffHalfTooth.value_or(false)) parts << Say::tr("chain lifts off the rear sprocket");
  add(parts, measurement.note);
  return joined(parts);
}

QString struckText(const Struck& struck) {
  const QString reason = onOneLine(QString::fromStdString(struck.reason)).simplified();
  const QString day = shownDate(struck.date);
  return reason.isEmpty() ? Say::tr("Struck through %1").arg(day)
                          : Say::tr("Struck through %1: %2").arg(day, reason);
}

QString lapTimeText(double seconds) {
  constexpr double kHundredths = 100.0;
  const double rounded = std::round(seconds * kHundredths) / kHundredths;
  if (rounded < kSecondsPerMinute) return number(rounded, 2);
  const double minutes = std::floor(rounded / kSecondsPerMinute);
  const QString rest = number(rounded - minutes * kSecondsPerMinute, 2);
  const bool padded = rounded - minutes * kSecondsPerMinute < 10.0;
  return QStringLiteral("%1:%2%3").arg(number(minutes, 0), padded ? QStringLiteral("0") : QString(), rest);
}

std::optional<double> typedLapTime(const QString& text) {
  const QStringList parts = text.trimmed().split(QLatin1Char(':'));
  if (parts.size() > 2) return std::nullopt;
  QString plain = parts.back();
  plain.replace(QLatin1Char(','), QLatin1Char('.'));
  const auto seconds = numberFromText(plain.toStdString());
  if (!seconds || parts.size() == 1) return seconds;
  bool whole = false;
  const int minutes = parts.front().toInt(&whole);
  if (!whole || minutes < 0 || *seconds < 0.0 || *seconds >= kSecondsPerMinute) return std::nullopt;
  return minutes * kSecondsPerMinute + *seconds;
}

QString setupText(const SetupChange& setup) {
  QStringList parts;
  if (setup.frontTeeth && setup.rearTeeth)
    parts << pairText(setup.frontTeeth->count(), setup.rearTeeth->count());
  const bool belt = setup.options.finalDrive == FinalDrive::Belt;
  if (!belt && setup.options.links) parts << Say::tr("%n links", nullptr, *setup.options.links);
  if (belt && setup.options.beltTeeth)
    parts << Say::tr("belt of %n teeth", nullptr, *setup.options.beltTeeth);
  if (setup.rearTyre) parts << QString::fromStdString(setup.rearTyre->text());
  return parts.join(Say::tr(", "));
}

QString latestDecision(const Profile& profile) {
  for (const RecordRef& ref : newestFirst(profile)) {
    QStringList said;
    if (ref.kind == RecordKind::TrackNote) {
      const TrackNote& note = profile.records->trackNotes[ref.index];
      if (note.struck || !note.setup || !note.setup->frontTeeth || !note.setup->rearTeeth) continue;
      const QString pair = pairText(note.setup->frontTeeth->count(), note.setup->rearTeeth->count());
      const auto& options = note.setup->options;
      const bool chain = options.links && options.finalDrive != FinalDrive::Belt;
      said << (chain ? Say::tr("%1 on the %2-link chain").arg(pair).arg(*options.links) : pair);
      add(said, note.place);
      add(said, shortText(note.words, kLongestWords));
    } else if (ref.kind == RecordKind::Service) {
      const Service& service = profile.records->services[ref.index];
      if (service.struck) continue;
      add(said, shortText(service.parts, kLongestWords));
    }
    if (said.isEmpty()) continue;
    const Date& day = ref.kind == RecordKind::TrackNote ? profile.records->trackNotes[ref.index].date
                                                        : profile.records->services[ref.index].date;
    return Say::tr("%1: %2", "a day and what was decided").arg(shownDate(day), said.join(Say::tr(", ")));
  }
  return {};
}

QString refusalWords(const CsvRefusal& refusal, const Profile& profile) {
  using Why = CsvRefusal::Why;
  const QString column = onOneLine(QString::fromStdString(refusal.column));
  const QString place = column.isEmpty()
                            ? Say::tr("Row %1", "of a table").arg(refusal.row)
                            : Say::tr("Row %1, column “%2”", "of a table").arg(refusal.row).arg(column);
  const auto said = [&](const QString& what) {
    return Say::tr("%1: %2", "a place in a table and what is wrong there").arg(place, what);
  };
  switch (refusal.why) {
    case Why::NotOfThisKind:
      return said(Say::tr("entries of this kind have nothing there"));
    case Why::UseGoesBack: {
      const auto read = [](double use) {
        return QLocale().toString(use, 'g', QLocale::FloatingPointShortest);
      };
      const auto other = Date::parse(refusal.problem.below);
      return said(Say::tr("the use goes backwards; the entry of %1 has %2")
                      .arg(shownDate(other.value_or(Date())), read(refusal.problem.low)));
    }
    case Why::OtherUseUnit:
      return said(useUnitOf(profile) == UseUnit::Hours
                      ? Say::tr("use is counted in hours on this bike; see Wear in its details")
                      : Say::tr("use is counted in kilometres on this bike; see Wear in its details"));
    case Why::ColumnMissing:
      return Say::tr(
                 "There is no column “%1”; the first row must name the columns, “kind” and “date” among them")
          .arg(column);
    case Why::ColumnTwice:
      return said(Say::tr("this column is there twice"));
    case Why::QuoteLeftOpen:
      return Say::tr("A quotation mark is opened and never closed");
    case Why::TooMany:
      return Say::tr("With these there would be more than %1 entries of one kind")
          .arg(number(refusal.problem.high, 0));
    case Why::Cell:
    case Why::NoSuchKind:
      break;
  }
  if (refusal.problem.kind == Problem::Kind::NotADate && refusal.problem.given.empty())
    return said(Say::tr("a day is missing; expected one as in 2026-05-12"));
  return said(sentence(refusal.problem));
}

QString importedWords(const RecordsRead& read) {
  const auto count = [](std::size_t n) { return static_cast<int>(n); };
  QStringList said;
  said << (read.entries.size() == 0 ? Say::tr("Nothing new was read.")
                                    : Say::tr("%n entries were added.", nullptr, count(read.entries.size())));
  if (read.known > 0) said << Say::tr("%n were there already.", nullptr, count(read.known));
  if (!read.ignored.empty()) {
    QStringList titles;
    for (const std::string& title : read.ignored) titles << onOneLine(QString::fromStdString(title));
    said << Say::tr("Columns that were passed over: %1.").arg(titles.join(Say::tr(", ")));
  }
  return said.join(QLatin1Char(' '));
}

}  // namespace layshaft::ui
