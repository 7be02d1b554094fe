// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/lap_parts.h"

#include <QCoreApplication>
#include <algorithm>

#include "ui/words/plain_text.h"

namespace layshaft::ui {
namespace {

struct LapParts {
  Q_DECLARE_TR_FUNCTIONS(LapParts)
};

/// A bend of a recorded line is what is slower than the road on both sides of it by so much.
constexpr double kBendRise = 1.15;
/// It goes as far as the road allows no more than so much above its slowest place.
constexpr double kBendWidth = 1.12;

std::vector<LapPart> segmentParts(const Track& track, const AllowedSpeed& allowed) {
  std::vector<double> lengths(track.segments.size(), 0.0);
  std::vector<bool> bends(track.segments.size(), false);
  for (const LapStretch& stretch : allowed.course().stretches) {
    lengths[stretch.segment] += stretch.lengthM;
    bends[stretch.segment] = bends[stretch.segment] || stretch.curvaturePerM > 0.0;
  }
  std::vector<LapPart> parts;
  int bend = 0, straight = 0;
  double at = 0.0;
  for (std::size_t i = 0; i < lengths.size(); ++i) {
    const std::string& name = track.segments[i].name;
    LapPart part{.name = shownName(name),
                 .named = !name.empty(),
                 .bend = bends[i],
                 .fromM = at,
                 .toM = at + lengths[i]};
    const int number = part.bend ? ++bend : ++straight;
    if (!part.named)
      part.name = part.bend ? LapParts::tr("Corner %1").arg(number) : LapParts::tr("Straight %1").arg(number);
    at = part.toM;
    parts.push_back(part);
  }
  return parts;
}

/// The slowest stretches of a recorded line, in the order of the track.
std::vector<std::size_t> slowest(const std::vector<double>& speeds) {
  std::vector<std::size_t> found;
  double low = speeds.front(), high = 0.0;
  std::size_t place = 0;
  bool falling = false;
  for (std::size_t i = 0; i < speeds.size(); ++i) {
    if (falling) {
      if (speeds[i] < low) {
        low = speeds[i];
        place = i;
      } else if (speeds[i] > low * kBendRise) {
        found.push_back(place);
        falling = false;
        high = speeds[i];
      }
      continue;
    }
    high = std::max(high, speeds[i]);
    if (speeds[i] * kBendRise > high) continue;
    falling = true;
    low = speeds[i];
    place = i;
  }
  if (falling) found.push_back(place);
  return found;
}

std::vector<LapPart> pathParts(const AllowedSpeed& allowed) {
  const auto& stretches = allowed.stretches();
  std::vector<AllowedSpeed::Stretch> inOrder(stretches.begin(), stretches.end());
  std::sort(inOrder.begin(), inOrder.end(),
            [](const auto& a, const auto& b) { return a.here.segment < b.here.segment; });
  std::vector<double> starts{0.0}, speeds;
  for (const auto& stretch : inOrder) {
    starts.push_back(starts.back() + stretch.here.lengthM);
    speeds.push_back(stretch.entryMps);
  }
  std::vector<LapPart> parts;
  const auto add = [&](const QString& name, bool bend, double from, double to) {
    if (to > from + kSamePlaceM)
      parts.push_back({.name = name, .named = false, .bend = bend, .fromM = from, .toM = to});
  };
  int number = 0;
  double at = 0.0;
  for (const std::size_t place : slowest(speeds)) {
    const double most = speeds[place] * kBendWidth;
    std::size_t from = place, to = place + 1;
    while (from > 0 && inOrder[from - 1].here.limitMps <= most) --from;
    while (to < inOrder.size() && inOrder[to].here.limitMps <= most) ++to;
    const double begins = std::max(at, starts[from]);
    add(number == 0 ? LapParts::tr("The start") : LapParts::tr("Straight after corner %1").arg(number), false,
        at, begins);
    add(LapParts::tr("Corner %1").arg(++number), true, begins, starts[to]);
    at = std::max(at, starts[to]);
  }
  add(number == 0 ? LapParts::tr("The start") : LapParts::tr("Straight after corner %1").arg(number), false,
      at, starts.back());
  return parts;
}

}  // namespace

std::vector<LapPart> lapParts(const Track& track, const AllowedSpeed& allowed) {
  return track.path ? pathParts(allowed) : segmentParts(track, allowed);
}

}  // namespace layshaft::ui
