// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFont>
#include <QPainter>
#include <QRectF>
#include <QString>
#include <QStringList>
#include <functional>
#include <vector>

#include "ui/sheet/sheet.h"

/// What sheets are built of: pieces that stand below one another and lay themselves out in any width.
namespace layshaft::ui {

struct Block {
  std::function<double(double width)> height;  ///< the least that it takes
  std::function<void(QPainter&, const QRectF& area)> paint;
  double stretch = 0.0;  ///< its share of the height that is left over
  bool spare = false;    ///< left out where the page would be too small to read with it
};
using Blocks = std::vector<Block>;

/// A text, broken where it must be.
Block textBlock(const QString& text, const QFont& font, Qt::Alignment alignment = Qt::AlignLeft);

/// Rows of cells. Columns from `numbersFrom` on stand at the right, the others at the left.
struct SheetTable {
  std::vector<QStringList> rows;  ///< the first: titles
  int numbersFrom = 1;
  std::vector<bool> struck = {};  ///< rows that are crossed off; those not named are not
  double points = 9.0;
};
Block tableBlock(const SheetTable& table);

/// A line each with a box to tick.
Block tickBlock(const QStringList& lines);

/// What is known, under a small title; a line to write on where it is not.
struct SheetField {
  QString title;
  QString value;
};
Block fieldBlock(const std::vector<SheetField>& fields);

/// Two columns, the left one with that share of the width.
Block besideBlock(const Blocks& left, const Blocks& right, double leftShare);

/// Something that is drawn: at least so high, px at 96 dots per inch, and more where there is room.
Block drawingBlock(double least, double stretch, std::function<void(QPainter&, const QRectF& area)> paint);

/// One page of blocks, portrait. All of it is made smaller where the paper is too small, and larger, up to
/// `largest` times, where it leaves room. What can be spared goes before the print gets too small.
class BlockSheet : public Sheet {
 public:
  BlockSheet(QString title, Blocks blocks, double largest = 1.0)
      : title_(std::move(title)), blocks_(std::move(blocks)), largest_(largest) {}

  QString title() const override { return title_; }
  QPageLayout::Orientation orientation() const override { return QPageLayout::Portrait; }
  int pageCount(const QSizeF&) const override { return 1; }
  void paintPage(QPainter& painter, const QRectF& room, int page) const override;

  /// How large everything comes out in that room.
  double scaleIn(const QSizeF& room) const;

 private:
  Blocks blocksIn(const QSizeF& room) const;

  QString title_;
  Blocks blocks_;
  double largest_;
};

}  // namespace layshaft::ui
