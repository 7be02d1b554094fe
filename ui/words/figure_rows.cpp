// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/figure_rows.h"

#include <cmath>

#include "ui/words/numbers.h"

namespace layshaft::ui {

QString figureText(const std::optional<double>& value, int decimals) {
  if (!value) return QStringLiteral("–");
  return number(*value, decimals)
      .replace(QLatin1Char('-'), QChar(0x2212));  // a true minus, as in differences
}

QString differenceAsRead(double from, double to, int decimals) {
  if (number(from, decimals) == number(to, decimals)) return {};
  const double scale = std::pow(10.0, decimals);
  return signedNumber((std::round(to * scale) - std::round(from * scale)) / scale, decimals);
}

QStringList figureRow(const QString& name, const std::optional<double>& stock,
                      const std::optional<double>& proposed, int decimals) {
  const QString difference = stock && proposed ? differenceAsRead(*stock, *proposed, decimals) : QString();
  return {name, figureText(stock, decimals), figureText(proposed, decimals), difference};
}

}  // namespace layshaft::ui
