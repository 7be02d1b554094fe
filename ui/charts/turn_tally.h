// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFont>
#include <QPainter>
#include <QRectF>

#include "core/plan.h"
#include "ui/charts/palette.h"
#include "ui/charts/text_cache.h"

namespace layshaft::ui {

struct TallyStyle {
  const ChartPalette& colours;
  const QFont& font;
  const QFont& boldFont;
  TextCache& texts;
};

/// A sentence, in as many lines as it takes in that width, and two rows of discs, px.
double turnTallyHeight(const TallyStyle& style, const Plan& plan, double width);

/// Counts in discs how often the front sprocket turns for one turn of the rear wheel, stock above the
/// proposal: faint the whole turn, full what of it is done. `turn` is the rear wheel's, 0 to 1.
void paintTurnTally(QPainter& painter, const QRectF& area, const Plan& plan, double turn,
                    const TallyStyle& style);

}  // namespace layshaft::ui
