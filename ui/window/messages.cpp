// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/messages.h"

#include "ui/document/file_name.h"
#include "ui/words/problem_words.h"

namespace layshaft::ui {

QMessageBox::StandardButton ask(QWidget* parent, QMessageBox::Icon icon, const QString& title,
                                const QString& text, QMessageBox::StandardButtons buttons,
                                QMessageBox::StandardButton usual) {
  QMessageBox box(icon, title, text, buttons, parent);
  box.setTextFormat(Qt::PlainText);
  box.setDefaultButton(usual);
  return static_cast<QMessageBox::StandardButton>(box.exec());
}

void inform(QWidget* parent, const QString& title, const QString& text) {
  ask(parent, QMessageBox::Information, title, text, QMessageBox::Ok, QMessageBox::Ok);
}

void warn(QWidget* parent, const QString& title, const QString& text) {
  ask(parent, QMessageBox::Warning, title, text, QMessageBox::Ok, QMessageBox::Ok);
}

void warnOfFile(QWidget* parent, const QString& title, const QString& file, const QString& why) {
  warn(parent, title, QStringLiteral("%1: %2.").arg(shownFile(file), why));
}

void warnOfFile(QWidget* parent, const QString& title, const QString& file, const Problem& problem) {
  warnOfFile(parent, title, file, sentence(problem));
}

}  // namespace layshaft::ui
