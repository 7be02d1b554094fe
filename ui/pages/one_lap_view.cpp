// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/one_lap_view.h"

#include <QButtonGroup>
#include <QHBoxLayout>
#include <QRadioButton>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/pages/low_scroll.h"
#include "ui/words/lap_bands.h"
#include "ui/words/lap_words.h"

namespace layshaft::ui {
namespace {

constexpr int kCornerColumns = 9;
const QString kFolded = QStringLiteral("map_folded"), kColouring = QStringLiteral("map_colouring");

void say(QLabel* label, const QString& text) {
  label->setVisible(!text.isEmpty());
  if (label->text() != text) label->setText(text);
}

}  // namespace

OneLapView::OneLapView(BackgroundLane& lane, QWidget* parent) : LapView(parent), changeWork_(lane) {
  constexpr int kRestMs = 200;
  untilChange_.setSingleShot(true);
  untilChange_.setInterval(kRestMs);
  connect(&untilChange_, &QTimer::timeout, this, &OneLapView::askForChange);
}

void OneLapView::askForChange() {
  if (!book_.laps()) return;
  changeWork_.start({[this, plan = book_.plan](const BackgroundWork::Stopped&) -> BackgroundWork::Delivery {
    return [this, plan, change = lapChange(*plan, plan->proposed)] {
      if (book_.plan != plan) return;  // of a lap that is shown no more
      takeChange(book_, change);
      showWords();
    };
  }});
}

void OneLapView::build() {
  stack_ = new QStackedWidget;
  lacking_ = new LackingPanel;
  connect(lacking_, &LackingPanel::detailsWanted, this, &Page::detailsWanted);
  lap_ = pictures();
  view_ = new LowScroll(lap_);
  view_->viewport()->installEventFilter(this);  // has its size by then; the area does not
  stack_->addWidget(view_);
  stack_->addWidget(lacking_);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(stack_);
  beside_ = mapBeside();
}

/// Words, chart and table, one below the other; a low window scrolls from the chart to the table.
QWidget* OneLapView::pictures() {
  words_ = makeWords(tr("The lap in words"));
  words_->setContentsMargins(10, 4, 10, 0);
  chart_ = new LapChart;
  table_ = new FiguresTable(tr("Corners of the lap"), kCornerColumns);
  table_->showWhole();
  auto* all = new QWidget;
  auto* column = new QVBoxLayout(all);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(2);
  column->addWidget(words_);
  column->addWidget(chart_, 1);
  column->addWidget(table_);
  return all;
}

/// In a low window the chart has all of the view, and the table is scrolled to.
void OneLapView::fitChart() {
  constexpr int kEnoughLines = 28;  // of text: higher than that, the table gets the room
  const int room = view_->viewport()->height() - words_->height() - 6;
  chart_->setMinimumHeight(
      std::clamp(room, chart_->minimumSizeHint().height(), kEnoughLines * fontMetrics().lineSpacing()));
}

bool OneLapView::eventFilter(QObject* watched, QEvent* event) {
  const bool done = Page::eventFilter(watched, event);
  if (view_ && watched == view_->viewport() && event->type() == QEvent::Resize) fitChart();
  return done;
}

QWidget* OneLapView::mapBeside() {
  map_ = new TrackMap;
  connect(chart_, &LapChart::crosshairWentTo, map_, &TrackMap::mark);
  connect(map_, &TrackMap::pointedAt, chart_, &LapChart::moveTo);
  connect(map_, &TrackMap::menuRequested, this, [this](const QPoint& at) {
    asked_ = map_;  // the menu that comes of it is the map's own
    emit pictureMenuWanted(at);
    asked_ = nullptr;
  });
  fold_ = new QToolButton;
  fold_->setAutoRaise(true);
  fold_->setText(tr("Map"));
  fold_->setToolTip(tr("Shows or hides the map."));
  fold_->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
  connect(fold_, &QToolButton::clicked, this, [this] { foldMap(!folded_); });
  auto* head = new QHBoxLayout;
  head->addWidget(fold_);
  head->addStretch();
  addColourings(*head);
  auto* panel = new QWidget;
  auto* column = new QVBoxLayout(panel);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(4);
  column->addLayout(head);
  column->addWidget(map_, 1);
  foldMap(false);
  return panel;
}

void OneLapView::addColourings(QBoxLayout& row) {
  auto* group = new QButtonGroup(this);
  const auto add = [&](const QString& text, const QString& tip, TrackMap::Colouring colouring) {
    auto* button = new QRadioButton(text);
    button->setToolTip(tip);
    button->setChecked(colouring == TrackMap::Colouring::Speed);
    connect(button, &QRadioButton::toggled, this, [this, colouring](bool on) {
      if (on) map_->setColouring(colouring);
    });
    group->addButton(button);
    row.addWidget(button);
    colourings_.push_back(button);
  };
  add(tr("Speed"), tr("Colours the map by the proposal's speed."), TrackMap::Colouring::Speed);
  add(tr("Gear"), tr("Colours the map by the proposal's gear."), TrackMap::Colouring::Gear);
  add(tr("Won"), tr("Colours the map by where the proposal wins and loses time."), TrackMap::Colouring::Won);
}

void OneLapView::foldMap(bool folded) {
  folded_ = folded;
  fold_->setArrowType(folded ? Qt::RightArrow : Qt::DownArrow);
  map_->setVisible(!folded);
  for (QRadioButton* button : colourings_) button->setVisible(!folded);
}

void OneLapView::showPlan() {
  // The band of the lap before will do while something is being turned; without one nothing can be called
  // quicker.
  const auto& track = plan_->input.track;
  bandKnown_ = book_.laps() && book_.bandS > 0.0 && track && *book_.track == *track;
  book_ = lapBook(plan_, &book_);
  map_->show(book_, units_);
  if (book_.laps())
    showLap();
  else
    showWhatLacks();
}

void OneLapView::showLap() {
  stack_->setCurrentIndex(0);
  // Some laps more of each setup: at once where that is next to nothing, and at first sight.
  constexpr std::size_t kFewStretches = 12;
  const std::size_t stretches = plan_->laps->allowed().stretches().size();
  const bool quick = stretches <= (bandKnown_ ? kFewStretches : kStretchesForFirstSight);
  changeWork_.cancel();
  untilChange_.stop();
  book_.bandPending = !quick && !bandKnown_;
  if (quick)
    takeChange(book_);
  else
    untilChange_.start();
  showWords();
  chart_->show(book_, units_);
  table_->show(lapTable(book_, units_));
}

void OneLapView::showWords() {
  say(words_, lapWords(book_));
}

void OneLapView::showWhatLacks() {
  stack_->setCurrentWidget(lacking_);
  if (!book_.hasTrack())
    return lacking_->show(tr("This page laps a track, made of its straights and corners."), {"tracks"});
  if (const auto lacks = lapLacks(*plan_); !lacks.empty())
    return lacking_->show(
        tr("A lap needs the engine's torque curve, masses, drag area and the grip of the tyre."), lacks);
  lacking_->showWrong(
      book_.refusal ? lapRefusalWords(*book_.refusal, *book_.track) : stopsForGoodWords(*plan_), "tracks");
}

Picture* OneLapView::picture() {
  if (!book_.laps()) return nullptr;
  return asked_ ? asked_ : chart_;
}

std::vector<QStringList> OneLapView::numbers() const {
  return book_.laps() ? lapTable(book_, units_) : std::vector<QStringList>();
}

QString OneLapView::csv() const {
  return book_.laps() ? lapNumbersCsv(book_, units_) : QString();
}

QVariantMap OneLapView::state() const {
  return {{kFolded, folded_}, {kColouring, static_cast<int>(map_->colouring())}};
}

void OneLapView::restore(const QVariantMap& state) {
  if (const QVariant folded = state.value(kFolded); folded.isValid()) foldMap(folded.toBool());
  const auto colouring = static_cast<std::size_t>(state.value(kColouring, 0).toInt());
  if (colouring < colourings_.size()) colourings_[colouring]->setChecked(true);
}

}  // namespace layshaft::ui
