// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QToolButton>

#include "tests/ui/support.h"
#include "ui/document/planner.h"

namespace layshaft::test {

/// A drive line on a document, fed with plans as a window does it.
class DriveLineTest : public testing::Test {
 protected:
  explicit DriveLineTest(Profile profile = bike()) : document_(std::move(profile)) {
    QObject::connect(&planner_, &ui::Planner::planned, &line_,
                     [this](const SharedPlan& plan) { line_.show(plan, units_); });
    line_.show(planner_.shared(), units_);
    line_.resize(1280, 200);
    showActive(line_);
  }
  ~DriveLineTest() override { line_.hide(); }  // what is being typed is finished while all still stands

  void use(Profile profile) {
    document_.load(std::move(profile), QString());
    settle();
  }
  void showIn(ui::UnitSystem system) {
    units_ = ui::UnitsShown(system);
    line_.show(planner_.shared(), units_);
  }
  /// Lets a plan that waits for its frame through.
  void settle() { QTest::qWait(40); }

  template <class Box = ui::WholeBox>
  Box& box(const char* name) {
    return static_cast<Box&>(control<QAbstractSpinBox>(line_, QString::fromUtf8(name)));
  }
  ui::DecimalBox& decimal(const char* name) { return box<ui::DecimalBox>(name); }
  ui::DecimalBox& gear(int number) {
    return decimal(QStringLiteral("Gear %1 ratio").arg(number).toUtf8().constData());
  }
  ui::TyreField& tyreField() { return control<ui::TyreField>(line_, "Rear tyre"); }
  QToolButton& backButton(const char* station) {
    return control<QToolButton>(line_, QStringLiteral("%1 back to stock").arg(station));
  }
  QString message() { return control<QLabel>(line_, "Message").text(); }

  /// Moves the focus away as Tab does: what was typed counts as finished.
  void leave() {
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
    settle();
  }

  const layshaft::Setup& stock() const { return document_.profile().stock; }
  layshaft::Setup proposed() const { return proposedSetup(document_); }
  int steps() { return document_.undoStack().count(); }

  ui::Document document_;
  ui::Planner planner_{document_};
  ui::UnitsShown units_;
  ui::DriveLine line_{document_};
};

}  // namespace layshaft::test
