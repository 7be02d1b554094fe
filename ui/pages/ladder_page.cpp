// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/ladder_page.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QMenu>
#include <QVBoxLayout>

#include "core/limits.h"
#include "core/report.h"
#include "ui/aim_words.h"

namespace layshaft::ui {
namespace {

constexpr int kAnyPercent = 0;  // shown as "any"

}  // namespace

LadderPage::LadderPage(QWidget* aims, QWidget* parent)
    : Page(parent),
      table_(new QTableView),
      fewestFront_(new WholeBox),
      mostFront_(new WholeBox),
      fewestRear_(new WholeBox),
      mostRear_(new WholeBox),
      within_(new WholeBox),
      fits_(new QCheckBox(tr("fits on this chain"))),
      spares_(new QCheckBox(tr("from the spares box"))),
      twins_(new QCheckBox(tr("twins"))),
      progress_(new QProgressBar),
      answer_(new QLabel),
      empty_(new QLabel(tr("No pair of this range passes the filters."))),
      stop_(new QPushButton(tr("Stop"))),
      again_(new QPushButton(tr("Work it out"))),
      pin_(new QPushButton(tr("Pin"))) {
  table_->setModel(&filter_);
  table_->setAccessibleName(tr("Ladder"));
  table_->setSortingEnabled(true);
  table_->sortByColumn(LadderModel::FinalRatio, Qt::DescendingOrder);
  table_->setSelectionBehavior(QAbstractItemView::SelectRows);
  table_->setSelectionMode(QAbstractItemView::SingleSelection);
  table_->verticalHeader()->hide();
  table_->verticalHeader()->setDefaultSectionSize(table_->fontMetrics().height() + 6);
  table_->setTabKeyNavigation(false);
  table_->setColumnHidden(LadderModel::StandingStart, true);
  table_->horizontalHeader()->setContextMenuPolicy(Qt::CustomContextMenu);
  table_->horizontalHeader()->setToolTip(tr("Click to sort; right click to choose the columns."));
  connect(table_->horizontalHeader(), &QWidget::customContextMenuRequested, this, &LadderPage::chooseColumns);
  table_->setContextMenuPolicy(Qt::CustomContextMenu);  // the header gets no keys
  connect(table_, &QWidget::customContextMenuRequested, this, &LadderPage::chooseColumns);
  table_->setToolTip(tr("Click a row, or press Enter on it: the pair becomes the proposal."));
  connect(table_, &QTableView::clicked, this, &LadderPage::choose);
  connect(table_, &QTableView::activated, this, &LadderPage::choose);

  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(10, 6, 10, 4);
  auto* bar = new QHBoxLayout;
  const auto box = [&](WholeBox* spin, const QString& name, const Limit& limit) {
    spin->setRange(static_cast<int>(limit.low), static_cast<int>(limit.high));
    spin->setAccessibleName(name);
    spin->setToolTip(name);
    connect(spin, &QSpinBox::valueChanged, this, [this, spin] {
      ownRange_ = true;
      keepOrder(spin);
      restart();
    });
    bar->addWidget(spin);
  };
  bar->addWidget(new QLabel(tr("front")));
  box(fewestFront_, tr("Fewest front teeth"), limits::kFrontTeeth);
  bar->addWidget(new QLabel(tr("to")));
  box(mostFront_, tr("Most front teeth"), limits::kFrontTeeth);
  bar->addWidget(new QLabel(tr("rear")));
  box(fewestRear_, tr("Fewest rear teeth"), limits::kRearTeeth);
  bar->addWidget(new QLabel(tr("to")));
  box(mostRear_, tr("Most rear teeth"), limits::kRearTeeth);
  bar->addSpacing(12);
  bar->addWidget(fits_);
  bar->addWidget(spares_);
  bar->addWidget(twins_);
  bar->addWidget(new QLabel(tr("within")));
  within_->setRange(kAnyPercent, 100);
  within_->setSpecialValueText(tr("any"));
  within_->setSuffix(tr(" %"));
  within_->setAccessibleName(tr("Within per cent"));
  within_->setToolTip(tr("Only pairs whose gearing differs from stock's by at most so much."));
  bar->addWidget(within_);
  bar->addStretch();
  progress_->setTextVisible(false);
  progress_->setMaximumWidth(90);
  bar->addWidget(progress_);
  bar->addWidget(stop_);
  again_->setToolTip(tr("The ladder was stopped: rows in grey are old ones."));
  again_->setVisible(false);
  bar->addWidget(again_);
  pin_->setToolTip(tr("Keeps the selected pair on the charts."));
  bar->addWidget(pin_);
  column->addLayout(bar);
  column->addWidget(table_, 1);
  empty_->setAccessibleName(tr("Why nothing is listed"));
  empty_->setVisible(false);
  column->addWidget(empty_);
  answer_->setAccessibleName(tr("Answer to the aims"));
  answer_->setWordWrap(true);
  answer_->setVisible(false);
  column->addWidget(answer_);
  column->addWidget(aims);

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
  connect(stop_, &QPushButton::clicked, &study_, &LadderStudy::cancel);
  connect(pin_, &QPushButton::clicked, this, [this] {
    if (const auto row = current()) emit pairPinned(row->frontTeeth, row->rearTeeth);
  });
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
  connect(&study_, &LadderStudy::cancelled, this, [this] {
    rest();
    again_->setVisible(true);
  });
  connect(again_, &QPushButton::clicked, this, [this] {
    worked_.reset();
    restart();
  });
  progress_->setVisible(false);
  stop_->setVisible(false);
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
      QFontMetrics(bold).horizontalAdvance(QStringLiteral("00/00 ") + tr("proposed")) + 16);
  // What is asked for stands beside the pair, and is cut short there; else twins come last.
  const bool asked = !worked_->aims.empty();
  header.moveSection(header.visualIndex(LadderModel::Aims), asked ? 1 : header.count() - 1);
  const int most = table_->fontMetrics().averageCharWidth() * 36;
  if (asked && table_->columnWidth(LadderModel::Aims) > most) table_->setColumnWidth(LadderModel::Aims, most);
}

void LadderPage::sayWhetherEmpty() {
  empty_->setVisible(model_.settled() && filter_.rowCount() == 0);
}

void LadderPage::use(const Profile& profile) {
  profile_ = profile;
}

void LadderPage::showPlan() {
  if (!profile_) return;
  fits_->setText(isBelt(plan_->proposed.setup) ? tr("fits on this belt") : tr("fits on this chain"));
  if (model_.show(units_) && model_.settled()) sayAnswer();
  const Setup& stock = plan_->stock.setup;
  const Setup& proposed = plan_->proposed.setup;
  model_.mark(stock.frontTeeth.count(), stock.rearTeeth.count(), proposed.frontTeeth.count(),
              proposed.rearTeeth.count());
  if (!ownRange_) {
    range_ = usualRange(*profile_);
    const auto showEnd = [](WholeBox* spin, int value) { showValue(*spin, value); };
    showEnd(fewestFront_, range_.fewestFront);
    showEnd(mostFront_, range_.mostFront);
    showEnd(fewestRear_, range_.fewestRear);
    showEnd(mostRear_, range_.mostRear);
  }
  restart();
}

void LadderPage::restart() {
  if (!profile_) return;
  const LadderRange wanted{fewestFront_->value(), mostFront_->value(), fewestRear_->value(),
                           mostRear_->value()};
  LadderInput input = ladderInput(*profile_);
  if (wanted == workedRange_ && worked_ == input) return;
  worked_ = std::move(input);
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
  QString out;
  for (const QStringList& row : numbers()) {
    QStringList cells;
    for (const QString& cell : row) cells << QString::fromStdString(csvField(cell.toStdString()));
    out += cells.join(QLatin1Char(',')) + QLatin1Char('\n');
  }
  return out;
}

}  // namespace layshaft::ui
