// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/pair_map.h"

#include <QSignalSpy>
#include <cmath>

#include "tests/ui/contrast.h"
#include "tests/ui/palettes.h"
#include "tests/ui/support.h"
#include "ui/words/pair_laps_words.h"

namespace layshaft::test {
namespace {

LapRow lapped(int front, int rear, double lapS, bool fits = true, std::optional<int> links = 114) {
  return {.frontTeeth = front,
          .rearTeeth = rear,
          .finalRatio = static_cast<double>(rear) / front,
          .lapS = lapS,
          .changeS = lapS - 60.0,
          .bandS = 0.02,
          .fits = fits,
          .links = links};
}

/// Of 14 to 16 by 40 to 44 teeth; 15/41 is the quickest, 15/42 is equal to it.
ui::PairBook someBook() {
  ui::PairBook book;
  book.begin({.range = {14, 16, 40, 44}, .stockFront = 16, .stockRear = 43, .belt = false});
  std::vector<LapRow> rows;
  for (int front = 14; front <= 16; ++front)
    for (int rear = 40; rear <= 44; ++rear)
      rows.push_back(lapped(front, rear, 60.0 + 0.1 * (16 - front) + 0.05 * std::abs(rear - 43)));
  rows[6] = lapped(15, 41, 59.7);
  rows[7] = lapped(15, 42, 59.712);
  book.add(rows);
  book.propose(15, 43);
  book.settle();
  return book;
}

class PairMapTest : public testing::Test {
 protected:
  PairMapTest() {
    map_.resize(700, 260);
    show(someBook());
    showActive(map_);
  }
  void show(const ui::PairBook& book) {
    map_.show(book, std::make_shared<const Plan>(plan(workedExample())));
  }
  QPoint middle(int front, int rear) { return map_.cellOf(front, rear).center().toPoint(); }
  QImage grey(int front, int rear) {
    map_.moveTo(std::nullopt);
    const QRect cell = map_.cellOf(front, rear).toRect().adjusted(4, 4, -4, -4);
    return map_.grab(cell).toImage().convertToFormat(QImage::Format_Grayscale8);
  }
  ui::PairMap map_;
};

TEST_F(PairMapTest, ArrowKeysGoFromPairToPairAndEnterProposes) {
  QSignalSpy chosen(&map_, &ui::PairMap::pairChosen);
  map_.setFocus();
  EXPECT_EQ(map_.cursor(), std::pair(15, 43)) << "from the proposal on";
  QTest::keyClick(&map_, Qt::Key_Up);
  QTest::keyClick(&map_, Qt::Key_Right);
  EXPECT_EQ(map_.cursor(), std::pair(14, 44));
  QTest::keyClick(&map_, Qt::Key_Right);
  QTest::keyClick(&map_, Qt::Key_Up);
  EXPECT_EQ(map_.cursor(), std::pair(14, 44)) << "no further than there are pairs";
  QTest::keyClick(&map_, Qt::Key_Home);
  EXPECT_EQ(map_.cursor(), std::pair(14, 40));
  EXPECT_EQ(chosen.count(), 0);
  QTest::keyClick(&map_, Qt::Key_Return);
  QTest::keyClick(&map_, Qt::Key_Down);
  QTest::keyClick(&map_, Qt::Key_Space);
  ASSERT_EQ(chosen.count(), 2);
  EXPECT_EQ(chosen[0], (QVariantList{14, 40}));
  EXPECT_EQ(chosen[1], (QVariantList{15, 40}));
}

TEST_F(PairMapTest, AClickProposesThePairUnderIt) {
  QSignalSpy chosen(&map_, &ui::PairMap::pairChosen);
  QTest::mouseClick(&map_, Qt::LeftButton, {}, middle(16, 41));
  ASSERT_EQ(chosen.count(), 1);
  EXPECT_EQ(chosen[0], (QVariantList{16, 41}));
  QTest::mousePress(&map_, Qt::LeftButton, {}, middle(14, 40));
  QTest::mouseRelease(&map_, Qt::LeftButton, {}, middle(16, 44));
  QTest::mouseClick(&map_, Qt::LeftButton, {}, QPoint(2, 2));
  EXPECT_EQ(chosen.count(), 1) << "who goes elsewhere has changed their mind";
}

TEST_F(PairMapTest, TheCursorSaysWhatThePairDoes) {
  map_.moveTo(std::pair(15, 42));
  const std::string words = map_.crosshairWords().toStdString();
  EXPECT_THAT(words, testing::HasSubstr("15/42: 59.71 s a lap; 0.29 s quicker than stock, ±0.02 s"));
  EXPECT_THAT(words, testing::HasSubstr("final ratio 2.800; fits; "));
  EXPECT_THAT(words, testing::HasSubstr("equal to the quickest"));
  const auto span = map_.crosshairSpan();
  ASSERT_TRUE(span);
  EXPECT_EQ(span->high, 14.0);
  EXPECT_EQ(map_.crosshairAt(), 7.0);
  map_.moveCrosshair(14.0);
  EXPECT_EQ(map_.cursor(), std::pair(16, 44));
}

TEST_F(PairMapTest, WhatDoesNotFitIsSeenWithoutColours) {
  const QImage fits = grey(15, 40);
  ui::PairBook book = someBook();
  const LapRow was = book.at(15, 40)->row;
  book.add({lapped(15, 40, *was.lapS, false)});
  show(book);
  const QImage other = grey(15, 40);
  book.add({lapped(15, 40, *was.lapS, false, std::nullopt)});
  show(book);
  EXPECT_NE(fits, other);
  EXPECT_NE(other, grey(15, 40)) << "no chain at all is another thing than another chain";
}

/// Whether the edge between two cells has the thick outline: three pixels of text colour across it.
TEST_F(PairMapTest, EqualPairsHaveOneOutline) {
  map_.moveTo(std::nullopt);
  const QImage picture = map_.grab().toImage();
  const QColor ink = ui::ChartPalette(map_.palette()).text;
  const auto outlined = [&](int front, int rear, bool right) {
    const QRectF cell = map_.cellOf(front, rear);
    const QPointF at = right ? QPointF(cell.right(), cell.top() + cell.height() * 0.3)
                             : QPointF(cell.left(), cell.top() + cell.height() * 0.3);
    return contrast(picture.pixelColor(at.toPoint()), ink) < 1.5;
  };
  EXPECT_TRUE(outlined(15, 41, false));
  EXPECT_FALSE(outlined(15, 41, true)) << "nothing between the two";
  EXPECT_TRUE(outlined(15, 42, true));
  EXPECT_FALSE(outlined(15, 43, true));
}

TEST_F(PairMapTest, TheQuickerIsTheDarker) {
  const ui::PairBook book = someBook();
  const ui::ChartPalette colours(map_.palette());
  const ui::PairGrid grid = ui::PairGrid::in(book.ground().range, map_.size(), QFontMetricsF(map_.font()));
  const ui::PairPainting painting(
      {.book = book, .grid = grid, .colours = colours, .size = map_.size(), .font = map_.font()});
  double before = 0.0;
  for (const ui::RankedPair& pair : book.pairs()) {
    const double to = contrast(painting.groundOf(pair), colours.background);
    if (before > 0.0) {
      EXPECT_LE(to, before) << pair.row.frontTeeth << '/' << pair.row.rearTeeth;
    }
    before = to;
  }
  EXPECT_EQ(painting.labelOf(book.at(15, 41)->row).toStdString(), "−0.30");
}

TEST_F(PairMapTest, ALargeRangeDropsDecimalsAndIsStillRead) {
  ui::PairBook book;
  book.begin({.range = {10, 17, 30, 59}, .stockFront = 14, .stockRear = 43, .belt = false});
  std::vector<LapRow> rows;
  for (int front = 10; front <= 17; ++front)
    for (int rear = 30; rear <= 59; ++rear) rows.push_back(lapped(front, rear, 60.0 + 0.05 * (rear - 43)));
  rows[29] = lapped(10, 59, 72.3);  // far off
  book.add(rows);
  const ui::ChartPalette colours(map_.palette());
  const auto label = [&](double width) {
    const QSizeF size(width, 400);
    const ui::PairGrid grid = ui::PairGrid::in(book.ground().range, size, QFontMetricsF(map_.font()));
    return ui::PairPainting(
               {.book = book, .grid = grid, .colours = colours, .size = size, .font = map_.font()})
        .labelOf(book.at(10, 40)->row);
  };
  QStringList said;  // at ever narrower widths
  for (int width = 3000; width >= 300; width -= 10)
    if (const QString now = label(width); said.isEmpty() || said.back() != now) said << now;
  ASSERT_EQ(said.size(), 4) << said.join('|').toStdString();
  EXPECT_EQ(said[0], QStringLiteral("−0.15"));
  EXPECT_EQ(said[1].left(3), QStringLiteral("−0."));
  EXPECT_EQ(said[2].size(), 2) << "whole tenths";
  EXPECT_EQ(said[3], QString()) << "nothing is written over its neighbours";
  EXPECT_EQ(label(940), said[2]) << "as a window of 1280 px leaves it";
}

TEST(PairMapColours, LabelsAreReadUnderEveryPalette) {
  for (const auto& [name, palette] : palettes()) {
    const UnderPalette under(palette);
    const ui::ChartPalette colours(QApplication::palette());
    ui::PairBook book = someBook();
    const ui::PairGrid grid = ui::PairGrid::in(book.ground().range, {700, 260}, QFontMetricsF(QFont()));
    const ui::PairPainting painting(
        {.book = book, .grid = grid, .colours = colours, .size = {700, 260}, .font = QFont()});
    for (const ui::RankedPair& pair : book.pairs())
      EXPECT_GE(contrast(painting.inkOn(pair), painting.groundOf(pair)), 4.5) << name;
  }
}

TEST(PairWordsTest, SayWhatDecides) {
  EXPECT_EQ(
      ui::pairPickWords(someBook()).toStdString(),
      "15/41 is the quickest that fits: 0.30 s a lap quicker than stock, ±0.02 s. 15/42 is equal to it. "
      "Take 15/41: of those with the fewest swaps it changes the ratio least.");
  ui::PairBook book = someBook();
  book.begin(book.ground());
  EXPECT_EQ(ui::pairPickWords(book), QString()) << "nothing is said of what is out of date";
  book.add({lapped(16, 43, 60.0), lapped(15, 41, 60.005), lapped(14, 40, 59.7, false, 112)});
  book.propose(12, 50);
  book.settle();
  EXPECT_EQ(
      ui::pairPickWords(book).toStdString(),
      "Stock, 16/43, is the quickest that fits. 15/41 is equal to it. Stock is one of them: no swap is "
      "worth its while. 14/40 would be 0.30 s quicker still, with 112 links. The proposal, 12/50, is none "
      "of these pairs.");
}

TEST(PairBookTest, OldPairsStayUntilTheirNewFiguresCome) {
  ui::PairBook book = someBook();
  const std::size_t all = book.pairs().size();
  book.begin(book.ground());
  EXPECT_EQ(book.pairs().size(), all);
  EXPECT_TRUE(book.at(15, 41)->old);
  EXPECT_TRUE(book.isAsQuick(15, 42)) << "until there is another decision";
  LapRow time = lapped(15, 41, 60.5);
  book.add({time});
  time.bandS.reset();
  book.add({time});
  EXPECT_FALSE(book.at(15, 41)->old);
  EXPECT_TRUE(book.at(15, 41)->row.bandS) << "a band that is known stays";
  book.settle();
  EXPECT_EQ(book.pairs().size(), 1U);
}

}  // namespace
}  // namespace layshaft::test
