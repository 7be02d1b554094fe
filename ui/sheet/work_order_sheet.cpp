// SPDX-License-Identifier: GPL-3.0-or-later
#include <QCoreApplication>

#include "ui/sheet/paper.h"
#include "ui/sheet/sheets.h"
#include "ui/words/cautions.h"
#include "ui/words/chain_words.h"
#include "ui/words/work_order_words.h"

namespace layshaft::ui {
namespace {

struct Say {
  Q_DECLARE_TR_FUNCTIONS(WorkOrderSheet)
};

constexpr std::size_t kBlanksInARow = 3;

void addSteps(Blocks& blocks, const QString& title, const QStringList& lines) {
  if (lines.isEmpty()) return;
  blocks.push_back(textBlock(title, paperFont(11, true)));
  blocks.push_back(tickBlock(lines));
}

/// Blanks for the hand, a few in a row.
void addBlanks(Blocks& blocks, const QStringList& titles) {
  std::vector<SheetField> row;
  for (const QString& title : titles) {
    row.push_back({title, {}});
    if (row.size() < kBlanksInARow) continue;
    blocks.push_back(fieldBlock(row));
    row.clear();
  }
  if (!row.empty()) blocks.push_back(fieldBlock(row));
}

}  // namespace

Blocks workOrderSheet(const SheetInput& input) {
  const Plan& plan = *input.plan;
  const WorkOrder order = workOrder(input.profile, plan, input.units);
  Blocks blocks{sheetHead(input, sheetName(SheetKind::WorkOrder))};
  for (const QString& caution : cautionsFor(plan, CautionPlace::Work))
    blocks.push_back(textBlock(caution, paperFont(9)));
  if (plan.proposed.chainRun && !misfitHeading(*plan.proposed.chainRun).isEmpty())
    blocks.push_back(
        textBlock(fitWords(plan, plan.proposed, input.units, FitDetail::Full), paperFont(10, true)));
  addSteps(blocks, Say::tr("Remove"), order.remove);
  addSteps(blocks, Say::tr("Fit"), order.fit);
  addSteps(blocks, Say::tr("Set"), order.set);
  addSteps(blocks, Say::tr("Check"), order.checks);
  blocks.push_back(textBlock(Say::tr("From the bike's manual"), paperFont(11, true)));
  addBlanks(blocks, fromTheManual(input.profile, plan));
  blocks.push_back(textBlock(Say::tr("Done"), paperFont(11, true)));
  blocks.push_back(fieldBlock(
      {{Say::tr("Odometer or hours"), {}}, {Say::tr("Mechanic"), {}}, {Say::tr("Checked by"), {}}}));
  return blocks;
}

}  // namespace layshaft::ui
