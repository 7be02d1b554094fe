// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "core/bike/bike.h"
#include "core/bike/setup.h"
#include "core/parts/chain_geometry.h"
#include "core/study/pull.h"

namespace layshaft {

/// The chain or belt of a setup on its sprockets; none where pitch or length is missing.
struct DriveLoop {
  ChainPair pair;
  int links;  ///< of a belt: its teeth
};
std::optional<DriveLoop> driveLoop(const Setup& setup);

/// How far the axle moves when stock's pair and chain give way to the setup's, m, positive to the rear. None
/// where a chain or its length is missing or does not reach round.
std::optional<double> axleShiftM(const Setup& stock, const Setup& setup);

/// A chain length and where it puts the axle.
struct FittingLength {
  int links;
  double axleShiftM;
};

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
  int links;
  double centreDistanceM;  ///< from the chain; from a measured centre with the shift added where there is one
  double axleShiftM;       ///< positive to the rear
  std::optional<double> wheelbaseM;
  std::optional<bool> fits;  ///< none where the axle's travel is not known and nothing else speaks against it
  std::vector<Misfit> misfits;
  std::vector<FittingLength>
      lengthsThatFit;  ///< even counts, of belts the listed ones; the present one if it fits
  double frontWrapDeg;
  double topChainSpeedMps;  ///< at the rev limit in the last gear
  std::optional<double> peakTensionN;
  std::optional<double> safetyFactor;
  bool strengthAssumed = false;  ///< the strength is the minimum for the size, not one that was typed
  int commonFactorFront, commonFactorRear;  ///< of teeth and links; 1 is best
  double chordalFrontPercent, chordalRearPercent;
  /// Half a pitch or more between a measured centre and the one that stock's links make: links by which they
  /// differ.
  std::optional<double> measuredCentreOffLinks;
};

/// `model` may be null: then tension is not known. None where chain or length of stock or setup is missing.
std::optional<ChainRunFigures> chainRun(const Bike& bike, const Setup& stock, const Setup& setup,
                                        const PullModel* model);

/// Whether a change of chain size leaves a sprocket of the old size on the bike.
bool mixesSizes(const Setup& stock, const Setup& setup);

/// Speed variation of a chain over one tooth, per cent of the greatest: 100·(1 − cos(π/N)).
double chordalVariationPercent(int teeth);

}  // namespace layshaft
