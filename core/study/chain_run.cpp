// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/chain_run.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

#include "core/limits.h"
#include "core/parts/belt.h"
#include "core/study/roots.h"
#include "core/units.h"

namespace layshaft {
namespace {

constexpr double kAtTheEnd = 1e-9;      // m; the ends of the axle's travel are included
constexpr double kContradiction = 0.5;  // pitches between a measured centre and stock's links
constexpr std::array<std::pair<std::string_view, double>, 6> kMinimumTensileN{
    {{"415", 11800}, {"420", 15600}, {"428", 16700}, {"520", 26400}, {"525", 26500}, {"530", 26400}}};

std::optional<double> metres(const std::optional<double>& mm) {
  return mm ? std::optional(units::metresFromMillimetres(*mm)) : std::nullopt;
}

void judgeSprockets(const ChainRun& room, const Setup& setup, std::vector<Misfit>& misfits) {
  const int front = setup.frontTeeth.count(), rear = setup.rearTeeth.count();
  if (room.largestFrontTeeth && front > *room.largestFrontTeeth) misfits.push_back(Misfit::FrontTooLarge);
  if (room.smallestFrontTeeth && front < *room.smallestFrontTeeth) misfits.push_back(Misfit::FrontTooSmall);
  if (room.largestRearTeeth && rear > *room.largestRearTeeth) misfits.push_back(Misfit::RearTooLarge);
  if (room.smallestRearTeeth && rear < *room.smallestRearTeeth) misfits.push_back(Misfit::RearTooSmall);
}

/// The chain on hand of the setup's size that reaches and that least is cut from; a worn one is no help.
std::optional<SpareCut> spareFor(int links, const Setup& setup, const std::vector<SpareChain>& spares) {
  std::optional<SpareCut> best;
  for (const SpareChain& spare : spares) {
    if (spare.state == SpareState::Worn || !(spare.size == *setup.options.chainSize)) continue;
    if (spare.links < links || (best && spare.links >= best->links)) continue;
    best = SpareCut{spare.links, spare.links - links};
  }
  return best;
}

/// Lengths that put the axle inside its travel.
std::vector<FittingLength> lengthsThatFit(const ChainRun& room, const Setup& setup, const DriveLoop& loop,
                                          double stockCentre, double forward, double back,
                                          const std::vector<SpareChain>& spares) {
  std::vector<FittingLength> lengths;
  const auto consider = [&](int links) {
    const auto centre = loop.pair.centreM(links);
    if (!centre) return;
    const double shift = *centre - stockCentre;
    if (shift < -forward - kAtTheEnd || shift > back + kAtTheEnd) return;
    FittingLength length{.links = links, .axleShiftM = shift, .shortenBy = {}, .spare = {}};
    if (!isBelt(setup)) {
      if (loop.links >= links) length.shortenBy = loop.links - links;
      length.spare = spareFor(links, setup, spares);
    }
    lengths.push_back(length);
  };
  if (isBelt(setup)) {
    for (const int teeth : beltLengths(room.beltLengthsTeeth, loop.links)) consider(teeth);
    return lengths;
  }
  const double nearest = std::max(stockCentre - forward, 1e-3);
  const int fewest = static_cast<int>(std::floor(loop.pair.links(nearest))) - 1;
  const int most = static_cast<int>(std::ceil(loop.pair.links(stockCentre + back))) + 1;
  for (int links = fewest + (fewest & 1); links <= most; links += 2)
    if (limits::kLinks.contains(links)) consider(links);
  return lengths;
}

/// The greatest force at the contact patch that the engine can make and grip and front lift let through.
double greatestForceN(const PullModel& model) {
  const bool bounded = model.bike().hasResistance() && model.greatestContactForceN(0.0).has_value();
  double greatest = 0.0;
  for (std::size_t g = 0; g < model.gearCount(); ++g)
    for (const auto& on : model.stretches(g, model.speedMps(model.bike().idleRpm, g), model.limitMps(g))) {
      const auto force = [&](double v) {
        return model.forceOfTorqueN(model.bike().torque->onPiece(on.piece, model.rpm(v, g)), v, g);
      };
      const auto bound = [&](double v) { return bounded ? *model.greatestContactForceN(v) : force(v); };
      const auto take = [&](double v) { greatest = std::max(greatest, std::min(force(v), bound(v))); };
      take(on.fromMps);
      take(on.toMps);
      // Both rise or fall steadily on a stretch: between its ends the smaller is greatest where they meet.
      const double left = force(on.fromMps) - bound(on.fromMps), right = force(on.toMps) - bound(on.toMps);
      if (left * right < 0.0)
        take(polishedRoot([&](double v) { return force(v) - bound(v); }, on.fromMps, on.toMps, left, right));
    }
  return greatest;
}

}  // namespace

std::optional<double> minimumTensileStrengthN(const ChainSize& size) {
  for (const auto& [name, newtons] : kMinimumTensileN)
    if (name == size.name) return newtons;
  return std::nullopt;
}

double chordalVariationPercent(int teeth) {
  return 100.0 * (1.0 - std::cos(units::kPi / teeth));
}

SizeDifference sizeDifference(const ChainSize& a, const ChainSize& b) {
  return {.pitch = a.pitchMm != b.pitchMm,
          .roller = a.rollerDiameterMm != b.rollerDiameterMm,
          .innerWidth = a.innerWidthMm != b.innerWidthMm};
}

std::vector<SizeMix> sizeMixes(const Setup& stock, const Setup& setup) {
  std::vector<SizeMix> mixes;
  const auto& chain = setup.options.chainSize;
  if (isBelt(stock) || isBelt(setup) || !chain) return mixes;
  const auto judge = [&](SprocketPlace place, const std::optional<SprocketDetails>& details, bool stays) {
    std::optional<ChainSize> cutFor = details ? details->size : std::nullopt;
    if (!cutFor && stays) cutFor = stock.options.chainSize;
    if (cutFor && sizeDifference(*chain, *cutFor).any()) mixes.push_back({place, *chain, *cutFor});
  };
  judge(SprocketPlace::Front, setup.options.frontSprocket, setup.frontTeeth == stock.frontTeeth);
  judge(SprocketPlace::Rear, setup.options.rearSprocket, setup.rearTeeth == stock.rearTeeth);
  return mixes;
}

std::optional<ChainRunFigures> chainRun(const Bike& bike, const Setup& stock, const Setup& setup,
                                        const PullModel* model, const std::vector<SpareChain>& spares) {
  const auto loop = driveLoop(setup), stockLoop = driveLoop(stock);
  if (!loop || !stockLoop) return std::nullopt;
  const auto stockCentre = stockLoop->pair.centreM(stockLoop->links);
  if (!stockCentre) return std::nullopt;
  const auto centre = loop->pair.centreM(loop->links);
  const ChainRun room = bike.chainRun.value_or(ChainRun{});
  const auto measured = metres(room.centreDistanceMm);

  ChainRunFigures figures{.links = loop->links,
                          .centreDistanceM = 0.0,
                          .tightCentreM = centre,
                          .axleShiftM = 0.0,
                          .wheelbaseM = {},
                          .fits = {},
                          .misfits = {},
                          .mixes = sizeMixes(stock, setup),
                          .lengthsThatFit = {},
                          .frontWrapDeg = 0.0,
                          .topChainSpeedMps = 0.0,
                          .peakTensionN = {},
                          .safetyFactor = {},
                          .commonFactorFront = std::gcd(setup.frontTeeth.count(), loop->links),
                          .commonFactorRear = std::gcd(setup.rearTeeth.count(), loop->links),
                          .chordalFrontPercent = chordalVariationPercent(setup.frontTeeth.count()),
                          .chordalRearPercent = chordalVariationPercent(setup.rearTeeth.count()),
                          .measuredCentreOffLinks = {},
                          .swingarm = {}};
  if (measured) {
    const double off = stockLoop->pair.links(*measured) - stockLoop->links;
    if (std::abs(off) > kContradiction) figures.measuredCentreOffLinks = off;
  }

  judgeSprockets(room, setup, figures.misfits);
  if (!figures.mixes.empty()) figures.misfits.push_back(Misfit::MixedSizes);
  const auto forward = metres(room.adjusterForwardMm), back = metres(room.adjusterBackMm);
  const bool partsFit = figures.misfits.empty();
  if (forward && back && partsFit)
    figures.lengthsThatFit = lengthsThatFit(room, setup, *loop, *stockCentre, *forward, *back, spares);
  if (!centre) {
    figures.misfits.push_back(Misfit::ChainDoesNotReach);
    figures.fits = false;
    figures.axleShiftM = 0.0;
    figures.centreDistanceM = *stockCentre;
  } else {
    figures.axleShiftM = *centre - *stockCentre;
    figures.centreDistanceM = measured ? *measured + figures.axleShiftM : *centre;
    if (forward && figures.axleShiftM < -*forward - kAtTheEnd)
      figures.misfits.push_back(Misfit::AxleTooFarForward);
    if (back && figures.axleShiftM > *back + kAtTheEnd) figures.misfits.push_back(Misfit::AxleTooFarBack);
    if (!figures.misfits.empty())
      figures.fits = false;
    else if (forward && back)
      figures.fits = true;
  }
  if (const auto wheelbase = bike.chassis ? metres(bike.chassis->wheelbaseMm) : std::nullopt)
    figures.wheelbaseM = *wheelbase + figures.axleShiftM;
  figures.frontWrapDeg = loop->pair.smallerWrapDeg(figures.centreDistanceM);
  if (setup.frontTeeth.count() > setup.rearTeeth.count()) figures.frontWrapDeg = 360.0 - figures.frontWrapDeg;
  const double turnsPerSecond =
      bike.engine.revLimitRpm / 60.0 / setup.primaryRatio / setup.gearRatios.values().back();
  figures.topChainSpeedMps = setup.frontTeeth.count() * loop->pair.pitchM * turnsPerSecond;

  figures.swingarm = swingarm(bike, loop->pair, rolloutOf(setup).radiusM(), figures.axleShiftM);

  if (!model) return figures;
  const double rearRadius = setup.rearTeeth.count() * loop->pair.pitchM / (2.0 * units::kPi);
  figures.peakTensionN = greatestForceN(*model) * model->rollingRadiusM() / rearRadius;
  std::optional<double> strength;
  if (room.tensileStrengthKn) {
    strength = *room.tensileStrengthKn * 1000.0;
  } else if (!isBelt(setup) && setup.options.chainSize) {
    strength = minimumTensileStrengthN(*setup.options.chainSize);
    figures.strengthAssumed = strength.has_value();
  }
  if (strength && *figures.peakTensionN > 0.0) figures.safetyFactor = *strength / *figures.peakTensionN;
  return figures;
}

}  // namespace layshaft
