// SPDX-License-Identifier: GPL-3.0-or-later
#include <QElapsedTimer>
#include <QSignalSpy>

#include "tests/ui/support.h"
#include "ui/document/preferences.h"

namespace layshaft::test {
namespace {

using ui::MainWindow;

constexpr int kFrameMs = 16;

/// What is on screen follows what is turned.
class MainWindowLive : public testing::Test, FreshSettings {
 protected:
  MainWindowLive() {
    ui::preferences::setUnits(ui::UnitsShown(ui::UnitSystem::Metric));
    window_ = std::make_unique<Window>(workedExample());
    QTest::qWait(50);
  }

  QAbstractSpinBox& box(const char* name) {
    return control<QAbstractSpinBox>(**window_, QString::fromUtf8(name));
  }
  QPointF lastPointOfProposal() { return (*window_)->currentChart()->lines().back()->points().back(); }
  QPointF lastPointOf(const SetupPlan& setup) {
    const double mps = *setup.gearing.gears.back().speedAtRevLimitMps;
    return {mps * 3.6, *setup.gearing.revLimitRpm / 1000};
  }
  bool chartShowsTheDocument() {
    const QPointF shown = lastPointOfProposal();
    const QPointF wanted = lastPointOf(plan(window_->profile()).proposed);
    return std::abs(shown.x() - wanted.x()) < 1e-6 && std::abs(shown.y() - wanted.y()) < 1e-6;
  }

  std::unique_ptr<Window> window_;
};

TEST_F(MainWindowLive, AStepOfAnySpinBoxIsOnTheChartWithinAFrame) {
  for (auto* field : (*window_)->driveLine().findChildren<QAbstractSpinBox*>()) {
    if (!field->isVisible() || !field->isEnabled()) continue;
    const Profile before = window_->profile();
    field->setFocus();
    QTest::keyClick(field, Qt::Key_Down);
    EXPECT_NE(window_->profile(), before) << field->accessibleName().toStdString();
    QTest::qWait(kFrameMs + 4);
    EXPECT_TRUE(chartShowsTheDocument()) << field->accessibleName().toStdString();
  }
}

TEST_F(MainWindowLive, AHeldArrowKeyMovesTheChartWhileItIsHeld) {
  auto& rear = box("Rear teeth");
  rear.setFocus();
  QSignalSpy planned(&(*window_)->planner(), &ui::Planner::planned);
  QSet<double> seen;
  // A key repeats about thirty times a second.
  for (int i = 0; i < 15; ++i) {
    QKeyEvent press(QEvent::KeyPress, Qt::Key_Up, Qt::NoModifier, QString(), i > 0);
    QApplication::sendEvent(&rear, &press);
    QTest::qWait(33);
    seen.insert(lastPointOfProposal().x());
  }
  QKeyEvent release(QEvent::KeyRelease, Qt::Key_Up, Qt::NoModifier);
  QApplication::sendEvent(&rear, &release);
  EXPECT_GE(seen.size(), 5) << "the chart moved with the key, not after it";
  EXPECT_EQ((*window_)->document().undoStack().count(), 1);
  QTest::qWait(kFrameMs + 4);
  EXPECT_TRUE(chartShowsTheDocument());
}

TEST_F(MainWindowLive, ABurstOfStepsCostsTwoPlans) {
  auto& rear = box("Rear teeth");
  rear.setFocus();
  QSignalSpy planned(&(*window_)->planner(), &ui::Planner::planned);
  for (int i = 0; i < 20; ++i) dynamic_cast<QSpinBox&>(rear).stepUp();
  QTest::qWait(60);
  EXPECT_LE(planned.count(), 3) << "twenty steps take at most a frame or two";
  EXPECT_TRUE(chartShowsTheDocument());
}

TEST_F(MainWindowLive, TheReadoutFollows) {
  const QString before = (*window_)->readout().text();
  box("Rear teeth").setFocus();
  QTest::keyClick(&box("Rear teeth"), Qt::Key_Up);
  QTest::qWait(kFrameMs + 4);
  EXPECT_NE((*window_)->readout().text(), before);
  EXPECT_EQ((*window_)->readout().readableText(), (*window_)->readout().text());
  EXPECT_TRUE((*window_)->readout().text().contains("rear 43 → 44"));
}

TEST_F(MainWindowLive, UndoAndRedoKeysWorkWhileASpinBoxHasTheFocus) {
  auto& rear = box("Rear teeth");
  rear.setFocus();
  QTest::keyClick(&rear, Qt::Key_Up);
  QTest::keyClick(&rear, Qt::Key_Up);
  QTest::qWait(kFrameMs * 2);
  QTest::keyClick(&rear, Qt::Key_Z, Qt::ControlModifier);
  EXPECT_EQ(proposedSetup((*window_)->document()).rearTeeth.count(), 43);
  QTest::qWait(kFrameMs * 2);
  QTest::keyClick(&rear, Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
  EXPECT_EQ(proposedSetup((*window_)->document()).rearTeeth.count(), 45);
}

TEST_F(MainWindowLive, TabLeadsThroughTheWholeWindowAndRoundAgain) {
  auto& start = box("Rear teeth");
  start.setFocus();
  bool chart = false;
  int presses = 0;
  do {
    QWidget* before = QApplication::focusWidget();
    ASSERT_NE(before, nullptr);
    QTest::keyClick(before, Qt::Key_Tab);
    ASSERT_NE(QApplication::focusWidget(), before)
        << "stuck after " << presses << " on " << before->metaObject()->className() << " "
        << before->accessibleName().toStdString();
    chart = chart || QApplication::focusWidget() == (*window_)->currentChart();
  } while (QApplication::focusWidget() != &start && ++presses < 100);
  EXPECT_LT(presses, 100);
  EXPECT_TRUE(chart) << "the chart is reached and left by keyboard";
}

TEST_F(MainWindowLive, TheFirstUndoTakesBackAHalfTypedTyreAndNothingElse) {
  QTest::keyClick(&box("Rear teeth"), Qt::Key_Up);
  auto& tyre = control<ui::TyreField>(**window_, "Rear tyre");
  typeInto(tyre, "120/70");
  QTest::keyClick(&tyre, Qt::Key_Z, Qt::ControlModifier);
  EXPECT_EQ(tyre.text(), "180/55ZR17");
  EXPECT_EQ(proposedSetup((*window_)->document()).rearTeeth.count(), 44);
  typeInto(tyre, "120/70");
  QTest::keyClick(&tyre, Qt::Key_Escape);
  EXPECT_EQ(tyre.text(), "180/55ZR17");
  QTest::keyClick(&tyre, Qt::Key_Z, Qt::ControlModifier);
  EXPECT_EQ(proposedSetup((*window_)->document()).rearTeeth.count(), 43);
}

TEST_F(MainWindowLive, TheFirstUndoTakesBackAHalfTypedNumberAndNothingElse) {
  const auto teeth = [&] { return proposedSetup((*window_)->document()).rearTeeth.count(); };
  auto& rear = box("Rear teeth");
  QTest::keyClick(&rear, Qt::Key_Up);
  typeInto(rear, "4");
  ASSERT_EQ(teeth(), 44) << "no number of teeth yet";
  QTest::keyClick(&rear, Qt::Key_Z, Qt::ControlModifier);
  EXPECT_EQ(rear.text(), "44");
  EXPECT_EQ(teeth(), 44);
  QTest::keyClick(&rear, Qt::Key_Z, Qt::ControlModifier);
  EXPECT_EQ(teeth(), 43);
  // Written otherwise than shown it is the same number, and nothing is half typed.
  auto& limit = box("Rev limit");
  const double before = *(*window_)->document().profile().bike.engine.revLimitRpm;
  typeInto(limit, "13100");
  QTest::keyClick(&limit, Qt::Key_Z, Qt::ControlModifier);
  EXPECT_EQ((*window_)->document().profile().bike.engine.revLimitRpm, before);
}

TEST_F(MainWindowLive, TheSwitchKeyOfTheDriveLineWorksWhileAFieldHasTheFocus) {
  for (const char* name : {"Rear teeth", "Gear 1 ratio"}) {
    box(name).setFocus();
    QTest::keyClick(&box(name), Qt::Key_E, Qt::ControlModifier);
    EXPECT_EQ((*window_)->driveLine().side(), ui::Side::Stock) << name;
    QTest::keyClick(&box(name), Qt::Key_E, Qt::ControlModifier);
    EXPECT_EQ((*window_)->driveLine().side(), ui::Side::Proposed) << name;
  }
}

TEST_F(MainWindowLive, UndoKeyTakesBackATypedNumber) {
  auto& rear = box("Rear teeth");
  typeInto(rear, "47");
  QTest::qWait(kFrameMs * 2);
  QTest::keyClick(&rear, Qt::Key_Z, Qt::ControlModifier);
  QTest::qWait(kFrameMs * 2);
  EXPECT_EQ(proposedSetup((*window_)->document()).rearTeeth.count(), 43);
  EXPECT_EQ(dynamic_cast<QSpinBox&>(rear).value(), 43);
}

TEST_F(MainWindowLive, TheUndoActionNamesTheEdit) {
  QTest::keyClick(&box("Rear teeth"), Qt::Key_Up);
  QStringList texts;
  for (auto* action : (*window_)->findChildren<QAction*>()) texts << action->text();
  EXPECT_THAT(texts, testing::Contains(QString("&Undo proposed rear teeth 43 → 44")));
}

TEST_F(MainWindowLive, AxesStayWhileAValueIsTurnedALittle) {
  const auto x = (*window_)->currentChart()->xRange(), y = (*window_)->currentChart()->yRange();
  auto& rear = box("Rear teeth");
  rear.setFocus();
  for (const auto key : {Qt::Key_Up, Qt::Key_Up, Qt::Key_Down, Qt::Key_Down, Qt::Key_Up}) {
    QTest::keyClick(&rear, key);
    QTest::qWait(kFrameMs + 4);
    EXPECT_EQ((*window_)->currentChart()->xRange(), x);
    EXPECT_EQ((*window_)->currentChart()->yRange(), y);
  }
}

TEST_F(MainWindowLive, GearsAreAddedAndRemovedFromTheMenu) {
  const auto trigger = [&](const QString& text) {
    for (auto* action : (*window_)->findChildren<QAction*>())
      if (action->text().remove('&') == text) action->trigger();
    QTest::qWait(kFrameMs + 4);
  };
  trigger("Add a Gear");
  EXPECT_EQ(proposedSetup((*window_)->document()).gearRatios.count(), 7u);
  EXPECT_NO_THROW(box("Gear 7 ratio"));
  EXPECT_TRUE(chartShowsTheDocument());
  trigger("Remove the Top Gear");
  trigger("Remove the Top Gear");
  EXPECT_EQ(proposedSetup((*window_)->document()).gearRatios.count(), 5u);
  EXPECT_TRUE(chartShowsTheDocument());
}

TEST_F(MainWindowLive, FoldingTheBikeDownToOneGearHolds) {
  for (int i = 0; i < 8; ++i)
    for (auto* action : (*window_)->findChildren<QAction*>())
      if (action->text().remove('&') == "Remove the Top Gear") {
        EXPECT_EQ(action->isEnabled(), i < 5) << "one gear is the least";
        action->trigger();
      }
  QTest::qWait(kFrameMs + 4);
  EXPECT_EQ(proposedSetup((*window_)->document()).gearRatios.count(), 1u);
  EXPECT_TRUE(soon([&] { return chartShowsTheDocument(); }));
}

}  // namespace
}  // namespace layshaft::test
