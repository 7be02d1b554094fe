// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/profile_file/field_check.h"

#include <algorithm>
#include <cmath>

#include "core/number_text.h"
#include "core/short_text.h"

namespace layshaft::profile_file {
namespace {

using Type = FieldRule::Type;

std::string given(const FieldValue& value) {
  if (const auto* number = std::get_if<double>(&value)) return numberText(*number);
  if (const auto* flag = std::get_if<bool>(&value)) return *flag ? "true" : "false";
  if (const auto* text = std::get_if<std::string>(&value)) return shortText(*text);
  return {};
}

Problem outOfRange(std::string_view key, std::string what, const Limit& limit) {
  return {.kind = Problem::Kind::OutOfRange,
          .path = std::string(key),
          .given = std::move(what),
          .low = limit.low,
          .high = limit.high,
          .unit = limit.unit};
}

std::optional<Problem> refusedNumber(std::string_view key, double x, const FieldRule& rule) {
  if (rule.type == Type::Whole && x != std::floor(x))
    return Problem{.kind = Problem::Kind::NotWhole, .path = std::string(key), .given = numberText(x)};
  if (!rule.limit.contains(x)) return outOfRange(key, numberText(x), rule.limit);
  return std::nullopt;
}

std::optional<Problem> refusedText(std::string_view key, const std::string& text, const FieldRule& rule) {
  if (rule.type == Type::Text) {
    const auto characters = std::count_if(
        text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; });
    Limit longest = rule.limit;
    longest.unit = "characters";
    if (longest.contains(static_cast<double>(characters))) return std::nullopt;
    return outOfRange(key, std::to_string(characters), longest);
  }
  if (rule.type == Type::TyreSize) {
    auto tyre = TyreSize::parse(text);
    if (tyre) return std::nullopt;
    Problem problem = tyre.problem();
    problem.path = key;
    return problem;
  }
  if (std::find(rule.words.begin(), rule.words.end(), text) != rule.words.end()) return std::nullopt;
  return Problem{.kind = Problem::Kind::NotOneOf,
                 .path = std::string(key),
                 .given = shortText(text),
                 .allowed = {rule.words.begin(), rule.words.end()}};
}

std::optional<Problem> refusedList(std::string_view key, const std::vector<int>& list,
                                   const FieldRule& rule) {
  if (static_cast<int>(list.size()) > rule.most)
    return Problem{.kind = Problem::Kind::WrongCount,
                   .path = std::string(key),
                   .given = std::to_string(list.size()),
                   .high = static_cast<double>(rule.most)};
  for (const int entry : list)
    if (!rule.limit.contains(entry)) return outOfRange(key, std::to_string(entry), rule.limit);
  return std::nullopt;
}

const char* kindName(Type type) {
  switch (type) {
    case Type::Number:
      return "number";
    case Type::Whole:
      return "whole number";
    case Type::Flag:
      return "true or false";
    case Type::Word:
    case Type::Text:
    case Type::TyreSize:
      return "text";
    case Type::Wholes:
      return "list";
    case Type::Block:
      break;
  }
  return "object";
}

}  // namespace

std::optional<Problem> refusal(std::string_view key, const FieldRule& rule, const FieldValue& value) {
  const bool isNumber = rule.type == Type::Number || rule.type == Type::Whole;
  const bool isText = rule.type == Type::Word || rule.type == Type::Text || rule.type == Type::TyreSize;
  if (std::holds_alternative<std::monostate>(value) && rule.type != Type::Block) {
    if (!rule.needed) return std::nullopt;
    return Problem{.kind = Problem::Kind::MissingKey, .path = std::string(key)};
  }
  if (const auto* x = std::get_if<double>(&value); x && isNumber) return refusedNumber(key, *x, rule);
  if (const auto* text = std::get_if<std::string>(&value); text && isText)
    return refusedText(key, *text, rule);
  if (const auto* list = std::get_if<std::vector<int>>(&value); list && rule.type == Type::Wholes)
    return refusedList(key, *list, rule);
  if (std::holds_alternative<bool>(value) && rule.type == Type::Flag) return std::nullopt;
  return Problem{.kind = Problem::Kind::WrongType,
                 .path = std::string(key),
                 .given = given(value),
                 .allowed = {kindName(rule.type)}};
}

}  // namespace layshaft::profile_file
