// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QIODevice>
#include <QString>
#include <optional>

#include "core/plan.h"
#include "ui/words/units_shown.h"

namespace layshaft::ui {

enum class PictureFormat { Png, Pdf };

/// Draws readout, sawtooth and speed per gear on one landscape page. Needs a QApplication, on any platform.
/// Nothing if it worked, else what went wrong.
std::optional<QString> writeReportPage(const Plan& plan, const UnitsShown& units, PictureFormat format,
                                       QIODevice& out);

}  // namespace layshaft::ui
