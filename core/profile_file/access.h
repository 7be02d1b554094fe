// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "core/bike/profile.h"
#include "core/limits.h"
#include "core/problem.h"

/// Single fields of a profile by the key path that they have in the file, as in `bike.chassis.mass_kg`,
/// `stock.rear_sprocket.mass_kg` or `pins[0].links`. Where a field lives and what is allowed for it comes
/// from the list of keys that the reader and the writer share.
namespace layshaft {

/// What is allowed for a field.
struct FieldRule {
  enum class Type {
    Number,
    Whole,   ///< a whole number
    Wholes,  ///< a list of whole numbers
    Flag,
    Word,  ///< one of a few
    Text,
    TyreSize,
    Block,  ///< an object, or a list that has a rule of its own: has no value here
  };
  Type type{};
  bool needed = false;
  Limit limit{};                          ///< of a number, of each in a list, of a text's length
  int most = 0;                           ///< entries of a list
  std::vector<std::string_view> words{};  ///< the choices as the file writes them
};

/// The value of a field in the unit of the file: nothing, a number (whole or not), a flag, a word, text or
/// tyre size, or a list of whole numbers.
using FieldValue = std::variant<std::monostate, double, bool, std::string, std::vector<int>>;

/// What is allowed for a field; nothing if no profile has it.
std::optional<FieldRule> fieldRule(std::string_view key);

/// The value of a field; nothing if it is not given or no such field is there.
FieldValue fieldValue(const Profile& profile, std::string_view key);

/// Gives a field a value, or none; the profile stays as it is if that is refused. The block that the field
/// lives in is made if it is not there yet, but not for the sake of no value. What is put there is typical of
/// nothing any more. A sprocket or a surface of
/// which nothing is said any more is taken out: it follows stock, or the usual figures, again. Other blocks
/// stay, as they do when a file with an empty one is opened. Problems: WrongType, OutOfRange, NotWhole,
/// NotOneOf, WrongCount, those of a tyre size, MissingKey for a field that must have a value or is not there.
std::optional<Problem> setField(Profile& profile, std::string_view key, const FieldValue& value);

}  // namespace layshaft
