// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/sheet/sheet.h"

#include <QBuffer>
#include <QCoreApplication>
#include <QGuiApplication>
#include <QImage>
#include <QPagedPaintDevice>
#include <QPdfWriter>
#include <QScreen>
#include <algorithm>
#include <cmath>

namespace layshaft::ui {
namespace {

struct Say {
  Q_DECLARE_TR_FUNCTIONS(Sheet)
};

constexpr double kMarginInches = 28.0 / 96.0;  // common practice: what home printers can do
constexpr double kPngScale = 2.0;

QSizeF paperSize(const Sheet& sheet, const QPageSize& paper) {
  const QSizeF inches = paper.size(QPageSize::Inch);
  return (sheet.orientation() == QPageLayout::Landscape ? inches.transposed() : inches) * sheetDpi();
}

std::optional<QString> writeWhole(const QBuffer& buffer, QIODevice& out) {
  const QByteArray& bytes = buffer.data();
  return out.write(bytes) == bytes.size() ? std::nullopt : std::optional(out.errorString());
}

}  // namespace

int sheetDpi() {
  return static_cast<int>(std::lround(QGuiApplication::primaryScreen()->logicalDotsPerInchX()));
}

std::optional<QString> paintSheet(const Sheet& sheet, QPagedPaintDevice& device) {
  const QPageLayout layout = device.pageLayout();
  const QSizeF room = layout.paintRectPixels(sheetDpi()).size();
  const int pages = sheet.pageCount(room);
  const QPageRanges wanted = device.pageRanges();
  QPainter painter;
  bool begun = false;
  for (int page = 0; page < pages; ++page) {
    if (!wanted.isEmpty() && !wanted.contains(page + 1)) continue;
    if (!begun && !painter.begin(&device)) return Say::tr("nothing can be written there");
    if (std::exchange(begun, true) && !device.newPage()) return Say::tr("there was no further page");
    // Some devices have a resolution of their own.
    const double scale = device.width() / room.width();
    painter.save();
    painter.scale(scale, scale);
    sheet.paintPage(painter, QRectF(QPointF(0, 0), room), page);
    painter.restore();
  }
  if (!begun) return Say::tr("none of these pages is there: there are %1").arg(pages);
  return painter.end() ? std::nullopt : std::optional(Say::tr("it could not be brought to its end"));
}

std::optional<QString> writePdf(const Sheet& sheet, const QPageSize& paper, QIODevice& out) {
  // Into memory first: standard output cannot be sought.
  QBuffer buffer;
  buffer.open(QIODevice::WriteOnly);
  {
    QPdfWriter pdf(&buffer);
    pdf.setResolution(sheetDpi());  // so that a point is as large as on the page's own grid
    pdf.setPageLayout(
        QPageLayout(paper, sheet.orientation(), QMarginsF(1, 1, 1, 1) * kMarginInches, QPageLayout::Inch));
    pdf.setTitle(sheet.title());
    pdf.setCreator(QStringLiteral("Layshaft"));
    if (const auto why = paintSheet(sheet, pdf)) return why;
  }
  return writeWhole(buffer, out);
}

std::optional<QString> writePng(const Sheet& sheet, const QPageSize& paper, QIODevice& out) {
  const QSizeF whole = paperSize(sheet, paper);
  const double margin = kMarginInches * sheetDpi();
  const QRectF room = QRectF(QPointF(0, 0), whole).adjusted(margin, margin, -margin, -margin);
  const int pages = sheet.pageCount(room.size());
  const QSize page = (whole * kPngScale).toSize();
  QImage image(page.width(), page.height() * pages, QImage::Format_RGB32);
  image.fill(Qt::white);
  QPainter painter(&image);
  painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
  for (int i = 0; i < pages; ++i) {
    painter.save();
    painter.translate(0, static_cast<double>(page.height()) * i);
    painter.scale(kPngScale, kPngScale);
    sheet.paintPage(painter, room, i);
    painter.restore();
  }
  painter.end();
  QBuffer buffer;
  buffer.open(QIODevice::WriteOnly);
  if (!image.save(&buffer, "PNG")) return Say::tr("the picture could not be written");
  return writeWhole(buffer, out);
}

}  // namespace layshaft::ui
