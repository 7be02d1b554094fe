// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

class QCoreApplication;

namespace layshaft::app {

/// Lets the program, and the toolkit it is made with, speak the desktop's language as far as there are words
/// for it; English otherwise. Call once the application is there.
void installTranslations(QCoreApplication& application);

}  // namespace layshaft::app
