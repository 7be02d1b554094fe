// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/parts_list.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/core/support.h"

namespace layshaft::test {
namespace {

/// The worked example, 16/43 to 15/43 on its 114 links, with nothing on hand.
Profile withEmptyBox() {
  Profile profile = workedExample();
  profile.sparesBox = SparesBox{};
  return profile;
}

PartsList listOf(const Profile& profile) {
  return partsList(profile, plan(profile));
}

const PartLine* lineOf(const PartsList& list, PartKind kind) {
  for (const PartLine& line : list.lines)
    if (line.kind == kind) return &line;
  return nullptr;
}

PartSource sourceOf(const PartsList& list, PartKind kind) {
  const PartLine* line = lineOf(list, kind);
  if (!line) throw std::runtime_error("no such part");
  return line->source;
}

void addWornChain(Profile& profile) {
  profile.wear = Wear{};
  WearMeasurement entry;
  entry.lengthsMm = {330.0};  // 3.9 % over twenty pitches of 15.875 mm
  entry.at = 10;
  profile.wear->measurements.add(entry);
}

TEST(PartsList, OnlyWhatChangesIsBought) {
  const PartsList list = listOf(withEmptyBox());
  EXPECT_EQ(sourceOf(list, PartKind::FrontSprocket), PartSource::Buy);
  EXPECT_EQ(lineOf(list, PartKind::FrontSprocket)->teeth, 15);
  EXPECT_EQ(sourceOf(list, PartKind::RearSprocket), PartSource::Keep);
  EXPECT_EQ(sourceOf(list, PartKind::Chain), PartSource::Keep);
  EXPECT_FALSE(lineOf(list, PartKind::JoiningLink));
}

TEST(PartsList, WhatTheBoxHasIsNotBought) {
  Profile profile = withEmptyBox();
  profile.sparesBox->front.push_back({.teeth = 15, .state = SpareState::Used});
  EXPECT_EQ(sourceOf(listOf(profile), PartKind::FrontSprocket), PartSource::Box);
  EXPECT_EQ(lineOf(listOf(profile), PartKind::FrontSprocket)->state, SpareState::Used);
  profile.sparesBox->front.front().state = SpareState::Worn;
  EXPECT_EQ(sourceOf(listOf(profile), PartKind::FrontSprocket), PartSource::Buy);
}

TEST(PartsList, ShorterChainIsCutFromTheBikesOwn) {
  Profile profile = withEmptyBox();
  profile.proposed.options.links = *profile.stock.options.links - 2;
  const PartsList list = listOf(profile);
  EXPECT_EQ(sourceOf(list, PartKind::Chain), PartSource::Cut);
  EXPECT_EQ(lineOf(list, PartKind::Chain)->takeOut, 2);
  EXPECT_EQ(sourceOf(list, PartKind::JoiningLink), PartSource::Buy);
}

TEST(PartsList, LongerChainIsBoughtEvenOrCutFromTheBox) {
  Profile profile = withEmptyBox();
  profile.proposed.options.links = *profile.stock.options.links + 1;
  PartsList list = listOf(profile);
  EXPECT_EQ(sourceOf(list, PartKind::Chain), PartSource::Buy);
  EXPECT_EQ(lineOf(list, PartKind::Chain)->links, *profile.stock.options.links + 2);
  EXPECT_FALSE(lineOf(list, PartKind::JoiningLink)) << "a new chain brings its own";
  profile.sparesBox->chains.push_back({.size = *profile.stock.options.chainSize, .links = 120});
  profile.sparesBox->chains.push_back({.size = *profile.stock.options.chainSize, .links = 118});
  list = listOf(profile);
  EXPECT_EQ(sourceOf(list, PartKind::Chain), PartSource::Box);
  EXPECT_EQ(lineOf(list, PartKind::Chain)->takeOut, 118 - (*profile.stock.options.links + 2));
  EXPECT_TRUE(lineOf(list, PartKind::JoiningLink));
  profile.sparesBox->chains[1].elongationPercent = 5.0;
  EXPECT_EQ(lineOf(listOf(profile), PartKind::Chain)->takeOut, 120 - (*profile.stock.options.links + 2))
      << "one past its limit is left in the box";
}

TEST(PartsList, AWornChainReplacesTheSet) {
  Profile profile = withEmptyBox();
  addWornChain(profile);
  const PartsList list = listOf(profile);
  EXPECT_TRUE(list.wornSet);
  for (const PartKind kind : {PartKind::FrontSprocket, PartKind::RearSprocket, PartKind::Chain})
    EXPECT_EQ(sourceOf(list, kind), PartSource::Buy);
  EXPECT_THAT(list.mixes, testing::IsEmpty());
}

TEST(PartsList, KitAgainstSinglePartsAndCostOfUse) {
  Profile profile = withEmptyBox();
  addWornChain(profile);
  profile.prices = Prices{.currency = "EUR", .parts = {}, .extras = {}};
  for (const auto& [part, price] :
       {std::pair{"chain_sealed", 120.0}, {"front_sprocket", 25.0}, {"rear_steel", 45.0}})
    profile.prices->parts.push_back({part, price, {}});
  profile.stock.options.rearSprocket = SprocketDetails{.material = SprocketMaterial::Steel};
  EXPECT_NEAR(*listOf(profile).singleParts, 190.0, 1e-9);
  EXPECT_FALSE(listOf(profile).kit);
  profile.prices->parts.push_back({"kit", 165.0, {}});
  profile.records = Records{};
  for (const double at : {0.0, 14.0, 30.0}) {
    Service service;
    service.newChain = true;
    service.at = at;
    profile.records->services.add(service);
  }
  const PartsList list = listOf(profile);
  EXPECT_NEAR(*list.kit, 165.0, 1e-9);
  EXPECT_EQ(list.life->source, LifeSource::OwnRecords);
  EXPECT_NEAR(list.life->use, 15.0, 1e-9);
  EXPECT_NEAR(*list.costPerUse, 11.0, 1e-9);
}

TEST(PartsList, APriceThatIsMissingLeavesTheSumOpen) {
  Profile profile = withEmptyBox();
  addWornChain(profile);
  profile.prices = Prices{.currency = "EUR", .parts = {{"kit", 100.0, {}}}, .extras = {}};
  EXPECT_FALSE(listOf(profile).singleParts);
  EXPECT_EQ(listOf(profile).life->source, LifeSource::Reference);
}

TEST(PartsList, AluminiumIsLighter) {
  const Profile profile = workedExample();
  const auto choices = rearMaterials(profile, plan(profile));
  ASSERT_EQ(choices.size(), 2U);
  // Densities from memory: aluminium 7075 weighs 0.36 of steel.
  EXPECT_NEAR(*choices[1].massKg / *choices[0].massKg, 2810.0 / 7850.0, 1e-6);
}

}  // namespace
}  // namespace layshaft::test
