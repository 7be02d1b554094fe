// SPDX-License-Identifier: GPL-3.0-or-later
#include <QMenuBar>
#include <QTableWidget>

#include "tests/ui/support.h"
#include "ui/charts/appearance.h"

namespace layshaft::test {
namespace {

using ui::MainWindow;

/// Units, light and dark, and what each window shows of them.
class MainWindowViews : public testing::Test, FreshSettings {
 protected:
  MainWindowViews() { QTest::qWait(30); }
  ~MainWindowViews() override { ui::applyAppearance(ui::Appearance::Desktop); }
  QAction& action(MainWindow& window, const QString& start) {
    for (auto* candidate : window.findChildren<QAction*>())
      if (candidate->text().remove('&').startsWith(start)) return *candidate;
    throw std::runtime_error("no action " + start.toStdString());
  }
  void choose(const QString& start) {
    action(*window_, start).trigger();
    QTest::qWait(30);
  }
  double fastest(MainWindow& window) { return window.currentChart()->lines().back()->points().back().x(); }
  QColor proposalColour(MainWindow& window) { return window.currentChart()->lines().back()->pen().color(); }

  Window window_{workedExample()};
};

TEST_F(MainWindowViews, StartsWithTheUnitsOfTheRegion) {
  EXPECT_TRUE(window_->readout().text().contains("mph")) << "this desktop is British";
  EXPECT_TRUE(window_->readout().text().contains(" N")) << "mixed: all but speeds metric";
}

TEST_F(MainWindowViews, SwitchesUnitsEverywhereAndKeepsTheBike) {
  const Profile before = window_.profile();
  choose("Metric");
  const double kmh = fastest(*window_);
  EXPECT_TRUE(window_->readout().text().contains("km/h"));
  choose("Imperial");
  EXPECT_NEAR(fastest(*window_), kmh / 1.609344, 1e-6);
  EXPECT_TRUE(window_->readout().text().contains("mph"));
  EXPECT_FALSE(window_->readout().text().contains("km/h"));
  EXPECT_TRUE(same(window_.profile(), before));
  EXPECT_FALSE(window_->isWindowModified());
}

TEST_F(MainWindowViews, AllWindowsShowTheSameUnitsAndTheirMenusSaySo) {
  Window second(sampleBike("enduro-250"));
  choose("Imperial");
  EXPECT_TRUE(second->readout().text().contains("mph"));
  EXPECT_TRUE(action(*second, "Imperial").isChecked());
  EXPECT_FALSE(action(*second, "Mixed").isChecked());
}

TEST_F(MainWindowViews, DarkAndLightRecolourTheChart) {
  choose("Light");
  EXPECT_EQ(proposalColour(*window_), QColor(0x00, 0x72, 0xb2));
  EXPECT_FALSE(window_->currentChart()->colours().dark);
  choose("Dark");
  EXPECT_EQ(proposalColour(*window_), QColor(0x56, 0xb4, 0xe9));
  EXPECT_TRUE(window_->currentChart()->colours().dark);
  EXPECT_LT(window_->currentChart()->backgroundBrush().color().lightness(), 80);
  choose("Follow Desktop");
  EXPECT_FALSE(window_->currentChart()->colours().dark);
}

TEST_F(MainWindowViews, StockIsDashedAndTheProposalSolid) {
  const auto& lines = window_->currentChart()->lines();
  EXPECT_NE(lines.front()->pen().style(), Qt::SolidLine);
  EXPECT_EQ(lines.back()->pen().style(), Qt::SolidLine);
  EXPECT_NE(lines.front()->pen().color(), lines.back()->pen().color());
}

TEST_F(MainWindowViews, TheNumbersOfTheChartCanBeReadAsATable) {
  choose("Show Data as a Table");
  auto* table = &control<QTableWidget>(*window_, "Chart Data");
  EXPECT_EQ(table->rowCount(), 6);
  const QString before = table->item(5, 4)->text();
  QTest::keyClick(&control<QAbstractSpinBox>(*window_, "Rear teeth"), Qt::Key_Up);
  QTest::qWait(30);
  EXPECT_NE(table->item(5, 4)->text(), before) << "it is live too";
}

TEST_F(MainWindowViews, TheReadoutIsCopied) {
  choose("Copy Readout");
  EXPECT_EQ(QApplication::clipboard()->text(), window_->readout().text());
  EXPECT_TRUE(QApplication::clipboard()->text().startsWith("Shorter (geared down) by 6.7 %"));
  EXPECT_EQ(control<QLabel>(*window_, "Message").text(), "Copied the readout.");
}

TEST_F(MainWindowViews, HintsAreDismissedForEver) {
  QPushButton* gotIt = nullptr;
  for (auto* button : window_->findChildren<QPushButton*>())
    if (button->text() == "Got It") gotIt = button;
  ASSERT_TRUE(gotIt);
  gotIt->click();
  EXPECT_FALSE(gotIt->isVisible());
  Window next(bike());
  for (auto* button : next->findChildren<QPushButton*>()) EXPECT_NE(button->text(), "Got It");
}

TEST_F(MainWindowViews, NothingNeedsMoreThanTheSmallestScreen) {
  EXPECT_LE(window_->minimumSizeHint().width(), 1280);
  EXPECT_LE(window_->minimumSizeHint().height(), 720);
}

/// However much there is to say, the words end above the figures: the readout is as high as they need.
TEST(ReadoutRoom, GrowsWithItsWordsAndKeepsItsHeightThen) {
  FreshSettings fresh;
  Window window(sampleBike("club-600"));
  const int usual = window->readout().height();
  EXPECT_EQ(window->readout().heightForWidth(1280), usual);
  window->document().edit({.field = "all", .title = "all", .shown = {}}, [](Profile& p) {
    p.proposed.rearTyre = TyreSize::parse("200/60ZR17").value();
    p.proposed.options.links = 125;
    p.proposed.rearTeeth = rear(60);
    p.bike.chainRun->largestRearTeeth = 50;
    p.stock.options.chainElongationPercent = 1.5;
    p.bike.speedometer = Speedometer{.sensor = SpeedSensor::RearWheel, .readsHighPercent = -5};
  });
  EXPECT_TRUE(soon([&] { return window->readout().height() > usual; }));
  const int needed = window->readout().height();
  EXPECT_TRUE(window->readout().text().startsWith("Does not fit. "));
  window->document().undoStack().undo();
  QTest::qWait(40);
  EXPECT_EQ(window->readout().height(), needed) << "nothing jumps back while values are turned";
  window->resize(1400, 720);
  EXPECT_TRUE(soon([&] { return window->readout().height() <= usual; }));
}

}  // namespace
}  // namespace layshaft::test
