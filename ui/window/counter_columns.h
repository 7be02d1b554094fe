// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFrame>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <vector>

#include "core/plan.h"
#include "ui/charts/speed_bars.h"
#include "ui/words/units_shown.h"

class QGridLayout;

namespace layshaft::ui {

/// The screen of the counter view with up to three choices side by side: what each gains and costs, a picture
/// under it, and a button that takes it. What lies side by side is about the same thing.
class CounterColumns : public QScrollArea {
  Q_OBJECT
 public:
  struct Choice {
    QString name;  ///< of a pin, else empty
    SharedPlan plan;
    bool chosen = false;  ///< it is the proposal
  };

  explicit CounterColumns(QWidget* parent = nullptr);

  using QWidget::show;
  /// The focus stays in its column.
  void show(const std::vector<Choice>& choices, const UnitsShown& units);
  void takeFocus();

 signals:
  void taken(int choice);

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  struct Line {
    QLabel *mark, *words;
  };
  struct Column {
    QFrame* frame;
    QLabel *heading, *sentence;
    std::vector<Line> lines;
    SpeedBars* bars;
    QPushButton* button;
  };
  Column makeColumn(QGridLayout& grid, int place);
  void fill(Column& column, const Choice& choice, const UnitsShown& units, double mostMps);
  void setColumnVisible(Column& column, bool visible);
  void focusColumn(int place);
  int focusedColumn() const;
  void markFocused();

  std::vector<Column> columns_;
  QLabel *none_, *barsKey_, *cautions_;
  int shown_ = 0;
};

}  // namespace layshaft::ui
