// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

namespace layshaft::ui {

/// A gear as the trade says it: "1st" … "10th".
QString gearOrdinal(int gear);

}  // namespace layshaft::ui
