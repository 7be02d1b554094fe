// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QTransform>
#include <QWidget>
#include <vector>

#include "core/track/track_line.h"
#include "ui/charts/label_places.h"
#include "ui/charts/palette.h"
#include "ui/charts/readable_picture.h"
#include "ui/words/units_shown.h"

namespace layshaft::ui {

/// A place of a track with a name, m from its start.
struct NamedPlace {
  double distanceM = 0.0;
  QString name;
};

/// The line of a track as it grows: to scale, with its start, the names of its corners and, where it ought to
/// close and does not, the gap.
class TrackPreview : public QWidget, public ReadablePicture {
  Q_OBJECT
 public:
  explicit TrackPreview(QWidget* parent = nullptr);

  using QWidget::show;
  /// `words` say what is seen.
  void show(const TrackLine& line, const std::vector<NamedPlace>& names, const QString& words,
            const UnitsShown& units);
  /// What stands there while there is no line.
  void setEmptyWords(const QString& words) { emptyWords_ = words; }
  const TrackLine& line() const { return line_; }

  QSize sizeHint() const override { return {300, 220}; }
  QSize minimumSizeHint() const override { return {160, 120}; }

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  QTransform toPixels() const;
  void paintStart(QPainter& painter, const ChartPalette& colours) const;
  void paintNames(QPainter& painter, const ChartPalette& colours) const;
  void paintScale(QPainter& painter, const ChartPalette& colours) const;

  TrackLine line_;
  std::vector<NamedPlace> names_;
  QString emptyWords_;
  UnitsShown units_;
};

/// The names of a track's bends, each in its middle.
std::vector<NamedPlace> namedPlaces(const Track& track, const TrackLine& line);

}  // namespace layshaft::ui
