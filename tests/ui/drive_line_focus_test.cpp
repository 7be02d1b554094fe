// SPDX-License-Identifier: GPL-3.0-or-later
#include <QMenuBar>

#include "tests/ui/drive_line.h"

namespace layshaft::test {
namespace {

using testing::ElementsAre;

class DriveLineFocus : public DriveLineTest {
 protected:
  std::vector<std::string> tabThrough(int stops) {
    std::vector<std::string> names;
    for (int i = 0; i < stops; ++i) {
      names.push_back(QApplication::focusWidget()->accessibleName().toStdString());
      QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
    }
    return names;
  }
};

TEST_F(DriveLineFocus, TheWheelWithoutFocusChangesNothing) {
  use(sampleBike("club-600"));
  const Profile before = document_.profile();
  line_.findChild<QPushButton*>()->setFocus();
  for (auto* field : line_.findChildren<QAbstractSpinBox*>()) {
    turnWheel(*field);
    turnWheel(*field->findChild<QLineEdit*>(), -1);
  }
  for (auto* field : line_.findChildren<QComboBox*>()) turnWheel(*field, -1);
  EXPECT_TRUE(same(document_.profile(), before));
  EXPECT_EQ(steps(), 0);
  EXPECT_TRUE(line_.findChild<QPushButton*>()->hasFocus()) << "nor does it take the focus";
}

TEST_F(DriveLineFocus, TheWheelWithFocusSteps) {
  box("Rear teeth").setFocus();
  turnWheel(box("Rear teeth"), 1);
  EXPECT_EQ(proposed().rearTeeth.count(), 44);
  turnWheel(*box("Rear teeth").findChild<QLineEdit*>(), -1);
  EXPECT_EQ(proposed().rearTeeth.count(), 43);
  auto& chain = control<QComboBox>(line_, "Chain");
  chain.setFocus();
  turnWheel(chain, -1);
  EXPECT_EQ(proposed().options.chainSize, chainSize("415"));
}

TEST_F(DriveLineFocus, TabFollowsThePowerFlow) {
  box("Rev limit").setFocus(Qt::TabFocusReason);
  EXPECT_THAT(tabThrough(15),
              ElementsAre("Rev limit, rpm", "Shift at, rpm", "Primary", "Gear 1 ratio", "Gear 2 ratio",
                          "Gear 3 ratio", "Front teeth", "Chain", "Links", "Rear teeth", "Rear tyre",
                          "Width, mm", "Aspect, %", "Rim, in", "Rollout, mm"));
}

TEST_F(DriveLineFocus, TabFollowsThePowerFlowThroughGearsThatCameLater) {
  use(bike({{"/stock/gear_ratios", {2.7, 2.0, 1.6, 1.3, 1.1}}}));
  box("Shift at").setFocus(Qt::TabFocusReason);
  EXPECT_THAT(tabThrough(8), ElementsAre("Shift at, rpm", "Primary", "Gear 1 ratio", "Gear 2 ratio",
                                         "Gear 3 ratio", "Gear 4 ratio", "Gear 5 ratio", "Front teeth"));
}

TEST_F(DriveLineFocus, TabFollowsThePowerFlowOfABelt) {
  use(sampleBike("tourer-belt"));
  box("Front teeth").setFocus(Qt::TabFocusReason);
  EXPECT_THAT(tabThrough(5), ElementsAre("Front teeth", "Front teeth back to stock", "Belt teeth",
                                         "Rear teeth", "Rear tyre"));
}

TEST_F(DriveLineFocus, NamesCarryTheUnitThatIsShown) {
  auto& rollout = decimal("Rollout");
  EXPECT_EQ(rollout.accessibleName(), "Rollout, mm");
  showIn(ui::UnitSystem::Imperial);
  EXPECT_EQ(rollout.accessibleName(), "Rollout, in");
  EXPECT_EQ(box("Width").accessibleName(), "Width, mm") << "a tyre's size has units of its own";
  typeInto(rollout, "9999");
  leave();
  EXPECT_TRUE(message().startsWith("Rollout: 9999")) << message().toStdString();
}

TEST_F(DriveLineFocus, BackToStockIsReachedByTab) {
  typeInto(box("Rear teeth"), "45");
  settle();
  for (int i = 0; i < 30 && !backButton("Rear teeth").hasFocus(); ++i)
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
  ASSERT_TRUE(backButton("Rear teeth").hasFocus());
  QTest::keyClick(&backButton("Rear teeth"), Qt::Key_Space);
  EXPECT_EQ(proposed().rearTeeth.count(), 43);
}

TEST_F(DriveLineFocus, EveryControlHasANameAndATooltip) {
  for (const char* sample : {"club-600", "tourer-belt"}) {
    use(sampleBike(sample));
    QWidgetList controls;
    for (auto* field : line_.findChildren<QAbstractSpinBox*>()) controls << field;
    for (auto* field : line_.findChildren<QComboBox*>()) controls << field;
    for (auto* field : line_.findChildren<QAbstractButton*>()) controls << field;
    controls << &tyreField();
    for (const QWidget* field : controls) {
      const auto* button = qobject_cast<const QAbstractButton*>(field);
      EXPECT_FALSE(field->accessibleName().isEmpty() && !(button && !button->text().isEmpty()));
      EXPECT_FALSE(field->toolTip().isEmpty()) << field->accessibleName().toStdString();
    }
  }
}

/// Letters that Alt reaches: of the visible stations, and of the menu bar.
class Mnemonics : public testing::TestWithParam<const char*> {};

TEST_P(Mnemonics, EveryStationHasItsOwnAndNoneOfAMenu) {
  Window window(sampleBike(GetParam()));
  QMap<QString, QString> owner;
  const auto take = [&](const QString& label) {
    const QKeySequence key = QKeySequence::mnemonic(label);
    if (key.isEmpty()) return false;
    EXPECT_FALSE(owner.contains(key.toString()))
        << key.toString().toStdString() << ": " << owner[key.toString()].toStdString() << " and "
        << label.toStdString();
    owner[key.toString()] = label;
    return true;
  };
  for (const QAction* menu : window->menuBar()->actions())
    EXPECT_TRUE(take(menu->text())) << menu->text().toStdString();
  for (auto* station : window->driveLine().findChildren<ui::Station*>()) {
    if (!station->isVisible()) continue;
    for (auto* label : station->findChildren<QLabel*>()) {
      if (!label->buddy()) continue;
      bool gearAfterTheFirst = false;
      label->text().toInt(&gearAfterTheFirst);
      if (gearAfterTheFirst) continue;  // Tab leads on from the first
      EXPECT_TRUE(take(label->text())) << label->text().toStdString();
    }
  }
  for (auto* button : window->findChildren<QAbstractButton*>())
    if (button->isVisible() && !button->text().isEmpty()) take(button->text());
}

INSTANTIATE_TEST_SUITE_P(FinalDrive, Mnemonics, testing::Values("club-600", "tourer-belt"),
                         [](const auto& name) { return QString(name.param).remove('-').toStdString(); });

TEST(MnemonicKeys, AltAndItsLetterGoToTheStation) {
  Window window(bike());
  QTest::keyClick(&*window, Qt::Key_N, Qt::AltModifier);
  EXPECT_EQ(QApplication::focusWidget(), &control<QAbstractSpinBox>(*window, "Front teeth"));
  QTest::keyClick(&*window, Qt::Key_G, Qt::AltModifier);
  EXPECT_EQ(QApplication::focusWidget(), &control<QAbstractSpinBox>(*window, "Gear 1 ratio"));
}

}  // namespace
}  // namespace layshaft::test
