// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/lap_page.h"

#include <QHBoxLayout>

#include "ui/pages/side_scroll.h"
#include "ui/words/cautions.h"
#include "ui/words/lap_words.h"

namespace layshaft::ui {
namespace {

const QString kView = QStringLiteral("view");

}  // namespace

LapPage::LapPage(MakeWidget conditions, QWidget* parent)
    : Page(parent),
      makeConditions_(std::move(conditions)),
      bar_(new QTabBar(this)),
      stack_(new QStackedWidget(this)) {
  bar_->setDrawBase(false);
  bar_->setExpanding(false);
  bar_->setAccessibleName(tr("Ways to look at the laps"));
}

void LapPage::add(LapView* view, const QString& title, const QString& word) {
  views_.push_back({view, word});
  stack_->addWidget(view);
  bar_->addTab(title);
  connect(view, &Page::detailsWanted, this, &Page::detailsWanted);
  connect(view, &Page::pictureMenuWanted, this, &Page::pictureMenuWanted);
}

void LapPage::build() {
  auto* views = new QVBoxLayout;
  views->setSpacing(0);
  views->addWidget(bar_);
  views->addWidget(stack_, 1);
  auto* row = new QHBoxLayout;
  row->setSpacing(0);
  row->addLayout(views, 1);
  row->addWidget(new SideScroll(side(), sideWidth()));
  honesty_ = new QLabel;
  honesty_->setWordWrap(true);
  honesty_->setAccessibleName(tr("What the times rest on"));
  honesty_->setContentsMargins(10, 2, 10, 4);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  column->addLayout(row, 1);
  column->addWidget(honesty_);
  connect(bar_, &QTabBar::currentChanged, this, &LapPage::look);
  look();
}

QWidget* LapPage::side() {
  auto* panel = new QWidget;
  side_ = new QVBoxLayout(panel);
  side_->setContentsMargins(6, 4, 8, 4);
  side_->setSpacing(4);
  side_->addWidget(makeConditions_());
  side_->addStretch();
  return panel;
}

LapView* LapPage::view() const {
  return qobject_cast<LapView*>(stack_->currentWidget());
}

bool LapPage::laps() const {
  return plan_ && plan_->stock.lap && plan_->proposed.lap;
}

/// Brings the chosen view into sight; without laps the first, which says what is missing.
void LapPage::look() {
  bar_->setVisible(laps() && bar_->count() > 1);
  LapView* chosen = views_.at(laps() ? static_cast<std::size_t>(bar_->currentIndex()) : 0).view;
  chosen->ensureBuilt();
  placeBeside(*chosen);
  stack_->setCurrentWidget(chosen);
}

void LapPage::placeBeside(LapView& view) {
  QWidget* now = view.beside();
  if (now && side_->indexOf(now) < 0) side_->insertWidget(0, now, 1);
  for (const Place& place : views_)
    if (QWidget* other = place.view->beside()) other->setVisible(other == now);
}

void LapPage::showPlan() {
  look();
  for (const Place& place : views_) place.view->take(plan_, units_);
  honesty_->setVisible(laps());
  if (laps()) honesty_->setText(lapHonesty(*plan_) + QLatin1Char(' ') + closedCourseCaution());
}

LiveChart* LapPage::chart() {
  return view() ? view()->chart() : nullptr;
}

Picture* LapPage::picture() {
  return view() ? view()->picture() : nullptr;
}

QWidget* LapPage::mainPart() {
  return view() ? view()->mainPart() : nullptr;
}

std::vector<QStringList> LapPage::numbers() const {
  return view() ? view()->numbers() : std::vector<QStringList>();
}

QString LapPage::csv() const {
  return view() ? view()->csv() : QString();
}

QVariantMap LapPage::state() const {
  QVariantMap state;
  for (const Place& place : views_)
    if (place.view->isBuilt()) state.insert(place.word, place.view->state());
  state.insert(kView, views_.at(static_cast<std::size_t>(bar_->currentIndex())).word);
  return state;
}

void LapPage::restore(const QVariantMap& state) {
  const QString word = state.value(kView).toString();
  for (std::size_t i = 0; i < views_.size(); ++i) {
    const Place& place = views_[i];
    if (place.word == word) bar_->setCurrentIndex(static_cast<int>(i));
    const QVariantMap own = state.value(place.word).toMap();
    if (own.isEmpty()) continue;
    if (place.view->isBuilt())
      place.view->restore(own);
    else
      connect(place.view, &Page::wasBuilt, place.view, [view = place.view, own] { view->restore(own); });
  }
}

}  // namespace layshaft::ui
