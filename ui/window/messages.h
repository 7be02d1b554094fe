// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QMessageBox>
#include <QString>

#include "core/problem.h"

/// Message boxes whose text is text: names and paths out of files are never taken for markup.
namespace layshaft::ui {

void inform(QWidget* parent, const QString& title, const QString& text);
void warn(QWidget* parent, const QString& title, const QString& text);

/// Asks; Escape and closing the box stand for Cancel or No where they are among the buttons.
QMessageBox::StandardButton ask(QWidget* parent, QMessageBox::Icon icon, const QString& title,
                                const QString& text, QMessageBox::StandardButtons buttons,
                                QMessageBox::StandardButton usual);

/// Warns that something is wrong with a file, by its name.
void warnOfFile(QWidget* parent, const QString& title, const QString& file, const QString& why);
void warnOfFile(QWidget* parent, const QString& title, const QString& file, const Problem& problem);

}  // namespace layshaft::ui
