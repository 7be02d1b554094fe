// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/lap_report.h"

#include <QCoreApplication>

#include "ui/words/cautions.h"
#include "ui/words/lap_words.h"

namespace layshaft::ui {
namespace {

struct Say {
  Q_DECLARE_TR_FUNCTIONS(LapReport)
};

}  // namespace

LapReport lapReport(const Plan& plan, const UnitsShown& units) {
  // The book is gone before the plan is: it need not own it.
  LapBook book = lapBook(SharedPlan(SharedPlan(), &plan));
  if (!book.hasTrack()) return {};
  LapReport report{.title = Say::tr("Lap (%1)", "\"closed course\"").arg(closedCourseMark()),
                   .words = {},
                   .corners = {},
                   .restsOn = {}};
  if (!book.laps()) {
    report.words = noLapWords(plan);
    return report;
  }
  takeChange(book);
  report.words = lapWords(book);
  report.corners = lapTable(book, units);
  report.restsOn = lapHonesty(plan);
  return report;
}

}  // namespace layshaft::ui
