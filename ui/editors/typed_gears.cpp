// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/typed_gears.h"

#include <QCoreApplication>
#include <QLocale>
#include <QRegularExpression>
#include <algorithm>
#include <cmath>
#include <vector>

#include "ui/editors/columns_table.h"
#include "ui/editors/typed_ratio.h"
#include "ui/editors/typed_reading.h"
#include "ui/words/numbers.h"
#include "ui/words/problem_words.h"

namespace layshaft::ui {
namespace {

struct Say {
  Q_DECLARE_TR_FUNCTIONS(TypedGears)
};

}  // namespace

QStringList gearParts(const QString& text) {
  static const QRegularExpression blanks(QStringLiteral("[\\s;]+|,\\s+"));
  static const QRegularExpression aroundSigns(QStringLiteral("\\s*([/:\\-\\x{2013}\\x{00F7}@])\\s*"));
  static const QRegularExpression unit(QStringLiteral("\\s+(?=(?:rpm|km/h|kmh|mph)\\b)"),
                                       QRegularExpression::CaseInsensitiveOption);
  QString joined = text;  // "27 / 16" is one gear, and so is "5000 rpm @ 110 km/h"
  joined.remove(unit);
  joined.replace(aroundSigns, QStringLiteral("\\1"));
  QStringList parts;
  for (const QString& part : joined.split(blanks, Qt::SkipEmptyParts))
    parts << (part.contains(QLatin1Char('.')) ? part.split(QLatin1Char(','), Qt::SkipEmptyParts)
                                              : QStringList(part));
  return parts;
}

bool isReading(const QString& part) {
  return part.contains(QLatin1Char('@'));
}

bool areReadings(const QStringList& parts) {
  return !parts.isEmpty() && std::all_of(parts.begin(), parts.end(), isReading);
}

std::optional<double> typedGear(const QString& part, const UnitsShown& units, const Setup& setup) {
  if (!isReading(part)) return typedRatio(part, limits::kGearRatio);
  const auto reading = typedReading(part, units);
  if (!reading) return std::nullopt;
  const double finalRatio = static_cast<double>(setup.rearTeeth.count()) / setup.frontTeeth.count();
  constexpr double kFourDecimals = 1e4;
  return std::round(gearRatioOf(*reading, rolloutOf(setup), setup.primaryRatio, finalRatio) * kFourDecimals) /
         kFourDecimals;
}

std::optional<GearRatios> typedGears(const QStringList& parts, const UnitsShown& units,
                                     const std::function<std::optional<double>(const QString&)>& ratioOf,
                                     QString& complaint) {
  std::vector<double> ratios;
  for (const QString& part : parts) {
    const auto gear = ratioOf(part);
    if (!gear && isReading(part)) {
      complaint =
          Say::tr("Gear ratios, “%1”: revs from %2 to %3 rpm and a speed in %4 are expected, as in %5.")
              .arg(part, number(limits::kAimRpm.low, 0), number(limits::kAimRpm.high, 0),
                   units.name(Quantity::Speed), QStringLiteral("5000@110"));
      return std::nullopt;
    }
    if (!inside(Say::tr("Gear ratios, “%1”").arg(part), gear, limits::kGearRatio, complaint))
      return std::nullopt;
    ratios.push_back(*gear);
  }
  if (ratios.empty()) return GearRatios();
  const auto gears = GearRatios::make(ratios);
  if (gears) return *gears;
  Problem problem = gears.problem();
  problem.path = "stock.gear_ratios" + problem.path;
  complaint = Say::tr("Gear ratios: %1.").arg(spokenSentence(problem));
  return std::nullopt;
}

bool inside(const QString& label, const std::optional<double>& x, const Limit& limit, QString& complaint) {
  if (x && limit.contains(*x)) return true;
  complaint = Say::tr("%1: a number from %2 to %3 is expected.")
                  .arg(label, QLocale().toString(limit.low, 'g', 6), QLocale().toString(limit.high, 'g', 6));
  return false;
}

}  // namespace layshaft::ui
