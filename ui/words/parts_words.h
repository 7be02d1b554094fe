// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QStringList>
#include <vector>

#include "core/study/parts_list.h"
#include "ui/words/units_shown.h"

/// Words for what has to be had before a proposal is on the bike.
namespace layshaft::ui {

/// "Front sprocket, 15 teeth, 520, steel".
QString partText(const PartLine& line);
/// Where it comes from: "to buy", "from the spares box (used)", "shorten the bike's chain by 2 links".
QString partSourceText(const PartLine& line);

/// What a part with a price is called where prices are typed.
QString pricedPartName(PricedPart part);
/// "165.00 EUR"; a dash where no price is typed.
QString priceText(const Profile& profile, const std::optional<double>& price);

/// Titles, then the parts that are bought or come from the spares box, with their prices. What need not be
/// ordered is to be crossed off.
struct OrderTable {
  std::vector<QStringList> rows;
  std::vector<bool> crossedOff;  ///< a row each
};
OrderTable orderTable(const Profile& profile, const PartsList& list);

/// Titles, then what there is to choose from, with mass, wear and price: steel and aluminium, plain and
/// sealed. Empty for belts.
std::vector<QStringList> choiceTable(const Profile& profile, const Plan& plan, const UnitsShown& units);

/// A sentence each: that the set is worn, parts that should not run together, sums, and what an hour or a
/// thousand kilometres cost.
QStringList orderNotes(const Profile& profile, const PartsList& list, const UnitsShown& units);

/// The whole list as text.
QString orderText(const Profile& profile, const Plan& plan, const UnitsShown& units);

}  // namespace layshaft::ui
