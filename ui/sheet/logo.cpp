// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/sheet/logo.h"

#include <QCoreApplication>
#include <QFile>
#include <QFileInfo>
#include <QImageReader>
#include <QSvgRenderer>

namespace layshaft::ui {
namespace {

struct Say {
  Q_DECLARE_TR_FUNCTIONS(Logo)
};

constexpr qint64 kMostBytes = 8 << 20;
constexpr int kMostPixels = 1200;  // along an edge: sharp on paper, and no more

std::optional<Logo> refuse(QString* why, const QString& reason) {
  if (why) *why = reason;
  return std::nullopt;
}

bool isDrawing(const QByteArray& bytes) {
  return bytes.left(4096).contains("<svg");
}

}  // namespace

std::optional<Logo> Logo::fromFile(const QString& file, QString* why) {
  const QFileInfo info(file);
  if (!info.isFile()) return refuse(why, Say::tr("there is no such file"));
  if (info.size() > kMostBytes) return refuse(why, Say::tr("the file is larger than 8 MB"));
  QFile in(file);
  if (!in.open(QIODevice::ReadOnly)) return refuse(why, in.errorString());
  Logo logo;
  if (const QByteArray bytes = in.readAll(); isDrawing(bytes)) {
    logo.drawing_ = std::make_shared<QSvgRenderer>(bytes);
    if (!logo.drawing_->isValid() || logo.drawing_->viewBoxF().isEmpty())
      return refuse(why, Say::tr("the drawing cannot be read"));
    return logo;
  }
  in.seek(0);
  QImageReader reader(&in);
  reader.setDecideFormatFromContent(true);
  if (reader.format() != "png" && reader.format() != "jpeg")
    return refuse(why, Say::tr("it is neither an SVG drawing nor a PNG or JPEG picture"));
  reader.setAutoTransform(true);
  if (const QSize size = reader.size(); size.width() > kMostPixels || size.height() > kMostPixels)
    reader.setScaledSize(size.scaled(kMostPixels, kMostPixels, Qt::KeepAspectRatio));
  logo.image_ = reader.read();
  if (logo.image_.isNull()) return refuse(why, Say::tr("the picture cannot be read"));
  return logo;
}

double Logo::shape() const {
  const QSizeF size = drawing_ ? drawing_->viewBoxF().size() : QSizeF(image_.size());
  return size.width() / size.height();
}

void Logo::paint(QPainter& painter, const QRectF& area) const {
  QRectF box(0, 0, area.height() * shape(), area.height());
  if (box.width() > area.width()) box.setSize(QSizeF(area.width(), area.width() / shape()));
  box.moveTopRight(area.topRight());
  if (drawing_)
    drawing_->render(&painter, box);
  else
    painter.drawImage(box, image_);
}

}  // namespace layshaft::ui
