// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

class QCoreApplication;

namespace layshaft::ui {

/// Lets the program's own texts tell one thing from several: the sources have the plural only. Once for each
/// application, before the catalogue of another language, which is then asked first.
void installEnglish(QCoreApplication& application);

}  // namespace layshaft::ui
