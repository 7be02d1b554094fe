// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/tyre_field.h"

#include "ui/editors/calm_spin_box.h"
#include "ui/words/problem_words.h"

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
  // The numbers stand at the front of a size: that end stays in view.
  connect(this, &QLineEdit::editingFinished, this, [this] { setCursorPosition(0); });
}

bool TyreField::event(QEvent* event) {
  if (isHalfTyped() && event->type() == QEvent::ShortcutOverride) {
    // The first undo takes back what is being typed here, not an edit of some other field.
    const auto& key = static_cast<QKeyEvent&>(*event);
    if (key.matches(QKeySequence::Undo) || key.key() == Qt::Key_Escape) {
      event->accept();
      return true;
    }
  }
  return leftToWindow(*event) ? false : QLineEdit::event(event);
}

void TyreField::keyPressEvent(QKeyEvent* event) {
  if (isHalfTyped() && (event->matches(QKeySequence::Undo) || event->key() == Qt::Key_Escape)) {
    setText(shown_);
    selectAll();
    return;
  }
  QLineEdit::keyPressEvent(event);
}

bool TyreField::isHalfTyped() const {
  return isModified() && text().trimmed() != shown_ && !TyreSize::parse(text().toStdString());
}

void TyreField::showTyre(const TyreSize& tyre) {
  shown_ = QString::fromStdString(tyre.text());
  // What is being typed stays as the user writes it until it is a size or the field is left.
  const bool halfTyped = hasFocus() && isHalfTyped();
  if (halfTyped || text().trimmed() == shown_) return;
  setText(shown_);
  setCursorPosition(0);
}

}  // namespace layshaft::ui
