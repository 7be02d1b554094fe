// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/wording.h"

#include <QCoreApplication>
#include <QLocale>
#include <algorithm>
#include <cmath>

#include "core/units.h"
#include "ui/words/chain_words.h"
#include "ui/words/choice_words.h"
#include "ui/words/field_table.h"
#include "ui/words/key_figures.h"
#include "ui/words/plain_text.h"
#include "ui/words/road_words.h"

namespace layshaft::ui {
namespace {

struct Wording {
  Q_DECLARE_TR_FUNCTIONS(Wording)
};

constexpr double kNoticeablePercent = 0.05;  // below it a gear counts as unchanged, as in stepSize

QString sizeWords(StepSize size) {
  switch (size) {
    case StepSize::Small:
      return Wording::tr("a small step");
    case StepSize::Moderate:
      return Wording::tr("a moderate step");
    case StepSize::Large:
      return Wording::tr("a large step");
    case StepSize::None:
      break;
  }
  return Wording::tr("no step");
}

bool unchanged(double change) {
  return std::abs(change) < kNoticeablePercent;
}

bool uniform(const std::vector<double>& changes) {
  const auto [low, high] = std::minmax_element(changes.begin(), changes.end());
  return *high - *low < kNoticeablePercent;
}

QString shorterOrTaller(double change) {
  return change > 0 ? Wording::tr("%1 % shorter").arg(percent(change))
                    : Wording::tr("%1 % taller").arg(percent(change));
}

/// "gears 2 to 4" or "gear 6".
QString gearSpan(std::size_t first, std::size_t last) {
  if (first == last) return Wording::tr("gear %1").arg(first + 1);
  return Wording::tr("gears %1 to %2").arg(first + 1).arg(last + 1);
}

QString capitalised(QString text) {
  if (!text.isEmpty()) text[0] = text[0].toUpper();
  return text;
}

QString wholeSentence(const QString& words) {
  return Wording::tr("%1.", "a whole sentence").arg(capitalised(words));
}

/// Gear by gear, neighbours that change alike together: "Gear 1 is 4.1 % taller, gears 2 to 6 are as stock."
QString gearByGear(const std::vector<double>& changes) {
  QStringList parts;
  for (std::size_t first = 0; first < changes.size();) {
    std::size_t last = first;
    while (last + 1 < changes.size() && std::abs(changes[last + 1] - changes[first]) < kNoticeablePercent)
      ++last;
    const QString how = unchanged(changes[first]) ? Wording::tr("as stock") : shorterOrTaller(changes[first]);
    parts << (first == last ? Wording::tr("%1 is %2") : Wording::tr("%1 are %2"))
                 .arg(gearSpan(first, last), how);
    first = last + 1;
  }
  return wholeSentence(parts.join(Wording::tr(", ", "between parts of a sentence")));
}

/// Both names of the direction, once: shorter is "gearing down" in the trade, taller "gearing up".
QString directionName(bool shorter) {
  return shorter ? Wording::tr("Shorter (geared down)") : Wording::tr("Taller (geared up)");
}

QString rearTeethWords(double teeth) {
  const double count = std::abs(teeth);
  const QString amount = number(count, std::abs(count - std::round(count)) < 0.05 ? 0 : 1);
  const bool one = std::abs(count - 1.0) < 0.05;
  if (teeth > 0)
    return one ? Wording::tr("one more tooth at the rear")
               : Wording::tr("%1 more teeth at the rear").arg(amount);
  return one ? Wording::tr("one tooth fewer at the rear")
             : Wording::tr("%1 teeth fewer at the rear").arg(amount);
}

QString headline(const Plan& plan, const std::vector<double>& changes) {
  const SetupPlan& stock = plan.stock;
  const SetupPlan& proposed = plan.proposed;
  const auto stockGears = stock.gearing.gears.size();
  const auto gears = proposed.gearing.gears.size();
  const bool anyShorter =
      std::any_of(changes.begin(), changes.end(), [](double c) { return c >= kNoticeablePercent; });
  const bool anyTaller =
      std::any_of(changes.begin(), changes.end(), [](double c) { return c <= -kNoticeablePercent; });
  const QString directions = anyShorter && anyTaller
                                 ? Wording::tr("Some gears shorter (geared down), some taller (geared up).")
                             : anyShorter || anyTaller ? wholeSentence(directionName(anyShorter))
                                                       : QString();
  if (gears != stockGears) {
    const QString count =
        gears == 1 ? Wording::tr("1 gear instead of %1.").arg(stockGears)
                   : Wording::tr("%n gears instead of %1.", nullptr, static_cast<int>(gears)).arg(stockGears);
    return QStringList{count, directions, gearByGear(changes)}.join(QLatin1Char(' ')).simplified();
  }
  if (std::all_of(changes.begin(), changes.end(), unchanged))
    return proposed.setup == stock.setup ? Wording::tr("The proposal is the same as stock.")
                                         : Wording::tr("Other parts, but the same gearing as stock.");
  if (!uniform(changes)) {
    if (anyShorter && anyTaller) return directions + QLatin1Char(' ') + gearByGear(changes);
    return Wording::tr("%1, but not in every gear alike. %2")
        .arg(directionName(anyShorter), gearByGear(changes));
  }
  const double change = proposed.change.gearingPercent;
  const double rearTeeth = proposed.change.wholeGearingTeethEquivalent;
  if (std::abs(rearTeeth) < 0.25)
    return Wording::tr("%1 by %2 %, %3: less than a quarter of a tooth at the rear.")
        .arg(directionName(change > 0), percent(change), sizeWords(proposed.change.size));
  return Wording::tr("%1 by %2 %, %3: about as much as %4.")
      .arg(directionName(change > 0), percent(change), sizeWords(proposed.change.size),
           rearTeethWords(rearTeeth));
}

/// "front 16 → 15", "tyre 180/55ZR17 → 190/55ZR17, rollout 1.939 → 1.973 m": what is different about the
/// parts.
QStringList partsChanged(const Plan& plan, const UnitsShown& units) {
  const Setup& from = plan.stock.setup;
  const Setup& to = plan.proposed.setup;
  QStringList parts;
  if (from.frontTeeth != to.frontTeeth)
    parts << Wording::tr("front %1 → %2").arg(from.frontTeeth.count()).arg(to.frontTeeth.count());
  if (from.rearTeeth != to.rearTeeth)
    parts << Wording::tr("rear %1 → %2").arg(from.rearTeeth.count()).arg(to.rearTeeth.count());
  if (!from.rearTyre.sameTyre(to.rearTyre))
    parts << Wording::tr("tyre %1 → %2")
                 .arg(QString::fromStdString(from.rearTyre.text()),
                      QString::fromStdString(to.rearTyre.text()));
  const double before = units.shown(Quantity::SmallLength, plan.stock.gearing.rollout.metres);
  const double after = units.shown(Quantity::SmallLength, plan.proposed.gearing.rollout.metres);
  const int decimals = units.system() == UnitSystem::Imperial ? 1 : 0;
  if (number(before, decimals) != number(after, decimals))
    parts << Wording::tr("rollout %1 → %2 %3")
                 .arg(number(before, decimals), number(after, decimals), units.name(Quantity::SmallLength));
  if (from.primaryRatio != to.primaryRatio)
    parts << Wording::tr("primary %1 → %2").arg(number(from.primaryRatio, 3), number(to.primaryRatio, 3));
  if (from.gearRatios != to.gearRatios) parts << Wording::tr("gear ratios changed");
  if (isBelt(from) != isBelt(to))
    parts << (isBelt(to) ? Wording::tr("belt instead of chain") : Wording::tr("chain instead of belt"));
  const auto sizeName = [](const std::optional<ChainSize>& size) {
    return size ? QString::fromUtf8(size->name.data()) : Wording::tr("none");
  };
  if (!(from.options.chainSize == to.options.chainSize))
    parts
        << Wording::tr("chain %1 → %2").arg(sizeName(from.options.chainSize), sizeName(to.options.chainSize));
  if (from.options.links != to.options.links && to.options.links)
    parts << Wording::tr("chain of %n links", nullptr, *to.options.links);
  return parts;
}

/// What a whole change wins and costs, in the engine's and the road's terms.
QString winsAndCosts(const std::vector<double>& changes) {
  if (changes.empty() || !uniform(changes) || unchanged(changes.front())) return {};
  const double change = changes.front();
  const double sooner = 100.0 * (1.0 - 1.0 / (1.0 + change / 100.0));
  if (change > 0)
    return Wording::
        tr("Every gear ends %1 % sooner and pulls %2 % harder; at the same road speed the engine turns %2 "
           "% faster.")
            .arg(percent(sooner), percent(change));
  return Wording::
      tr("Every gear reaches %1 % further and pulls %2 % less; at the same road speed the engine turns %2 "
         "% slower.")
          .arg(percent(sooner), percent(change));
}

QString detail(const Plan& plan, const UnitsShown& units, const std::vector<double>& changes) {
  QStringList sentences;
  const QStringList parts = partsChanged(plan, units);
  if (!parts.isEmpty())
    sentences << wholeSentence(parts.join(Wording::tr(", ", "between parts of a sentence")));
  if (const QString wins = winsAndCosts(changes); !wins.isEmpty()) sentences << wins;
  if (const QString fits = fitWords(plan, plan.proposed, units); !fits.isEmpty()) sentences << fits;
  const RolloutSource from = plan.stock.gearing.rollout.source;
  const RolloutSource to = plan.proposed.gearing.rollout.source;
  if (from == RolloutSource::TyreSize && to == RolloutSource::TyreSize)
    sentences << Wording::tr("Rollout is estimated from the tyre size, good to about ±2 %.");
  else if (from != to)
    sentences << Wording::tr(
        "One rollout is measured, the other estimated to about ±2 %: measure both before you trust the "
        "difference.");
  return sentences.join(QLatin1Char(' '));
}

QString problemLocation(const Problem& problem) {
  return problem.path.empty() ? QString() : QString::fromStdString(problem.path) + QStringLiteral(": ");
}

QString limitText(double x) {
  return QLocale::c().toString(x, 'g', 10);
}

QString rangeWords(const Problem& problem) {
  const QString low = limitText(problem.low), high = limitText(problem.high);
  const QString range =
      problem.unit.empty()
          ? Wording::tr("%1 to %2").arg(low, high)
          : Wording::tr("%1 to %2 %3", "range and unit").arg(low, high, fileUnitWord(problem.unit.c_str()));
  if (problem.below.empty()) return range;
  return Wording::tr("%1 (bounded by %2)").arg(range, QString::fromStdString(problem.below));
}

QString wordList(const std::vector<std::string>& words) {
  QStringList list;
  for (const std::string& word : words) list << QString::fromStdString(word);
  return list.join(Wording::tr(", "));
}

QString reason(const Problem& problem) {
  const QString given = QString::fromStdString(problem.given);
  switch (problem.kind) {
    case Problem::Kind::FileUnreadable:
      return Wording::tr("cannot be read: %1").arg(given);
    case Problem::Kind::FileUnwritable:
      return Wording::tr("cannot be saved: %1").arg(given);
    case Problem::Kind::NotAFile:
      return Wording::tr("is not a plain file but a pipe or a device");
    case Problem::Kind::FileTooLarge:
      return Wording::tr("is too large; a profile has at most %1 MiB")
          .arg(limitText(problem.high / 1048576.0));
    case Problem::Kind::NotUtf8:
      return Wording::tr("is not UTF-8 text (first bad byte at position %1)").arg(given);
    case Problem::Kind::NotJson:
      return Wording::tr("is not valid JSON at %1").arg(given);
    case Problem::Kind::TooDeep:
      return Wording::tr("is nested too deeply; at most %1 levels are allowed").arg(limitText(problem.high));
    case Problem::Kind::DuplicateKey:
      return Wording::tr("this key stands twice; each may stand once");
    case Problem::Kind::NotFinite:
      return Wording::tr("%1 is not a finite number; a plain number is expected").arg(given);
    case Problem::Kind::MissingKey:
      return Wording::tr("this key is missing and must be given");
    case Problem::Kind::WrongType:
      return Wording::tr("%1 is of the wrong kind; expected: %2").arg(given, wordList(problem.allowed));
    case Problem::Kind::NotWhole:
      return Wording::tr("%1 is not a whole number").arg(given);
    case Problem::Kind::OutOfRange:
      if (problem.unit == "characters")
        return Wording::tr("has %1 characters; allowed are %2").arg(given, rangeWords(problem));
      return Wording::tr("%1 is outside what is allowed, %2").arg(given, rangeWords(problem));
    case Problem::Kind::NotOneOf:
      return Wording::tr("%1 is not known; allowed: %2").arg(given, wordList(problem.allowed));
    case Problem::Kind::WrongCount:
      return Wording::tr("has %1 entries; allowed are %2").arg(given, rangeWords(problem));
    case Problem::Kind::NotFalling:
      return Wording::tr("%1 must be below the ratio of the gear before it, %2")
          .arg(given, limitText(problem.high));
    case Problem::Kind::NotRising:
      return Wording::tr("%1 must be above the engine speed of the point before it, %2 rpm")
          .arg(given, limitText(problem.low));
    case Problem::Kind::BadTyreSize:
      return Wording::
          tr("“%1” does not read as a tyre size; expected one as printed on the tyre, such as 180/55ZR17, "
             "120/80-19, "
             "4.00-18 or MT90B16")
              .arg(given);
    case Problem::Kind::ImpossibleTyre:
      return Wording::tr(
                 "“%1” cannot be a tyre: its %2 must be %3; expected width / aspect and rim, as in 180/55-17")
          .arg(given, QString::fromStdString(problem.part), rangeWords(problem));
    case Problem::Kind::TorqueAllZero:
      return Wording::tr("the curve never pulls; at least one torque must be above 0");
    case Problem::Kind::NewerVersion:
      return Wording::tr("version %1 was written by a newer Layshaft; this one knows versions up to %2")
          .arg(given, limitText(problem.high));
    case Problem::Kind::WrongFormat:
      return Wording::tr("%1 is not a bike profile; expected “%2”").arg(given, wordList(problem.allowed));
  }
  return Wording::tr("is not understood");
}

QString padded(const QString& text, qsizetype width, bool right) {
  return right ? text.rightJustified(width) : text.leftJustified(width);
}

QString alignedTable(const std::vector<QStringList>& rows) {
  std::vector<qsizetype> widths;
  for (const QStringList& row : rows)
    for (qsizetype c = 0; c < row.size(); ++c) {
      if (static_cast<qsizetype>(widths.size()) <= c) widths.push_back(0);
      widths[static_cast<std::size_t>(c)] = std::max(widths[static_cast<std::size_t>(c)], row[c].size());
    }
  QString out;
  for (const QStringList& row : rows) {
    QStringList cells;
    for (qsizetype c = 0; c < row.size(); ++c)
      cells << padded(row[c], widths[static_cast<std::size_t>(c)], c > 0);
    QString line = cells.join(QStringLiteral("  "));
    while (line.endsWith(QLatin1Char(' '))) line.chop(1);
    out += line + QLatin1Char('\n');
  }
  return out;
}

}  // namespace

QString number(double value, int decimals) {
  const QString text = QLocale().toString(value, 'f', decimals);
  // A value that rounds to nothing is nothing, not "-0".
  const bool onlyZeros =
      std::none_of(text.begin(), text.end(), [](QChar c) { return c.isDigit() && c != QLatin1Char('0'); });
  return onlyZeros ? QLocale().toString(0.0, 'f', decimals) : text;
}

QString signedNumber(double value, int decimals) {
  const QString size = number(std::abs(value), decimals);
  if (size == number(0.0, decimals)) return QStringLiteral("±0");
  return (value < 0 ? QStringLiteral("−") : QStringLiteral("+")) + size;
}

QString percent(double value) {
  return number(std::abs(value), std::abs(value) < 99.95 ? 1 : 0);
}

QString stepWords(const GearingChange& change) {
  if (change.direction == Direction::Same) return Wording::tr("same");
  const QString way = change.direction == Direction::Shorter ? Wording::tr("shorter") : Wording::tr("taller");
  switch (change.size) {
    case StepSize::Small:
      return Wording::tr("small, %1").arg(way);
    case StepSize::Moderate:
      return Wording::tr("moderate, %1").arg(way);
    case StepSize::Large:
      return Wording::tr("large, %1").arg(way);
    case StepSize::None:
      break;
  }
  return way;
}

QString teethPair(const Setup& setup) {
  return QStringLiteral("%1/%2").arg(setup.frontTeeth.count()).arg(setup.rearTeeth.count());
}

QString outsideAllowed(const QString& field, const QString& typed, double low, double high) {
  return Wording::tr("%1: %2 is outside what is allowed, %3 to %4")
      .arg(field, typed, QLocale().toString(low, 'g', 6), QLocale().toString(high, 'g', 6));
}

QString sentence(const Problem& problem) {
  return onOneLine(problemLocation(problem) + reason(problem));
}

QString spokenSentence(const Problem& problem) {
  Problem spoken = problem;
  spoken.path.clear();
  spoken.below.clear();
  if (problem.kind == Problem::Kind::NotOneOf)
    for (std::string& word : spoken.allowed) word = choiceWord(word).toStdString();
  const QString other = fieldName(problem.below);
  const QString words =
      other.isEmpty() ? sentence(spoken) : Wording::tr("%1 (because of %2)").arg(sentence(spoken), other);
  const QString place = fieldLabel(problem.path);
  return place.isEmpty() ? words : Wording::tr("%1: %2", "field and what is wrong").arg(place, words);
}

Summary summary(const Plan& plan, const UnitsShown& units) {
  const auto changes = gearChangesPercent(plan.stock.gearing, plan.proposed.gearing);
  return {headline(plan, changes), detail(plan, units, changes)};
}

QStringList cautions() {
  return {Wording::tr("Engine off and rear wheel clear of the ground before a hand goes near the chain."),
          Wording::tr(
              "Torque values, adjuster marks and chain slack: from the bike's own manual. Turn the wheel by "
              "hand and check "
              "brakes, chain guard and clearances."),
          Wording::tr("Top speed, speeds near the rev limit and run figures are for a closed course."),
          Wording::tr(
              "Other gearing or another tyre size can change speedometer, traction control, ABS, emissions "
              "approval, "
              "insurance and warranty: ask a licensed workshop and follow local law.")};
}

std::vector<QStringList> gearTable(const Plan& plan, const UnitsShown& units) {
  const QString speed = units.name(Quantity::Speed);
  std::vector<QStringList> rows{
      {Wording::tr("gear"), Wording::tr("stock ratio"), Wording::tr("proposed ratio"),
       Wording::tr("stock at the limit, %1").arg(speed), Wording::tr("proposed, %1").arg(speed),
       Wording::tr("difference"), Wording::tr("stock shift, rpm"), Wording::tr("proposed shift, rpm")}};
  const auto& from = plan.stock.gearing.gears;
  const auto& to = plan.proposed.gearing.gears;
  const auto shift = [](const std::vector<GearFigures>& gears, std::size_t g) {
    return g < gears.size() && gears[g].shiftRpm
               ? number(*gears[g].shiftRpm, 0) + Wording::tr(" → ") + number(*gears[g].rpmAfterShift, 0)
               : Wording::tr("–");
  };
  for (std::size_t g = 0; g < std::max(from.size(), to.size()); ++g) {
    const bool both = g < from.size() && g < to.size();
    const auto shownSpeed = [&](const std::vector<GearFigures>& gears) {
      return units.shown(Quantity::Speed, gears[g].speedAtRevLimitMps);
    };
    rows.push_back({number(static_cast<double>(g) + 1, 0),
                    g < from.size() ? number(from[g].ratio, 3) : Wording::tr("–"),
                    g < to.size() ? number(to[g].ratio, 3) : Wording::tr("–"),
                    g < from.size() ? number(shownSpeed(from), 1) : Wording::tr("–"),
                    g < to.size() ? number(shownSpeed(to), 1) : Wording::tr("–"),
                    both ? signedNumber(shownSpeed(to) - shownSpeed(from), 1) : Wording::tr("–"),
                    shift(from, g), shift(to, g)});
  }
  return rows;
}

QString textReport(const Plan& plan, const UnitsShown& units) {
  const Summary words = summary(plan, units);
  QString out =
      shownName(plan.bikeName).simplified() + QLatin1Char('\n') +
      Wording::tr("stock %1, proposed %2").arg(teethPair(plan.stock.setup), teethPair(plan.proposed.setup)) +
      QStringLiteral("\n\n") + words.headline + QLatin1Char('\n') + words.detail + QStringLiteral("\n\n");
  std::vector<QStringList> figures{
      {QString(), Wording::tr("stock"), Wording::tr("proposed"), Wording::tr("difference"), QString()}};
  for (const KeyFigure& figure : everyFigure(plan, units))
    figures.push_back({figure.label, figure.stock, figure.proposed, figure.difference, figure.unit});
  out += alignedTable(figures) + QLatin1Char('\n') + alignedTable(gearTable(plan, units)) + QLatin1Char('\n');
  if (plan.pullBike->accelerates()) {
    out += alignedTable(runTable(plan, units)) + QLatin1Char('\n');
    if (plan.drive) out += driveWords(plan, units) + QStringLiteral("\n\n");
  }
  if (const QString assumed = assumedWords(*plan.pullBike); !assumed.isEmpty())
    out += assumed + QStringLiteral("\n\n");
  for (const QString& caution : cautions()) out += caution + QLatin1Char('\n');
  return out;
}

}  // namespace layshaft::ui
