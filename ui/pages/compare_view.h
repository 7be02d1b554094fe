// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QTableView>

#include "ui/pages/compare_model.h"

namespace layshaft::ui {

/// Shows a comparison: names stay where they are when the columns are scrolled, a band goes through under the
/// name of a group, the best of a row says so, and small figures tell the difference from stock.
class CompareView : public QTableView {
  Q_OBJECT
 public:
  explicit CompareView(CompareModel& model, QWidget* parent = nullptr);

 signals:
  void copyWanted();

 protected:
  bool event(QEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;

 private:
  void shapeAnew();
  void fitColumns();

  CompareModel& model_;
};

}  // namespace layshaft::ui
