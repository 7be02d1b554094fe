// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <limits>
#include <nlohmann/json.hpp>
#include <ostream>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/bike/setup.h"
#include "core/plan.h"
#include "core/problem.h"
#include "core/profile_file.h"

namespace layshaft {

/// What GoogleTest shows of a problem that was not the expected one.
inline void PrintTo(const Problem& problem, std::ostream* out) {
  *out << "kind " << static_cast<int>(problem.kind) << ", path '" << problem.path << "', given '"
       << problem.given << "', " << problem.low << ".." << problem.high << " '" << problem.unit << "', part '"
       << problem.part << "', below '" << problem.below << "', allowed";
  for (const std::string& word : problem.allowed) *out << " '" << word << "'";
  *out << ", line " << problem.line << ", column " << problem.column;
}

}  // namespace layshaft

namespace layshaft::test {

using Json = nlohmann::ordered_json;
using Kind = Problem::Kind;

inline constexpr double kNaN = std::numeric_limits<double>::quiet_NaN();
inline constexpr double kInfinity = std::numeric_limits<double>::infinity();

inline std::filesystem::path sourceFolder() {
  return LAYSHAFT_SOURCE_DIR;
}

inline std::string contentsOf(const std::filesystem::path& file) {
  std::ifstream stream(file, std::ios::binary);
  if (!stream) throw std::runtime_error("cannot open " + file.string());
  return {std::istreambuf_iterator<char>(stream), {}};
}

/// The bike of the worked example, 16/43 against 15/43: the one for tests that expect certain numbers, so
/// that the sample profiles are free to change.
inline Profile workedExample() {
  const Result<Profile> profile = loadProfile(sourceFolder() / "tests/reference/data/club-600.bike.json");
  if (!profile) throw std::runtime_error("the worked example does not open: " + profile.problem().path);
  return *profile;
}

/// The required keys and nothing else.
inline Json minimalProfile() {
  return Json::parse(R"({
    "format": "layshaft-bike",
    "version": 1,
    "name": "Bare",
    "bike": { "engine": { "rev_limit_rpm": 10000 } },
    "stock": {
      "front_teeth": 16,
      "rear_teeth": 43,
      "rear_tyre": "180/55ZR17",
      "primary_ratio": 1.955,
      "gear_ratios": [2.71, 2.06, 1.24]
    }
  })");
}

/// Every key of the format, on every level, filled in.
inline Json everyKeyProfile() {
  return Json::parse(contentsOf(sourceFolder() / "tests/core/data/every-key.bike.json"));
}

/// The text of a profile with one value, named by its JSON pointer, put in or replaced.
inline std::string with(const std::string& pointer, Json value, Json profile = minimalProfile()) {
  profile[Json::json_pointer(pointer)] = std::move(value);
  return profile.dump();
}

/// The same for what no JSON value can hold, such as NaN: `raw` goes into the text as it is.
inline std::string withRaw(const std::string& pointer, std::string_view raw,
                           Json profile = minimalProfile()) {
  std::string text = with(pointer, "@here@", std::move(profile));
  constexpr std::string_view kPlace = "\"@here@\"";
  return text.replace(text.find(kPlace), kPlace.size(), raw);
}

inline std::string without(const std::string& pointer, Json profile = minimalProfile()) {
  const Json::json_pointer at(pointer);
  profile.at(at.parent_pointer()).erase(at.back());
  return profile.dump();
}

/// For texts that must be fine; a test that uses it with another one ends there.
inline Profile profileFrom(std::string_view text) {
  Result<Profile> result = readProfile(text);
  if (!result) throw std::runtime_error("refused: " + testing::PrintToString(result.problem()));
  return std::move(result).value();
}

/// For texts that must be refused.
inline Problem problemOf(std::string_view text) {
  Result<Profile> result = readProfile(text);
  if (result) throw std::runtime_error("not refused: " + std::string(text.substr(0, 400)));
  return result.problem();
}

inline Plan planFor(const Json& profile) {
  return plan(profileFrom(profile.dump()));
}

inline Setup bareSetup() {
  return profileFrom(minimalProfile().dump()).stock;
}

inline Teeth front(int teeth) {
  return Teeth::front(teeth).value();
}
inline Teeth rear(int teeth) {
  return Teeth::rear(teeth).value();
}
inline TyreSize tyre(std::string_view text) {
  Result<TyreSize> result = TyreSize::parse(text);
  if (!result) throw std::runtime_error("no tyre size: " + std::string(text));
  return std::move(result).value();
}
inline GearRatios gears(std::vector<double> ratios) {
  return GearRatios::make(std::move(ratios)).value();
}

}  // namespace layshaft::test
