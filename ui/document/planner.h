// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>
#include <QTimer>

#include "core/plan.h"
#include "ui/document/document.h"

namespace layshaft::ui {

/// Turns changes of the document into plans: the first change at once, a burst coalesced to one plan per
/// frame, so that a held arrow key stays smooth whatever a plan costs.
class Planner : public QObject {
  Q_OBJECT
 public:
  explicit Planner(const Document& document, QObject* parent = nullptr);

  const Plan& current() const { return plan_; }

 signals:
  void planned(const layshaft::Plan& plan);

 private:
  void onDocumentChanged();
  void compute();

  const Document& document_;
  Plan plan_;
  QTimer frame_;
  bool pending_ = false;
};

}  // namespace layshaft::ui
