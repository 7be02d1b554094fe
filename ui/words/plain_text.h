// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <string>

/// Names that come from files are text and nothing else, wherever they are shown.
namespace layshaft::ui {

/// The text on one line and free of control characters: whatever a file holds, a terminal or a message obeys
/// none of it. Characters that turn the direction of writing are left out, too.
QString onOneLine(const QString& text);

/// A name out of a profile, as it may be shown.
QString shownName(const std::string& name);

/// The text with a capital at its start.
QString capitalised(QString text);

/// For places that take markup where it looks like some, such as tool tips: the same text, as markup.
QString asMarkup(const QString& text);

}  // namespace layshaft::ui
