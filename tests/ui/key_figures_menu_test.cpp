// SPDX-License-Identifier: GPL-3.0-or-later
//
// Which figures the readout shows is picked in a menu, and put in order in a dialog.
#include <QDialogButtonBox>
#include <QLabel>
#include <QListWidget>
#include <QMenu>
#include <QPushButton>
#include <algorithm>

#include "tests/ui/support.h"
#include "ui/document/preferences.h"
#include "ui/window/figures_dialog.h"

namespace layshaft::test {
namespace {

using ui::Figure;

class KeyFiguresMenu : public testing::Test, FreshSettings {
 protected:
  KeyFiguresMenu() {
    for (auto* menu : window_->findChildren<QMenu*>())
      if (menu->title().remove('&') == "Key Figures") menu_ = menu;
    emit menu_->aboutToShow();
  }
  QAction& entry(const QString& name) {
    for (auto* action : menu_->actions())
      if (action->text() == name) return *action;
    throw std::runtime_error("no entry " + name.toStdString());
  }
  QStringList ticked() {
    QStringList names;
    for (auto* action : menu_->actions())
      if (action->isChecked()) names << action->text();
    return names;
  }

  Window window_{workedExample()};
  QMenu* menu_ = nullptr;
};

const QStringList kUsualSeven{"Top speed and what limits it",
                              "First gear at the limit",
                              "Engine speed at cruise",
                              "Pull in first gear",
                              "0–100 km/h or 0–60 mph",
                              "Straight",
                              "Speedometer"};

TEST_F(KeyFiguresMenu, TicksWhatTheReadoutShows) {
  EXPECT_EQ(ticked(), kUsualSeven);
  entry("Straight").trigger();
  EXPECT_FALSE(window_->readout().text().contains("straight"));
  EXPECT_EQ(ticked().size(), 6);
  entry("Quarter mile").trigger();
  EXPECT_TRUE(window_->readout().text().contains("1/4 mile"));
  EXPECT_TRUE(ticked().contains("Quarter mile"));
  EXPECT_TRUE(window_->readout().text().contains("Top speed (")) << "the others stay";
}

TEST_F(KeyFiguresMenu, AnEighthIsRefusedWithWords) {
  entry("Quarter mile").trigger();
  EXPECT_EQ(ticked(), kUsualSeven);
  EXPECT_TRUE(ui::preferences::figures().empty());
  EXPECT_EQ(control<QLabel>(*window_, "Message").text(),
            "The readout has room for 7 figures: untick one first.");
}

TEST_F(KeyFiguresMenu, TheLastOneStays) {
  ui::preferences::setFigures({Figure::Rollout});
  ui::MainWindow::allPreferencesChanged();
  EXPECT_EQ(ticked(), QStringList{"Rollout"});
  entry("Rollout").trigger();
  EXPECT_EQ(ticked(), QStringList{"Rollout"});
  EXPECT_EQ(ui::preferences::figures(), std::vector{Figure::Rollout});
}

TEST_F(KeyFiguresMenu, SaysWhichABikeLacksDataFor) {
  Profile plain = workedExample();
  plain.bike.engine.torqueCurve.reset();
  Window window(plain);
  for (auto* menu : window->findChildren<QMenu*>())
    if (menu->title().remove('&') == "Key Figures") menu_ = menu;
  emit menu_->aboutToShow();
  EXPECT_FALSE(entry("Quarter mile (lacks data)").isChecked());
  EXPECT_TRUE(entry("Top gear at the limit").isChecked());
}

TEST_F(KeyFiguresMenu, StaysOpenOnATick) {
  menu_->popup(QPoint(0, 0));
  menu_->setActiveAction(&entry("Straight"));
  QTest::keyClick(menu_, Qt::Key_Return);
  EXPECT_FALSE(entry("Straight").isChecked());
  EXPECT_TRUE(menu_->isVisible());
  QTest::mouseClick(menu_, Qt::LeftButton, {}, menu_->actionGeometry(&entry("Straight")).center());
  EXPECT_TRUE(entry("Straight").isChecked());
  EXPECT_TRUE(menu_->isVisible());
  menu_->close();
}

class FiguresDialogTest : public testing::Test, FreshSettings {
 protected:
  QListWidget& list() { return control<QListWidget>(dialog_, "Key figures"); }
  void tick(int row, bool on) { list().item(row)->setCheckState(on ? Qt::Checked : Qt::Unchecked); }
  void push(const QString& name) {
    for (auto* button : dialog_.findChildren<QPushButton*>())
      if (button->text().remove('&') == name) button->click();
  }
  bool acceptable() {
    return dialog_.findChild<QDialogButtonBox*>()->button(QDialogButtonBox::Ok)->isEnabled();
  }

  ui::FiguresDialog dialog_{std::make_shared<const Plan>(plan(workedExample())), {}};
};

TEST_F(FiguresDialogTest, ListsThoseShownFirstInTheirOrder) {
  ASSERT_EQ(list().count(), ui::kFigureCount);
  for (int i = 0; i < list().count(); ++i) EXPECT_EQ(list().item(i)->checkState() == Qt::Checked, i < 7) << i;
  EXPECT_TRUE(dialog_.chosen().empty()) << "untouched they stay the usual ones";
}

TEST_F(FiguresDialogTest, MovesByButtonsAndKeys) {
  const auto before = ui::figuresInReadout(plan(workedExample()), {});
  list().setCurrentRow(1);
  push("Move Up");
  auto wanted = before;
  std::swap(wanted[0], wanted[1]);
  EXPECT_EQ(dialog_.chosen(), wanted);
  EXPECT_EQ(list().currentRow(), 0);
  showActive(dialog_);
  list().setFocus();
  QTest::keyClick(&list(), Qt::Key_Down, Qt::AltModifier);
  EXPECT_EQ(dialog_.chosen(), before);
  push("Reset to Default");
  EXPECT_TRUE(dialog_.chosen().empty());
}

TEST_F(FiguresDialogTest, ARowThatIsDraggedIsInTheNewPlace) {
  const auto before = ui::figuresInReadout(plan(workedExample()), {});
  ASSERT_TRUE(list().model()->moveRow({}, 6, {}, 0)) << "as a drop does it";
  auto wanted = before;
  std::rotate(wanted.begin(), wanted.end() - 1, wanted.end());
  EXPECT_EQ(dialog_.chosen(), wanted);
}

TEST_F(FiguresDialogTest, HoldsOneToSeven) {
  tick(9, true);
  EXPECT_EQ(list().item(9)->checkState(), Qt::Unchecked);
  EXPECT_EQ(control<QLabel>(dialog_, "Message").text(),
            "The readout has room for 7 figures: untick one first.");
  for (int i = 0; i < 7; ++i) tick(i, false);
  EXPECT_FALSE(acceptable());
  tick(9, true);
  EXPECT_TRUE(acceptable());
  EXPECT_EQ(dialog_.chosen().size(), 1u);
}

}  // namespace
}  // namespace layshaft::test
