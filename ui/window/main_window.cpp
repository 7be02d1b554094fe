// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/main_window.h"

#include <QApplication>
#include <QCloseEvent>
#include <QContextMenuEvent>
#include <QDialog>
#include <QFileInfo>
#include <QMenuBar>
#include <QMimeData>
#include <QShortcut>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/charts/appearance.h"
#include "ui/document/file_name.h"
#include "ui/document/preferences.h"
#include "ui/document/samples.h"
#include "ui/editors/bike_details.h"
#include "ui/editors/gears_dialog.h"
#include "ui/window/content_scroll.h"
#include "ui/window/edit_menu.h"
#include "ui/window/file_actions.h"
#include "ui/window/help_menu.h"
#include "ui/window/hints.h"
#include "ui/window/pages.h"
#include "ui/window/recovery_offer.h"
#include "ui/window/sideways_scroll.h"
#include "ui/window/spoken_headline.h"
#include "ui/window/tracks_window.h"
#include "ui/window/view_menu.h"
#include "ui/window/window_place.h"

namespace layshaft::ui {
namespace {

// In characters.
constexpr int kDetailsWidth = 66;  // a label, its field and a sketch
constexpr int kPageWidth = 50;     // what is left of a page beside them must show something

/// Opens the menu of what has the focus, as the Menu key does: many keyboards have none.
void openMenuOfFocus() {
  QWidget* focus = QApplication::focusWidget();
  if (!focus) return;
  const QPoint at = focus->inputMethodQuery(Qt::ImCursorRectangle).toRect().center();
  QContextMenuEvent menu(QContextMenuEvent::Keyboard, at, focus->mapToGlobal(at));
  QApplication::sendEvent(focus, &menu);
}

}  // namespace

MainWindow* MainWindow::create(Profile profile) {
  auto* window = new MainWindow(std::move(profile));
  window->setAttribute(Qt::WA_DeleteOnClose);
  return window;
}

void MainWindow::showUnsaved(const Profile& profile) {
  MainWindow* window = create(profile);
  window->document().recover(profile, QString(), std::nullopt);
  window->show();
}

QList<MainWindow*> MainWindow::all() {
  QList<MainWindow*> windows;
  for (QWidget* widget : QApplication::topLevelWidgets())
    if (auto* window = qobject_cast<MainWindow*>(widget)) windows << window;
  return windows;
}

MainWindow::MainWindow(Profile profile, QWidget* parent)
    : QMainWindow(parent),
      session_(std::make_shared<Session>(std::move(profile))),
      units_(preferences::units()),
      readout_(new Readout),
      scroll_(new ContentScroll),
      docks_(new QMainWindow),
      pages_(new Pages(*this)),
      pagesPlace_(new SidewaysScroll(pages_)),
      driveLine_(new DriveLine(document())),
      files_(new FileActions(*this)),
      spoken_(new SpokenHeadline(*this)) {
  keepReadable();
  readout_->pick(preferences::figures());
  auto* centre = new QWidget;
  QVBoxLayout* column = &scroll_->column();
  column->addWidget(readout_);
  if (!preferences::hintsDismissed()) {
    auto* hints = new Hints(isSample(document().profile()));
    connect(&document(), &Document::titleChanged, hints,
            [this, hints] { hints->setSample(hints->isSample() && document().file().isEmpty()); });
    column->addWidget(hints);
  }
  docks_->setWindowFlags(Qt::Widget);
  docks_->setCentralWidget(pagesPlace_);
  column->addWidget(docks_, 1);
  auto* halves = new QVBoxLayout(centre);
  halves->setContentsMargins(0, 0, 0, 0);
  halves->setSpacing(0);
  halves->addWidget(scroll_, 1);
  halves->addWidget(driveLine_);
  setCentralWidget(centre);
  setAcceptDrops(true);
  buildMenus();

  connect(&planner(), &Planner::planned, this, &MainWindow::showPlan);
  connect(&planner(), &Planner::settled, this, &MainWindow::followDocument);
  connect(&document(), &Document::titleChanged, this, &MainWindow::updateTitle);
  connect(pages_, &Pages::wanted, this, &MainWindow::showPage);
  showPlan();
  followDocument();
  updateTitle();
  driveLine_->focusTeeth();
  files_->watchOverUnsavedWork();
  const auto windows = all();
  place_ = new WindowPlace(*this, std::any_of(windows.begin(), windows.end(), [this](MainWindow* other) {
    return other != this && other->isVisible();
  }));
  fitHeight();
  docks_->restoreState(preferences::dockPlaces());
  if (preferences::detailsOpen()) openDetails();
}

MainWindow::~MainWindow() {
  // The editors refer to the document, and a field that loses the focus still asks it: they go first.
  qDeleteAll(findChildren<QDialog*>(QString(), Qt::FindDirectChildrenOnly));
  delete details_;
  delete takeCentralWidget();
}

void MainWindow::buildMenus() {
  files_->addFileMenu(*menuBar());
  addEditMenu(*this);
  view_ = new ViewMenu(*menuBar(), *this, pages_->pageActions());
  addBikeMenu(*this);
  addHelpMenu(*this);
  new QShortcut(QKeySequence(Qt::SHIFT | Qt::Key_F10), this, openMenuOfFocus);
}

void MainWindow::showPlan() {
  const SharedPlan& plan = planner().shared();
  pages_->show(plan, units_);
  readout_->show(*plan, units_);
  driveLine_->show(plan, units_);
  spoken_->say(readout_->headline());
}

void MainWindow::followDocument() {
  pages_->follow(document().profile());
  if (details_ && details_->isVisible()) details_->refresh(units_);
}

void MainWindow::preferencesChanged() {
  readout_->pick(preferences::figures());
  units_ = preferences::units();
  pages_->setMotion(preferences::motion());
  pages_->pickRows(preferences::compareFigures());
  view_->refresh();
  showPlan();
  followDocument();
  emit preferencesTaken();
}

void MainWindow::allPreferencesChanged() {
  for (MainWindow* window : all()) window->preferencesChanged();
}

void MainWindow::updateTitle() {
  const QString& path = document().file();
  const QString file =
      path.isEmpty() ? QString() : QStringLiteral(" – ") + shownFile(QFileInfo(path).fileName());
  // Twice the mark is what Qt shows as the mark itself.
  QString name = document().title() + file;
  name.replace(QLatin1String("[*]"), QLatin1String("[*][*]"));
  setWindowTitle(name + QStringLiteral("[*] – Layshaft"));
  setWindowFilePath(path);
  setWindowModified(document().isModified());
}

Page* MainWindow::currentPage() {
  return pages_->current();
}

QString MainWindow::currentPageTitle() const {
  return pages_->tabText(pages_->currentIndex()).remove(QLatin1Char('&'));
}

QString MainWindow::currentPageName() const {
  return currentPageTitle().toLower();
}

LiveChart* MainWindow::currentChart() {
  Page* page = currentPage();
  return page ? page->chart() : nullptr;
}

Picture* MainWindow::currentPicture() {
  Page* page = currentPage();
  return page ? page->picture() : nullptr;
}

void MainWindow::say(const QString& message) {
  driveLine_->say(message);
}

void MainWindow::askForGears() {
  auto* dialog = new GearsDialog(document(), units(), this);
  dialog->setAttribute(Qt::WA_DeleteOnClose);
  dialog->open();
}

void MainWindow::showDetails(std::string_view key) {
  if (key == "stock.gear_ratios") return askForGears();
  if (key == "tracks") return TracksWindow::open(*this);
  if (driveLine_->focusField(key)) return;
  openDetails();
  if (!details_->isFloating()) scroll_->showTop(*docks_);
  if (key.empty())
    details_->takeFocus();
  else
    details_->showFieldsFor(key);
}

void MainWindow::openDetails() {
  if (!details_) {
    details_ = new BikeDetails(document(), docks_);
    connect(details_, &QDockWidget::visibilityChanged, this, [this] {
      sharePlace();
      emit detailsToggled(!details_->isHidden());
    });
    connect(details_, &QDockWidget::topLevelChanged, this, &MainWindow::sharePlace);
    connect(details_, &BikeDetails::leftForNowhere, this, [this] {
      activateWindow();
      driveLine_->focusTeeth();
    });
    if (!docks_->restoreDockWidget(details_)) {
      docks_->addDockWidget(Qt::RightDockWidgetArea, details_);
      docks_->resizeDocks({details_}, {fontMetrics().averageCharWidth() * kDetailsWidth}, Qt::Horizontal);
    }
  }
  details_->refresh(units_);
  details_->show();
  details_->raise();
  sharePlace();
}

/// Where there is no room for both, the bike's details take the place of the pages.
void MainWindow::sharePlace() {
  const bool docked = details_ && !details_->isHidden() && !details_->isFloating();
  const int both = fontMetrics().averageCharWidth() * (kDetailsWidth + kPageWidth);
  pagesPlace_->setVisible(!docked || width() >= both);
}

void MainWindow::showPage() {
  if (pagesPlace_->isHidden()) closeDetails();
  scroll_->showTop(*pagesPlace_);
}

void MainWindow::closeDetails() {
  if (details_) details_->close();
}

void MainWindow::toggleDetailsFocus() {
  if (details_ && details_->holdsFocus())
    details_->giveFocusBack();
  else
    showDetails();
}

void MainWindow::openFile(const QString& file) {
  files_->openFile(file);
}

void MainWindow::openLastFile() {
  files_->openLastFile();
}

void MainWindow::offerRecovery() {
  ui::offerRecovery(*this);
}

void MainWindow::closeEvent(QCloseEvent* event) {
  if (!files_->mayDiscard()) return event->ignore();
  session_->recovery().discard();
  place_->keep();
  pages_->keepState();
  if (details_) {
    preferences::setDockPlaces(docks_->saveState());
    preferences::setDetailsOpen(!details_->isHidden());
  }
  event->accept();
}

/// What is above the pages and below them gives way where the window is low; they themselves stay high enough
/// to be read.
void MainWindow::fitHeight() {
  constexpr int kLowLines = 42, kPageLines = 19, kPageLinesWhereLow = 17;
  const int line = fontMetrics().height();
  const bool low = height() < kLowLines * line;
  readout_->setLow(low);
  driveLine_->setOneRow(low);
  const int least = (low ? kPageLinesWhereLow : kPageLines) * line;
  pages_->setMinimumHeight(least);
  docks_->setMinimumHeight(least);  // also where the details have the place to themselves
  sharePlace();
}

void MainWindow::changeEvent(QEvent* event) {
  QMainWindow::changeEvent(event);
  if (event->type() == QEvent::FontChange && place_) fitHeight();
  if (event->type() == QEvent::PaletteChange) keepReadable();
}

void MainWindow::resizeEvent(QResizeEvent* event) {
  QMainWindow::resizeEvent(event);
  if (place_) fitHeight();
}

void MainWindow::dragEnterEvent(QDragEnterEvent* event) {
  if (event->mimeData()->hasUrls()) event->acceptProposedAction();
}

void MainWindow::dropEvent(QDropEvent* event) {
  files_->openDropped(event->mimeData()->urls());
}

}  // namespace layshaft::ui
