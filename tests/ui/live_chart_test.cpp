// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/live_chart.h"

#include <QSignalSpy>
#include <QTabWidget>

#include "tests/ui/support.h"
#include "ui/document/preferences.h"
#include "ui/pages/sawtooth_page.h"

namespace layshaft::test {
namespace {

using ui::LiveChart;

/// Crosshair and cruise marker of the sawtooth, by mouse and by key.
class LiveChartTest : public testing::Test, FreshSettings {
 protected:
  LiveChartTest() {
    ui::preferences::setUnits(ui::UnitsShown(ui::UnitSystem::Metric));
    window_ = std::make_unique<Window>(workedExample());
    chart_ = (*window_)->currentChart();
    QObject::connect(chart_, &LiveChart::laidOut, chart_, [this](const QRectF& area) { plot_ = area; });
    (*window_)->resize(1280, 721);
    QTest::qWait(50);
  }

  const Profile& profile() const { return window_->profile(); }
  /// Where a speed, km/h, stands on the chart.
  QPoint placeOf(double kmh) const {
    const auto range = chart_->xRange();
    return QPointF(plot_.left() + (kmh - range.low) / (range.high - range.low) * plot_.width(),
                   plot_.center().y())
        .toPoint();
  }
  void mouse(QEvent::Type type, const QPoint& at, Qt::MouseButton button, Qt::MouseButtons buttons) {
    QMouseEvent event(type, at, chart_->viewport()->mapToGlobal(at), button, buttons, Qt::NoModifier);
    QApplication::sendEvent(chart_->viewport(), &event);
  }
  void moveTo(double kmh) { mouse(QEvent::MouseMove, placeOf(kmh), Qt::NoButton, Qt::NoButton); }
  void drag(double from, const std::vector<double>& along) {
    mouse(QEvent::MouseButtonPress, placeOf(from), Qt::LeftButton, Qt::LeftButton);
    for (const double kmh : along) {
      mouse(QEvent::MouseMove, placeOf(kmh), Qt::NoButton, Qt::LeftButton);
      QTest::qWait(5);
    }
    mouse(QEvent::MouseButtonRelease, placeOf(along.back()), Qt::LeftButton, Qt::NoButton);
  }
  double tolerance() const { return chart_->xRange().high / plot_.width(); }  ///< a pixel, km/h

  std::unique_ptr<Window> window_;
  LiveChart* chart_ = nullptr;
  QRectF plot_;
};

TEST_F(LiveChartTest, TheCrosshairFollowsThePointerAndGoesWithIt) {
  EXPECT_EQ(chart_->crosshairX(), std::nullopt);
  moveTo(200);
  EXPECT_NEAR(chart_->crosshairX().value_or(0), 200, tolerance());
  moveTo(80);
  EXPECT_NEAR(chart_->crosshairX().value_or(0), 80, tolerance());
  mouse(QEvent::MouseMove, QPoint(2, 100), Qt::NoButton, Qt::NoButton);
  EXPECT_EQ(chart_->crosshairX(), std::nullopt) << "left of the axis there is nothing to read";
  moveTo(80);
  QEvent leave(QEvent::Leave);
  QApplication::sendEvent(chart_, &leave);
  EXPECT_EQ(chart_->crosshairX(), std::nullopt);
}

TEST_F(LiveChartTest, TheCrosshairIsMovedByKeys) {
  chart_->setFocus();
  QTest::keyClick(chart_, Qt::Key_Home);
  EXPECT_EQ(chart_->crosshairX(), chart_->xRange().low);
  QTest::keyClick(chart_, Qt::Key_Right);
  EXPECT_NEAR(chart_->crosshairX().value_or(0), chart_->xRange().step / 10, 1e-9);
  QTest::keyClick(chart_, Qt::Key_Left);
  QTest::keyClick(chart_, Qt::Key_Left);
  EXPECT_EQ(chart_->crosshairX(), chart_->xRange().low) << "it stops at the end";
  QTest::keyClick(chart_, Qt::Key_End);
  EXPECT_EQ(chart_->crosshairX(), chart_->xRange().high);
  QTest::keyClick(chart_, Qt::Key_Escape);
  EXPECT_EQ(chart_->crosshairX(), std::nullopt);
}

TEST_F(LiveChartTest, TheCrosshairStaysWhileAValueIsTurned) {
  moveTo(200);
  const auto before = chart_->crosshairX();
  QTest::keyClick(&control<QAbstractSpinBox>(**window_, "Rear teeth"), Qt::Key_Up);
  QTest::qWait(30);
  EXPECT_EQ(chart_->crosshairX(), before);
}

TEST_F(LiveChartTest, DraggingTheCruiseMarkerIsOneUndoStep) {
  drag(110, {115, 120, 130, 140});
  EXPECT_NEAR(profile().cruiseSpeedKmh.value_or(0), 140, 1 + tolerance());
  EXPECT_EQ((*window_)->document().undoStack().count(), 1);
  EXPECT_TRUE((*window_)->document().undoStack().undoText().startsWith("cruise speed 110 → 1"));
  (*window_)->document().undoStack().undo();
  EXPECT_EQ(profile().cruiseSpeedKmh, 110);
}

TEST_F(LiveChartTest, EachDragOfTheMarkerIsAStepOfItsOwn) {
  drag(110, {115, 130});
  QTest::qWait(100);  // the marker follows in a later frame
  drag(profile().cruiseSpeedKmh.value_or(0), {140, 150});
  EXPECT_EQ((*window_)->document().undoStack().count(), 2);
  (*window_)->document().undoStack().undo();
  EXPECT_NEAR(profile().cruiseSpeedKmh.value_or(0), 130, 1 + tolerance());
}

TEST_F(LiveChartTest, DraggingElsewhereEditsNothing) {
  drag(200, {150, 110, 90});
  EXPECT_EQ(profile().cruiseSpeedKmh, 110);
  EXPECT_EQ((*window_)->document().undoStack().count(), 0);
}

TEST_F(LiveChartTest, TheMarkerStaysInsideWhatIsAllowed) {
  drag(110, {60, 20, -50});
  EXPECT_GE(profile().cruiseSpeedKmh.value_or(0), 5);
  EXPECT_EQ(conflictIn(profile()), std::nullopt);
  EXPECT_TRUE(same(profileFrom(writeProfile(profile())), profile()));
}

TEST_F(LiveChartTest, TheTeethSwitchStartsTheAxisBelowTheLowestShift) {
  auto* page = (*window_)->findChild<ui::SawtoothPage*>();
  QAbstractButton* teeth = nullptr;
  for (auto* button : page->findChildren<QAbstractButton*>())
    if (button->text().remove('&').contains("Teeth")) teeth = button;
  ASSERT_TRUE(teeth);
  const auto whole = chart_->yRange();
  EXPECT_EQ(whole.low, 0);
  teeth->click();
  double lowest = 1e9;
  const Plan shown = plan(profile());
  for (const auto* setup : {&shown.stock, &shown.proposed})
    for (const GearFigures& gear : setup->gearing.gears)
      lowest = std::min(lowest, gear.rpmAfterShift.value_or(1e9) / 1000);
  EXPECT_GT(chart_->yRange().low, lowest * 0.75);
  EXPECT_LT(chart_->yRange().low, lowest);
  teeth->click();
  EXPECT_EQ(chart_->yRange(), whole);
}

TEST_F(LiveChartTest, TheAxesAreAsBeforeAfterATrial) {
  auto& rear = control<QAbstractSpinBox>(**window_, "Rear teeth");
  auto* tabs = (*window_)->findChild<QTabWidget*>();
  int moved = 0;
  for (const char* page : {"Sawtooth", "Pull", "Acceleration"})
    for (const auto way : {Qt::Key_Up, Qt::Key_Down}) {
      for (int i = 0; i < tabs->count(); ++i)
        if (tabs->tabText(i) == page) tabs->setCurrentIndex(i);
      QTest::qWait(50);
      const LiveChart& chart = *(*window_)->currentChart();
      const auto x = chart.xRange(), y = chart.yRange();
      constexpr int kFar = 14;
      for (int i = 0; i < kFar; ++i) {
        QTest::keyClick(&rear, way);
        QTest::qWait(20);
      }
      const auto farX = chart.xRange(), farY = chart.yRange();
      moved += farX == x && farY == y ? 0 : 1;
      for (int i = 0; i < kFar; ++i) {
        QTest::keyClick(&rear, way == Qt::Key_Up ? Qt::Key_Down : Qt::Key_Up);
        QTest::qWait(20);
      }
      EXPECT_TRUE(soon([&] { return chart.xRange() == x && chart.yRange() == y; }, 3000))
          << page << ", turned " << (way == Qt::Key_Up ? "up" : "down");
    }
  EXPECT_GE(moved, 2) << "far enough that the axes must move";
}

TEST_F(LiveChartTest, TheLinesAreTheSawOfEachSetup) {
  const Plan shown = plan(profile());
  const auto& lines = chart_->lines();
  for (const auto& [line, setup] :
       {std::pair{lines.front(), &shown.stock}, {lines.back(), &shown.proposed}}) {
    const auto points = line->points();
    ASSERT_EQ(points.size(), 12) << "up and down in each of six gears";
    for (std::size_t g = 0; g < 6; ++g) {
      const GearFigures& gear = setup->gearing.gears[g];
      const QPointF top = points[static_cast<qsizetype>(2 * g + 1)];
      EXPECT_NEAR(top.x(), gear.shiftSpeedMps.value_or(*gear.speedAtRevLimitMps) * 3.6, 1e-6);
      EXPECT_NEAR(top.y(), gear.shiftRpm.value_or(15200) / 1000, 1e-9);
      if (g > 0) {
        const QPointF foot = points[static_cast<qsizetype>(2 * g)];
        EXPECT_NEAR(foot.x(), points[static_cast<qsizetype>(2 * g - 1)].x(), 1e-6) << "the drop is upright";
        EXPECT_NEAR(foot.y(), *setup->gearing.gears[g - 1].rpmAfterShift / 1000, 1e-9);
      }
    }
  }
}

}  // namespace
}  // namespace layshaft::test
