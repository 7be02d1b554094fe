// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/document/planner.h"

namespace layshaft::ui {

namespace {
constexpr int kFrameMs = 16;
}

Planner::Planner(const Document& document, QObject* parent)
    : QObject(parent), document_(document), plan_(std::make_shared<const Plan>(plan(document.profile()))) {
  frame_.setInterval(kFrameMs);
  frame_.setSingleShot(true);
  frame_.setTimerType(Qt::PreciseTimer);
  connect(&document_, &Document::changed, this, &Planner::onDocumentChanged);
  connect(&frame_, &QTimer::timeout, this, [this] {
    if (pending_) compute();
  });
}

void Planner::onDocumentChanged() {
  // Never restart a running frame: that would starve the charts while a key is held.
  if (frame_.isActive())
    pending_ = true;
  else
    compute();
}

void Planner::compute() {
  pending_ = false;
  frame_.start();
  PlanInput input = planInput(document_.profile());
  if (!(input == plan_->input)) {
    plan_ = std::make_shared<const Plan>(plan(std::move(input), plan_.get()));
    emit planned(plan_);
  }
  emit settled();
}

}  // namespace layshaft::ui
