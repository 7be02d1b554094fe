// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QStringList>
#include <optional>

namespace layshaft::ui {

/// The figure in the desktop's locale, or a dash where there is none.
QString figureText(const std::optional<double>& value, int decimals);

/// Two figures and their difference, ready to show: where the difference, rounded, is not that of the rounded
/// figures, all three get up to `more` decimals above `decimals`. The difference shown is that of the figures
/// shown, so that the three agree; without enough decimals it is off by up to one in the last place.
struct ComparedTexts {
  QString stock, proposed;
  QString difference;  ///< empty where they read alike or one is missing
};
ComparedTexts comparedTexts(const std::optional<double>& stock, const std::optional<double>& proposed,
                            int decimals, int more = 1);

/// A row of a table of figures: name, stock, proposed, difference.
QStringList figureRow(const QString& name, const std::optional<double>& stock,
                      const std::optional<double>& proposed, int decimals);

}  // namespace layshaft::ui
