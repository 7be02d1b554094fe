// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/stop.h"

#include <cmath>

#include "ui/editors/typed_ratio.h"
#include "ui/words/numbers.h"

namespace layshaft::ui {
namespace {

constexpr int kArrows = 34;  // pixels that arrows and frame take
constexpr int kFrame = 18;

}  // namespace

QString Stop::name() const {
  return spokenName.isEmpty() ? QString(label).remove(QLatin1Char('&')) : spokenName;
}

std::function<QString(const UnitsShown&)> unitOf(Quantity quantity) {
  return [quantity](const UnitsShown& units) { return units.name(quantity); };
}

void fixWidth(QWidget* widget, const QString& widest, int extra) {
  widget->setFixedWidth(widget->fontMetrics().horizontalAdvance(widest) + extra);
}

void narrow(QAbstractSpinBox* box, const QString& widest) {
  box->setButtonSymbols(QAbstractSpinBox::NoButtons);
  box->setAlignment(Qt::AlignHCenter);
  fixWidth(box, widest, kFrame);
}

WholeBox* wholeBox(const Limit& limit, int step, const QString& widest) {
  auto* box = new WholeBox;
  box->setRange(static_cast<int>(limit.low), static_cast<int>(limit.high));
  box->setSingleStep(step);
  fixWidth(box, widest, kArrows);
  return box;
}

WholeBox* openWholeBox(const Limit& limit, int step, const QString& widest, const QString& openWords,
                       int start) {
  auto* box = wholeBox(limit, step, widest);
  const int low = static_cast<int>(limit.low);
  box->allowNone(low - 1, low, openWords, start);
  return box;
}

RatioBox* ratioBox(const Limit& limit, const QString& widest) {
  constexpr int kDecimals = 4;
  constexpr double kStep = 0.01;
  auto* box = new RatioBox(nullptr, 2);
  box->setDecimals(kDecimals);
  box->setRange(limit.low, limit.high);
  box->setSingleStep(kStep);
  narrow(box, widest);
  return box;
}

Under wholeUnder(int now, int stock) {
  return {.text = number(stock, 0), .difference = now == stock ? QString() : signedNumber(now - stock, 0)};
}

Under openWholeUnder(const std::optional<int>& now, const std::optional<int>& stock) {
  Under under = wholeUnder(now.value_or(0), stock.value_or(0));
  if (!stock) under.text = QStringLiteral("–");
  return under;
}

Under ratioUnder(double now, double stock) {
  const int decimals = std::abs(now - stock) < 0.0095 ? 3 : 2;
  return {.text = number(stock, 3),
          .difference = now == stock ? QString() : signedNumber(now - stock, decimals)};
}

QString stockTo(const QString& stock, const QString& proposed) {
  return stock == proposed ? stock : QStringLiteral("%1 → %2").arg(stock, proposed);
}

}  // namespace layshaft::ui
