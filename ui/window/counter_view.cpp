// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/counter_view.h"

#include <QGuiApplication>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QScreen>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/document/setup_edits.h"
#include "ui/window/main_window.h"
#include "ui/words/counter_words.h"
#include "ui/words/plain_text.h"

namespace layshaft::ui {
namespace {

constexpr int kTimesAsLarge = 2;  // as the main window's type

QFont enlarged(QFont font) {
  if (font.pointSizeF() > 0)
    font.setPointSizeF(kTimesAsLarge * font.pointSizeF());
  else
    font.setPixelSize(kTimesAsLarge * font.pixelSize());
  return font;
}

QScreen* displayBeside(const QScreen* taken) {
  for (QScreen* screen : QGuiApplication::screens())
    if (screen != taken) return screen;
  return nullptr;
}

}  // namespace

CounterView::CounterView(MainWindow& window)
    : QWidget(&window, Qt::Window), window_(window), session_(window.sharedSession()) {
  setAttribute(Qt::WA_DeleteOnClose);
  setWindowTitle(tr("Counter View – Layshaft"));
  setAttribute(Qt::WA_KeyboardFocusChange);  // the focus is seen before a key is pressed
  setFont(enlarged(window.font()));
  screens_ = new QStackedWidget;
  first_ = new CounterQuestion(tr("What would you like?"),
                               {{tr("More Punch"), tr("Pulls harder, and revs higher")},
                                {tr("Less Buzz"), tr("Fewer revs, and a calmer ride")},
                                {tr("Compare Choices"), tr("Side by side")}},
                               this);
  which_ =
      new CounterQuestion(tr("Compare which?"),
                          {{tr("Familiar Steps"), tr("Two teeth more at the rear, one less in front, both")},
                           {tr("What We Kept for You"), tr("The setups pinned on this bike")}},
                          this);
  columns_ = new CounterColumns(this);
  for (QWidget* screen : std::initializer_list<QWidget*>{first_, which_, columns_})
    screens_->addWidget(screen);
  auto* column = new QVBoxLayout(this);
  column->addLayout(header());
  column->addWidget(screens_, 1);
  connect(first_, &CounterQuestion::answered, this, [this](int which) {
    if (which == 2) return compare();
    answer(which == 0 ? Wish::Shorter : Wish::Taller);
  });
  connect(which_, &CounterQuestion::answered, this,
          [this](int which) { answer(which == 0 ? Wish::FamiliarSteps : Wish::Pins); });
  connect(columns_, &CounterColumns::taken, this,
          [this](int choice) { take(static_cast<std::size_t>(choice)); });
  connect(&session_->planner(), &Planner::settled, this, &CounterView::refresh);
  connect(&window, &MainWindow::preferencesTaken, this, &CounterView::refresh);
  turnTo(first_);
}

QLayout* CounterView::header() {
  auto* row = new QHBoxLayout;
  back_ = new QPushButton;
  back_->setAutoDefault(true);
  back_->setMinimumSize(10 * fontMetrics().averageCharWidth(), 2 * fontMetrics().height());
  connect(back_, &QPushButton::clicked, this, &CounterView::back);
  row->addWidget(back_);
  row->addSpacing(fontMetrics().averageCharWidth());
  title_ = new QLabel;
  title_->setTextFormat(Qt::PlainText);
  row->addWidget(title_, 1);
  key_ = new QLabel(worthKey());
  row->addWidget(key_);
  return row;
}

void CounterView::open(MainWindow& window) {
  auto* view = window.findChild<CounterView*>(QString(), Qt::FindDirectChildrenOnly);
  if (!view) {
    view = new CounterView(window);
    const QScreen* beside = displayBeside(window.screen());
    view->setGeometry((beside ? beside : window.screen())->geometry());
  }
  view->showFullScreen();
  view->raise();
  view->activateWindow();
}

void CounterView::turnTo(QWidget* screen) {
  screens_->setCurrentWidget(screen);
  refresh();
  if (screen == columns_)
    columns_->takeFocus();
  else
    static_cast<CounterQuestion*>(screen)->takeFocus();
}

void CounterView::answer(Wish wish) {
  wish_ = wish;
  turnTo(columns_);
}

void CounterView::compare() {
  if (session_->document().profile().pins.empty()) return answer(Wish::FamiliarSteps);
  turnTo(which_);
}

void CounterView::back() {
  const QWidget* here = screens_->currentWidget();
  if (here == first_) {
    close();
    return;
  }
  const bool wasAsked = here == columns_ && (wish_ == Wish::FamiliarSteps || wish_ == Wish::Pins) &&
                        !session_->document().profile().pins.empty();
  turnTo(wasAsked ? which_ : first_);
}

SharedPlan CounterView::planOf(const PlanInput& input) const {
  const auto kept = std::find_if(plans_.begin(), plans_.end(),
                                 [&](const SharedPlan& plan) { return plan->input == input; });
  if (kept != plans_.end()) return *kept;
  return std::make_shared<const Plan>(plan(input, &session_->planner().current()));
}

void CounterView::refresh() {
  const Profile& profile = session_->document().profile();
  const bool choosing = screens_->currentWidget() == columns_;
  title_->setText(shownName(profile.name));
  back_->setText(screens_->currentWidget() == first_ ? tr("Leave") : tr("◀ Back"));
  key_->setVisible(choosing);
  if (!choosing) return;
  offers_ = offers(profile, wish_);
  std::vector<SharedPlan> plans;
  std::vector<CounterColumns::Choice> choices;
  const Setup proposed = applied(profile.proposed, profile.stock);
  for (const Offer& offer : offers_) {
    plans.push_back(planOf(offerInput(profile, offer)));
    choices.push_back({shownName(offer.name), plans.back(), plans.back()->proposed.setup == proposed});
  }
  plans_ = std::move(plans);
  columns_->show(choices, window_.units());
  if (choices.empty()) back_->setFocus();
}

void CounterView::take(std::size_t choice) {
  if (choice < offers_.size())
    SetupEdits::propose(session_->document(), tr("counter view choice"), offers_[choice].change);
}

void CounterView::keyPressEvent(QKeyEvent* event) {
  if (event->key() == Qt::Key_Escape) return back();
  QWidget::keyPressEvent(event);
}

void CounterView::closeEvent(QCloseEvent* event) {
  QWidget::closeEvent(event);
  window_.raise();
  window_.activateWindow();
}

}  // namespace layshaft::ui
