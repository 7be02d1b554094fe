// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QColor>
#include <QPalette>
#include <vector>

namespace layshaft::ui {

/// What stands out enough: WCAG 2.1, success criteria 1.4.3 (text) and 1.4.11 (lines, outlines, marks).
constexpr double kTextContrast = 4.5;
constexpr double kLineContrast = 3.0;

/// Contrast ratio of two opaque colours, 1 to 21: WCAG 2.1, "contrast ratio" and "relative luminance".
double contrast(const QColor& a, const QColor& b);

/// From `from` (share 0) to `to` (share 1), opaque; what `from` lets through shows `to`.
QColor mixed(const QColor& from, const QColor& to, double share);

/// The colour itself where it has the `least` contrast to each ground; else darkened or lightened only as far
/// as that takes. Where no colour has it to all grounds, the one that comes nearest.
QColor standingOut(const QColor& colour, const std::vector<QColor>& grounds, double least);

/// Text that stands back and is still read: mixed from the text's own colour and its first ground, as near to
/// that ground as each of them allows.
QColor mutedText(const QColor& text, const std::vector<QColor>& grounds);

/// The ring around what has the focus: the palette's highlight, where it is seen on `ground`.
QColor focusColour(const QPalette& palette, QPalette::ColorRole ground = QPalette::Window);

/// The same palette with every text readable on its ground, whatever a desktop has chosen. It has a
/// placeholder colour for muted text, and what is disabled is muted too.
QPalette readable(QPalette palette);

/// The ground of what is marked as a whole: the window's with a touch of the highlight.
QColor markedGround(const QPalette& palette);

}  // namespace layshaft::ui
