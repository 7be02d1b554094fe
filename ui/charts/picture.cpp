// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/picture.h"

#include <QApplication>
#include <QBuffer>
#include <QClipboard>
#include <QCoreApplication>
#include <QFileInfo>
#include <QFontMetricsF>
#include <QPdfWriter>
#include <QSvgGenerator>
#include <algorithm>
#include <cmath>

#include "ui/document/save_bytes.h"

namespace layshaft::ui {
namespace {

constexpr double kPictureScale = 2.0;  // saved and copied pictures have twice the pixels of the screen

struct Say {
  Q_DECLARE_TR_FUNCTIONS(Picture)
};

constexpr double kCaptionMargin = 12.0;

QFont captionFont() {
  QFont font = QApplication::font();
  font.setPointSizeF(std::max(9.0, font.pointSizeF()));
  return font;
}

QFont headingFont() {
  QFont font = captionFont();
  font.setBold(true);
  return font;
}

/// Whole dots, so that the picture between two texts stays on the dots of the screen.
int textHeight(const QFont& font, const QString& text, double width) {
  if (text.isEmpty()) return 0;
  const QRectF room(0, 0, width - 2 * kCaptionMargin, 1e4);
  return static_cast<int>(std::ceil(QFontMetricsF(font).boundingRect(room, Qt::TextWordWrap, text).height() +
                                    2 * kCaptionMargin));
}

}  // namespace

QSize Picture::wholeSize() const {
  const QSize size = pictureSize();
  return {size.width(), size.height() + textHeight(headingFont(), pictureHeading(), size.width()) +
                            textHeight(captionFont(), pictureCaption(), size.width())};
}

void Picture::renderWhole(QPainter& painter, const QRectF& target) {
  const QSizeF whole = wholeSize(), size = pictureSize();
  const double scale = std::min(target.width() / whole.width(), target.height() / whole.height());
  const double top = textHeight(headingFont(), pictureHeading(), size.width());
  painter.save();
  painter.translate(target.topLeft());
  painter.scale(scale, scale);
  const auto write = [&](const QFont& font, const QRectF& band, const QString& text) {
    if (text.isEmpty()) return;
    painter.fillRect(band, pictureGround());
    painter.setFont(font);
    painter.setPen(pictureInk());
    painter.drawText(band.adjusted(kCaptionMargin, kCaptionMargin, -kCaptionMargin, 0), Qt::TextWordWrap,
                     text);
  };
  write(headingFont(), QRectF(0, 0, whole.width(), top), pictureHeading());
  const double foot = top + size.height();
  write(captionFont(), QRectF(0, foot, whole.width(), whole.height() - foot), pictureCaption());
  painter.restore();
  renderInto(painter, QRectF(target.topLeft() + QPointF(0, top * scale), size * scale));
}

QImage Picture::image() {
  QImage image(wholeSize() * kPictureScale, QImage::Format_ARGB32_Premultiplied);
  image.fill(pictureGround());
  QPainter painter(&image);
  renderWhole(painter, QRectF(QPointF(0, 0), QSizeF(image.size())));
  return image;
}

void Picture::copyPicture() {
  QApplication::clipboard()->setImage(image());
}

void Picture::paintScaled(QPainter& painter, const QRectF& target, const QSize& size,
                          const std::function<void(QPainter&)>& paint) {
  painter.save();
  const double scale = std::min(target.width() / size.width(), target.height() / size.height());
  painter.translate(target.topLeft());
  painter.scale(scale, scale);
  painter.setClipRect(QRect(QPoint(), size), Qt::IntersectClip);
  paint(painter);
  painter.restore();
}

std::optional<QString> Picture::savePicture(const QString& file) {
  const QString ending = QFileInfo(file).suffix().toLower();
  const QSize size = wholeSize();
  const int dpi = pictureDpi();
  QBuffer out;
  out.open(QIODevice::WriteOnly);
  if (ending == QLatin1String("png")) {
    if (!image().save(&out, "PNG")) return Say::tr("the picture could not be written");
  } else if (ending == QLatin1String("svg")) {
    QSvgGenerator svg;
    svg.setOutputDevice(&out);
    svg.setResolution(dpi);
    svg.setSize(size);
    svg.setViewBox(QRect(QPoint(0, 0), size));
    QPainter painter(&svg);
    renderWhole(painter, QRectF(QPointF(0, 0), QSizeF(size)));
  } else if (ending == QLatin1String("pdf")) {
    QPdfWriter pdf(&out);
    pdf.setResolution(dpi);  // so that a point is as large as on the screen
    pdf.setPageSize(QPageSize(QSizeF(size) * 72.0 / dpi, QPageSize::Point));
    pdf.setPageMargins({});
    QPainter painter(&pdf);
    renderWhole(painter, QRectF(0, 0, pdf.width(), pdf.height()));
  } else {
    return Say::tr("pictures end in .png, .svg or .pdf, not .%1").arg(ending);
  }
  return saveBytes(file, out.data());
}

}  // namespace layshaft::ui
