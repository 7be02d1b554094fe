// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QColor>
#include <QPainter>
#include <QSize>
#include <QString>
#include <functional>
#include <optional>

namespace layshaft::ui {

/// What a page shows and can hand over: as a file, on the clipboard, on paper.
class Picture {
 public:
  virtual ~Picture() = default;

  /// In the format of the file's ending: .png, .svg or .pdf. Nothing if it worked, else what went wrong.
  std::optional<QString> savePicture(const QString& file);
  void copyPicture();
  /// Paints it as it is laid out, scaled into `target`.
  virtual void renderInto(QPainter& painter, const QRectF& target) = 0;

 protected:
  virtual QSize pictureSize() const = 0;
  virtual QColor pictureGround() const = 0;
  virtual QColor pictureInk() const = 0;
  /// What is written above and under a saved or copied picture; empty for nothing.
  virtual QString pictureHeading() const { return {}; }
  virtual QString pictureCaption() const { return {}; }
  virtual int pictureDpi() const = 0;

  /// Scales what `paint` paints at `size` into `target`, cut off at its edges.
  static void paintScaled(QPainter& painter, const QRectF& target, const QSize& size,
                          const std::function<void(QPainter&)>& paint);

 private:
  QImage image();
  /// The picture with its caption, in the picture's own measure and scaled into `target`.
  QSize wholeSize() const;
  void renderWhole(QPainter& painter, const QRectF& target);
};

}  // namespace layshaft::ui
