// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/class_chooser.h"

#include "core/bike/words.h"
#include "ui/words/choice_words.h"

namespace layshaft::ui {

ClassChooser::ClassChooser(const QString& none, QWidget* parent) : CalmComboBox(parent) {
  addItem(none);
  for (const auto& entry : kBikeClassWords) addItem(choiceOption(entry.second));
}

std::optional<BikeClass> ClassChooser::chosen() const {
  if (currentIndex() <= 0) return std::nullopt;
  return kBikeClassWords[static_cast<std::size_t>(currentIndex() - 1)].first;
}

void ClassChooser::show(const std::optional<BikeClass>& bikeClass) {
  int index = 0;
  for (std::size_t i = 0; i < kBikeClassWords.size(); ++i)
    if (bikeClass == kBikeClassWords[i].first) index = static_cast<int>(i) + 1;
  setCurrentIndex(index);
}

}  // namespace layshaft::ui
