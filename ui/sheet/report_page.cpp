// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/sheet/report_page.h"

#include <QBuffer>
#include <QCoreApplication>
#include <QImage>
#include <QPainter>
#include <QPdfWriter>

#include "ui/charts/appearance.h"
#include "ui/charts/readout.h"
#include "ui/charts/sawtooth_chart.h"
#include "ui/words/cautions.h"
#include "ui/words/numbers.h"
#include "ui/words/plain_text.h"
#include "ui/words/summary.h"

namespace layshaft::ui {
namespace {

struct Say {
  Q_DECLARE_TR_FUNCTIONS(ReportPage)
};

// A4 landscape at 96 dots per inch, the size the widgets are laid out for.
constexpr int kDotsPerInch = 96;
constexpr QSizeF kPage{1123, 794};
constexpr double kMargin = 28;
constexpr double kPngScale = 2.0;

void paintPage(QPainter& painter, const Plan& plan, const UnitsShown& units) {
  const QPalette paper = [] {
    QPalette palette = lightPalette();
    palette.setColor(QPalette::Window, Qt::white);
    return palette;
  }();
  const ChartPalette colours(paper);
  QFont font;
  font.setPointSizeF(10);
  QFont bold = font;
  bold.setBold(true);

  painter.setFont(bold);
  painter.setPen(colours.text);
  const QRectF title(kMargin + 24, kMargin, kPage.width() - 2 * kMargin - 48, 20);
  // A long name gives way to the teeth at the right.
  painter.drawText(title, Qt::AlignLeft,
                   QFontMetricsF(bold).elidedText(shownName(plan.bikeName).simplified(), Qt::ElideRight,
                                                  title.width() * 0.7));
  painter.setFont(font);
  painter.drawText(
      title, Qt::AlignRight,
      Say::tr("Stock %1, proposed %2").arg(teethPair(plan.stock.setup), teethPair(plan.proposed.setup)));

  TextCache texts;
  Summary words = summary(plan, units);
  words.cautions.clear();  // all of them stand at the foot
  const double width = kPage.width() - 2 * kMargin;
  const auto figures = keyFigures(plan, units);
  const double readoutHeight = Readout::heightFor(font, width, words, figures, texts);
  Readout::paint(painter, QRectF(kMargin, kMargin + 22, width, readoutHeight), font, colours, words, figures,
                 texts);

  QFont small = font;
  small.setPointSizeF(9);
  painter.setPen(colours.text);
  QStringList lines = cautionsFor(plan, CautionPlace::Paper);
  if (const QString instrument = speedometerWords(plan); !instrument.isEmpty() && !lines.contains(instrument))
    lines.prepend(instrument);
  const double footWidth = width - 48;
  double footHeight = 0.0;
  for (const QString& line : lines) footHeight += texts.wrappedHeight(small, line, footWidth);
  const double cautionTop = kPage.height() - kMargin - footHeight;
  double y = cautionTop;
  for (const QString& line : lines) {
    const double height = texts.wrappedHeight(small, line, footWidth);
    texts.drawWrapped(painter, small, QRectF(kMargin + 24, y, footWidth, height), line);
    y += height;
  }

  SawtoothChart chart;
  chart.setFont(font);
  chart.usePalette(paper);
  const QRectF area(kMargin, kMargin + 26 + readoutHeight, kPage.width() - 2 * kMargin,
                    cautionTop - readoutHeight - kMargin - 38);
  chart.resize(area.size().toSize());
  chart.show(std::make_shared<const Plan>(plan), units);
  // The chart lays itself out when it is resized, which a widget that is never shown must be told.
  chart.ensureLaidOut();
  chart.renderInto(painter, area);
}

}  // namespace

std::optional<QString> writeReportPage(const Plan& plan, const UnitsShown& units, PictureFormat format,
                                       QIODevice& out) {
  if (format == PictureFormat::Pdf) {
    // Into memory first: standard output cannot be sought.
    QBuffer buffer;
    buffer.open(QIODevice::WriteOnly);
    {
      QPdfWriter pdf(&buffer);
      pdf.setPageSize(QPageSize(QPageSize::A4));
      pdf.setPageOrientation(QPageLayout::Landscape);
      pdf.setPageMargins({});
      pdf.setResolution(kDotsPerInch);  // so that a point is as large as on the page's own grid
      pdf.setTitle(shownName(plan.bikeName));
      QPainter painter(&pdf);
      painter.scale(pdf.width() / kPage.width(), pdf.height() / kPage.height());
      paintPage(painter, plan, units);
    }
    if (out.write(buffer.data()) != buffer.data().size()) return out.errorString();
    return std::nullopt;
  }
  QImage image((kPage * kPngScale).toSize(), QImage::Format_RGB32);
  image.fill(Qt::white);
  QPainter painter(&image);
  painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
  painter.scale(kPngScale, kPngScale);
  paintPage(painter, plan, units);
  painter.end();
  QBuffer buffer;
  buffer.open(QIODevice::WriteOnly);
  if (!image.save(&buffer, "PNG")) return Say::tr("the picture could not be written");
  if (out.write(buffer.data()) != buffer.data().size()) return out.errorString();
  return std::nullopt;
}

}  // namespace layshaft::ui
