// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/main_window.h"

#include <QApplication>
#include <QCloseEvent>
#include <QFileInfo>
#include <QMenuBar>
#include <QMimeData>
#include <QScreen>
#include <QStyle>
#include <QVBoxLayout>

#include "ui/document/file_name.h"
#include "ui/document/preferences.h"
#include "ui/editors/details_dialog.h"
#include "ui/window/edit_menu.h"
#include "ui/window/file_actions.h"
#include "ui/window/help_menu.h"
#include "ui/window/hints.h"
#include "ui/window/pages.h"
#include "ui/window/recovery_offer.h"
#include "ui/window/spoken_headline.h"
#include "ui/window/view_menu.h"

namespace layshaft::ui {

MainWindow* MainWindow::create(Profile profile) {
  auto* window = new MainWindow(std::move(profile));
  window->setAttribute(Qt::WA_DeleteOnClose);
  return window;
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
      pages_(new Pages(*this)),
      driveLine_(new DriveLine(document())),
      files_(new FileActions(*this)),
      spoken_(new SpokenHeadline(*this)) {
  readout_->pick(preferences::figures());
  auto* centre = new QWidget;
  auto* column = new QVBoxLayout(centre);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  column->addWidget(readout_);
  if (!preferences::hintsDismissed()) column->addWidget(new Hints);
  column->addWidget(pages_, 1);
  column->addWidget(driveLine_);
  setCentralWidget(centre);
  setAcceptDrops(true);
  buildMenus();

  connect(&planner(), &Planner::planned, this, &MainWindow::showPlan);
  connect(&planner(), &Planner::settled, this, &MainWindow::followDocument);
  connect(&document(), &Document::titleChanged, this, &MainWindow::updateTitle);
  showPlan();
  followDocument();
  updateTitle();
  driveLine_->focusTeeth();
  files_->watchOverUnsavedWork();
  // With the frame, whose size is only known once there is one: its foot, where things are said, stays in
  // view.
  const int title = style()->pixelMetric(QStyle::PM_TitleBarHeight) + fontMetrics().height() / 2;
  resize(QSize(1280, 800).boundedTo(screen()->availableSize() - QSize(0, title)));
}

MainWindow::~MainWindow() {
  // The editors refer to the document, and a field that loses the focus still asks it: they go first.
  delete details_;
  delete takeCentralWidget();
}

void MainWindow::buildMenus() {
  files_->addFileMenu(*menuBar());
  addEditMenu(*this);
  view_ = new ViewMenu(*menuBar(), *this);
  addBikeMenu(*this);
  addHelpMenu(*this);
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

QString MainWindow::currentPageName() const {
  return pages_->tabText(pages_->currentIndex()).remove(QLatin1Char('&')).toLower();
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

void MainWindow::showDetails(std::string_view key) {
  if (!details_) details_ = new DetailsDialog(document(), this);
  details_->refresh(units_);
  details_->show();
  details_->raise();
  details_->activateWindow();
  if (!key.empty()) details_->showFieldsFor(key);
}

void MainWindow::openFile(const QString& file) {
  files_->openFile(file);
}

void MainWindow::offerRecovery() {
  ui::offerRecovery(*this);
}

void MainWindow::closeEvent(QCloseEvent* event) {
  if (!files_->mayDiscard()) return event->ignore();
  session_->recovery().discard();
  event->accept();
}

void MainWindow::dragEnterEvent(QDragEnterEvent* event) {
  if (event->mimeData()->hasUrls()) event->acceptProposedAction();
}

void MainWindow::dropEvent(QDropEvent* event) {
  files_->openDropped(event->mimeData()->urls());
}

}  // namespace layshaft::ui
