// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/use_words.h"

#include <QCoreApplication>

#include "core/number_text.h"
#include "core/units.h"
#include "ui/words/numbers.h"

namespace layshaft::ui {
namespace {

struct Say {
  Q_DECLARE_TR_FUNCTIONS(UseWords)
};

double perShown(UseUnit unit, const UnitsShown& units) {
  return unit == UseUnit::Km && units.inMiles() ? units::kMetresPerMile / units::kMetresPerKilometre : 1.0;
}

}  // namespace

double shownUse(UseUnit unit, double use, const UnitsShown& units) {
  return withoutNoise(use / perShown(unit, units));
}

double fileUse(UseUnit unit, double shown, const UnitsShown& units) {
  return withoutNoise(shown * perShown(unit, units));
}

QString useName(UseUnit unit, const UnitsShown& units) {
  if (unit == UseUnit::Hours) return Say::tr("h", "hours");
  return units.inMiles() ? Say::tr("mi", "miles") : Say::tr("km", "kilometres");
}

int useDecimals(UseUnit unit) {
  return unit == UseUnit::Hours ? 1 : 0;
}

QString useText(UseUnit unit, double use, const UnitsShown& units) {
  return Say::tr("%1 %2", "use and its unit")
      .arg(number(shownUse(unit, use, units), useDecimals(unit)), useName(unit, units));
}

}  // namespace layshaft::ui
