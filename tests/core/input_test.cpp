// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/input.h"

#include <gtest/gtest.h>

#include "core/bike/pair.h"
#include "tests/core/support.h"

namespace layshaft::test {
namespace {

/// Everything filled in, and a key on every level that this version does not know.
Json withUnknownKeys(Json value) {
  if (value.is_object()) {
    for (auto& [key, inner] : value.items()) inner = withUnknownKeys(inner);
    value["of_a_later_version"] = 1;
  } else if (value.is_array()) {
    for (Json& inner : value) inner = withUnknownKeys(inner);
  }
  return value;
}

TEST(PlanInput, LeavesOutWhatNoStudyReads) {
  const Profile profile = profileFrom(everyKeyProfile().dump());
  const PlanInput input = planInput(profile);
  Profile other = profile;
  other.notes += " More of them.";
  other.aims.clear();
  other.sparesBox->front.clear();
  EXPECT_EQ(planInput(other), input);
  Profile later = profileFrom(withUnknownKeys(everyKeyProfile()).dump());
  ASSERT_FALSE(later == profile);
  EXPECT_EQ(planInput(later), input);
}

TEST(PlanInput, HoldsWhatAPlanReads) {
  const Profile profile = profileFrom(everyKeyProfile().dump());
  const PlanInput input = planInput(profile);
  auto proposed = applied(profile.proposed, profile.stock);
  proposed.options.primaryTeeth.reset();  // the studies read ratios
  proposed.options.gearTeeth.clear();
  proposed.options.chainKind.reset();
  EXPECT_EQ(input.proposed, proposed);
  const auto differs = [&](auto change) {
    Profile other = profile;
    change(other);
    return !(planInput(other) == input);
  };
  EXPECT_TRUE(differs([](Profile& p) { p.name = "Another"; })) << "the report names it";
  EXPECT_TRUE(differs([](Profile& p) { p.bike.chassis->tyreGrip = 1.0; }));
  EXPECT_TRUE(differs([](Profile& p) { p.bike.engine.idleRpm = 1250; }));
  EXPECT_TRUE(differs([](Profile& p) { p.stock.rearTeeth = rear(44); }));
  EXPECT_TRUE(differs([](Profile& p) { p.proposed.frontTeeth = front(14); }));
  EXPECT_TRUE(differs([](Profile& p) { p.ride->slopePercent = 3; }));
  EXPECT_TRUE(differs([](Profile& p) { p.cruiseSpeedKmh = 100; }));
  EXPECT_TRUE(differs([](Profile& p) { p.sparesBox->chains.clear(); }));
  EXPECT_TRUE(differs([](Profile& p) { p.pins[0].change.rearTeeth = rear(45); }));
  EXPECT_TRUE(differs([](Profile& p) { p.pins[0].name = "Dry"; }));
}

TEST(LadderInput, LeavesOutWhatNoRowDependsOn) {
  const Profile profile = profileFrom(everyKeyProfile().dump());
  const LadderInput input = ladderInput(profile);
  Profile other = profile;
  other.name = "Another";
  other.notes.clear();
  other.pins.clear();
  EXPECT_EQ(ladderInput(other), input);
  EXPECT_EQ(ladderInput(profileFrom(withUnknownKeys(everyKeyProfile()).dump())), input);
}

TEST(LadderInput, IsTheSameAllUpAndDownTheLadder) {
  Profile profile = profileFrom(contentsOf(sourceFolder() / "sample-profiles/motocross-450.bike.json"));
  profile.proposed = {};
  const LadderInput input = ladderInput(profile);
  for (const auto& [f, r] : {std::pair{13, 52}, {14, 50}, {12, 49}}) {
    Profile there = profile;
    there.proposed = proposalWithPair(profile, front(f), rear(r));
    EXPECT_EQ(ladderInput(there), input) << f << "/" << r;
  }
  // A sprocket of the proposal's own is not what the box would give.
  Profile own = profile;
  own.proposed = proposalWithPair(profile, front(13), rear(52));
  own.proposed.options.rearSprocket = SprocketDetails{.massKg = 0.123};
  EXPECT_FALSE(ladderInput(own) == input);
}

TEST(LadderInput, HoldsWhatTheRowsRead) {
  const Profile profile = profileFrom(everyKeyProfile().dump());
  const LadderInput input = ladderInput(profile);
  const auto differs = [&](auto change) {
    Profile other = profile;
    change(other);
    return !(ladderInput(other) == input);
  };
  EXPECT_TRUE(differs([](Profile& p) { p.aims[0].rpm = 12000; }));
  EXPECT_TRUE(differs([](Profile& p) { p.proposed.rearTyre = tyre("190/55ZR17"); }));
  EXPECT_TRUE(differs([](Profile& p) { p.stock.frontTeeth = front(17); }));
  EXPECT_TRUE(differs([](Profile& p) { p.sparesBox->rear[0].massKg = 0.7; }));
  EXPECT_TRUE(differs([](Profile& p) { p.ride->headwindKmh = 20; }));
  EXPECT_TRUE(differs([](Profile& p) { p.cruiseSpeedKmh.reset(); }));
}

}  // namespace
}  // namespace layshaft::test
