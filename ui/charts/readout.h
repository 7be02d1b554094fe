// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <vector>

#include "ui/charts/palette.h"
#include "ui/charts/text_cache.h"
#include "ui/words/key_figures.h"
#include "ui/words/summary.h"

namespace layshaft::ui {

/// The strip that is always on screen: what the change does in plain words, and the key figures as
/// stock → proposed with the difference. Painted as one piece and of constant height, so that nothing below
/// it moves.
class Readout : public QWidget {
  Q_OBJECT
 public:
  explicit Readout(QWidget* parent = nullptr);

  void show(const Plan& plan, const UnitsShown& units);
  /// Which figures to show from the next plan on; empty: the usual ones.
  void pick(std::vector<Figure> figures) { wanted_ = std::move(figures); }

  QString text() const;  ///< all of it, for the clipboard and for screen readers

  /// Paints the readout into `area` in the given colours: for the screen and for paper.
  static void paint(QPainter& painter, const QRectF& area, const QFont& font, const ChartPalette& colours,
                    const Summary& summary, const std::vector<KeyFigure>& figures, TextCache& texts);
  static double heightFor(const QFont& font);

  QSize sizeHint() const override;
  QSize minimumSizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;
  void changeEvent(QEvent* event) override;

 private:
  Summary summary_;
  std::vector<Figure> wanted_;
  std::vector<KeyFigure> figures_;
  TextCache texts_;
};

}  // namespace layshaft::ui
