// SPDX-License-Identifier: GPL-3.0-or-later
#include <QAbstractButton>
#include <QDialogButtonBox>
#include <QDockWidget>
#include <QScreen>
#include <QScrollBar>
#include <QTabBar>
#include <QTabWidget>
#include <QTableView>

#include "tests/ui/support.h"
#include "ui/charts/tooth_drawing.h"
#include "ui/document/preferences.h"
#include "ui/document/setup_edits.h"
#include "ui/editors/new_bike_dialog.h"
#include "ui/editors/peaks_dialog.h"
#include "ui/editors/prices_dialog.h"
#include "ui/editors/recording_dialog.h"
#include "ui/pages/ladder_page.h"
#include "ui/pages/low_scroll.h"
#include "ui/pages/wear_page.h"
#include "ui/window/content_scroll.h"
#include "ui/window/figures_dialog.h"
#include "ui/window/shop_dialog.h"
#include "ui/window/tracks_window.h"

namespace layshaft::test {
namespace {

struct Screen {
  const char* name;
  QSize client;      ///< of a maximised window, without its frame
  double typeScale;  ///< of the desktop's type
};

void PrintTo(const Screen& screen, std::ostream* out) {
  *out << screen.name;
}

/// Low screens and large type: nothing is lost, what has no room scrolls.
class SmallScreens : public testing::TestWithParam<Screen> {
 protected:
  SmallScreens() : before_(QApplication::font()) {
    QFont font = before_;
    font.setPointSizeF(font.pointSizeF() * GetParam().typeScale);
    QApplication::setFont(font);
    window_ = std::make_unique<Window>(sampleBike("club-600"));
    (*window_)->resize(GetParam().client);
    QTest::qWait(30);
  }
  ~SmallScreens() override {
    window_.reset();
    QApplication::setFont(before_);
  }
  ui::MainWindow& window() { return **window_; }
  /// What of a part the window's scrolled content shows.
  QRect inView(const QWidget& part) {
    const QWidget& view = *window().findChild<ui::ContentScroll*>()->viewport();
    return QRect(part.mapTo(&view, QPoint()), part.size()) & view.rect();
  }

 private:
  QFont before_;
  std::unique_ptr<Window> window_;
};

TEST_P(SmallScreens, TheWindowIsNoLargerThanTheScreen) {
  EXPECT_EQ(window().size(), GetParam().client);
  EXPECT_LE(window().minimumSizeHint().width(), GetParam().client.width());
  EXPECT_LE(window().minimumSizeHint().height(), GetParam().client.height());
}

TEST_P(SmallScreens, WhateverGetsTheFocusComesIntoView) {
  auto* tabs = window().findChild<QTabWidget*>();
  int seen = 0;
  for (int page = 0; page < tabs->count(); ++page) {
    tabs->setCurrentIndex(page);
    settle(window());
    for (auto* widget : window().findChildren<QWidget*>()) {
      if (!widget->isVisible() || !widget->isEnabled() || widget->isWindow() ||
          widget->window() != &window() || !(widget->focusPolicy() & Qt::TabFocus) || widget->focusProxy())
        continue;
      if (!qobject_cast<QAbstractSpinBox*>(widget) && !qobject_cast<QAbstractButton*>(widget) &&
          !qobject_cast<QComboBox*>(widget))
        continue;
      widget->setFocus(Qt::TabFocusReason);
      QTest::qWait(1);
      if (!widget->isVisible()) continue;  // such as the button that stops a ladder which is there by now
      ++seen;
      EXPECT_TRUE(soon(
          [&] { return !widget->isVisible() || widget->visibleRegion().boundingRect() == widget->rect(); },
          2000))
          << page << ": " << widget->metaObject()->className() << " "
          << widget->accessibleName().toStdString();
    }
  }
  EXPECT_GT(seen, 60);
}

TEST_P(SmallScreens, AllOfTheContentCanBeScrolledTo) {
  auto* scroll = window().findChild<ui::ContentScroll*>();
  const QSize content = scroll->widget()->size(), view = scroll->viewport()->size();
  EXPECT_EQ(scroll->verticalScrollBar()->maximum(), std::max(content.height() - view.height(), 0));
  EXPECT_EQ(scroll->horizontalScrollBar()->maximum(), std::max(content.width() - view.width(), 0));
  EXPECT_GE(window().currentChart()->height(), 15 * window().fontMetrics().height())
      << "the chart is high enough to be read";
  EXPECT_GE(window().readout().height(), window().readout().heightForWidth(window().readout().width()));
}

TEST_P(SmallScreens, ThePageThatIsChosenComesIntoView) {
  auto* tabs = window().findChild<QTabWidget*>();
  auto* scroll = window().findChild<ui::ContentScroll*>();
  for (const auto key : {Qt::Key_3, Qt::Key_1, Qt::Key_1}) {
    scroll->verticalScrollBar()->setValue(0);
    QTest::keyClick(&window(), key, Qt::AltModifier);
    QTest::qWait(20);
    EXPECT_GE(inView(*tabs).height(), std::min(tabs->height(), scroll->viewport()->height()));
  }
}

TEST_P(SmallScreens, NothingButAPageIsScrolledSideways) {
  auto* scroll = window().findChild<ui::ContentScroll*>();
  for (int page = 0; page < window().findChild<QTabWidget*>()->count(); ++page) {
    window().findChild<QTabWidget*>()->setCurrentIndex(page);
    QTest::qWait(20);
    EXPECT_EQ(scroll->horizontalScrollBar()->maximum(), 0) << page;
    EXPECT_LE(window().readout().width(), window().width());
  }
}

TEST_P(SmallScreens, BikeDetailsHaveRoom) {
  window().showDetails();
  QTest::qWait(40);
  auto* details = window().findChild<QDockWidget*>();
  EXPECT_EQ(inView(*details).width(), details->width());
  EXPECT_GE(details->width(), 40 * window().fontMetrics().averageCharWidth());
  EXPECT_GE(inView(*details).height(),
            std::min(details->height(), window().findChild<ui::ContentScroll*>()->viewport()->height()));
  auto* tabs = window().findChild<QTabWidget*>();
  QTest::keyClick(&window(), Qt::Key_2, Qt::AltModifier);
  QTest::qWait(20);
  EXPECT_TRUE(tabs->isVisible()) << "the page that is asked for has its place back";
}

TEST_P(SmallScreens, TheTeethOfTheWearPageKeepTheirHeight) {
  auto* page = window().findChild<ui::WearPage*>();
  window().findChild<QTabWidget*>()->setCurrentWidget(page);
  QTest::qWait(20);
  auto* drawing = page->findChild<ui::ToothDrawing*>();
  EXPECT_GE(drawing->height(), drawing->minimumSizeHint().height());
}

/// Pictures and wrapped words shrink before anything is scrolled.
TEST(WearPagePictures, NeedNoScrollingOnAUsualScreen) {
  Window window(sampleBike("club-600"));
  ui::preferences::setHintsDismissed(true);
  window->resize(1270, 690);
  auto* page = window->findChild<ui::WearPage*>();
  window->findChild<QTabWidget*>()->setCurrentWidget(page);
  QTest::qWait(20);
  auto* drawing = page->findChild<ui::ToothDrawing*>();
  EXPECT_EQ(drawing->visibleRegion().boundingRect(), drawing->rect());
  EXPECT_EQ(page->findChild<ui::LowScroll*>()->verticalScrollBar()->maximum(), 0);
}

TEST_P(SmallScreens, DialogsKeepTheirButtonsInView) {
  ui::NewBikeDialog bike({}, &window());
  ui::PeaksDialog peaks(12000, ui::UnitsShown(), &window());
  ui::FiguresDialog figures(window().planner().shared(), {}, &window());
  ui::PricesDialog prices({}, &window());
  ui::ShopDialog shop(&window());
  for (QDialog* dialog : std::initializer_list<QDialog*>{&bike, &peaks, &figures, &prices, &shop}) {
    EXPECT_LE(dialog->minimumSizeHint().height(), GetParam().client.height())
        << dialog->windowTitle().toStdString();
    showActive(*dialog);
    dialog->resize(dialog->width(), GetParam().client.height());
    QTest::qWait(20);
    auto* buttons = dialog->findChild<QDialogButtonBox*>();
    EXPECT_EQ(buttons->visibleRegion().boundingRect(), buttons->rect());
    for (auto* field : dialog->findChildren<QLineEdit*>()) {
      if (!field->isEnabled() || !field->isVisibleTo(dialog)) continue;
      field->setFocus();
      EXPECT_EQ(field->visibleRegion().boundingRect(), field->rect());
    }
  }
}

TEST_P(SmallScreens, TracksAndRecordingsKeepTheirFieldsWithinReach) {
  ui::TracksWindow::open(window());
  auto* tracks = window().findChild<ui::TracksWindow*>();
  ui::RecordingDialog recording(window().session().lane(), QStringLiteral("none.gpx"), ui::UnitsShown(),
                                &window());
  for (QDialog* dialog : std::initializer_list<QDialog*>{tracks, &recording}) {
    const std::string title = dialog->windowTitle().toStdString();
    EXPECT_LE(dialog->minimumSizeHint().width(), GetParam().client.width()) << title;
    EXPECT_LE(dialog->minimumSizeHint().height(), GetParam().client.height()) << title;
    showActive(*dialog);
    dialog->resize(GetParam().client);
    QTest::qWait(20);
    int seen = 0;
    for (auto* field : dialog->findChildren<QWidget*>()) {
      const bool counts = qobject_cast<QLineEdit*>(field) || qobject_cast<QAbstractButton*>(field);
      if (!counts || !field->isEnabled() || !field->isVisibleTo(dialog) ||
          field->focusPolicy() == Qt::NoFocus)
        continue;
      field->setFocus(Qt::TabFocusReason);
      QTest::qWait(1);
      ++seen;
      EXPECT_EQ(field->visibleRegion().boundingRect(), field->rect())
          << title << ": " << field->metaObject()->className() << " "
          << field->accessibleName().toStdString();
    }
    EXPECT_GE(seen, 2) << title;
  }
}

TEST_P(SmallScreens, TheMessageStaysInViewWhateverIsScrolled) {
  window().say("something");
  auto& message = control<QLabel>(window(), "Message");
  EXPECT_EQ(message.visibleRegion().boundingRect(), message.rect());
}

TEST_P(SmallScreens, NothingMovesWhileTeethAreTurned) {
  auto& box = control<QAbstractSpinBox>(window(), "Rear teeth");
  box.setFocus();
  const auto places = [&] {
    return std::vector<QRect>{
        QRect(window().currentChart()->mapTo(&window(), QPoint()), window().currentChart()->size()),
        window().driveLine().geometry(), QRect(box.mapTo(&window(), QPoint()), box.size())};
  };
  // The readout has grown to what it has to say by then.
  for (const auto key : {Qt::Key_Up, Qt::Key_Up, Qt::Key_Down, Qt::Key_Down}) {
    QTest::keyClick(&box, key);
    QTest::qWait(20);
  }
  const auto before = places();
  for (const auto key : {Qt::Key_Up, Qt::Key_Up, Qt::Key_Down, Qt::Key_Down}) {
    QTest::keyClick(&box, key);
    QTest::qWait(20);
    EXPECT_EQ(places(), before);
  }
}

INSTANTIATE_TEST_SUITE_P(All, SmallScreens,
                         testing::Values(Screen{"netbook", {1022, 575}, 1.0},
                                         Screen{"doubled", {638, 347}, 1.0},
                                         Screen{"dpi120", {1278, 695}, 1.25},
                                         Screen{"dpi144", {1278, 695}, 1.5}),
                         [](const auto& screen) { return screen.param.name; });

/// Size, place, page and what a page was set up with outlive the window.
class RememberedWindow : public testing::Test, FreshSettings {
 protected:
  std::unique_ptr<ui::MainWindow> open() {
    auto window = std::make_unique<ui::MainWindow>(sampleBike("club-600"));
    window->show();
    QTest::qWait(30);
    return window;
  }
};

TEST_F(RememberedWindow, TheFirstOneFitsTheScreenWithItsFrame) {
  const auto window = open();
  EXPECT_TRUE(soon([&] { return window->screen()->availableGeometry().contains(window->frameGeometry()); }));
}

TEST_F(RememberedWindow, OpensWhereAndAsLargeAsItWasLeft) {
  {
    const auto window = open();
    window->resize(700, 555);
    window->move(40, 60);
    QTest::qWait(20);
    EXPECT_TRUE(window->close());
  }
  const auto window = open();
  EXPECT_EQ(window->size(), QSize(700, 555));
  EXPECT_EQ(window->pos(), QPoint(40, 60));
}

TEST_F(RememberedWindow, MaximisedStaysSoAndFullScreenDoesNot) {
  {
    const auto window = open();
    window->showMaximized();
    EXPECT_TRUE(window->close());
  }
  {
    const auto window = open();
    EXPECT_TRUE(window->isMaximized());
    window->showFullScreen();
    EXPECT_TRUE(window->close());
  }
  EXPECT_FALSE(open()->isFullScreen());
}

TEST_F(RememberedWindow, APlaceThatNoScreenShowsIsBroughtBackIntoView) {
  {
    const auto window = open();
    window->resize(700, 555);
    window->move(5000, 4000);
    QTest::qWait(20);
    EXPECT_TRUE(window->close());
  }
  const auto window = open();
  EXPECT_TRUE(soon([&] { return window->screen()->availableGeometry().contains(window->frameGeometry()); }))
      << window->pos().x() << ", " << window->pos().y();
  EXPECT_EQ(window->size(), QSize(700, 555));
}

TEST_F(RememberedWindow, ASecondOneDoesNotHideTheFirst) {
  {
    const auto window = open();
    window->resize(600, 500);
    window->move(10, 10);
    EXPECT_TRUE(window->close());
  }
  const auto first = open(), second = open();
  EXPECT_NE(first->pos(), second->pos());
}

TEST_F(RememberedWindow, NonsenseInTheSettingsIsNoHarm) {
  ui::preferences::setWindowGeometry("nonsense");
  ui::preferences::setPageInView("NoSuchPage");
  ui::preferences::setPageState("LadderPage", {{"header", "nonsense"}, {"within_percent", "much"}});
  const auto window = open();
  auto* tabs = window->findChild<QTabWidget*>();
  EXPECT_EQ(tabs->currentIndex(), 0);
  tabs->setCurrentWidget(window->findChild<ui::LadderPage*>());
  EXPECT_GT(control<QTableView>(*window, "Ladder").model()->columnCount(), 5);
}

TEST_F(RememberedWindow, ThePageAndTheLaddersColumnsSortAndFilters) {
  {
    const auto window = open();
    window->findChild<QTabWidget*>()->setCurrentWidget(window->findChild<ui::LadderPage*>());
    ASSERT_TRUE(soon([&] { return !window->session().ladder().running(); }));
    auto& table = control<QTableView>(*window, "Ladder");
    table.setColumnHidden(3, true);
    table.sortByColumn(2, Qt::AscendingOrder);
    control<QSpinBox>(*window, "Within per cent").setValue(7);
    window->findChild<QTabWidget*>()->setCurrentWidget(window->findChild<ui::LadderPage*>());
    EXPECT_TRUE(window->close());
  }
  const auto window = open();
  EXPECT_EQ(window->findChild<QTabWidget*>()->currentWidget(), window->findChild<ui::LadderPage*>());
  ASSERT_TRUE(window->currentPage());
  auto& table = control<QTableView>(*window, "Ladder");
  EXPECT_TRUE(table.isColumnHidden(3));
  EXPECT_FALSE(table.isColumnHidden(2));
  EXPECT_EQ(table.horizontalHeader()->sortIndicatorSection(), 2);
  EXPECT_EQ(table.horizontalHeader()->sortIndicatorOrder(), Qt::AscendingOrder);
  EXPECT_EQ(control<QSpinBox>(*window, "Within per cent").value(), 7);
}

}  // namespace
}  // namespace layshaft::test
