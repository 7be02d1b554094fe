// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QStringList>
#include <vector>

#include "core/plan.h"
#include "ui/words/units_shown.h"

namespace layshaft::ui {

/// What the readout can tell. The user picks which; the order here is the one in which they stand.
enum class Figure {
  TopSpeed,
  LastGearAtLimit,
  FirstGearAtLimit,
  Cruise,
  PullInFirst,
  PullInChosenGear,
  StandingStart,  ///< 0–100 km/h or 0–60 mph
  QuarterMile,
  Drive,
  CornerExit,
  Lap,
  TurnsPerDistance,
  FinalRatio,
  Rollout,
  AxleShift,
  Speedometer
};
inline constexpr int kFigureCount = static_cast<int>(Figure::Speedometer) + 1;
inline constexpr std::size_t kMostFigures = 7;

/// One key figure: stock, proposed and the difference, ready to show.
struct KeyFigure {
  QString label;
  QString stock;
  QString proposed;
  QString unit;
  QString difference;  ///< empty where nothing changes or there is nothing to compare
};

/// The figures of the readout, at most seven, of those that the profile has data for. `wanted` empty: the
/// ones most asked for.
std::vector<KeyFigure> keyFigures(const Plan& plan, const UnitsShown& units,
                                  const std::vector<Figure>& wanted = {});

/// Which figures are meant for the readout, at most seven, in their order: those picked, or the usual ones
/// that the profile has data for.
std::vector<Figure> figuresInReadout(const Plan& plan, const std::vector<Figure>& picked);

/// Whether the profile has data for it.
bool hasFigure(const Plan& plan, Figure figure);

/// Every figure that the profile has data for.
std::vector<KeyFigure> everyFigure(const Plan& plan, const UnitsShown& units);

/// What a figure is called where it is picked.
QString figureName(Figure figure);

/// A word that settings keep for a figure, and back; none for a word not known.
QString figureWord(Figure figure);
std::optional<Figure> figureOf(const QString& word);

}  // namespace layshaft::ui
