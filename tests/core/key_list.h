// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "core/profile_file/fields.h"

namespace layshaft::test {

/// One key of the profile file, as the core has it.
struct Key {
  enum class Type { Number, Whole, Flag, Word, Text, TyreSize, Object, List };
  Type type{};
  bool needed = false;
  Limit limit{};                     ///< of numbers; of a text's length and of a list's entries too
  std::vector<std::string> words{};  ///< the choices
  bool mayBeNull = false;            ///< as an entry of a list
};

/// By JSON pointer, with 0 for the entries of a list.
using Keys = std::map<std::string, Key>;

/// A third user of the field list beside the reader and the writer: notes every key instead of moving values.
class KeyLister {
 public:
  KeyLister(Keys& keys, std::string pointer) : keys_(keys), pointer_(std::move(pointer)) {}

  void number(const char* key, const std::optional<double>&, const Limit& limit) {
    note(key, {.type = Key::Type::Number, .limit = limit});
  }
  void need(const char* key, double, const Limit& limit) {
    note(key, {.type = Key::Type::Number, .needed = true, .limit = limit});
  }
  void whole(const char* key, const std::optional<int>&, const Limit& limit) {
    note(key, {.type = Key::Type::Whole, .limit = limit});
  }
  void needWhole(const char* key, int, const Limit& limit) {
    note(key, {.type = Key::Type::Whole, .needed = true, .limit = limit});
  }
  void flag(const char* key, const std::optional<bool>&) { note(key, {.type = Key::Type::Flag}); }
  template <class Enum, std::size_t N>
  void word(const char* key, const std::optional<Enum>&, const Words<Enum, N>& words) {
    noteWords(key, words, false);
  }
  template <class Enum, std::size_t N>
  void needWord(const char* key, Enum, const Words<Enum, N>& words) {
    noteWords(key, words, true);
  }
  void needText(const char* key, const std::string&, int longest) {
    note(key, {.type = Key::Type::Text, .needed = true, .limit = {1, static_cast<double>(longest)}});
  }
  void optionalText(const char* key, const std::string&, int longest) {
    note(key, {.type = Key::Type::Text, .limit = {0, static_cast<double>(longest)}});
  }

  template <class T>
  void object(const char* key, const std::optional<T>&) {
    T value{};
    note(key, {.type = Key::Type::Object});
    KeyLister child(keys_, at(key));
    profile_file::fields(child, value);
  }
  template <class T>
  void needObject(const char* key, T& value) {
    note(key, {.type = Key::Type::Object, .needed = true});
    KeyLister child(keys_, at(key));
    profile_file::fields(child, value);
  }
  void shared(const char* key, const SharedPath&) { object(key, std::optional<TrackPath>{}); }
  template <class T, class Fields>
  void list(const char* key, const std::vector<T>&, int most, Fields entryFields, int fewest = 0) {
    T value{};
    noteList(key, fewest, most);
    keys_[at(key) + "/0"] = {.type = Key::Type::Object};
    KeyLister entry(keys_, at(key) + "/0");
    entryFields(entry, value);
  }
  template <class T, class Fields>
  void entries(const char* key, const Entries<T>&, int most, Fields entryFields) {
    list(key, std::vector<T>{}, most, entryFields);
  }
  void needDate(const char* key, const Date&) {
    note(key, {.type = Key::Type::Text, .needed = true, .limit = {0, 0}});
  }
  void numbers(const char* key, const std::vector<double>&, const Limit& limit, int most) {
    noteList(key, 0, most);
    keys_[at(key) + "/0"] = {.type = Key::Type::Number, .limit = limit};
  }
  void needNumbers(const char* key, const std::vector<double>&, const Limit& limit, int fewest, int most) {
    noteList(key, fewest, most);
    keys_[at(key)].needed = true;
    keys_[at(key) + "/0"] = {.type = Key::Type::Number, .limit = limit};
  }
  void lengthRange(const char* key, const std::optional<LengthRange>&, const Limit& limit) {
    noteList(key, 2, 2);
    keys_[at(key) + "/0"] = {.type = Key::Type::Number, .limit = limit};
  }
  void texts(const char* key, const std::vector<std::string>&, int most, int longest) {
    noteList(key, 0, most);
    keys_[at(key) + "/0"] = {.type = Key::Type::Text, .limit = {1, static_cast<double>(longest)}};
  }
  void wholes(const char* key, const std::vector<int>&, const Limit& limit, int most) {
    noteList(key, 0, most);
    keys_[at(key) + "/0"] = {.type = Key::Type::Whole, .limit = limit};
  }

  /// The limits are inside the type: found by trying.
  template <class Make>
  void teeth(const char* key, const std::optional<Teeth>&, Make make, const Limit&) {
    Limit limit{0, 0};
    for (int count = 1000; count >= -1000; --count) {
      if (!make(count)) continue;
      if (limit.high == 0) limit.high = count;
      limit.low = count;
    }
    note(key, {.type = Key::Type::Whole, .limit = limit});
  }
  void tyre(const char* key, const std::optional<TyreSize>&) { note(key, {.type = Key::Type::TyreSize}); }
  void gearRatios(const char* key, const std::optional<GearRatios>&) {
    noteList(key, limits::kFewestGears, limits::kMostGears);
    keys_[at(key) + "/0"] = {.type = Key::Type::Number, .limit = limits::kGearRatio};
  }
  void gearTeeth(const char* key, const std::optional<GearTeeth>&, const Limit& limit) {
    noteList(key, 2, 2);
    keys_[at(key) + "/0"] = {.type = Key::Type::Whole, .limit = limit};
  }
  void teethOfGears(const char* key, const TeethOfGears&, const Limit& limit, int most) {
    noteList(key, 0, most);
    keys_[at(key) + "/0"] = {.type = Key::Type::List, .limit = {2, 2}, .mayBeNull = true};
    keys_[at(key) + "/0/0"] = {.type = Key::Type::Whole, .limit = limit};
  }
  void torqueCurve(const char* key, const std::optional<TorqueCurve>&) {
    list(
        key, std::vector<TorquePoint>{}, limits::kMostCurvePoints,
        [](KeyLister& entry, TorquePoint& point) { profile_file::fields(entry, point); },
        limits::kFewestCurvePoints);
  }
  void chainSize(const char* key, const std::optional<ChainSize>&) { noteChainSizes(key, false); }
  void needChainSize(const char* key, const ChainSize&) { noteChainSizes(key, true); }
  void surfaces(const char* key, const std::map<Surface, SurfaceValues>&, const Extras&) {
    note(key, {.type = Key::Type::Object});
    KeyLister child(keys_, at(key));
    for (const auto& entry : kSurfaceWords)
      child.object(std::string(entry.second).c_str(), std::optional<SurfaceValues>{});
  }
  void rest(const Extras&) {}

 private:
  std::string at(const char* key) const { return pointer_ + "/" + key; }
  void note(const char* key, Key entry) { keys_[at(key)] = std::move(entry); }
  void noteList(const char* key, int fewest, int most) {
    note(key, {.type = Key::Type::List, .limit = {static_cast<double>(fewest), static_cast<double>(most)}});
  }
  template <class Enum, std::size_t N>
  void noteWords(const char* key, const Words<Enum, N>& words, bool needed) {
    Key entry{.type = Key::Type::Word, .needed = needed};
    for (const auto& choice : words) entry.words.emplace_back(choice.second);
    note(key, std::move(entry));
  }
  void noteChainSizes(const char* key, bool needed) {
    Key entry{.type = Key::Type::Word, .needed = needed};
    for (const ChainSize& size : kChainSizes) entry.words.emplace_back(size.name);
    note(key, std::move(entry));
  }

  Keys& keys_;
  std::string pointer_;
};

/// Every key of a profile but `format` and `version`.
inline Keys keysOfTheCore() {
  Keys keys;
  KeyLister root(keys, "");
  Bike bike;
  SetupChange stock;
  const Setup anySetup{Teeth::front(16).value(),
                       Teeth::rear(43).value(),
                       TyreSize::parse("180/55-17").value(),
                       1.0,
                       GearRatios::make({1.0}).value(),
                       {}};
  Profile profile{.name = {}, .notes = {}, .bike = bike, .stock = anySetup};
  root.needText("name", "", limits::kLongestName);
  root.optionalText("notes", "", limits::kLongestNotes);
  root.optionalText("customer", "", limits::kLongestName);
  root.needObject("bike", bike);
  root.needObject("stock", stock);
  for (const char* key : {"front_teeth", "rear_teeth", "rear_tyre", "primary_ratio"})
    keys.at(std::string("/stock/") + key).needed = true;
  root.object("proposed", std::optional<SetupChange>{});
  profile_file::lists(root, profile);
  return keys;
}

/// Where every-key.bike.json has a key: what excludes each other stands in entries of its own there.
inline std::string whereFilled(std::string pointer) {
  const std::pair<std::string, std::string> moved[] = {
      {"/tracks/0/path", "/tracks/1/path"},
      {"/tracks/0/segments/0/radius_m", "/tracks/0/segments/1/radius_m"},
      {"/tracks/0/segments/0/angle_deg", "/tracks/0/segments/1/angle_deg"},
      {"/tracks/0/segments/0/corner_speed_kmh", "/tracks/0/segments/2/corner_speed_kmh"}};
  for (const auto& [from, to] : moved)
    if (pointer.starts_with(from)) pointer.replace(0, from.size(), to);
  return pointer;
}

/// The same keys by where every-key.bike.json has them.
inline Keys keysWhereFilled() {
  Keys keys;
  for (auto& [pointer, key] : keysOfTheCore()) keys[whereFilled(pointer)] = key;
  return keys;
}

/// /bike/engine/torque_curve/0/rpm as the core's problems name it: bike.engine.torque_curve[0].rpm.
inline std::string keyPath(const std::string& pointer) {
  std::string path;
  for (std::size_t begin = 1; begin <= pointer.size();) {
    const std::size_t end = std::min(pointer.find('/', begin), pointer.size());
    const std::string part = pointer.substr(begin, end - begin);
    const bool index = !part.empty() && part.find_first_not_of("0123456789") == std::string::npos;
    if (index)
      path += "[" + part + "]";
    else
      path += (path.empty() ? "" : ".") + part;
    begin = end + 1;
  }
  return path;
}

}  // namespace layshaft::test
