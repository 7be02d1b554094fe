// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QBoxLayout>
#include <QLabel>
#include <QScrollArea>
#include <QStackedWidget>
#include <QTimer>
#include <QToolButton>
#include <vector>

#include "ui/charts/lap_chart.h"
#include "ui/charts/track_map.h"
#include "ui/document/background_lane.h"
#include "ui/pages/figures_table.h"
#include "ui/pages/lacking_panel.h"
#include "ui/pages/lap_view.h"

class QRadioButton;

namespace layshaft::ui {

/// A lap of the track that is ridden: speed, time won and gears along it, the map, a row for each corner,
/// and what wins and loses in words.
class OneLapView : public LapView {
  Q_OBJECT
 public:
  explicit OneLapView(BackgroundLane& lane, QWidget* parent = nullptr);

  QWidget* beside() override { return beside_; }

  LiveChart* chart() override { return chart_; }
  /// The chart; the map while the menu is open that was asked for on it.
  Picture* picture() override;
  std::vector<QStringList> numbers() const override;
  QString csv() const override;
  QVariantMap state() const override;
  void restore(const QVariantMap& state) override;

 protected:
  void build() override;
  bool eventFilter(QObject* watched, QEvent* event) override;
  void showPlan() override;

 private:
  QWidget* pictures();
  QWidget* mapBeside();
  void addColourings(QBoxLayout& row);
  void foldMap(bool folded);
  void fitChart();
  void showWhatLacks();
  void showLap();
  void showWords();
  void askForChange();

  LapBook book_;
  QStackedWidget* stack_ = nullptr;
  QWidget *lap_ = nullptr, *beside_ = nullptr;
  LackingPanel* lacking_ = nullptr;
  LapChart* chart_ = nullptr;
  TrackMap* map_ = nullptr;
  QToolButton* fold_ = nullptr;
  bool folded_ = false;
  QScrollArea* view_ = nullptr;
  std::vector<QRadioButton*> colourings_;
  FiguresTable* table_ = nullptr;
  QLabel* words_ = nullptr;
  Picture* asked_ = nullptr;
  bool bandKnown_ = false;  ///< of a lap of the same track
  // What a difference rests on takes longer than a step may.
  BackgroundWork changeWork_;
  QTimer untilChange_;
};

}  // namespace layshaft::ui
