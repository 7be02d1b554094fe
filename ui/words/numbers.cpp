// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/numbers.h"

#include <QLocale>
#include <algorithm>
#include <cmath>

namespace layshaft::ui {

QString number(double value, int decimals) {
  const QString text = QLocale().toString(value, 'f', decimals);
  // A value that rounds to nothing is nothing, not "-0".
  const bool onlyZeros =
      std::none_of(text.begin(), text.end(), [](QChar c) { return c.isDigit() && c != QLatin1Char('0'); });
  return onlyZeros ? QLocale().toString(0.0, 'f', decimals) : text;
}

double asWritten(double value, int decimals) {
  return QString::number(value, 'f', decimals).toDouble();
}

QString signedNumber(double value, int decimals) {
  const QString size = number(std::abs(value), decimals);
  if (size == number(0.0, decimals)) return QStringLiteral("±0");
  return (value < 0 ? QStringLiteral("−") : QStringLiteral("+")) + size;
}

QString percent(double value) {
  return number(std::abs(value), std::abs(value) < 99.95 ? 1 : 0);
}

QString pairText(int frontTeeth, int rearTeeth) {
  return QStringLiteral("%1/%2").arg(frontTeeth).arg(rearTeeth);
}

QString teethPair(const Setup& setup) {
  return pairText(setup.frontTeeth.count(), setup.rearTeeth.count());
}

QString teethWords(const GearTeeth& teeth) {
  return pairText(teeth.driven, teeth.driving);
}

}  // namespace layshaft::ui
