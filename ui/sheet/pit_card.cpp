// SPDX-License-Identifier: GPL-3.0-or-later
#include <QCoreApplication>

#include "ui/sheet/paper.h"
#include "ui/sheet/sheets.h"
#include "ui/words/cautions.h"
#include "ui/words/chain_labels.h"
#include "ui/words/chain_words.h"
#include "ui/words/gear_words.h"
#include "ui/words/numbers.h"
#include "ui/words/plain_text.h"
#include "ui/words/work_order_words.h"

namespace layshaft::ui {
namespace {

struct Say {
  Q_DECLARE_TR_FUNCTIONS(PitCard)
};

/// At which speed each gear is left.
SheetTable shiftTable(const SheetInput& input) {
  const Gearing& gearing = input.plan->proposed.gearing;
  SheetTable table{.rows = {{Say::tr("Gear"), Say::tr("Shift At, %1").arg(input.units.name(Quantity::Speed)),
                             Say::tr("Shift At, rpm")}},
                   .points = 16};
  for (const GearFigures& gear : gearing.gears) {
    if (!gear.shiftSpeedMps || !gear.shiftRpm) continue;
    table.rows.push_back({gearOrdinal(gear.gear),
                          number(input.units.shown(Quantity::Speed, *gear.shiftSpeedMps), 0),
                          number(*gear.shiftRpm, 0)});
  }
  return table;
}

QString straightText(const SheetInput& input) {
  const auto& drive = input.plan->proposed.road.run.drive;
  if (!drive) return {};
  return Say::tr("End of the straight: %1, %2 rpm, %3", "gear, engine speed and road speed")
      .arg(gearOrdinal(drive->endGear), number(drive->endRpm, 0),
           input.units.withUnit(number(input.units.shown(Quantity::Speed, drive->endSpeedMps), 0),
                                Quantity::Speed));
}

}  // namespace

Blocks pitCard(const SheetInput& input) {
  const Plan& plan = *input.plan;
  const QFont big = paperFont(20, true), middle = paperFont(14);
  Blocks blocks{textBlock(shownName(input.profile.name).simplified(), paperFont(12, true)),
                textBlock(teethPair(plan.proposed.setup), paperFont(60, true), Qt::AlignHCenter)};
  const auto add = [&](const QString& text, const QFont& font) {
    if (!text.isEmpty()) blocks.push_back(textBlock(text, font));
  };
  if (plan.stock.chainRun && plan.proposed.chainRun) {
    const ChainRunFigures& run = *plan.proposed.chainRun;
    add(loopLabel(plan, input.units).front(), big);
    if (run.axleShiftM) {
      const QString shift = byShift(*run.axleShiftM, input.units, Say::tr("Axle stays"),
                                    Say::tr("Axle %1 back"), Say::tr("Axle %1 forward"));
      const QString marks = axleMarksText(plan);
      add(marks.isEmpty() ? shift : Say::tr("%1, %2", "axle shift and marks").arg(shift, marks), big);
    }
    if (const QString misfit = misfitHeading(run); !misfit.isEmpty()) add(misfit, big);
  }
  if (const SheetTable shifts = shiftTable(input); shifts.rows.size() > 1)
    blocks.push_back(tableBlock(shifts));
  add(straightText(input), middle);
  add(Say::tr("Stock %1", "a pair").arg(teethPair(plan.stock.setup)), middle);
  add(cautionText(Caution::Hands, isBelt(plan.proposed.setup)), paperFont(8));
  add(closedCourseCaution(), paperFont(8));
  return blocks;
}

}  // namespace layshaft::ui
