// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "ui/charts/label_places.h"
#include "ui/charts/live_chart.h"
#include "ui/words/units_shown.h"
#include "ui/words/wear_book.h"

namespace layshaft::ui {

/// Elongation over use: the measurements, the line through them up to the limit, when it gets there with the
/// interval of nine times in ten as a band, and for comparison how long chains last by use.
class WearTrend : public LiveChart {
  Q_OBJECT
 public:
  explicit WearTrend(QWidget* parent = nullptr);

  using QWidget::show;
  void show(const WearBook& book, const UnitsShown& units);

  /// Narrower than a chart that is alone on its page.
  QSize minimumSizeHint() const override { return {260, LiveChart::minimumSizeHint().height()}; }

 protected:
  void paintOver(QPainter& painter) override;
  void recolour() override;
  std::vector<CrosshairRow> crosshairRows(double x) const override;
  QString crosshairTitle(double x) const override;
  QString inWords() const override;
  QStringList setupNames() const override { return {tr("Elongation")}; }
  std::vector<QColor> setupColours() const override { return {colours().proposed}; }
  QString pictureHeading() const override;
  QString pictureCaption() const override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  /// How long chains last by use, in use of this bike.
  double usualEnd() const;
  double shownAt(double use) const;
  void refresh();
  void paintBand(QPainter& painter) const;
  void paintUsual(QPainter& painter, LabelSpace& space) const;
  void paintPoints(QPainter& painter) const;
  void paintWords(QPainter& painter, LabelSpace& space, const QString& text, const QColor& colour,
                  const std::vector<QPointF>& corners) const;

  std::optional<WearBook> book_;
  UnitsShown units_;
  QLineSeries *limit_, *line_;
};

}  // namespace layshaft::ui
