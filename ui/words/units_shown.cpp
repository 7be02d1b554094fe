// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/units_shown.h"

#include <cmath>

#include "core/units.h"
#include "ui/words/numbers.h"

namespace layshaft::ui {

UnitsShown UnitsShown::forLocale(const QLocale& locale) {
  switch (locale.measurementSystem()) {
    case QLocale::ImperialUSSystem:
      return UnitsShown(UnitSystem::Imperial);
    case QLocale::ImperialUKSystem:
      return UnitsShown(UnitSystem::Mixed);
    case QLocale::MetricSystem:
      break;
  }
  return UnitsShown(UnitSystem::Metric);
}

QStringList UnitsShown::words() {
  return {QStringLiteral("metric"), QStringLiteral("imperial"), QStringLiteral("mixed")};
}

std::optional<UnitsShown> UnitsShown::fromWord(const QString& word) {
  const auto at = words().indexOf(word);
  return at < 0 ? std::nullopt : std::optional(UnitsShown(static_cast<UnitSystem>(at)));
}

double UnitsShown::factor(Quantity quantity) const {
  const bool imperial = system_ == UnitSystem::Imperial;
  switch (quantity) {
    case Quantity::Speed:
      return system_ == UnitSystem::Metric ? units::mpsFromKmh(1.0) : units::mpsFromMph(1.0);
    case Quantity::Length:
      return imperial ? units::kMetresPerFoot : 1.0;
    case Quantity::SmallLength:
      return imperial ? units::kMetresPerInch : units::metresFromMillimetres(1.0);
    case Quantity::Torque:
      return imperial ? units::kNewtonMetresPerPoundFoot : 1.0;
    case Quantity::Mass:
      return imperial ? units::kKilogramsPerPound : 1.0;
    case Quantity::Force:
      return imperial ? units::kNewtonsPerPoundForce : 1.0;
    case Quantity::Power:
      return imperial ? units::kWattsPerMechanicalHorsepower : 1000.0;
    case Quantity::AirPressure:
      return imperial ? units::kPascalsPerInchOfMercury : units::pascalsFromHectopascals(1.0);
    case Quantity::TyrePressure:
      return imperial ? units::kPascalsPerPsi : units::pascalsFromBar(1.0);
    case Quantity::Area:
      return imperial ? units::kSquareMetresPerSquareFoot : 1.0;
    case Quantity::Inertia:
      return imperial ? units::kKilogramSquareMetresPerPoundSquareFoot : 1.0;
    case Quantity::Strength:
      return imperial ? units::kNewtonsPerPoundForce : 1000.0;
    case Quantity::SpeedGrowth:
      return 1.0 / (factor(Quantity::Speed) * factor(Quantity::Speed));
    case Quantity::EngineSpeed:
    case Quantity::Ratio:
    case Quantity::Percent:
    case Quantity::Time:
    case Quantity::Temperature:
    case Quantity::Plain:
      break;
  }
  return 1.0;
}

double UnitsShown::shown(Quantity quantity, double si) const {
  if (quantity == Quantity::Temperature && system_ == UnitSystem::Imperial)
    return units::fahrenheitFromCelsius(si);
  return si / factor(quantity);
}
double UnitsShown::si(Quantity quantity, double shown) const {
  if (quantity == Quantity::Temperature && system_ == UnitSystem::Imperial)
    return units::celsiusFromFahrenheit(shown);
  return shown * factor(quantity);
}

int UnitsShown::decimals(Quantity quantity) const {
  if (quantity != Quantity::SmallLength) return 0;
  return system_ == UnitSystem::Imperial ? 2 : 1;
}

QString UnitsShown::name(Quantity quantity) const {
  const bool imperial = system_ == UnitSystem::Imperial;
  switch (quantity) {
    case Quantity::Speed:
      return system_ == UnitSystem::Metric ? tr("km/h") : tr("mph");
    case Quantity::Length:
      return imperial ? tr("ft") : tr("m");
    case Quantity::SmallLength:
      return imperial ? tr("in") : tr("mm");
    case Quantity::Torque:
      return imperial ? tr("lb·ft") : tr("N·m");
    case Quantity::Mass:
      return imperial ? tr("lb") : tr("kg");
    case Quantity::Force:
      return imperial ? tr("lbf") : tr("N");
    case Quantity::Power:
      return imperial ? tr("hp") : tr("kW");
    case Quantity::EngineSpeed:
      return tr("rpm");
    case Quantity::Percent:
      return tr("%");
    case Quantity::Time:
      return tr("s");
    case Quantity::Temperature:
      return imperial ? tr("°F") : tr("°C");
    case Quantity::AirPressure:
      return imperial ? tr("inHg") : tr("hPa");
    case Quantity::TyrePressure:
      return imperial ? tr("psi") : tr("bar");
    case Quantity::Area:
      return imperial ? tr("ft²") : tr("m²");
    case Quantity::Inertia:
      return imperial ? tr("lb·ft²") : tr("kg·m²");
    case Quantity::Strength:
      return imperial ? tr("lbf") : tr("kN");
    case Quantity::SpeedGrowth:
      return system_ == UnitSystem::Metric ? tr("1/(km/h)²") : tr("1/mph²");
    case Quantity::Ratio:
    case Quantity::Plain:
      break;
  }
  return {};
}

QString UnitsShown::chosenSpeed(double mps) const {
  const double speed = shown(Quantity::Speed, mps);
  constexpr double kWhole = 0.005;
  const bool whole = std::abs(speed - std::round(speed)) < kWhole;
  return withUnit(number(speed, whole ? 0 : 1), Quantity::Speed);
}

QString UnitsShown::withUnit(const QString& number, Quantity quantity) const {
  return tr("%1 %2", "number and unit").arg(number, name(quantity));
}

}  // namespace layshaft::ui
