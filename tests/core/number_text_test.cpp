// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/number_text.h"

#include <gtest/gtest.h>

#include <cstdint>
#include <cstring>
#include <limits>
#include <random>

namespace layshaft::test {
namespace {

TEST(NumberText, WithoutNoiseIsWhatWasTyped) {
  for (const double typed : {0.0, 0.1, -16.5, 2.5e-8, 1e-9, 15200.0, 1384.3, 30.0 * 1.609344}) {
    EXPECT_EQ(withoutNoise(typed * (1 + 3e-14)), withoutNoise(typed));
    EXPECT_NEAR(withoutNoise(typed), typed, 1e-12 * std::abs(typed));
  }
  EXPECT_EQ(withoutNoise(0.1 + 0.2), 0.3);
  EXPECT_EQ(withoutNoise(2.5e-8 / 3.0 * 3.0), 2.5e-8) << "small numbers are numbers";
}

TEST(NumberText, IsWhatPeopleWrite) {
  struct Row {
    double x;
    const char* text;
  };
  for (const Row& row : {Row{0, "0"}, Row{1, "1"}, Row{-1, "-1"}, Row{15200, "15200"}, Row{1.955, "1.955"},
                         Row{0.1, "0.1"}, Row{-0.35, "-0.35"}, Row{1e6, "1000000"},
                         Row{1e14, "100000000000000"}, Row{0.0001, "0.0001"}, Row{1013.25, "1013.25"}})
    EXPECT_EQ(numberText(row.x), row.text);
}

TEST(NumberText, ReadsBackAsTheSameNumber) {
  using Limits = std::numeric_limits<double>;
  for (const double x : {0.1 + 0.2, 1.0 / 3, 2.0 / 3 * 1e-4, 1e15, 1e16, 1e22, 1.5e-7, 1e-6, Limits::min(),
                         Limits::max(), -Limits::max(), Limits::denorm_min(), Limits::epsilon()})
    EXPECT_EQ(numberFromText(numberText(x)), x) << numberText(x);
  std::mt19937_64 random(20240607);
  for (int i = 0; i < 100000; ++i) {
    const std::uint64_t bits = random();
    double x = 0;
    std::memcpy(&x, &bits, sizeof x);
    if (std::isfinite(x)) {
      ASSERT_EQ(numberFromText(numberText(x)), x) << numberText(x);
    }
  }
}

TEST(NumberFromText, TakesAWholeTextOnly) {
  EXPECT_EQ(numberFromText("15200"), 15200);
  EXPECT_EQ(numberFromText("+4.5"), 4.5);
  EXPECT_EQ(numberFromText("-4.5"), -4.5);
  EXPECT_EQ(numberFromText("1.5e3"), 1500);
  EXPECT_EQ(numberFromText("007"), 7);
  for (const char* text : {"",      " ",  "+",    "-",     ".",     "e5",    "1,5", "1.5 ", " 1.5", "1.5mm",
                           "1.5.2", "1e", "0x10", "1'000", "1 000", "1_000", "one", "-+5",  "++5",  "--5"})
    EXPECT_FALSE(numberFromText(text)) << "'" << text << "'";
}

TEST(NumberFromText, RefusesTwoSigns) {
  EXPECT_FALSE(numberFromText("+-5"));
}

TEST(NumberFromText, RefusesWhatIsNotFinite) {
  for (const char* text :
       {"nan", "NaN", "-nan", "inf", "-inf", "+inf", "Infinity", "infinity", "1e999", "-1e999"})
    EXPECT_FALSE(numberFromText(text)) << text;
}

}  // namespace
}  // namespace layshaft::test
