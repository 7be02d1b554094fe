// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/bike/another_bike.h"

#include <gtest/gtest.h>

#include "tests/core/support.h"

namespace layshaft::test {
namespace {

TEST(AnotherBike, KeepsTheKindOfBikeAndNothingOfThisOne) {
  const Profile one = profileFrom(everyKeyProfile().dump());
  ASSERT_FALSE(one.customer.empty());
  ASSERT_TRUE(one.records);
  ASSERT_FALSE(one.wear->measurements.empty());
  ASSERT_TRUE(one.stock.options.chainElongationPercent);
  const Profile another = anotherBike(one);
  EXPECT_EQ(another.customer, "");
  EXPECT_FALSE(another.records);
  EXPECT_TRUE(another.wear->measurements.empty());
  EXPECT_FALSE(another.wear->chainFittedAt);
  EXPECT_FALSE(another.stock.options.chainElongationPercent);
  EXPECT_EQ(another.wear->limitPercent, one.wear->limitPercent) << "the manual's";
  EXPECT_EQ(another.name, one.name);
  EXPECT_EQ(another.bike, one.bike);
  EXPECT_EQ(another.proposed, one.proposed);
  EXPECT_EQ(another.pins, one.pins);
}

}  // namespace
}  // namespace layshaft::test
