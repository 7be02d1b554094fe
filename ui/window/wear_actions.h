// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <cstddef>
#include <optional>

#include "core/bike/records.h"
#include "ui/words/wear_book.h"

class QWidget;

namespace layshaft::ui {

class MainWindow;

/// Asks why an entry no longer counts, and gives today's day to it; nothing if nobody will say.
std::optional<Struck> askWhyStruck(QWidget* parent, const QString& entry);

/// Leads through measuring and writes down what was found.
void measureWear(MainWindow& window, const WearBook& book);
/// Strikes a measurement through, once a reason is given.
void strikeMeasurement(MainWindow& window, std::size_t index);

}  // namespace layshaft::ui
