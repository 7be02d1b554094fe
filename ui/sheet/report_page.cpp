// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/sheet/report_page.h"

#include <QCoreApplication>
#include <QLocale>
#include <algorithm>

#include "ui/charts/appearance.h"
#include "ui/charts/readout.h"
#include "ui/charts/sawtooth_chart.h"
#include "ui/words/cautions.h"
#include "ui/words/chart_words.h"
#include "ui/words/numbers.h"
#include "ui/words/plain_text.h"
#include "ui/words/road_words.h"
#include "ui/words/summary.h"

namespace layshaft::ui {
namespace {

struct Say {
  Q_DECLARE_TR_FUNCTIONS(ReportPage)
};

constexpr double kInset = 24;  // of the texts, as the readout has it
constexpr double kGap = 4;
// What readout and chart need to be read; on less paper all of it is made smaller. Pixels at 96 dots per
// inch.
constexpr double kLeastWidth = 900, kLeastChart = 300;

QPalette paperPalette() {
  QPalette palette = lightPalette();
  palette.setColor(QPalette::Window, Qt::white);
  return palette;
}

QFont paperFont(double points, bool bold = false) {
  QFont font;
  font.setPointSizeF(points);
  font.setBold(bold);
  return font;
}

}  // namespace

/// Everything on the page but the chart, measured.
struct ReportSheet::Parts {
  Summary words;
  std::vector<KeyFigure> figures;
  QStringList foot;
  double title, readout, cautions;
  double all() const { return title + readout + kGap + kGap + cautions; }
};

ReportSheet::Parts ReportSheet::partsIn(double width, TextCache& texts) const {
  Parts parts{.words = summary(*plan_, units_),
              .figures = keyFigures(*plan_, units_, picked_),
              .foot = foot(),
              .title = QFontMetricsF(paperFont(10, true)).height() + 2,
              .readout = 0,
              .cautions = 0};
  parts.words.cautions.clear();  // all of them stand at the foot
  parts.readout = Readout::heightFor(paperFont(10), width, parts.words, parts.figures, texts);
  for (const QString& line : parts.foot)
    parts.cautions += texts.wrappedHeight(paperFont(9), line, width - 2 * kInset);
  return parts;
}

QString ReportSheet::title() const {
  return shownName(plan_->bikeName).simplified();
}

QString ReportSheet::setupWords() const {
  const QString stock = teethPair(plan_->stock.setup), proposed = teethPair(plan_->proposed.setup);
  return day_.isValid() ? Say::tr("Stock %1, proposed %2 – %3", "pairs and the day")
                              .arg(stock, proposed, QLocale().toString(day_, QLocale::LongFormat))
                        : Say::tr("Stock %1, proposed %2").arg(stock, proposed);
}

QStringList ReportSheet::foot() const {
  QStringList lines = cautionsFor(*plan_, CautionPlace::Paper);
  if (const QString instrument = speedometerWords(*plan_);
      !instrument.isEmpty() && !lines.contains(instrument))
    lines.prepend(instrument);
  for (const QString& said : {typicalWords(*plan_->pullBike, units_), estimatedCurveWords(*plan_->pullBike)})
    if (!said.isEmpty()) lines.prepend(said);
  return lines;
}

void ReportSheet::paintPage(QPainter& painter, const QRectF& room, int) const {
  const double unit = sheetDpi() / 96.0;
  TextCache texts;
  double scale = 1.0;
  const auto enough = [&] {
    const QSizeF size = room.size() / scale;
    return size.width() >= kLeastWidth * unit &&
           size.height() - partsIn(size.width(), texts).all() >= kLeastChart * unit;
  };
  constexpr double kSmallest = 0.2, kStep = 0.97;
  while (scale > kSmallest && !enough()) scale *= kStep;
  painter.save();
  painter.translate(room.topLeft());
  painter.scale(scale, scale);
  paint(painter, room.size() / scale);
  painter.restore();
}

void ReportSheet::paint(QPainter& painter, const QSizeF& room) const {
  const QPalette paper = paperPalette();
  const ChartPalette colours(paper, QPalette::Window);
  const QFont font = paperFont(10), bold = paperFont(10, true), small = paperFont(9);
  TextCache texts;
  const Parts parts = partsIn(room.width(), texts);

  const QRectF top(kInset, 0, room.width() - 2 * kInset, parts.title);
  const QString setups = setupWords();
  painter.setPen(colours.text);
  painter.setFont(font);
  painter.drawText(top, Qt::AlignRight, setups);
  // A long name gives way to the teeth at the right.
  painter.setFont(bold);
  painter.drawText(
      top, Qt::AlignLeft,
      QFontMetricsF(bold).elidedText(title(), Qt::ElideRight,
                                     top.width() - QFontMetricsF(font).horizontalAdvance(setups) - kInset));

  const QRectF readout(0, parts.title, room.width(), parts.readout);
  Readout::paint(painter, readout, font, colours, parts.words, parts.figures, texts);

  double y = room.height() - parts.cautions;
  const QRectF area(0, readout.bottom() + kGap, room.width(), y - kGap - readout.bottom() - kGap);
  painter.setPen(colours.text);
  for (const QString& line : parts.foot) {
    const double height = texts.wrappedHeight(small, line, top.width());
    texts.drawWrapped(painter, small, QRectF(kInset, y, top.width(), height), line);
    y += height;
  }

  if (const auto lacks = sawtoothLacks(*plan_); !lacks.empty()) {
    painter.setFont(font);
    painter.drawText(area, Qt::AlignCenter | Qt::TextWordWrap, lackingWords(sawtoothNeeds(), lacks));
    return;
  }
  SawtoothChart chart;
  chart.setFont(font);
  chart.usePalette(paper);
  chart.resize(area.size().toSize());
  chart.show(plan_, units_);
  // The chart lays itself out when it is resized, which a widget that is never shown must be told.
  chart.ensureLaidOut();
  chart.renderInto(painter, area);
}

std::optional<QString> writeReportPage(const Plan& plan, const UnitsShown& units, PictureFormat format,
                                       QIODevice& out) {
  const ReportSheet sheet(std::make_shared<const Plan>(plan), units);
  const QPageSize paper(QPageSize::A4);
  return format == PictureFormat::Pdf ? writePdf(sheet, paper, out) : writePng(sheet, paper, out);
}

}  // namespace layshaft::ui
