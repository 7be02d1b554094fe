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

QStringList figureRow(const QString& name, const std::optional<double>& stock,
                      const std::optional<double>& proposed, int decimals) {
  const double scale = std::pow(10.0, decimals);
  const bool differ = stock && proposed && number(*stock, decimals) != number(*proposed, decimals);
  const QString difference =
      differ ? signedNumber((std::round(*proposed * scale) - std::round(*stock * scale)) / scale, decimals)
             : QString();
  return {name, figureText(stock, decimals), figureText(proposed, decimals), difference};
}

}  // namespace layshaft::ui
