// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/problem_words.h"

#include <QCoreApplication>
#include <QLocale>
#include <QRegularExpression>
#include <QStringList>
#include <utility>

#include "ui/words/choice_words.h"
#include "ui/words/field_table.h"
#include "ui/words/plain_text.h"

namespace layshaft::ui {
namespace {

struct Say {
  Q_DECLARE_TR_FUNCTIONS(ProblemWords)
};

QString problemLocation(const Problem& problem) {
  QString place =
      problem.path.empty() ? QString() : QString::fromStdString(problem.path) + QStringLiteral(": ");
  if (problem.line > 0) place += Say::tr("line %1, column %2: ").arg(problem.line).arg(problem.column);
  return place;
}

QString limitText(double x) {
  return QLocale().toString(x, 'g', 10);
}

QString rangeWords(const Problem& problem) {
  const QString low = limitText(problem.low), high = limitText(problem.high);
  const QString range =
      problem.unit.empty()
          ? Say::tr("%1 to %2").arg(low, high)
          : Say::tr("%1 to %2 %3", "range and unit").arg(low, high, fileUnitWord(problem.unit.c_str()));
  if (problem.below.empty()) return range;
  return Say::tr("%1, bounded by %2").arg(range, QString::fromStdString(problem.below));
}

/// What the core calls kinds of values and parts of a tyre, in the user's words; what is quoted from a file
/// stays as it is.
QString coreWord(const std::string& word) {
  static constexpr const char* kWords[] = {
      QT_TRANSLATE_NOOP("ProblemWords", "text"),
      QT_TRANSLATE_NOOP("ProblemWords", "number"),
      QT_TRANSLATE_NOOP("ProblemWords", "whole number"),
      QT_TRANSLATE_NOOP("ProblemWords", "list"),
      QT_TRANSLATE_NOOP("ProblemWords", "object"),
      QT_TRANSLATE_NOOP("ProblemWords", "true or false"),
      QT_TRANSLATE_NOOP("ProblemWords", "a list"),
      QT_TRANSLATE_NOOP("ProblemWords", "an object"),
      QT_TRANSLATE_NOOP("ProblemWords", "a number too large to hold"),
      QT_TRANSLATE_NOOP("ProblemWords", "width"),
      QT_TRANSLATE_NOOP("ProblemWords", "aspect"),
      QT_TRANSLATE_NOOP("ProblemWords", "rim"),
  };
  for (const char* known : kWords)
    if (word == known) return Say::tr(known);
  return QString::fromStdString(word);
}

/// Where a text went wrong: "line 3, column 7".
QString placeWords(const std::string& place) {
  static const QRegularExpression numbers(QStringLiteral("^line (\\d+), column (\\d+)$"));
  const auto match = numbers.match(QString::fromStdString(place));
  if (!match.hasMatch()) return QString::fromStdString(place);
  return Say::tr("line %1, column %2").arg(match.captured(1), match.captured(2));
}

QString wordList(const std::vector<std::string>& words) {
  QStringList list;
  for (const std::string& word : words) list << coreWord(word);
  return list.join(Say::tr(", "));
}

/// What a segment was given, in the user's words: the core lists keys.
QString measureList(const std::string& keys) {
  static constexpr std::pair<const char*, const char*> kMeasures[] = {
      {"length_m", QT_TRANSLATE_NOOP("ProblemWords", "length")},
      {"radius_m", QT_TRANSLATE_NOOP("ProblemWords", "radius")},
      {"angle_deg", QT_TRANSLATE_NOOP("ProblemWords", "angle")},
      {"corner_speed_kmh", QT_TRANSLATE_NOOP("ProblemWords", "speed")},
  };
  QStringList words;
  for (const auto& [key, word] : kMeasures)
    if (keys.find(key) != std::string::npos) words << Say::tr(word);
  return words.isEmpty() ? Say::tr("nothing") : words.join(Say::tr(", "));
}

QString reason(const Problem& problem) {
  const QString given = coreWord(problem.given);
  switch (problem.kind) {
    case Problem::Kind::FileUnreadable:
      return Say::tr("cannot be read: %1").arg(given);
    case Problem::Kind::FileUnwritable:
      return Say::tr("cannot be saved: %1").arg(given);
    case Problem::Kind::NotAFile:
      return Say::tr("is not a plain file but a pipe or a device");
    case Problem::Kind::FileTooLarge:
      return Say::tr("is too large; at most %1 MiB are allowed").arg(limitText(problem.high / 1048576.0));
    case Problem::Kind::NotUtf8:
      return Say::tr("is not UTF-8 text (first bad byte at position %1)").arg(given);
    case Problem::Kind::NotJson:
      return Say::tr("is not valid JSON at %1").arg(placeWords(problem.given));
    case Problem::Kind::TooDeep:
      return Say::tr("is nested too deeply; at most %1 levels are allowed").arg(limitText(problem.high));
    case Problem::Kind::DuplicateKey:
      return Say::tr("this key appears twice; it may appear once");
    case Problem::Kind::NotFinite:
      return Say::tr("%1 is not a finite number; a plain number is expected").arg(given);
    case Problem::Kind::MissingKey:
      return Say::tr("this key is missing and must be given");
    case Problem::Kind::WrongType:
      return Say::tr("%1 is of the wrong kind; expected: %2").arg(given, wordList(problem.allowed));
    case Problem::Kind::NotWhole:
      return Say::tr("%1 is not a whole number").arg(given);
    case Problem::Kind::OutOfRange:
      if (problem.unit == "characters")
        return Say::tr("has %1 characters; allowed are %2").arg(given, rangeWords(problem));
      return Say::tr("%1 is out of range (%2)").arg(given, rangeWords(problem));
    case Problem::Kind::NotOneOf:
      return Say::tr("%1 is not known; allowed: %2").arg(given, wordList(problem.allowed));
    case Problem::Kind::WrongCount:
      return Say::tr("has %1 entries; allowed are %2").arg(given, rangeWords(problem));
    case Problem::Kind::NotFalling:
      return Say::tr("%1 must be lower than the ratio of the gear before, %2")
          .arg(given, limitText(problem.high));
    case Problem::Kind::NotRising:
      return Say::tr("%1 must be above the engine speed of the point before, %2 rpm")
          .arg(given, limitText(problem.low));
    case Problem::Kind::BadTyreSize:
      return Say::tr(
                 "“%1” does not read as a tyre size; expected one as printed on the tyre, such as "
                 "180/55ZR17, 120/80-19, 4.00-18 or MT90B16")
          .arg(given);
    case Problem::Kind::ImpossibleTyre:
      return Say::tr(
                 "“%1” cannot be a tyre: its %2 must be %3; expected width / aspect and rim, as in 180/55-17")
          .arg(given, coreWord(problem.part), rangeWords(problem));
    case Problem::Kind::OtherRatio: {
      const QString made = limitText(problem.low), ratio = limitText(problem.high);
      if (problem.below.empty()) return Say::tr("%1 teeth make %2, not %3").arg(given, made, ratio);
      return Say::tr("%1 teeth make %2, but %3 is %4")
          .arg(given, made, QString::fromStdString(problem.below), ratio);
    }
    case Problem::Kind::TorqueAllZero:
      return Say::tr("torque is zero throughout; at least one value must be above 0");
    case Problem::Kind::NewerVersion:
      return Say::tr("version %1 was written by a newer Layshaft; this one knows versions up to %2")
          .arg(given, limitText(problem.high));
    case Problem::Kind::NotADate:
      return Say::tr("%1 is not a date; expected a day of the calendar as in 2026-05-12").arg(given);
    case Problem::Kind::NotASegment:
      return Say::tr(
                 "%1 does not make a segment; give a length, a radius with an angle or a length, or a "
                 "length with the speed through it")
          .arg(measureList(problem.given));
    case Problem::Kind::NameTaken:
      return Say::tr("another one is called “%1” already; give each a name of its own").arg(given);
    case Problem::Kind::OnlyOneOf:
      if (problem.below.empty()) return Say::tr("only one of the two may be given");
      return Say::tr("only one of it and %1 may be given").arg(QString::fromStdString(problem.below));
    case Problem::Kind::NotARecording:
      return Say::tr("is not a recording that is read here: %1").arg(wordList(problem.allowed));
    case Problem::Kind::NotXml:
      return Say::tr("is not well-formed XML from here on");
    case Problem::Kind::DocumentType:
      return Say::tr("declares a document type (DOCTYPE), which a recording has no need of");
    case Problem::Kind::NotATime:
      return Say::tr("%1 is not a time; expected one written as %2").arg(given, wordList(problem.allowed));
    case Problem::Kind::BadChecksum:
      return given.isEmpty() ? Say::tr("the checksum is missing; it is %1").arg(wordList(problem.allowed))
                             : Say::tr("the checksum is %1, not %2").arg(wordList(problem.allowed), given);
    case Problem::Kind::MissingColumn:
      return Say::tr("there is no column titled %1").arg(wordList(problem.allowed));
    case Problem::Kind::ColumnTwice:
      return Say::tr("there are two such columns; there may be one");
    case Problem::Kind::QuoteLeftOpen:
      return Say::tr("a quotation mark opens a cell here and is never closed; close it or leave it out");
    case Problem::Kind::WrongFormat:
      return Say::tr("%1 is not a bike profile; expected “%2”").arg(given, wordList(problem.allowed));
  }
  return Say::tr("is not understood");
}

}  // namespace

QString outsideAllowed(const QString& field, const QString& typed, double low, double high) {
  return Say::tr("%1: %2 is out of range (%3 to %4)")
      .arg(field, typed, QLocale().toString(low, 'g', 6), QLocale().toString(high, 'g', 6));
}

QString refusedNumber(const QString& field, const RefusedNumber& refused) {
  const auto text = [](double x) { return QLocale().toString(x, 'g', 6); };
  if (refused.notWhole)
    return Say::tr("%1: %2 is not a whole number (%3 to %4)")
        .arg(field, refused.typed, text(refused.low), text(refused.high));
  if (refused.noNumber)
    return refused.unit.isEmpty()
               ? Say::tr("%1: %2 is not a plain number (%3 to %4)")
                     .arg(field, refused.typed, text(refused.low), text(refused.high))
               : Say::tr("%1: %2 is not a number in %5 (%3 to %4)")
                     .arg(field, refused.typed, text(refused.low), text(refused.high), refused.unit);
  const bool bare = refused.unit.isEmpty() || !refused.typed.back().isDigit();
  const QString typed =
      bare ? refused.typed : Say::tr("%1 %2", "number and unit").arg(refused.typed, refused.unit);
  return outsideAllowed(field, typed, refused.low, refused.high);
}

QString sentence(const Problem& problem) {
  return onOneLine(problemLocation(problem) + reason(problem));
}

QString spokenSentence(const Problem& problem) {
  Problem spoken = problem;
  spoken.path.clear();
  spoken.below.clear();
  // At the window a number reads as the fields show it; of a file it is quoted as it stands there.
  bool isNumber = false;
  if (const double given = QString::fromStdString(problem.given).toDouble(&isNumber); isNumber)
    spoken.given = limitText(given).toStdString();
  if (problem.kind == Problem::Kind::NotOneOf)
    for (std::string& word : spoken.allowed) word = choiceWord(word).toStdString();
  const QString other = fieldName(problem.below);
  const QString words =
      other.isEmpty() ? sentence(spoken) : Say::tr("%1 (because of %2)").arg(sentence(spoken), other);
  const QString place = fieldLabel(problem.path);
  return place.isEmpty() ? words : Say::tr("%1: %2", "field and what is wrong").arg(place, words);
}

}  // namespace layshaft::ui
