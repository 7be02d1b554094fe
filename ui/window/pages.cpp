// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/pages.h"

#include <QAbstractSpinBox>
#include <QApplication>
#include <QKeyEvent>
#include <QLineEdit>
#include <QMenu>
#include <QTabBar>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

#include "core/bike/pair.h"
#include "core/limits.h"
#include "core/number_text.h"
#include "core/units.h"
#include "ui/document/preferences.h"
#include "ui/document/track_edits.h"
#include "ui/editors/aim_editor.h"
#include "ui/editors/refusal_bubble.h"
#include "ui/editors/ride_fields.h"
#include "ui/editors/slack_editor.h"
#include "ui/editors/track_fields.h"
#include "ui/pages/chain_page.h"
#include "ui/pages/compare_page.h"
#include "ui/pages/gearboxes_view.h"
#include "ui/pages/ladder_page.h"
#include "ui/pages/lap_page.h"
#include "ui/pages/one_lap_view.h"
#include "ui/pages/pair_laps_view.h"
#include "ui/pages/pull_page.h"
#include "ui/pages/records_page.h"
#include "ui/pages/run_page.h"
#include "ui/pages/sawtooth_page.h"
#include "ui/pages/season_view.h"
#include "ui/pages/wear_page.h"
#include "ui/window/export_actions.h"
#include "ui/window/main_window.h"
#include "ui/window/records_actions.h"
#include "ui/window/wear_actions.h"
#include "ui/words/field_table.h"
#include "ui/words/numbers.h"
#include "ui/words/problem_words.h"
#include "ui/words/wear_words.h"

namespace layshaft::ui {

namespace {

/// What settings call a page: titles are translated, and some change with the bike.
QString wordOf(const QWidget& page) {
  return QString::fromLatin1(page.metaObject()->className()).section(QStringLiteral("::"), -1);
}

/// Whether it is a field whose text is not what it stands for yet.
bool isHalfTyped(const QWidget* field) {
  if (const auto* box = qobject_cast<const QAbstractSpinBox*>(field)) return !box->hasAcceptableInput();
  const auto* line = qobject_cast<const QLineEdit*>(field);
  return line && line->isModified();
}

}  // namespace

Pages::Pages(MainWindow& window) : window_(window), choices_(new QActionGroup(this)) {
  setDocumentMode(true);
  setAccessibleName(tr("Pages"));  // it stands for its bar where the focus is asked for
  tabBar()->setAccessibleName(tr("Pages"));
  addTurning();
  setTabBarAutoHide(true);
  setFocusPolicy(Qt::NoFocus);  // while the bar is hidden Tab would end here; it goes for the bar too
  tabBar()->setFocusPolicy(Qt::TabFocus);
  add(new SawtoothPage, tr("Sawtooth"));
  add(new PullPage([this] { return makeForm({addConditions, addLaunchAndLean}); }), tr("Pull"));
  add(new RunPage([this] { return makeForm({addDrive}); }, [this] { return makeForm({addRollOn}); }),
      tr("Acceleration"));
  chain_ = new ChainPage;
  chain_->setMotion(preferences::motion());
  add(chain_, tr("Chain"));
  addWear();
  addLap();
  addLadder();
  addCompare();
  addRecords();
  for (int i = 0; i < count(); ++i)
    if (wordOf(*widget(i)) == preferences::pageInView()) setCurrentIndex(i);
  connect(this, &QTabWidget::currentChanged, this, [this] {
    current();  // is there before its fields are filled, also before the window is shown
    refreshForms();
    tickCurrent();
    emit wanted();
  });
  tickCurrent();
}

void Pages::addTurning() {
  const auto add = [this](const QString& text, const QList<QKeySequence>& keys, int by) {
    auto* action = new QAction(text, this);
    action->setShortcuts(keys);
    connect(action, &QAction::triggered, this, [this, by] { turn(by); });
    turning_ << action;
  };
  add(tr("&Next Page"), {QKeySequence(Qt::CTRL | Qt::Key_PageDown), QKeySequence(Qt::CTRL | Qt::Key_Tab)}, 1);
  add(tr("&Previous Page"),
      {QKeySequence(Qt::CTRL | Qt::Key_PageUp), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Tab),
       QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Backtab)},
      -1);
}

/// Alt+1 … Alt+9: digits, as the letters are the stations' and the menus'.
void Pages::addPageAction(int page) {
  constexpr int kDigits = 9;
  QAction* action = choices_->addAction(tabText(page));
  action->setCheckable(true);
  if (page < kDigits) {
    action->setShortcut(QKeySequence(Qt::ALT | static_cast<Qt::Key>(Qt::Key_1 + page)));
    setTabToolTip(page, action->shortcut().toString(QKeySequence::NativeText));
  }
  connect(action, &QAction::triggered, this, [this, page] { choose(page); });
}

/// The keys go where the page is worked with, except away from what is being typed.
void Pages::choose(int page) {
  const bool stay = isHalfTyped(QApplication::focusWidget());
  if (page == currentIndex())
    emit wanted();
  else
    setCurrentIndex(page);
  if (Page* chosen = current(); chosen && !stay) chosen->takeFocus();
}

/// Back from a page to the drive line.
void Pages::keyPressEvent(QKeyEvent* event) {
  if (event->key() != Qt::Key_Escape || event->modifiers() != Qt::NoModifier || window_.isFullScreen())
    return QTabWidget::keyPressEvent(event);
  window_.driveLine().focusTeeth();
}

void Pages::turn(int by) {
  setCurrentIndex((currentIndex() + by + count()) % count());
}

void Pages::tickCurrent() {
  if (QAction* action = choices_->actions().value(currentIndex())) action->setChecked(true);
}

QList<QAction*> Pages::pageActions() const {
  return choices_->actions() + turning_;
}

void Pages::add(Page* page, const QString& title) {
  addPageAction(addTab(page, title));
  pages_.push_back(page);
  connect(page, &Page::wasBuilt, this, &Pages::refreshForms);
  connect(page, &Page::wasBuilt, this, [page] {
    if (const QVariantMap state = preferences::pageState(wordOf(*page)); !state.isEmpty())
      page->restore(state);
  });
  connect(page, &Page::detailsWanted, this, [this](std::string_view key) { window_.showDetails(key); });
  connect(page, &Page::cruiseDragged, this, &Pages::dragCruise);
  connect(page, &Page::pictureMenuWanted, this, [this](const QPoint& at) {
    QMenu menu;
    ExportActions exports(window_);
    exports.addTo(menu);
    menu.exec(at);
  });
}

void Pages::addWear() {
  wear_ = new WearPage([this] { return makeSlackFields(); });
  add(wear_, tr("Wear"));
  connect(wear_, &WearPage::measuringWanted, this, [this] { measureWear(window_, *wear_->book()); });
  connect(wear_, &WearPage::strikingWanted, this, [this](std::size_t index) {
    strikeRecord(window_, {RecordKind::Measurement, index});
  });
}

QWidget* Pages::makeSlackFields() {
  auto* fields = new QWidget;
  auto* column = new QVBoxLayout(fields);
  column->setContentsMargins(0, 0, 0, 0);
  slack_ = new SlackEditor(window_.document());
  connect(slack_, &SlackEditor::refused, &window_, &MainWindow::say);
  column->addWidget(slack_);
  column->addWidget(makeForm({addSlackPosture}));
  return fields;
}

void Pages::addLap() {
  auto* page = new LapPage([this] { return makeLapFields(); });
  BackgroundLane& lane = window_.session().lane();
  pairLaps_ = new PairLapsView(lane);
  season_ = new SeasonView(lane);
  gearboxes_ = new GearboxesView(lane);
  page->add(new OneLapView(lane), tr("One Lap"), QStringLiteral("one"));
  page->add(pairLaps_, tr("Pairs"), QStringLiteral("pairs"));
  page->add(season_, tr("All Tracks"), QStringLiteral("season"));
  page->add(gearboxes_, tr("Gearboxes"), QStringLiteral("gearboxes"));
  connect(pairLaps_, &PairLapsView::pairChosen, this, &Pages::proposePair);
  connect(season_, &SeasonView::pairChosen, this, &Pages::proposePair);
  connect(season_, &SeasonView::trackChosen, this,
          [this](const std::string& name) { sayProblem(TrackEdits(window_.document()).ride(name)); });
  connect(gearboxes_, &GearboxesView::gearboxChosen, this,
          [this](const GearsTaken& gears, int front, int rear) {
            sayProblem(SetupEdits::proposeGearbox(window_.document(), gears, front, rear));
          });
  add(page, tr("Lap"));
}

QWidget* Pages::makeLapFields() {
  auto* fields = new QWidget;
  auto* column = new QVBoxLayout(fields);
  column->setContentsMargins(0, 0, 0, 0);
  track_ = new TrackFields(window_.document());
  connect(track_, &TrackFields::refused, &window_, &MainWindow::say);
  column->addWidget(track_);
  FieldForm* day = makeForm({addDayOfLap});
  day->layout()->setContentsMargins(0, 0, 0, 0);
  column->addWidget(day);
  return fields;
}

void Pages::proposePair(int frontTeeth, int rearTeeth) {
  sayProblem(SetupEdits(window_.document(), Side::Proposed).setPair(frontTeeth, rearTeeth));
}

void Pages::sayProblem(const std::optional<Problem>& problem) {
  if (problem) window_.say(spokenSentence(*problem));
}

void Pages::addLadder() {
  ladder_ = new LadderPage(window_.session().ladder(), [this](QWidget* caution) {
    aims_ = new AimEditor(window_.document(), caution);
    connect(aims_, &AimEditor::refused, &window_, &MainWindow::say);
    return aims_;
  });
  add(ladder_, tr("Ladder"));
  connect(ladder_, &LadderPage::pairChosen, this, &Pages::proposePair);
  connect(ladder_, &LadderPage::pairPinned, this, [this](int front, int rear) {
    const QString name = pairText(front, rear);
    const auto why = SetupEdits::pin(window_.document(), name, front, rear);
    window_.say(why.value_or(tr("%1 is pinned to the charts.").arg(name)));
  });
  connect(ladder_, &LadderPage::refused, this, [this](QWidget* field, const QString& why) {
    if (!RefusalBubble::near(*field).say(*field, why, window_.document())) window_.say(why);
  });
  connect(ladder_, &LadderPage::pinRemoved, this,
          [this](std::size_t pin) { SetupEdits::removePin(window_.document(), pin); });
}

void Pages::addCompare() {
  compare_ = new ComparePage(window_.session().lane());
  compare_->pick(preferences::compareFigures());
  add(compare_, tr("Compare"));
  connect(compare_, &ComparePage::rowsPicked, this, [](const std::vector<CompareFigure>& figures) {
    preferences::setCompareFigures(figures);
    MainWindow::allPreferencesChanged();
  });
  connect(compare_, &ComparePage::copied, &window_, &MainWindow::say);
}

void Pages::addRecords() {
  records_ = new RecordsPage;
  add(records_, tr("Records"));
  new RecordsActions(window_, *records_);
}

FieldForm* Pages::makeForm(std::initializer_list<void (*)(FieldForm&)> groups) {
  auto* form = new FieldForm(window_.document());
  for (const auto addGroup : groups) addGroup(*form);
  connect(form, &FieldForm::refused, &window_, &MainWindow::say);
  forms_.push_back(form);
  return form;
}

void Pages::show(const SharedPlan& plan, const UnitsShown& units) {
  const QString title = isBelt(plan->proposed.setup) ? tr("Belt") : tr("Chain");
  if (const int at = indexOf(chain_); tabText(at) != title) {
    setTabText(at, title);
    choices_->actions().at(at)->setText(title);
  }
  for (Page* page : pages_) page->take(plan, units);
}

void Pages::follow(const Profile& profile) {
  wear_->use(wearBook(profile, *window_.planner().shared()));
  chain_->useSlack(slackWords(profile.wear.value_or(Wear{}), window_.units()));
  const LadderInput pairs = ladderInput(profile);
  ladder_->use(pairs);
  pairLaps_->use(pairs);
  season_->use(seasonInput(profile));
  gearboxes_->use(gearboxInput(profile));
  ladder_->usePins(pinnedPairs(profile));
  compare_->use(partsOnHand(profile));
  records_->use(profile);
  refreshForms();
}

void Pages::keepState() const {
  preferences::setPageInView(wordOf(*currentWidget()));
  for (const Page* page : pages_)
    if (page->isBuilt()) preferences::setPageState(wordOf(*page), page->state());
}

Page* Pages::current() {
  auto* page = qobject_cast<Page*>(currentWidget());
  if (page) page->ensureBuilt();
  return page;
}

void Pages::refreshForms() {
  const UnitsShown& units = window_.units();
  for (FieldForm* form : forms_)
    if (form->isVisibleTo(this)) form->refresh(units);  // also before the window itself is shown
  if (slack_ && slack_->isVisibleTo(this)) slack_->refresh(units);
  if (track_ && track_->isVisibleTo(this)) track_->refresh(units);
  if (aims_ && aims_->isVisibleTo(this)) aims_->refresh(units);
}

void Pages::setMotion(bool on) {
  chain_->setMotion(on);
}

void Pages::pickRows(const std::vector<CompareFigure>& figures) {
  compare_->pick(figures);
}

void Pages::dragCruise(double mps, int drag) {
  const UnitsShown& units = window_.units();
  const double whole = units.si(Quantity::Speed, std::round(units.shown(Quantity::Speed, mps)));
  const double kmh = std::clamp(withoutNoise(units::kmhFromMps(whole)), limits::kCruiseSpeedKmh.low,
                                limits::kCruiseSpeedKmh.high);
  window_.document().edit({.field = QStringLiteral("cruise.%1").arg(drag),
                           .title = tr("cruise speed"),
                           .shown =
                               [units](const Profile& p) {
                                 return p.cruiseSpeedKmh ? shownText(*fieldRow("cruise_speed_kmh"),
                                                                     *p.cruiseSpeedKmh, units)
                                                         : QString();
                               }},
                          [kmh](Profile& p) { p.cruiseSpeedKmh = kmh; });
}

}  // namespace layshaft::ui
