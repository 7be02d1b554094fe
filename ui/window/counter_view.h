// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLabel>
#include <QPushButton>
#include <QStackedWidget>
#include <QWidget>
#include <memory>
#include <vector>

#include "core/study/offers.h"
#include "ui/document/session.h"
#include "ui/window/counter_columns.h"
#include "ui/window/counter_question.h"

namespace layshaft::ui {

class MainWindow;

/// A second window on a session, for the customer across the counter: full screen, large, one question at a
/// time. All that can be done here is to look, and to make one of the choices the proposal.
class CounterView : public QWidget {
  Q_OBJECT
 public:
  explicit CounterView(MainWindow& window);

  /// Shows it on another display than the window's if there is one. Once it is left it is gone, and the
  /// window is in front as it was.
  static void open(MainWindow& window);

 protected:
  void keyPressEvent(QKeyEvent* event) override;
  void closeEvent(QCloseEvent* event) override;

 private:
  QLayout* header();
  void turnTo(QWidget* screen);
  void answer(Wish wish);
  void compare();
  void back();
  void refresh();
  SharedPlan planOf(const PlanInput& input) const;
  void take(std::size_t choice);

  MainWindow& window_;
  std::shared_ptr<Session> session_;
  QPushButton* back_;
  QLabel *title_, *key_;
  QStackedWidget* screens_;
  CounterQuestion *first_, *which_;
  CounterColumns* columns_;
  Wish wish_ = Wish::FamiliarSteps;
  std::vector<Offer> offers_;
  std::vector<SharedPlan> plans_;  ///< of the offers in view
};

}  // namespace layshaft::ui
