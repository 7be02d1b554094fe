// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/text_report.h"

#include <QCoreApplication>
#include <QStringList>
#include <algorithm>
#include <vector>

#include "ui/words/cautions.h"
#include "ui/words/gear_table.h"
#include "ui/words/key_figures.h"
#include "ui/words/numbers.h"
#include "ui/words/plain_text.h"
#include "ui/words/pull_notes.h"
#include "ui/words/road_words.h"
#include "ui/words/summary.h"

namespace layshaft::ui {
namespace {

struct Say {
  Q_DECLARE_TR_FUNCTIONS(TextReport)
};

QString padded(const QString& text, qsizetype width, bool right) {
  return right ? text.rightJustified(width) : text.leftJustified(width);
}

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

}  // namespace

QString textReport(const Plan& plan, const UnitsShown& units) {
  const Summary words = summary(plan, units);
  QString out =
      shownName(plan.bikeName).simplified() + QLatin1Char('\n') +
      Say::tr("Stock %1, proposed %2").arg(teethPair(plan.stock.setup), teethPair(plan.proposed.setup)) +
      QStringLiteral("\n\n") +
      (words.misfit.isEmpty()
           ? words.headline
           : Say::tr("%1. %2", "does not fit, and the headline").arg(words.misfit, words.headline)) +
      QLatin1Char('\n') + words.detail + QStringLiteral("\n\n");
  std::vector<QStringList> figures{
      {QString(), Say::tr("Stock"), Say::tr("Proposed"), Say::tr("Difference"), QString()}};
  for (const KeyFigure& figure : everyFigure(plan, units))
    figures.push_back({figure.label, figure.stock, figure.proposed, figure.difference, figure.unit});
  out += alignedTable(figures) + QLatin1Char('\n') + alignedTable(gearTable(plan, units)) + QLatin1Char('\n');
  if (plan.pullBike->accelerates()) {
    out += alignedTable(runTable(plan, units)) + QLatin1Char('\n');
    if (const QString start = standingStartWords(plan); !start.isEmpty()) out += start + QLatin1Char('\n');
    if (plan.drive) out += driveWords(plan, units) + QStringLiteral("\n\n");
  }
  for (const QString& note : pullNotes(plan, units)) out += note + QStringLiteral("\n\n");
  const QStringList cautions = cautionsFor(plan, CautionPlace::Paper);
  if (const QString instrument = speedometerWords(plan);
      !instrument.isEmpty() && !cautions.contains(instrument))
    out += instrument + QStringLiteral("\n\n");
  for (const QString& caution : cautions) out += caution + QLatin1Char('\n');
  return out;
}

}  // namespace layshaft::ui
