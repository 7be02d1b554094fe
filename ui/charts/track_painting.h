// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QCoreApplication>
#include <QFontMetricsF>
#include <QPainter>
#include <QTransform>
#include <vector>

#include "ui/charts/label_places.h"
#include "ui/charts/palette.h"
#include "ui/words/lap_book.h"
#include "ui/words/units_shown.h"

namespace layshaft::ui {

/// What the line of a track tells.
enum class TrackColouring { Speed, Gear, Won };

/// A straight bit of the line of a track.
struct TrackPiece {
  QPointF from, to;  ///< m, y to the north
  double fromM, toM;
};

/// Long straights are several pieces: what they are coloured by changes along them.
std::vector<TrackPiece> trackPieces(const TrackLine& line);

/// Paints a track with the proposal's lap on it.
class TrackPainting {
  Q_DECLARE_TR_FUNCTIONS(TrackPainting)
 public:
  /// What is painted where; it outlives the painting.
  struct Scene {
    const LapBook& book;
    const UnitsShown& units;
    const ChartPalette& colours;
    TrackColouring colouring;
    const std::vector<TrackPiece>& pieces;
    const QTransform& toPixels;
    QSizeF size;
    QFont font;
  };

  explicit TrackPainting(const Scene& scene);

  void paint(QPainter& painter) const;

 private:
  QPen penOf(const TrackPiece& piece) const;
  QPen speedPen(double mps) const;
  QPen gearPen(int gear) const;
  QPen wonPen(double perMetre) const;
  double wonPerMetre(double distanceM) const;
  void paintStart(QPainter& painter) const;
  void paintNames(QPainter& painter) const;
  void paintTimes(QPainter& painter, LabelSpace& space) const;
  void paintGears(QPainter& painter, LabelSpace& space) const;
  void paintScale(QPainter& painter) const;
  void putNear(QPainter& painter, LabelSpace& space, double distanceM, const QString& text,
               const QColor& colour) const;
  QString legend() const;

  Scene scene_;
  QFontMetricsF metrics_;
  double slowestMps_ = 0.0, fastestMps_ = 0.0;
};

}  // namespace layshaft::ui
