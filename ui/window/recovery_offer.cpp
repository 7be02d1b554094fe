// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/recovery_offer.h"

#include <QCoreApplication>
#include <QLocale>
#include <QMessageBox>
#include <QPushButton>

#include "ui/document/file_name.h"
#include "ui/window/main_window.h"
#include "ui/words/plain_text.h"

namespace layshaft::ui {
namespace {

struct Say {
  Q_DECLARE_TR_FUNCTIONS(RecoveryOffer)
};

QString question(const Recovered& work) {
  const QString name = shownName(work.profile.name);
  QStringList words{work.written.isValid()
                        ? Say::tr("Layshaft closed without saving. Recover “%1” as it was on %2?")
                              .arg(name, QLocale().toString(work.written.toLocalTime(), QLocale::ShortFormat))
                        : Say::tr("Layshaft closed without saving. Recover “%1”?").arg(name)};
  if (work.originalFile.isEmpty()) {
    words << Say::tr("It was never saved to a file.");
  } else {
    words << Say::tr("It belongs to %1.").arg(shownFile(work.originalFile));
    const auto now = markOf(pathOf(work.originalFile));
    if (!now)
      words << Say::tr("That file is gone.");
    else if (now != work.mark)
      words << Say::tr(
          "That file has changed since: saving the recovered work will ask before it replaces it.");
  }
  return words.join(QStringLiteral("\n\n"));
}

/// The window that shows the saved state of the same file, if there is one: never two windows on one file.
MainWindow* windowFor(const Recovered& work) {
  for (MainWindow* window : MainWindow::all()) {
    const QString& file = window->document().file();
    const bool same = file.isEmpty() || work.originalFile.isEmpty()
                          ? file == work.originalFile
                          : sameFile(pathOf(file), pathOf(work.originalFile));
    if (same && !window->document().isModified()) return window;
  }
  return MainWindow::create(work.profile);
}

/// Whether a copy of its own keeps the work safe by now.
bool recover(const Recovered& work) {
  MainWindow* window = windowFor(work);
  window->document().recover(work.profile, work.originalFile, work.mark);
  const bool safe = window->session().recovery().writeNow();
  window->show();
  return safe;
}

}  // namespace

void offerRecovery(MainWindow& first) {
  for (const Recovered& work : recoverable(recoveryFolder())) {
    QMessageBox box(QMessageBox::Question, Say::tr("Unsaved Work"), question(work), QMessageBox::NoButton,
                    &first);
    box.setTextFormat(Qt::PlainText);
    QPushButton* open = box.addButton(Say::tr("Recover"), QMessageBox::AcceptRole);
    QPushButton* discard = box.addButton(Say::tr("Discard"), QMessageBox::DestructiveRole);
    box.addButton(Say::tr("Ask Again Later"), QMessageBox::RejectRole);
    box.setDefaultButton(open);
    box.exec();
    // The old copy goes when a new one is there, and never where it might be that of a running program.
    const bool done = box.clickedButton() == open ? recover(work) : box.clickedButton() == discard;
    if (done && work.claim->state() == RecoveryLock::State::Held) removeRecovery(work.copy);
  }
}

}  // namespace layshaft::ui
