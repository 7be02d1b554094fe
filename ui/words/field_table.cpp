// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/field_table.h"

#include <QCoreApplication>
#include <QLocale>
#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <string>

#include "core/number_text.h"
#include "core/units.h"
#include "ui/words/choice_words.h"
#include "ui/words/field_rows.h"
#include "ui/words/numbers.h"

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
      QT_TR_NOOP("characters"), QT_TR_NOOP("m"),   QT_TR_NOOP("1/km")};
};

/// A key path with `[]` in place of each index, and the first and the last of the indices.
struct Place {
  std::string key;
  std::optional<int> first, index;
};

Place placeOf(std::string_view key) {
  Place place;
  for (std::size_t i = 0; i < key.size(); ++i) {
    place.key += key[i];
    if (key[i] != '[') continue;
    const std::size_t end = std::min(key.find(']', i), key.size());
    place.index = std::atoi(std::string(key.substr(i + 1, end - i - 1)).c_str());
    if (!place.first) place.first = place.index;
    i = end - 1;
  }
  constexpr std::string_view kSurfaces = "ride.surfaces.";
  if (place.key.starts_with(kSurfaces)) {
    const std::size_t end = std::min(place.key.find('.', kSurfaces.size()), place.key.size());
    place.key.replace(kSurfaces.size(), end - kSurfaces.size(), 1, '*');
  }
  return place;
}

const Field* rowOf(std::string_view key) {
  for (const auto& rows : {field_rows::bike(), field_rows::setup(), field_rows::ride(), field_rows::tracks(),
                           field_rows::records()})
    for (const Field& field : rows)
      if (field.key == key) return &field;
  return nullptr;
}

// What has the keys of a setup.
constexpr std::string_view kPin = "pins[].", kRidden = "records.track_notes[].setup.";

/// The words with the last index in them; with the first one too where they have room for two.
QString withIndex(const char* words, const Place& place) {
  const QString text = FieldTable::tr(words);
  const auto& index = place.index;
  if (index && text.contains(QLatin1String("%2"))) return text.arg(*place.first + 1).arg(*index + 1);
  return index && text.contains(QLatin1String("%1")) ? text.arg(*index + 1) : text;
}

struct Conversion {
  Quantity quantity = Quantity::Plain;
  double siPerFileUnit = 1.0;
  /// Decimals that mean about as much in the imperial unit as none in the file's: hundredths of an inch are
  /// quarters of a millimetre.
  int imperialDecimals = 0;
};

Conversion conversionOf(FileUnit unit) {
  switch (unit) {
    case FileUnit::Millimetre:
      return {Quantity::SmallLength, units::metresFromMillimetres(1.0), 2};
    case FileUnit::Metre:
      return {.quantity = Quantity::Length};
    case FileUnit::Kilogram:
      return {.quantity = Quantity::Mass};
    case FileUnit::KilometrePerHour:
      return {Quantity::Speed, units::mpsFromKmh(1.0), 0};
    case FileUnit::Celsius:
      return {.quantity = Quantity::Temperature};
    case FileUnit::Hectopascal:
      return {Quantity::AirPressure, units::pascalsFromHectopascals(1.0), 2};
    case FileUnit::Bar:
      return {Quantity::TyrePressure, units::pascalsFromBar(1.0), -1};
    case FileUnit::SquareMetre:
      return {.quantity = Quantity::Area, .imperialDecimals = -1};
    case FileUnit::KilogramSquareMetre:
      return {.quantity = Quantity::Inertia, .imperialDecimals = -1};
    case FileUnit::Kilonewton:
      return {Quantity::Strength, 1000.0, -2};
    case FileUnit::PerKilometrePerHourSquared:
      return {Quantity::SpeedGrowth, 1.0 / (units::mpsFromKmh(1.0) * units::mpsFromKmh(1.0)), 0};
    case FileUnit::Plain:
      break;
  }
  return {};
}

}  // namespace

const Field* fieldRow(std::string_view key) {
  const Place place = placeOf(key);
  if (const Field* row = rowOf(place.key)) return row;
  for (const std::string_view whole : {kPin, kRidden})
    if (place.key.starts_with(whole)) return rowOf("stock." + place.key.substr(whole.size()));
  return nullptr;
}

QString fieldLabel(std::string_view key) {
  const Place place = placeOf(key);
  if (const Field* row = rowOf(place.key)) return withIndex(row->label, place);
  const Field* row = fieldRow(key);
  if (!row) return {};
  const QString whole =
      place.key.starts_with(kRidden) ? FieldTable::tr("Track note %1: %2") : FieldTable::tr("Pin %1: %2");
  return whole.arg(place.first.value_or(0) + 1).arg(withIndex(row->label, place));
}

QString fieldName(std::string_view key) {
  const Field* row = fieldRow(key);
  return row ? FieldTable::tr(row->name) : QString();
}

QString fieldHelp(const Field& field, const FieldRule& rule, const UnitsShown& units) {
  const QString help = field.help ? FieldTable::tr(field.help) : QString();
  if (!field.measure.typical) return help;
  const auto number = [&](double x) {
    const double shown = asWritten(shownNumber(field, x, units), shownDecimals(field, units));
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
  if (!field.measure.openMeans.empty()) return choiceOption(field.measure.openMeans);
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

int shownDecimals(const Field& field, const UnitsShown& units) {
  const bool imperial = units.system() == UnitSystem::Imperial;
  const int more = imperial ? conversionOf(field.measure.unit).imperialDecimals : 0;
  return std::max(field.measure.decimals + more, 0);
}

int typedDecimals(const Field& field, const UnitsShown& units) {
  constexpr int kMore = 2;
  // A barometer in inches of mercury is read to a hundredth: more digits come of converting alone.
  const bool barometer =
      field.measure.unit == FileUnit::Hectopascal && units.system() == UnitSystem::Imperial;
  return shownDecimals(field, units) + (field.measure.unit == FileUnit::Plain || barometer ? 0 : kMore);
}

double shownValue(const Field& field, double inFile, const UnitsShown& units) {
  const double all = shownNumber(field, inFile, units);
  const int decimals = shownDecimals(field, units);
  for (int d = decimals; d <= typedDecimals(field, units); ++d) {
    const double few = asWritten(all, d);
    // The file keeps twelve digits.
    if (std::abs(few - all) <= 1e-11 * std::abs(all) + 1e-6 * std::pow(10.0, -d)) return few;
  }
  return asWritten(all, decimals);
}

QString shownText(const Field& field, double inFile, const UnitsShown& units) {
  return QLocale().toString(shownValue(field, inFile, units), 'f', QLocale::FloatingPointShortest);
}

double shownStep(const Field& field, const FieldRule& rule, const UnitsShown& units) {
  constexpr double kWideRange = 200.0, kWideStep = 5.0;
  const auto [quantity, siPerFileUnit, more] = conversionOf(field.measure.unit);
  const bool wide = field.measure.decimals == 0 && rule.limit.high - rule.limit.low > kWideRange;
  const double inFile = (wide ? kWideStep : 1.0) * std::pow(10.0, -field.measure.decimals);
  const double step = std::abs(units.shown(quantity, inFile * siPerFileUnit) - units.shown(quantity, 0.0));
  const double size = std::pow(10.0, std::floor(std::log10(step) + 1e-9));
  for (const double round : {1.0, 2.0, 5.0})
    if (step < 1.5 * round * size) return round * size;
  return 10.0 * size;
}

QString shownUnit(const Field& field, const FieldRule& rule, const UnitsShown& units) {
  if (field.measure.unit == FileUnit::Plain) return fileUnitWord(rule.limit.unit);
  return units.name(conversionOf(field.measure.unit).quantity);
}

QString nameWithUnit(const QString& name, const QString& unit) {
  return unit.isEmpty() ? name : FieldTable::tr("%1, %2", "field and its unit").arg(name, unit);
}

QString fileUnitWord(const char* unit) {
  return *unit ? FieldTable::tr(unit) : QString();
}

}  // namespace layshaft::ui
