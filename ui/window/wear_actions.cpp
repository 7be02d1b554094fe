// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/wear_actions.h"

#include "ui/document/record_edits.h"
#include "ui/editors/measure_dialog.h"
#include "ui/window/main_window.h"
#include "ui/words/dates.h"
#include "ui/words/problem_words.h"

namespace layshaft::ui {

void measureWear(MainWindow& window, const WearBook& book) {
  MeasureDialog dialog(book, window.units(), QDate::currentDate(), &window);
  if (dialog.exec() != QDialog::Accepted) return;
  const auto entry = dialog.entry();
  if (!entry) return;
  if (const auto problem = RecordEdits(window.document()).addMeasurement(*entry))
    window.say(spokenSentence(*problem));
}

}  // namespace layshaft::ui
