// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>
#include <QTimer>

#include "core/plan.h"
#include "ui/document/document.h"

namespace layshaft::ui {

/// Turns changes of the document into plans: the first change at once, a burst coalesced to one plan per
/// frame, so that a held arrow key stays smooth whatever a plan costs. What no plan depends on costs none.
class Planner : public QObject {
  Q_OBJECT
 public:
  explicit Planner(const Document& document, QObject* parent = nullptr);

  const Plan& current() const { return *plan_; }
  const SharedPlan& shared() const { return plan_; }

 signals:
  /// There is another plan.
  void planned(const layshaft::SharedPlan& plan);
  /// After each change of the document, or burst of them, whether or not the plan is another.
  void settled();

 private:
  void onDocumentChanged();
  void compute();

  const Document& document_;
  SharedPlan plan_;
  QTimer frame_;
  bool pending_ = false;
};

}  // namespace layshaft::ui
