// SPDX-License-Identifier: GPL-3.0-or-later
#include <QCoreApplication>
#include <algorithm>

#include "core/study/fitted.h"
#include "core/study/parts_list.h"
#include "ui/charts/chain_drawing.h"
#include "ui/charts/sawtooth_chart.h"
#include "ui/sheet/paper.h"
#include "ui/sheet/sheets.h"
#include "ui/words/cautions.h"
#include "ui/words/chart_words.h"
#include "ui/words/compare_table.h"
#include "ui/words/gear_table.h"
#include "ui/words/lap_report.h"
#include "ui/words/numbers.h"
#include "ui/words/parts_words.h"
#include "ui/words/road_words.h"
#include "ui/words/summary.h"

namespace layshaft::ui {
namespace {

struct Say {
  Q_DECLARE_TR_FUNCTIONS(BenchSheet)
};

/// What was picked for the readout; cruise and top speed always.
std::vector<Figure> benchFigures(const std::vector<Figure>& picked) {
  std::vector<Figure> figures{Figure::TopSpeed, Figure::Cruise};
  const std::vector<Figure> usual{Figure::FinalRatio, Figure::Rollout, Figure::AxleShift, Figure::Speedometer,
                                  Figure::FirstGearAtLimit};
  for (const Figure figure : picked.empty() ? usual : picked)
    if (std::find(figures.begin(), figures.end(), figure) == figures.end()) figures.push_back(figure);
  return figures;
}

SheetTable figureTable(const SheetInput& input) {
  SheetTable table{.rows = {{QString(), Say::tr("Stock"), Say::tr("Proposed"), Say::tr("Difference")}}};
  for (const KeyFigure& figure : keyFigures(*input.plan, input.units, benchFigures(input.picked)))
    table.rows.push_back({figure.unit.isEmpty()
                              ? figure.label
                              : Say::tr("%1, %2", "figure and unit").arg(figure.label, figure.unit),
                          figure.stock, figure.proposed, figure.difference});
  return table;
}

QString loopText(const Setup& setup) {
  const auto& count = isBelt(setup) ? setup.options.beltTeeth : setup.options.links;
  return count ? number(*count, 0) : noValue();
}

/// Stock, proposed and pins beside one another.
SheetTable setupTable(const SheetInput& input) {
  const Plan& plan = *input.plan;
  std::vector<CompareFigure> figures{CompareFigure::FinalRatio,   CompareFigure::Rollout,
                                     CompareFigure::CruiseRpm,    CompareFigure::TopSpeed,
                                     CompareFigure::StraightTime, CompareFigure::AxleShift};
  if (plan.stock.lap) figures.insert(figures.end() - 1, {CompareFigure::LapTime, CompareFigure::LapChange});
  const CompareTable compared = compareTable(plan, input.units, figures);
  SheetTable table{.rows = {{QString()}, {Say::tr("Rear tyre")}, {Say::tr("Links, or a belt's teeth")}}};
  for (qsizetype i = 0; i < compared.setups.size(); ++i)
    table.rows[0] << Say::tr("%1 %2", "a setup and its pair").arg(compared.setups[i], compared.pairs[i]);
  std::vector<const SetupPlan*> setups{&plan.stock, &plan.proposed};
  for (const SetupPlan& pin : plan.pins) setups.push_back(&pin);
  for (const SetupPlan* setup : setups) {
    table.rows[1] << QString::fromStdString(setup->setup.rearTyre.text());
    table.rows[2] << loopText(setup->setup);
  }
  for (const CompareRow& row : compared.rows) {
    QStringList cells{row.name};
    for (const CompareCell& cell : row.cells) cells << cell.text;
    table.rows.push_back(cells);
  }
  return table;
}

SheetTable partsTable(const SheetInput& input) {
  const PartsList list = partsList(input.profile, *input.plan);
  SheetTable table{.rows = {{Say::tr("Part"), Say::tr("From")}}, .numbersFrom = 2};
  for (const PartLine& line : list.lines) table.rows.push_back({partText(line), partSourceText(line)});
  return table;
}

void drawSaw(QPainter& painter, const QRectF& area, const SheetInput& input) {
  if (const auto lacks = sawtoothLacks(*input.plan); !lacks.empty())
    return drawBroken(painter, paperFont(9), area, lackingWords(sawtoothNeeds(), lacks), Qt::AlignHCenter);
  SawtoothChart chart;
  chart.setFont(paperFont(9));
  chart.usePalette(paperPalette());
  chart.resize(area.size().toSize());
  chart.show(input.plan, input.units);
  // The chart lays itself out when it is resized, which a widget that is never shown must be told.
  chart.ensureLaidOut();
  chart.renderInto(painter, area);
}

void drawChain(QPainter& painter, const QRectF& area, const SheetInput& input) {
  ChainDrawing drawing;
  drawing.setFont(paperFont(9.5));
  drawing.setPalette(paperPalette());
  drawing.showTally(false);
  drawing.resize(area.size().toSize());
  drawing.show(input.plan, input.units);
  drawing.renderInto(painter, area);
}

/// Times, what their difference is worth, and a row for each corner where the page has room for them.
void addLap(Blocks& blocks, const LapReport& lap) {
  if (lap.corners.empty()) return;
  blocks.push_back(textBlock(lap.title, paperFont(9, true)));
  blocks.push_back(textBlock(lap.words, paperFont(9)));
  blocks.push_back(tableBlock({.rows = lap.corners, .points = 8}));
  blocks.back().spare = true;
}

QStringList foot(const Plan& plan, const UnitsShown& units) {
  QStringList lines = cautionsFor(plan, CautionPlace::Paper);
  if (const QString instrument = speedometerWords(plan); !instrument.isEmpty() && !lines.contains(instrument))
    lines.prepend(instrument);
  for (const QString& said : {typicalWords(*plan.pullBike, units), estimatedCurveWords(*plan.pullBike)})
    if (!said.isEmpty()) lines.prepend(said);
  return lines;
}

}  // namespace

Blocks benchSheet(const SheetInput& input) {
  const Plan& plan = *input.plan;
  const QFont font = paperFont(9), bold = paperFont(10, true);
  const Summary words = summary(plan, input.units);
  const LapReport lap = lapReport(plan, input.units);
  Blocks blocks{sheetHead(input, sheetName(SheetKind::Bench))};
  blocks.push_back(textBlock(
      words.misfit.isEmpty()
          ? words.headline
          : Say::tr("%1. %2", "that it does not fit, and the headline").arg(words.misfit, words.headline),
      bold));
  blocks.push_back(textBlock(words.detail, font));
  blocks.push_back(besideBlock({tableBlock(figureTable(input))}, {tableBlock(partsTable(input))}, 0.52));
  if (!plan.pins.empty()) blocks.push_back(tableBlock(setupTable(input)));
  blocks.push_back(drawingBlock(
      260, 3.0, [input](QPainter& painter, const QRectF& area) { drawSaw(painter, area, input); }));
  if (!plan.proposed.gearing.gears.empty())
    blocks.push_back(tableBlock({.rows = gearTable(plan, input.units), .points = 8.5}));
  if (plan.stock.chainRun && plan.proposed.chainRun)
    blocks.push_back(drawingBlock(
        170, 2.0, [input](QPainter& painter, const QRectF& area) { drawChain(painter, area, input); }));
  addLap(blocks, lap);
  QStringList lines = foot(plan, input.units);
  if (!lap.restsOn.isEmpty()) lines.prepend(lap.restsOn);
  for (const QString& line : lines) blocks.push_back(textBlock(line, paperFont(8.5)));
  blocks.push_back(fieldBlock({{Say::tr("Mechanic"), {}}, {Say::tr("Customer's signature"), {}}}));
  return blocks;
}

}  // namespace layshaft::ui
