// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/track/laps.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>
#include <numeric>
#include <unordered_map>
#include <utility>

namespace layshaft {
namespace {

// Common practice, no source.
constexpr double kStepM = 10.0;  ///< between places that are looked at
constexpr double kMostPlaces = 100000.0;
constexpr double kSameWay = 0.8;           ///< cosine: about 37°
constexpr double kAboutTheSameWay = -0.1;  ///< cosine: a little more than a right angle
constexpr double kMostGapShare = 0.1;      ///< of a line that is called closed
constexpr double kLikeTheOthers = 0.03;
constexpr std::size_t kReach = 2;           ///< steps over which direction is measured
constexpr double kNotMuchWider = 2.0;       ///< a gap than the least of all gates,
constexpr double kLineM = 3.0;              ///< and by how far lines of one rider are apart
constexpr std::size_t kMostLookedAt = 200;  ///< places of a cell

/// The line in steps of about `kStepM`, each place with the direction there. Fixes nearer to each other are
/// passed over, so that noise adds hardly any distance and what wanders on one spot none.
struct Places {
  std::vector<PlanePoint> at, along;
  std::vector<double> distanceM;
  std::vector<double> toPointM;  ///< the distance to each point of the line
  std::size_t size() const { return at.size(); }
};

double cosine(const PlanePoint& a, const PlanePoint& b) {
  return a.xM * b.xM + a.yM * b.yM;
}

PlanePoint direction(const PlanePoint& from, const PlanePoint& to) {
  const double x = to.xM - from.xM, y = to.yM - from.yM, length = std::hypot(x, y);
  return length > 0.0 ? PlanePoint{x / length, y / length} : PlanePoint{};
}

PlanePoint between(const RidePoint& a, const RidePoint& b, double share) {
  return {std::lerp(a.xM, b.xM, share), std::lerp(a.yM, b.yM, share)};
}

std::optional<double> between(const std::optional<double>& a, const std::optional<double>& b, double share) {
  return a && b ? std::optional(std::lerp(*a, *b, share)) : std::nullopt;
}

Places placesOf(const RecordedLine& line) {
  Places places;
  const double stepM = std::max(kStepM, line.distanceM.back() / kMostPlaces);
  const RidePoint* from = &line.points.front();
  places.at.push_back({from->xM, from->yM});
  places.distanceM.push_back(0.0);
  for (const RidePoint& point : line.points) {
    const double awayM = std::hypot(point.xM - from->xM, point.yM - from->yM);
    if (awayM >= stepM) {
      const auto parts = std::floor(awayM / stepM);
      const double startM = places.distanceM.back();
      for (double part = 1.0; part <= parts; ++part) {
        places.at.push_back(between(*from, point, part / parts));
        places.distanceM.push_back(startM + awayM * part / parts);
      }
      from = &point;
    }
    places.toPointM.push_back(places.distanceM.back());
  }
  for (std::size_t k = 0; k < places.size(); ++k)
    places.along.push_back(direction(places.at[k < kReach ? 0 : k - kReach],
                                     places.at[std::min(k + kReach, places.size() - 1)]));
  return places;
}

/// Squares of ground with the places in each, in the order of the line.
class Ground {
 public:
  explicit Ground(const Places& places) : places_(places) {
    for (std::size_t k = 0; k < places.size(); ++k) cells_[cell(places.at[k], 0, 0)].push_back(k);
  }

  /// Where the line comes by next in the same direction: the place that is nearest then.
  std::optional<std::size_t> next(std::size_t k) const {
    std::optional<std::size_t> first;
    for (int dx = -1; dx <= 1; ++dx)
      for (int dy = -1; dy <= 1; ++dy) {
        const auto found = cells_.find(cell(places_.at[k], dx, dy));
        if (found != cells_.end()) lookIn(found->second, k, first);
      }
    if (!first) return first;
    while (*first + 1 < places_.size() && apart(*first + 1, k) < apart(*first, k)) ++*first;
    // The end of the line may not have come by yet.
    return *first + 1 < places_.size() ? first : std::nullopt;
  }

 private:
  static std::uint64_t cell(const PlanePoint& at, int dx, int dy) {
    const auto part = [](double metres, int d) {
      return static_cast<std::uint32_t>(static_cast<std::int32_t>(std::floor(metres / kLapWidthM)) + d);
    };
    return (std::uint64_t{part(at.xM, dx)} << 32U) | part(at.yM, dy);
  }

  double apart(std::size_t a, std::size_t b) const {
    return std::hypot(places_.at[a].xM - places_.at[b].xM, places_.at[a].yM - places_.at[b].yM);
  }

  void lookIn(const std::vector<std::size_t>& places, std::size_t k,
              std::optional<std::size_t>& first) const {
    const double fromM = places_.distanceM[k] + kShortestLapM;
    auto at = std::partition_point(places.begin(), places.end(),
                                   [&](std::size_t other) { return places_.distanceM[other] < fromM; });
    for (std::size_t looked = 0; at != places.end() && looked < kMostLookedAt; ++at, ++looked) {
      if (first && *at >= *first) return;
      if (apart(*at, k) > kLapWidthM || cosine(places_.along[*at], places_.along[k]) < kSameWay) continue;
      first = *at;
      return;
    }
  }

  const Places& places_;
  std::unordered_map<std::uint64_t, std::vector<std::size_t>> cells_;
};

std::vector<Crossing> crossingsOf(const RecordedLine& line, const Places& places, const PlanePoint& gate,
                                  const PlanePoint& along) {
  std::vector<Crossing> crossings;
  const auto ahead = [&](const RidePoint& p) { return cosine({p.xM - gate.xM, p.yM - gate.yM}, along); };
  const auto aside = [&](const PlanePoint& p) {
    return std::abs((p.xM - gate.xM) * along.yM - (p.yM - gate.yM) * along.xM);
  };
  for (std::size_t i = 0; i + 1 < line.points.size(); ++i) {
    const RidePoint &a = line.points[i], &b = line.points[i + 1];
    const double before = ahead(a), behind = ahead(b);
    if (before >= 0.0 || behind < 0.0) continue;
    const double share = before / (before - behind);
    const Crossing crossing{.after = i,
                            .share = share,
                            .distanceM = std::lerp(line.distanceM[i], line.distanceM[i + 1], share),
                            .place = between(a, b, share),
                            .heightM = between(a.heightM, b.heightM, share),
                            .timeS = between(a.timeS, b.timeS, share)};
    if (aside(crossing.place) > kLapWidthM) continue;
    if (!crossings.empty() && places.toPointM[i] < places.toPointM[crossings.back().after] + kShortestLapM)
      continue;
    crossings.push_back(crossing);
  }
  return crossings;
}

RecordedLap lapOf(const Crossing& begin, const Crossing& end) {
  RecordedLap lap{.first = begin.after + 1, .last = end.after, .begin = begin, .end = end};
  lap.lengthM = end.distanceM - begin.distanceM;
  lap.closingGapM = std::hypot(end.place.xM - begin.place.xM, end.place.yM - begin.place.yM);
  if (begin.timeS && end.timeS && *end.timeS > *begin.timeS) lap.timeS = *end.timeS - *begin.timeS;
  return lap;
}

/// Places from which the line comes by again over the longest way, or nearly: of them the straightest.
std::vector<std::size_t> gatesOf(const Places& places) {
  constexpr double kNearlyAsLong = 0.98;
  constexpr std::size_t kMostTried = 40;
  const Ground ground(places);
  std::vector<double> lappedM(places.size(), 0.0);
  for (std::size_t k = places.size(); k-- > 0;)
    if (const auto next = ground.next(k))
      lappedM[k] = places.distanceM[*next] - places.distanceM[k] + lappedM[*next];
  std::vector<std::size_t> gates;
  // Not the very first, which the line does not cross but begins at.
  const double mostM = *std::max_element(lappedM.begin() + (places.size() > 1 ? 1 : 0), lappedM.end());
  if (mostM <= 0.0) return gates;
  for (std::size_t k = 1; k < places.size(); ++k)
    if (lappedM[k] >= kNearlyAsLong * mostM) gates.push_back(k);
  const auto straight = [&](std::size_t k) {
    return cosine(places.along[k < kReach ? 0 : k - kReach],
                  places.along[std::min(k + kReach, places.size() - 1)]);
  };
  const std::size_t tried = std::min(gates.size(), kMostTried);
  std::partial_sort(gates.begin(), gates.begin() + static_cast<std::ptrdiff_t>(tried), gates.end(),
                    [&](std::size_t a, std::size_t b) { return straight(a) > straight(b); });
  gates.resize(tried);
  return gates;
}

/// Direction of the line as it leaves its first point and as it comes to its last one: over some metres, for
/// single steps are noise.
PlanePoint leaving(const RecordedLine& line) {
  const auto ahead =
      std::partition_point(line.distanceM.begin(), line.distanceM.end(), [](double s) { return s < kStepM; });
  const auto& first = line.points.front();
  const auto& there = line.points[static_cast<std::size_t>(ahead - line.distanceM.begin())];
  return direction({first.xM, first.yM}, {there.xM, there.yM});
}
PlanePoint arriving(const RecordedLine& line) {
  const double totalM = line.distanceM.back();
  const auto behind = std::partition_point(line.distanceM.begin(), line.distanceM.end(),
                                           [&](double s) { return s <= totalM - kStepM; });
  const auto& last = line.points.back();
  const auto& there = line.points[static_cast<std::size_t>(behind - line.distanceM.begin()) - 1];
  return direction({there.xM, there.yM}, {last.xM, last.yM});
}

/// From the first point to where the line crosses there again.
std::optional<RecordedLap> fromTheFirstPoint(const RecordedLine& line, const Places& places) {
  const RidePoint& first = line.points.front();
  const PlanePoint gate{first.xM, first.yM};
  const auto crossings = crossingsOf(line, places, gate, leaving(line));
  const auto end = std::find_if(crossings.begin(), crossings.end(),
                                [](const Crossing& crossing) { return crossing.distanceM >= kShortestLapM; });
  if (end == crossings.end()) return std::nullopt;
  RecordedLap lap = lapOf({.place = gate, .heightM = first.heightM, .timeS = first.timeS}, *end);
  lap.first = 0;
  return lap;
}

/// The whole line, if its end comes close to its beginning.
std::optional<RecordedLap> wholeLine(const RecordedLine& line) {
  const RidePoint &first = line.points.front(), &last = line.points.back();
  const double gapM = std::hypot(last.xM - first.xM, last.yM - first.yM), totalM = line.distanceM.back();
  const double stepM = totalM / static_cast<double>(line.points.size() - 1);
  if (totalM < kShortestLapM || gapM > std::max(kLapWidthM, 2.0 * stepM) || gapM > kMostGapShare * totalM)
    return std::nullopt;
  if (cosine(leaving(line), arriving(line)) < kAboutTheSameWay) return std::nullopt;
  RecordedLap lap{.first = 0, .last = line.points.size() - 1, .lengthM = totalM + gapM, .closingGapM = gapM};
  if (first.timeS && last.timeS && *last.timeS > *first.timeS) lap.timeS = *last.timeS - *first.timeS;
  return lap;
}

struct LapsAtAGate {
  std::vector<RecordedLap> laps;
  double widestGapM = 0.0;
};
LapsAtAGate lapsAt(const RecordedLine& line, const Places& places, std::size_t gate) {
  LapsAtAGate at;
  const auto crossings = crossingsOf(line, places, places.at[gate], places.along[gate]);
  for (std::size_t k = 0; k + 1 < crossings.size(); ++k) {
    at.laps.push_back(lapOf(crossings[k], crossings[k + 1]));
    at.widestGapM = std::max(at.widestGapM, at.laps.back().closingGapM);
  }
  return at;
}

}  // namespace

std::vector<RecordedLap> findLaps(const RecordedLine& line) {
  std::vector<RecordedLap> laps;
  const Places places = placesOf(line);
  std::vector<LapsAtAGate> all;
  std::size_t most = 1;
  for (const std::size_t gate : gatesOf(places)) {
    all.push_back(lapsAt(line, places, gate));
    most = std::max(most, all.back().laps.size());
  }
  std::erase_if(all, [&](const LapsAtAGate& gate) { return gate.laps.size() < most; });
  double leastM = std::numeric_limits<double>::infinity();
  for (const LapsAtAGate& gate : all) leastM = std::min(leastM, gate.widestGapM);
  const auto gate = std::find_if(all.begin(), all.end(), [&](const LapsAtAGate& one) {
    return one.widestGapM <= kNotMuchWider * leastM + kLineM;
  });
  if (gate != all.end()) laps = std::move(gate->laps);
  if (laps.empty())
    if (auto lap = fromTheFirstPoint(line, places)) laps.push_back(*lap);
  if (laps.empty())
    if (auto lap = wholeLine(line)) laps.push_back(*lap);
  return laps;
}

std::size_t bestLap(const std::vector<RecordedLap>& laps) {
  std::vector<double> lengths;
  for (const RecordedLap& lap : laps) lengths.push_back(lap.lengthM);
  std::nth_element(lengths.begin(), lengths.begin() + static_cast<std::ptrdiff_t>(lengths.size() / 2),
                   lengths.end());
  const double middle = lengths[lengths.size() / 2];
  const bool timed = std::all_of(laps.begin(), laps.end(), [](const RecordedLap& lap) { return lap.timeS; });
  std::size_t best = laps.size();
  for (std::size_t k = 0; k < laps.size(); ++k) {
    if (std::abs(laps[k].lengthM - middle) > kLikeTheOthers * middle) continue;
    const auto worth = [&](std::size_t lap) { return timed ? *laps[lap].timeS : laps[lap].closingGapM; };
    if (best == laps.size() || worth(k) < worth(best)) best = k;
  }
  return best;
}

}  // namespace layshaft
