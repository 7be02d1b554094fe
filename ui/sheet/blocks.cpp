// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/sheet/blocks.h"

#include <QFontMetricsF>
#include <QPen>
#include <algorithm>
#include <iterator>
#include <numeric>

#include "ui/sheet/paper.h"

namespace layshaft::ui {
namespace {

constexpr double kTextPoints = 9.0, kTitlePoints = 8.0;
constexpr double kCellGap = 0.7, kRowGap = 0.15;  // of a line of text
constexpr double kBlockGap = 0.4;
constexpr double kWritingLines = 1.9;  // what a hand needs

const QColor kFaint(0xb0, 0xb0, 0xb0);

double lineHeight() {
  return QFontMetricsF(paperFont(kTextPoints)).height();
}

void drawLine(QPainter& painter, double y, double left, double right, const QColor& colour) {
  painter.setPen(QPen(colour, 0.75));
  painter.drawLine(QPointF(left, y), QPointF(right, y));
  painter.setPen(Qt::black);
}

double heightOf(const Blocks& blocks, double width) {
  double height = 0.0;
  for (const Block& block : blocks) height += block.height(width);
  return blocks.empty() ? 0.0 : height + kBlockGap * lineHeight() * static_cast<double>(blocks.size() - 1);
}

/// How large blocks come out in a room.
double scaleOf(const Blocks& blocks, const QSizeF& room, double largest) {
  constexpr double kSmallest = 0.2, kStep = 0.97;
  double scale = largest;
  while (scale > kSmallest && heightOf(blocks, room.width() / scale) > room.height() / scale) scale *= kStep;
  return scale;
}

void paintColumn(QPainter& painter, const Blocks& blocks, const QRectF& area) {
  const double left = std::max(0.0, area.height() - heightOf(blocks, area.width()));
  const double shares = std::accumulate(blocks.begin(), blocks.end(), 0.0,
                                        [](double sum, const Block& block) { return sum + block.stretch; });
  double y = area.top();
  for (const Block& block : blocks) {
    const double more = shares > 0.0 ? left * block.stretch / shares : 0.0;
    const double height = block.height(area.width()) + more;
    painter.setPen(Qt::black);
    block.paint(painter, QRectF(area.left(), y, area.width(), height));
    y += height + kBlockGap * lineHeight();
  }
}

/// The columns of a table, and how wide each is.
class TableLayout {
 public:
  explicit TableLayout(const SheetTable& table)
      : table_(table), font_(paperFont(table.points)), bold_(paperFont(table.points, true)) {
    for (const QStringList& row : table.rows) columns_ = std::max(columns_, row.size());
    wish_.resize(static_cast<std::size_t>(columns_), 0.0);
    least_ = whole_ = wish_;
    for (std::size_t r = 0; r < table.rows.size(); ++r)
      for (qsizetype c = 0; c < table.rows[r].size(); ++c) measure(r, c);
  }

  double height(double width) const {
    const auto widths = widthsIn(width);
    double sum = 0.0;
    for (std::size_t r = 0; r < table_.rows.size(); ++r) sum += rowHeight(r, widths);
    return sum;
  }

  void paint(QPainter& painter, const QRectF& area) const {
    const auto widths = widthsIn(area.width());
    double y = area.top();
    for (std::size_t r = 0; r < table_.rows.size(); ++r) {
      const double height = rowHeight(r, widths);
      double x = area.left();
      for (qsizetype c = 0; c < table_.rows[r].size(); ++c) {
        const double cell = widths[static_cast<std::size_t>(c)];
        QFont font = r == 0 ? bold_ : font_;
        font.setStrikeOut(r < table_.struck.size() && table_.struck[r]);
        drawBroken(painter, font, QRectF(x, y + kRowGap * lineHeight(), cell, height), table_.rows[r][c],
                   c < table_.numbersFrom ? Qt::AlignLeft : Qt::AlignRight);
        x += cell + gap();
      }
      y += height;
      drawLine(painter, y, area.left(), area.right(), r == 0 ? QColor(Qt::black) : kFaint);
    }
  }

 private:
  double gap() const { return kCellGap * lineHeight(); }

  void measure(std::size_t row, qsizetype column) {
    const QFontMetricsF metrics(row == 0 ? bold_ : font_);
    const QString& text = table_.rows[row][column];
    const auto c = static_cast<std::size_t>(column);
    constexpr double kRounding = 1.0;
    whole_[c] = std::max(whole_[c], metrics.horizontalAdvance(text) + kRounding);
    // Titles are broken rather than figures.
    if (row > 0) wish_[c] = std::max(wish_[c], metrics.horizontalAdvance(text) + kRounding);
    for (const QString& word : text.split(QLatin1Char(' ')))
      least_[c] = std::max(least_[c], metrics.horizontalAdvance(word) + kRounding);
    wish_[c] = std::max(wish_[c], least_[c]);
  }

  /// Between what two lists of widths take, as far as the room reaches.
  static std::vector<double> between(const std::vector<double>& low, const std::vector<double>& high,
                                     double room) {
    const double least = std::accumulate(low.begin(), low.end(), 0.0);
    const double most = std::accumulate(high.begin(), high.end(), 0.0);
    const double share = most > least ? std::clamp((room - least) / (most - least), 0.0, 1.0) : 0.0;
    std::vector<double> widths = low;
    for (std::size_t c = 0; c < widths.size(); ++c) widths[c] += share * (high[c] - low[c]);
    return widths;
  }

  /// Figures stay in one line while there is room, then titles; what is left over all columns share.
  std::vector<double> widthsIn(double width) const {
    const double room = width - gap() * static_cast<double>(columns_ - 1);
    const auto sum = [](const std::vector<double>& of) { return std::accumulate(of.begin(), of.end(), 0.0); };
    std::vector<double> widths =
        sum(wish_) <= room ? between(wish_, whole_, room) : between(least_, wish_, room);
    const double left = room - sum(widths);
    const auto count = static_cast<double>(widths.size());
    for (double& column : widths)
      column = left >= 0.0 ? column + left / count : column * room / (room - left);
    return widths;
  }

  double rowHeight(std::size_t row, const std::vector<double>& widths) const {
    double height = 0.0;
    for (qsizetype c = 0; c < table_.rows[row].size(); ++c)
      height = std::max(height, brokenHeight(row == 0 ? bold_ : font_, table_.rows[row][c],
                                             widths[static_cast<std::size_t>(c)]));
    return height + 2 * kRowGap * lineHeight();
  }

  SheetTable table_;
  QFont font_, bold_;
  qsizetype columns_ = 0;
  std::vector<double> least_, wish_, whole_;  ///< by words, by figures, by titles too
};

}  // namespace

Block textBlock(const QString& text, const QFont& font, Qt::Alignment alignment) {
  return {.height = [=](double width) { return brokenHeight(font, text, width); },
          .paint = [=](QPainter& painter,
                       const QRectF& area) { drawBroken(painter, font, area, text, alignment); }};
}

Block tableBlock(const SheetTable& table) {
  const auto layout = std::make_shared<const TableLayout>(table);
  return {.height = [layout](double width) { return layout->height(width); },
          .paint = [layout](QPainter& painter, const QRectF& area) { layout->paint(painter, area); }};
}

Block tickBlock(const QStringList& lines) {
  const QFont font = paperFont(kTextPoints);
  const double box = 0.8 * lineHeight(), indent = 1.5 * lineHeight(), gap = 0.25 * lineHeight();
  return {.height =
              [=](double width) {
                double sum = 0.0;
                for (const QString& line : lines) sum += brokenHeight(font, line, width - indent) + gap;
                return sum;
              },
          .paint =
              [=](QPainter& painter, const QRectF& area) {
                double y = area.top();
                for (const QString& line : lines) {
                  painter.setPen(QPen(Qt::black, 0.75));
                  painter.drawRect(QRectF(area.left() + 1.0, y + 0.1 * lineHeight(), box, box));
                  drawBroken(painter, font, area.adjusted(indent, y - area.top(), 0, 0), line);
                  y += brokenHeight(font, line, area.width() - indent) + gap;
                }
              }};
}

Block fieldBlock(const std::vector<SheetField>& fields) {
  const QFont title = paperFont(kTitlePoints), value = paperFont(kTextPoints + 1.0, true);
  const double gap = lineHeight();
  const auto cellWidth = [=](double width) {
    const auto count = static_cast<double>(fields.size());
    return (width - gap * (count - 1.0)) / count;
  };
  const auto titleHeight = [=](double width) {
    double most = 0.0;
    for (const SheetField& field : fields)
      most = std::max(most, brokenHeight(title, field.title, cellWidth(width)));
    return most;
  };
  const auto valueHeight = [=](const SheetField& field, double width) {
    return field.value.isEmpty() ? kWritingLines * lineHeight()
                                 : brokenHeight(value, field.value, cellWidth(width));
  };
  const auto height = [=](double width) {
    double most = 0.0;
    for (const SheetField& field : fields) most = std::max(most, valueHeight(field, width));
    return titleHeight(width) + most;
  };
  return {.height = height, .paint = [=](QPainter& painter, const QRectF& area) {
            const double cell = cellWidth(area.width()), under = titleHeight(area.width());
            double x = area.left();
            for (const SheetField& field : fields) {
              drawBroken(painter, title, QRectF(x, area.top(), cell, under), field.title);
              drawBroken(painter, value, QRectF(x, area.top() + under, cell, area.height()), field.value);
              if (field.value.isEmpty())
                drawLine(painter, area.top() + height(area.width()) - 1.0, x, x + cell, Qt::black);
              x += cell + gap;
            }
          }};
}

Block besideBlock(const Blocks& left, const Blocks& right, double leftShare) {
  const double gap = 1.4 * lineHeight();
  const auto leftWidth = [=](double width) { return (width - gap) * leftShare; };
  const auto rightWidth = [=](double width) { return (width - gap) * (1.0 - leftShare); };
  return {.height =
              [=](double width) {
                return std::max(heightOf(left, leftWidth(width)), heightOf(right, rightWidth(width)));
              },
          .paint =
              [=](QPainter& painter, const QRectF& area) {
                const double first = leftWidth(area.width());
                paintColumn(painter, left, QRectF(area.left(), area.top(), first, area.height()));
                paintColumn(
                    painter, right,
                    QRectF(area.left() + first + gap, area.top(), rightWidth(area.width()), area.height()));
              }};
}

Block drawingBlock(double least, double stretch, std::function<void(QPainter&, const QRectF& area)> paint) {
  return {.height = [least](double) { return least * sheetDpi() / 96.0; },
          .paint = std::move(paint),
          .stretch = stretch};
}

Blocks BlockSheet::blocksIn(const QSizeF& room) const {
  constexpr double kReadable = 0.73;  // 6.5 pt and more
  if (scaleOf(blocks_, room, largest_) >= kReadable) return blocks_;
  Blocks kept;
  std::copy_if(blocks_.begin(), blocks_.end(), std::back_inserter(kept),
               [](const Block& block) { return !block.spare; });
  return kept;
}

double BlockSheet::scaleIn(const QSizeF& room) const {
  return scaleOf(blocksIn(room), room, largest_);
}

void BlockSheet::paintPage(QPainter& painter, const QRectF& room, int) const {
  const Blocks blocks = blocksIn(room.size());
  const double scale = scaleOf(blocks, room.size(), largest_);
  painter.save();
  painter.translate(room.topLeft());
  painter.scale(scale, scale);
  painter.setPen(Qt::black);
  paintColumn(painter, blocks, QRectF(QPointF(0, 0), room.size() / scale));
  painter.restore();
}

}  // namespace layshaft::ui
