// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPalette>

#include "ui/document/preferences.h"

namespace layshaft::ui {

/// A calm palette of our own for the in-program switch; the desktop's is left as it is.
QPalette lightPalette();
QPalette darkPalette();
/// Applies the appearance to the whole program.
void applyAppearance(Appearance appearance);

}  // namespace layshaft::ui
