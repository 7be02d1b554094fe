// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>

#include "core/extras.h"
#include "core/parts/chain.h"
#include "core/parts/gearbox.h"
#include "core/parts/sprocket.h"
#include "core/parts/tyre.h"

namespace layshaft {

enum class FinalDrive { Chain, Belt };

/// Whether seals keep grease in the joints of the chain.
enum class ChainKind { Plain, Sealed };

/// Everything that a change may touch and a setup may leave out.
struct SetupOptions {
  std::optional<double> rolloutMm;  ///< measured, one wheel turn with the rider on
  std::optional<double> rollingAllowancePercent;
  std::optional<double> crownRadiusMm;
  std::optional<double> treadWearMm;
  std::optional<double> growthPerKmh2;
  std::optional<FinalDrive> finalDrive;
  std::optional<ChainSize> chainSize;
  std::optional<ChainKind> chainKind;
  std::optional<int> links;
  std::optional<double> chainElongationPercent;
  std::optional<double> beltPitchMm;
  std::optional<int> beltTeeth;
  std::optional<SprocketDetails> frontSprocket;
  std::optional<SprocketDetails> rearSprocket;
  std::optional<GearTeeth> primaryTeeth;  ///< make the primary ratio
  TeethOfGears gearTeeth;                 ///< make the gear ratios
  Extras extras;
  bool operator==(const SetupOptions&) const = default;
};

/// A whole setup: what turns engine speed into road speed. Its gear ratios may be unknown.
struct Setup {
  Teeth frontTeeth;
  Teeth rearTeeth;
  TyreSize rearTyre;
  double primaryRatio;
  GearRatios gearRatios;
  SetupOptions options;
  bool operator==(const Setup&) const = default;
};

/// What a proposal or a pin changes; whatever is missing follows stock.
struct SetupChange {
  std::optional<Teeth> frontTeeth;
  std::optional<Teeth> rearTeeth;
  std::optional<TyreSize> rearTyre;
  std::optional<double> primaryRatio;
  std::optional<GearRatios> gearRatios;
  SetupOptions options;
  bool operator==(const SetupChange&) const = default;

  bool changesNothing() const;
};

/// Stock with the change applied. What belongs to a part goes with the part: with another tyre, stock's
/// measured rollout, crown radius, tread wear and growth no longer count; with other teeth, stock's sprocket
/// mass and size do not. The teeth of a gear go with its ratio: stock's count where the ratio is stock's.
Setup applied(const SetupChange& change, const Setup& stock);

/// A sprocket with other teeth is another one: what was known of this one's mass and size says nothing about
/// it.
void forgetSprocketMeasurements(std::optional<SprocketDetails>& sprocket);

/// What was measured on one tyre says nothing about another.
void forgetTyreMeasurements(SetupOptions& options);

/// Takes out the teeth of gears that no longer make their ratio, as after stock's ratios have changed.
void forgetOtherGearTeeth(SetupChange& change, const Setup& stock);

/// The change that makes `wanted` out of `stock`, as far as a change can: it cannot take away what stock has.
SetupChange changeTo(const Setup& wanted, const Setup& stock);

/// The change without what is the same as stock anyway.
SetupChange withoutStockValues(SetupChange change, const Setup& stock);

}  // namespace layshaft
