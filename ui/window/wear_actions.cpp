// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/wear_actions.h"

#include <QInputDialog>

#include "core/limits.h"
#include "ui/document/record_edits.h"
#include "ui/editors/measure_dialog.h"
#include "ui/window/main_window.h"
#include "ui/words/dates.h"
#include "ui/words/problem_words.h"

namespace layshaft::ui {

std::optional<Struck> askWhyStruck(QWidget* parent, const QString& entry) {
  QInputDialog dialog(parent);
  dialog.setWindowTitle(MainWindow::tr("Strike Through"));
  dialog.setLabelText(
      MainWindow::tr("Why does the %1 no longer count? It stays in the table, struck through.").arg(entry));
  dialog.setOkButtonText(MainWindow::tr("Strike Through"));
  if (dialog.exec() != QDialog::Accepted) return std::nullopt;
  const QString reason = dialog.textValue().trimmed().left(limits::kLongestRecordText);
  if (reason.isEmpty()) return std::nullopt;
  return Struck{.date = coreDate(QDate::currentDate()), .reason = reason.toStdString(), .extras = {}};
}

void measureWear(MainWindow& window, const WearBook& book) {
  MeasureDialog dialog(book, window.units(), QDate::currentDate(), &window);
  if (dialog.exec() != QDialog::Accepted) return;
  const auto entry = dialog.entry();
  if (!entry) return;
  if (const auto problem = RecordEdits(window.document()).addMeasurement(*entry))
    window.say(spokenSentence(*problem));
}

void strikeMeasurement(MainWindow& window, std::size_t index) {
  const auto& wear = window.document().profile().wear;
  if (!wear || index >= wear->measurements.size()) return;
  const QString entry = MainWindow::tr("measurement of %1").arg(shownDate(wear->measurements[index].date));
  if (const auto why = askWhyStruck(&window, entry))
    RecordEdits(window.document()).strikeMeasurement(index, *why);
}

}  // namespace layshaft::ui
