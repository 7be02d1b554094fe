// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLabel>
#include <QPushButton>
#include <QTabBar>
#include <QTabWidget>

#include "tests/ui/support.h"
#include "ui/document/preferences.h"
#include "ui/pages/lap_page.h"

namespace layshaft::test {

/// A window on the Lap page with one of its views, and the study that the view has its results from.
template <class View, class Study>
class LapViewTest : public testing::Test, FreshSettings {
 protected:
  /// `title` is the view's.
  explicit LapViewTest(QString title) : title_(std::move(title)) {
    ui::preferences::setUnits(ui::UnitsShown(ui::UnitSystem::Metric));
  }

  void openPage(Profile profile) {
    window_ = std::make_unique<Window>(std::move(profile));
    page_ = (*window_)->template findChild<ui::LapPage*>();
    view_ = (*window_)->template findChild<View*>();
    study_ = view_->template findChild<Study*>();
    (*window_)->template findChild<QTabWidget*>()->setCurrentWidget(page_);
  }
  void look(const QString& title) {
    auto* bar = page_->template findChild<QTabBar*>();
    for (int i = 0; i < bar->count(); ++i)
      if (bar->tabText(i) == title) bar->setCurrentIndex(i);
  }
  void look() { look(title_); }
  void open(Profile profile) {
    openPage(std::move(profile));
    look();
    wait();
  }
  void wait() {
    ASSERT_TRUE(soon([&] { return !study_->running(); }));
    QTest::qWait(20);
  }
  ui::Document& document() { return (*window_)->document(); }
  const Profile& profile() { return window_->profile(); }
  QUndoStack& history() { return document().undoStack(); }
  QPushButton& button(const QString& text) {
    for (auto* one : view_->template findChildren<QPushButton*>())
      if (one->text().startsWith(text)) return *one;
    throw std::runtime_error("no button " + text.toStdString());
  }
  /// In a window of each of two sizes, that the words and what is right of them are whole.
  void expectNothingCut(const QString& words, const QWidget& last, const QAbstractScrollArea& table,
                        int rowPx) {
    ui::preferences::setHintsDismissed(true);
    for (const QSize size : {QSize(1270, 690), QSize(1000, 690)}) {
      (*window_)->resize(size);
      QTest::qWait(50);
      auto& label = control<QLabel>(*view_, words);
      EXPECT_LE(label.heightForWidth(label.width()), label.height()) << size.width();
      EXPECT_GE(table.viewport()->height(), 2 * rowPx) << size.width();
      EXPECT_LE(last.geometry().right(), view_->width()) << size.width();
    }
  }

  const QString title_;
  std::unique_ptr<Window> window_;
  ui::LapPage* page_ = nullptr;
  View* view_ = nullptr;
  Study* study_ = nullptr;
};

}  // namespace layshaft::test
