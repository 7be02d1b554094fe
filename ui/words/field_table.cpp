// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/field_table.h"

#include <QCoreApplication>
#include <QLocale>
#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <string>

#include "core/units.h"
#include "ui/words/field_rows.h"

namespace layshaft::ui {
namespace {

struct FieldTable {
  Q_DECLARE_TR_FUNCTIONS(FieldTable)
 public:
  static constexpr const char* kUnits[] = {
      QT_TR_NOOP("rpm"),        QT_TR_NOOP("N·m"), QT_TR_NOOP("kg·m²"),     QT_TR_NOOP("°C"),
      QT_TR_NOOP("hPa"),        QT_TR_NOOP("%"),   QT_TR_NOOP("kg"),        QT_TR_NOOP("mm"),
      QT_TR_NOOP("m²"),         QT_TR_NOOP("bar"), QT_TR_NOOP("s"),         QT_TR_NOOP("kN"),
      QT_TR_NOOP("°"),          QT_TR_NOOP("in"),  QT_TR_NOOP("1/(km/h)²"), QT_TR_NOOP("km/h"),
      QT_TR_NOOP("characters"), QT_TR_NOOP("m")};
};

/// A key path with `[]` in place of each index, and the last of the indices.
struct Place {
  std::string key;
  std::optional<int> index;
};

Place placeOf(std::string_view key) {
  Place place;
  for (std::size_t i = 0; i < key.size(); ++i) {
    place.key += key[i];
    if (key[i] != '[') continue;
    const std::size_t end = std::min(key.find(']', i), key.size());
    place.index = std::atoi(std::string(key.substr(i + 1, end - i - 1)).c_str());
    i = end - 1;
  }
  constexpr std::string_view kSurfaces = "ride.surfaces.";
  if (place.key.starts_with(kSurfaces)) {
    const std::size_t end = std::min(place.key.find('.', kSurfaces.size()), place.key.size());
    place.key.replace(kSurfaces.size(), end - kSurfaces.size(), "*");
  }
  return place;
}

const Field* rowOf(std::string_view key) {
  for (const auto& rows : {field_rows::bike(), field_rows::setup(), field_rows::ride()})
    for (const Field& field : rows)
      if (field.key == key) return &field;
  return nullptr;
}

constexpr std::string_view kPin = "pins[].";

QString withIndex(const char* words, const std::optional<int>& index) {
  const QString text = FieldTable::tr(words);
  return index && text.contains(QLatin1String("%1")) ? text.arg(*index + 1) : text;
}

struct Conversion {
  Quantity quantity;
  double siPerFileUnit;
};

Conversion conversionOf(FileUnit unit) {
  switch (unit) {
    case FileUnit::Millimetre:
      return {Quantity::SmallLength, units::metresFromMillimetres(1.0)};
    case FileUnit::Metre:
      return {Quantity::Length, 1.0};
    case FileUnit::Kilogram:
      return {Quantity::Mass, 1.0};
    case FileUnit::KilometrePerHour:
      return {Quantity::Speed, units::mpsFromKmh(1.0)};
    case FileUnit::Plain:
      break;
  }
  return {Quantity::Plain, 1.0};
}

}  // namespace

const Field* fieldRow(std::string_view key) {
  const Place place = placeOf(key);
  if (const Field* row = rowOf(place.key)) return row;
  if (!place.key.starts_with(kPin)) return nullptr;
  return rowOf("stock." + place.key.substr(kPin.size()));
}

QString fieldLabel(std::string_view key) {
  const Place place = placeOf(key);
  if (const Field* row = rowOf(place.key)) return withIndex(row->label, place.index);
  const Field* row = fieldRow(key);
  if (!row) return {};
  return FieldTable::tr("Pin %1: %2").arg(place.index.value_or(0) + 1).arg(FieldTable::tr(row->label));
}

QString fieldName(std::string_view key) {
  const Field* row = fieldRow(key);
  return row ? FieldTable::tr(row->name) : QString();
}

QString fieldHelp(const Field& field, const FieldRule& rule, const UnitsShown& units) {
  const QString help = field.help ? FieldTable::tr(field.help) : QString();
  if (!field.measure.typical) return help;
  const auto number = [&](double x) {
    const double shown = shownNumber(field, x, units);
    constexpr double kWhole = 100.0;  // from here on three digits are whole numbers
    return std::abs(shown) < kWhole ? QLocale().toString(shown, 'g', 3) : QLocale().toString(shown, 'f', 0);
  };
  const QString low = number(field.measure.typical->low), high = number(field.measure.typical->high);
  const QString unit = shownUnit(field, rule, units);
  const QString typical = unit.isEmpty() ? FieldTable::tr("Typically %1 to %2.").arg(low, high)
                                         : FieldTable::tr("Typically %1 to %2 %3.").arg(low, high, unit);
  return help.isEmpty() ? typical : help + QLatin1Char(' ') + typical;
}

QString openWord(const Field& field) {
  return field.measure.open ? FieldTable::tr(field.measure.open) : FieldTable::tr("Not given");
}

double shownNumber(const Field& field, double inFile, const UnitsShown& units) {
  const Conversion conversion = conversionOf(field.measure.unit);
  return withoutNoise(units.shown(conversion.quantity, inFile * conversion.siPerFileUnit));
}

double fileNumber(const Field& field, double shown, const UnitsShown& units) {
  const Conversion conversion = conversionOf(field.measure.unit);
  return withoutNoise(units.si(conversion.quantity, shown) / conversion.siPerFileUnit);
}

QString shownUnit(const Field& field, const FieldRule& rule, const UnitsShown& units) {
  if (field.measure.unit == FileUnit::Plain) return fileUnitWord(rule.limit.unit);
  return units.name(conversionOf(field.measure.unit).quantity);
}

QString fileUnitWord(const char* unit) {
  return *unit ? FieldTable::tr(unit) : QString();
}

}  // namespace layshaft::ui
