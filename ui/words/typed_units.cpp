// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/typed_units.h"

#include <QRegularExpression>
#include <utility>

#include "core/number_text.h"
#include "ui/words/units_shown.h"

namespace layshaft::ui {
namespace {

/// Other ways to write a unit, as they come out of `folded`; common practice, no source.
constexpr std::pair<const char*, const char*> kSpellings[] = {
    {"1/min", "rpm"}, {"/min", "rpm"},  {"min1", "rpm"}, {"r/min", "rpm"}, {"rev/min", "rpm"},
    {"u/min", "rpm"}, {"kmh", "km/h"},  {"kph", "km/h"}, {"inch", "in"},   {"inches", "in"},
    {"\"", "in"},     {"lbs", "lb"},    {"feet", "ft"},  {"foot", "ft"},   {"deg", "°"},
    {"mbar", "hpa"},  {"percent", "%"}, {"c", "°c"},     {"f", "°f"},      {"ftlb", "lbft"},
    {"sec", "s"},     {"mi/h", "mph"}};

/// A unit without what people write differently.
QString folded(QString unit) {
  unit = unit.trimmed().toLower();
  unit.replace(QStringLiteral("⁻¹"), QStringLiteral("-1"));
  unit.replace(QChar(u'²'), QChar(u'2'));
  unit.replace(QChar(u'″'), QChar(u'"'));
  for (const QChar mark : {QChar(u'·'), QChar(u'*'), QChar(u'.'), QChar(u' '), QChar(0x00A0), QChar(u'-')})
    unit.remove(mark);
  for (const auto& [other, usual] : kSpellings)
    if (unit == QString::fromUtf8(other)) return QString::fromUtf8(usual);
  return unit;
}

/// Quantities that are shown in different units and measure the same are one of them.
Quantity kindOf(Quantity quantity) {
  switch (quantity) {
    case Quantity::SmallLength:
      return Quantity::Length;
    case Quantity::Strength:
      return Quantity::Force;
    case Quantity::TyrePressure:
      return Quantity::AirPressure;
    default:
      return quantity;
  }
}

/// Where a unit is shown.
struct Place {
  UnitsShown units;
  Quantity quantity;
};

template <class Suits>
std::optional<Place> placeOf(const QString& unit, const Suits& suits) {
  for (const auto system : {UnitSystem::Metric, UnitSystem::Imperial})
    for (int i = 0; i <= static_cast<int>(Quantity::Plain); ++i) {
      const Place place{UnitsShown(system), static_cast<Quantity>(i)};
      const QString name = place.units.name(place.quantity);
      if (!name.isEmpty() && folded(name) == unit && suits(place.quantity)) return place;
    }
  return std::nullopt;
}

}  // namespace

std::optional<NumberAndUnit> numberAndUnit(const QString& text) {
  static const QRegularExpression perMinute(QStringLiteral("^\\s*(.*\\d)\\s+(1/.{0,16})$"),
                                            QRegularExpression::UseUnicodePropertiesOption);
  static const QRegularExpression unit(
      QStringLiteral("^\\s*([+\\-\\x{2212}]?[\\d\\s.,'\\x{2019}]*\\d[.,]?)\\s*"
                     "([\\p{L}°%\"\\x{2033}/].{0,16})$"),
      QRegularExpression::UseUnicodePropertiesOption);
  for (const auto* pattern : {&perMinute, &unit})
    if (const auto match = pattern->match(text); match.hasMatch())
      return NumberAndUnit{match.captured(1), match.captured(2).trimmed()};
  return std::nullopt;
}

bool beginsUnit(const QString& text, const QString& unit) {
  static const QRegularExpression one(QStringLiteral("\\d\\s+1$"),
                                      QRegularExpression::UseUnicodePropertiesOption);
  return folded(unit) == QStringLiteral("rpm") && one.match(text).hasMatch();
}

std::optional<double> inUnitOf(const QString& unit, double x, const QString& typedUnit) {
  const QString wanted = folded(unit), typed = folded(typedUnit);
  if (wanted == typed) return x;
  std::optional<Place> to;
  const auto from = placeOf(typed, [&](Quantity quantity) {
    to = placeOf(wanted, [&](Quantity other) { return kindOf(other) == kindOf(quantity); });
    return to.has_value();
  });
  if (!from) return std::nullopt;
  return withoutNoise(to->units.shown(to->quantity, from->units.si(from->quantity, x)));
}

}  // namespace layshaft::ui
