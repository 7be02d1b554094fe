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

/// The names of some lines, that of the highest put first.
std::vector<QRectF> lineNamePlaces(const std::vector<ui::NamedLine>& lines, const QRectF& plot,
                                   const QRectF& taken) {
  std::vector<QRectF> places(lines.size());
  std::vector<std::size_t> downwards(lines.size());
  for (std::size_t i = 0; i < lines.size(); ++i) downwards[i] = i;
  std::stable_sort(downwards.begin(), downwards.end(), [&](std::size_t a, std::size_t b) {
    return lines[a].line.back().y() < lines[b].line.back().y();
  });
  ui::LabelSpace space(plot);
  space.take(taken);
  for (const std::size_t i : downwards)
    places[i] = space.put(ui::placesAlong(lines[i], plot)).value_or(QRectF());
  return places;
}

TEST(LabelPlaces, NamesOfLinesThatAreNearStandOnEitherSide) {
  for (const double apart : {0.0, 3.0, 10.0, 15.0}) {
    // Whichever is given first.
    for (const bool swapped : {false, true}) {
      std::vector<ui::NamedLine> lines{lineAt(200, 210), lineAt(200, 210 + apart)};
      if (swapped) std::swap(lines[0], lines[1]);
      const auto places = lineNamePlaces(lines, kPlot, kCorner);
      EXPECT_FALSE(places[0].intersects(places[1])) << apart;
      const auto &upper = places[swapped && apart > 0 ? 1 : 0], &lower = places[swapped && apart > 0 ? 0 : 1];
      EXPECT_LE(upper.bottom(), 210) << apart;
      EXPECT_GE(lower.top(), 208 + apart) << apart;
    }
  }
}

TEST(LabelPlaces, NamesOfLinesThatAreApartStandAboveThem) {
  const auto places = lineNamePlaces({lineAt(200, 200), lineAt(260, 260)}, kPlot, kCorner);
  EXPECT_EQ(places[0].bottom(), 199);
  EXPECT_EQ(places[1].bottom(), 259);
  EXPECT_NEAR(places[0].right(), 816, 1e-9);
}

TEST(LabelPlaces, NamesStayClearOfTheCornerThatIsTaken) {
  for (const double level : {5.0, 20.0, 30.0, 45.0, 60.0}) {
    const auto places = lineNamePlaces({lineAt(level, level), lineAt(level + 6, level + 4)}, kPlot, kCorner);
    EXPECT_FALSE(places[0].intersects(places[1])) << level;
    for (const QRectF& place : places) {
      EXPECT_FALSE(place.intersects(kCorner)) << level;
      EXPECT_TRUE(kPlot.contains(place)) << level;
    }
  }
}

TEST(LabelPlaces, FourNamesOfOneLineAreAllClearOfEachOther) {
  for (const double level : {8.0, 60.0, 200.0, 385.0}) {
    const std::vector<ui::NamedLine> lines(4, lineAt(level, level));
    const auto places = lineNamePlaces(lines, kPlot, kCorner);
    for (std::size_t a = 0; a < places.size(); ++a) {
      EXPECT_TRUE(kPlot.contains(places[a])) << level;
      EXPECT_FALSE(places[a].intersects(kCorner)) << level;
      EXPECT_FALSE(places[a].isEmpty()) << level;
      for (std::size_t b = 0; b < a; ++b) EXPECT_FALSE(places[a].intersects(places[b])) << level;
    }
  }
}

TEST(LabelPlaces, AWordStandsWhereTheFewestLinesCrossIt) {
  ui::LabelSpace space(kPlot);
  space.avoid(QPolygonF{QPointF(100, 0), QPointF(300, 400)});
  space.avoid(QPolygonF{QPointF(100, 50), QPointF(500, 50)});
  const QRectF crossedTwice(105, 40, 60, 20), crossedOnce(400, 40, 60, 20), clear(400, 100, 60, 20);
  EXPECT_EQ(space.put({crossedTwice, crossedOnce}), crossedOnce);
  EXPECT_EQ(space.put({crossedTwice, clear}), clear);
  EXPECT_EQ(space.put({crossedTwice}), crossedTwice) << "rather crossed than left out";
}

TEST(LabelPlaces, AWordThatHasNoneOfItsPlacesGoesToTheNearestFreeOne) {
  ui::LabelSpace space(kPlot);
  space.take(QRectF(50, 0, 400, 400));
  const auto place = space.put({QRectF(420, 100, 60, 20)});
  ASSERT_TRUE(place);
  EXPECT_GE(place->left(), 450);
  EXPECT_LE(place->left(), 475);
  EXPECT_NEAR(place->top(), 100, 7);
  space.take(kPlot);
  EXPECT_EQ(space.put({QRectF(420, 100, 60, 20)}), std::nullopt);
}

TEST(LabelPlaces, NoWordLeavesThePicture) {
  ui::LabelSpace space(kPlot);
  for (const QPointF corner : {QPointF(0, -50), QPointF(845, 10), QPointF(840, 395)}) {
    const auto place = space.put({QRectF(corner, QSizeF(60, 20))});
    ASSERT_TRUE(place);
    EXPECT_TRUE(kPlot.contains(*place)) << corner.x();
  }
}

}  // namespace
}  // namespace layshaft::test
