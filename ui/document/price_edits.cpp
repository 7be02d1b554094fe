// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/document/price_edits.h"

#include <QCoreApplication>
#include <algorithm>

#include "core/limits.h"
#include "core/number_text.h"
#include "ui/document/document.h"

namespace layshaft::ui {
namespace {

struct Say {
  Q_DECLARE_TR_FUNCTIONS(PriceEdits)
};

/// The entry of a part; a new one at the end where there is none.
PartPrice& entryOf(Prices& prices, const std::string& part) {
  const auto found = std::find_if(prices.parts.begin(), prices.parts.end(),
                                  [&](const PartPrice& price) { return price.part == part; });
  if (found != prices.parts.end()) return *found;
  prices.parts.push_back({.part = part, .price = 0.0, .extras = {}});
  return prices.parts.back();
}

void write(Profile& profile, const TypedPrices& typed) {
  Prices prices = profile.prices.value_or(Prices{});
  prices.currency = typed.currency.trimmed().toStdString();
  for (const auto& [part, word] : kPricedPartWords) {
    const auto price = typed.parts.find(part);
    if (price != typed.parts.end())
      entryOf(prices, std::string(word)).price = price->second;
    else
      std::erase_if(prices.parts, [&named = word](const PartPrice& entry) { return entry.part == named; });
  }
  profile.prices = prices == Prices{} ? std::nullopt : std::optional(prices);
}

}  // namespace

TypedPrices typedPrices(const Profile& profile) {
  TypedPrices typed;
  if (profile.prices) typed.currency = QString::fromStdString(profile.prices->currency);
  for (const auto& [part, word] : kPricedPartWords)
    if (const auto price = priceOf(profile, part)) typed.parts[part] = *price;
  return typed;
}

std::optional<Problem> setPrices(Document& document, const TypedPrices& typed) {
  for (const auto& [part, price] : typed.parts)
    if (!limits::kPrice.contains(price))
      return Problem{.kind = Problem::Kind::OutOfRange,
                     .path = "prices.parts[].price",
                     .given = numberText(price),
                     .low = limits::kPrice.low,
                     .high = limits::kPrice.high};
  return document.edit({.field = QStringLiteral("prices"), .title = Say::tr("prices"), .shown = {}},
                       [&](Profile& profile) { write(profile, typed); });
}

}  // namespace layshaft::ui
