// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/use_words.h"

#include <QCoreApplication>
#include <cmath>

#include "core/number_text.h"
#include "core/units.h"
#include "ui/words/numbers.h"

namespace layshaft::ui {
namespace {

struct Say {
  Q_DECLARE_TR_FUNCTIONS(UseWords)
};

/// Kilometres per unit shown; 1 for hours.
double perShown(UseUnit unit, const UnitsShown& units) {
  constexpr double kKilometresPerMile = units::kMetresPerMile / 1000.0;
  return unit == UseUnit::Km && units.inMiles() ? kKilometresPerMile : 1.0;
}

}  // namespace

double shownUse(double use, UseUnit unit, const UnitsShown& units) {
  return use / perShown(unit, units);
}

double useFromShown(double shown, UseUnit unit, const UnitsShown& units) {
  return withoutNoise(shown * perShown(unit, units));
}

QString useUnitName(UseUnit unit, const UnitsShown& units) {
  if (unit == UseUnit::Hours) return Say::tr("h", "hours");
  return units.inMiles() ? Say::tr("mi") : Say::tr("km");
}

QString useNumber(double use, UseUnit unit, const UnitsShown& units) {
  constexpr double kTenths = 10.0;
  const double tenths = std::round(shownUse(use, unit, units) * kTenths) / kTenths;
  return number(tenths, tenths == std::floor(tenths) ? 0 : 1);
}

}  // namespace layshaft::ui
