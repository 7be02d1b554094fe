// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/lap_book.h"

#include <algorithm>
#include <cmath>

#include "core/study/lap_place.h"

namespace layshaft::ui {
namespace {

/// Where the start of the track is on the lap, which may begin elsewhere.
double startOnLapM(const AllowedSpeed& allowed) {
  for (const AllowedSpeed::Stretch& stretch : allowed.stretches())
    if (stretch.here.segment == 0) return stretch.startM;
  return 0.0;
}

/// Turns a closed lap so that it begins where the track does.
void turnToStart(LapOfSetup& lap, double startM, double lengthM) {
  lap.points = lap.figures->points;
  lap.pulls = lap.figures->pulls;
  if (startM <= kSamePlaceM) return;
  auto& points = lap.points;
  const auto first = std::find_if(points.begin(), points.end(), [startM](const LapPoint& point) {
    return point.distanceM >= startM - kSamePlaceM;
  });
  if (first == points.end()) return;
  const double startS = first->timeS, lapS = lap.figures->timeS;
  std::vector<LapPoint> turned(first, points.end());
  turned.insert(turned.end(), points.begin(), first + 1);
  const auto behind = static_cast<std::size_t>(points.end() - first);
  for (std::size_t i = 0; i < turned.size(); ++i) {
    turned[i].distanceM += (i < behind ? 0.0 : lengthM) - startM;
    turned[i].timeS += (i < behind ? 0.0 : lapS) - startS;
  }
  turned.front().distanceM = turned.front().timeS = 0.0;
  turned.back().distanceM = lengthM;
  points = std::move(turned);
  for (LapPullFigures& pull : lap.pulls) {
    const double shift = pull.fromM >= startM - kSamePlaceM ? -startM : lengthM - startM;
    pull.fromM = std::max(pull.fromM + shift, 0.0);
    pull.toM += shift;
  }
  std::sort(lap.pulls.begin(), lap.pulls.end(),
            [](const LapPullFigures& a, const LapPullFigures& b) { return a.fromM < b.fromM; });
}

double timeAt(const LapOfSetup& lap, double distanceM) {
  if (lap.points.empty()) return 0.0;
  return lapAt(lap, std::clamp(distanceM, 0.0, lap.points.back().distanceM))->timeS;
}

void takeSetups(LapBook& book, const LapBook* before) {
  const Plan& plan = *book.plan;
  std::vector<const SetupPlan*> all{&plan.stock, &plan.proposed};
  for (const SetupPlan& pin : plan.pins) all.push_back(&pin);
  const double start = plan.laps ? startOnLapM(plan.laps->allowed()) : 0.0;
  for (const SetupPlan* setup : all) {
    LapOfSetup lap{.setup = setup, .figures = setup->lap, .points = {}, .pulls = {}, .later = {}};
    const LapOfSetup* known = nullptr;
    if (before && lap.laps())
      for (const LapOfSetup& other : before->setups)
        if (other.figures == lap.figures) known = &other;
    if (known) {
      lap.points = known->points;
      lap.pulls = known->pulls;
    } else if (lap.laps()) {
      turnToStart(lap, start, book.lengthM);
    }
    book.setups.push_back(std::move(lap));
  }
  for (LapOfSetup& lap : book.setups) lap.later = lapDifference(book.setups.front().points, lap.points);
}

}  // namespace

void takeChange(LapBook& book) {
  takeChange(book, lapChange(*book.plan, book.plan->proposed));
}

void takeChange(LapBook& book, const std::optional<LapChange>& change) {
  book.change = change;
  book.bandS = change ? change->bandS : 0.0;
  book.bandPending = false;
}

LapBook lapBook(const SharedPlan& plan, const LapBook* before) {
  LapBook book{.plan = plan,
               .track = plan->input.track ? &*plan->input.track : nullptr,
               .line = {},
               .refusal = {},
               .lengthM = 0.0,
               .parts = {},
               .setups = {},
               .change = {},
               .bandS = before ? before->bandS : 0.0};
  if (!book.hasTrack()) return book;
  const bool sameTrack = before && before->track && *before->track == *book.track;
  book.line = sameTrack ? before->line : std::make_shared<const TrackLine>(trackLine(*book.track));
  if (plan->laps) {
    const AllowedSpeed& allowed = plan->laps->allowed();
    book.refusal = allowed.refusal();
    book.lengthM = allowed.lengthM();
    if (before && before->plan && before->plan->laps == plan->laps)
      book.parts = before->parts;
    else if (!allowed.stretches().empty())
      book.parts = lapParts(*book.track, allowed);
  }
  takeSetups(book, before);
  return book;
}

const LapPart* LapBook::partAt(double distanceM) const {
  for (const LapPart& part : parts)
    if (distanceM >= part.fromM && distanceM <= part.toM) return &part;
  return nullptr;
}

std::optional<LapPoint> lapAt(const LapOfSetup& lap, double distanceM) {
  return lapPointAt(lap.points, distanceM);
}

std::optional<double> laterAt(const LapOfSetup& lap, double distanceM) {
  const auto& later = lap.later;
  if (later.empty() || distanceM < 0.0 || distanceM > later.back().distanceM) return std::nullopt;
  const auto above =
      std::lower_bound(later.begin(), later.end(), distanceM,
                       [](const LapDifference& d, double place) { return d.distanceM < place; });
  if (above == later.begin()) return above->laterS;
  const LapDifference &a = *(above - 1), &b = *above;
  return a.laterS + (b.laterS - a.laterS) * (distanceM - a.distanceM) / (b.distanceM - a.distanceM);
}

double wonS(const LapOfSetup& lap, double fromM, double toM) {
  if (lap.later.empty()) return 0.0;
  const double end = lap.later.back().distanceM;
  return laterAt(lap, std::clamp(fromM, 0.0, end)).value_or(0.0) -
         laterAt(lap, std::clamp(toM, 0.0, end)).value_or(0.0);
}

namespace {

/// The first point that does not lie before a place. A recorded lap has thousands, and many parts.
std::size_t firstFrom(const std::vector<LapPoint>& points, double distanceM) {
  const auto first = std::partition_point(points.begin(), points.end(), [distanceM](const LapPoint& point) {
    return point.distanceM < distanceM;
  });
  return static_cast<std::size_t>(first - points.begin());
}

double limiterBetween(const LapOfSetup& lap, double fromM, double toM) {
  double seconds = 0.0;
  const std::size_t first = firstFrom(lap.points, fromM);
  for (std::size_t i = first > 0 ? first - 1 : 0; i + 1 < lap.points.size(); ++i) {
    const LapPoint &a = lap.points[i], &b = lap.points[i + 1];
    if (a.distanceM >= toM) break;
    if (!a.limiter || !b.limiter || b.distanceM <= fromM) continue;
    const double whole = b.distanceM - a.distanceM;
    const double inside = std::min(b.distanceM, toM) - std::max(a.distanceM, fromM);
    seconds += whole > 0.0 ? (b.timeS - a.timeS) * inside / whole : 0.0;
  }
  return seconds;
}

/// The bend at whose exit a place lies; none before the first of an open track.
std::optional<std::size_t> bendBefore(const LapBook& book, double distanceM) {
  const auto& parts = book.parts;
  const auto lastBend = [&](std::size_t before) -> std::optional<std::size_t> {
    while (before-- > 0)
      if (parts[before].bend) return before;
    return std::nullopt;
  };
  const auto behind = std::partition_point(parts.begin(), parts.end(), [distanceM](const LapPart& part) {
    return part.fromM < distanceM - kSamePlaceM;
  });
  if (const auto bend = lastBend(static_cast<std::size_t>(behind - parts.begin()))) return bend;
  if (book.track->closed.value_or(false)) return lastBend(parts.size());
  const bool atStart = distanceM <= kSamePlaceM && !parts.empty() && parts.front().bend;
  return atStart ? std::optional<std::size_t>(0) : std::nullopt;
}

}  // namespace

LapPartFigures partFigures(const LapBook& book, const LapOfSetup& lap, std::size_t part) {
  const LapPart& here = book.parts[part];
  LapPartFigures figures{.timeS = timeAt(lap, here.toM) - timeAt(lap, here.fromM),
                         .minMps = 0.0,
                         .gearAtMin = {},
                         .rpmAtMin = {},
                         .exitGear = {},
                         .limiterS = limiterBetween(lap, here.fromM, here.toM)};
  if (part < lap.figures->segments.size()) {
    const LapSegment& segment = lap.figures->segments[part];
    figures.minMps = segment.minMps;
    figures.gearAtMin = segment.gearAtMin;
    figures.rpmAtMin = segment.rpmAtMin;
  } else {
    const LapPoint* slowest = nullptr;
    for (std::size_t i = firstFrom(lap.points, here.fromM);
         i < lap.points.size() && lap.points[i].distanceM <= here.toM; ++i)
      if (!slowest || lap.points[i].speedMps < slowest->speedMps) slowest = &lap.points[i];
    const auto between = lapAt(lap, (here.fromM + here.toM) / 2.0);
    if (!slowest && between) slowest = &*between;
    if (slowest) {
      figures.minMps = slowest->speedMps;
      figures.gearAtMin = slowest->gear;
      figures.rpmAtMin = slowest->rpm;
    }
  }
  if (const auto exit = lapAt(lap, here.toM - kSamePlaceM)) figures.exitGear = exit->gear;
  return figures;
}

std::vector<std::size_t> cornerParts(const LapBook& book) {
  std::vector<std::size_t> parts;
  for (std::size_t i = 0; i < book.parts.size(); ++i)
    if (book.parts[i].bend || (i == 0 && !book.track->closed.value_or(false))) parts.push_back(i);
  return parts;
}

std::optional<LapStraight> straightAfter(const LapBook& book, const LapOfSetup& lap, std::size_t part) {
  std::optional<LapStraight> straight;
  for (const LapPullFigures& pull : lap.pulls) {
    const auto bend = bendBefore(book, pull.fromM);
    if (bend.value_or(0) != part || (!bend && book.parts[part].bend)) continue;
    if (!straight) straight.emplace();
    straight->endRpm = pull.endRpm;
    straight->shifts += pull.endGear - pull.firstGear;
    straight->limiterS += limiterBetween(lap, pull.fromM, pull.toM) +
                          limiterBetween(lap, pull.fromM - book.lengthM, pull.toM - book.lengthM);
  }
  return straight;
}

}  // namespace layshaft::ui
