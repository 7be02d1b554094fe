// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/gearboxes_view.h"

#include <QAction>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QVBoxLayout>
#include <algorithm>
#include <utility>

#include "ui/words/gearbox_words.h"
#include "ui/words/numbers.h"

namespace layshaft::ui {
namespace {

const QString kOwnPair = QStringLiteral("proposed_pair_only");
constexpr std::size_t kBandsKnown = 20;  // of so many rows: each takes a dozen laps

}  // namespace

GearboxesView::GearboxesView(BackgroundLane& lane, QWidget* parent) : LapView(parent), study_(lane, this) {
  constexpr int kShownEachMs = 200;
  untilShown_.setSingleShot(true);
  untilShown_.setInterval(kShownEachMs);
  connect(&untilShown_, &QTimer::timeout, this, &GearboxesView::present);
}

void GearboxesView::build() {
  stack_ = new QStackedWidget;
  stack_->addWidget(makeList());
  lacking_ = new LackingPanel;
  lacking_->showWrong(
      tr("The spares box holds no gears. Type the pairs of teeth that are on hand, and this view "
         "tries every gearbox that they make."),
      "spares_box.gear_pairs");
  connect(lacking_, &LackingPanel::detailsWanted, this, &Page::detailsWanted);
  stack_->addWidget(lacking_);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(stack_);
  watchStudy();
}

QWidget* GearboxesView::makeList() {
  words_ = makeWords(tr("The gearboxes in words"));
  makeTable();
  auto* list = new QWidget;
  auto* column = new QVBoxLayout(list);
  column->setContentsMargins(10, 4, 10, 0);
  column->addWidget(words_);
  column->addLayout(makeBar());
  column->addWidget(table_, 1);
  return list;
}

void GearboxesView::makeTable() {
  table_ = new QTableView;
  table_->setModel(&model_);
  table_->setAccessibleName(tr("Gearboxes"));
  table_->setToolTip(
      tr("Double click a row, or press Enter on it: its gears and its pair become the proposal."));
  table_->setSelectionBehavior(QAbstractItemView::SelectRows);
  table_->setSelectionMode(QAbstractItemView::SingleSelection);
  table_->setTabKeyNavigation(false);
  table_->setAutoScroll(false);  // rows that come in must not move what is looked at
  table_->verticalHeader()->hide();
  table_->verticalHeader()->setDefaultSectionSize(table_->fontMetrics().height() + 6);
  QHeaderView& header = *table_->horizontalHeader();
  header.setHighlightSections(false);
  constexpr int kRowsMeasured = 30;  // of what may be thousands
  header.setResizeContentsPrecision(kRowsMeasured);
  header.setSectionResizeMode(QHeaderView::ResizeToContents);
  header.setSectionResizeMode(GearboxModel::Gears, QHeaderView::Stretch);
  auto* propose = new QAction(tr("Propose This Gearbox"), table_);
  propose->setShortcuts({QKeySequence(Qt::Key_Enter), QKeySequence(Qt::Key_Return)});
  propose->setShortcutContext(Qt::WidgetShortcut);
  table_->addAction(propose);
  table_->setContextMenuPolicy(Qt::ActionsContextMenu);
  connect(propose, &QAction::triggered, this, &GearboxesView::propose);
  connect(table_, &QTableView::doubleClicked, this, &GearboxesView::propose);
  connect(table_->selectionModel(), &QItemSelectionModel::currentChanged, this,
          &GearboxesView::sayWhatIsChosen);
}

QLayout* GearboxesView::makeBar() {
  propose_ = new QPushButton(tr("Propose This Gearbox"));
  propose_->setToolTip(tr("Gears and pair of the chosen row become the proposal (Enter)."));
  propose_->setEnabled(false);
  connect(propose_, &QPushButton::clicked, this, &GearboxesView::propose);
  ownPair_ = new QCheckBox(tr("With the proposal's pair only"));
  ownPair_->setToolTip(
      tr("Else each gearbox has the pair in reach that is quickest with it and fits the bike as it is."));
  connect(ownPair_, &QCheckBox::toggled, this, [this] {
    stopped_ = false;
    present();
    goOn();
  });
  progress_ = new ProgressRow(study_, tr("The search was stopped; what is listed is what was tried."));
  connect(progress_, &ProgressRow::againWanted, this, [this] {
    stopped_ = false;
    goOn();
  });
  auto* row = new QHBoxLayout;
  row->addWidget(propose_);
  row->addWidget(ownPair_);
  row->addStretch(1);
  row->addWidget(progress_);
  return row;
}

void GearboxesView::watchStudy() {
  connect(&study_, &GearboxStudy::prepared, this,
          [this](const PreparedGearboxes& prepared) { results_ = GearboxResults(prepared); });
  connect(&study_, &GearboxStudy::tried, this, [this](const std::vector<TriedGearbox>& tried) {
    results_.add(trying_, tried);
    if (!untilShown_.isActive()) untilShown_.start();
  });
  connect(&study_, &GearboxStudy::bandReady, this,
          [this](const GearboxRow& row, const std::optional<double>& bandS) {
            results_.addBand(row, bandS);
            if (!untilShown_.isActive()) untilShown_.start();
          });
  connect(&study_, &BackgroundWork::finished, this, [this] {
    present();
    goOn();
  });
  connect(&study_, &BackgroundWork::cancelled, this, [this] {
    stopped_ = true;
    present();
  });
  connect(&study_, &BackgroundWork::failed, this, [this](const QString& why) {
    stopped_ = true;
    words_->setText(why);
  });
}

void GearboxesView::use(GearboxInput input) {
  if (input_ == input) return;
  input_ = std::move(input);
  stopped_ = false;
  if (plan_ && isVisible()) askAnew();
}

void GearboxesView::showPlan() {
  const Setup& setup = plan_->proposed.setup;
  model_.mark(setup);
  const PairTeeth proposed{setup.frontTeeth.count(), setup.rearTeeth.count()};
  if (std::exchange(proposed_, proposed) != proposed && !results_.empty()) {
    // Where every pair was tried, nothing is left to ask of the one that is proposed.
    const bool settled = pairs() == Pairs::InReach && results_.left(Pairs::InReach).empty();
    results_.forgetProposed();
    if (!settled) study_.giveUp();
    if (stopped_) fade();  // nobody works it out anew
  }
  askAnew();
}

void GearboxesView::showEvent(QShowEvent* event) {
  LapView::showEvent(event);
  askAnew();
}

/// Nobody waits for it any more; what was tried stays, and the rest goes on from there.
void GearboxesView::hideEvent(QHideEvent* event) {
  LapView::hideEvent(event);
  if (!event->spontaneous()) study_.giveUp();
}

/// After a change of what is asked, or of who looks.
void GearboxesView::askAnew() {
  if (!input_ || !plan_ || !isBuilt()) return;
  const bool lacking = input_->onHand.empty();
  stack_->setCurrentIndex(lacking ? 1 : 0);
  if (lacking || !input_->ladder.track) return startOver();
  if (asked_ == input_ && study_.running()) return;
  goOn();
}

void GearboxesView::startOver() {
  study_.giveUp();
  asked_.reset();
  results_ = {};
  model_.show(results_, pairs());
  whole_ = false;
}

/// The next of what is still to be done, if there is anything.
void GearboxesView::goOn() {
  if (stopped_ || !plan_ || !isVisible() || !input_ || input_->onHand.empty() || !input_->ladder.track)
    return;
  if (asked_ != input_ || results_.empty()) {
    asked_ = input_;
    results_ = {};
    fade();
    progress_->begin();
    return study_.prepare(*asked_);
  }
  const bool settled = pairs() == Pairs::InReach && results_.left(Pairs::InReach).empty();
  if (!settled && !results_.left(Pairs::Proposed).empty()) return attempt(Pairs::Proposed);
  if (pairs() == Pairs::InReach && !settled) return attempt(Pairs::InReach);
  const auto rows = withoutBand();
  if (rows.empty()) return;
  progress_->begin();
  study_.askBands(results_.search(), rows);
}

void GearboxesView::attempt(Pairs with) {
  const bool own = with == Pairs::Proposed || results_.pairsInReach().empty();
  trying_ = with;
  progress_->begin();
  study_.attempt(results_.search(), results_.left(with),
                 own ? std::vector{proposed_} : results_.pairsInReach());
}

/// The first rows of the list that say nothing yet on how far they may be off.
std::vector<GearboxRow> GearboxesView::withoutBand() const {
  std::vector<GearboxRow> rows = results_.ranked(pairs());
  if (rows.size() > kBandsKnown) rows.resize(kBandsKnown);
  const auto known = [this](const GearboxRow& row) { return !row.changeS || results_.bandKnown(row); };
  rows.erase(std::remove_if(rows.begin(), rows.end(), known), rows.end());
  return rows;
}

/// An old list stays until a new one is complete; the first one grows.
void GearboxesView::present() {
  untilShown_.stop();
  if (results_.empty()) return;
  if (whole_ && !results_.complete(pairs()) && !stopped_) return fade();
  const bool another = model_.results().search() != results_.search();
  const auto chosen =
      table_->currentIndex().isValid()
          ? std::optional(model_.rows()[static_cast<std::size_t>(table_->currentIndex().row())].gearbox)
          : std::nullopt;
  model_.show(results_, pairs());
  whole_ = results_.complete(pairs());
  if (chosen && !another)
    if (const int row = model_.rowOf(*chosen); row >= 0) table_->setCurrentIndex(model_.index(row, 0));
  sayWords();
  sayWhatIsChosen();
}

/// What is in view is out of date.
void GearboxesView::fade() {
  model_.fade();
  words_->setEnabled(false);
}

void GearboxesView::sayWords() {
  words_->setEnabled(true);
  const GearboxChoices& choices = results_.search()->choices();
  std::optional<QuickestGearbox> quickest;
  if (!model_.rows().empty())
    quickest = {.taken = model_.taken(0),
                .row = model_.rows().front(),
                .bandS = results_.bandS(model_.rows().front()),
                .without = model_.withoutOtherGears(),
                .all = results_.left(pairs()).empty() && !choices.more};
  words_->setText(gearboxesWords(choices, asked_->ladder.track->name, quickest));
}

void GearboxesView::sayWhatIsChosen() {
  propose_->setEnabled(table_->currentIndex().isValid());
}

void GearboxesView::propose() {
  const int at = table_->currentIndex().row();
  if (at < 0 || model_.faded()) return;
  const PairTeeth pair = model_.rows()[static_cast<std::size_t>(at)].pair;
  emit gearboxChosen(model_.taken(at), pair.front, pair.rear);
}

std::vector<QStringList> GearboxesView::numbers() const {
  std::vector<QStringList> rows(1);
  for (int c = 0; c < model_.columnCount(); ++c)
    rows.front() << model_.headerData(c, Qt::Horizontal, Qt::DisplayRole).toString();
  for (int r = 0; r < model_.rowCount(); ++r) {
    rows.emplace_back();
    for (int c = 0; c < model_.columnCount(); ++c)
      rows.back() << model_.data(model_.index(r, c), Qt::DisplayRole).toString();
  }
  return rows;
}

QString GearboxesView::csv() const {
  if (model_.results().empty()) return {};
  std::vector<std::optional<double>> bands;
  for (const GearboxRow& row : model_.rows()) bands.push_back(model_.results().bandS(row));
  return gearboxesCsv(model_.results().search()->choices(), model_.rows(), bands);
}

QVariantMap GearboxesView::state() const {
  return {{kOwnPair, ownPair_->isChecked()}};
}

void GearboxesView::restore(const QVariantMap& state) {
  ownPair_->setChecked(state.value(kOwnPair).toBool());
}

}  // namespace layshaft::ui
