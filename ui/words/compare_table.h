// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QStringList>
#include <optional>
#include <vector>

#include "core/bike/profile.h"
#include "core/plan.h"
#include "ui/words/compare_rows.h"
#include "ui/words/lap_bands.h"
#include "ui/words/units_shown.h"

namespace layshaft::ui {

/// One setup's answer to one question, ready to show.
struct CompareCell {
  QString text;        ///< a dash where it cannot be known
  QString difference;  ///< from stock, of the figures as they read; empty where they read alike
  QString why;         ///< why it cannot be known; else empty
  bool best = false;   ///< the best of the row, or as good as it
  bool operator==(const CompareCell&) const = default;
};

struct CompareRow {
  CompareFigure figure;
  int gear = 0;  ///< 1 is first; 0 in rows that are not of one gear
  QString name;  ///< with its unit
  std::vector<CompareCell> cells;
  std::vector<std::optional<double>> values;  ///< SI, as far as they are numbers
};

/// Stock, proposal and pins side by side.
struct CompareTable {
  QStringList setups;  ///< their names
  QStringList pairs;   ///< "15/43"
  std::vector<CompareRow> rows;
};

/// Sprockets on hand.
struct PartsOnHand {
  std::vector<SpareSprocket> fronts, rears;
};

PartsOnHand partsOnHand(const Profile& profile);

/// Whether some of these rows tell how far lap times must be apart.
bool needLapBands(const std::vector<CompareFigure>& figures);

/// The rows of these figures. Of values that read alike none is better than the other, of times none that is
/// within `kEqualTimesS`, down the straight none within what estimated rollouts leave open, round the lap
/// none within the band; where all setups are alike, or one alone has a value, none is best. `bands` are the
/// plan's; without them they are worked out here where they are needed.
CompareTable compareTable(const Plan& plan, const UnitsShown& units,
                          const std::vector<CompareFigure>& figures, const PartsOnHand& onHand = {},
                          const LapBands* bands = nullptr);

/// As text: column titles, then a row each with name, figures and which setups are best in it; a group's name
/// alone in a row before its own.
std::vector<QStringList> compareRows(const CompareTable& table);

/// Comma-separated values at full precision in the units that the table was made in: a row for each setup, a
/// column for each number.
QString compareCsv(const CompareTable& table, const Plan& plan, const UnitsShown& units);

}  // namespace layshaft::ui
