// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QImage>
#include <QPainter>
#include <QRectF>
#include <QString>
#include <memory>
#include <optional>

class QSvgRenderer;

namespace layshaft::ui {

/// A picture of the shop's own for the head of its sheets: SVG, which stays a drawing, PNG or JPEG.
class Logo {
 public:
  /// None for a file that is none of these or cannot be read; `why`, if there, then says so.
  static std::optional<Logo> fromFile(const QString& file, QString* why = nullptr);

  /// Width over height.
  double shape() const;
  void paint(QPainter& painter, const QRectF& area) const;

 private:
  std::shared_ptr<QSvgRenderer> drawing_;
  QImage image_;
};

}  // namespace layshaft::ui
