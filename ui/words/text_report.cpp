// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/text_report.h"

#include <QCoreApplication>
#include <QStringList>
#include <vector>

#include "ui/words/aligned_table.h"
#include "ui/words/cautions.h"
#include "ui/words/chart_words.h"
#include "ui/words/compare_table.h"
#include "ui/words/gear_table.h"
#include "ui/words/key_figures.h"
#include "ui/words/lap_report.h"
#include "ui/words/numbers.h"
#include "ui/words/plain_text.h"
#include "ui/words/pull_notes.h"
#include "ui/words/road_words.h"
#include "ui/words/summary.h"
#include "ui/words/wear_words.h"

namespace layshaft::ui {
namespace {

struct Say {
  Q_DECLARE_TR_FUNCTIONS(TextReport)
};

QString lapText(const Plan& plan, const UnitsShown& units) {
  const LapReport lap = lapReport(plan, units);
  if (lap.isEmpty()) return {};
  QString text = lap.title + QLatin1Char('\n') + lap.words + QStringLiteral("\n\n");
  if (!lap.corners.empty())
    text += alignedTable(lap.corners) + QLatin1Char('\n') + lap.restsOn + QStringLiteral("\n\n");
  return text;
}

}  // namespace

QString textReport(const Plan& plan, const UnitsShown& units, const PartsOnHand& onHand) {
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
  if (const auto lacks = sawtoothLacks(plan); !lacks.empty())
    out += lackingWords(sawtoothNeeds(), lacks) + QStringLiteral("\n\n");
  if (plan.pullBike->accelerates()) {
    out += alignedTable(runTable(plan, units)) + QLatin1Char('\n');
    if (const QString start = standingStartWords(plan); !start.isEmpty()) out += start + QLatin1Char('\n');
    if (plan.drive) out += driveWords(plan, units) + QStringLiteral("\n\n");
  }
  if (!plan.pins.empty())
    out +=
        alignedTable(compareRows(compareTable(plan, units, allCompareFigures(), onHand))) + QLatin1Char('\n');
  for (const QString& note : pullNotes(plan, units)) out += note + QStringLiteral("\n\n");
  out += lapText(plan, units);
  if (const QStringList worn = wearReport(plan, units); !worn.isEmpty())
    out += Say::tr("Wear") + QLatin1Char('\n') + worn.join(QLatin1Char('\n')) + QStringLiteral("\n\n");
  const QStringList cautions = cautionsFor(plan, CautionPlace::Paper);
  if (const QString instrument = speedometerWords(plan);
      !instrument.isEmpty() && !cautions.contains(instrument))
    out += instrument + QStringLiteral("\n\n");
  for (const QString& caution : cautions) out += caution + QLatin1Char('\n');
  return out;
}

}  // namespace layshaft::ui
