// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QStringList>
#include <vector>

#include "core/plan.h"
#include "ui/words/units_shown.h"

namespace layshaft::ui {

/// The lap as it is handed over, on paper and in the text report.
struct LapReport {
  QString title;                     ///< says that it is for a closed course
  QString words;                     ///< both times, what their difference is worth, where it wins and loses
  std::vector<QStringList> corners;  ///< titles, then a row for each corner; empty without a lap
  QString restsOn;                   ///< what the times rest on; empty without a lap
  bool isEmpty() const { return words.isEmpty(); }
};

/// Where the bike cannot lap its track the words say why. Empty without a track.
LapReport lapReport(const Plan& plan, const UnitsShown& units);

}  // namespace layshaft::ui
