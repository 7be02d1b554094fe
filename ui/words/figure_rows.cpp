// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/figure_rows.h"

#include <cmath>

#include "ui/words/numbers.h"

namespace layshaft::ui {
namespace {

/// Whether the rounded difference is the difference of the rounded figures.
bool agree(double from, double to, int decimals) {
  const double asRead = asWritten(to, decimals) - asWritten(from, decimals);
  return std::abs(asRead - asWritten(to - from, decimals)) < 0.5 * std::pow(10.0, -decimals);
}

}  // namespace

QString figureText(const std::optional<double>& value, int decimals) {
  if (!value) return QStringLiteral("–");
  return number(*value, decimals)
      .replace(QLatin1Char('-'), QChar(0x2212));  // a true minus, as in differences
}

ComparedTexts comparedTexts(const std::optional<double>& stock, const std::optional<double>& proposed,
                            int decimals, int more) {
  if (!stock || !proposed) return {figureText(stock, decimals), figureText(proposed, decimals), {}};
  int shown = decimals;
  while (shown < decimals + more && !agree(*stock, *proposed, shown)) ++shown;
  ComparedTexts texts{figureText(stock, shown), figureText(proposed, shown), {}};
  if (texts.stock != texts.proposed)
    texts.difference = signedNumber(asWritten(*proposed, shown) - asWritten(*stock, shown), shown);
  return texts;
}

QStringList figureRow(const QString& name, const std::optional<double>& stock,
                      const std::optional<double>& proposed, int decimals) {
  const ComparedTexts texts = comparedTexts(stock, proposed, decimals);
  return {name, texts.stock, texts.proposed, texts.difference};
}

}  // namespace layshaft::ui
