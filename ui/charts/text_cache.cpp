// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/text_cache.h"

namespace layshaft::ui {
namespace {

constexpr qsizetype kMost = 600;  // a few screens' worth; then start afresh

/// Looks `key` up in `texts`; on the first time lays `text` out, broken to `width` unless that is negative.
template <class Key>
const QStaticText& remembered(QHash<Key, QStaticText>& texts, const Key& key, const QFont& font,
                              const QString& text, double width) {
  const auto found = texts.constFind(key);
  if (found != texts.constEnd()) return *found;
  if (texts.size() >= kMost) texts.clear();
  QStaticText laid(text);
  laid.setTextFormat(Qt::PlainText);
  laid.setTextWidth(width);
  laid.setPerformanceHint(QStaticText::AggressiveCaching);
  laid.prepare(QTransform(), font);
  return *texts.insert(key, laid);
}

}  // namespace

const QStaticText& TextCache::laidOut(const QFont& font, const QString& text) {
  return remembered(texts_, {font, text}, font, text, -1.0);
}

void TextCache::drawWrapped(QPainter& painter, const QFont& font, const QRectF& area, const QString& text) {
  if (text.isEmpty()) return;
  painter.setFont(font);
  painter.drawStaticText(area.topLeft(),
                         remembered(wrapped_, {font, text, area.width()}, font, text, area.width()));
}

double TextCache::wrappedHeight(const QFont& font, const QString& text, double width) {
  return text.isEmpty() ? 0.0 : remembered(wrapped_, {font, text, width}, font, text, width).size().height();
}

void TextCache::draw(QPainter& painter, const QFont& font, const QPointF& topLeft, const QString& text) {
  if (text.isEmpty()) return;
  painter.setFont(font);
  painter.drawStaticText(topLeft, laidOut(font, text));
}

void TextCache::draw(QPainter& painter, const QFont& font, const QRectF& area, Qt::Alignment alignment,
                     const QString& text) {
  if (text.isEmpty()) return;
  const QSizeF size = laidOut(font, text).size();
  double x = area.left();
  if (alignment & Qt::AlignRight) x = area.right() - size.width();
  if (alignment & Qt::AlignHCenter) x = area.center().x() - size.width() / 2;
  draw(painter, font, QPointF(x, area.center().y() - size.height() / 2), text);
}

}  // namespace layshaft::ui
