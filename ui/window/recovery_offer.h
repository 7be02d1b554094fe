// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

namespace layshaft::ui {

class MainWindow;

/// Asks, copy by copy, what to do with the work that a crashed program left behind.
void offerRecovery(MainWindow& first);

}  // namespace layshaft::ui
