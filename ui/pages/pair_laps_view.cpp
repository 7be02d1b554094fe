// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/pair_laps_view.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/pages/low_scroll.h"
#include "ui/words/pair_laps_words.h"

namespace layshaft::ui {
namespace {

constexpr int kColumns = 6;
constexpr int kRestMs = 100, kFirstRefreshMs = 200, kNextRefreshMs = 50;

}  // namespace

PairLapsView::PairLapsView(BackgroundLane& lane, QWidget* parent) : LapView(parent), study_(lane) {
  for (QTimer* timer : {&untilStart_, &untilRefresh_}) timer->setSingleShot(true);
  connect(&untilStart_, &QTimer::timeout, this, &PairLapsView::start);
  connect(&untilRefresh_, &QTimer::timeout, this, &PairLapsView::refresh);
}

void PairLapsView::build() {
  auto* all = new QWidget;
  auto* column = new QVBoxLayout(all);
  column->setContentsMargins(10, 4, 10, 0);
  column->setSpacing(4);
  makeMap();
  makeTable();
  under_ = makeWords(tr("The pair under the cursor"));
  column->addLayout(makeHead());
  column->addWidget(map_, 1);
  column->addWidget(under_);
  column->addWidget(table_, 1);
  auto* outer = new QVBoxLayout(this);
  outer->setContentsMargins(0, 0, 0, 0);
  outer->addWidget(new LowScroll(all));
  watchStudy();
}

/// What to take on the left; how far the laps are on the right, where room is kept for it.
QLayout* PairLapsView::makeHead() {
  words_ = makeWords(tr("Which pair to take"));
  progress_ = new ProgressRow(study_, tr("The laps were stopped; grey pairs are out of date."));
  QSizePolicy policy = progress_->sizePolicy();
  policy.setRetainSizeWhenHidden(true);
  progress_->setSizePolicy(policy);
  connect(progress_, &ProgressRow::againWanted, this, [this] {
    worked_.reset();
    restart();
  });
  auto* head = new QHBoxLayout;
  head->addWidget(words_, 1);
  head->addWidget(progress_, 0, Qt::AlignTop);
  return head;
}

void PairLapsView::makeMap() {
  map_ = new PairMap;
  connect(map_, &PairMap::pairChosen, this, &PairLapsView::pairChosen);
  connect(map_, &PairMap::menuRequested, this, &Page::pictureMenuWanted);
  connect(map_, &PairMap::cursorMoved, this, &PairLapsView::sayUnderCursor);
}

void PairLapsView::makeTable() {
  constexpr int kLeastRows = 3;
  table_ = new FiguresTable(tr("Pairs by lap time"), kColumns);
  table_->setSelectionBehavior(QAbstractItemView::SelectRows);
  table_->setSelectionMode(QAbstractItemView::SingleSelection);
  table_->setMinimumHeight(kLeastRows * table_->verticalHeader()->defaultSectionSize() +
                           3 * table_->fontMetrics().height());
  table_->setToolTip(tr("Double click a row, or press Enter on it: its pair becomes the proposal."));
  connect(table_, &QTableWidget::activated, this, &PairLapsView::chooseRow);
}

void PairLapsView::watchStudy() {
  connect(&study_, &LapPairsStudy::rowsReady, this, [this](const std::vector<LapRow>& rows) {
    book_.add(rows);
    if (!untilRefresh_.isActive()) untilRefresh_.start(kNextRefreshMs);
  });
  connect(&study_, &LapPairsStudy::finished, this, [this] {
    book_.settle();
    refresh();
  });
  connect(&study_, &LapPairsStudy::cancelled, this, &PairLapsView::refresh);
  connect(&study_, &LapPairsStudy::failed, this, [this](const QString& why) {
    refresh();
    words_->setText(why);
    words_->setEnabled(true);
  });
}

void PairLapsView::use(LadderInput input) {
  input.aims.clear();
  input_ = std::move(input);
  restart();
}

void PairLapsView::showPlan() {
  const Setup& proposed = plan_->proposed.setup;
  if (book_.propose(proposed.frontTeeth.count(), proposed.rearTeeth.count())) refresh();
  restart();
}

void PairLapsView::showEvent(QShowEvent* event) {
  LapView::showEvent(event);
  restart();
}

/// Nobody waits for it any more.
void PairLapsView::hideEvent(QHideEvent* event) {
  LapView::hideEvent(event);
  if (!working()) return;
  untilStart_.stop();
  study_.cancel();
  progress_->setVisible(false);  // it goes on by itself
  worked_.reset();
}

void PairLapsView::restart() {
  if (!isVisible() || !plan_ || !input_ || !input_->track || worked_ == input_) return;
  worked_ = input_;
  if (book_.pairs().empty())
    start();
  else
    untilStart_.start(kRestMs);
}

void PairLapsView::start() {
  untilStart_.stop();
  const Setup& stock = worked_->stock;
  book_.begin({.range = usualRange(*worked_),
               .stockFront = stock.frontTeeth.count(),
               .stockRear = stock.rearTeeth.count(),
               .belt = isBelt(plan_->proposed.setup),
               .otherParts = worked_->proposed != SetupChange{}});
  begun_ = true;
  untilRefresh_.start(book_.pairs().empty() ? 0 : kFirstRefreshMs);
  study_.start(*worked_, book_.ground().range);
}

void PairLapsView::refresh() {
  untilRefresh_.stop();
  if (study_.running() && std::exchange(begun_, false)) progress_->begin();
  const auto& pairs = book_.pairs();
  const bool old = std::any_of(pairs.begin(), pairs.end(), [](const RankedPair& pair) { return pair.old; });
  if (book_.settled()) words_->setText(pairPickWords(book_));
  words_->setEnabled(book_.settled());
  map_->show(book_, plan_);
  table_->show(pairTable(book_));
  table_->fade(old);
}

void PairLapsView::sayUnderCursor() {
  const QString words = map_->crosshairWords();
  under_->setText(words.isEmpty()
                      ? map_->legend()
                      : tr("%1 A click or Enter proposes it.", "what is said of a pair").arg(words));
}

void PairLapsView::chooseRow() {
  const int at = table_->currentRow();
  if (at < 0 || at >= static_cast<int>(book_.pairs().size())) return;
  const LapRow& row = book_.pairs()[static_cast<std::size_t>(at)].row;
  emit pairChosen(row.frontTeeth, row.rearTeeth);
}

std::vector<QStringList> PairLapsView::numbers() const {
  return book_.pairs().empty() ? std::vector<QStringList>() : pairTable(book_);
}

QString PairLapsView::csv() const {
  return book_.pairs().empty() ? QString() : pairLapsCsv(book_, units_);
}

}  // namespace layshaft::ui
