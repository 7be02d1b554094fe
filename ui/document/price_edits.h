// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <map>
#include <optional>

#include "core/problem.h"
#include "core/study/parts_list.h"

namespace layshaft::ui {

class Document;

/// What the user pays for parts, in words and numbers of the user's own.
struct TypedPrices {
  QString currency;
  std::map<PricedPart, double> parts;  ///< those that are not there have no price
};

/// Makes these the bike's prices, as one step of the history. Prices of parts that this version does not know
/// stay. Says what is wrong with a price that is refused.
std::optional<Problem> setPrices(Document& document, const TypedPrices& typed);

/// What is typed by now.
TypedPrices typedPrices(const Profile& profile);

}  // namespace layshaft::ui
