// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/gear_table.h"

#include <QCoreApplication>
#include <algorithm>

#include "ui/words/figure_rows.h"
#include "ui/words/numbers.h"

namespace layshaft::ui {
namespace {

struct Say {
  Q_DECLARE_TR_FUNCTIONS(GearTable)
};

}  // namespace

std::vector<QStringList> gearTable(const Plan& plan, const UnitsShown& units) {
  const QString speed = units.name(Quantity::Speed);
  std::vector<QStringList> rows{{Say::tr("Gear"), Say::tr("Stock Ratio"), Say::tr("Proposed Ratio"),
                                 Say::tr("Stock at the Limit, %1").arg(speed),
                                 Say::tr("Proposed at the Limit, %1").arg(speed), Say::tr("Difference"),
                                 Say::tr("Stock Shift, rpm"), Say::tr("Proposed Shift, rpm")}};
  const auto& from = plan.stock.gearing.gears;
  const auto& to = plan.proposed.gearing.gears;
  const auto shift = [](const std::vector<GearFigures>& gears, std::size_t g) {
    return g < gears.size() && gears[g].rpmAfterShift
               ? Say::tr("%1 → %2", "engine speed before and after a shift")
                     .arg(number(*gears[g].shiftRpm, 0), number(*gears[g].rpmAfterShift, 0))
               : Say::tr("–");
  };
  for (std::size_t g = 0; g < std::max(from.size(), to.size()); ++g) {
    const bool both = g < from.size() && g < to.size() && to[g].speedAtRevLimitMps;
    const auto shownSpeed = [&](const std::vector<GearFigures>& gears) {
      return g < gears.size() && gears[g].speedAtRevLimitMps
                 ? std::optional(units.shown(Quantity::Speed, *gears[g].speedAtRevLimitMps))
                 : std::nullopt;
    };
    const ComparedTexts speeds = comparedTexts(shownSpeed(from), shownSpeed(to), 1);
    const QString difference = speeds.difference.isEmpty() ? signedNumber(0.0, 1) : speeds.difference;
    rows.push_back({number(static_cast<double>(g) + 1, 0),
                    g < from.size() ? number(from[g].ratio, 3) : Say::tr("–"),
                    g < to.size() ? number(to[g].ratio, 3) : Say::tr("–"), speeds.stock, speeds.proposed,
                    both ? difference : Say::tr("–"), shift(from, g), shift(to, g)});
  }
  return rows;
}

}  // namespace layshaft::ui
