// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <optional>
#include <string_view>
#include <vector>

#include "core/plan.h"
#include "core/study/lap.h"
#include "core/track/track_line.h"
#include "ui/words/lap_parts.h"

namespace layshaft::ui {

/// The lap of one setup.
struct LapOfSetup {
  const SetupPlan* setup = nullptr;           ///< of the book's plan
  std::shared_ptr<const LapFigures> figures;  ///< null where it cannot lap
  std::vector<LapPoint> points;               ///< from the start of the track, where time begins
  std::vector<LapPullFigures> pulls;          ///< the same; one may end behind the end of a closed track
  std::vector<LapDifference> later;           ///< than stock, along the track

  bool laps() const { return figures != nullptr; }
};

/// What a setup does in a part.
struct LapPartFigures {
  double timeS = 0.0, minMps = 0.0;
  std::optional<int> gearAtMin;
  std::optional<double> rpmAtMin;
  std::optional<int> exitGear;
  double limiterS = 0.0;
};

/// The pulls that begin in a bend or where it ends, up to the next bend: the straight that follows it.
struct LapStraight {
  double endRpm = 0.0;
  int shifts = 0;
  double limiterS = 0.0;
};

/// All that is told of a lap: the track that is ridden, its parts, and the laps of stock, proposed and pins
/// in this order.
struct LapBook {
  SharedPlan plan;
  const Track* track = nullptr;           ///< of the plan; null where the bike has none
  std::shared_ptr<const TrackLine> line;  ///< null without a track
  std::optional<LapRefusal> refusal;
  double lengthM = 0.0;
  std::vector<LapPart> parts;
  std::vector<LapOfSetup> setups;
  std::optional<LapChange> change;  ///< of the proposal, where it was asked for; none until then
  double bandS = 0.0;               ///< its band; until it is asked for that of the book before
  bool bandPending = false;         ///< nothing is known of it yet: nothing can be called quicker

  bool hasTrack() const { return track && (!track->segments.empty() || track->path); }
  /// Whether stock and proposal both lap.
  bool laps() const { return setups.size() >= 2 && setups[0].laps() && setups[1].laps(); }
  const LapOfSetup& stock() const { return setups[0]; }
  const LapOfSetup& proposed() const { return setups[1]; }
  /// The name of what is ridden at a distance; empty outside of the track.
  const LapPart* partAt(double distanceM) const;
};

/// Below it a part of a lap wins and loses nothing: what is left when everything is typed to the digit.
inline constexpr double kLapBandS = 0.01;

/// What `before`, if there, knows of the same laps is taken over. The change is left out.
LapBook lapBook(const SharedPlan& plan, const LapBook* before = nullptr);
/// Works the change out: some laps more of each setup.
void takeChange(LapBook& book);
/// The same where it was worked out elsewhere.
void takeChange(LapBook& book, const std::optional<LapChange>& change);

/// Of a setup that laps, in a part of its track.
LapPartFigures partFigures(const LapBook& book, const LapOfSetup& lap, std::size_t part);
/// None where nothing is pulled before the next bend. `part` is a bend, or the start of an open track.
std::optional<LapStraight> straightAfter(const LapBook& book, const LapOfSetup& lap, std::size_t part);
/// Which parts have a row of their own: bends, and the straight from which an open track starts.
std::vector<std::size_t> cornerParts(const LapBook& book);

/// The lap between two points; none outside of it.
std::optional<LapPoint> lapAt(const LapOfSetup& lap, double distanceM);
/// Seconds later than stock; none outside of the track.
std::optional<double> laterAt(const LapOfSetup& lap, double distanceM);
/// Seconds that a setup wins against stock from one place to another; negative where it loses.
double wonS(const LapOfSetup& lap, double fromM, double toM);

}  // namespace layshaft::ui
