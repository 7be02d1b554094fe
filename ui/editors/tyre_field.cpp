// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/tyre_field.h"

#include "ui/editors/calm_spin_box.h"
#include "ui/wording.h"

namespace layshaft::ui {

TyreField::TyreField(QWidget* parent) : QLineEdit(parent) {
  setMaxLength(60);
  setAcceptDrops(false);  // a file dropped here is for the window
  connect(this, &QLineEdit::textEdited, this, [this](const QString& text) {
    if (const auto tyre = TyreSize::parse(text.toStdString())) emit tyreTyped(text.trimmed());
  });
  connect(this, &QLineEdit::editingFinished, this, [this] {
    const auto tyre = TyreSize::parse(text().toStdString());
    if (tyre) return;
    emit refused(sentence(tyre.problem()));
    setText(shown_);
  });
}

bool TyreField::event(QEvent* event) {
  return leftToWindow(*event) ? false : QLineEdit::event(event);
}

void TyreField::showTyre(const TyreSize& tyre) {
  shown_ = QString::fromStdString(tyre.text());
  // What is being typed stays as the user writes it until it is a size or the field is left.
  const bool halfTyped = hasFocus() && isModified() && !TyreSize::parse(text().toStdString());
  if (!halfTyped && text().trimmed() != shown_) setText(shown_);
}

}  // namespace layshaft::ui
