// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <utility>

#include "core/plan.h"
#include "ui/charts/painted_picture.h"
#include "ui/charts/pair_painting.h"

namespace layshaft::ui {

/// All pairs in reach as a grid, front teeth down and rear teeth across, each with what its lap is against
/// stock. A cursor goes from pair to pair with the pointer and the arrow keys; a click, Enter or Space
/// chooses the pair under it.
class PairMap : public PaintedPicture {
  Q_OBJECT
 public:
  explicit PairMap(QWidget* parent = nullptr);

  using QWidget::show;
  /// `plan` is what a saved picture is headed by.
  void show(const PairBook& book, const SharedPlan& plan);

  using Pair = std::pair<int, int>;  ///< front and rear teeth
  std::optional<Pair> cursor() const { return cursor_; }
  void moveTo(std::optional<Pair> pair);
  /// What its signs mean.
  QString legend() const;
  QRectF cellOf(int frontTeeth, int rearTeeth) const { return grid_.cellOf(frontTeeth, rearTeeth); }

  std::optional<CrosshairSpan> crosshairSpan() const override;
  std::optional<double> crosshairAt() const override;
  void moveCrosshair(double x) override;
  QString crosshairWords() const override;

  QSize sizeHint() const override;
  QSize minimumSizeHint() const override;

 signals:
  void cursorMoved();  ///< or what stands under it, or the legend, reads otherwise
  void pairChosen(int frontTeeth, int rearTeeth);

 protected:
  void fit() override;
  void paint(QPainter& painter) const override { painting().paint(painter); }
  void paintMoving(QPainter& painter) const override;
  QString pictureHeading() const override;
  QString pictureCaption() const override;

  void mouseMoveEvent(QMouseEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void leaveEvent(QEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;

 private:
  Pair start() const;
  void step(int fronts, int rears);
  void choose();
  PairPainting painting() const;

  PairBook book_;
  SharedPlan plan_;
  PairGrid grid_;
  std::optional<Pair> cursor_, pressed_;
};

}  // namespace layshaft::ui
