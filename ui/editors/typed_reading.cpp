// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/typed_reading.h"

#include <QRegularExpression>
#include <QStringList>

#include "core/limits.h"
#include "core/units.h"
#include "ui/editors/columns_table.h"

namespace layshaft::ui {

QString withoutRpm(QString text) {
  static const QRegularExpression unit(QStringLiteral("\\s*rpm\\s*$"),
                                       QRegularExpression::CaseInsensitiveOption);
  return text.remove(unit);
}

std::optional<double> typedSpeedMps(QString text, const UnitsShown& units) {
  static const QRegularExpression unit(QStringLiteral("\\s*(km/h|kmh|mph)\\s*$"),
                                       QRegularExpression::CaseInsensitiveOption);
  const QString typedUnit = unit.match(text).captured(1).toLower();
  const auto speed = typedNumber(text.remove(unit), limits::kSpeedKmh.high);
  if (!speed || *speed <= 0) return std::nullopt;
  double mps = units.si(Quantity::Speed, *speed);
  if (!typedUnit.isEmpty())
    mps = typedUnit == QLatin1String("mph") ? units::mpsFromMph(*speed) : units::mpsFromKmh(*speed);
  return units::kmhFromMps(mps) <= limits::kSpeedKmh.high ? std::optional(mps) : std::nullopt;
}

std::optional<GearReading> typedReading(const QString& text, const UnitsShown& units) {
  const QStringList parts = text.split(QLatin1Char('@'));
  if (parts.size() != 2) return std::nullopt;
  const auto rpm = typedNumber(withoutRpm(parts[0]), limits::kRevLimitRpm.high);
  const auto speedMps = typedSpeedMps(parts[1], units);
  if (!rpm || !limits::kAimRpm.contains(*rpm) || !speedMps) return std::nullopt;
  return GearReading{.rpm = *rpm, .speedMps = *speedMps};
}

}  // namespace layshaft::ui
