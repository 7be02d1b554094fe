// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "core/bike/profile.h"
#include "core/study/fitted.h"
#include "core/study/pull.h"
#include "core/study/swingarm.h"

namespace layshaft {

/// A chain on hand that a length can be had from.
struct SpareCut {
  int links;      ///< as it is
  int shortenBy;  ///< links to take out; 0: as it is
};

/// A chain length, where it puts the axle, and what to take it from.
struct FittingLength {
  int links;
  double axleShiftM;
  std::optional<int>
      shortenBy;  ///< links to take out of the bike's own chain, 0: none; none where it is another chain
  std::optional<SpareCut> spare;  ///< the chain of the spares box that least is cut from
};

/// In what the dimensions of two chain sizes differ: with any difference their parts do not run together.
struct SizeDifference {
  bool pitch, roller, innerWidth;
  bool any() const { return pitch || roller || innerWidth; }
};
SizeDifference sizeDifference(const ChainSize& a, const ChainSize& b);

/// A sprocket that is cut for another size than the setup's chain.
struct SizeMix {
  SprocketPlace place;
  ChainSize chain, sprocket;
};
std::vector<SizeMix> sizeMixes(const Setup& stock, const Setup& setup);

/// Why a setup does not fit.
enum class Misfit {
  AxleTooFarForward,
  AxleTooFarBack,
  FrontTooLarge,
  FrontTooSmall,
  RearTooLarge,
  RearTooSmall,
  ChainDoesNotReach,
  MixedSizes
};

/// Minimum tensile strength of a plain motorcycle chain of that size, N; none for a size not listed. Source:
/// the minima of ISO 10190 for motorcycle chains (from memory; makers' own figures are higher).
std::optional<double> minimumTensileStrengthN(const ChainSize& size);

struct ChainRunFigures {
  bool belt;
  int links;
  // None where the links do not reach round.
  std::optional<double> tightCentreM;  ///< that the links make tight
  std::optional<double>
      centreDistanceM;  ///< the same; from a measured centre with the shift added where there is one
  std::optional<double> axleShiftM;  ///< positive to the rear
  std::optional<double> wheelbaseM;
  std::optional<double> frontWrapDeg;
  bool lowWrap = false;      ///< less than the 120° that handbooks ask for on the smaller sprocket
  std::optional<bool> fits;  ///< none where the axle's travel is not known and nothing else speaks against it
  std::vector<Misfit> misfits;
  std::vector<SizeMix> mixes;  ///< behind a misfit of mixed sizes
  /// Even counts, of belts the listed ones; the present one if it fits. The bike's own chain comes first, as
  /// it is and then shorter; the rest is rising. A worn chain counts twice: as far as it can be cut, and what
  /// a new one of that length would do.
  std::vector<FittingLength> lengthsThatFit;
  bool slotKnown = false;                  ///< both ends of the axle's travel
  bool offsetLink = false;                 ///< an odd number of links
  std::optional<double> topChainSpeedMps;  ///< at the rev limit in the last gear
  std::optional<double> peakTensionN;
  std::optional<double> safetyFactor;
  bool strengthAssumed = false;  ///< the strength is the minimum for the size, not one that was typed
  int commonFactorFront, commonFactorRear;  ///< of teeth and links; 1 is best
  double chordalFrontPercent, chordalRearPercent;
  /// Where a measured centre is more than half a pitch off the one that stock's links make: the links that it
  /// would take less those there are.
  std::optional<double> measuredCentreOffLinks;
  std::optional<SwingarmFigures> swingarm;
};

/// What is missing before anything can be said of the run of chain or belt, as keys of the profile; a key
/// that is there is named where its value does not reach round.
std::vector<std::string_view> chainRunLacks(const Setup& stock, const Setup& setup);

/// `model` may be null: then tension is not known. `spares` are the chains on hand. None where chain or
/// length of stock or setup is missing.
std::optional<ChainRunFigures> chainRun(const Bike& bike, const Setup& stock, const Setup& setup,
                                        const PullModel* model, const std::vector<SpareChain>& spares = {});

/// A length with which the setup would fit, and where it puts the axle.
struct NearestLength {
  int links;
  std::optional<double> axleShiftM;
};
/// The present length where it fits, or nothing speaks against it; else the one that fits and differs least,
/// of two the shorter one, which can be cut. None where none fits.
std::optional<NearestLength> nearestLength(const ChainRunFigures& run);

/// By how many marks of the adjuster the axle shifts, positive to the rear; none where either is not known.
std::optional<double> adjusterMarks(const ChainRun& room, const ChainRunFigures& run);

/// Speed variation of a chain over one tooth, per cent of the greatest: 100·(1 − cos(π/N)).
double chordalVariationPercent(int teeth);

}  // namespace layshaft
