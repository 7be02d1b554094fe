// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <charconv>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <vector>

#include "core/profile_file/access.h"
#include "core/profile_file/field_check.h"
#include "core/profile_file/fields.h"

namespace layshaft::profile_file {

/// What one call wants, and what it found.
struct Asked {
  std::string_view key;
  const FieldValue* put = nullptr;  ///< null: only look
  std::optional<FieldRule> rule{};
  FieldValue value{};
  std::optional<Problem> problem{};
};

/// The third user of the field list: looks for one key, and tells or changes what is there.
class Access {
  using Type = FieldRule::Type;

 public:
  Access(Asked& asked, std::string_view path) : asked_(asked), path_(path) {}

  void number(const char* key, std::optional<double>& member, const Limit& limit) {
    optional(key, {.type = Type::Number, .limit = limit}, member);
  }
  void number(const char* key, double& member, const Limit& limit) { need(key, member, limit); }
  void need(const char* key, double& member, const Limit& limit) {
    at(
        key, {.type = Type::Number, .needed = true, .limit = limit}, [&] { return FieldValue(member); },
        [&](const FieldValue& value) { member = std::get<double>(value); });
  }
  void whole(const char* key, std::optional<int>& member, const Limit& limit) {
    optional(key, {.type = Type::Whole, .limit = limit}, member);
  }
  void needWhole(const char* key, int& member, const Limit& limit) {
    at(
        key, {.type = Type::Whole, .needed = true, .limit = limit},
        [&] { return FieldValue(static_cast<double>(member)); },
        [&](const FieldValue& value) { member = static_cast<int>(std::get<double>(value)); });
  }
  void flag(const char* key, std::optional<bool>& member) { optional(key, {.type = Type::Flag}, member); }
  template <class Enum, std::size_t N>
  void word(const char* key, std::optional<Enum>& member, const Words<Enum, N>& words) {
    if (path_ != key) return;
    at(
        key, wordRule(words, false),
        [&] { return member ? FieldValue(std::string(wordFor(*member, words))) : FieldValue(); },
        [&](const FieldValue& value) {
          const auto* text = std::get_if<std::string>(&value);
          member = text ? fromWord(*text, words) : std::nullopt;
        });
  }
  template <class Enum, std::size_t N>
  void needWord(const char* key, Enum& member, const Words<Enum, N>& words) {
    if (path_ != key) return;
    at(
        key, wordRule(words, true), [&] { return FieldValue(std::string(wordFor(member, words))); },
        [&](const FieldValue& value) {
          member = fromWord(std::get<std::string>(value), words).value_or(member);
        });
  }
  void needText(const char* key, std::string& member, int longest) { text(key, member, 1, longest); }
  void optionalText(const char* key, std::string& member, int longest) { text(key, member, 0, longest); }

  template <class T>
  void object(const char* key, std::optional<T>& member) {
    block(key, false);
    const auto below = pathBelow(key);
    if (!below) return;
    T made{};
    Access child(asked_, *below);
    fields(child, member ? *member : made);
    if (!asked_.put || asked_.problem) return;
    constexpr bool kNothingIsNone = std::is_same_v<T, SprocketDetails> || std::is_same_v<T, SurfaceValues>;
    if (!member && made != T{})
      member = std::move(made);
    else if (kNothingIsNone && member == T{})
      member.reset();
  }
  template <class T>
  void needObject(const char* key, T& member) {
    block(key, true);
    if (const auto below = pathBelow(key)) {
      Access child(asked_, *below);
      fields(child, member);
    }
  }
  /// The parts of a profile that are always there, in the file or not.
  template <class T, class Fields>
  void part(const char* key, T& member, bool needed, Fields partFields) {
    block(key, needed);
    if (const auto below = pathBelow(key)) {
      Access child(asked_, *below);
      partFields(child, member);
    }
  }
  template <class T, class Fields>
  void list(const char* key, std::vector<T>& member, int, Fields entryFields) {
    block(key, false);
    const auto index = indexBehind(key);
    if (!index) return;
    T none{};
    Access child(asked_, below_);
    if (*index < member.size()) return entryFields(child, member[*index]);
    entryFields(child, none);
    if (asked_.put) asked_.rule.reset();  // no such entry to change
  }
  /// Entries are whole: none of their fields has a value on its own.
  template <class T, class Fields>
  void entries(const char* key, const Entries<T>&, int, Fields) {
    block(key, false);
    if (!indexBehind(key)) return;
    asked_.rule = FieldRule{.type = Type::Block};
    if (asked_.put) asked_.problem = refusal(asked_.key, *asked_.rule, *asked_.put);
  }
  /// A path is whole, as an entry is.
  void shared(const char* key, const SharedPath&) {
    block(key, false);
    if (!pathBelow(key)) return;
    asked_.rule = FieldRule{.type = Type::Block};
    if (asked_.put) asked_.problem = refusal(asked_.key, *asked_.rule, *asked_.put);
  }
  void texts(const char* key, const std::vector<std::string>&, int, int) { block(key, false); }
  void wholes(const char* key, std::vector<int>& member, const Limit& limit, int most) {
    at(
        key, {.type = Type::Wholes, .limit = limit, .most = most},
        [&] { return member.empty() ? FieldValue() : FieldValue(member); },
        [&](const FieldValue& value) {
          const auto* list = std::get_if<std::vector<int>>(&value);
          member = list ? *list : std::vector<int>();
        });
  }

  template <class Make>
  void teeth(const char* key, std::optional<Teeth>& member, Make make, const Limit& limit) {
    at(
        key, {.type = Type::Whole, .limit = limit},
        [&] { return member ? FieldValue(static_cast<double>(member->count())) : FieldValue(); },
        [&](const FieldValue& value) {
          const auto* count = std::get_if<double>(&value);
          member = count ? std::optional(*make(static_cast<int>(*count))) : std::nullopt;
        });
  }
  template <class Make>
  void teeth(const char* key, Teeth& member, Make make, const Limit& limit) {
    at(
        key, {.type = Type::Whole, .needed = true, .limit = limit},
        [&] { return FieldValue(static_cast<double>(member.count())); },
        [&](const FieldValue& value) { member = *make(static_cast<int>(std::get<double>(value))); });
  }
  void tyre(const char* key, std::optional<TyreSize>& member) {
    at(
        key, {.type = Type::TyreSize}, [&] { return member ? FieldValue(member->text()) : FieldValue(); },
        [&](const FieldValue& value) {
          const auto* size = std::get_if<std::string>(&value);
          member = size ? std::optional(*TyreSize::parse(*size)) : std::nullopt;
        });
  }
  void tyre(const char* key, TyreSize& member) {
    at(
        key, {.type = Type::TyreSize, .needed = true}, [&] { return FieldValue(member.text()); },
        [&](const FieldValue& value) { member = *TyreSize::parse(std::get<std::string>(value)); });
  }
  void gearRatios(const char* key, const std::optional<GearRatios>&) { block(key, false); }
  void gearRatios(const char* key, const GearRatios&) { block(key, false); }
  void gearTeeth(const char* key, const std::optional<GearTeeth>&, const Limit&) { block(key, false); }
  void teethOfGears(const char* key, const TeethOfGears&, const Limit&, int) { block(key, false); }
  void torqueCurve(const char* key, const std::optional<TorqueCurve>&) { block(key, false); }
  void chainSize(const char* key, std::optional<ChainSize>& member) {
    if (path_ != key) return;
    at(
        key, sizeRule(false), [&] { return member ? FieldValue(std::string(member->name)) : FieldValue(); },
        [&](const FieldValue& value) {
          const auto* name = std::get_if<std::string>(&value);
          member = name ? layshaft::chainSize(*name) : std::nullopt;
        });
  }
  void needChainSize(const char* key, ChainSize& member) {
    if (path_ != key) return;
    at(
        key, sizeRule(true), [&] { return FieldValue(std::string(member.name)); },
        [&](const FieldValue& value) {
          member = layshaft::chainSize(std::get<std::string>(value)).value_or(member);
        });
  }
  void needDate(const char* key, const Date&) { block(key, true); }
  void numbers(const char* key, const std::vector<double>&, const Limit&, int) { block(key, false); }
  void lengthRange(const char* key, const std::optional<LengthRange>&, const Limit&) { block(key, false); }
  void surfaces(const char* key, std::map<Surface, SurfaceValues>& known, const Extras&) {
    block(key, false);
    const auto below = pathBelow(key);
    if (!below) return;
    for (const auto& [surface, word] : kSurfaceWords) {
      const auto found = known.find(surface);
      auto values = found == known.end() ? std::nullopt : std::optional(found->second);
      Access child(asked_, *below);
      child.object(std::string(word).c_str(), values);
      if (!asked_.put) continue;
      if (values)
        known[surface] = *values;
      else
        known.erase(surface);
    }
  }
  void rest(const Extras&) {}

 private:
  /// Tells or changes the field, if it is this one.
  template <class Get, class Set>
  void at(const char* key, FieldRule rule, Get get, Set set) {
    if (path_ != key) return;
    asked_.rule = std::move(rule);
    if (!asked_.put)
      asked_.value = get();
    else if (asked_.problem = refusal(asked_.key, *asked_.rule, *asked_.put); !asked_.problem)
      set(*asked_.put);
  }
  template <class T>
  void optional(const char* key, FieldRule rule, std::optional<T>& member) {
    using Kept = std::conditional_t<std::is_same_v<T, bool>, bool, double>;
    at(
        key, std::move(rule), [&] { return member ? FieldValue(static_cast<Kept>(*member)) : FieldValue(); },
        [&](const FieldValue& value) {
          const auto* kept = std::get_if<Kept>(&value);
          member = kept ? std::optional(static_cast<T>(*kept)) : std::nullopt;
        });
  }
  void text(const char* key, std::string& member, int shortest, int longest) {
    at(
        key,
        {.type = Type::Text,
         .needed = shortest > 0,
         .limit = {static_cast<double>(shortest), static_cast<double>(longest)}},
        [&] { return member.empty() ? FieldValue() : FieldValue(member); },
        [&](const FieldValue& value) {
          const auto* words = std::get_if<std::string>(&value);
          member = words ? *words : std::string();
        });
  }
  void block(const char* key, bool needed) {
    at(
        key, {.type = Type::Block, .needed = needed}, [] { return FieldValue(); }, [](const FieldValue&) {});
  }
  template <class Enum, std::size_t N>
  static FieldRule wordRule(const Words<Enum, N>& words, bool needed) {
    FieldRule rule{.type = Type::Word, .needed = needed};
    for (const auto& choice : words) rule.words.push_back(choice.second);
    return rule;
  }
  static FieldRule sizeRule(bool needed) {
    FieldRule rule{.type = Type::Word, .needed = needed};
    for (const ChainSize& size : kChainSizes) rule.words.push_back(size.name);
    return rule;
  }

  /// What of the path lies below this key, if the key is on the way.
  std::optional<std::string_view> pathBelow(std::string_view key) const {
    if (path_.size() <= key.size() || !path_.starts_with(key) || path_[key.size()] != '.')
      return std::nullopt;
    return path_.substr(key.size() + 1);
  }
  /// The index that follows a list's key; `below_` is what follows it.
  std::optional<std::size_t> indexBehind(std::string_view key) {
    if (path_.size() <= key.size() || !path_.starts_with(key) || path_[key.size()] != '[')
      return std::nullopt;
    const char* end = path_.data() + path_.size();
    std::size_t index = 0;
    const auto [behind, error] = std::from_chars(path_.data() + key.size() + 1, end, index);
    if (error != std::errc{} || end - behind < 2 || behind[0] != ']' || behind[1] != '.') return std::nullopt;
    below_ = path_.substr(static_cast<std::size_t>(behind + 2 - path_.data()));
    return index;
  }

  Asked& asked_;
  std::string_view path_;
  std::string_view below_;
};

}  // namespace layshaft::profile_file
