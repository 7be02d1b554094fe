// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <vector>

#include "core/bike/profile.h"
#include "core/bike/words.h"
#include "core/plan.h"

namespace layshaft {

enum class PartKind {
  FrontSprocket,
  RearSprocket,
  Chain,
  JoiningLink,
  FrontPulley,
  RearPulley,
  Belt,
  RearTyre
};

/// Where a part comes from.
enum class PartSource {
  Keep,  ///< it is on the bike and stays
  Cut,   ///< the bike's own chain, made shorter
  Box,   ///< on hand
  Buy
};

/// The words under which the profile keeps prices.
enum class PricedPart {
  ChainPlain,
  ChainSealed,
  FrontSprocket,
  RearSteel,
  RearAluminium,
  JoiningLink,
  Kit,  ///< chain and both sprockets in one box
  FrontPulley,
  RearPulley,
  Belt,
  RearTyre
};
inline constexpr Words<PricedPart, 11> kPricedPartWords{{{PricedPart::ChainPlain, "chain_plain"},
                                                         {PricedPart::ChainSealed, "chain_sealed"},
                                                         {PricedPart::FrontSprocket, "front_sprocket"},
                                                         {PricedPart::RearSteel, "rear_steel"},
                                                         {PricedPart::RearAluminium, "rear_aluminium"},
                                                         {PricedPart::JoiningLink, "joining_link"},
                                                         {PricedPart::Kit, "kit"},
                                                         {PricedPart::FrontPulley, "front_pulley"},
                                                         {PricedPart::RearPulley, "rear_pulley"},
                                                         {PricedPart::Belt, "belt"},
                                                         {PricedPart::RearTyre, "rear_tyre"}}};

/// What the user typed for a part; none where nothing is typed.
std::optional<double> priceOf(const Profile& profile, PricedPart part);

struct PartLine {
  PartKind kind{};
  PartSource source{};
  int teeth = 0;                  ///< of sprockets, pulleys and belts
  int links = 0;                  ///< of the chain as it is fitted; even where it is bought
  int takeOut = 0;                ///< links to take out of a longer chain, from box or bike
  std::optional<ChainSize> size;  ///< of chain and sprockets
  std::optional<ChainKind> chainKind;
  std::optional<SprocketMaterial> material;
  std::optional<SpareState> state;          ///< of what the box has, as far as it is known
  std::optional<double> elongationPercent;  ///< the same
  std::optional<SprocketMass> mass;
  std::optional<double> price;  ///< of what is bought, where it is typed
};

/// How long a set of chain and sprockets lasts, in the unit of use.
enum class LifeSource {
  OwnRecords,  ///< from new chain to new chain, the mean
  OwnTrend,    ///< where the measured trend reaches the limit
  Reference    ///< the usual life; common practice, no source
};
struct ExpectedLife {
  double use;
  LifeSource source;
};

struct PartsList {
  std::vector<PartLine> lines;
  bool wornSet = false;        ///< chain and sprockets are worn: all three are replaced, whatever their teeth
  std::vector<WearMix> mixes;  ///< new and worn parts that would run together
  std::optional<double> singleParts;  ///< sum of what is bought; none unless each has a price
  std::optional<double> kit;          ///< typed, and both sprockets and the chain are bought
  std::optional<ExpectedLife> life;   ///< none for belts
  /// Price of the set, as a kit where that is cheaper or the only price, for each unit of use.
  std::optional<double> costPerUse;

  bool buysAnything() const;
};

/// What has to be had, and from where, before the proposal is on the bike. Sprockets and chains of the spares
/// box that are not worn come first; a chain is bought with an even number of links.
PartsList partsList(const Profile& profile, const Plan& plan);

/// A rear sprocket of a material for the proposal, so that both can be weighed against each other.
struct MaterialChoice {
  SprocketMaterial material;
  std::optional<double> massKg;  ///< estimated; none where the chain size is not known
  std::optional<double> price;
};
std::vector<MaterialChoice> rearMaterials(const Profile& profile, const Plan& plan);

}  // namespace layshaft
