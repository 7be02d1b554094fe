// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cmath>
#include <cstdint>
#include <map>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <vector>

#include "core/bike/words.h"
#include "core/limits.h"
#include "core/profile_file/fields.h"
#include "core/profile_file/json_text.h"

namespace layshaft::profile_file {

using Json = nlohmann::ordered_json;

/// A whole number is written without a point, as people write it.
inline Json numberJson(double x) {
  constexpr double kExactWhole = 9007199254740992.0;  // 2^53: above it not every whole number is a double
  if (x == std::floor(x) && std::abs(x) < kExactWhole) return static_cast<std::int64_t>(x);
  return x;
}

/// Puts members into one JSON object; the twin of `Reader`, called by the same `fields`. Nothing is checked
/// here: what is in a profile was checked on its way in.
class Writer {
 public:
  explicit Writer(Json& object) : object_(object) {
    if (object_.is_null()) object_ = Json::object();
  }

  void number(const char* key, const std::optional<double>& member, const Limit&) {
    if (member) object_[key] = numberJson(*member);
  }
  void need(const char* key, double member, const Limit&) { object_[key] = numberJson(member); }
  void whole(const char* key, const std::optional<int>& member, const Limit&) {
    if (member) object_[key] = *member;
  }
  void needWhole(const char* key, int member, const Limit&) { object_[key] = member; }
  void flag(const char* key, const std::optional<bool>& member) {
    if (member) object_[key] = *member;
  }
  template <class Enum, std::size_t N>
  void word(const char* key, const std::optional<Enum>& member, const Words<Enum, N>& words) {
    if (member) needWord(key, *member, words);
  }
  template <class Enum, std::size_t N>
  void needWord(const char* key, Enum member, const Words<Enum, N>& words) {
    object_[key] = std::string(wordFor(member, words));
  }
  void needText(const char* key, const std::string& member, int) { object_[key] = member; }
  void optionalText(const char* key, const std::string& member, int) {
    if (!member.empty()) object_[key] = member;
  }

  void needDate(const char* key, const Date& member) { object_[key] = member.text(); }

  template <class T>
  void object(const char* key, std::optional<T>& member) {
    if (member) needObject(key, *member);
  }
  template <class T>
  void needObject(const char* key, T& member) {
    Writer child(object_[key]);
    fields(child, member);
  }
  void shared(const char* key, const SharedPath& member) {
    // The field list is shared with the reader, which fills what it is given; writing only looks.
    if (member) needObject(key, const_cast<TrackPath&>(*member));
  }
  template <class T, class Fields>
  void list(const char* key, std::vector<T>& member, int, Fields entryFields) {
    if (member.empty()) return;
    Json& array = object_[key] = Json::array();
    for (T& entry : member) {
      Writer child(array.emplace_back());
      entryFields(child, entry);
    }
  }
  template <class T, class Fields>
  void entries(const char* key, const Entries<T>& member, int, Fields entryFields) {
    if (member.empty()) return;
    Json& array = object_[key] = Json::array();
    for (std::size_t i = 0; i < member.size(); ++i) {
      Writer child(array.emplace_back());
      // The field list is shared with the reader, which fills what it is given; writing only looks.
      entryFields(child, const_cast<T&>(member[i]));
    }
  }
  void texts(const char* key, const std::vector<std::string>& member, int, int) {
    if (!member.empty()) object_[key] = member;
  }
  void wholes(const char* key, const std::vector<int>& member, const Limit&, int) {
    if (!member.empty()) object_[key] = member;
  }

  void numbers(const char* key, const std::vector<double>& member, const Limit&, int) {
    if (member.empty()) return;
    Json& array = object_[key] = Json::array();
    for (const double x : member) array.push_back(numberJson(x));
  }
  void needNumbers(const char* key, const std::vector<double>& member, const Limit& limit, int, int most) {
    numbers(key, member, limit, most);
  }
  void lengthRange(const char* key, const std::optional<LengthRange>& member, const Limit&) {
    if (member) object_[key] = Json::array({numberJson(member->lowMm), numberJson(member->highMm)});
  }

  template <class Make>
  void teeth(const char* key, const std::optional<Teeth>& member, Make, const Limit&) {
    if (member) object_[key] = member->count();
  }
  void tyre(const char* key, const std::optional<TyreSize>& member) {
    if (member) object_[key] = member->text();
  }
  void gearRatios(const char* key, const std::optional<GearRatios>& member) {
    if (!member) return;
    Json& array = object_[key] = Json::array();
    for (const double ratio : member->values()) array.push_back(numberJson(ratio));
  }
  void gearTeeth(const char* key, const std::optional<GearTeeth>& member, const Limit&) {
    if (member) object_[key] = Json::array({member->driving, member->driven});
  }
  void teethOfGears(const char* key, const TeethOfGears& member, const Limit&, int) {
    if (member.empty()) return;
    Json& array = object_[key] = Json::array();
    for (const auto& teeth : member)
      array.push_back(teeth ? Json::array({teeth->driving, teeth->driven}) : Json(nullptr));
  }
  void torqueCurve(const char* key, const std::optional<TorqueCurve>& member) {
    if (!member) return;
    std::vector<TorquePoint> points = member->points();
    list(key, points, 0, [](auto& entry, TorquePoint& point) { fields(entry, point); });
  }
  void chainSize(const char* key, const std::optional<ChainSize>& member) {
    if (member) needChainSize(key, *member);
  }
  void needChainSize(const char* key, const ChainSize& member) { object_[key] = std::string(member.name); }
  void surfaces(const char* key, std::map<Surface, SurfaceValues>& known, const Extras& unknown) {
    if (known.empty() && unknown.empty()) return;
    Writer child(object_[key]);
    for (auto& [surface, values] : known)
      child.needObject(std::string(wordFor(surface, kSurfaceWords)).c_str(), values);
    child.rest(unknown);
  }

  /// What this version does not know is written as compactly as it was kept: indenting it could make the file
  /// many times as large.
  void rest(const Extras& extras) {
    for (const auto& [key, text] : extras) appendMember(object_, key, verbatim(text));
  }

 private:
  Json& object_;
};

}  // namespace layshaft::profile_file
