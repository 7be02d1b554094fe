// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cassert>
#include <cstddef>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace layshaft {

/// What was wrong with something a person or a file gave. The core states facts; `ui/wording` makes the
/// sentence.
struct Problem {
  enum class Kind {
    FileUnreadable,  ///< `given`: what the system said
    FileUnwritable,  ///< the same, of saving; the old file is as it was
    NotAFile,        ///< a folder, a pipe or a device
    FileTooLarge,    ///< `high`: the most bytes allowed
    NotUtf8,         ///< `given`: byte position of the first bad byte
    NotJson,         ///< `given`: "line L, column C"
    TooDeep,         ///< `high`: the deepest nesting allowed
    DuplicateKey,    ///< `path` names the key
    NotFinite,       ///< NaN, Infinity or a number too large for a double
    MissingKey,      ///< `path` names the key
    WrongType,       ///< `allowed`: one word for the type expected
    NotWhole,        ///< a fraction where only a whole number makes sense
    OutOfRange,      ///< `low`..`high`, in `unit`
    NotOneOf,        ///< `allowed`: the words that are
    WrongCount,      ///< a list with fewer than `low` or more than `high` entries
    NotFalling,      ///< `path` names the gear ratio that is not below the one before it
    NotRising,       ///< `path` names the curve point whose engine speed is not above the one before it
    BadTyreSize,     ///< not a size that is printed on tyres
    ImpossibleTyre,  ///< reads as a tyre size, but `part` ("width", "aspect", "rim") is outside `low`..`high`
    OtherRatio,      ///< gear teeth that make `low` where the ratio, at `below`, is `high`
    TorqueAllZero,   ///< a curve that never pulls
    NewerVersion,    ///< `high`: the newest version understood
    NotADate,        ///< not a day written as 2026-05-12
    NotASegment,     ///< `given`: which of length, radius, angle and speed a track's segment has, as keys
    NameTaken,       ///< `given`: the name, which another entry of the list has
    QuoteLeftOpen,   ///< of a table: a quoted cell that no quote ends
    OnlyOneOf,       ///< what cannot stand beside what is at `below`
    NotARecording,   ///< `allowed`: the kinds of recordings that are read
    NotXml,          ///< the first place that is not well-formed
    DocumentType,    ///< XML that declares what it consists of, entities included; recordings have no need to
    NotATime,        ///< `allowed`: how a time is written
    BadChecksum,     ///< `allowed`: the sum that the sentence has
    MissingColumn,   ///< `allowed`: the titles one of which is needed
    ColumnTwice,     ///< `path`: the title of the second one
    WrongFormat,     ///< `allowed`: the format word expected
  };

  Kind kind{};
  std::string path;   ///< key path as in `stock.gear_ratios[2]`, empty for the whole file
  std::string given;  ///< the value as it was written, shortened
  double low = 0.0;
  double high = 0.0;
  std::string unit;  ///< of `low` and `high`, empty for bare numbers
  std::string part;
  std::vector<std::string> allowed;
  std::string below;  ///< key path of the other value that sets `high` (or `low`), if one does
  // Where it stands in a text, as people count, from 1; 0 where that is not told. In a table the column is
  // the number of the cell, elsewhere of the character.
  std::size_t line = 0;
  std::size_t column = 0;

  bool operator==(const Problem&) const = default;
};

/// A value, or the reason why there is none.
template <class T>
class Result {
 public:
  Result(T value) : state_(std::in_place_index<0>, std::move(value)) {}
  Result(Problem problem) : state_(std::in_place_index<1>, std::move(problem)) {}

  bool ok() const { return state_.index() == 0; }
  explicit operator bool() const { return ok(); }

  const T& value() const& {
    assert(ok());
    return std::get<0>(state_);
  }
  T&& value() && {
    assert(ok());
    return std::get<0>(std::move(state_));
  }
  const T* operator->() const { return &value(); }
  const T& operator*() const& { return value(); }

  const Problem& problem() const {
    assert(!ok());
    return std::get<1>(state_);
  }

 private:
  std::variant<T, Problem> state_;
};

}  // namespace layshaft
