// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFont>
#include <QHash>
#include <QPainter>
#include <QStaticText>
#include <QString>

namespace layshaft::ui {

/// Draws short texts and remembers how they are laid out: shaping a text costs many times what
/// painting its glyphs does, and between two steps of a spin box most texts of a picture stay the same.
class TextCache {
 public:
  /// Width of the text in that font, px.
  double width(const QFont& font, const QString& text) { return laidOut(font, text).size().width(); }

  /// Draws with the painter's pen from the upper left corner on. Sets the painter's font.
  void draw(QPainter& painter, const QFont& font, const QPointF& topLeft, const QString& text);
  /// Draws inside `area`, vertically centred, aligned left, right or centred.
  void draw(QPainter& painter, const QFont& font, const QRectF& area, Qt::Alignment alignment,
            const QString& text);
  /// Draws lines broken to the width of `area`, from its upper left corner on.
  void drawWrapped(QPainter& painter, const QFont& font, const QRectF& area, const QString& text);
  /// How high such lines are, px; nothing for no text.
  double wrappedHeight(const QFont& font, const QString& text, double width);

 private:
  const QStaticText& laidOut(const QFont& font, const QString& text);

  struct Wrapped {
    QFont font;
    QString text;
    double width;
    bool operator==(const Wrapped&) const = default;
  };
  friend size_t qHash(const Wrapped& key, size_t seed) {
    return qHashMulti(seed, key.font, key.text, key.width);
  }

  QHash<QPair<QFont, QString>, QStaticText> texts_;
  QHash<Wrapped, QStaticText> wrapped_;
};

}  // namespace layshaft::ui
