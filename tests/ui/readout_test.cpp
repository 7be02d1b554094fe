// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/readout.h"

#include <QPainter>

#include "tests/ui/support.h"

namespace layshaft::test {
namespace {

/// Columns of the picture that have ink in them, of the cell with that number and the gap behind it.
struct CellInk {
  bool inGap = false, inCell = false;
};

CellInk inkOf(const QImage& picture, int cell) {
  const double wide = (picture.width() - 48) / 6.0;
  const int left = qRound(24 + cell * wide), gap = qCeil(24 + (cell + 1) * wide - 7),
            end = qFloor(24 + (cell + 1) * wide);
  CellInk ink;
  for (int y = 0; y < picture.height(); ++y)
    for (int x = left; x < end; ++x)
      if (picture.pixelColor(x, y).lightness() < 250) (x < gap ? ink.inCell : ink.inGap) = true;
  return ink;
}

QImage painted(const std::vector<ui::KeyFigure>& figures, int width, double pointSize) {
  QFont font;
  font.setPointSizeF(pointSize);
  ui::TextCache texts;
  QImage picture(width, qCeil(ui::Readout::heightFor(font, width, {}, figures, texts)),
                 QImage::Format_ARGB32_Premultiplied);
  picture.fill(Qt::white);
  QPainter painter(&picture);
  ui::Readout::paint(painter, picture.rect(), font, ui::ChartPalette(QPalette(Qt::white)), {}, figures,
                     texts);
  return picture;
}

TEST(ReadoutFigures, NoneRunsIntoTheNextHoweverManyDigitsItHas) {
  ui::KeyFigure figure;
  figure.label = "6th at 100 km/h";
  figure.unit = "rpm";
  const std::pair<const char*, const char*> values[] = {
      {"3,551", "3,637"}, {"2,476.7", "2,530.1"}, {"12,476.7", "12,530.1"}, {"12,476.71", "12,476.71"}};
  for (const auto& [stock, proposed] : values)
    for (const int width : {820, 1000, 1280})
      for (const double pointSize : {9.0, 10.0}) {
        figure.stock = QString::fromUtf8(stock);
        figure.proposed = QString::fromUtf8(proposed);
        figure.difference = figure.stock == figure.proposed ? QString() : "+10,053.4 rpm (+2.2 %)";
        const QImage picture = painted(std::vector<ui::KeyFigure>(6, figure), width, pointSize);
        for (int cell = 0; cell < 6; ++cell) {
          EXPECT_TRUE(inkOf(picture, cell).inCell);
          EXPECT_FALSE(inkOf(picture, cell).inGap)
              << stock << " in " << width << " px at " << pointSize << " pt, cell " << cell;
        }
      }
}

}  // namespace
}  // namespace layshaft::test
