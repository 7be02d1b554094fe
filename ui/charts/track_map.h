// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QTransform>
#include <optional>
#include <vector>

#include "ui/charts/painted_picture.h"
#include "ui/charts/track_painting.h"
#include "ui/words/lap_book.h"
#include "ui/words/units_shown.h"

namespace layshaft::ui {

/// The track to scale, north up, with its corners by name. The line tells of the proposal's lap by its
/// colour and, for who does not tell colours, by its width. A place on it can be marked and pointed at.
class TrackMap : public PaintedPicture {
  Q_OBJECT
 public:
  using Colouring = TrackColouring;

  explicit TrackMap(QWidget* parent = nullptr);

  using QWidget::show;
  void show(const LapBook& book, const UnitsShown& units);
  void setColouring(Colouring colouring);
  Colouring colouring() const { return colouring_; }

  /// Marks a place, m from the start; none for no mark.
  void mark(std::optional<double> distanceM);
  std::optional<double> marked() const { return marked_; }
  /// Where a place of the track is in the widget, px; none off the track.
  std::optional<QPointF> positionOf(double distanceM) const;

  std::optional<CrosshairSpan> crosshairSpan() const override;
  std::optional<double> crosshairAt() const override;
  void moveCrosshair(double x) override;
  QString crosshairWords() const override;

  QSize sizeHint() const override { return {300, 240}; }
  QSize minimumSizeHint() const override { return {220, 180}; }

 signals:
  void pointedAt(std::optional<double> distanceM);  ///< by pointer or keys

 protected:
  void fit() override;
  void paint(QPainter& painter) const override;
  void paintMoving(QPainter& painter) const override;
  QString pictureHeading() const override;
  QString pictureCaption() const override;

  void mouseMoveEvent(QMouseEvent* event) override;
  void leaveEvent(QEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;

 private:
  void point(std::optional<double> distanceM);
  std::optional<double> nearest(const QPointF& position) const;

  LapBook book_;
  UnitsShown units_;
  Colouring colouring_ = Colouring::Speed;
  std::vector<TrackPiece> pieces_;
  std::shared_ptr<const TrackLine> cut_;  ///< what the pieces are of
  QTransform toPixels_;
  std::optional<double> marked_;
};

}  // namespace layshaft::ui
