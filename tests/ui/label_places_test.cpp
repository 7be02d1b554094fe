// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/label_places.h"

#include "tests/ui/support.h"

namespace layshaft::test {
namespace {

const QRectF kPlot(50, 0, 800, 400), kCorner(700, 4, 140, 36);
const QSizeF kName(90, 16);

ui::NamedLine lineAt(double left, double right) {
  return {QPolygonF{QPointF(50, left), QPointF(820, right)}, kName};
}

TEST(LabelPlaces, NamesOfLinesThatAreNearStandOnEitherSide) {
  for (const double apart : {0.0, 3.0, 10.0, 15.0}) {
    // Whichever is given first.
    for (const bool swapped : {false, true}) {
      std::vector<ui::NamedLine> lines{lineAt(200, 210), lineAt(200, 210 + apart)};
      if (swapped) std::swap(lines[0], lines[1]);
      const auto places = ui::lineNamePlaces(lines, kPlot, kCorner);
      EXPECT_FALSE(places[0].intersects(places[1])) << apart;
      const auto &upper = places[swapped && apart > 0 ? 1 : 0], &lower = places[swapped && apart > 0 ? 0 : 1];
      EXPECT_LE(upper.bottom(), 210) << apart;
      EXPECT_GE(lower.top(), 208 + apart) << apart;
    }
  }
}

TEST(LabelPlaces, NamesOfLinesThatAreApartStandAboveThem) {
  const auto places = ui::lineNamePlaces({lineAt(200, 200), lineAt(260, 260)}, kPlot, kCorner);
  EXPECT_EQ(places[0].bottom(), 199);
  EXPECT_EQ(places[1].bottom(), 259);
  EXPECT_NEAR(places[0].right(), 816, 1e-9);
}

TEST(LabelPlaces, NamesStayClearOfTheCornerThatIsTaken) {
  for (const double level : {5.0, 20.0, 30.0, 45.0, 60.0}) {
    const auto places =
        ui::lineNamePlaces({lineAt(level, level), lineAt(level + 6, level + 4)}, kPlot, kCorner);
    EXPECT_FALSE(places[0].intersects(places[1])) << level;
    for (const QRectF& place : places) {
      EXPECT_FALSE(place.intersects(kCorner)) << level;
      EXPECT_TRUE(kPlot.contains(place)) << level;
    }
  }
}

TEST(LabelPlaces, ALabelMovesAlongItsLineUntilItIsClear) {
  const QRectF other(100, 50, 120, 40), bounds(0, 0, 600, 400);
  const QRectF aside = ui::clearOf(QRectF(180, 60, 150, 40), other, 0.1, bounds);
  EXPECT_GE(aside.left(), other.right());
  EXPECT_NEAR(aside.top() - 60, 0.1 * (aside.left() - 180), 1e-9);
  const QRectF stays(240, 60, 150, 40);
  EXPECT_EQ(ui::clearOf(stays, other, 0.1, bounds), stays);
  const QRectF above = ui::clearOf(QRectF(180, 60, 150, 40), other, 0.1, QRectF(0, 0, 340, 400));
  EXPECT_LE(above.bottom(), other.top());
  EXPECT_EQ(above.left(), 180);
}

}  // namespace
}  // namespace layshaft::test
