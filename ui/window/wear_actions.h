// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/words/wear_book.h"

namespace layshaft::ui {

class MainWindow;

/// Leads through measuring and writes down what was found.
void measureWear(MainWindow& window, const WearBook& book);

}  // namespace layshaft::ui
