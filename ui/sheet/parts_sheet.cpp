// SPDX-License-Identifier: GPL-3.0-or-later
#include <utility>

#include "ui/sheet/paper.h"
#include "ui/sheet/sheets.h"
#include "ui/words/cautions.h"
#include "ui/words/parts_words.h"

namespace layshaft::ui {

Blocks partsSheet(const SheetInput& input) {
  const PartsList list = partsList(input.profile, *input.plan);
  Blocks blocks{sheetHead(input, sheetName(SheetKind::Parts))};
  OrderTable order = orderTable(input.profile, list);
  if (order.rows.size() > 1)
    blocks.push_back(tableBlock({.rows = std::move(order.rows),
                                 .numbersFrom = 2,
                                 .struck = std::move(order.crossedOff),
                                 .points = 10}));
  for (const QString& note : orderNotes(input.profile, list, input.units))
    blocks.push_back(textBlock(note, paperFont(10)));
  if (auto choices = choiceTable(input.profile, *input.plan, input.units); !choices.empty())
    blocks.push_back(tableBlock({.rows = std::move(choices), .numbersFrom = 2}));
  for (const QString& caution : cautionsFor(*input.plan, CautionPlace::Work))
    blocks.push_back(textBlock(caution, paperFont(9)));
  return blocks;
}

}  // namespace layshaft::ui
