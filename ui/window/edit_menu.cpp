// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/edit_menu.h"

#include <QApplication>
#include <QClipboard>
#include <QMenuBar>
#include <QMessageBox>
#include <QPushButton>

#include "core/limits.h"
#include "core/plan.h"
#include "core/study/adopted.h"
#include "core/study/parts_list.h"
#include "ui/document/price_edits.h"
#include "ui/document/setup_edits.h"
#include "ui/editors/pin_menu.h"
#include "ui/editors/prices_dialog.h"
#include "ui/window/clipboard_actions.h"
#include "ui/window/main_window.h"
#include "ui/window/messages.h"
#include "ui/window/records_actions.h"
#include "ui/window/tracks_window.h"
#include "ui/words/numbers.h"
#include "ui/words/problem_words.h"

namespace layshaft::ui {
namespace {

void changeGearCount(MainWindow& window, int by) {
  SetupEdits edits(window.document(), window.driveLine().side());
  if (edits.current().gearRatios.empty()) return window.askForGears();
  const auto count = static_cast<int>(edits.current().gearRatios.count()) + by;
  if (const auto problem = edits.setGearCount(static_cast<std::size_t>(std::max(count, 0))))
    warn(&window, MainWindow::tr("Gearbox Not Changed"), spokenSentence(*problem) + QLatin1Char('.'));
}

void editPrices(MainWindow& window) {
  PricesDialog dialog(typedPrices(window.document().profile()), &window);
  if (dialog.exec() != QDialog::Accepted) return;
  if (const auto problem = setPrices(window.document(), *dialog.prices()))
    warn(&window, MainWindow::tr("Prices Not Changed"), spokenSentence(*problem) + QLatin1Char('.'));
}

/// What the speedometer shows after either answer: "At a true 100 km/h it shows 111 with the proposal. …".
QString recalibrationWords(const Plan& plan, const UnitsShown& units) {
  const double speed = units.si(Quantity::Speed, units.system() == UnitSystem::Metric ? 100.0 : 60.0);
  const auto shown = [&](double mps) { return number(units.shown(Quantity::Speed, mps), 0); };
  return MainWindow::tr(
             "At a true %1 it shows %2 with the proposal. Recalibrated it shows %3, as with stock today. If "
             "not, it goes on showing %2; odometer and corrector then count as right for the new stock.")
      .arg(units.withUnit(shown(speed), Quantity::Speed),
           shown(speed * plan.proposed.speedometer->indicatedOverTrue),
           shown(speed * plan.stock.speedometer->indicatedOverTrue));
}

/// Whether the speedometer has been recalibrated for the proposal; nothing if nobody will say.
std::optional<bool> speedometerSetAnew(MainWindow& window) {
  QMessageBox box(
      QMessageBox::Question, MainWindow::tr("Make the Proposal Stock"),
      MainWindow::tr("The proposal changes what the speedometer shows. Has it been recalibrated?"),
      QMessageBox::NoButton, &window);
  box.setTextFormat(Qt::PlainText);
  box.setInformativeText(recalibrationWords(plan(window.document().profile()), window.units()));
  QPushButton* yes = box.addButton(MainWindow::tr("Yes, Recalibrated"), QMessageBox::YesRole);
  auto* no = box.addButton(MainWindow::tr("No, It Stays as It Is"), QMessageBox::NoRole);
  box.addButton(QMessageBox::Cancel);
  box.setDefaultButton(no);
  box.exec();
  if (box.clickedButton() == yes) return true;
  return box.clickedButton() == no ? std::optional(false) : std::nullopt;
}

void makeProposalStock(MainWindow& window) {
  Document& document = window.document();
  const bool moves = readsHighPercentCarried(document.profile()).has_value();
  const std::optional<bool> setAnew = moves ? speedometerSetAnew(window) : true;
  if (!setAnew) return;
  const PartsList fitted = partsList(document.profile(), plan(document.profile()));
  SetupEdits::makeProposalStock(document, *setAnew);
  offerServiceEntry(window, fitted);
}

}  // namespace

void addEditMenu(MainWindow& window) {
  QMenu* menu = window.menuBar()->addMenu(MainWindow::tr("&Edit"));
  QUndoStack& undo = window.document().undoStack();
  QAction* undoAction = undo.createUndoAction(&window, MainWindow::tr("&Undo"));
  undoAction->setShortcuts(QKeySequence::Undo);
  QAction* redoAction = undo.createRedoAction(&window, MainWindow::tr("&Redo"));
  redoAction->setShortcuts(QKeySequence::Redo);
  undoAction->setIcon(QIcon::fromTheme(QStringLiteral("edit-undo")));
  redoAction->setIcon(QIcon::fromTheme(QStringLiteral("edit-redo")));
  menu->addAction(undoAction);
  menu->addAction(redoAction);
  menu->addSeparator();
  new ClipboardActions(window, *menu);
  menu->addSeparator();
  menu->addAction(MainWindow::tr("Copy Rea&dout"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_C), &window,
                  [&window] {
                    QApplication::clipboard()->setText(window.readout().text());
                    window.say(MainWindow::tr("Copied the readout."));
                  });
  menu->addSeparator();
  menu->addAction(MainWindow::tr("Pr&ices…"), &window, [&window] { editPrices(window); });
}

void addBikeMenu(MainWindow& window) {
  QMenu* menu = window.menuBar()->addMenu(MainWindow::tr("&Bike"));
  QAction* details = menu->addAction(MainWindow::tr("Bike &Details"));
  details->setCheckable(true);
  details->setShortcut(QKeySequence(Qt::CTRL | Qt::Key_D));
  QObject::connect(details, &QAction::triggered, &window, [&window](bool open) {
    if (open)
      window.showDetails();
    else
      window.closeDetails();
  });
  QObject::connect(&window, &MainWindow::detailsToggled, details, &QAction::setChecked);
  menu->addAction(MainWindow::tr("&Go to Bike Details and Back"), QKeySequence(Qt::Key_F6), &window,
                  [&window] { window.toggleDetailsFocus(); });
  menu->addAction(MainWindow::tr("&Tracks…"), &window, [&window] { TracksWindow::open(window); });
  menu->addSeparator();
  QAction* stock = menu->addAction(MainWindow::tr("&Edit Stock in the Drive Line"));
  stock->setCheckable(true);
  stock->setShortcut(QKeySequence(Qt::CTRL | Qt::Key_E));
  QObject::connect(stock, &QAction::toggled, &window,
                   [&window](bool on) { window.driveLine().setSide(on ? Side::Stock : Side::Proposed); });
  QObject::connect(&window.driveLine(), &DriveLine::sideChanged, stock,
                   [stock](Side side) { stock->setChecked(side == Side::Stock); });
  QAction* add =
      menu->addAction(MainWindow::tr("&Add a Gear"), &window, [&window] { changeGearCount(window, +1); });
  QAction* remove = menu->addAction(MainWindow::tr("&Remove the Top Gear"), &window,
                                    [&window] { changeGearCount(window, -1); });
  menu->addSeparator();
  menu->addAction(window.driveLine().pins().proposalAction());
  QMenu* pins = menu->addMenu(MainWindow::tr("U&npin"));
  QObject::connect(pins, &QMenu::aboutToShow, &window, [&window, pins] {
    pins->clear();
    window.driveLine().pins().addUnpinning(*pins);
  });
  menu->addSeparator();
  QAction* back = menu->addAction(MainWindow::tr("All &Back to Stock"), &window,
                                  [&window] { SetupEdits::clearProposal(window.document()); });
  QAction* adopt = menu->addAction(MainWindow::tr("&Make the Proposal Stock"), &window,
                                   [&window] { makeProposalStock(window); });
  // Only what there is something to do for.
  const auto offer = [&window, add, remove, back, adopt, pins] {
    const Profile& profile = window.document().profile();
    const auto gears = static_cast<int>(
        SetupEdits(window.document(), window.driveLine().side()).current().gearRatios.count());
    add->setEnabled(gears < limits::kMostGears);
    remove->setEnabled(gears > limits::kFewestGears);
    pins->setEnabled(!profile.pins.empty());
    for (QAction* action : {back, adopt}) action->setEnabled(!profile.proposed.changesNothing());
  };
  offer();
  QObject::connect(&window.document(), &Document::changed, menu, offer);
  QObject::connect(&window.driveLine(), &DriveLine::sideChanged, menu, offer);
}

}  // namespace layshaft::ui
