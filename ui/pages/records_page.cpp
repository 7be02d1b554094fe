// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/records_page.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QMenu>
#include <QVBoxLayout>
#include <algorithm>

#include "core/records_csv.h"
#include "ui/words/record_words.h"

namespace layshaft::ui {
namespace {

// What the page's state is kept under.
const QString kHeaderState = QStringLiteral("header");
const QString kKindState = QStringLiteral("kind");
const QString kFigureState = QStringLiteral("figure");

/// The kinds in the order of the choice, behind "all".
constexpr RecordKind kKinds[] = {RecordKind::Service, RecordKind::TrackNote, RecordKind::Measurement};

}  // namespace

RecordsPage::RecordsPage(QWidget* parent) : Page(parent) {}

Picture* RecordsPage::picture() {
  return chart_ && chart_->has(chart_->figure()) ? chart_ : nullptr;
}

void RecordsPage::build() {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(10, 6, 10, 4);
  table_ = makeTable();
  makeActions();
  column->addLayout(makeBar());
  auto* row = new QHBoxLayout;
  row->setSpacing(10);
  auto* left = new QVBoxLayout;
  left->addWidget(table_, 1);
  empty_ = new QLabel;
  empty_->setAccessibleName(tr("Why nothing is listed"));
  empty_->setWordWrap(true);
  left->addWidget(empty_);
  row->addLayout(left, 2);
  row->addWidget(makeSide(), 1);
  column->addLayout(row, 1);
  for (const auto signal : {&QAbstractItemModel::rowsInserted, &QAbstractItemModel::rowsRemoved})
    connect(&filter_, signal, this, &RecordsPage::sayWhatCanBeDone);
  connect(&filter_, &QAbstractItemModel::modelReset, this, &RecordsPage::sayWhatCanBeDone);
  sayWhatCanBeDone();
}

QTableView* RecordsPage::makeTable() {
  auto* table = new QTableView;
  table->setModel(&filter_);
  table->setAccessibleName(tr("Records"));
  table->setSortingEnabled(true);
  table->sortByColumn(RecordsModel::Day, Qt::DescendingOrder);
  table->setSelectionBehavior(QAbstractItemView::SelectRows);
  table->setSelectionMode(QAbstractItemView::SingleSelection);
  table->verticalHeader()->hide();
  table->verticalHeader()->setDefaultSectionSize(table->fontMetrics().height() + 6);
  table->setTabKeyNavigation(false);
  table->setWordWrap(false);
  table->horizontalHeader()->setHighlightSections(false);
  table->horizontalHeader()->setStretchLastSection(true);
  table->horizontalHeader()->setToolTip(tr("Click to sort."));
  table->setContextMenuPolicy(Qt::CustomContextMenu);
  connect(table, &QWidget::customContextMenuRequested, this, &RecordsPage::openRowMenu);
  connect(table->selectionModel(), &QItemSelectionModel::currentChanged, this,
          &RecordsPage::sayWhatCanBeDone);
  return table;
}

void RecordsPage::makeActions() {
  strikeAction_ = new QAction(tr("Strike Through…"), table_);
  connect(strikeAction_, &QAction::triggered, this, [this] {
    if (const auto row = currentRow()) emit strikeWanted(model_.ref(*row));
  });
  proposeAction_ = new QAction(tr("Propose This Setup"), table_);
  connect(proposeAction_, &QAction::triggered, this, [this] {
    if (const auto row = currentRow(); row && model_.hasSetup(*row)) emit setupWanted(model_.ref(*row).index);
  });
}

/// What is listed, on the left; what can be done, on the right.
QLayout* RecordsPage::makeBar() {
  auto* bar = new QHBoxLayout;
  search_ = new QLineEdit;
  search_->setPlaceholderText(tr("Search"));
  search_->setAccessibleName(tr("Search the records"));
  search_->setToolTip(tr("Only entries with all of these words."));
  search_->setClearButtonEnabled(true);
  search_->setMaximumWidth(24 * fontMetrics().averageCharWidth());
  connect(search_, &QLineEdit::textChanged, &filter_, &RecordsFilter::setWords);
  bar->addWidget(search_, 1);
  kind_ = new QComboBox;
  kind_->setAccessibleName(tr("Kind of entries"));
  kind_->setToolTip(tr("Which entries are listed."));
  kind_->addItems({tr("Everything"), tr("Services"), tr("Track notes"), tr("Measurements")});
  connect(kind_, &QComboBox::currentIndexChanged, this,
          [this](int at) { filter_.setKind(at > 0 ? std::optional(kKinds[at - 1]) : std::nullopt); });
  bar->addWidget(kind_);
  bar->addStretch(1);
  const auto button = [&](const QString& text, const QString& tip) {
    auto* made = new QPushButton(text);
    made->setToolTip(tip);
    bar->addWidget(made);
    return made;
  };
  connect(button(tr("New Service…"), tr("Writes down work that was done and the parts that were fitted.")),
          &QPushButton::clicked, this, &RecordsPage::serviceWanted);
  connect(button(tr("New Track Note…"),
                 tr("Writes down how the proposal went: where, in what weather, how fast.")),
          &QPushButton::clicked, this, &RecordsPage::trackNoteWanted);
  strike_ = button(strikeAction_->text(), QString());
  connect(strike_, &QPushButton::clicked, strikeAction_, &QAction::trigger);
  propose_ = button(proposeAction_->text(), QString());
  connect(propose_, &QPushButton::clicked, proposeAction_, &QAction::trigger);
  auto* files =
      button(tr("CSV"), tr("Records as a table for spreadsheets, in the units of the bike's file."));
  auto* menu = new QMenu(files);
  menu->addAction(tr("&Import CSV…"), this, &RecordsPage::readWanted);
  menu->addAction(tr("&Export CSV…"), this, &RecordsPage::writeWanted);
  files->setMenu(menu);
  return bar;
}

QWidget* RecordsPage::makeSide() {
  auto* side = new QWidget;
  auto* column = new QVBoxLayout(side);
  column->setContentsMargins(0, 0, 0, 0);
  auto* choice = new QHBoxLayout;
  lapTime_ = new QRadioButton(tr("Lap time"));
  rating_ = new QRadioButton(tr("Rating"));
  lapTime_->setChecked(true);
  for (QRadioButton* button : {lapTime_, rating_}) {
    button->setToolTip(tr("What the track notes show over the final ratio."));
    choice->addWidget(button);
  }
  choice->addStretch();
  connect(rating_, &QRadioButton::toggled, this, [this](bool on) {
    chart_->setFigure(on ? NoteChart::Figure::Rating : NoteChart::Figure::LapTime);
    showChart();
  });
  column->addLayout(choice);
  chart_ = new NoteChart;
  noChart_ = new QLabel;
  noChart_->setWordWrap(true);
  noChart_->setAlignment(Qt::AlignTop | Qt::AlignLeft);
  stack_ = new QStackedWidget;
  stack_->addWidget(chart_);
  stack_->addWidget(noChart_);
  column->addWidget(stack_, 1);
  return side;
}

void RecordsPage::use(const Profile& profile) {
  if (profile_ && profile_->records == profile.records && profile_->wear == profile.wear) return;
  profile_ = profile;
  dirty_ = true;
  if (plan_ && isVisible()) showRecords();
}

void RecordsPage::showPlan() {
  chart_->setRatios(plan_->stock.gearing.finalRatio, plan_->proposed.gearing.finalRatio);
  if (dirty_ || !(shownIn_ == units_)) showRecords();
}

void RecordsPage::showRecords() {
  if (!profile_) return;
  dirty_ = false;
  const auto current = currentRow();
  const auto kept = current ? std::optional(model_.ref(*current)) : std::nullopt;
  shownIn_ = units_;
  model_.show(*profile_, units_);
  // The Text column takes what is left; the others what they need.
  if (!ownWidths_ && model_.rowCount() > 0) table_->resizeColumnsToContents();
  ownWidths_ = ownWidths_ || model_.rowCount() > 0;
  for (int row = 0; kept && row < model_.rowCount(); ++row)
    if (model_.ref(row) == *kept)
      table_->setCurrentIndex(filter_.mapFromSource(model_.index(row, RecordsModel::Day)));
  chart_->show(notePoints(*profile_));
  showChart();
}

void RecordsPage::showChart() {
  const bool any = chart_->has(chart_->figure());
  noChart_->setText(chart_->figure() == NoteChart::Figure::LapTime
                        ? tr("Track notes with a lap time show here over their final ratio.")
                        : tr("Track notes with a rating show here over their final ratio."));
  stack_->setCurrentIndex(any ? 0 : 1);
}

std::optional<int> RecordsPage::currentRow() const {
  const QModelIndex index = table_->currentIndex();
  return index.isValid() ? std::optional(filter_.mapToSource(index).row()) : std::nullopt;
}

void RecordsPage::sayWhatCanBeDone() {
  if (!empty_) return;
  empty_->setVisible(filter_.rowCount() == 0);
  empty_->setText(model_.rowCount() == 0
                      ? tr("Nothing is written down yet. Entries are only ever added; one that is wrong is "
                           "struck through with a reason and stays.")
                      : tr("No entry passes the search and the kind."));
  const auto row = currentRow();
  const bool strikes = row && !model_.isStruck(*row), proposes = row && model_.hasSetup(*row);
  strike_->setEnabled(strikes);
  strikeAction_->setEnabled(strikes);
  propose_->setEnabled(proposes);
  proposeAction_->setEnabled(proposes);
  strike_->setToolTip(strikes ? tr("The entry under the cursor no longer counts; it stays, with your reason.")
                              : tr("Choose an entry that still counts."));
  propose_->setToolTip(proposes ? tr("The setup of the track note under the cursor becomes the proposal.")
                                : tr("Choose a track note that tells its setup."));
}

void RecordsPage::openRowMenu(const QPoint& at) {
  if (!currentRow()) return;
  auto* menu = new QMenu(this);
  menu->setAttribute(Qt::WA_DeleteOnClose);
  menu->addAction(proposeAction_);
  menu->addAction(strikeAction_);
  // From the keyboard, beside the row it is about.
  const QModelIndex cursor = table_->currentIndex();
  const bool onCursor = table_->indexAt(at).row() == cursor.row();
  menu->popup(table_->viewport()->mapToGlobal(onCursor ? at : table_->visualRect(cursor).center()));
}

std::vector<QStringList> RecordsPage::numbers() const {
  if (model_.rowCount() == 0) return {};
  std::vector<QStringList> rows(1);
  for (int c = 0; c < filter_.columnCount(); ++c)
    rows[0] << filter_.headerData(c, Qt::Horizontal, Qt::DisplayRole).toString();
  for (int r = 0; r < filter_.rowCount(); ++r) {
    QStringList cells;
    for (int c = 0; c < filter_.columnCount(); ++c) cells << filter_.index(r, c).data().toString();
    rows.push_back(cells);
  }
  return rows;
}

QString RecordsPage::csv() const {
  // In the units of the bike's file, so that what was written can be read again.
  return profile_ ? QString::fromStdString(recordsCsv(*profile_)) : QString();
}

QVariantMap RecordsPage::state() const {
  return {{kHeaderState, table_->horizontalHeader()->saveState()},
          {kKindState, kind_->currentIndex()},
          {kFigureState, rating_->isChecked()}};
}

void RecordsPage::restore(const QVariantMap& state) {
  ownWidths_ = table_->horizontalHeader()->restoreState(state.value(kHeaderState).toByteArray());
  kind_->setCurrentIndex(std::clamp(state.value(kKindState).toInt(), 0, kind_->count() - 1));
  rating_->setChecked(state.value(kFigureState).toBool());
}

}  // namespace layshaft::ui
