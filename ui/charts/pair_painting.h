// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QCoreApplication>
#include <QFontMetricsF>
#include <QPainter>
#include <optional>
#include <utility>
#include <vector>

#include "ui/charts/palette.h"
#include "ui/words/pair_book.h"

namespace layshaft::ui {

/// Where the pairs of a map are, px: front teeth down, rear teeth across.
struct PairGrid {
  LadderRange range{0, -1, 0, -1};
  QRectF cells;
  QSizeF cell;

  /// As large as `size` allows: names of rows and columns, and of lines, stand around it.
  static PairGrid in(const LadderRange& range, const QSizeF& size, const QFontMetricsF& metrics);
  /// How high a map is with cells of the least height, and with ones that need not be higher.
  static double leastHeight(const LadderRange& range, const QFontMetricsF& metrics);
  static double mostHeight(const LadderRange& range, const QFontMetricsF& metrics);

  bool empty() const { return range.mostFront < range.fewestFront || range.mostRear < range.fewestRear; }
  /// The middle of a pair's place; between pairs for teeth that are not whole.
  QPointF at(double front, double rear) const;
  QRectF cellOf(int front, int rear) const;
  std::optional<std::pair<int, int>> pairAt(const QPointF& position) const;
};

/// How the seconds against stock are written, by the room there is: to a hundredth or a tenth, as whole
/// tenths without a unit, or not at all.
enum class PairLabels { Hundredths, Tenths, WholeTenths, None };

/// Paints the laps of all pairs as a grid of numbers with shading.
class PairPainting {
  Q_DECLARE_TR_FUNCTIONS(PairPainting)
 public:
  /// What is painted where; it outlives the painting.
  struct Scene {
    const PairBook& book;
    const PairGrid& grid;
    const ChartPalette& colours;
    QSizeF size;
    QFont font;
  };

  explicit PairPainting(const Scene& scene);

  void paint(QPainter& painter) const;
  PairLabels labels() const { return labels_; }
  /// What a pair's cell says; empty without room.
  QString labelOf(const LapRow& row) const;
  QColor groundOf(const RankedPair& pair) const;
  QColor inkOn(const RankedPair& pair) const;  ///< of its label
  static QString frontTitle();                 ///< above the teeth of the rows
  static QString rearTitle();                  ///< beside the teeth of the columns

 private:
  QString labelAs(const LapRow& row, PairLabels labels) const;
  PairLabels labelsWithRoom() const;
  void paintTeeth(QPainter& painter) const;
  void paintCell(QPainter& painter, int front, int rear) const;
  void hatch(QPainter& painter, const QRectF& cell, bool crossed) const;
  void paintRatios(QPainter& painter) const;
  bool paintRatio(QPainter& painter, double ratio, const QPen& pen, const QString& name,
                  std::vector<QRectF>& names) const;
  QRectF placeOfName(double ratio, const QSizeF& name) const;
  double ratioStep() const;
  void paintLabel(QPainter& painter, const RankedPair& pair) const;
  void paintTies(QPainter& painter) const;
  void paintMarks(QPainter& painter) const;

  Scene scene_;
  QFontMetricsF metrics_;
  double quickestS_ = 0.0, slowestS_ = 0.0;
  PairLabels labels_;
};

}  // namespace layshaft::ui
