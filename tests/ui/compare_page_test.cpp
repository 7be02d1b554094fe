// SPDX-License-Identifier: GPL-3.0-or-later
//
// The page that puts stock, proposal and pins side by side.
#include <QClipboard>
#include <QHeaderView>
#include <QMimeData>
#include <QScrollBar>
#include <QSignalSpy>
#include <QTabWidget>
#include <QToolButton>

#include "tests/ui/support.h"
#include "ui/document/preferences.h"
#include "ui/document/setup_edits.h"
#include "ui/pages/compare_page.h"
#include "ui/window/pages.h"

namespace layshaft::test {
namespace {

class ComparePageTest : public testing::Test, FreshSettings {
 protected:
  ComparePageTest() {
    Profile profile = workedExample();
    profile.pins = {{"A <b>long</b> one", {.rearTeeth = rear(39)}}, {"Short", {.rearTeeth = rear(50)}}};
    window_ = std::make_unique<Window>(profile);
    auto* tabs = (*window_)->findChild<QTabWidget*>();
    for (int i = 0; i < tabs->count(); ++i)
      if (dynamic_cast<ui::ComparePage*>(tabs->widget(i))) tabs->setCurrentIndex(i);
    page_ = dynamic_cast<ui::ComparePage*>(tabs->currentWidget());
    if (!page_) throw std::runtime_error("no such page");
    QTest::qWait(30);
  }

  QTableView& table() { return control<QTableView>(*page_, "Comparison"); }
  QAbstractItemModel& model() { return *table().model(); }
  int rowNamed(const QString& name) {
    for (int r = 0; r < model().rowCount(); ++r)
      if (model().headerData(r, Qt::Vertical).toString().startsWith(name)) return r;
    return -1;
  }
  QToolButton& button(const QString& text) {
    for (auto* candidate : page_->findChildren<QToolButton*>())
      if (candidate->text() == text) return *candidate;
    throw std::runtime_error("no such button");
  }
  static QAction& action(const QMenu& menu, const QString& text) {
    for (QAction* candidate : menu.actions()) {
      if (candidate->text().remove('&') == text) return *candidate;
      if (candidate->menu())
        for (QAction* inner : candidate->menu()->actions())
          if (inner->text().remove('&') == text) return *inner;
    }
    throw std::runtime_error("no such action: " + text.toStdString());
  }

  std::unique_ptr<Window> window_;
  ui::ComparePage* page_ = nullptr;
};

TEST_F(ComparePageTest, AColumnThatCameWhileAnotherPageWasInViewIsAsWideAsTheOthers) {
  auto* tabs = (*window_)->findChild<QTabWidget*>();
  const int here = tabs->currentIndex();
  tabs->setCurrentIndex(0);
  ui::SetupEdits::removePin((*window_)->document(), 1);
  QTest::qWait(30);
  ASSERT_EQ(ui::SetupEdits::pin((*window_)->document(), "16/44", 16, 44), std::nullopt);
  QTest::qWait(30);
  tabs->setCurrentIndex(here);
  QTest::qWait(30);
  ASSERT_EQ(model().columnCount(), 4);
  for (int c = 0; c < 4; ++c) EXPECT_EQ(table().columnWidth(c), table().columnWidth(0)) << c;
}

TEST_F(ComparePageTest, ShowsFourSetupsWithoutScrollingAndKeepsTheNamesInView) {
  ASSERT_EQ(model().columnCount(), 4);
  EXPECT_EQ(model().headerData(2, Qt::Horizontal).toString(), "A <b>long</b> one\n16/39");
  EXPECT_LE(table().horizontalHeader()->length(), table().viewport()->width());
  EXPECT_EQ(table().horizontalScrollBar()->maximum(), 0);
  (*window_)->resize(900, 720);
  table().horizontalScrollBar()->setValue(table().horizontalScrollBar()->maximum());
  EXPECT_TRUE(table().verticalHeader()->isVisible());
  EXPECT_EQ(table().verticalHeader()->x(), 0) << "the names are no column that scrolls";
}

TEST_F(ComparePageTest, AGroupsNameGoesThrough) {
  const int group = rowNamed("Acceleration");
  ASSERT_GE(group, 0);
  EXPECT_EQ(table().columnSpan(group, 0), 4);
  EXPECT_EQ(table().columnSpan(group + 1, 0), 1);
}

TEST_F(ComparePageTest, AStepTouchesCellsAndStartsNothingAnew) {
  QSignalSpy resets(&model(), &QAbstractItemModel::modelReset);
  QSignalSpy changes(&model(), &QAbstractItemModel::dataChanged);
  const int ratio = rowNamed("Final ratio");
  const QString before = model().index(ratio, 1).data().toString();
  ASSERT_EQ(ui::SetupEdits((*window_)->document(), ui::Side::Proposed).setRearTeeth(46), std::nullopt);
  ASSERT_TRUE(soon([&] { return model().index(ratio, 1).data().toString() != before; }));
  EXPECT_EQ(resets.count(), 0);
  EXPECT_GT(changes.count(), 5);
  for (const QList<QVariant>& change : changes) {
    const auto from = change[0].toModelIndex(), to = change[1].toModelIndex();
    for (int c = from.column(); c <= to.column(); ++c) EXPECT_TRUE(model().index(from.row(), c).isValid());
  }
  const QModelIndex stock = model().index(ratio, 0);
  for (const QList<QVariant>& change : changes)
    EXPECT_NE(change[0].toModelIndex(), stock) << "stock reads as before";
}

TEST_F(ComparePageTest, TheBestIsSaidToWhoDoesNotSee) {
  const int cruise = rowNamed("Engine speed at");
  const QModelIndex tall = model().index(cruise, 2);
  const QString said = tall.data(Qt::AccessibleTextRole).toString();
  EXPECT_TRUE(said.startsWith(tall.data().toString() + ", best, ")) << said.toStdString();
  EXPECT_TRUE(said.endsWith("from stock")) << said.toStdString();
  EXPECT_FALSE(model().index(cruise, 0).data(Qt::AccessibleTextRole).toString().contains("best"));
}

TEST_F(ComparePageTest, ADashSaysWhyOnHoverAndToReaders) {
  window_.reset();
  window_ = std::make_unique<Window>(bike());
  page_ = (*window_)->findChild<ui::ComparePage*>();
  ASSERT_NE(page_, nullptr);
  (*window_)->findChild<QTabWidget*>()->setCurrentWidget(page_);
  const QModelIndex dash = model().index(rowNamed("1/4 mile"), 0);
  EXPECT_EQ(dash.data().toString(), "–");
  EXPECT_TRUE(dash.data(Qt::ToolTipRole).toString().contains("it needs"));
  EXPECT_TRUE(dash.data(Qt::AccessibleDescriptionRole).toString().contains("it needs"));
}

TEST_F(ComparePageTest, RowsAreChosenAndRemembered) {
  const QMenu& menu = *button("Rows").menu();
  ASSERT_GE(rowNamed("1/4 mile"), 0);
  ASSERT_LT(rowNamed("1/8 mile"), 0);
  action(menu, "1/8 mile").trigger();
  action(menu, "1/4 mile").trigger();
  EXPECT_LT(rowNamed("1/4 mile"), 0);
  EXPECT_GE(rowNamed("1/8 mile"), 0);
  Window second(workedExample());
  const auto remembered = ui::preferences::compareFigures();
  EXPECT_EQ(std::count(remembered.begin(), remembered.end(), ui::CompareFigure::EighthMile), 1);
  EXPECT_EQ(std::count(remembered.begin(), remembered.end(), ui::CompareFigure::QuarterMile), 0);
  action(menu, "Reset to Default").trigger();
  EXPECT_GE(rowNamed("1/4 mile"), 0);
  EXPECT_FALSE(QSettings().contains("compare")) << "only what differs from the default is kept";
}

TEST_F(ComparePageTest, TheLastRowStays) {
  ui::preferences::setCompareFigures({ui::CompareFigure::CruiseRpm});
  ui::MainWindow::allPreferencesChanged();
  EXPECT_EQ(model().rowCount(), 2);
  EXPECT_FALSE(action(*button("Rows").menu(), "Engine speed at cruise").isEnabled());
  EXPECT_TRUE(action(*button("Rows").menu(), "1/4 mile").isEnabled());
}

TEST_F(ComparePageTest, IsCopiedForSpreadsheetsAndMail) {
  table().setFocus();
  QTest::keyClick(&table(), Qt::Key_C, Qt::ControlModifier);
  const QMimeData* data = QGuiApplication::clipboard()->mimeData();
  ASSERT_TRUE(data && data->hasHtml());
  const QStringList lines = data->text().split('\n', Qt::SkipEmptyParts);
  ASSERT_EQ(lines.size(), model().rowCount() + 1);
  for (const QString& line : lines) EXPECT_EQ(line.count('\t'), 5) << line.toStdString();
  EXPECT_TRUE(data->html().contains("A &lt;b&gt;long&lt;/b&gt; one"));
  action(*button("Copy").menu(), "As Text").trigger();
  const QString text = QGuiApplication::clipboard()->text();
  EXPECT_FALSE(text.contains('\t'));
  EXPECT_TRUE(text.contains("Short, 16/50"));
}

TEST_F(ComparePageTest, SaysWherePinsComeFromWhileThereAreNone) {
  const auto hint = [&]() -> QLabel* {
    for (auto* label : page_->findChildren<QLabel*>())
      if (label->text().contains("Pinned pairs")) return label;
    return nullptr;
  };
  ASSERT_NE(hint(), nullptr);
  EXPECT_FALSE(hint()->isVisible());
  (*window_)->document().edit({.field = "pins", .title = "pins"}, [](Profile& p) { p.pins.clear(); });
  EXPECT_TRUE(soon([&] { return model().columnCount() == 2; }));
  EXPECT_TRUE(hint()->isVisible());
}

}  // namespace
}  // namespace layshaft::test
