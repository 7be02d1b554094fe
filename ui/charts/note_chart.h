// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/bike/profile.h"
#include "ui/charts/live_chart.h"

namespace layshaft::ui {

/// A track note as a point: what came of a final ratio.
struct NotePoint {
  double finalRatio;
  std::optional<double> lapTimeS;
  std::optional<int> rating;
  QString pair;
  QString day;
  QString place;
};

/// The notes that count and tell both their pair and what came of it, the newest first.
std::vector<NotePoint> notePoints(const Profile& profile);

/// What came of the setups that were ridden: lap time or rating over the final ratio, a dot per note. Where
/// stock and the proposal are is marked.
class NoteChart : public LiveChart {
  Q_OBJECT
 public:
  enum class Figure { LapTime, Rating };

  explicit NoteChart(QWidget* parent = nullptr);

  void show(std::vector<NotePoint> notes);
  void setFigure(Figure figure);
  Figure figure() const { return figure_; }
  /// Whether any note has the figure.
  bool has(Figure figure) const;
  void setRatios(double stock, double proposed);

 protected:
  void paintOver(QPainter& painter) override;
  void recolour() override {}
  std::vector<CrosshairRow> crosshairRows(double x) const override { return rowsAt(x, true); }
  std::vector<CrosshairRow> briefRows(double x) const override { return rowsAt(x, false); }
  QString crosshairTitle(double x) const override;
  QString inWords() const override;
  QStringList setupNames() const override;
  std::vector<QColor> setupColours() const override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  std::optional<double> value(const NotePoint& note) const;
  /// The notes at the ratio that is nearest; none where nothing was ridden.
  std::vector<const NotePoint*> nearest(double ratio) const;
  std::vector<CrosshairRow> rowsAt(double ratio, bool withPlace) const;
  void fitRanges();
  QString figureTitle() const;

  std::vector<NotePoint> notes_;
  Figure figure_ = Figure::LapTime;
  double stock_ = 0.0, proposed_ = 0.0;
};

}  // namespace layshaft::ui
