// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/import/nmea_sentence.h"

#include <algorithm>
#include <cctype>
#include <chrono>
#include <cmath>
#include <utility>

#include "core/date.h"
#include "core/import/number_problem.h"
#include "core/import/time_text.h"
#include "core/number_text.h"
#include "core/short_text.h"

namespace layshaft {
namespace {

constexpr double kMinutesPerDegree = 60.0;

std::string hexadecimal(unsigned byte) {
  constexpr std::string_view kDigits = "0123456789ABCDEF";
  return {kDigits[byte >> 4U & 0xFU], kDigits[byte & 0xFU]};
}

std::string inCapitals(std::string_view text) {
  std::string capitals(text);
  std::transform(capitals.begin(), capitals.end(), capitals.begin(),
                 [](unsigned char c) { return static_cast<char>(std::toupper(c)); });
  return capitals;
}

std::string withColons(std::string_view clock) {
  constexpr std::size_t kShortest = 6;
  if (clock.size() < kShortest) return {};
  return std::string(clock.substr(0, 2)) + ':' + std::string(clock.substr(2, 2)) + ':' +
         std::string(clock.substr(4));
}

}  // namespace

std::optional<NmeaSentence> NmeaSentence::in(std::string_view line, std::size_t lineNumber) {
  constexpr std::size_t kName = 5;  // two letters of the talker, three of the sentence
  const auto dollar = line.find('$');
  if (dollar == std::string_view::npos) return std::nullopt;
  std::string_view body = line.substr(dollar + 1);
  const std::string_view type = body.substr(std::min<std::size_t>(2, body.size()), 3);
  if ((type != "RMC" && type != "GGA") || body.size() <= kName || body[kName] != ',') return std::nullopt;
  NmeaSentence sentence;
  sentence.line_ = line;
  sentence.lineNumber_ = lineNumber;
  sentence.type_ = type;
  const auto star = body.find('*');
  if (star != std::string_view::npos) sentence.found_ = inCapitals(withoutBlanks(body.substr(star + 1)));
  body = withoutBlanks(body.substr(0, star));
  unsigned sum = 0;
  for (const char c : body) sum ^= static_cast<unsigned char>(c);
  sentence.expected_ = hexadecimal(sum);
  while (sentence.count_ < kMostFields) {
    const auto comma = body.find(',');
    sentence.fields_[sentence.count_++] = body.substr(0, comma);
    if (comma == std::string_view::npos) break;
    body.remove_prefix(comma + 1);
  }
  return sentence;
}

Problem NmeaSentence::badChecksum() const {
  const auto star = line_.find('*');
  return {.kind = Problem::Kind::BadChecksum,
          .given = shortText(found_),
          .allowed = {expected_},
          .line = lineNumber_,
          .column = (star == std::string_view::npos ? line_.size() : star + 1) + 1};
}

Problem NmeaSentence::at(std::size_t index, Problem problem) const {
  problem.line = lineNumber_;
  const std::string_view text = field(index);
  problem.column =
      (text.data() == nullptr ? line_.size() : static_cast<std::size_t>(text.data() - line_.data())) + 1;
  if (problem.given.empty()) problem.given = shortText(text);
  return problem;
}

Result<double> NmeaSentence::degrees(std::size_t index, std::string_view signs, double most) const {
  const char* name = signs == "NS" ? "latitude" : "longitude";
  constexpr double kHundred = 100.0;
  const Limit written{0.0, most * kHundred, "ddmm"};
  const auto number = numberWithin(field(index), written, name);
  if (!number) return at(index, number.problem());
  const double whole = std::floor(*number / kHundred), minutes = *number - whole * kHundred;
  const double degrees = whole + minutes / kMinutesPerDegree;
  if (minutes >= kMinutesPerDegree || degrees > most)
    return at(index,
              {.kind = Problem::Kind::OutOfRange, .path = name, .high = written.high, .unit = written.unit});
  const std::string_view half = field(index + 1);
  if (half.size() != 1 || signs.find(half) == std::string_view::npos)
    return at(index + 1, {.kind = Problem::Kind::NotOneOf,
                          .path = name,
                          .allowed = {std::string(signs.substr(0, 1)), std::string(signs.substr(1))}});
  return half == signs.substr(0, 1) ? degrees : -degrees;
}

Result<double> NmeaSentence::timeOfDayS(std::size_t index) const {
  const auto seconds = secondsFromClock(withColons(field(index)));
  if (!seconds)
    return at(index, {.kind = Problem::Kind::NotATime, .path = "time", .allowed = {"hhmmss.sss"}});
  return *seconds;
}

Result<double> NmeaSentence::midnightS(std::size_t index) const {
  constexpr int kFirstYear = 80;  // the system's clock begins in 1980
  const std::string_view text = field(index);
  const auto part = [&](std::size_t from) {
    const auto number = text.size() == 6 ? numberFromText(text.substr(from, 2)) : std::nullopt;
    return number ? static_cast<int>(*number) : -1;
  };
  const int year = part(4);
  const auto date =
      year < 0 ? std::nullopt : Date::make((year >= kFirstYear ? 1900 : 2000) + year, part(2), part(0));
  const auto seconds = date ? secondsFromMoment(date->text() + "T00:00:00Z") : std::nullopt;
  if (!seconds) return at(index, {.kind = Problem::Kind::NotATime, .path = "date", .allowed = {"ddmmyy"}});
  return *seconds;
}

}  // namespace layshaft
