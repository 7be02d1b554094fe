// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/spoken_headline.h"

#include <QAbstractSpinBox>
#include <QApplication>
#include <QComboBox>
#include <QLineEdit>
#include <utility>

#include "ui/editors/refusal_bubble.h"

namespace layshaft::ui {
namespace {

bool isField(const QWidget* widget) {
  return qobject_cast<const QAbstractSpinBox*>(widget) || qobject_cast<const QLineEdit*>(widget) ||
         qobject_cast<const QComboBox*>(widget);
}

}  // namespace

SpokenHeadline::SpokenHeadline(QWidget& window) : QObject(&window), window_(window) {
  connect(qApp, &QApplication::focusChanged, this, &SpokenHeadline::release);
}

void SpokenHeadline::say(const QString& headline) {
  const bool first = headline_.isEmpty();
  if (std::exchange(headline_, headline) == headline || first) return;
  QWidget* field = QApplication::focusWidget();
  if (!isField(field) || field->window() != &window_ || RefusalBubble::describes(*field)) return;
  if (field_ != field) {
    field_ = field;
    own_ = field->accessibleDescription();
  }
  field->setAccessibleDescription(headline);
}

void SpokenHeadline::release(QWidget* before, QWidget*) {
  // Another may have described the field meanwhile, with what it refused: that is not ours to take away.
  if (field_ && before == field_ && field_->accessibleDescription() == headline_)
    field_->setAccessibleDescription(own_);
  field_ = nullptr;
}

}  // namespace layshaft::ui
