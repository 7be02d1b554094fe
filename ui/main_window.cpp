// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/main_window.h"

#include <QActionGroup>
#include <QApplication>
#include <QClipboard>
#include <QCloseEvent>
#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QFrame>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QMenuBar>
#include <QMessageBox>
#include <QMimeData>
#include <QPushButton>
#include <QSaveFile>
#include <QScreen>
#include <QStandardPaths>
#include <QTabBar>
#include <QTabWidget>
#include <QTableWidget>
#include <QToolButton>
#include <QVBoxLayout>
#include <cmath>

#include "core/limits.h"
#include "core/profile_file.h"
#include "core/units.h"
#include "ui/editors/aim_editor.h"
#include "ui/editors/details_dialog.h"
#include "ui/editors/new_bike_dialog.h"
#include "ui/editors/ride_fields.h"
#include "ui/pages/chain_page.h"
#include "ui/pages/ladder_page.h"
#include "ui/pages/pull_page.h"
#include "ui/pages/run_page.h"
#include "ui/pages/sawtooth_page.h"
#include "ui/samples.h"
#include "ui/wording.h"

namespace layshaft::ui {
namespace {

const QString kFileEnding = QStringLiteral(".bike.json");

QString fileFilter() {
  return QObject::tr("Bike profiles (*.bike.json);;All files (*)");
}

/// Asks where to save; a name without one of the endings gets the first, and a file that would then be
/// replaced without the dialog having asked is asked about here. Empty if the user thinks better of it.
QString fileToSave(QWidget* parent, const QString& title, const QString& start, const QString& filter,
                   const QStringList& endings) {
  const QString chosen = QFileDialog::getSaveFileName(parent, title, start, filter);
  if (chosen.isEmpty()) return {};
  for (const QString& ending : endings)
    if (chosen.endsWith(ending, Qt::CaseInsensitive)) return chosen;
  const QString file = chosen + endings.front();
  if (QFileInfo::exists(file) &&
      QMessageBox::question(
          parent, title,
          MainWindow::tr("%1 is there already. Replace it?").arg(QDir::toNativeSeparators(file))) !=
          QMessageBox::Yes)
    return {};
  return file;
}

QList<MainWindow*> openWindows() {
  QList<MainWindow*> windows;
  for (QWidget* widget : QApplication::topLevelWidgets())
    if (auto* window = qobject_cast<MainWindow*>(widget)) windows << window;
  return windows;
}

}  // namespace

MainWindow* MainWindow::create(Profile profile) {
  auto* window = new MainWindow(std::move(profile));
  window->setAttribute(Qt::WA_DeleteOnClose);
  return window;
}

MainWindow::MainWindow(Profile profile, QWidget* parent)
    : QMainWindow(parent),
      document_(std::move(profile)),
      recovery_(document_, recoveryFolder()),
      planner_(document_),
      units_(preferences::units()) {
  readout_ = new Readout;
  readout_->pick(preferences::figures());
  tabs_ = new QTabWidget;
  tabs_->setDocumentMode(true);
  tabs_->setTabBarAutoHide(true);
  tabs_->setFocusPolicy(Qt::NoFocus);  // its bar has one of its own; while that is hidden Tab would end here
  driveLine_ = new DriveLine(document_);

  const auto addPage = [this](Page* page, const QString& title) {
    tabs_->addTab(page, title);
    pages_.push_back(page);
  };
  addPage(new SawtoothPage, tr("Sawtooth"));
  addPage(new PullPage(addForm({addConditions, addLaunchAndLean})), tr("Pull"));
  addPage(new RunPage(addForm({addDrive}), addForm({addRollOn})), tr("Run"));
  chain_ = new ChainPage;
  chain_->setMotion(preferences::motion());
  addPage(chain_, tr("Chain run"));
  aims_ = new AimEditor(document_);
  ladder_ = new LadderPage(aims_);
  addPage(ladder_, tr("Ladder"));
  connect(aims_, &AimEditor::refused, driveLine_, &DriveLine::say);
  connect(ladder_, &LadderPage::pairChosen, this, [this](int front, int rear) {
    if (const auto problem = SetupEdits(document_, Side::Proposed).setPair(front, rear))
      driveLine_->say(spokenSentence(*problem));
  });
  connect(ladder_, &LadderPage::pairPinned, this, [this](int front, int rear) {
    const auto why = SetupEdits::pin(document_, QStringLiteral("%1/%2").arg(front).arg(rear), front, rear);
    driveLine_->say(why.value_or(tr("%1/%2 is pinned to the charts.").arg(front).arg(rear)));
  });
  for (Page* page : pages_) {
    connect(page, &Page::detailsWanted, this, [this](std::string_view key) {
      showDetails();
      details_->showFieldsFor(key);
    });
    connect(page, &Page::cruiseDragged, this, [this](double mps, int drag) {
      const double kmh = std::round(units::kmhFromMps(mps));
      document_.edit(
          {.field = QStringLiteral("cruise.%1").arg(drag),
           .title = tr("cruise speed"),
           .shown =
               [](const Profile& p) { return p.cruiseSpeedKmh ? number(*p.cruiseSpeedKmh, 0) : QString(); }},
          [kmh](Profile& p) {
            p.cruiseSpeedKmh = std::clamp(kmh, limits::kCruiseSpeedKmh.low, limits::kCruiseSpeedKmh.high);
          });
    });
    if (LiveChart* chart = page->chart())
      connect(chart, &LiveChart::menuRequested, page, &Page::pictureMenuWanted);
    connect(page, &Page::pictureMenuWanted, this, [this](const QPoint& at) {
      QMenu menu;
      buildChartMenu(&menu);
      menu.exec(at);
    });
  }

  auto* centre = new QWidget;
  auto* column = new QVBoxLayout(centre);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  column->addWidget(readout_);
  if (!preferences::hintsDismissed()) buildHints(column);
  column->addWidget(tabs_, 1);
  column->addWidget(driveLine_);
  setCentralWidget(centre);
  setAcceptDrops(true);
  buildMenus();

  connect(&planner_, &Planner::planned, this, &MainWindow::showPlan);
  connect(tabs_, &QTabWidget::currentChanged, this, &MainWindow::refreshForms);
  connect(&document_, &Document::titleChanged, this, &MainWindow::updateTitle);
  showPlan(planner_.current());
  updateTitle();
  driveLine_->focusTeeth();
  resize(QSize(1280, 800).boundedTo(screen()->availableSize()));
}

void MainWindow::refreshForms() {
  for (FieldForm* form : forms_)
    if (form->isVisibleTo(tabs_)) form->refresh(units_);  // also before the window itself is shown
  if (aims_->isVisibleTo(tabs_)) aims_->refresh(units_);
}

FieldForm* MainWindow::addForm(std::initializer_list<void (*)(FieldForm&)> groups) {
  auto* form = new FieldForm(document_);
  for (const auto add : groups) add(*form);
  connect(form, &FieldForm::refused, driveLine_, &DriveLine::say);
  forms_.push_back(form);
  return form;
}

MainWindow::~MainWindow() {
  // The editors refer to the document, and a field that loses the focus still asks it: they go first.
  delete details_;
  delete takeCentralWidget();
}

void MainWindow::buildHints(QVBoxLayout* column) {
  auto* hints = new QFrame;
  hints->setFrameShape(QFrame::StyledPanel);
  auto* row = new QHBoxLayout(hints);
  row->setContentsMargins(24, 6, 12, 6);
  auto* text =
      new QLabel(tr("<b>Above:</b> what the change does, in words and figures. <b>Middle:</b> the picture; "
                    "move the pointer over it to read it. "
                    "<b>Below:</b> the drive line: turn the front or rear teeth and watch. This is a sample; "
                    "<i>File ▸ New Bike</i> starts your own."));
  text->setWordWrap(true);
  auto* dismiss = new QPushButton(tr("Got it"));
  connect(dismiss, &QPushButton::clicked, this, [hints] {
    preferences::setHintsDismissed(true);
    hints->hide();
  });
  row->addWidget(text, 1);
  row->addWidget(dismiss);
  column->addWidget(hints);
}

void MainWindow::buildMenus() {
  buildFileMenu();
  buildEditMenu();
  buildViewMenu();
  buildBikeMenu();
  buildHelpMenu();
}

void MainWindow::buildFileMenu() {
  QMenu* menu = menuBar()->addMenu(tr("&File"));
  menu->addAction(tr("&New Bike…"), QKeySequence::New, this, &MainWindow::newBike);
  menu->addAction(tr("&Open…"), QKeySequence::Open, this, &MainWindow::open);
  QMenu* recent = menu->addMenu(tr("Open &Recent"));
  connect(recent, &QMenu::aboutToShow, this, [this, recent] { rebuildRecent(recent); });
  menu->addSeparator();
  menu->addAction(tr("&Save"), QKeySequence::Save, this, &MainWindow::save);
  menu->addAction(tr("Save &As…"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_S), this, &MainWindow::saveAs);
  revert_ = menu->addAction(tr("Re&vert to Saved"), this, &MainWindow::revert);
  menu->addSeparator();
  buildChartMenu(menu->addMenu(tr("&Picture and Numbers")));
  menu->addSeparator();
  menu->addAction(tr("&Close Window"), QKeySequence::Close, this, &QWidget::close);
  menu->addAction(tr("&Quit"), QKeySequence::Quit, qApp, &QApplication::closeAllWindows);
}

void MainWindow::buildChartMenu(QMenu* menu) {
  menu->addAction(tr("Copy &Picture"), this, [this] {
    if (Picture* picture = currentPicture()) picture->copyPicture();
  });
  menu->addAction(tr("&Save Picture…"), this, &MainWindow::savePicture);
  menu->addAction(tr("Save &Numbers…"), this, &MainWindow::saveNumbers);
  menu->addAction(tr("Show Numbers as a &Table"), this, &MainWindow::showNumbers);
}

void MainWindow::buildEditMenu() {
  QMenu* menu = menuBar()->addMenu(tr("&Edit"));
  QUndoStack& undo = document_.undoStack();
  QAction* undoAction = undo.createUndoAction(this, tr("&Undo"));
  undoAction->setShortcuts(QKeySequence::Undo);
  QAction* redoAction = undo.createRedoAction(this, tr("&Redo"));
  redoAction->setShortcuts(QKeySequence::Redo);
  menu->addAction(undoAction);
  menu->addAction(redoAction);
  menu->addSeparator();
  menu->addAction(tr("Copy Rea&dout"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_C), this,
                  [this] { QApplication::clipboard()->setText(readout_->text()); });
}

void MainWindow::buildViewMenu() {
  QMenu* menu = menuBar()->addMenu(tr("&View"));
  const auto choices = [this](QMenu* into, const QStringList& names, int chosen,
                              const std::function<void(int)>& choose) {
    auto* group = new QActionGroup(this);
    for (int i = 0; i < names.size(); ++i) {
      QAction* action = into->addAction(names[i]);
      action->setCheckable(true);
      action->setChecked(i == chosen);
      group->addAction(action);
      connect(action, &QAction::triggered, this, [choose, i] { choose(i); });
    }
    return group;
  };
  unitChoices_ = choices(
      menu->addMenu(tr("&Units")),
      {tr("&Metric: km/h, mm, N·m, kg"), tr("&Imperial: mph, in, lb·ft, lb"), tr("Mi&xed: mph, else metric")},
      static_cast<int>(units_.system()), [](int i) {
        preferences::setUnits(UnitsShown(static_cast<UnitSystem>(i)));
        for (MainWindow* window : openWindows()) window->preferencesChanged();
      });
  buildFigureMenu(menu->addMenu(tr("&Key Figures")));
  motion_ = menu->addAction(tr("M&otion"), this, [](bool on) {
    preferences::setMotion(on);
    for (MainWindow* window : openWindows()) window->preferencesChanged();
  });
  motion_->setCheckable(true);
  motion_->setChecked(preferences::motion());
  appearanceChoices_ =
      choices(menu->addMenu(tr("&Appearance")), {tr("As the &Desktop"), tr("&Light"), tr("Dar&k")},
              static_cast<int>(preferences::appearance()), [](int i) {
                preferences::setAppearance(static_cast<Appearance>(i));
                applyAppearance(static_cast<Appearance>(i));
                for (MainWindow* window : openWindows()) window->preferencesChanged();
              });
}

void MainWindow::buildFigureMenu(QMenu* menu) {
  for (int i = 0; i < kFigureCount; ++i) {
    QAction* action = menu->addAction(figureName(static_cast<Figure>(i)));
    action->setCheckable(true);
    figureChoices_.push_back(action);
    connect(action, &QAction::triggered, this, &MainWindow::pickFigures);
  }
  menu->addSeparator();
  menu->addAction(tr("The &Usual Ones"), this, [] {
    preferences::setFigures({});
    for (MainWindow* window : openWindows()) window->preferencesChanged();
  });
  checkFigures();
}

void MainWindow::checkFigures() {
  const auto picked = preferences::figures();
  for (std::size_t i = 0; i < figureChoices_.size(); ++i) {
    const bool on = std::find(picked.begin(), picked.end(), static_cast<Figure>(i)) != picked.end();
    figureChoices_[i]->setChecked(on);
    // The readout has room for so many; one must go before another comes.
    figureChoices_[i]->setEnabled(on || picked.size() < kMostFigures);
  }
  readout_->pick(picked);
}

void MainWindow::pickFigures() {
  std::vector<Figure> picked;
  for (std::size_t i = 0; i < figureChoices_.size(); ++i)
    if (figureChoices_[i]->isChecked()) picked.push_back(static_cast<Figure>(i));
  preferences::setFigures(picked);
  for (MainWindow* window : openWindows()) window->preferencesChanged();
}

void MainWindow::preferencesChanged() {
  checkFigures();
  motion_->setChecked(preferences::motion());
  chain_->setMotion(preferences::motion());
  units_ = preferences::units();
  unitChoices_->actions().at(static_cast<int>(units_.system()))->setChecked(true);
  appearanceChoices_->actions().at(static_cast<int>(preferences::appearance()))->setChecked(true);
  showPlan(planner_.current());
}

void MainWindow::buildBikeMenu() {
  QMenu* menu = menuBar()->addMenu(tr("&Bike"));
  menu->addAction(tr("Bike &Details…"), QKeySequence(Qt::CTRL | Qt::Key_D), this, &MainWindow::showDetails);
  menu->addSeparator();
  QAction* stock = menu->addAction(tr("&Edit Stock in the Drive Line"));
  stock->setCheckable(true);
  stock->setShortcut(QKeySequence(Qt::CTRL | Qt::Key_E));
  connect(stock, &QAction::toggled, this,
          [this](bool on) { driveLine_->setSide(on ? Side::Stock : Side::Proposed); });
  connect(driveLine_, &DriveLine::sideChanged, stock,
          [stock](Side side) { stock->setChecked(side == Side::Stock); });
  menu->addAction(tr("&Add a Gear"), this, [this] { changeGearCount(+1); });
  menu->addAction(tr("&Remove the Last Gear"), this, [this] { changeGearCount(-1); });
  menu->addSeparator();
  QMenu* pins = menu->addMenu(tr("Remove a &Pin"));
  connect(pins, &QMenu::aboutToShow, this, [this, pins] { rebuildPins(pins); });
  menu->addSeparator();
  menu->addAction(tr("All &Back to Stock"), this, [this] { SetupEdits::clearProposal(document_); });
  menu->addAction(tr("&Make the Proposal Stock"), this, [this] { SetupEdits::makeProposalStock(document_); });
}

void MainWindow::buildHelpMenu() {
  QMenu* menu = menuBar()->addMenu(tr("&Help"));
  QMenu* sampleMenu = menu->addMenu(tr("&Sample Bikes"));
  connect(sampleMenu, &QMenu::aboutToShow, this, [sampleMenu] {
    if (!sampleMenu->isEmpty()) return;
    for (const auto& [name, profile] : samples())
      sampleMenu->addAction(name, sampleMenu, [profile] { MainWindow::create(profile)->show(); });
  });
  menu->addAction(tr("&Cautions"), this, [this] {
    QMessageBox::information(this, tr("Cautions"), cautions().join(QStringLiteral("\n\n")));
  });
  menu->addAction(tr("Show the &Hints Again"), this, [this] {
    preferences::setHintsDismissed(false);
    QMessageBox::information(this, tr("Hints"), tr("The hints will be shown in the next window that opens."));
  });
  menu->addAction(tr("&About Layshaft"), this, [this] {
    QMessageBox::about(this, tr("About Layshaft"),
                       tr("<b>Layshaft %1</b><p>Planner for motorcycle final-drive gearing.</p><p>Free "
                          "software, GPL-3.0-or-later; comes with no warranty.</p>")
                           .arg(QCoreApplication::applicationVersion()));
  });
}

void MainWindow::rebuildRecent(QMenu* menu) {
  menu->clear();
  const QStringList files = preferences::recentFiles();
  for (const QString& file : files) {
    QString name = QDir::toNativeSeparators(file);
    menu->addAction(name.replace(QLatin1Char('&'), QStringLiteral("&&")), this,
                    [this, file] { openFile(file); });
  }
  if (files.isEmpty()) {
    menu->addAction(tr("nothing yet"))->setEnabled(false);
    return;
  }
  menu->addSeparator();
  menu->addAction(tr("Clear This List"), this, [] { preferences::clearRecentFiles(); });
}

void MainWindow::rebuildPins(QMenu* menu) {
  menu->clear();
  const auto& pins = document_.profile().pins;
  for (std::size_t i = 0; i < pins.size(); ++i) {
    QString name = QString::fromStdString(pins[i].name);
    menu->addAction(name.replace(QLatin1Char('&'), QStringLiteral("&&")), this,
                    [this, i] { SetupEdits::removePin(document_, i); });
  }
  if (pins.empty()) menu->addAction(tr("none yet: the ladder pins them"))->setEnabled(false);
}

void MainWindow::showPlan(const Plan& plan) {
  ladder_->use(document_.profile());
  for (Page* page : pages_) page->take(plan, units_);
  readout_->show(plan, units_);
  driveLine_->show(plan, units_);
  refreshForms();
  if (details_ && details_->isVisible()) details_->refresh(units_);
}

void MainWindow::updateTitle() {
  const QString file =
      document_.file().isEmpty() ? QString() : QStringLiteral(" – ") + QFileInfo(document_.file()).fileName();
  // Twice the mark is what Qt shows as the mark itself.
  QString name = document_.title() + file;
  name.replace(QLatin1String("[*]"), QLatin1String("[*][*]"));
  setWindowTitle(name + QStringLiteral("[*] – Layshaft"));
  setWindowFilePath(document_.file());
  setWindowModified(document_.isModified());
  revert_->setEnabled(document_.isModified() && !document_.file().isEmpty());
}

Page* MainWindow::currentPage() {
  return qobject_cast<Page*>(tabs_->currentWidget());
}

LiveChart* MainWindow::currentChart() {
  Page* page = currentPage();
  return page ? page->chart() : nullptr;
}

Picture* MainWindow::currentPicture() {
  Page* page = currentPage();
  return page ? page->picture() : nullptr;
}

void MainWindow::complain(const QString& what, const QString& why) {
  QMessageBox::warning(this, what, why);
}

void MainWindow::newBike() {
  NewBikeDialog dialog(samples(), this);
  if (dialog.exec() != QDialog::Accepted) return;
  if (auto profile = dialog.profile()) {
    MainWindow* window = create(*profile);
    // Nothing is on disk yet: closing must ask.
    window->document_.recover(*profile, QString());
    window->show();
  }
}

void MainWindow::open() {
  const QString folder = document_.file().isEmpty()
                             ? QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation)
                             : QFileInfo(document_.file()).path();
  for (const QString& file : QFileDialog::getOpenFileNames(this, tr("Open a bike"), folder, fileFilter()))
    openFile(file);
}

void MainWindow::openFile(const QString& file) {
  const QString path = QFileInfo(file).absoluteFilePath();
  const QString itself = QFileInfo(file).canonicalFilePath();  // whatever link or detour leads to it
  for (MainWindow* window : openWindows())
    if (!window->document_.file().isEmpty() && !itself.isEmpty() &&
        QFileInfo(window->document_.file()).canonicalFilePath() == itself) {
      window->raise();
      window->activateWindow();
      return;
    }
  auto profile = loadProfile(path.toStdString());
  if (!profile)
    return complain(
        tr("This bike cannot be opened"),
        QStringLiteral("%1: %2.").arg(QDir::toNativeSeparators(path), sentence(profile.problem())));
  preferences::addRecentFile(path);
  const bool untouchedSample = document_.file().isEmpty() && !document_.isModified();
  MainWindow* window = untouchedSample ? this : create(*profile);
  window->document_.load(std::move(profile).value(), path);
  window->show();
}

bool MainWindow::save() {
  if (document_.file().isEmpty()) return saveAs();
  if (document_.changedOutside() &&
      QMessageBox::warning(
          this, tr("Save"),
          tr("%1 was changed by something else since it was opened or saved here. Replace it with "
             "what this window shows?")
              .arg(QDir::toNativeSeparators(document_.file())),
          QMessageBox::Save | QMessageBox::Cancel, QMessageBox::Cancel) != QMessageBox::Save)
    return false;
  if (const auto why = document_.save(document_.file())) {
    complain(tr("The bike could not be saved"),
             QStringLiteral("%1: %2.").arg(QDir::toNativeSeparators(document_.file()), *why));
    return false;
  }
  preferences::addRecentFile(document_.file());
  return true;
}

bool MainWindow::saveAs() {
  QString start = document_.file();
  if (start.isEmpty()) {
    QString name = document_.title();
    name.replace(QLatin1Char('/'), QLatin1Char('-'));
    start = QDir(QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation))
                .filePath(name + kFileEnding);
  }
  const QString chosen =
      fileToSave(this, tr("Save the bike as"), start, fileFilter(), {kFileEnding, QStringLiteral(".json")});
  if (chosen.isEmpty()) return false;
  const QString file = QFileInfo(chosen).absoluteFilePath();
  for (MainWindow* window : openWindows())
    if (window != this && window->document_.file() == file) {
      complain(tr("The bike could not be saved"),
               tr("%1 is open in another window.").arg(QDir::toNativeSeparators(file)));
      return false;
    }
  if (const auto why = document_.save(file)) {
    complain(tr("The bike could not be saved"),
             QStringLiteral("%1: %2.").arg(QDir::toNativeSeparators(file), *why));
    return false;
  }
  preferences::addRecentFile(file);
  return true;
}

void MainWindow::revert() {
  auto profile = loadProfile(document_.file().toStdString());
  if (!profile)
    return complain(tr("The saved bike cannot be read"),
                    QStringLiteral("%1: %2.").arg(document_.file(), sentence(profile.problem())));
  if (QMessageBox::question(this, tr("Revert"),
                            tr("Go back to the bike as it was saved? What you changed since is lost.")) !=
      QMessageBox::Yes)
    return;
  document_.load(std::move(profile).value(), document_.file());
}

bool MainWindow::mayDiscard() {
  if (!document_.isModified()) return true;
  const auto answer = QMessageBox::warning(
      this, tr("Save the changes?"), tr("“%1” has changes that are not saved.").arg(document_.title()),
      QMessageBox::Save | QMessageBox::Discard | QMessageBox::Cancel, QMessageBox::Save);
  if (answer == QMessageBox::Save) return save();
  return answer == QMessageBox::Discard;
}

void MainWindow::closeEvent(QCloseEvent* event) {
  if (!mayDiscard()) return event->ignore();
  recovery_.discard();
  event->accept();
}

void MainWindow::dragEnterEvent(QDragEnterEvent* event) {
  if (event->mimeData()->hasUrls()) event->acceptProposedAction();
}

void MainWindow::dropEvent(QDropEvent* event) {
  for (const QUrl& url : event->mimeData()->urls()) {
    if (url.isLocalFile())
      openFile(url.toLocalFile());
    else
      complain(tr("This bike cannot be opened"),
               tr("%1 is not a file on this machine.").arg(url.toDisplayString()));
  }
}

void MainWindow::savePicture() {
  Picture* picture = currentPicture();
  if (!picture) return;
  const QString file = fileToSave(this, tr("Save the picture"), document_.title() + QStringLiteral(".png"),
                                  tr("Pictures (*.png *.svg *.pdf)"),
                                  {QStringLiteral(".png"), QStringLiteral(".svg"), QStringLiteral(".pdf")});
  if (file.isEmpty()) return;
  if (const auto why = picture->savePicture(file))
    complain(tr("The picture could not be saved"), QStringLiteral("%1: %2.").arg(file, *why));
}

void MainWindow::saveNumbers() {
  Page* page = currentPage();
  if (!page) return;
  const QString file = fileToSave(this, tr("Save the numbers"), document_.title() + QStringLiteral(".csv"),
                                  tr("Comma-separated values (*.csv)"), {QStringLiteral(".csv")});
  if (file.isEmpty()) return;
  QSaveFile out(file);
  if (!out.open(QIODevice::WriteOnly) || out.write(page->csv().toUtf8()) < 0 || !out.commit())
    complain(tr("The numbers could not be saved"), QStringLiteral("%1: %2.").arg(file, out.errorString()));
}

void MainWindow::showNumbers() {
  Page* page = currentPage();
  if (!page) return;
  auto* dialog = new QDialog(this);
  dialog->setAttribute(Qt::WA_DeleteOnClose);
  dialog->setWindowTitle(tr("Numbers of the chart"));
  auto* table = new QTableWidget;
  table->setAccessibleName(dialog->windowTitle());
  table->setEditTriggers(QAbstractItemView::NoEditTriggers);
  table->verticalHeader()->hide();
  auto* column = new QVBoxLayout(dialog);
  column->addWidget(table);
  const auto fill = [table, page] {
    const auto rows = page->numbers();
    if (rows.empty()) return;
    table->setColumnCount(static_cast<int>(rows[0].size()));
    table->setRowCount(static_cast<int>(rows.size()) - 1);
    table->setHorizontalHeaderLabels(rows[0]);
    for (std::size_t r = 1; r < rows.size(); ++r)
      for (int c = 0; c < rows[r].size(); ++c) {
        auto* cell = new QTableWidgetItem(rows[r][c]);
        cell->setTextAlignment(Qt::AlignRight | Qt::AlignVCenter);
        table->setItem(static_cast<int>(r) - 1, c, cell);
      }
    table->resizeColumnsToContents();
  };
  fill();
  connect(&planner_, &Planner::planned, dialog, fill);
  dialog->resize(820, 320);
  dialog->show();
}

void MainWindow::showDetails() {
  if (!details_) details_ = new DetailsDialog(document_, this);
  details_->refresh(units_);
  details_->show();
  details_->raise();
  details_->activateWindow();
}

void MainWindow::changeGearCount(int by) {
  SetupEdits edits(document_, driveLine_->side());
  const auto count = static_cast<int>(edits.current().gearRatios.count()) + by;
  if (const auto problem = edits.setGearCount(static_cast<std::size_t>(std::max(count, 0))))
    complain(tr("The gearbox stays as it is"), spokenSentence(*problem) + QLatin1Char('.'));
}

void MainWindow::offerRecovery() {
  for (Recovered& work : recoverable(recoveryFolder())) {
    const QString name = QString::fromStdString(work.profile.name);
    QMessageBox box(QMessageBox::Question, tr("Unsaved work"),
                    tr("The program ended last time before “%1” was saved. Open it again?").arg(name),
                    QMessageBox::NoButton, this);
    QPushButton* open = box.addButton(tr("Open It"), QMessageBox::AcceptRole);
    QPushButton* discard = box.addButton(tr("Throw It Away"), QMessageBox::DestructiveRole);
    box.addButton(tr("Ask Again Later"), QMessageBox::RejectRole);
    box.setDefaultButton(open);
    box.exec();
    if (box.clickedButton() == open) {
      // Into the window that shows the saved state of the same file, if there is one: never two windows on
      // one file.
      MainWindow* window = nullptr;
      for (MainWindow* candidate : openWindows())
        if (!candidate->document_.isModified() && candidate->document_.file() == work.originalFile)
          window = candidate;
      if (!window) window = create(work.profile);
      window->document_.recover(work.profile, work.originalFile);
      window->recovery_.writeNow();  // the new copy is there before the old one goes
      window->show();
      removeRecovery(work.copy);
    } else if (box.clickedButton() == discard) {
      removeRecovery(work.copy);
    }
  }
}

}  // namespace layshaft::ui
