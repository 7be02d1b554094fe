// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/help_menu.h"

#include <QApplication>
#include <QMenuBar>
#include <QMessageBox>

#include "ui/document/preferences.h"
#include "ui/document/samples.h"
#include "ui/window/help_window.h"
#include "ui/window/main_window.h"
#include "ui/window/messages.h"
#include "ui/words/cautions.h"

namespace layshaft::ui {

void addHelpMenu(MainWindow& window) {
  QMenu* menu = window.menuBar()->addMenu(MainWindow::tr("&Help"));
  QAction* contents =
      menu->addAction(QIcon::fromTheme(QStringLiteral("help-contents")), MainWindow::tr("Layshaft &Help"),
                      QKeySequence(Qt::Key_F1), &window, [&window] {
                        auto* help = window.findChild<HelpWindow*>(QString(), Qt::FindDirectChildrenOnly);
                        if (!help) help = new HelpWindow(window);
                        help->show();
                        help->raise();
                        help->activateWindow();
                      });
  contents->setMenuRole(QAction::NoRole);
  menu->addSeparator();
  QMenu* sampleMenu = menu->addMenu(MainWindow::tr("&Sample Bikes"));
  QObject::connect(sampleMenu, &QMenu::aboutToShow, &window, [sampleMenu] {
    if (!sampleMenu->isEmpty()) return;
    for (const auto& [name, profile] : samples())
      sampleMenu->addAction(name, sampleMenu, [bike = profile] { MainWindow::create(bike)->show(); });
  });
  menu->addAction(MainWindow::tr("&Cautions"), &window, [&window] {
    inform(&window, MainWindow::tr("Cautions"), allCautions().join(QStringLiteral("\n\n")));
  });
  menu->addAction(MainWindow::tr("Show the &Hints Again"), &window, [&window] {
    preferences::setHintsDismissed(false);
    inform(&window, MainWindow::tr("Hints"),
           MainWindow::tr("The hints will be shown in the next window that opens."));
  });
  menu->addAction(
      QIcon::fromTheme(QStringLiteral("help-about")), MainWindow::tr("&About Layshaft"), &window, [&window] {
        QMessageBox::about(
            &window, MainWindow::tr("About Layshaft"),
            MainWindow::tr("<b>Layshaft %1</b><p>Planner for motorcycle final-drive gearing.</p><p>Free "
                           "software, GPL-3.0-or-later; comes with no warranty.</p>")
                .arg(QCoreApplication::applicationVersion()));
      });
}

}  // namespace layshaft::ui
