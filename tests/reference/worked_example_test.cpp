// SPDX-License-Identifier: GPL-3.0-or-later
//
// A whole bike with every figure of its report, computed independently of this program and given to it as an
// example.
#include <gtest/gtest.h>

#include <cmath>
#include <string>

#include "core/plan.h"
#include "core/report.h"
#include "tests/core/support.h"

namespace layshaft::test {
namespace {

constexpr double kRelativeOfRuns = 1e-3;
constexpr double kRelative = 1e-4;  // the example prints seven digits; this is the agreement that is promised

int compared = 0;

/// Every key that is expected must be there with the same value; further keys are allowed.
void compare(const Json& expected, const Json& actual, const std::string& path) {
  SCOPED_TRACE(path);
  if (expected.is_object()) {
    ASSERT_TRUE(actual.is_object());
    for (const auto& item : expected.items()) {
      ASSERT_TRUE(actual.contains(item.key())) << item.key() << " is missing";
      compare(item.value(), actual[item.key()], path + "." + item.key());
    }
  } else if (expected.is_array()) {
    ASSERT_TRUE(actual.is_array());
    ASSERT_EQ(actual.size(), expected.size());
    for (std::size_t i = 0; i < expected.size(); ++i)
      compare(expected[i], actual[i], path + "[" + std::to_string(i) + "]");
  } else if (expected.is_number()) {
    ASSERT_TRUE(actual.is_number()) << actual;
    const double value = expected.get<double>();
    const double relative = path.find(".run.") == std::string::npos ? kRelative : kRelativeOfRuns;
    EXPECT_NEAR(actual.get<double>(), value, relative * std::abs(value) + 1e-12);
    ++compared;
  } else {
    EXPECT_EQ(actual, expected);
    ++compared;
  }
}

TEST(WorkedExample, AgreesInEveryFigure) {
  const auto data = sourceFolder() / "tests/reference/data";
  const Result<Profile> profile = loadProfile(data / "club-600.bike.json");
  ASSERT_TRUE(profile) << testing::PrintToString(profile.problem());
  const Json expected = Json::parse(contentsOf(data / "club-600.report.json"));
  compare(expected, Json::parse(reportJson(plan(*profile))), "report");
  EXPECT_GE(compared, 90);
}

}  // namespace
}  // namespace layshaft::test
