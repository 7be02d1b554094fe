// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace layshaft::ui {

class MainWindow;

void addHelpMenu(MainWindow& window);

}  // namespace layshaft::ui
