// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/wear.h"

#include <algorithm>

#include "core/defaults.h"
#include "core/study/straight_line.h"
#include "core/study/wear_watch.h"

namespace layshaft {
namespace {

constexpr double kConfidence = 0.90;

struct WearLimit {
  double percent;
  WearLimitSource source;
};

WearLimit limitOf(const WearInput& input) {
  if (input.wear.limitPercent) return {*input.wear.limitPercent, WearLimitSource::Manual};
  if (!input.chainKind) return {defaults::kSealedChainWearLimitPercent, WearLimitSource::UnknownChain};
  if (*input.chainKind == ChainKind::Plain)
    return {defaults::kPlainChainWearLimitPercent, WearLimitSource::PlainChain};
  return {defaults::kSealedChainWearLimitPercent, WearLimitSource::SealedChain};
}

std::vector<MeasuredElongation> measuredOf(const WearInput& input) {
  std::vector<MeasuredElongation> all;
  if (!input.chainSize) return all;
  const Wear& wear = input.wear;
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
                           .earlierChain = entry.at && wear.chainFittedAt && *entry.at < *wear.chainFittedAt};
    for (const double length : entry.lengthsMm)
      one.placesPercent.push_back(
          elongationPercent(*input.chainSize, entry.pitches.value_or(kUsualPitches), length));
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
    const bool earlier = entry.at && wear.chainFittedAt && *entry.at < *wear.chainFittedAt;
    if (entry.struck || earlier || !(entry.*member)) continue;
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

/// Beyond what the study reads.
bool saysMore(const WearMeasurement& entry) {
  return !entry.extras.empty() || !entry.note.empty() || (entry.struck && !(*entry.struck == Struck{}));
}

WearMeasurement factsOf(WearMeasurement entry) {
  entry.extras.clear();
  entry.note.clear();
  if (entry.struck) entry.struck = Struck{};
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

std::optional<WearInput> wearInput(const Profile& profile) {
  const SetupOptions& stock = profile.stock.options;
  if (!profile.wear || stock.finalDrive == FinalDrive::Belt) return std::nullopt;
  WearInput input{*profile.wear, stock.chainSize, stock.chainKind};
  // What no figure depends on.
  input.wear.extras.clear();
  input.wear.slackMm.reset();
  input.wear.slackPosture.clear();
  for (std::size_t i = 0; i < input.wear.measurements.size(); ++i)
    if (const WearMeasurement& entry = input.wear.measurements[i]; saysMore(entry))
      input.wear.measurements.put(i, factsOf(entry));
  return input;
}

WearFigures wear(const WearInput& input) {
  const WearLimit limit = limitOf(input);
  WearFigures figures{.useUnit = input.wear.useUnit.value_or(UseUnit::Hours),
                      .limitPercent = limit.percent,
                      .limitSource = limit.source,
                      .measured = measuredOf(input),
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

std::optional<double> elongationInUse(const Profile& profile) {
  if (const auto& typed = profile.stock.options.chainElongationPercent) return typed;
  const auto input = wearInput(profile);
  return input ? wear(*input).elongationPercent : std::nullopt;
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
