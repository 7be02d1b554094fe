// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/bikes_window.h"

#include <QFileDialog>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QInputDialog>
#include <QKeyEvent>
#include <QScreen>
#include <QStandardPaths>
#include <QVBoxLayout>
#include <algorithm>

#include "core/bike/another_bike.h"
#include "core/limits.h"
#include "core/profile_file.h"
#include "ui/document/file_name.h"
#include "ui/document/preferences.h"
#include "ui/window/main_window.h"
#include "ui/window/messages.h"
#include "ui/words/plain_text.h"

namespace layshaft::ui {
namespace {

/// What a list begins with: the folder that was looked at last, or that of the bike in the window.
QString firstFolder(const MainWindow& window) {
  if (const QString kept = preferences::bikesFolder(); !kept.isEmpty()) return kept;
  const QString& file = window.document().file();
  return file.isEmpty() ? QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation)
                        : QFileInfo(file).path();
}

QPushButton* plainButton(const QString& text) {
  auto* button = new QPushButton(text);
  button->setAutoDefault(false);  // Enter is the list's
  return button;
}

}  // namespace

BikesWindow::BikesWindow(MainWindow& window) : QDialog(&window), window_(window) {
  setAttribute(Qt::WA_DeleteOnClose);
  setWindowTitle(tr("Bikes in a Folder"));
  auto* column = new QVBoxLayout(this);
  column->addLayout(makeTop());
  makeTable();
  column->addWidget(table_, 1);
  column->addLayout(makeFoot());
  connect(&folder_, &BikeFolder::listed, this, &BikesWindow::keepPlace);
  connect(&folder_, &BikeFolder::bikesChanged, this, &BikesWindow::say);
  connect(&folder_, &BikeFolder::settled, this, &BikesWindow::say);
  useFolder(firstFolder(window));
  search_->setFocus();
  const int character = fontMetrics().averageCharWidth();
  resize(
      QSize(160 * character, 30 * fontMetrics().height()).boundedTo(window.screen()->availableSize() * 0.85));
}

BikesWindow::~BikesWindow() {
  delete table_;  // it looks at what goes before it otherwise
}

void BikesWindow::open(MainWindow& window) {
  auto* list = window.findChild<BikesWindow*>(QString(), Qt::FindDirectChildrenOnly);
  if (!list) list = new BikesWindow(window);
  list->show();
  list->raise();
  list->activateWindow();
}

QLayout* BikesWindow::makeTop() {
  auto* row = new QHBoxLayout;
  search_ = new QLineEdit;
  search_->setPlaceholderText(tr("Search bike, customer, pair or file"));
  search_->setAccessibleName(tr("Search"));
  search_->setClearButtonEnabled(true);
  search_->installEventFilter(this);
  connect(search_, &QLineEdit::textChanged, this, [this](const QString& words) {
    shown_.search(words);
    keepPlace();
  });
  row->addWidget(search_, 1);
  folderName_ = new QLabel;
  folderName_->setAccessibleName(tr("Folder"));
  folderName_->setTextFormat(Qt::PlainText);
  row->addWidget(folderName_);
  auto* choose = plainButton(tr("&Folder…"));
  connect(choose, &QPushButton::clicked, this, &BikesWindow::chooseFolder);
  row->addWidget(choose);
  return row;
}

void BikesWindow::makeTable() {
  shown_.setSourceModel(&model_);
  table_ = new QTableView;
  table_->setAccessibleName(tr("Bikes"));
  table_->setModel(&shown_);
  table_->setSortingEnabled(true);
  table_->sortByColumn(BikesModel::Changed, Qt::DescendingOrder);
  table_->setSelectionBehavior(QAbstractItemView::SelectRows);
  table_->setSelectionMode(QAbstractItemView::SingleSelection);
  table_->setTabKeyNavigation(false);
  table_->setWordWrap(false);
  table_->verticalHeader()->hide();
  table_->verticalHeader()->setDefaultSectionSize(table_->fontMetrics().height() + 6);
  QHeaderView* header = table_->horizontalHeader();
  header->setHighlightSections(false);
  const int character = fontMetrics().averageCharWidth();
  for (const auto& [place, characters] : {std::pair{BikesModel::Name, 34},
                                          {BikesModel::Customer, 26},
                                          {BikesModel::Changed, 30},
                                          {BikesModel::Pair, 20}})
    header->resizeSection(place, characters * character);
  header->setStretchLastSection(true);
  connect(table_, &QTableView::activated, this, &BikesWindow::openCurrent);
  connect(table_->selectionModel(), &QItemSelectionModel::currentChanged, this, [this] {
    if (const QString file = currentFile(); !file.isEmpty()) place_ = file;
    say();
  });
}

QLayout* BikesWindow::makeFoot() {
  auto* row = new QHBoxLayout;
  status_ = new QLabel;
  status_->setAccessibleName(tr("Message"));
  status_->setTextFormat(Qt::PlainText);
  status_->setWordWrap(true);
  row->addWidget(status_, 1);
  newFrom_ = plainButton(tr("&New From This…"));
  newFrom_->setToolTip(tr("A new bike with the same parts, without customer, records and wear."));
  connect(newFrom_, &QPushButton::clicked, this, &BikesWindow::newFromCurrent);
  open_ = plainButton(tr("&Open"));
  connect(open_, &QPushButton::clicked, this, &BikesWindow::openCurrent);
  auto* close = plainButton(tr("&Close"));
  connect(close, &QPushButton::clicked, this, &QDialog::close);
  for (QPushButton* button : {newFrom_, open_, close}) row->addWidget(button);
  return row;
}

void BikesWindow::chooseFolder() {
  const QString chosen = QFileDialog::getExistingDirectory(this, tr("Bikes in a Folder"), folder_.folder());
  if (!chosen.isEmpty()) useFolder(chosen);
}

void BikesWindow::useFolder(const QString& folder) {
  preferences::setBikesFolder(folder);
  folderName_->setText(shownFile(QFileInfo(folder).fileName()));
  folderName_->setToolTip(asMarkup(shownFile(folder)));
  folder_.open(folder);
  say();
}

/// The cursor goes on standing on its file; where that is gone, on the first.
void BikesWindow::keepPlace() {
  const auto found = shown_.match(shown_.index(0, 0), BikesModel::kFileRole, place_, 1, Qt::MatchExactly);
  table_->setCurrentIndex(found.isEmpty() ? shown_.index(0, 0) : found.first());
  say();
}

void BikesWindow::say() {
  const QString file = currentFile();
  open_->setEnabled(!file.isEmpty());
  newFrom_->setEnabled(!file.isEmpty());
  if (!folder_.trouble().isEmpty()) {
    status_->setText(tr("%1 cannot be listed: %2.").arg(shownFile(folder_.folder()), folder_.trouble()));
    return;
  }
  const auto& bikes = folder_.bikes();
  const auto count = [&](FolderBike::State state) {
    return static_cast<int>(std::count_if(bikes.begin(), bikes.end(),
                                          [&](const FolderBike& bike) { return bike.state == state; }));
  };
  // What is wrong with the one under the cursor, in full.
  QStringList words;
  if (const QModelIndex at = shown_.mapToSource(table_->currentIndex()); at.isValid())
    if (const FolderBike& bike = model_.bike(at.row()); !bike.problem.isEmpty())
      words << tr("%1: %2.", "a file and what is wrong with it")
                   .arg(shownFile(QFileInfo(bike.file).fileName()), bike.problem);
  words += QStringList{tr("%n bikes in the folder.", nullptr, static_cast<int>(bikes.size()))};
  if (const int broken = count(FolderBike::State::Broken))
    words << tr("%n files cannot be read.", nullptr, broken);
  if (const int waiting = count(FolderBike::State::Waiting))
    words << tr("%n files are still being read.", nullptr, waiting);
  status_->setText(words.join(QLatin1Char(' ')));
}

QString BikesWindow::currentFile() const {
  return table_->currentIndex().data(BikesModel::kFileRole).toString();
}

void BikesWindow::openCurrent() {
  if (const QString file = currentFile(); !file.isEmpty()) window_.openFile(file);
}

void BikesWindow::newFromCurrent() {
  const QString file = currentFile();
  if (file.isEmpty()) return;
  auto pattern = loadProfile(pathOf(file));
  if (!pattern) return warnOfFile(this, tr("Bike Not Opened"), file, pattern.problem());
  QInputDialog asking(this);
  asking.setWindowTitle(tr("New From This"));
  asking.setLabelText(tr("Name of the new bike:"));
  asking.setTextValue(shownName(pattern->name));
  if (asking.exec() != QDialog::Accepted) return;
  Profile profile = anotherBike(*pattern);
  if (const QString name = asking.textValue().simplified(); !name.isEmpty())
    profile.name = name.left(static_cast<qsizetype>(limits::kLongestName)).toStdString();
  MainWindow::showUnsaved(profile);
}

void BikesWindow::changeEvent(QEvent* event) {
  QDialog::changeEvent(event);
  // A file written over in its place changes no folder.
  if (event->type() == QEvent::ActivationChange && isActiveWindow() && isVisible()) folder_.refresh();
}

/// From the search field into the list and back to work without a mouse.
bool BikesWindow::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() == QEvent::KeyPress) {
    const int key = static_cast<QKeyEvent*>(event)->key();
    if (key == Qt::Key_Down) {
      table_->setFocus();
      return true;
    }
    if (key == Qt::Key_Return || key == Qt::Key_Enter) {
      openCurrent();
      return true;
    }
  }
  return QDialog::eventFilter(watched, event);
}

}  // namespace layshaft::ui
