// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/profile_file/json_text.h"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <optional>
#include <set>
#include <vector>

#include "core/profile_file.h"
#include "core/short_text.h"
#include "core/utf8.h"

namespace layshaft::profile_file {
namespace {

using Json = nlohmann::ordered_json;

std::string lineAndColumn(std::string_view text, std::size_t position) {
  const std::string_view before = text.substr(0, std::min(position, text.size()));
  const auto line = 1 + std::count(before.begin(), before.end(), '\n');
  const auto lastBreak = before.rfind('\n');
  const auto column = before.size() - (lastBreak == std::string_view::npos ? 0 : lastBreak + 1);
  return "line " + std::to_string(line) + ", column " + std::to_string(std::max<std::size_t>(column, 1));
}

/// If the text the parser stumbled over is a spelling of not-a-number or infinity, that spelling.
std::optional<std::string> notFiniteWord(std::string_view text, std::size_t position) {
  const auto isWord = [](char c) {
    return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') || c == '-' || c == '+';
  };
  std::size_t begin = std::min(position, text.size());
  while (begin > 0 && isWord(text[begin - 1])) --begin;
  std::size_t end = begin;
  while (end < text.size() && isWord(text[end])) ++end;
  const std::string word(text.substr(begin, end - begin));
  std::string plain;
  for (char c : word)
    if (c != '-' && c != '+') plain += static_cast<char>(c >= 'A' && c <= 'Z' ? c - 'A' + 'a' : c);
  if (plain == "nan" || plain == "inf" || plain == "infinity") return word;
  return std::nullopt;
}

/// Builds the value while the text is walked once, so that what is wrong is found with the key path it is at.
/// The library's own builder looks through all keys of an object for each new one; here a set of them is at
/// hand.
class Builder : public nlohmann::json_sax<Json> {
 public:
  explicit Builder(std::string_view text) : text_(text) {}

  Json root;
  std::optional<Problem> problem;

  bool null() override { return add(nullptr); }
  bool boolean(bool value) override { return add(value); }
  bool number_integer(number_integer_t value) override { return add(value); }
  bool number_unsigned(number_unsigned_t value) override { return add(value); }
  bool number_float(number_float_t value, const string_t&) override { return add(value); }
  bool string(string_t& value) override { return add(std::move(value)); }
  bool binary(binary_t&) override { return false; }  // not in JSON text

  bool start_object(std::size_t) override { return open(Json::object()); }
  bool start_array(std::size_t) override { return open(Json::array()); }
  bool end_object() override { return close(); }
  bool end_array() override { return close(); }

  bool key(string_t& name) override {
    Level& level = levels_.back();
    level.key = name;
    if (level.seen.insert(name).second) return true;
    return fail({.kind = Problem::Kind::DuplicateKey, .path = path()});
  }

  bool parse_error(std::size_t position, const std::string&,
                   const nlohmann::detail::exception& error) override {
    if (!levels_.empty() && !levels_.back().isObject()) ++levels_.back().index;
    constexpr int kNumberOverflow = 406;
    if (error.id == kNumberOverflow)
      return fail({.kind = Problem::Kind::NotFinite, .path = path(), .given = "a number too large to hold"});
    if (auto word = notFiniteWord(text_, position > 0 ? position - 1 : 0))
      return fail({.kind = Problem::Kind::NotFinite, .path = path(), .given = *word});
    return fail({.kind = Problem::Kind::NotJson, .given = lineAndColumn(text_, position)});
  }

 private:
  struct Level {
    Json* container;  ///< stays where it is: what holds it gets nothing new before it is closed
    std::string key;
    std::set<std::string> seen;
    long index = -1;
    bool isObject() const { return container->is_object(); }
  };

  Json& place(Json value) {
    if (levels_.empty()) return root = std::move(value);
    Level& level = levels_.back();
    if (level.isObject()) {
      appendMember(*level.container, level.key, std::move(value));
      return static_cast<Json::object_t::Container&>(level.container->get_ref<Json::object_t&>())
          .back()
          .second;
    }
    ++level.index;
    level.container->push_back(std::move(value));
    return level.container->back();
  }
  bool add(Json value) {
    place(std::move(value));
    return true;
  }
  bool open(Json empty) {
    if (levels_.size() >= kDeepestProfileNesting)
      return fail({.kind = Problem::Kind::TooDeep, .high = kDeepestProfileNesting});
    levels_.push_back({.container = &place(std::move(empty)), .key = {}, .seen = {}});
    return true;
  }
  bool close() {
    levels_.pop_back();
    return true;
  }
  bool fail(Problem found) {
    problem = std::move(found);
    return false;
  }
  std::string path() const {
    std::string text;
    for (const Level& level : levels_) {
      if (level.isObject()) {
        if (!text.empty()) text += '.';
        text += shortText(level.key);
      } else {
        text += '[' + std::to_string(std::max(level.index, 0L)) + ']';
      }
    }
    return text;
  }

  std::string_view text_;
  std::vector<Level> levels_;
};

bool isPlain(const Json& value) {
  return !value.is_structured();
}

/// Fits on one line: a list of plain values, or an object of a few plain values inside a list.
bool inOneLine(const Json& value, bool insideList) {
  if (!value.is_structured()) return true;
  const bool flat = std::all_of(value.begin(), value.end(), isPlain);
  return flat && (value.is_array() || value.empty() || (insideList && value.size() <= 5));
}

void append(std::string& out, const Json& value, int depth, bool insideList) {
  if (value.is_binary()) {  // see verbatim
    const auto& bytes = value.get_binary();
    out.append(bytes.begin(), bytes.end());
    return;
  }
  if (isPlain(value)) {
    out += value.dump();
    return;
  }
  const bool object = value.is_object();
  const bool oneLine = inOneLine(value, insideList);
  const std::string indent(static_cast<std::size_t>(depth + 1) * 2, ' ');
  out += object ? '{' : '[';
  bool first = true;
  for (const auto& item : value.items()) {
    if (!first) out += ',';
    if (oneLine)
      out += first && !object ? "" : " ";
    else
      out += '\n' + indent;
    if (object) out += Json(item.key()).dump() + ": ";
    append(out, item.value(), depth + 1, !object);
    first = false;
  }
  if (oneLine)
    out += object && !first ? " " : "";
  else
    out += '\n' + indent.substr(2);
  out += object ? '}' : ']';
}

}  // namespace

Result<Json> parseJson(std::string_view text) {
  if (text.size() > kLargestProfileBytes)
    return Problem{.kind = Problem::Kind::FileTooLarge, .high = static_cast<double>(kLargestProfileBytes)};
  if (const auto bad = firstBadUtf8(text))
    return Problem{.kind = Problem::Kind::NotUtf8, .given = std::to_string(*bad)};
  // The parser would take a NUL byte for the end of the text and lose what is behind it.
  if (const auto nul = text.find('\0'); nul != std::string_view::npos)
    return Problem{.kind = Problem::Kind::NotJson, .given = lineAndColumn(text, nul + 1)};
  Builder builder(text);
  if (!Json::sax_parse(text.begin(), text.end(), &builder))
    return builder.problem.value_or(Problem{.kind = Problem::Kind::NotJson});
  return std::move(builder.root);
}

void appendMember(Json& object, std::string key, Json value) {
  // An ordered object is a list of members; adding through it as an object would look through all of them.
  auto& members = static_cast<Json::object_t::Container&>(object.get_ref<Json::object_t&>());
  members.emplace_back(std::move(key), std::move(value));
}

Json verbatim(const std::string& json) {
  return Json::binary({json.begin(), json.end()});
}

std::string prettyJson(const Json& value) {
  std::string out;
  append(out, value, 0, false);
  out += '\n';
  return out;
}

std::string shortened(const Json& value) {
  return value.is_structured() ? (value.is_array() ? "a list" : "an object") : shortText(value.dump());
}

}  // namespace layshaft::profile_file
