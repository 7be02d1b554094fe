// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/readable_style.h"

#include <QApplication>
#include <QPainter>
#include <QStyleOption>
#include <vector>

#include "ui/charts/contrast.h"

namespace layshaft::ui {
namespace {

constexpr double kCorner = 2.0;  // px, as the style rounds its frames

std::vector<QColor> groundsOf(const QPalette& palette) {
  return {palette.color(QPalette::Window), palette.color(QPalette::Base)};
}

/// Of a box, a field or a button; another one while it has the focus.
QColor outlineOf(const QStyleOption& option, QStyle::State focused) {
  constexpr double kBack = 0.6;
  const QPalette& palette = option.palette;
  if ((option.state & focused) == focused)
    return standingOut(palette.color(QPalette::Highlight), groundsOf(palette), kLineContrast);
  const QColor ground = palette.color(QPalette::Window);
  return standingOut(mixed(palette.color(QPalette::WindowText), ground, kBack), groundsOf(palette),
                     kLineContrast);
}

void drawFrame(QPainter& painter, const QRectF& frame, const QColor& colour, double corner) {
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(QPen(colour, 1.0));
  painter.setBrush(Qt::NoBrush);
  // Upright and level lines lie on whole pixels.
  painter.drawRoundedRect(frame.adjusted(0.5, 0.5, -0.5, -0.5), corner, corner);
  painter.restore();
}

/// Where the style has the circle of a radio button.
void drawCircle(QPainter& painter, const QRect& box, const QColor& colour) {
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(QPen(colour, 1.0));
  painter.setBrush(Qt::NoBrush);
  const double radius = (box.width() + (box.width() + 1) % 2) / 2.0 - 1.0;
  painter.drawEllipse(QPointF(box.center() + QPoint(1, 1)), radius, radius);
  painter.restore();
}

void drawFocusRing(QPainter& painter, const QStyleOption& option) {
  // As elsewhere: who uses the mouse sees where it is.
  if (!(option.state & QStyle::State_KeyboardFocusChange)) return;
  std::vector<QColor> grounds = groundsOf(option.palette);
  const auto* focus = qstyleoption_cast<const QStyleOptionFocusRect*>(&option);
  if (focus && focus->backgroundColor.isValid()) grounds = {focus->backgroundColor};
  drawFrame(painter, option.rect,
            standingOut(option.palette.color(QPalette::Highlight), grounds, kLineContrast), 1.0);
}

/// The ground of a button that is held down for good: no neighbour that is not is taken for it.
QColor heldGround(const QPalette& palette) {
  std::vector<QColor> grounds = groundsOf(palette);
  // The style shades a button from its colour up to about half as light again.
  constexpr int kShadedPercent = 150;
  grounds.push_back(palette.color(QPalette::Button));
  grounds.push_back(palette.color(QPalette::Button).lighter(kShadedPercent));
  return standingOut(palette.color(QPalette::Highlight), grounds, kLineContrast);
}

void drawHeldGround(QPainter& painter, const QStyleOption& option) {
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(Qt::NoPen);
  painter.setBrush(heldGround(option.palette));
  painter.drawRoundedRect(QRectF(option.rect).adjusted(0.5, 1.5, -0.5, -0.5), kCorner, kCorner);
  painter.restore();
}

}  // namespace

ReadableStyle::ReadableStyle() : QProxyStyle(QStringLiteral("fusion")) {}

void ReadableStyle::drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                                  const QWidget* widget) const {
  if (element == PE_FrameFocusRect) return drawFocusRing(*painter, *option);
  QProxyStyle::drawPrimitive(element, option, painter, widget);
  constexpr State kByKeys = State_HasFocus | State_KeyboardFocusChange;
  switch (element) {
    case PE_IndicatorCheckBox:
    case PE_IndicatorItemViewItemCheck:
      return drawFrame(*painter, option->rect, outlineOf(*option, kByKeys), 0.0);
    case PE_IndicatorRadioButton:
      return drawCircle(*painter, option->rect, outlineOf(*option, kByKeys));
    case PE_FrameLineEdit:
      return drawFrame(*painter, option->rect, outlineOf(*option, State_HasFocus), kCorner);
    case PE_PanelButtonCommand:
      if (option->state & State_On) drawHeldGround(*painter, *option);
      return drawFrame(*painter, QRectF(option->rect).adjusted(0, 1, 0, 0), outlineOf(*option, kByKeys),
                       kCorner);
    default:
      return;
  }
}

void ReadableStyle::drawControl(ControlElement element, const QStyleOption* option, QPainter* painter,
                                const QWidget* widget) const {
  const auto* button = qstyleoption_cast<const QStyleOptionButton*>(option);
  if (element != CE_PushButtonLabel || !button || !(button->state & State_On))
    return QProxyStyle::drawControl(element, option, painter, widget);
  QStyleOptionButton held = *button;
  held.palette.setColor(QPalette::ButtonText, standingOut(button->palette.color(QPalette::HighlightedText),
                                                          {heldGround(button->palette)}, kTextContrast));
  QProxyStyle::drawControl(element, &held, painter, widget);
}

void ReadableStyle::drawComplexControl(ComplexControl control, const QStyleOptionComplex* option,
                                       QPainter* painter, const QWidget* widget) const {
  QProxyStyle::drawComplexControl(control, option, painter, widget);
  if (const auto* spin = qstyleoption_cast<const QStyleOptionSpinBox*>(option);
      control == CC_SpinBox && spin && spin->frame)
    drawFrame(*painter, QRectF(option->rect).adjusted(0, 1, 0, -1), outlineOf(*option, State_HasFocus),
              kCorner);
  if (const auto* combo = qstyleoption_cast<const QStyleOptionComboBox*>(option);
      control == CC_ComboBox && combo && combo->frame && combo->editable)
    drawFrame(*painter, option->rect, outlineOf(*option, State_HasFocus), kCorner);
}

void useReadableStyle() {
  if (QApplication::style()->inherits("QFusionStyle")) QApplication::setStyle(new ReadableStyle);
}

}  // namespace layshaft::ui
