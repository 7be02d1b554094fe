// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/text_cache.h"

namespace layshaft::ui {

const QStaticText& TextCache::laidOut(const QFont& font, const QString& text) {
  const QPair<QFont, QString> key(font, text);
  const auto found = texts_.constFind(key);
  if (found != texts_.constEnd()) return *found;
  constexpr qsizetype kMost = 600;  // a few screens' worth; then start afresh
  if (texts_.size() >= kMost) texts_.clear();
  QStaticText laid(text);
  laid.setTextFormat(Qt::PlainText);
  laid.setPerformanceHint(QStaticText::AggressiveCaching);
  laid.prepare(QTransform(), font);
  return *texts_.insert(key, laid);
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
