// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPalette>

#include "ui/document/preferences.h"

namespace layshaft::ui {

/// A calm palette of our own for the in-program switch.
QPalette lightPalette();
QPalette darkPalette();
/// Applies the appearance to the whole program.
void applyAppearance(Appearance appearance);
/// Whatever the palette is now, makes it readable where it is not: after the desktop has changed it.
void keepReadable();

}  // namespace layshaft::ui
