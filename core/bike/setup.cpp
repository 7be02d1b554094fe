// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/bike/setup.h"

namespace layshaft {
namespace {

template <class T>
void follow(std::optional<T>& own, const std::optional<T>& stock) {
  if (!own) own = stock;
}

template <class T>
void dropIfSame(std::optional<T>& own, const std::optional<T>& stock) {
  if (own == stock) own.reset();
}

/// Another tooth count is another sprocket: its material is likely the same, its mass and the chain it is cut
/// for are not known.
void followSprocket(std::optional<SprocketDetails>& own, const std::optional<SprocketDetails>& stock,
                    bool sameTeeth) {
  if ((own && !own->saysNothing()) || !stock) return;
  Extras kept = own ? std::move(own->extras) : Extras{};
  own = stock;
  if (!kept.empty()) own->extras = std::move(kept);
  if (!sameTeeth) forgetSprocketMeasurements(own);
}

/// Whether a gear of the change has stock's ratio.
bool isStocks(const SetupChange& change, const Setup& stock, std::size_t gear) {
  if (gear >= stock.gearRatios.count()) return false;
  if (!change.gearRatios) return true;
  return gear < change.gearRatios->count() && (*change.gearRatios)[gear] == stock.gearRatios[gear];
}

void followGearTeeth(TeethOfGears& own, const SetupChange& change, const Setup& stock) {
  for (std::size_t gear = 0; gear < stock.options.gearTeeth.size(); ++gear)
    if (!teethOf(own, gear) && isStocks(change, stock, gear))
      setTeethOf(own, gear, stock.options.gearTeeth[gear]);
}

}  // namespace

bool SetupChange::changesNothing() const {
  return *this == SetupChange{.options = {.extras = options.extras}};
}

Setup applied(const SetupChange& change, const Setup& stock) {
  Setup setup{.frontTeeth = change.frontTeeth.value_or(stock.frontTeeth),
              .rearTeeth = change.rearTeeth.value_or(stock.rearTeeth),
              .rearTyre = change.rearTyre.value_or(stock.rearTyre),
              .primaryRatio = change.primaryRatio.value_or(stock.primaryRatio),
              .gearRatios = change.gearRatios.value_or(stock.gearRatios),
              .options = change.options};
  SetupOptions& own = setup.options;
  const SetupOptions& from = stock.options;
  if (setup.rearTyre.sameTyre(stock.rearTyre)) {
    follow(own.rolloutMm, from.rolloutMm);
    follow(own.crownRadiusMm, from.crownRadiusMm);
    follow(own.treadWearMm, from.treadWearMm);
    follow(own.growthPerKmh2, from.growthPerKmh2);
  }
  follow(own.rollingAllowancePercent, from.rollingAllowancePercent);
  follow(own.finalDrive, from.finalDrive);
  follow(own.chainSize, from.chainSize);
  follow(own.chainKind, from.chainKind);
  follow(own.links, from.links);
  follow(own.chainElongationPercent, from.chainElongationPercent);
  follow(own.beltPitchMm, from.beltPitchMm);
  follow(own.beltTeeth, from.beltTeeth);
  followSprocket(own.frontSprocket, from.frontSprocket, setup.frontTeeth == stock.frontTeeth);
  followSprocket(own.rearSprocket, from.rearSprocket, setup.rearTeeth == stock.rearTeeth);
  if (setup.primaryRatio == stock.primaryRatio) follow(own.primaryTeeth, from.primaryTeeth);
  followGearTeeth(own.gearTeeth, change, stock);
  return setup;
}

void forgetSprocketMeasurements(std::optional<SprocketDetails>& sprocket) {
  if (!sprocket) return;
  sprocket->massKg.reset();
  sprocket->size.reset();
}

void forgetTyreMeasurements(SetupOptions& options) {
  options.rolloutMm.reset();
  options.crownRadiusMm.reset();
  options.treadWearMm.reset();
  options.growthPerKmh2.reset();
}

void forgetOtherGearTeeth(SetupChange& change, const Setup& stock) {
  SetupOptions& own = change.options;
  if (own.primaryTeeth && !own.primaryTeeth->make(change.primaryRatio.value_or(stock.primaryRatio)))
    own.primaryTeeth.reset();
  const GearRatios& ratios = change.gearRatios ? *change.gearRatios : stock.gearRatios;
  if (own.gearTeeth.size() > ratios.count()) own.gearTeeth.resize(ratios.count());
  for (std::size_t gear = own.gearTeeth.size(); gear-- > 0;)
    if (!own.gearTeeth[gear] || !own.gearTeeth[gear]->make(ratios[gear]))
      setTeethOf(own.gearTeeth, gear, std::nullopt);
}

SetupChange changeTo(const Setup& wanted, const Setup& stock) {
  return withoutStockValues({.frontTeeth = wanted.frontTeeth,
                             .rearTeeth = wanted.rearTeeth,
                             .rearTyre = wanted.rearTyre,
                             .primaryRatio = wanted.primaryRatio,
                             .gearRatios = wanted.gearRatios,
                             .options = wanted.options},
                            stock);
}

SetupChange withoutStockValues(SetupChange change, const Setup& stock) {
  if (change.frontTeeth == stock.frontTeeth) change.frontTeeth.reset();
  if (change.rearTeeth == stock.rearTeeth) change.rearTeeth.reset();
  if (change.rearTyre && change.rearTyre->sameTyre(stock.rearTyre)) change.rearTyre.reset();
  if (change.primaryRatio == stock.primaryRatio) change.primaryRatio.reset();
  if (change.gearRatios == stock.gearRatios) change.gearRatios.reset();
  SetupOptions& own = change.options;
  const SetupOptions& from = stock.options;
  if (!change.rearTyre) {
    dropIfSame(own.rolloutMm, from.rolloutMm);
    dropIfSame(own.crownRadiusMm, from.crownRadiusMm);
    dropIfSame(own.treadWearMm, from.treadWearMm);
    dropIfSame(own.growthPerKmh2, from.growthPerKmh2);
  }
  dropIfSame(own.rollingAllowancePercent, from.rollingAllowancePercent);
  dropIfSame(own.finalDrive, from.finalDrive);
  dropIfSame(own.chainSize, from.chainSize);
  dropIfSame(own.chainKind, from.chainKind);
  dropIfSame(own.links, from.links);
  dropIfSame(own.chainElongationPercent, from.chainElongationPercent);
  dropIfSame(own.beltPitchMm, from.beltPitchMm);
  dropIfSame(own.beltTeeth, from.beltTeeth);
  if (!change.frontTeeth) dropIfSame(own.frontSprocket, from.frontSprocket);
  if (!change.rearTeeth) dropIfSame(own.rearSprocket, from.rearSprocket);
  if (!change.primaryRatio) dropIfSame(own.primaryTeeth, from.primaryTeeth);
  for (std::size_t gear = own.gearTeeth.size(); gear-- > 0;)
    if (isStocks(change, stock, gear) && own.gearTeeth[gear] == teethOf(from.gearTeeth, gear))
      setTeethOf(own.gearTeeth, gear, std::nullopt);
  return change;
}

}  // namespace layshaft
