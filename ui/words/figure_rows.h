// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QStringList>
#include <optional>

namespace layshaft::ui {

/// The figure in the desktop's locale, or a dash where there is none.
QString figureText(const std::optional<double>& value, int decimals);

/// The difference of two figures as they are read: 239 → 247 is +8 whatever was rounded away. Empty where
/// they read alike.
QString differenceAsRead(double from, double to, int decimals);

/// A row of a table of figures: name, stock, proposed, and the difference of the figures as they are read,
/// empty where they read alike.
QStringList figureRow(const QString& name, const std::optional<double>& stock,
                      const std::optional<double>& proposed, int decimals);

}  // namespace layshaft::ui
