// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/document/file_name.h"

#include <QDir>
#include <optional>

#include "ui/words/plain_text.h"

namespace layshaft::ui {
namespace {

constexpr char16_t kByteEscape = 0xDC00;  // + the byte: a surrogate that no well-formed text has by itself

bool isEscapedByte(QChar c) {
  return c.unicode() >= kByteEscape + 0x80 && c.unicode() <= kByteEscape + 0xFF;
}

/// The text that bytes are, if they are well-formed UTF-8.
std::optional<QString> wellFormed(const QByteArray& bytes) {
  const QString text = QString::fromUtf8(bytes);
  return text.toUtf8() == bytes ? std::optional(text) : std::nullopt;
}

}  // namespace

QString nameOf(const std::filesystem::path& file) {
  const QByteArray bytes = QByteArray::fromStdString(file.native());
  if (const auto whole = wellFormed(bytes)) return *whole;
  constexpr qsizetype kLongestLetter = 4;
  QString name;
  for (qsizetype i = 0, length = 0; i < bytes.size(); i += length) {
    std::optional<QString> letter;
    for (length = 1; length <= kLongestLetter && !letter; ++length) letter = wellFormed(bytes.mid(i, length));
    length = letter ? length - 1 : 1;
    name += letter.value_or(QChar(static_cast<char16_t>(kByteEscape + static_cast<unsigned char>(bytes[i]))));
  }
  return name;
}

std::filesystem::path pathOf(const QString& name) {
  std::string bytes;
  qsizetype from = 0;
  for (qsizetype i = 0; i <= name.size(); ++i) {
    const bool escaped =
        i < name.size() && isEscapedByte(name[i]) && (i == 0 || !name[i - 1].isHighSurrogate());
    if (i < name.size() && !escaped) continue;
    bytes += name.mid(from, i - from).toStdString();
    if (escaped) bytes += static_cast<char>(name[i].unicode() - kByteEscape);
    from = i + 1;
  }
  return bytes;
}

QString shownFile(const QString& name) {
  QString shown = QDir::toNativeSeparators(name);
  for (qsizetype i = 0; i < shown.size(); ++i)
    if (isEscapedByte(shown[i]) && (i == 0 || !shown[i - 1].isHighSurrogate()))
      shown[i] = QChar::ReplacementCharacter;
  return onOneLine(shown);
}

}  // namespace layshaft::ui
