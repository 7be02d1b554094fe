// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <vector>

#include "ui/charts/palette.h"
#include "ui/charts/readable_text.h"
#include "ui/charts/text_cache.h"
#include "ui/words/key_figures.h"
#include "ui/words/summary.h"

namespace layshaft::ui {

/// The strip that is always on screen: whether it fits and what the change does in plain words, what one must
/// know before acting on it, and the key figures as stock → proposed with the difference. Painted as one
/// piece. It has room for the usual texts, grows for longer ones and does not shrink again until the window
/// gets another width, so that what is below it stays where it is while values are turned.
class Readout : public QWidget, public ReadableText {
  Q_OBJECT
 public:
  explicit Readout(QWidget* parent = nullptr);

  void show(const Plan& plan, const UnitsShown& units);
  /// Which figures to show from the next plan on; empty: the usual ones.
  void pick(std::vector<Figure> figures) { wanted_ = std::move(figures); }

  /// In a low window there is room for the words that most changes need, and no more, until there are more.
  void setLow(bool low);

  QString text() const;  ///< all of it, for the clipboard and for screen readers
  QString readableText() const override { return text(); }
  QString headline() const;  ///< its first sentence, and before it that something does not fit

  /// Paints the readout into `area` in the given colours: for the screen and for paper.
  static void paint(QPainter& painter, const QRectF& area, const QFont& font, const ChartPalette& colours,
                    const Summary& summary, const std::vector<KeyFigure>& figures, TextCache& texts);
  /// The height that `paint` takes in that width.
  static double heightFor(const QFont& font, double width, const Summary& summary,
                          const std::vector<KeyFigure>& figures, TextCache& texts, bool low = false);

  QSize sizeHint() const override;
  QSize minimumSizeHint() const override;
  int heightForWidth(int width) const override;

 protected:
  void paintEvent(QPaintEvent* event) override;
  void changeEvent(QEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  int needed(int width) const;  ///< the height that what is to be said takes
  int leastWidth() const;
  void makeRoom();

  Summary summary_;
  std::vector<Figure> wanted_;
  std::vector<KeyFigure> figures_;
  mutable TextCache texts_;
  bool low_ = false;
  QSize room_;  ///< as high as it has become in that width
};

}  // namespace layshaft::ui
