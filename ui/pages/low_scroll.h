// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QScrollArea>

namespace layshaft::ui {

/// Takes over what a page shows: in a low window it keeps its least height and is scrolled; at the side
/// nothing is cut.
QScrollArea* scrolledWhereLow(QWidget* content);

}  // namespace layshaft::ui
