// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cmath>
#include <map>
#include <nlohmann/json.hpp>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "core/bike/words.h"
#include "core/limits.h"
#include "core/number_text.h"
#include "core/problem.h"
#include "core/profile_file/fields.h"
#include "core/profile_file/json_text.h"

namespace layshaft::profile_file {

using Json = nlohmann::ordered_json;

/// Fills members from one JSON object. The first problem is kept and everything after it is skipped; keys
/// that no call asked for end up in `rest`.
class Reader {
 public:
  Reader(const Json& object, std::string path, std::optional<Problem>& problem)
      : object_(object), path_(std::move(path)), problem_(problem) {
    if (!object_.is_object()) fail(Problem::Kind::WrongType, path_, object_, {"object"});
  }

  void number(const char* key, std::optional<double>& member, const Limit& limit) {
    if (const Json* value = find(key)) member = numberFrom(*value, at(key), limit);
  }
  void need(const char* key, double& member, const Limit& limit) {
    if (const Json* value = findNeeded(key)) member = numberFrom(*value, at(key), limit).value_or(member);
  }
  void whole(const char* key, std::optional<int>& member, const Limit& limit) {
    if (const Json* value = find(key)) member = wholeFrom(*value, at(key), limit);
  }
  void needWhole(const char* key, int& member, const Limit& limit) {
    if (const Json* value = findNeeded(key)) member = wholeFrom(*value, at(key), limit).value_or(member);
  }
  void flag(const char* key, std::optional<bool>& member) {
    const Json* value = find(key);
    if (!value) return;
    if (!value->is_boolean()) return fail(Problem::Kind::WrongType, at(key), *value, {"true or false"});
    member = value->get<bool>();
  }
  template <class Enum, std::size_t N>
  void word(const char* key, std::optional<Enum>& member, const Words<Enum, N>& words) {
    if (const Json* value = find(key)) member = wordFrom(*value, at(key), words);
  }
  template <class Enum, std::size_t N>
  void needWord(const char* key, Enum& member, const Words<Enum, N>& words) {
    if (const Json* value = findNeeded(key)) member = wordFrom(*value, at(key), words).value_or(member);
  }
  void needText(const char* key, std::string& member, int longest) {
    const Json* value = findNeeded(key);
    if (!value) return;
    text(*value, at(key), member, 1, longest);
  }
  void optionalText(const char* key, std::string& member, int longest) {
    if (const Json* value = find(key)) text(*value, at(key), member, 0, longest);
  }

  void needDate(const char* key, Date& member) {
    const Json* value = findNeeded(key);
    if (!value) return;
    if (!value->is_string()) return fail(Problem::Kind::WrongType, at(key), *value, {"text"});
    const auto date = Date::parse(value->get_ref<const std::string&>());
    if (!date) return fail(Problem::Kind::NotADate, at(key), *value, {});
    member = *date;
  }

  template <class T>
  void object(const char* key, std::optional<T>& member) {
    const Json* value = find(key);
    if (!value) return;
    Reader child(*value, at(key), problem_);
    fields(child, member.emplace());
  }
  template <class T>
  void needObject(const char* key, T& member) {
    const Json* value = findNeeded(key);
    if (!value) return;
    Reader child(*value, at(key), problem_);
    fields(child, member);
  }
  void shared(const char* key, SharedPath& member) {
    const Json* value = find(key);
    if (!value) return;
    TrackPath path;
    Reader child(*value, at(key), problem_);
    fields(child, path);
    if (!problem_) member = SharedPath(std::move(path));
  }
  template <class T, class Fields>
  void list(const char* key, std::vector<T>& member, int most, Fields entryFields) {
    const Json* value = find(key);
    if (!value || !isList(*value, at(key), most)) return;
    for (std::size_t i = 0; i < value->size() && !problem_; ++i) {
      Reader entry((*value)[i], at(key, i), problem_);
      entryFields(entry, member.emplace_back());
    }
  }
  template <class T, class Fields>
  void entries(const char* key, Entries<T>& member, int most, Fields entryFields) {
    std::vector<T> read;
    list(key, read, most, entryFields);
    for (T& entry : read) member.add(std::move(entry));
  }
  void texts(const char* key, std::vector<std::string>& member, int most, int longest) {
    const Json* value = find(key);
    if (!value || !isList(*value, at(key), most)) return;
    for (std::size_t i = 0; i < value->size() && !problem_; ++i)
      text((*value)[i], at(key, i), member.emplace_back(), 1, longest);
  }
  void wholes(const char* key, std::vector<int>& member, const Limit& limit, int most) {
    const Json* value = find(key);
    if (!value || !isList(*value, at(key), most)) return;
    for (std::size_t i = 0; i < value->size() && !problem_; ++i)
      member.push_back(wholeFrom((*value)[i], at(key, i), limit).value_or(0));
  }

  void numbers(const char* key, std::vector<double>& member, const Limit& limit, int most) {
    const Json* value = find(key);
    if (!value || !isList(*value, at(key), most)) return;
    for (std::size_t i = 0; i < value->size() && !problem_; ++i)
      member.push_back(numberFrom((*value)[i], at(key, i), limit).value_or(0));
  }
  void needNumbers(const char* key, std::vector<double>& member, const Limit& limit, int fewest, int most) {
    const Json* value = findNeeded(key);
    if (value && isList(*value, at(key), most, fewest)) numbers(key, member, limit, most);
  }
  /// `[low, high]`, not falling.
  void lengthRange(const char* key, std::optional<LengthRange>& member, const Limit& limit) {
    constexpr int kTwo = 2;
    std::vector<double> ends;
    const Json* value = find(key);
    if (!value || !isList(*value, at(key), kTwo, kTwo)) return;
    numbers(key, ends, limit, kTwo);
    if (problem_) return;
    if (ends[1] < ends[0]) return outOfRange(at(key, 1), (*value)[1], {ends[0], limit.high, limit.unit});
    member = LengthRange{ends[0], ends[1]};
  }

  template <class Make>
  void teeth(const char* key, std::optional<Teeth>& member, Make make, const Limit& limit) {
    const Json* value = find(key);
    if (!value) return;
    if (const auto count = wholeFrom(*value, at(key), limit)) take(make(*count), at(key), member);
  }
  void tyre(const char* key, std::optional<TyreSize>& member) {
    const Json* value = find(key);
    if (!value) return;
    if (!value->is_string()) return fail(Problem::Kind::WrongType, at(key), *value, {"text"});
    take(TyreSize::parse(value->get_ref<const std::string&>()), at(key), member);
  }
  void gearRatios(const char* key, std::optional<GearRatios>& member) {
    const Json* value = find(key);
    if (!value || !isList(*value, at(key), limits::kMostGears, limits::kFewestGears)) return;
    std::vector<double> ratios;
    for (std::size_t i = 0; i < value->size() && !problem_; ++i)
      ratios.push_back(numberFrom((*value)[i], at(key, i), limits::kGearRatio).value_or(0));
    if (!problem_) take(GearRatios::make(std::move(ratios)), at(key), member);
  }
  void gearTeeth(const char* key, std::optional<GearTeeth>& member, const Limit& limit) {
    if (const Json* value = find(key)) member = gearTeethFrom(*value, at(key), limit);
  }
  /// An entry may be null: the teeth of that gear are not known.
  void teethOfGears(const char* key, TeethOfGears& member, const Limit& limit, int most) {
    const Json* value = find(key);
    if (!value || !isList(*value, at(key), most)) return;
    for (std::size_t i = 0; i < value->size() && !problem_; ++i)
      if (!(*value)[i].is_null()) setTeethOf(member, i, gearTeethFrom((*value)[i], at(key, i), limit));
  }
  void torqueCurve(const char* key, std::optional<TorqueCurve>& member) {
    std::vector<TorquePoint> points;
    if (!find(key)) return;
    const Json& value = *find(key);
    if (!isList(value, at(key), limits::kMostCurvePoints, limits::kFewestCurvePoints)) return;
    list(key, points, limits::kMostCurvePoints,
         [](auto& entry, TorquePoint& point) { fields(entry, point); });
    if (!problem_) take(TorqueCurve::make(std::move(points)), at(key), member);
  }
  void chainSize(const char* key, std::optional<ChainSize>& member) {
    if (const Json* value = find(key)) member = chainSizeFrom(*value, at(key));
  }
  void needChainSize(const char* key, ChainSize& member) {
    if (const Json* value = findNeeded(key)) member = chainSizeFrom(*value, at(key)).value_or(member);
  }
  void surfaces(const char* key, std::map<Surface, SurfaceValues>& known, Extras& unknown) {
    const Json* value = find(key);
    if (!value) return;
    Reader child(*value, at(key), problem_);
    for (const auto& [surface, word] : kSurfaceWords) {
      std::optional<SurfaceValues> values;
      child.object(std::string(word).c_str(), values);
      if (values) known[surface] = *values;
    }
    child.rest(unknown);
  }

  /// Keys that were not asked for, as JSON text.
  void rest(Extras& extras) {
    if (problem_) return;
    for (const auto& item : object_.items())
      if (!asked_.contains(item.key())) extras.keep(item.key(), item.value().dump());
  }

  std::string at(const char* key) const { return path_.empty() ? key : path_ + "." + key; }
  void fail(Problem problem) {
    if (!problem_) problem_ = std::move(problem);
  }
  void missing(const char* key) { fail({.kind = Problem::Kind::MissingKey, .path = at(key)}); }

  /// The value of a key that is there and not null; marks the key as known.
  const Json* find(const char* key) {
    asked_.insert(key);
    if (problem_) return nullptr;
    const auto found = object_.find(key);
    if (found == object_.end() || found->is_null()) return nullptr;
    return &*found;
  }
  const Json* findNeeded(const char* key) {
    const Json* value = find(key);
    if (!value && !problem_) missing(key);
    return value;
  }

 private:
  std::string at(const char* key, std::size_t index) const {
    return at(key) + "[" + std::to_string(index) + "]";
  }

  void fail(Problem::Kind kind, std::string path, const Json& given, std::vector<std::string> allowed) {
    fail(Problem{
        .kind = kind, .path = std::move(path), .given = shortened(given), .allowed = std::move(allowed)});
  }
  void outOfRange(std::string path, const Json& given, const Limit& limit) {
    fail(Problem{.kind = Problem::Kind::OutOfRange,
                 .path = std::move(path),
                 .given = shortened(given),
                 .low = limit.low,
                 .high = limit.high,
                 .unit = limit.unit});
  }

  std::optional<double> numberFrom(const Json& value, std::string path, const Limit& limit) {
    if (!value.is_number()) {
      fail(Problem::Kind::WrongType, std::move(path), value, {"number"});
      return std::nullopt;
    }
    const double x = value.get<double>();
    if (!limit.contains(x)) {
      outOfRange(std::move(path), value, limit);
      return std::nullopt;
    }
    return x;
  }
  std::optional<int> wholeFrom(const Json& value, std::string path, const Limit& limit) {
    if (!value.is_number()) {
      fail(Problem::Kind::WrongType, std::move(path), value, {"whole number"});
      return std::nullopt;
    }
    const double x = value.get<double>();
    if (x != std::floor(x)) {
      fail(Problem::Kind::NotWhole, std::move(path), value, {});
      return std::nullopt;
    }
    if (!limit.contains(x)) {
      outOfRange(std::move(path), value, limit);
      return std::nullopt;
    }
    return static_cast<int>(x);
  }
  std::optional<GearTeeth> gearTeethFrom(const Json& value, const std::string& path, const Limit& limit) {
    constexpr int kTwo = 2;
    if (!isList(value, path, kTwo, kTwo)) return std::nullopt;
    const auto driving = wholeFrom(value[0], path + "[0]", limit);
    const auto driven = driving ? wholeFrom(value[1], path + "[1]", limit) : std::nullopt;
    return driven ? std::optional(GearTeeth{*driving, *driven}) : std::nullopt;
  }
  template <class Enum, std::size_t N>
  std::optional<Enum> wordFrom(const Json& value, std::string path, const Words<Enum, N>& words) {
    if (value.is_string())
      if (const auto found = fromWord(value.get_ref<const std::string&>(), words)) return found;
    std::vector<std::string> allowed;
    for (const auto& entry : words) allowed.emplace_back(entry.second);
    fail(Problem::Kind::NotOneOf, std::move(path), value, std::move(allowed));
    return std::nullopt;
  }
  std::optional<ChainSize> chainSizeFrom(const Json& value, std::string path) {
    if (value.is_string())
      if (const auto found = layshaft::chainSize(value.get_ref<const std::string&>())) return found;
    std::vector<std::string> allowed;
    for (const ChainSize& size : kChainSizes) allowed.emplace_back(size.name);
    fail(Problem::Kind::NotOneOf, std::move(path), value, std::move(allowed));
    return std::nullopt;
  }
  void text(const Json& value, const std::string& path, std::string& member, int shortest, int longest) {
    if (!value.is_string()) return fail(Problem::Kind::WrongType, path, value, {"text"});
    member = value.get<std::string>();
    const auto characters = std::count_if(
        member.begin(), member.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; });
    if (characters >= shortest && characters <= longest) return;
    fail(Problem{.kind = Problem::Kind::OutOfRange,
                 .path = path,
                 .given = std::to_string(characters),
                 .low = static_cast<double>(shortest),
                 .high = static_cast<double>(longest),
                 .unit = "characters"});
  }
  bool isList(const Json& value, std::string path, int most, int fewest = 0) {
    if (!value.is_array()) {
      fail(Problem::Kind::WrongType, std::move(path), value, {"list"});
      return false;
    }
    const auto size = static_cast<int>(value.size());
    if (size >= fewest && size <= most) return true;
    fail(Problem{.kind = Problem::Kind::WrongCount,
                 .path = std::move(path),
                 .given = std::to_string(size),
                 .low = static_cast<double>(fewest),
                 .high = static_cast<double>(most)});
    return false;
  }

  template <class T>
  void take(Result<T> result, const std::string& path, std::optional<T>& member) {
    if (result) {
      member = std::move(result).value();
      return;
    }
    Problem problem = result.problem();
    problem.path = path + problem.path;
    fail(std::move(problem));
  }

  const Json& object_;
  std::string path_;
  std::optional<Problem>& problem_;
  std::set<std::string> asked_;
};

}  // namespace layshaft::profile_file
