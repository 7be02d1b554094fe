// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/season_view.h"

#include <QAction>
#include <QHBoxLayout>
#include <QSignalBlocker>
#include <QVBoxLayout>
#include <utility>

#include "ui/words/numbers.h"

namespace layshaft::ui {
namespace {

const QString kLeftOut = QStringLiteral("left_out");

PairTeeth pairOf(const Setup& setup) {
  return {setup.frontTeeth.count(), setup.rearTeeth.count()};
}

}  // namespace

SeasonView::SeasonView(BackgroundLane& lane, QWidget* parent) : LapView(parent), study_(lane, this) {}

void SeasonView::build() {
  words_ = makeWords(tr("The season in words"));
  table_ = makeTable(tr("Tracks of the season"), 6);
  addAction(*table_, tr("Part of the Season"), {QKeySequence(Qt::Key_Space)}, [this] { toggleTrack(); });
  addAction(*table_, tr("Ride This Track"), {}, [this] { ride(); });
  table_->setToolTip(
      tr("Tick the tracks of the season. Tyre, gearbox and chain are the proposal's; losses are against the "
         "quickest pair that can be made to fit."));
  pairs_ = makeTable(tr("One pair for all tracks"), 4);
  tables_ = new QHBoxLayout;
  tables_->addWidget(table_, 2);
  tables_->addWidget(pairs_, 1);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(10, 4, 10, 0);
  column->addWidget(words_);
  column->addLayout(makeBar());
  column->addLayout(tables_, 1);
  connect(table_, &QTableWidget::itemChanged, this, [this](const QTableWidgetItem* item) {
    if (item->column() == 0) choose(item->row(), item->checkState() == Qt::Checked);
  });
  watchStudy();
}

FiguresTable* SeasonView::makeTable(const QString& name, int columns) {
  auto* table = new FiguresTable(name, columns);
  table->letChoose();
  constexpr int kLeastLines = 7;  // of text: titles, and some rows
  table->setMinimumHeight(kLeastLines * table->fontMetrics().lineSpacing());
  table->setContextMenuPolicy(Qt::ActionsContextMenu);
  addAction(*table, tr("Propose This Pair"), {QKeySequence(Qt::Key_Enter), QKeySequence(Qt::Key_Return)},
            [this, table] { proposeFrom(*table); });
  connect(table, &QTableWidget::doubleClicked, this, [this, table] { proposeFrom(*table); });
  connect(table, &QTableWidget::currentCellChanged, this, [this, table] {
    chosenIn_ = table;
    sayWhatIsChosen();
  });
  return table;
}

void SeasonView::addAction(QWidget& to, const QString& text, const QList<QKeySequence>& keys,
                           const std::function<void()>& act) {
  auto* action = new QAction(text, &to);
  action->setShortcuts(keys);
  action->setShortcutContext(Qt::WidgetShortcut);
  to.addAction(action);
  connect(action, &QAction::triggered, this, act);
}

QLayout* SeasonView::makeBar() {
  propose_ = new QPushButton;
  propose_->setToolTip(tr("The pair of the chosen row becomes the proposal (Enter)."));
  connect(propose_, &QPushButton::clicked, this, [this] { proposeFrom(*chosenIn_); });
  ride_ = new QPushButton(tr("Ride This Track"));
  ride_->setToolTip(tr("Laps are ridden on the track of the chosen row from now on."));
  connect(ride_, &QPushButton::clicked, this, &SeasonView::ride);
  progress_ = new ProgressRow(study_, tr("The laps were stopped; what is in grey is out of date."));
  connect(progress_, &ProgressRow::againWanted, this, [this] {
    asked_.reset();
    work();
  });
  auto* row = new QHBoxLayout;
  row->addWidget(propose_);
  row->addWidget(ride_);
  row->addStretch(1);
  row->addWidget(progress_);
  sayWhatIsChosen();
  return row;
}

void SeasonView::watchStudy() {
  connect(&study_, &SeasonStudy::partReady, this, &SeasonView::add);
  connect(&study_, &BackgroundWork::finished, this, [this] {
    if (std::exchange(askingBands_, false)) return;
    coming_.worked = true;
    book_ = std::exchange(coming_, {});
    shown_ = asked_;
    reckon();
  });
  connect(&study_, &SeasonStudy::bandsReady, this, [this](const std::vector<std::optional<double>>& bandsS) {
    book_.bandS = bandsS.front();
    book_.behindBandS.assign(bandsS.begin() + 1, bandsS.end());
    present();
  });
  connect(&study_, &BackgroundWork::failed, words_, &QLabel::setText);
}

void SeasonView::use(SeasonInput input) {
  if (input_ == input) return;
  input_ = std::move(input);
  if (plan_ && isVisible()) work();
}

void SeasonView::showPlan() {
  stock_ = pairOf(plan_->stock.setup);
  proposed_ = pairOf(plan_->proposed.setup);
  work();
  present();
}

void SeasonView::showEvent(QShowEvent* event) {
  LapView::showEvent(event);
  placeTables();  // it may have had its size before there was anything to place
  work();
}

void SeasonView::resizeEvent(QResizeEvent* event) {
  LapView::resizeEvent(event);
  if (tables_) placeTables();
}

/// Where both tables do not find their columns side by side, one stands below the other.
void SeasonView::placeTables() {
  constexpr int kWideCharacters = 130;
  const bool wide = width() >= kWideCharacters * fontMetrics().averageCharWidth();
  tables_->setDirection(wide ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
}

/// Nobody waits for it any more.
void SeasonView::hideEvent(QHideEvent* event) {
  LapView::hideEvent(event);
  if (event->spontaneous() || !study_.running()) return;
  if (!std::exchange(askingBands_, false)) asked_.reset();
  study_.giveUp();
}

SeasonView::Question SeasonView::question() const {
  const LadderRange range = usualRange(input_->ladder);
  const bool inRange = range.contains(proposed_.front, proposed_.rear);
  return {*input_, range, inRange ? std::nullopt : std::optional(proposed_)};
}

void SeasonView::work() {
  if (!input_ || !plan_ || !isBuilt()) return;
  Question wanted = question();
  const bool same = asked_ && asked_->input == wanted.input && asked_->range == wanted.range;
  if (same && (!wanted.another || wanted.another == asked_->another)) return askBands();
  coming_ = bookOf(wanted);
  if (!book_.worked) book_ = coming_;
  askingBands_ = false;
  progress_->begin();
  asked_ = std::move(wanted);
  study_.start(asked_->input, asked_->range, asked_->another);
  reckon();
}

/// Whether what is in view was worked out for something else.
bool SeasonView::outdated() const {
  return shown_ && asked_ && (shown_->input != asked_->input || shown_->range != asked_->range);
}

/// Bikes may have tracks of one name.
std::string SeasonView::nameOnBike(const std::string& track) const {
  return plan_->bikeName + '\n' + track;
}

SeasonBook SeasonView::bookOf(const Question& question) const {
  SeasonBook book;
  book.range = question.range;
  book.belt = isBelt(plan_->proposed.setup);
  for (const Track& track : question.input.tracks)
    book.tracks.push_back({.track = track, .chosen = !isLeftOut(track.name)});
  return book;
}

void SeasonView::add(const SeasonPart& part) {
  SeasonTrack& track = coming_.tracks[part.track];
  track.rows.insert(track.rows.end(), part.rows.begin(), part.rows.end());
  track.stockS = part.stockS;
  track.refusal = part.refusal;
}

/// After another book, or another choice of its tracks.
void SeasonView::reckon() {
  for (SeasonTrack& track : book_.tracks) track.chosen = !isLeftOut(track.track.name);
  addUp(book_);
  present();
  askBands();
}

/// How far the losses in view may be off, where nobody knows yet and nothing else is under way.
void SeasonView::askBands() {
  if (book_.bandS || book_.season.empty() || outdated() || !isVisible()) return;
  if (study_.running() && !askingBands_) return;
  const auto rowOf = [this](std::size_t track, const SeasonPair& pair) {
    return *book_.row(track, {pair.frontTeeth, pair.rearTeeth});
  };
  const auto& pairs = book_.season.pairs;
  std::vector<std::vector<SeasonDifference>> sums(std::min(pairs.size(), kSeasonPairsTold));
  for (const std::size_t track : book_.ridden) {
    const LapRow one = rowOf(track, pairs.front());
    sums.front().push_back({track, book_.quickest(track).value(), one});
    for (std::size_t i = 1; i < sums.size(); ++i) sums[i].push_back({track, one, rowOf(track, pairs[i])});
  }
  askingBands_ = true;
  study_.askBands(sums);
}

void SeasonView::present() {
  const QSignalBlocker quiet(table_);
  std::vector<bool> ticks;
  for (const SeasonTrack& track : book_.tracks) ticks.push_back(track.chosen);
  words_->setText(seasonWords(book_, stock_));
  words_->setEnabled(!outdated());
  table_->show(seasonTable(book_, stock_, proposed_));
  table_->tick(ticks);
  pairs_->show(seasonPairsTable(book_));
  for (FiguresTable* table : {table_, pairs_}) table->fade(outdated());
  sayWhatIsChosen();
}

void SeasonView::choose(int track, bool chosen) {
  const auto index = static_cast<std::size_t>(track);
  if (index >= book_.tracks.size() || book_.tracks[index].chosen == chosen) return;
  const std::string& name = book_.tracks[index].track.name;
  if (chosen)
    leftOut_.erase(nameOnBike(name));
  else
    leftOut_.insert(nameOnBike(name));
  reckon();
}

std::optional<std::size_t> SeasonView::trackAtCursor() const {
  const auto row = static_cast<std::size_t>(table_->currentRow());
  return table_->currentRow() >= 0 && row < book_.tracks.size() ? std::optional(row) : std::nullopt;
}

void SeasonView::toggleTrack() {
  if (const auto track = trackAtCursor()) choose(static_cast<int>(*track), !book_.tracks[*track].chosen);
}

std::optional<PairTeeth> SeasonView::pairAtCursor(const FiguresTable& table) const {
  const auto& pairs = book_.season.pairs;
  if (table.currentRow() < 0) return std::nullopt;
  auto row = static_cast<std::size_t>(table.currentRow());
  if (&table == table_) {
    if (row < book_.tracks.size()) {
      const auto best = book_.quickest(row);
      return best ? std::optional(PairTeeth{best->frontTeeth, best->rearTeeth}) : std::nullopt;
    }
    row = 0;  // the row of sums is of the pair for all
  }
  return row < pairs.size() ? std::optional(PairTeeth{pairs[row].frontTeeth, pairs[row].rearTeeth})
                            : std::nullopt;
}

/// The button names the pair of the row that was chosen last.
void SeasonView::sayWhatIsChosen() {
  if (!propose_) return;  // before the buttons are made
  const auto pair = chosenIn_ ? pairAtCursor(*chosenIn_) : std::nullopt;
  propose_->setText(pair ? tr("Propose %1", "a pair").arg(pairText(pair->front, pair->rear))
                         : tr("Propose This Pair"));
  propose_->setEnabled(pair.has_value());
  ride_->setEnabled(trackAtCursor().has_value());
}

void SeasonView::proposeFrom(const FiguresTable& table) {
  if (const auto pair = pairAtCursor(table)) emit pairChosen(pair->front, pair->rear);
}

void SeasonView::ride() {
  if (const auto track = trackAtCursor()) emit trackChosen(book_.tracks[*track].track.name);
}

std::vector<QStringList> SeasonView::numbers() const {
  return seasonTable(book_, stock_, proposed_);
}

QString SeasonView::csv() const {
  return seasonCsv(book_, proposed_);
}

QVariantMap SeasonView::state() const {
  QStringList names;
  for (const std::string& name : leftOut_) names << QString::fromStdString(name);
  return {{kLeftOut, names}};
}

void SeasonView::restore(const QVariantMap& state) {
  leftOut_.clear();
  for (const QString& name : state.value(kLeftOut).toStringList()) leftOut_.insert(name.toStdString());
  if (!book_.tracks.empty()) reckon();
}

}  // namespace layshaft::ui
