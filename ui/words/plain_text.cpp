// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/plain_text.h"

#include <QTextDocument>

namespace layshaft::ui {
namespace {

/// U+202A to U+202E and U+2066 to U+2069 (The Unicode Standard, annex 9).
bool turnsDirection(QChar c) {
  return (c.unicode() >= 0x202A && c.unicode() <= 0x202E) || (c.unicode() >= 0x2066 && c.unicode() <= 0x2069);
}

}  // namespace

QString onOneLine(const QString& text) {
  QString plain;
  plain.reserve(text.size());
  for (const QChar c : text) {
    if (turnsDirection(c)) continue;
    const bool control =
        c.category() == QChar::Other_Control || c == QChar::LineSeparator || c == QChar::ParagraphSeparator;
    plain += control ? QLatin1Char(' ') : c;
  }
  return plain;
}

QString shownName(const std::string& name) {
  return onOneLine(QString::fromStdString(name));
}

QString capitalised(QString text) {
  if (!text.isEmpty()) text[0] = text[0].toUpper();
  return text;
}

QString asMarkup(const QString& text) {
  return Qt::mightBeRichText(text) ? text.toHtmlEscaped() : text;
}

}  // namespace layshaft::ui
