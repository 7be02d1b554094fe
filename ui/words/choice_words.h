// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <optional>
#include <string_view>
#include <vector>

#include "core/bike/words.h"

/// The file's words for choices, such as `wet_asphalt` or `aluminium`, in the user's words.
namespace layshaft::ui {

/// The user's word for one of the file; a word that nobody translates, as a chain's size, stays as it is.
QString choiceWord(std::string_view fileWord);

/// The same as it stands in a list to choose from, with a capital.
QString choiceOption(std::string_view fileWord);

/// Yes and no, as they stand in such a list.
QString flagOption(bool flag);

/// The words of a list of choices, with commas between.
QString choiceList(const std::vector<std::string_view>& fileWords);

/// Whether that was typed for a word of the file: the user's word, the file's or one that is as usual, such
/// as "alu"; capitals or not.
bool meansWord(const QString& typed, std::string_view fileWord);

template <class Enum, std::size_t N>
QString choiceList(const Words<Enum, N>& words) {
  std::vector<std::string_view> list;
  for (const auto& choice : words) list.push_back(choice.second);
  return choiceList(list);
}

/// The choice that was typed; nothing if it is none of them.
template <class Enum, std::size_t N>
std::optional<Enum> typedChoice(const QString& typed, const Words<Enum, N>& words) {
  for (const auto& [value, word] : words)
    if (meansWord(typed, word)) return value;
  return std::nullopt;
}

}  // namespace layshaft::ui
