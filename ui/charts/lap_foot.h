// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QCoreApplication>
#include <QFont>
#include <QPainter>
#include <QPen>
#include <functional>
#include <vector>

#include "ui/charts/palette.h"
#include "ui/charts/steady_range.h"
#include "ui/charts/text_cache.h"
#include "ui/words/lap_book.h"

namespace layshaft::ui {

/// How high what stands below the plot of a lap is, px.
struct FootLayout {
  double names = 0.0, won = 0.0, gear = 0.0;  ///< corners, time won, the band of one setup's gears
  int setups = 0;
  double height() const { return names + won + gear * setups; }
};

/// What stands below the plot of a lap, over the same distance: corners by name, the time that is won
/// against stock, and the gears of each setup.
class LapFoot {
  Q_DECLARE_TR_FUNCTIONS(LapFoot)
 public:
  struct Place {
    QRectF area;                        ///< of the whole foot
    double left, right;                 ///< of the plot
    std::function<double(double)> xAt;  ///< of a distance in metres
    FootLayout layout;
    AxisRange won;
  };
  struct Look {
    const ChartPalette& colours;
    QFont font, boldFont;
    TextCache& texts;
    std::vector<QPen> pens;  ///< of the setups
  };

  LapFoot(const LapBook& book, Place place, Look look)
      : book_(book), place_(std::move(place)), look_(std::move(look)) {}

  void paint(QPainter& painter) const;
  static QString wonTitle();

 private:
  void paintCorners(QPainter& painter, double top) const;
  void paintWon(QPainter& painter, double top) const;
  void paintGears(QPainter& painter, double top, const LapOfSetup& lap, const QPen& pen) const;
  void text(QPainter& painter, const QRectF& area, Qt::Alignment alignment, const QString& text,
            const QColor& colour, bool bold = false) const;

  const LapBook& book_;
  Place place_;
  Look look_;
};

}  // namespace layshaft::ui
