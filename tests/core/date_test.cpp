// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/date.h"

#include <gtest/gtest.h>

namespace layshaft::test {
namespace {

TEST(Date, ReadsAndWritesTheExtendedForm) {
  const auto date = Date::parse("2026-05-12");
  ASSERT_TRUE(date);
  EXPECT_EQ(date->year(), 2026);
  EXPECT_EQ(date->month(), 5);
  EXPECT_EQ(date->day(), 12);
  EXPECT_EQ(date->text(), "2026-05-12");
}

TEST(Date, KnowsTheGregorianLeapYears) {
  EXPECT_TRUE(
      Date::parse("2000-02-29"));  // the rule of the calendar: every fourth, but only every fourth century
  EXPECT_TRUE(Date::parse("2028-02-29"));
  EXPECT_FALSE(Date::parse("2100-02-29"));
  EXPECT_FALSE(Date::parse("2026-02-29"));
}

TEST(Date, RefusesWhatIsNone) {
  for (const char* text :
       {"", "2026-5-12", "12.05.2026", "2026-13-01", "2026-00-10", "2026-04-31", "2026-05-00", "1899-12-31",
        "3000-01-01", "2026-05-12 ", "2026/05/12", "+026-05-12"})
    EXPECT_FALSE(Date::parse(text)) << text;
}

TEST(Date, IsOrderedByTheCalendar) {
  EXPECT_LT(*Date::parse("2025-12-31"), *Date::parse("2026-01-01"));
  EXPECT_LT(*Date::parse("2026-01-31"), *Date::parse("2026-02-01"));
}

}  // namespace
}  // namespace layshaft::test
