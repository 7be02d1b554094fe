// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/chain_run.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>
#include <numeric>

#include "core/limits.h"
#include "core/parts/belt.h"
#include "core/study/chain_tension.h"
#include "core/units.h"

namespace layshaft {
namespace {

constexpr double kAtTheEnd = 1e-9;      // m; the ends of the axle's travel are included
constexpr double kContradiction = 0.5;  // pitches between a measured centre and the one of stock's links
constexpr double kEnoughWrapDeg = 120.0;
constexpr std::array<std::pair<std::string_view, double>, 6> kMinimumTensileN{
    {{"415", 11800}, {"420", 15600}, {"428", 16700}, {"520", 26400}, {"525", 26500}, {"530", 26400}}};

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
class FittingLengths {
 public:
  FittingLengths(const Setup& stock, const Setup& setup, const DriveLoop& loop, double stockCentre,
                 double forward, double back)
      : setup_(setup),
        loop_(loop),
        own_(ownChain(stock, setup)),
        stockCentre_(stockCentre),
        forward_(forward),
        back_(back) {}

  std::vector<FittingLength> ofBelts(const std::vector<int>& listed) const {
    std::vector<FittingLength> lengths;
    for (const int teeth : beltLengths(listed, loop_.links))
      if (const auto shift = fittingShift(loop_.pair, teeth))
        lengths.push_back({.links = teeth, .axleShiftM = *shift, .shortenBy = {}, .spare = {}});
    return lengths;
  }

  /// The bike's own chain first, as it is and then shorter and shorter; then what else there is, rising.
  std::vector<FittingLength> ofChains(const std::vector<SpareChain>& spares) const {
    ChainPair fresh = loop_.pair;
    fresh.pitchM = units::metresFromMillimetres(setup_.options.chainSize->pitchMm);
    std::vector<FittingLength> lengths, others;
    for (const int links : evenCounts(own_ ? own_->pair : loop_.pair, fresh)) {
      const auto other = fittingShift(fresh, links);
      const auto own = own_ && own_->links >= links ? fittingShift(own_->pair, links) : std::nullopt;
      if (own)
        lengths.push_back({.links = links,
                           .axleShiftM = *own,
                           .shortenBy = own_->links - links,
                           .spare = *own == other ? spareFor(links, setup_, spares) : std::nullopt});
      if (other && own != other)
        others.push_back({.links = links,
                          .axleShiftM = *other,
                          .shortenBy = {},
                          .spare = spareFor(links, setup_, spares)});
      const auto present = links == loop_.links ? fittingShift(loop_.pair, links) : std::nullopt;
      if (present && present != own && present != other)  // worn, and not the one that is on the bike
        others.push_back({.links = links, .axleShiftM = *present, .shortenBy = {}, .spare = {}});
    }
    std::reverse(lengths.begin(), lengths.end());
    lengths.insert(lengths.end(), others.begin(), others.end());
    return lengths;
  }

 private:
  /// The chain that is on the bike, on the setup's sprockets; none where it has a belt or another size.
  static std::optional<DriveLoop> ownChain(const Setup& stock, const Setup& setup) {
    if (isBelt(stock) || stock.options.chainSize != setup.options.chainSize) return std::nullopt;
    auto own = driveLoop(stock);
    if (own) {
      own->pair.teeth1 = setup.frontTeeth.count();
      own->pair.teeth2 = setup.rearTeeth.count();
    }
    return own;
  }

  /// All that could put the axle inside its travel, from worn to new.
  std::vector<int> evenCounts(const ChainPair& worn, const ChainPair& fresh) const {
    const double nearest = std::max(stockCentre_ - forward_, 1e-3);
    const int fewest = static_cast<int>(std::floor(worn.links(nearest))) - 1;
    const int most = static_cast<int>(std::ceil(fresh.links(stockCentre_ + back_))) + 1;
    std::vector<int> counts;
    for (int links = fewest + (fewest & 1); links <= most; links += 2)
      if (limits::kLinks.contains(links)) counts.push_back(links);
    return counts;
  }

  std::optional<double> fittingShift(const ChainPair& pair, int links) const {
    const auto centre = pair.centreM(links);
    if (!centre) return std::nullopt;
    const double shift = *centre - stockCentre_;
    if (shift < -forward_ - kAtTheEnd || shift > back_ + kAtTheEnd) return std::nullopt;
    return shift;
  }

  const Setup& setup_;
  const DriveLoop& loop_;
  std::optional<DriveLoop> own_;
  double stockCentre_, forward_, back_;
};

}  // namespace

std::optional<double> minimumTensileStrengthN(const ChainSize& size) {
  for (const auto& [name, newtons] : kMinimumTensileN)
    if (name == size.name) return newtons;
  return std::nullopt;
}

std::optional<NearestLength> nearestLength(const ChainRunFigures& run) {
  if (run.fits.value_or(true)) return NearestLength{run.links, run.axleShiftM};
  std::optional<NearestLength> nearest;
  for (const FittingLength& length : run.lengthsThatFit) {
    const int away = std::abs(length.links - run.links);
    const int least = nearest ? std::abs(nearest->links - run.links) : away + 1;
    if (away < least || (away == least && length.links < nearest->links))
      nearest = NearestLength{length.links, length.axleShiftM};
  }
  return nearest;
}

std::optional<double> adjusterMarks(const ChainRun& room, const ChainRunFigures& run) {
  if (!room.adjusterMarkMm || !run.axleShiftM) return std::nullopt;
  return *run.axleShiftM / units::metresFromMillimetres(*room.adjusterMarkMm);
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
  if (!chain) return mixes;
  for (const SprocketPlace place : {SprocketPlace::Front, SprocketPlace::Rear})
    if (const auto size = cutFor(stock, setup, place); size && sizeDifference(*chain, *size).any())
      mixes.push_back({place, *chain, *size});
  return mixes;
}

std::vector<std::string_view> chainRunLacks(const Setup& stock, const Setup& setup) {
  std::vector<std::string_view> lacks;
  const auto check = [&](const Setup& checked, std::string_view size, std::string_view links,
                         std::string_view pitch, std::string_view teeth) {
    const SetupOptions& options = checked.options;
    if (isBelt(checked)) {
      if (!options.beltPitchMm) lacks.push_back(pitch);
      if (!options.beltTeeth) lacks.push_back(teeth);
    } else {
      if (!options.chainSize) lacks.push_back(size);
      if (!options.links) lacks.push_back(links);
    }
  };
  check(stock, "stock.chain_size", "stock.links", "stock.belt_pitch_mm", "stock.belt_teeth");
  if (!lacks.empty()) return lacks;
  const auto loop = driveLoop(stock);
  if (!loop->pair.centreM(loop->links)) lacks.push_back(isBelt(stock) ? "stock.belt_teeth" : "stock.links");
  check(setup, "proposed.chain_size", "proposed.links", "proposed.belt_pitch_mm", "proposed.belt_teeth");
  return lacks;
}

std::optional<ChainRunFigures> chainRun(const Bike& bike, const Setup& stock, const Setup& setup,
                                        const PullModel* model, const std::vector<SpareChain>& spares) {
  const auto loop = driveLoop(setup), stockLoop = driveLoop(stock);
  if (!loop || !stockLoop) return std::nullopt;
  const auto stockCentre = stockLoop->pair.centreM(stockLoop->links);
  if (!stockCentre) return std::nullopt;
  const auto centre = loop->pair.centreM(loop->links);
  const ChainRun room = bike.chainRun.value_or(ChainRun{});
  const auto measured = units::metresFromMillimetres(room.centreDistanceMm);
  const bool belt = isBelt(setup);

  ChainRunFigures figures{.belt = belt,
                          .links = loop->links,
                          .tightCentreM = centre,
                          .centreDistanceM = {},
                          .axleShiftM = {},
                          .wheelbaseM = {},
                          .frontWrapDeg = {},
                          .fits = {},
                          .misfits = {},
                          .mixes = sizeMixes(stock, setup),
                          .lengthsThatFit = {},
                          .offsetLink = !belt && loop->links % 2 != 0,
                          .topChainSpeedMps = {},
                          .peakTensionN = {},
                          .safetyFactor = {},
                          .commonFactorFront = std::gcd(setup.frontTeeth.count(), loop->links),
                          .commonFactorRear = std::gcd(setup.rearTeeth.count(), loop->links),
                          .chordalFrontPercent = chordalVariationPercent(setup.frontTeeth.count()),
                          .chordalRearPercent = chordalVariationPercent(setup.rearTeeth.count()),
                          .measuredCentreOffLinks = {},
                          .swingarm = {}};
  if (measured && std::abs(*measured - *stockCentre) > kContradiction * stockLoop->pair.pitchM)
    figures.measuredCentreOffLinks = stockLoop->pair.links(*measured) - stockLoop->links;

  judgeSprockets(room, setup, figures.misfits);
  if (!figures.mixes.empty()) figures.misfits.push_back(Misfit::MixedSizes);
  const auto forward = units::metresFromMillimetres(room.adjusterForwardMm),
             back = units::metresFromMillimetres(room.adjusterBackMm);
  figures.slotKnown = forward && back;
  if (figures.slotKnown && figures.misfits.empty()) {
    const FittingLengths lengths(stock, setup, *loop, *stockCentre, *forward, *back);
    figures.lengthsThatFit = belt ? lengths.ofBelts(room.beltLengthsTeeth) : lengths.ofChains(spares);
  }
  if (centre) {
    const double shift = *centre - *stockCentre;
    figures.axleShiftM = shift;
    figures.centreDistanceM = measured ? *measured + shift : *centre;
    if (const auto wheelbase =
            bike.chassis ? units::metresFromMillimetres(bike.chassis->wheelbaseMm) : std::nullopt)
      figures.wheelbaseM = *wheelbase + shift;
    const double smaller = loop->pair.smallerWrapDeg(*figures.centreDistanceM);
    figures.frontWrapDeg = setup.frontTeeth.count() > setup.rearTeeth.count() ? 360.0 - smaller : smaller;
    figures.lowWrap = smaller < kEnoughWrapDeg;
    figures.swingarm = swingarm(bike, loop->pair, rolloutOf(setup).radiusM(), shift, belt);
    if (forward && shift < -*forward - kAtTheEnd) figures.misfits.push_back(Misfit::AxleTooFarForward);
    if (back && shift > *back + kAtTheEnd) figures.misfits.push_back(Misfit::AxleTooFarBack);
  } else {
    figures.misfits.push_back(Misfit::ChainDoesNotReach);
  }
  if (!figures.misfits.empty())
    figures.fits = false;
  else if (figures.slotKnown)
    figures.fits = true;
  if (bike.engine.revLimitRpm && !setup.gearRatios.empty()) {
    const double turnsPerSecond =
        *bike.engine.revLimitRpm / 60.0 / setup.primaryRatio / setup.gearRatios.values().back();
    figures.topChainSpeedMps = setup.frontTeeth.count() * loop->pair.pitchM * turnsPerSecond;
  }

  if (!model) return figures;
  const double rearRadius = pullRadiusM(loop->pair.pitchM, setup.rearTeeth.count());
  figures.peakTensionN = greatestTreadForceN(*model) * model->rollingRadiusM() / rearRadius;
  std::optional<double> strength;
  if (room.tensileStrengthKn) {
    strength = *room.tensileStrengthKn * 1000.0;
  } else if (!belt && setup.options.chainSize) {
    strength = minimumTensileStrengthN(*setup.options.chainSize);
    figures.strengthAssumed = strength.has_value();
  }
  if (strength && *figures.peakTensionN > 0.0) figures.safetyFactor = *strength / *figures.peakTensionN;
  return figures;
}

}  // namespace layshaft
