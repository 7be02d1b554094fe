// SPDX-License-Identifier: GPL-3.0-or-later
#include <QMenuBar>
#include <QPushButton>
#include <QSlider>
#include <QTabBar>
#include <QTabWidget>

#include "tests/ui/support.h"
#include "ui/document/samples.h"
#include "ui/editors/calm_spin_box.h"

namespace layshaft::test {
namespace {

/// The pages of a window, turned by keys from a field of the drive line.
class PageKeys : public testing::Test, FreshSettings {
 protected:
  PageKeys() { teeth().setFocus(); }
  QTabWidget& tabs() { return *window_->findChild<QTabWidget*>(); }
  ui::WholeBox& teeth() {
    return static_cast<ui::WholeBox&>(control<QAbstractSpinBox>(*window_, "Front teeth"));
  }
  void press(Qt::Key key, Qt::KeyboardModifiers modifiers) { QTest::keyClick(&teeth(), key, modifiers); }

  Window window_{sampleBike("club-600")};
};

TEST_F(PageKeys, NextAndPreviousGoRoundAndLeaveTheFieldAlone) {
  const int before = teeth().value();
  const int last = tabs().count() - 1;
  tabs().setCurrentIndex(0);
  press(Qt::Key_PageDown, Qt::ControlModifier);
  EXPECT_EQ(tabs().currentIndex(), 1);
  press(Qt::Key_PageUp, Qt::ControlModifier);
  press(Qt::Key_PageUp, Qt::ControlModifier);
  EXPECT_EQ(tabs().currentIndex(), last);
  press(Qt::Key_Tab, Qt::ControlModifier);
  EXPECT_EQ(tabs().currentIndex(), 0);
  press(Qt::Key_Backtab, Qt::ControlModifier | Qt::ShiftModifier);
  EXPECT_EQ(tabs().currentIndex(), last);
  EXPECT_EQ(teeth().value(), before);
}

TEST_F(PageKeys, AltAndADigitOpensEachPage) {
  for (int page = tabs().count() - 1; page >= 0; --page) {
    press(static_cast<Qt::Key>(Qt::Key_1 + page), Qt::AltModifier);
    EXPECT_EQ(tabs().currentIndex(), page);
    EXPECT_EQ(tabs().tabToolTip(page), QStringLiteral("Alt+%1").arg(page + 1));
  }
}

TEST_F(PageKeys, EachPageIsInTheViewMenuAndTheOneInViewIsTicked) {
  QMenu* pages = nullptr;
  for (auto* menu : window_->menuBar()->findChildren<QMenu*>())
    if (menu->title() == "&Page") pages = menu;
  ASSERT_TRUE(pages);
  for (int page = 0; page < tabs().count(); ++page) {
    QAction* action = pages->actions().at(page);
    EXPECT_EQ(action->text(), tabs().tabText(page));
    action->trigger();
    EXPECT_EQ(tabs().currentIndex(), page);
    EXPECT_TRUE(action->isChecked());
  }
}

TEST_F(PageKeys, ShiftF10OpensTheMenuOfATable) {
  for (int page = 0; page < tabs().count(); ++page)
    if (tabs().tabText(page).remove('&') == "Ladder") tabs().setCurrentIndex(page);
  auto& table = control<QTableView>(*tabs().currentWidget(), "Ladder");
  ASSERT_TRUE(soon([&] { return table.model()->rowCount() > 0; }));
  table.setFocus();
  table.setCurrentIndex(table.model()->index(0, 0));
  const auto menus = [&] { return tabs().currentWidget()->findChildren<QMenu*>().size(); };
  const auto before = menus();
  QTest::keyClick(&table, Qt::Key_F10, Qt::ShiftModifier);
  EXPECT_GT(menus(), before);
  if (QWidget* menu = QApplication::activePopupWidget()) menu->close();
}

TEST_F(PageKeys, AltAndADigitLeadsToWhatThePageIsWorkedWith) {
  const auto press = [](Qt::Key key) {
    QTest::keyClick(QApplication::focusWidget(), key, Qt::AltModifier);
    return QApplication::focusWidget()->accessibleName();
  };
  EXPECT_EQ(press(Qt::Key_2), "Pull chart");
  EXPECT_EQ(press(Qt::Key_4), "Turn of the rear wheel");
  EXPECT_EQ(press(Qt::Key_5), "Trend of wear");
  EXPECT_EQ(press(Qt::Key_6), "Lap chart");
  EXPECT_EQ(press(Qt::Key_7), "Ladder");
  EXPECT_EQ(press(Qt::Key_9), "Records");
  EXPECT_EQ(press(Qt::Key_8), "Comparison");
  EXPECT_EQ(press(Qt::Key_8), "Comparison") << "pressed once more";
  QTest::keyClick(QApplication::focusWidget(), Qt::Key_Escape);
  EXPECT_EQ(QApplication::focusWidget(), &teeth());
}

TEST_F(PageKeys, AltAndADigitLeavesAHalfTypedFieldItsFocusAndText) {
  typeInto(teeth(), "1");  // no sprocket has so few
  press(Qt::Key_2, Qt::AltModifier);
  EXPECT_EQ(tabs().currentIndex(), 1);
  EXPECT_EQ(QApplication::focusWidget(), &teeth());
  EXPECT_EQ(teeth().text(), "1");
}

TEST_F(PageKeys, TheTabBarIsAStopOfTab) {
  EXPECT_TRUE(tabs().tabBar()->focusPolicy() & Qt::TabFocus);
  EXPECT_FALSE(tabs().tabBar()->accessibleName().isEmpty());
}

TEST(Hints, EnterPressesGotIt) {
  const FreshSettings fresh;
  Window window(bike());
  for (auto* button : window->findChildren<QPushButton*>())
    if (button->text() == "Got It") {
      ASSERT_TRUE(button->isVisible());
      button->setFocus();
      QTest::keyClick(button, Qt::Key_Return);
      EXPECT_FALSE(button->isVisible());
      return;
    }
  FAIL() << "no such button";
}

}  // namespace
}  // namespace layshaft::test
