// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/dialog_body.h"

#include <QApplication>
#include <QDialog>
#include <QScreen>
#include <QScrollBar>
#include <algorithm>

#include "ui/editors/whole_in_view.h"

namespace layshaft::ui {

DialogBody::DialogBody(QWidget* parent) : QScrollArea(parent), column_(nullptr) {
  auto* content = new QWidget;
  column_ = new QVBoxLayout(content);
  column_->setContentsMargins(0, 0, 0, 0);
  setWidget(content);
  setWidgetResizable(true);
  setFrameShape(QFrame::NoFrame);
  setFocusPolicy(Qt::NoFocus);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  connect(qApp, &QApplication::focusChanged, this, [this](QWidget*, QWidget* now) {
    if (now && widget()->isAncestorOf(now)) showWhole(*this, *now);
  });
}

QSize DialogBody::minimumSizeHint() const {
  constexpr int kLines = 4;
  return {widget()->minimumSizeHint().width() + verticalScrollBar()->sizeHint().width(),
          kLines * fontMetrics().lineSpacing()};
}

QSize DialogBody::sizeHint() const {
  const QSize wanted = widget()->sizeHint();
  const int high = widget()->hasHeightForWidth() ? widget()->heightForWidth(wanted.width()) : wanted.height();
  return {wanted.width() + verticalScrollBar()->sizeHint().width(), std::max(high, wanted.height())};
}

void DialogBody::resizeEvent(QResizeEvent* event) {
  QScrollArea::resizeEvent(event);
  if (const QWidget* focus = QApplication::focusWidget(); focus && widget()->isAncestorOf(focus))
    showWhole(*this, *focus);
}

void fitToScreen(QDialog& dialog) {
  constexpr QSize kFrame(16, 48);  // px: borders and title bar, which are not known before it is shown
  dialog.resize(dialog.sizeHint().boundedTo(dialog.screen()->availableSize() - kFrame));
}

}  // namespace layshaft::ui
