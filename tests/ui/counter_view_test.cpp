// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/counter_view.h"

#include <QMenu>

#include "core/study/offers.h"
#include "tests/ui/support.h"
#include "tests/ui/what_is_said.h"
#include "ui/document/preferences.h"
#include "ui/document/setup_edits.h"
#include "ui/words/cautions.h"

namespace layshaft::test {
namespace {

using ui::CounterView;

/// The second window, opened by the menu and worked by keys.
class CounterViewTest : public testing::Test, FreshSettings {
 protected:
  CounterView* openView() {
    for (auto* action : window_->findChildren<QAction*>())
      if (action->text().remove('&') == "Counter View") action->trigger();
    auto* view = window_->findChild<CounterView*>();
    if (!view) throw std::runtime_error("there is no counter view");
    // Its window counts as active as long as the one it belongs to is.
    if (!soon([&] { return QApplication::activeWindow() == view; }))
      throw std::runtime_error("it does not become active");
    return view;
  }
  static void press(Qt::Key key) {
    if (QWidget* focus = QApplication::focusWidget()) QTest::keyClick(focus, key);
  }
  static QString focused() {
    const QWidget* focus = QApplication::focusWidget();
    return focus ? focus->accessibleName() : QString();
  }
  static QString focusedButton() {
    auto* button = qobject_cast<QPushButton*>(QApplication::focusWidget());
    return button ? button->text() : QString();
  }
  const Profile& profile() { return window_.profile(); }

  Window window_{sampleBike("club-600")};
};

TEST_F(CounterViewTest, OpensFullScreenInLargeTypeWithTheFirstQuestion) {
  const CounterView* view = openView();
  EXPECT_TRUE(view->isFullScreen());
  EXPECT_GE(view->font().pointSizeF(), 2 * window_->font().pointSizeF());
  for (const QWidget* part : view->findChildren<QWidget*>())
    EXPECT_GE(part->font().pointSizeF(), 2 * window_->font().pointSizeF()) << part->metaObject()->className();
  EXPECT_EQ(focused(), "More Punch");
}

TEST_F(CounterViewTest, ArrowKeysAndEnterAnswerAndEscapeGoesBackStepByStep) {
  openView();
  press(Qt::Key_Down);
  EXPECT_EQ(focused(), "Less Buzz");
  press(Qt::Key_Return);
  EXPECT_EQ(focusedButton(), "Choose This");
  press(Qt::Key_Escape);
  EXPECT_EQ(focused(), "Less Buzz") << "where it was left";
  press(Qt::Key_Escape);
  EXPECT_TRUE(soon([&] { return window_->findChild<CounterView*>() == nullptr; }));
}

TEST_F(CounterViewTest, LeavingBringsTheWindowBackAsItWas) {
  auto& tyre = control<QLineEdit>(*window_, "Rear tyre");
  tyre.setFocus();
  const auto state = window_->windowState();
  const QRect place = window_->geometry();
  openView()->close();
  ASSERT_TRUE(soon([&] { return window_->isActiveWindow(); }));
  EXPECT_EQ(QApplication::focusWidget(), &tyre);
  EXPECT_EQ(window_->windowState(), state);
  EXPECT_EQ(window_->geometry(), place);
}

TEST_F(CounterViewTest, AWishShowsThePairsThatTheStudyOffersAndWritesNothing) {
  const Profile before = profile();
  const CounterView* view = openView();
  press(Qt::Key_Return);
  QStringList headings;
  for (const Offer& offer : offers(before, Wish::Shorter)) {
    const auto setup = applied(offer.change, before.stock);
    headings << QString("Front %1 · Rear %2").arg(setup.frontTeeth.count()).arg(setup.rearTeeth.count());
  }
  ASSERT_EQ(headings.size(), 3);
  QStringList said;
  hear(*view, "counter", [&](const QString& text, const std::string&) { said << text; });
  for (const QString& heading : headings) EXPECT_TRUE(said.contains(heading)) << heading.toStdString();
  EXPECT_TRUE(same(profile(), before));
  EXPECT_EQ(window_->document().undoStack().count(), 0);
}

TEST_F(CounterViewTest, ChoosingProposesInOneStepThatCanBeTakenBack) {
  openView();
  press(Qt::Key_Return);
  press(Qt::Key_Right);
  const auto wanted = offers(profile(), Wish::Shorter)[1];
  const auto setup = applied(wanted.change, profile().stock);
  const Profile before = profile();
  press(Qt::Key_Return);
  EXPECT_EQ(proposedSetup(window_->document()), setup);
  EXPECT_EQ(window_->document().undoStack().count(), 1);
  EXPECT_TRUE(window_->document().undoStack().undoText().contains("counter view choice"));
  EXPECT_TRUE(soon([&] { return focusedButton() == "✓ Chosen"; })) << focusedButton().toStdString();
  press(Qt::Key_Return);
  EXPECT_EQ(window_->document().undoStack().count(), 1) << "the same again changes nothing";
  window_->document().undoStack().undo();
  EXPECT_TRUE(same(profile(), before));
  EXPECT_TRUE(soon([&] { return focusedButton() == "Choose This"; }));
}

TEST_F(CounterViewTest, ComparesFamiliarStepsOrPins) {
  ASSERT_FALSE(profile().pins.empty());
  CounterView* view = openView();
  control<QPushButton>(*view, "Compare Choices").click();
  EXPECT_EQ(focused(), "Familiar Steps");
  press(Qt::Key_Down);
  press(Qt::Key_Return);
  EXPECT_TRUE(focused().contains(QString::fromStdString(profile().pins.front().name)))
      << focused().toStdString();
  press(Qt::Key_Return);
  EXPECT_EQ(proposedSetup(window_->document()), applied(profile().pins.front().change, profile().stock));
  press(Qt::Key_Escape);
  EXPECT_EQ(focused(), "What We Kept for You");
}

TEST_F(CounterViewTest, WithoutPinsTheFamiliarStepsComeAtOnce) {
  while (!profile().pins.empty()) ui::SetupEdits::removePin(window_->document(), 0);
  CounterView* view = openView();
  control<QPushButton>(*view, "Compare Choices").click();
  EXPECT_EQ(focusedButton(), "Choose This");
  press(Qt::Key_Escape);
  EXPECT_EQ(focused(), "Compare Choices");
}

TEST_F(CounterViewTest, ATapOnAColumnMovesTheFocusAndChoosesNothing) {
  CounterView* view = openView();
  press(Qt::Key_Return);
  QTest::qWait(20);
  std::vector<QLabel*> sentences;
  for (auto* label : view->findChildren<QLabel*>())
    if (label->isVisible() && label->text().startsWith("Front ")) sentences.push_back(label);
  ASSERT_EQ(sentences.size(), 3u);
  QTest::mouseClick(sentences[2], Qt::LeftButton);
  EXPECT_TRUE(focused().contains(sentences[2]->text())) << focused().toStdString();
  EXPECT_EQ(window_->document().undoStack().count(), 0);
}

TEST_F(CounterViewTest, SaysItsCautions) {
  CounterView* view = openView();
  press(Qt::Key_Return);
  auto& cautions = control<QLabel>(*view, "Cautions");
  EXPECT_TRUE(cautions.isVisible());
  EXPECT_TRUE(cautions.text().contains("closed course"));
  EXPECT_TRUE(cautions.text().contains("Downshifts over-rev"));
  EXPECT_EQ(cautions.text().count("closed course"), 1) << "once for all columns";
}

TEST_F(CounterViewTest, WhereNothingFitsItSaysSoAndLeadsBack) {
  window_->document().edit({.field = "test", .title = "test", .shown = {}}, [](Profile& profile) {
    profile.bike.chainRun->largestRearTeeth = profile.stock.rearTeeth.count();
    profile.bike.chainRun->smallestFrontTeeth = profile.stock.frontTeeth.count();
    profile.sparesBox.reset();
  });
  const CounterView* view = openView();
  press(Qt::Key_Return);
  EXPECT_EQ(focusedButton(), "◀ Back");
  QStringList said;
  for (const auto* label : view->findChildren<QLabel*>())
    if (label->isVisible()) said << label->text();
  EXPECT_TRUE(said.join(' ').contains("Nothing in reach")) << said.join('\n').toStdString();
}

TEST_F(CounterViewTest, FollowsWhatIsChangedInTheMainWindow) {
  CounterView* view = openView();
  control<QPushButton>(*view, "Compare Choices").click();
  press(Qt::Key_Return);
  const auto headings = [&] {
    QStringList all;
    for (const auto* label : view->findChildren<QLabel*>())
      if (label->isVisible() && label->text().startsWith("Front ")) all << label->text();
    return all.join(", ");
  };
  ASSERT_TRUE(headings().contains("Rear 47")) << headings().toStdString();
  ui::SetupEdits(window_->document(), ui::Side::Stock).setRearTeeth(46);
  EXPECT_TRUE(soon([&] { return headings().contains("Rear 48"); })) << headings().toStdString();
}

TEST_F(CounterViewTest, FollowsTheUnitsAtOnce) {
  CounterView* view = openView();
  press(Qt::Key_Return);
  const auto says = [&](const char* unit) {
    bool said = false;
    hear(*view, "counter", [&](const QString& text, const std::string&) { said |= text.contains(unit); });
    return said;
  };
  const auto use = [](ui::UnitSystem units) {
    ui::preferences::setUnits(ui::UnitsShown(units));
    ui::MainWindow::allPreferencesChanged();
  };
  use(ui::UnitSystem::Metric);
  ASSERT_TRUE(says("km/h"));
  use(ui::UnitSystem::Imperial);
  EXPECT_TRUE(says("mph"));
  EXPECT_FALSE(says("km/h"));
}

}  // namespace
}  // namespace layshaft::test
