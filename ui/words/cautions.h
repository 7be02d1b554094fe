// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QStringList>
#include <vector>

#include "core/plan.h"

/// What people must know before they act: every caution's words, and which plan needs it where. The only
/// place for both.
namespace layshaft::ui {

enum class Caution {
  Hands,             ///< before anybody reaches for chain or belt
  Alignment,         ///< before it is ridden
  JoiningLink,       ///< links are taken out, or a chain is ordered
  SlackLimit,        ///< the figure on the page is no setting
  BeltTension,       ///< nor is there one for belts
  OddLinks,          ///< an odd number of links
  WornChain,         ///< elongation past the limit
  TyreSize,          ///< the tyre differs from stock's
  SpeedometerLow,    ///< it reads below the true speed
  SpeedometerHigh,   ///< or more above it than allowed
  ShorterGearing,    ///< some gear is shorter
  WheelSpeedRatios,  ///< sensors see another tyre
  GearboxSensor,     ///< or other sprockets
  ClosedCourse       ///< a top speed or a run is shown
};

/// Where a caution stands.
enum class CautionPlace {
  Readout,    ///< always on screen, and its text as copied
  Counter,    ///< beside what a customer chooses from
  ChainPage,  ///< and its saved picture
  WearPage,
  Work,  ///< work order and parts list: what the hands need, and what is ordered
  Paper  ///< the text report and the printed page, which have all of them
};

/// The caution in the words for a bike with a chain or one with a belt.
QString cautionText(Caution caution, bool belt);

/// The cautions that a plan needs at a place, in the order in which they are read.
std::vector<Caution> cautionsAt(const Plan& plan, CautionPlace place);
/// The same in words, a sentence or two each.
QStringList cautionsFor(const Plan& plan, CautionPlace place);

/// Every caution there is.
QStringList allCautions();

/// Said wherever a top speed or a run is shown.
QString closedCourseCaution();
/// The same in two words, for a corner of a picture.
QString closedCourseMark();

/// How the proposal's speedometer stands to UN Regulation 39: within it, or the caution; empty where nothing
/// is known of it.
QString speedometerWords(const Plan& plan);

}  // namespace layshaft::ui
