// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/ladder_page.h"

#include <QActionGroup>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QTimer>
#include <QVBoxLayout>
#include <algorithm>

#include "core/ladder_csv.h"
#include "core/limits.h"
#include "ui/editors/flow_layout.h"
#include "ui/editors/ticking_menu.h"
#include "ui/words/aim_words.h"
#include "ui/words/cautions.h"
#include "ui/words/csv_units.h"
#include "ui/words/numbers.h"

namespace layshaft::ui {
namespace {

// What the page's state is kept under.
const QString kHeaderState = QStringLiteral("header");
const QString kFitsState = QStringLiteral("fits");
const QString kSparesState = QStringLiteral("from_spares");
const QString kTwinsState = QStringLiteral("same_ratio");
const QString kPinnedState = QStringLiteral("pinned");
const QString kWithinState = QStringLiteral("within_percent");
constexpr int kAnyPercent = 0;  // shown as "any"

/// Controls in a row, or in several where the width runs out.
class FlowBox : public QWidget {
 public:
  FlowBox() : flow_(new FlowLayout(this)) {
    flow_->setContentsMargins(0, 0, 0, 0);
    flow_->setSpacing(6);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  }
  void add(QWidget* widget) { flow_->addWidget(widget); }
  QSize sizeHint() const override { return {flow_->rowWidth(), flow_->neededHeight(flow_->rowWidth())}; }

 protected:
  void resizeEvent(QResizeEvent* event) override {
    QWidget::resizeEvent(event);
    setFixedHeight(flow_->neededHeight(width()));
  }

 private:
  FlowLayout* flow_;
};

/// What belongs together and stays so when rows break.
QWidget* together(QLayout* parts) {
  auto* widget = new QWidget;
  parts->setContentsMargins(0, 0, 0, 0);
  widget->setLayout(parts);
  return widget;
}

}  // namespace

LadderPage::LadderPage(LadderStudy& study, MakeAims aims, QWidget* parent)
    : Page(parent), study_(study), makeAims_(std::move(aims)) {}

void LadderPage::build() {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(10, 6, 10, 4);
  table_ = makeTable();
  makeActions();
  column->addLayout(makeBar());
  column->addWidget(table_, 1);
  empty_ = new QLabel(tr("No other pair in this range passes the filters."));
  empty_->setAccessibleName(tr("Why nothing is listed"));
  empty_->setVisible(false);
  column->addWidget(empty_);
  answer_ = new QLabel;
  answer_->setAccessibleName(tr("Answer to the aims"));
  answer_->setWordWrap(true);
  answer_->setVisible(false);
  column->addWidget(answer_);
  auto* closed = new QLabel(closedCourseCaution());
  closed->setWordWrap(true);
  column->addWidget(makeAims_(closed));
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
  table->setColumnHidden(LadderModel::Lap, !laps());
  table->setIconSize(QSize(2 * LadderModel::kMarkSide, LadderModel::kMarkSide));
  QHeaderView* header = table->horizontalHeader();
  header->setHighlightSections(false);
  // The cursor keeps its pair, and the pair went elsewhere.
  connect(header, &QHeaderView::sortIndicatorChanged, table, [table] {
    if (table->currentIndex().isValid())
      table->scrollTo(table->currentIndex().siblingAtColumn(LadderModel::Pair),
                      QAbstractItemView::PositionAtCenter);
  });
  header->setContextMenuPolicy(Qt::CustomContextMenu);
  header->setToolTip(tr("Click to sort; right click for the columns."));
  connect(header, &QWidget::customContextMenuRequested, this, &LadderPage::openHeaderMenu);
  table->setContextMenuPolicy(Qt::CustomContextMenu);
  connect(table, &QWidget::customContextMenuRequested, this, &LadderPage::openRowMenu);
  table->setToolTip(tr("Double click a row, or press Enter on it: its pair becomes the proposal."));
  connect(table, &QTableView::doubleClicked, this, &LadderPage::propose);
  connect(table->selectionModel(), &QItemSelectionModel::currentChanged, this, &LadderPage::sayPin);
  return table;
}

/// What is listed, on the left; how far the ladder is, and the pin, on the right.
QLayout* LadderPage::makeBar() {
  auto* bar = new QHBoxLayout;
  auto* flow = new FlowBox;
  flow->add(together(makeRange()));
  fit_ = new QComboBox;
  for (int i = 0; i < 3; ++i) fit_->addItem(QString());
  nameFits(false);
  fit_->setAccessibleName(tr("Fit"));
  fit_->setToolTip(tr("Only pairs that fit. A chain in the spares box may be cut for it; the row names it."));
  flow->add(fit_);
  spares_ = new QCheckBox(tr("From the spares box"));
  twins_ = new QCheckBox(tr("Same ratio only"));
  pinned_ = new QCheckBox(tr("Pinned only"));
  for (QCheckBox* box : {spares_, twins_, pinned_}) flow->add(box);
  auto* within = new QHBoxLayout;
  within->addWidget(new QLabel(tr("Within")));
  within_ = new WholeBox;
  within_->setMaximum(100);
  within_->allowNone(kAnyPercent, kAnyPercent + 1, tr("Any"), kAnyPercent);
  within_->setSuffix(tr(" %"));
  nameBox(*within_, tr("Within per cent"));
  within_->setToolTip(tr("Only pairs whose gearing differs from stock by no more than this."));
  within->addWidget(within_);
  flow->add(together(within));
  bar->addWidget(flow, 1);
  progress_ = new ProgressRow(study_, tr("The ladder was stopped; grey rows are out of date."));
  connect(progress_, &ProgressRow::againWanted, this, [this] {
    worked_.reset();
    restart();
  });
  bar->addWidget(progress_);
  pin_ = new QPushButton;
  pin_->setMinimumWidth(pin_->fontMetrics().horizontalAdvance(tr("Unpin %1").arg(QStringLiteral("00/00"))) +
                        24);
  connect(pin_, &QPushButton::clicked, this, &LadderPage::togglePin);
  sayPin();
  bar->addWidget(pin_, 0, Qt::AlignTop);
  return bar;
}

QLayout* LadderPage::makeRange() {
  auto* row = new QHBoxLayout;
  const auto box = [&](WholeBox*& spin, const QString& before, const QString& name, const Limit& limit) {
    row->addWidget(new QLabel(before));
    spin = new WholeBox;
    spin->setRange(static_cast<int>(limit.low), static_cast<int>(limit.high));
    nameBox(*spin, name);
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

/// What is called by a name and refuses by it.
void LadderPage::nameBox(WholeBox& box, const QString& name) {
  box.setAccessibleName(name);
  box.whenRefused([this, &box, name](const RefusedNumber& refusal) {
    // The value from before comes back first.
    QTimer::singleShot(0, &box, [=, this, &box] { emit refused(&box, refusedNumber(name, refusal)); });
  });
}

void LadderPage::watchFilters() {
  // Below the rows of an empty table nothing would say why.
  for (const auto signal : {&QAbstractItemModel::rowsInserted, &QAbstractItemModel::rowsRemoved})
    connect(&filter_, signal, this, &LadderPage::sayWhetherEmpty);
  connect(&filter_, &QAbstractItemModel::modelReset, this, &LadderPage::sayWhetherEmpty);
  connect(fit_, &QComboBox::currentIndexChanged, &filter_,
          [this](int asked) { filter_.setFit(static_cast<FitAsked>(asked)); });
  connect(spares_, &QCheckBox::toggled, &filter_, &LadderFilter::setSparesOnly);
  connect(twins_, &QCheckBox::toggled, &filter_, &LadderFilter::setTwinsOnly);
  connect(pinned_, &QCheckBox::toggled, &filter_, &LadderFilter::setPinnedOnly);
  connect(within_, &QSpinBox::valueChanged, this, [this](int percent) {
    filter_.setWithinPercent(percent == kAnyPercent ? std::nullopt : std::optional<double>(percent));
  });
}

void LadderPage::watchStudy() {
  connect(&study_, &LadderStudy::rowsReady, &model_, &LadderModel::add);
  connect(&study_, &LadderStudy::finished, this, [this] {
    model_.settle(worked_->aims);
    sayAnswer();
    sayWhetherEmpty();
    fitColumns();
    goToProposal();
    askForProposal();
  });
  connect(&study_, &LadderStudy::failed, this, [this](const QString& why) {
    answer_->setText(why);
    answer_->setEnabled(true);
    answer_->setVisible(true);
  });
}

/// What is done with the row under the cursor, with the keys that the row's menu shows.
void LadderPage::makeActions() {
  const auto add = [this](const QString& text, const QList<QKeySequence>& keys, void (LadderPage::*act)()) {
    auto* action = new QAction(text, table_);
    action->setShortcuts(keys);
    action->setShortcutContext(Qt::WidgetShortcut);
    table_->addAction(action);
    connect(action, &QAction::triggered, this, act);
    return action;
  };
  proposeAction_ = add(tr("Propose This Pair"), {QKeySequence(Qt::Key_Enter), QKeySequence(Qt::Key_Return)},
                       &LadderPage::propose);
  pinAction_ = add(tr("Pin"), {QKeySequence(Qt::Key_P)}, &LadderPage::togglePin);
}

void LadderPage::openRowMenu(const QPoint& at) {
  const QModelIndex cursor = table_->currentIndex();
  auto* menu = new QMenu(this);
  menu->setAttribute(Qt::WA_DeleteOnClose);
  if (const auto row = current()) {
    menu->addAction(proposeAction_);
    menu->addAction(pinAction_);
    const auto pin = pinOn(model_.pins(), row->frontTeeth, row->rearTeeth);
    if (pin && !model_.pins()[*pin].asProposed)
      menu->addAction(tr("Unpin %1 with Other Parts").arg(pairText(row->frontTeeth, row->rearTeeth)), this,
                      [this, pin] { emit pinRemoved(*pin); });
    menu->addSeparator();
  }
  addSorting(*menu->addMenu(tr("&Sort By")));
  auto* columns = new TickingMenu(tr("&Columns"), menu);
  menu->addMenu(columns);
  addColumns(*columns);
  // From the keyboard, beside the row it is about.
  const bool onCursor = table_->indexAt(at).row() == cursor.row();
  const QRect place = table_->visualRect(filter_.index(cursor.row(), LadderModel::Pair));
  menu->popup(table_->viewport()->mapToGlobal(onCursor || !cursor.isValid() ? at : place.center()));
}

void LadderPage::openHeaderMenu(const QPoint& at) {
  auto* menu = new TickingMenu(this);
  menu->setAttribute(Qt::WA_DeleteOnClose);
  addSorting(*menu->addMenu(tr("&Sort By")));
  menu->addSeparator();
  addColumns(*menu);
  menu->popup(table_->horizontalHeader()->mapToGlobal(at));
}

void LadderPage::addSorting(QMenu& menu) {
  const QHeaderView& header = *table_->horizontalHeader();
  const auto choices = [&menu] { return new QActionGroup(&menu); };
  const auto add = [&menu](QActionGroup* group, const QString& text, bool on) {
    QAction* action = group->addAction(menu.addAction(text));
    action->setCheckable(true);
    action->setChecked(on);
    return action;
  };
  auto* columns = choices();
  for (int place = 0; place < header.count(); ++place) {
    const int c = header.logicalIndex(place);
    if (header.isSectionHidden(c)) continue;
    connect(add(columns, model_.headerData(c, Qt::Horizontal, Qt::DisplayRole).toString(),
                c == header.sortIndicatorSection()),
            &QAction::triggered, this,
            [this, c] { table_->sortByColumn(c, table_->horizontalHeader()->sortIndicatorOrder()); });
  }
  menu.addSeparator();
  auto* orders = choices();
  for (const auto& [order, text] :
       {std::pair{Qt::AscendingOrder, tr("&Ascending")}, std::pair{Qt::DescendingOrder, tr("&Descending")}})
    connect(add(orders, text, order == header.sortIndicatorOrder()), &QAction::triggered, this,
            [this, order = order] {
              table_->sortByColumn(table_->horizontalHeader()->sortIndicatorSection(), order);
            });
}

void LadderPage::addColumns(QMenu& menu) {
  for (int c = LadderModel::Pair + 1; c < LadderModel::ColumnCount; ++c) {
    QAction* action = menu.addAction(model_.headerData(c, Qt::Horizontal, Qt::DisplayRole).toString());
    action->setCheckable(true);
    action->setChecked(!table_->isColumnHidden(c));
    connect(action, &QAction::toggled, this, [this, c](bool on) { table_->setColumnHidden(c, !on); });
  }
}

void LadderPage::usePins(std::vector<PinnedPair> pins) {
  model_.markPins(std::move(pins));
  sayPin();
}

/// Button and menu name the pair under the cursor and what would be done with it.
void LadderPage::sayPin() {
  if (!pin_) return;
  const auto row = current();
  pin_->setEnabled(row.has_value());
  for (QAction* action : {proposeAction_, pinAction_}) action->setEnabled(row.has_value());
  if (!row) {
    pin_->setText(tr("Pin"));
    pinAction_->setText(tr("Pin"));
    pin_->setToolTip(tr("Keeps the pair under the cursor on the charts."));
    return;
  }
  const QString pair = pairText(row->frontTeeth, row->rearTeeth);
  const auto pin = pinOn(model_.pins(), row->frontTeeth, row->rearTeeth);
  const bool pinned = pin && model_.pins()[*pin].asProposed;
  const QString text = pinned ? tr("Unpin %1").arg(pair) : tr("Pin %1").arg(pair);
  pin_->setText(text);
  pinAction_->setText(text);
  pin_->setToolTip(pinned ? tr("Takes the pair under the cursor off the charts (P).")
                          : tr("Keeps the pair under the cursor on the charts (P)."));
}

void LadderPage::togglePin() {
  const auto row = current();
  if (!row) return;
  const auto pin = pinOn(model_.pins(), row->frontTeeth, row->rearTeeth);
  if (pin && model_.pins()[*pin].asProposed)
    emit pinRemoved(*pin);
  else
    emit pairPinned(row->frontTeeth, row->rearTeeth);
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

void LadderPage::sayAnswer() {
  std::vector<LadderRow> asked;  // a proposal outside the range is none of its pairs
  for (const LadderRow& row : model_.rows())
    if (model_.range().contains(row.frontTeeth, row.rearTeeth)) asked.push_back(row);
  // The aims that the rows were worked out for, which the profile may have left behind.
  const QString words = aimAnswerWords(asked, worked_->aims, units_);
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
  const int usual =
      QFontMetrics(bold).horizontalAdvance(LadderModel::longestPairText()) + table_->iconSize().width() + 20;
  table_->setColumnWidth(LadderModel::Pair, std::max(usual, table_->columnWidth(LadderModel::Pair)));
  // What is asked for stands beside the pair, and is cut short there; else twins come last.
  const bool asked = !worked_->aims.empty();
  header.moveSection(header.visualIndex(LadderModel::Aims), asked ? 1 : header.count() - 1);
  const int most = table_->fontMetrics().averageCharWidth() * 36;
  if (asked && table_->columnWidth(LadderModel::Aims) > most) table_->setColumnWidth(LadderModel::Aims, most);
}

void LadderPage::sayWhetherEmpty() {
  const int proposals = model_.proposedRow() ? 1 : 0;
  empty_->setVisible(model_.settled() && filter_.rowCount() == proposals);
}

void LadderPage::use(LadderInput input) {
  const bool lapped = laps();
  input_ = std::move(input);
  if (table_ && laps() != lapped) table_->setColumnHidden(LadderModel::Lap, !laps());
  if (plan_ && isVisible()) restart();
}

void LadderPage::showPlan() {
  if (!input_) return;
  nameFits(isBelt(plan_->proposed.setup));
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
  askForProposal();
}

void LadderPage::showEvent(QShowEvent* event) {
  toProposal_ = true;
  Page::showEvent(event);
  goToProposal();
}

void LadderPage::nameFits(bool belt) {
  fit_->setItemText(static_cast<int>(FitAsked::None), tr("Any fit"));
  fit_->setItemText(static_cast<int>(FitAsked::Own), belt ? tr("Fits this belt") : tr("Fits this chain"));
  fit_->setItemText(static_cast<int>(FitAsked::OwnOrSpare), tr("Fits this or a spare chain"));
}

std::optional<LadderRange> LadderPage::proposalOutside() const {
  if (!plan_) return std::nullopt;
  const int front = plan_->proposed.setup.frontTeeth.count(), rear = plan_->proposed.setup.rearTeeth.count();
  if (workedRange_.contains(front, rear)) return std::nullopt;
  return LadderRange{front, front, rear, rear};
}

/// The row of a proposal outside the range, where nothing but that is lacking.
void LadderPage::askForProposal() {
  const auto outside = proposalOutside();
  if (!outside || outside == askedOutside_ || !worked_ || !model_.settled() || study_.running()) return;
  askedOutside_ = outside;
  if (!model_.proposedRow()) study_.start(*worked_, *outside);
}

/// Once after the page has come into view: the cursor goes where the bike is.
void LadderPage::goToProposal() {
  const auto row = model_.proposedRow();
  if (!toProposal_ || !row || !model_.settled()) return;
  toProposal_ = false;
  const QModelIndex index = filter_.mapFromSource(model_.index(*row, LadderModel::Pair));
  if (!index.isValid()) return;
  table_->setCurrentIndex(index);
  table_->scrollTo(index, QAbstractItemView::PositionAtCenter);
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
  progress_->begin();
  model_.setRange(wanted);
  filter_.refilter();
  std::vector<LadderRange> ranges{wanted};
  askedOutside_ = proposalOutside();
  if (askedOutside_) ranges.push_back(*askedOutside_);
  study_.start(*worked_, ranges);
}

std::optional<LadderRow> LadderPage::current() const {
  const QModelIndex index = table_->currentIndex();
  if (!index.isValid()) return std::nullopt;
  return model_.row(filter_.mapToSource(index).row());
}

void LadderPage::propose() {
  if (const auto row = current()) emit pairChosen(row->frontTeeth, row->rearTeeth);
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
          {kFitsState, fit_->currentIndex()},
          {kSparesState, spares_->isChecked()},
          {kTwinsState, twins_->isChecked()},
          {kPinnedState, pinned_->isChecked()},
          {kWithinState, within_->value()}};
}

void LadderPage::restore(const QVariantMap& state) {
  // Of another number of columns, the header refuses what was kept.
  table_->horizontalHeader()->restoreState(state.value(kHeaderState).toByteArray());
  if (!laps()) table_->setColumnHidden(LadderModel::Lap, true);
  fit_->setCurrentIndex(std::clamp(state.value(kFitsState).toInt(), 0, fit_->count() - 1));
  spares_->setChecked(state.value(kSparesState).toBool());
  twins_->setChecked(state.value(kTwinsState).toBool());
  pinned_->setChecked(state.value(kPinnedState).toBool());
  within_->setValue(state.value(kWithinState).toInt());
}

}  // namespace layshaft::ui
