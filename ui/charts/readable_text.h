// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QWidget>

namespace layshaft::ui {

/// A widget whose words are painted and not made of labels: what it shows, as a text that can be read through
/// the desktop's accessibility interface, by word and by line. Its accessible name stays its name.
class ReadableText {
 public:
  virtual ~ReadableText() = default;
  virtual QString readableText() const = 0;
};

/// Makes known that widgets which are a ReadableText, and labels that have a name beside their text, are to
/// be read as texts; more than once is the same.
void exposeReadableTexts();

/// Tells who listens that the text of `widget` is another than `before`.
void tellChangedText(QWidget& widget, const QString& before, const QString& now);

}  // namespace layshaft::ui
