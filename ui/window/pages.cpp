// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/pages.h"

#include <QMenu>
#include <algorithm>
#include <cmath>

#include "core/limits.h"
#include "core/number_text.h"
#include "core/units.h"
#include "ui/document/preferences.h"
#include "ui/editors/aim_editor.h"
#include "ui/editors/ride_fields.h"
#include "ui/pages/chain_page.h"
#include "ui/pages/compare_page.h"
#include "ui/pages/ladder_page.h"
#include "ui/pages/pull_page.h"
#include "ui/pages/run_page.h"
#include "ui/pages/sawtooth_page.h"
#include "ui/window/export_actions.h"
#include "ui/window/main_window.h"
#include "ui/words/field_table.h"
#include "ui/words/numbers.h"
#include "ui/words/problem_words.h"

namespace layshaft::ui {

namespace {

/// What settings call a page: titles are translated, and some change with the bike.
QString wordOf(const QWidget& page) {
  return QString::fromLatin1(page.metaObject()->className()).section(QStringLiteral("::"), -1);
}

}  // namespace

Pages::Pages(MainWindow& window) : window_(window) {
  setDocumentMode(true);
  setTabBarAutoHide(true);
  setFocusPolicy(Qt::NoFocus);  // its bar has one of its own; while that is hidden Tab would end here
  add(new SawtoothPage, tr("Sawtooth"));
  add(new PullPage([this] { return makeForm({addConditions, addLaunchAndLean}); }), tr("Pull"));
  add(new RunPage([this] { return makeForm({addDrive}); }, [this] { return makeForm({addRollOn}); }),
      tr("Acceleration"));
  chain_ = new ChainPage;
  chain_->setMotion(preferences::motion());
  add(chain_, tr("Chain"));
  addLadder();
  addCompare();
  for (int i = 0; i < count(); ++i)
    if (wordOf(*widget(i)) == preferences::pageInView()) setCurrentIndex(i);
  connect(this, &QTabWidget::currentChanged, this, [this] {
    current();  // is there before its fields are filled, also before the window is shown
    refreshForms();
  });
}

void Pages::add(Page* page, const QString& title) {
  addTab(page, title);
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

void Pages::addLadder() {
  ladder_ = new LadderPage(window_.session().ladder(), [this] {
    aims_ = new AimEditor(window_.document());
    connect(aims_, &AimEditor::refused, &window_, &MainWindow::say);
    return aims_;
  });
  add(ladder_, tr("Ladder"));
  connect(ladder_, &LadderPage::pairChosen, this, [this](int front, int rear) {
    if (const auto problem = SetupEdits(window_.document(), Side::Proposed).setPair(front, rear))
      window_.say(spokenSentence(*problem));
  });
  connect(ladder_, &LadderPage::pairPinned, this, [this](int front, int rear) {
    const QString name = pairText(front, rear);
    const auto why = SetupEdits::pin(window_.document(), name, front, rear);
    window_.say(why.value_or(tr("%1 is pinned to the charts.").arg(name)));
  });
}

void Pages::addCompare() {
  compare_ = new ComparePage;
  compare_->pick(preferences::compareFigures());
  add(compare_, tr("Compare"));
  connect(compare_, &ComparePage::rowsPicked, this, [](const std::vector<CompareFigure>& figures) {
    preferences::setCompareFigures(figures);
    MainWindow::allPreferencesChanged();
  });
  connect(compare_, &ComparePage::copied, &window_, &MainWindow::say);
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
  if (const int at = indexOf(chain_); tabText(at) != title) setTabText(at, title);
  for (Page* page : pages_) page->take(plan, units);
}

void Pages::follow(const Profile& profile) {
  ladder_->use(ladderInput(profile));
  compare_->use(profile.sparesBox ? PartsOnHand{profile.sparesBox->front, profile.sparesBox->rear}
                                  : PartsOnHand{});
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
