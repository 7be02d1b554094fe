// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>

#include "core/problem.h"

namespace layshaft {

/// A line with an NMEA 0183 sentence: its fields, and whether its checksum is right.
class NmeaSentence {
 public:
  /// Nothing if the line has no RMC or GGA.
  static std::optional<NmeaSentence> in(std::string_view line, std::size_t lineNumber);

  bool isRmc() const { return type_ == "RMC"; }
  bool whole() const { return found_ == expected_; }
  /// Where the checksum stands, and what it should be.
  Problem badChecksum() const;

  /// Empty if the sentence has no such field; field 0 is its name.
  std::string_view field(std::size_t index) const {
    return index < count_ ? fields_[index] : std::string_view();
  }
  /// The problem with its place, that of a field.
  Problem at(std::size_t index, Problem problem) const;

  /// Degrees of an angle written as degrees and minutes, dddmm.mmmm, with its half of the world in the next
  /// field, the positive one of `signs` first. Problems: WrongType, NotFinite, OutOfRange, NotOneOf.
  Result<double> degrees(std::size_t index, std::string_view signs, double most) const;
  /// Seconds since midnight of hhmmss.sss. Problem: NotATime.
  Result<double> timeOfDayS(std::size_t index) const;
  /// Seconds from 1970 to midnight of ddmmyy; the years are 1980 to 2079. Problem: NotATime.
  Result<double> midnightS(std::size_t index) const;

 private:
  static constexpr std::size_t kMostFields = 24;
  std::array<std::string_view, kMostFields> fields_;
  std::size_t count_ = 0;
  std::string_view line_, type_;
  std::size_t lineNumber_ = 0;
  std::string found_, expected_;  ///< checksums
};

}  // namespace layshaft
