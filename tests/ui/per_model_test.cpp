// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/per_model.h"

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "tests/ui/support.h"

namespace layshaft::test {
namespace {

TEST(PerModel, MakesWhatIsNewAndKeepsTheRest) {
  Profile profile = workedExample();
  std::vector<int> made;  // rear teeth of the setups that something was made of
  ui::PerModel<int> drawn;
  const auto show = [&](const Plan& shown) {
    made.clear();
    drawn.update(shown, [&](const SetupPlan& setup) {
      made.push_back(setup.setup.rearTeeth.count());
      return setup.setup.rearTeeth.count();
    });
  };
  profile.proposed = {.rearTeeth = Teeth::rear(45).value()};
  profile.pins = {{"Pin", {.rearTeeth = Teeth::rear(47).value()}}};
  const Plan first = plan(profile);
  show(first);
  EXPECT_EQ(made, (std::vector{43, 45, 47}));
  profile.proposed.rearTeeth = Teeth::rear(46).value();
  const Plan second = plan(planInput(profile), &first);
  show(second);
  EXPECT_EQ(made, std::vector{46});
  EXPECT_EQ(drawn.of(second.stock), 43);
  EXPECT_EQ(drawn.of(second.proposed), 46);
  EXPECT_EQ(drawn.of(second.pins[0]), 47);
  show(second);
  EXPECT_TRUE(made.empty());
  show(first);
  EXPECT_EQ(made, std::vector{45}) << "what was not shown is forgotten";
  drawn.clear();
  show(first);
  EXPECT_EQ(made.size(), 3U);
}

TEST(PerModel, SetupsWithoutAModelShareOne) {
  ui::PerModel<int> drawn;
  int made = 0;
  Profile bare = workedExample();
  bare.bike.engine.torqueCurve.reset();
  const Plan shown = plan(bare);
  drawn.update(shown, [&](const SetupPlan&) { return ++made; });
  EXPECT_EQ(made, 1);
  EXPECT_EQ(drawn.of(shown.stock), drawn.of(shown.proposed));
}

}  // namespace
}  // namespace layshaft::test
