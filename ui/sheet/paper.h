// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFont>
#include <QPainter>
#include <QPalette>
#include <QRectF>
#include <QString>

/// What all sheets write with: black on white, in points.
namespace layshaft::ui {

QPalette paperPalette();
QFont paperFont(double points, bool bold = false);

/// How high a text is when broken to a width, also within words that are wider: whatever a file holds stays
/// on the paper. A line high where it is empty.
double brokenHeight(const QFont& font, const QString& text, double width);
/// Draws it from the upper left corner of `area` on, with the painter's pen.
void drawBroken(QPainter& painter, const QFont& font, const QRectF& area, const QString& text,
                Qt::Alignment alignment = Qt::AlignLeft);

}  // namespace layshaft::ui
