// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/aligned_table.h"

#include <algorithm>

namespace layshaft::ui {
namespace {

QString padded(const QString& text, qsizetype width, bool right) {
  return right ? text.rightJustified(width) : text.leftJustified(width);
}

}  // namespace

QString alignedTable(const std::vector<QStringList>& rows) {
  std::vector<qsizetype> widths;
  for (const QStringList& row : rows)
    for (qsizetype c = 0; c < row.size(); ++c) {
      if (static_cast<qsizetype>(widths.size()) <= c) widths.push_back(0);
      widths[static_cast<std::size_t>(c)] = std::max(widths[static_cast<std::size_t>(c)], row[c].size());
    }
  QString out;
  for (const QStringList& row : rows) {
    QStringList cells;
    for (qsizetype c = 0; c < row.size(); ++c)
      cells << padded(row[c], widths[static_cast<std::size_t>(c)], c > 0);
    QString line = cells.join(QStringLiteral("  "));
    while (line.endsWith(QLatin1Char(' '))) line.chop(1);
    out += line + QLatin1Char('\n');
  }
  return out;
}

}  // namespace layshaft::ui
