// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/thinned_line.h"

#include <cmath>
#include <random>

#include "tests/ui/support.h"

namespace layshaft::test {
namespace {

double heightAt(const QPolygonF& line, double x) {
  for (qsizetype i = 1; i < line.size(); ++i)
    if (x <= line[i].x()) {
      const double share = (x - line[i - 1].x()) / (line[i].x() - line[i - 1].x());
      return line[i - 1].y() + share * (line[i].y() - line[i - 1].y());
    }
  return line.back().y();
}

TEST(ThinnedLine, PassesEveryPointNearEnough) {
  std::mt19937 random(3);
  std::normal_distribution<> step(0.0, 0.15);
  QPolygonF line;
  double slope = 0.0, y = 100.0;
  for (int i = 0; i < 4000; ++i) {
    if (i % 500 == 0) slope = 0.1 * step(random);
    line << QPointF(0.25 * i, y += slope + (i % 37 == 0 ? step(random) : 0.0));
  }
  const QPolygonF thinned = ui::thinnedLine(line, 0.2);
  EXPECT_LT(thinned.size(), line.size() / 5);
  EXPECT_EQ(thinned.front(), line.front());
  EXPECT_EQ(thinned.back(), line.back());
  for (const QPointF& point : line) EXPECT_NEAR(heightAt(thinned, point.x()), point.y(), 0.2 + 1e-9);
}

TEST(ThinnedLine, StraightUpAndDownStays) {
  const QPolygonF steps{{0, 0}, {1, 0}, {2, 0}, {2, 10}, {3, 10}, {3, 0}, {5, 0}};
  EXPECT_EQ(ui::thinnedLine(steps), (QPolygonF{{0, 0}, {2, 0}, {2, 10}, {3, 10}, {3, 0}, {5, 0}}));
}

TEST(ThinnedLine, WhatHasNothingToThinStays) {
  for (const QPolygonF& line : {QPolygonF(), QPolygonF{{1, 2}}, QPolygonF{{1, 2}, {3, 4}}})
    EXPECT_EQ(ui::thinnedLine(line), line);
}

}  // namespace
}  // namespace layshaft::test
