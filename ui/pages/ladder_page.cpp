// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/ladder_page.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QMenu>
#include <QVBoxLayout>

#include "core/ladder_csv.h"
#include "core/limits.h"
#include "ui/words/aim_words.h"
#include "ui/words/cautions.h"
#include "ui/words/csv_units.h"

namespace layshaft::ui {
namespace {

// What the page's state is kept under.
const QString kHeaderState = QStringLiteral("header");
const QString kFitsState = QStringLiteral("fits");
const QString kSparesState = QStringLiteral("from_spares");
const QString kTwinsState = QStringLiteral("same_ratio");
const QString kWithinState = QStringLiteral("within_percent");
constexpr int kAnyPercent = 0;  // shown as "any"

}  // namespace

LadderPage::LadderPage(LadderStudy& study, MakeWidget aims, QWidget* parent)
    : Page(parent), study_(study), makeAims_(std::move(aims)) {}

void LadderPage::build() {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(10, 6, 10, 4);
  table_ = makeTable();
  column->addLayout(makeBar());
  column->addWidget(table_, 1);
  empty_ = new QLabel(tr("No pair in this range passes the filters."));
  empty_->setAccessibleName(tr("Why nothing is listed"));
  empty_->setVisible(false);
  column->addWidget(empty_);
  answer_ = new QLabel;
  answer_->setAccessibleName(tr("Answer to the aims"));
  answer_->setWordWrap(true);
  answer_->setVisible(false);
  column->addWidget(answer_);
  column->addWidget(makeAims_());
  auto* closed = new QLabel(closedCourseCaution());
  closed->setWordWrap(true);
  column->addWidget(closed);
  watchFilters();
  watchStudy();
}

QTableView* LadderPage::makeTable() {
  auto* table = new QTableView;
  table->setModel(&filter_);
  table->setAccessibleName(tr("Ladder"));
  table->setSortingEnabled(true);
  table->sortByColumn(LadderModel::FinalRatio, Qt::DescendingOrder);
  table->setSelectionBehavior(QAbstractItemView::SelectRows);
  table->setSelectionMode(QAbstractItemView::SingleSelection);
  table->verticalHeader()->hide();
  table->verticalHeader()->setDefaultSectionSize(table->fontMetrics().height() + 6);
  table->setTabKeyNavigation(false);
  table->setColumnHidden(LadderModel::StandingStart, true);
  table->horizontalHeader()->setContextMenuPolicy(Qt::CustomContextMenu);
  table->horizontalHeader()->setToolTip(tr("Click to sort; right click to choose the columns."));
  connect(table->horizontalHeader(), &QWidget::customContextMenuRequested, this, &LadderPage::chooseColumns);
  table->setContextMenuPolicy(Qt::CustomContextMenu);  // the header gets no keys
  connect(table, &QWidget::customContextMenuRequested, this, &LadderPage::chooseColumns);
  table->setToolTip(tr("Click a row, or press Enter on it: the pair becomes the proposal."));
  connect(table, &QTableView::clicked, this, &LadderPage::choose);
  connect(table, &QTableView::activated, this, &LadderPage::choose);
  return table;
}

/// What is listed, on the left; how far the ladder is, and the pin, on the right.
QLayout* LadderPage::makeBar() {
  auto* bar = new QHBoxLayout;
  bar->addLayout(makeRange());
  bar->addSpacing(12);
  fits_ = new QCheckBox(tr("Fits this chain"));
  spares_ = new QCheckBox(tr("From the spares box"));
  twins_ = new QCheckBox(tr("Same ratio only"));
  for (QCheckBox* box : {fits_, spares_, twins_}) bar->addWidget(box);
  bar->addWidget(new QLabel(tr("Within")));
  within_ = new WholeBox;
  within_->setRange(kAnyPercent, 100);
  within_->setSpecialValueText(tr("Any"));
  within_->setSuffix(tr(" %"));
  within_->setAccessibleName(tr("Within per cent"));
  within_->setToolTip(tr("Only pairs whose gearing differs from stock by no more than this."));
  bar->addWidget(within_);
  bar->addStretch();
  bar->addLayout(makeProgress());
  pin_ = new QPushButton(tr("Pin"));
  pin_->setToolTip(tr("Keeps the selected pair on the charts."));
  connect(pin_, &QPushButton::clicked, this, [this] {
    if (const auto row = current()) emit pairPinned(row->frontTeeth, row->rearTeeth);
  });
  bar->addWidget(pin_);
  return bar;
}

QLayout* LadderPage::makeRange() {
  auto* row = new QHBoxLayout;
  const auto box = [&](WholeBox*& spin, const QString& before, const QString& name, const Limit& limit) {
    row->addWidget(new QLabel(before));
    spin = new WholeBox;
    spin->setRange(static_cast<int>(limit.low), static_cast<int>(limit.high));
    spin->setAccessibleName(name);
    spin->setToolTip(name);
    connect(spin, &QSpinBox::valueChanged, this, [this, moved = spin] {
      ownRange_ = true;
      keepOrder(moved);
      restart();
    });
    row->addWidget(spin);
  };
  box(fewestFront_, tr("Front"), tr("Fewest front teeth"), limits::kFrontTeeth);
  box(mostFront_, tr("to"), tr("Most front teeth"), limits::kFrontTeeth);
  box(fewestRear_, tr("Rear"), tr("Fewest rear teeth"), limits::kRearTeeth);
  box(mostRear_, tr("to"), tr("Most rear teeth"), limits::kRearTeeth);
  return row;
}

QLayout* LadderPage::makeProgress() {
  auto* row = new QHBoxLayout;
  progress_ = new QProgressBar;
  progress_->setTextVisible(false);
  progress_->setMaximumWidth(90);
  stop_ = new QPushButton(tr("Stop"));
  connect(stop_, &QPushButton::clicked, &study_, &LadderStudy::cancel);
  again_ = new QPushButton(tr("Recalculate"));
  again_->setToolTip(tr("The ladder was stopped; grey rows are out of date."));
  connect(again_, &QPushButton::clicked, this, [this] {
    worked_.reset();
    restart();
  });
  for (QWidget* widget : std::initializer_list<QWidget*>{progress_, stop_, again_}) {
    widget->setVisible(false);
    row->addWidget(widget);
  }
  return row;
}

void LadderPage::watchFilters() {
  // Below the rows of an empty table nothing would say why.
  for (const auto signal : {&QAbstractItemModel::rowsInserted, &QAbstractItemModel::rowsRemoved})
    connect(&filter_, signal, this, &LadderPage::sayWhetherEmpty);
  connect(&filter_, &QAbstractItemModel::modelReset, this, &LadderPage::sayWhetherEmpty);
  connect(fits_, &QCheckBox::toggled, &filter_, &LadderFilter::setFitsOnly);
  connect(spares_, &QCheckBox::toggled, &filter_, &LadderFilter::setSparesOnly);
  connect(twins_, &QCheckBox::toggled, &filter_, &LadderFilter::setTwinsOnly);
  connect(within_, &QSpinBox::valueChanged, this, [this](int percent) {
    filter_.setWithinPercent(percent == kAnyPercent ? std::nullopt : std::optional<double>(percent));
  });
}

void LadderPage::watchStudy() {
  connect(&study_, &LadderStudy::rowsReady, &model_, &LadderModel::add);
  connect(&study_, &LadderStudy::progressed, this, [this](int done, int all) {
    progress_->setMaximum(all);
    progress_->setValue(done);
  });
  connect(&study_, &LadderStudy::finished, this, [this] {
    rest();
    model_.settle(worked_->aims);
    sayAnswer();
    sayWhetherEmpty();
    fitColumns();
  });
  const auto stopped = [this] {
    rest();
    again_->setVisible(true);
  };
  connect(&study_, &LadderStudy::cancelled, this, stopped);
  connect(&study_, &LadderStudy::failed, this, [this, stopped](const QString& why) {
    stopped();
    answer_->setText(why);
    answer_->setEnabled(true);
    answer_->setVisible(true);
  });
}

void LadderPage::chooseColumns(const QPoint& at) {
  QMenu menu;
  for (int c = LadderModel::Pair + 1; c < LadderModel::ColumnCount; ++c) {
    QAction* action = menu.addAction(model_.headerData(c, Qt::Horizontal, Qt::DisplayRole).toString());
    action->setCheckable(true);
    action->setChecked(!table_->isColumnHidden(c));
    connect(action, &QAction::toggled, this, [this, c](bool on) { table_->setColumnHidden(c, !on); });
  }
  menu.exec(table_->horizontalHeader()->mapToGlobal(at));
}

/// The other end of a range goes along where this one passes it.
void LadderPage::keepOrder(const WholeBox* moved) {
  const auto pair = [moved](WholeBox& fewest, WholeBox& most) {
    if (fewest.value() <= most.value()) return;
    if (moved == &fewest)
      showValue(most, fewest.value());
    else
      showValue(fewest, most.value());
  };
  pair(*fewestFront_, *mostFront_);
  pair(*fewestRear_, *mostRear_);
}

void LadderPage::rest() {
  progress_->setVisible(false);
  stop_->setVisible(false);
}

void LadderPage::sayAnswer() {
  // The aims that the rows were worked out for, which the profile may have left behind.
  const QString words = aimAnswerWords(model_.rows(), worked_->aims, units_);
  answer_->setText(words);
  answer_->setToolTip(words);
  answer_->setVisible(!words.isEmpty());
  answer_->setEnabled(true);
}

void LadderPage::fitColumns() {
  table_->resizeColumnsToContents();
  QHeaderView& header = *table_->horizontalHeader();
  // A pair that becomes the proposal is written in bold: room for it, so that no column moves then.
  QFont bold = table_->font();
  bold.setBold(true);
  table_->setColumnWidth(
      LadderModel::Pair,
      QFontMetrics(bold).horizontalAdvance(LadderModel::proposedText(QStringLiteral("00/00"))) + 16);
  // What is asked for stands beside the pair, and is cut short there; else twins come last.
  const bool asked = !worked_->aims.empty();
  header.moveSection(header.visualIndex(LadderModel::Aims), asked ? 1 : header.count() - 1);
  const int most = table_->fontMetrics().averageCharWidth() * 36;
  if (asked && table_->columnWidth(LadderModel::Aims) > most) table_->setColumnWidth(LadderModel::Aims, most);
}

void LadderPage::sayWhetherEmpty() {
  empty_->setVisible(model_.settled() && filter_.rowCount() == 0);
}

void LadderPage::use(LadderInput input) {
  input_ = std::move(input);
  if (plan_ && isVisible()) restart();
}

void LadderPage::showPlan() {
  if (!input_) return;
  fits_->setText(isBelt(plan_->proposed.setup) ? tr("Fits this belt") : tr("Fits this chain"));
  if (model_.show(units_, !plan_->pullBike->accelerates()) && model_.settled()) sayAnswer();
  const Setup& stock = plan_->stock.setup;
  const Setup& proposed = plan_->proposed.setup;
  model_.mark(stock.frontTeeth.count(), stock.rearTeeth.count(), proposed.frontTeeth.count(),
              proposed.rearTeeth.count());
  if (!ownRange_) {
    range_ = usualRange(*input_);
    const auto showEnd = [](WholeBox* spin, int value) { showValue(*spin, value); };
    showEnd(fewestFront_, range_.fewestFront);
    showEnd(mostFront_, range_.mostFront);
    showEnd(fewestRear_, range_.fewestRear);
    showEnd(mostRear_, range_.mostRear);
  }
  restart();
}

void LadderPage::restart() {
  if (!input_) return;
  const LadderRange wanted{fewestFront_->value(), mostFront_->value(), fewestRear_->value(),
                           mostRear_->value()};
  if (wanted == workedRange_ && worked_ == input_) return;
  worked_ = input_;
  workedRange_ = wanted;
  model_.fade();
  answer_->setEnabled(false);
  progress_->setVisible(true);
  stop_->setVisible(true);
  again_->setVisible(false);
  progress_->setValue(0);
  study_.start(*worked_, wanted);
}

std::optional<LadderRow> LadderPage::current() const {
  const QModelIndex index = table_->currentIndex();
  if (!index.isValid()) return std::nullopt;
  return model_.row(filter_.mapToSource(index).row());
}

void LadderPage::choose(const QModelIndex& index) {
  if (!index.isValid()) return;
  const LadderRow& row = model_.row(filter_.mapToSource(index).row());
  emit pairChosen(row.frontTeeth, row.rearTeeth);
}

std::vector<QStringList> LadderPage::numbers() const {
  std::vector<QStringList> rows;
  QStringList titles;
  for (int c = 0; c < filter_.columnCount(); ++c)
    titles << filter_.headerData(c, Qt::Horizontal, Qt::DisplayRole).toString();
  rows.push_back(titles);
  for (int r = 0; r < filter_.rowCount(); ++r) {
    QStringList cells;
    for (int c = 0; c < filter_.columnCount(); ++c) cells << filter_.index(r, c).data().toString();
    rows.push_back(cells);
  }
  return rows;
}

QString LadderPage::csv() const {
  std::vector<LadderRow> inView;
  for (int r = 0; r < filter_.rowCount(); ++r)
    inView.push_back(model_.row(filter_.mapToSource(filter_.index(r, 0)).row()));
  const std::vector<Aim> asked = worked_ ? worked_->aims : std::vector<Aim>();
  return QString::fromStdString(csvInUnits(ladderCsv(inView, asked), units_));
}

QVariantMap LadderPage::state() const {
  return {{kHeaderState, table_->horizontalHeader()->saveState()},
          {kFitsState, fits_->isChecked()},
          {kSparesState, spares_->isChecked()},
          {kTwinsState, twins_->isChecked()},
          {kWithinState, within_->value()}};
}

void LadderPage::restore(const QVariantMap& state) {
  // Of another number of columns, the header refuses what was kept.
  table_->horizontalHeader()->restoreState(state.value(kHeaderState).toByteArray());
  fits_->setChecked(state.value(kFitsState).toBool());
  spares_->setChecked(state.value(kSparesState).toBool());
  twins_->setChecked(state.value(kTwinsState).toBool());
  within_->setValue(state.value(kWithinState).toInt());
}

}  // namespace layshaft::ui
