// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace layshaft::ui {

class MainWindow;

void addEditMenu(MainWindow& window);
/// What is done to the bike as a whole: details, gears, pins, proposal and stock.
void addBikeMenu(MainWindow& window);

}  // namespace layshaft::ui
