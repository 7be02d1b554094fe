// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/wear.h"

#include <algorithm>

#include "core/defaults.h"
#include "core/study/straight_line.h"
#include "core/study/wear_watch.h"

namespace layshaft {
namespace {

constexpr double kConfidence = 0.90;

bool isBeltDriven(const Profile& profile) {
  return profile.stock.options.finalDrive == FinalDrive::Belt;
}

/// Taken before the chain on the bike was fitted.
bool isOfEarlierChain(const WearMeasurement& entry, const Wear& wear) {
  return entry.at && wear.chainFittedAt && *entry.at < *wear.chainFittedAt;
}

std::vector<MeasuredElongation> measuredOf(const Wear& wear, const std::optional<ChainSize>& size) {
  std::vector<MeasuredElongation> all;
  if (!size) return all;
  std::optional<double> furthest;
  for (std::size_t i = 0; i < wear.measurements.size(); ++i) {
    const WearMeasurement& entry = wear.measurements[i];
    if (entry.struck || entry.lengthsMm.empty()) continue;
    MeasuredElongation one{.index = i,
                           .date = entry.date,
                           .at = entry.at,
                           .placesPercent = {},
                           .greatestPercent = 0.0,
                           .unevennessPercent = 0.0,
                           .slip = {},
                           .earlierChain = isOfEarlierChain(entry, wear)};
    for (const double length : entry.lengthsMm)
      one.placesPercent.push_back(elongationPercent(*size, entry.pitches.value_or(kUsualPitches), length));
    const auto [least, greatest] = std::minmax_element(one.placesPercent.begin(), one.placesPercent.end());
    one.greatestPercent = *greatest;
    one.unevennessPercent = *greatest - *least;
    if (*least < 0.0)
      one.slip = MeasuringSlip::ShorterThanNew;
    else if (!entry.at)
      one.slip = MeasuringSlip::UseNotGiven;
    else if (furthest && *entry.at < *furthest)
      one.slip = MeasuringSlip::UseGoesBack;
    else
      furthest = entry.at;
    all.push_back(std::move(one));
  }
  return all;
}

/// Of the present chain and no slip in its lengths; the last by its date.
std::optional<std::size_t> latestOf(const std::vector<MeasuredElongation>& measured) {
  std::optional<std::size_t> latest;
  for (std::size_t i = 0; i < measured.size(); ++i) {
    const MeasuredElongation& one = measured[i];
    if (one.earlierChain || one.slip == MeasuringSlip::ShorterThanNew) continue;
    if (!latest || one.date >= measured[*latest].date) latest = i;
  }
  return latest;
}

WearVerdict verdictOf(double elongation, double limit) {
  if (elongation >= limit) return WearVerdict::Replace;
  return elongation >= kWatchShareOfLimit * limit ? WearVerdict::Watch : WearVerdict::Good;
}

WearVerdict verdictOf(TeethSeen seen) {
  switch (seen) {
    case TeethSeen::Hooked:
      return WearVerdict::Replace;
    case TeethSeen::Worn:
      return WearVerdict::Watch;
    case TeethSeen::Good:
      break;
  }
  return WearVerdict::Good;
}

/// The last that was seen of something, by date, among the entries that count.
template <class Seen>
std::optional<Seen> lastSeen(const Wear& wear, std::optional<Seen> WearMeasurement::*member) {
  const WearMeasurement* last = nullptr;
  for (std::size_t i = 0; i < wear.measurements.size(); ++i) {
    const WearMeasurement& entry = wear.measurements[i];
    if (entry.struck || isOfEarlierChain(entry, wear) || !(entry.*member)) continue;
    if (!last || entry.date >= last->date) last = &entry;
  }
  return last ? last->*member : std::nullopt;
}

void addVerdicts(WearFigures& figures, const Wear& wear) {
  const auto front = lastSeen(wear, &WearMeasurement::front), rear = lastSeen(wear, &WearMeasurement::rear);
  const bool liftsOff = lastSeen(wear, &WearMeasurement::liftsOffHalfTooth).value_or(false);
  if (figures.elongationPercent) figures.chain = verdictOf(*figures.elongationPercent, figures.limitPercent);
  if (front) figures.front = verdictOf(*front);
  if (rear) figures.rear = verdictOf(*rear);
  if (liftsOff) figures.rear = WearVerdict::Replace;

  const auto reason = [&](bool holds, WearReason why) {
    if (holds) figures.reasons.push_back(why);
  };
  reason(figures.chain == WearVerdict::Replace, WearReason::ChainPastLimit);
  reason(liftsOff, WearReason::ChainLiftsOff);
  reason(front == TeethSeen::Hooked, WearReason::FrontHooked);
  reason(rear == TeethSeen::Hooked, WearReason::RearHooked);
  reason(figures.chain == WearVerdict::Watch, WearReason::ChainNearLimit);
  reason(front == TeethSeen::Worn, WearReason::FrontWorn);
  reason(rear == TeethSeen::Worn, WearReason::RearWorn);
  for (const auto& part : {figures.chain, figures.front, figures.rear})
    if (part && (!figures.set || *part > *figures.set)) figures.set = part;
}

/// Holds keys that this version does not know.
bool holdsMore(const WearMeasurement& entry) {
  return !entry.extras.empty() || (entry.struck && !entry.struck->extras.empty());
}

WearMeasurement known(WearMeasurement entry) {
  entry.extras.clear();
  if (entry.struck) entry.struck->extras.clear();
  return entry;
}

void addTrend(WearFigures& figures) {
  std::vector<LinePoint> points;
  for (const MeasuredElongation& one : figures.measured)
    if (one.inTrend()) points.push_back({*one.at, one.greatestPercent});
  const auto line = straightLine(points);
  if (!line) return;
  figures.trendPercentPerUse = line->slope;
  figures.trendInterceptPercent = line->intercept;
  if (const auto end = reaches(*line, figures.limitPercent, kConfidence))
    figures.endOfLife = EndOfLife{end->x, end->low, end->high};
  else
    figures.trendDoesNotRise = true;
}

}  // namespace

double elongationPercent(const ChainSize& size, int pitches, double lengthMm) {
  return 100.0 * (lengthMm / newLengthMm(size, pitches) - 1.0);
}

WearLimit wearLimit(const std::optional<double>& manualsPercent, const std::optional<ChainKind>& kind) {
  if (manualsPercent) return {*manualsPercent, WearLimitSource::Manual};
  if (!kind) return {defaults::kSealedChainWearLimitPercent, WearLimitSource::UnknownChain};
  if (*kind == ChainKind::Plain) return {defaults::kPlainChainWearLimitPercent, WearLimitSource::PlainChain};
  return {defaults::kSealedChainWearLimitPercent, WearLimitSource::SealedChain};
}

std::optional<WearInput> wearInput(const Profile& profile) {
  if (!profile.wear || isBeltDriven(profile)) return std::nullopt;
  const SetupOptions& stock = profile.stock.options;
  WearInput input{*profile.wear, stock.chainSize, stock.chainKind};
  // What no figure depends on.
  input.wear.extras.clear();
  input.wear.slackMm.reset();
  input.wear.slackPosture.clear();
  for (std::size_t i = 0; i < input.wear.measurements.size(); ++i)
    if (const WearMeasurement& entry = input.wear.measurements[i]; holdsMore(entry))
      input.wear.measurements.put(i, known(entry));
  return input;
}

WearFigures wear(const WearInput& input) {
  const WearLimit limit = wearLimit(input.wear.limitPercent, input.chainKind);
  WearFigures figures{.useUnit = input.wear.useUnit.value_or(UseUnit::Hours),
                      .limitPercent = limit.percent,
                      .limitSource = limit.source,
                      .measured = measuredOf(input.wear, input.chainSize),
                      .latest = {},
                      .elongationPercent = {},
                      .unevennessPercent = {},
                      .chain = {},
                      .front = {},
                      .rear = {},
                      .set = {},
                      .reasons = {},
                      .trendPercentPerUse = {},
                      .trendInterceptPercent = {},
                      .endOfLife = {},
                      .chainFittedAt = input.wear.chainFittedAt};
  figures.latest = latestOf(figures.measured);
  if (figures.latest) {
    figures.elongationPercent = figures.measured[*figures.latest].greatestPercent;
    figures.unevennessPercent = figures.measured[*figures.latest].unevennessPercent;
  }
  addVerdicts(figures, input.wear);
  addTrend(figures);
  return figures;
}

const MeasuredElongation* measuredAt(const WearFigures& figures, std::size_t index) {
  const auto found =
      std::lower_bound(figures.measured.begin(), figures.measured.end(), index,
                       [](const MeasuredElongation& one, std::size_t wanted) { return one.index < wanted; });
  return found != figures.measured.end() && found->index == index ? &*found : nullptr;
}

std::optional<double> elongationInUse(const Profile& profile) {
  if (const auto& typed = profile.stock.options.chainElongationPercent) return typed;
  if (!profile.wear || isBeltDriven(profile)) return std::nullopt;
  const auto measured = measuredOf(*profile.wear, profile.stock.options.chainSize);
  const auto latest = latestOf(measured);
  return latest ? std::optional(measured[*latest].greatestPercent) : std::nullopt;
}

std::vector<WearMix> wearMixes(const WearFigures& figures, const NewParts& fitted) {
  std::vector<WearMix> mixes;
  const auto worn = [](const std::optional<WearVerdict>& part) { return part && *part != WearVerdict::Good; };
  const bool newSprocket = fitted.front || fitted.rear;
  if (newSprocket && !fitted.chain && worn(figures.chain))
    mixes.push_back(WearMix::NewSprocketUnderWornChain);
  if (fitted.chain && ((!fitted.front && worn(figures.front)) || (!fitted.rear && worn(figures.rear))))
    mixes.push_back(WearMix::NewChainOverWornSprockets);
  if (fitted.chain && fitted.rear && !fitted.front && !worn(figures.front))
    mixes.push_back(WearMix::FrontSprocketLeftOld);
  return mixes;
}

}  // namespace layshaft
