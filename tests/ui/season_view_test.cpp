// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/season_view.h"

#include <QHeaderView>
#include <QSignalSpy>

#include "core/bike/pair.h"
#include "core/plan.h"
#include "tests/ui/lap_view_test.h"
#include "ui/words/lap_words.h"
#include "ui/words/numbers.h"
#include "ui/words/pair_laps_words.h"
#include "ui/words/season_words.h"

namespace layshaft::test {
namespace {

class SeasonViewTest : public LapViewTest<ui::SeasonView, ui::SeasonStudy> {
 protected:
  enum Column { Name, Pair, Lap, OneLoses, StockLoses, ProposalLoses };

  SeasonViewTest() : LapViewTest("All Tracks") {}

  ui::FiguresTable& table() { return control<ui::FiguresTable>(*view_, "Tracks of the season"); }
  ui::FiguresTable& pairs() { return control<ui::FiguresTable>(*view_, "One pair for all tracks"); }
  QString cell(int row, int column) { return table().item(row, column)->text(); }
  /// Without the chain that it takes.
  QString pairIn(int row) { return cell(row, Pair).section(QLatin1Char(','), 0, 0); }
  QString words() { return control<QLabel>(*view_, "The season in words").text(); }
  void tick(int row, bool on) { table().item(row, 0)->setCheckState(on ? Qt::Checked : Qt::Unchecked); }

  /// As the core says it of some of the tracks.
  layshaft::Season seasonOf(const std::vector<std::size_t>& tracks) {
    const LadderInput input = ladderInput(profile());
    std::vector<std::vector<LapRow>> rows;
    for (const std::size_t track : tracks)
      rows.push_back(
          LapLadder(input, profile().tracks[track]).rows(usualRange(input), LapLadder::Bands::None));
    return season(rows);
  }
  static QString textOf(const SeasonPair& pair) { return ui::pairText(pair.frontTeeth, pair.rearTeeth); }
};

TEST_F(SeasonViewTest, SaysWhichPairLosesLeastAsTheCoreDoes) {
  open(sampleBike("club-600"));
  const auto count = static_cast<int>(profile().tracks.size());
  ASSERT_GE(count, 2);
  std::vector<std::size_t> all;
  for (int i = 0; i < count; ++i) all.push_back(static_cast<std::size_t>(i));
  const auto season = seasonOf(all);
  EXPECT_THAT(words().toStdString(),
              testing::StartsWith(QString("%1 for the %2 tracks loses %3 s over a lap of each.")
                                      .arg(textOf(season.one()))
                                      .arg(count)
                                      .arg(ui::number(season.one().lossS, 2))
                                      .toStdString()));
  ASSERT_EQ(table().rowCount(), count + 1);
  for (int i = 0; i < count; ++i) {
    const auto track = static_cast<std::size_t>(i);
    EXPECT_EQ(cell(i, Name).toStdString(), profile().tracks[track].name);
    EXPECT_EQ(pairIn(i), textOf(season.pairs[season.quickest[track]]));
    EXPECT_EQ(cell(i, OneLoses), ui::number(season.one().laterS[track], 2));
  }
  EXPECT_EQ(cell(count, OneLoses), ui::number(season.one().lossS, 2));
  for (int i = 0; i < pairs().rowCount(); ++i) {
    const auto& pair = season.pairs[static_cast<std::size_t>(i)];
    EXPECT_EQ(pairs().item(i, 0)->text(), textOf(pair));
    EXPECT_EQ(pairs().item(i, 1)->text(), ui::number(pair.lossS, 2));
  }
}

TEST_F(SeasonViewTest, TheLossCarriesItsBand) {
  open(sampleBike("club-600"));
  std::vector<std::size_t> all;
  for (std::size_t i = 0; i < profile().tracks.size(); ++i) all.push_back(i);
  const auto season = seasonOf(all);
  double band = 0.0;
  for (const std::size_t track : all) {
    const LapLadder ladder(ladderInput(profile()), profile().tracks[track]);
    const auto rowOf = [&](const SeasonPair& pair) {
      return ladder.row(pair.frontTeeth, pair.rearTeeth, LapLadder::Bands::None);
    };
    band += ladder.bandS(rowOf(season.pairs[season.quickest[track]]), rowOf(season.one())).value();
  }
  ASSERT_GT(band, 0.0);
  const QString told = QString("The loss may be off by ±%1 s.").arg(ui::bandText(band));
  EXPECT_TRUE(soon([&] { return words().contains(told); })) << words().toStdString();
  tick(0, false);
  EXPECT_FALSE(words().contains(told)) << "it is of another season";
}

/// All that comes behind it is lapped against it with everything in doubt, on every track.
TEST_F(SeasonViewTest, PairsThatCannotBeToldFromTheOneAreNamed) {
  open(sampleBike("club-600"));
  std::vector<std::size_t> all;
  std::vector<std::unique_ptr<LapLadder>> ladders;
  for (std::size_t i = 0; i < profile().tracks.size(); ++i) {
    all.push_back(i);
    ladders.push_back(std::make_unique<LapLadder>(ladderInput(profile()), profile().tracks[i]));
  }
  const auto season = seasonOf(all);
  QStringList equal;
  for (std::size_t i = 1; i < ui::kSeasonPairsTold; ++i) {
    const SeasonPair& pair = season.pairs.at(i);
    double band = 0.0;
    for (const auto& ladder : ladders) {
      const auto rowOf = [&](const SeasonPair& of) {
        return ladder->row(of.frontTeeth, of.rearTeeth, LapLadder::Bands::None);
      };
      band += ladder->bandS(rowOf(season.one()), rowOf(pair)).value();
    }
    if (pair.fits == season.one().fits && pair.lossS - season.one().lossS <= std::max(band, kEqualTimesS))
      equal << textOf(pair);
  }
  ASSERT_FALSE(equal.isEmpty()) << "the sample tells nothing";
  const QString told = ui::equalPairsWords(equal);
  EXPECT_TRUE(soon([&] { return words().contains(told); }))
      << told.toStdString() << " is not in: " << words().toStdString();
}

/// Every cell against plans of the bike with that pair on that track.
TEST_F(SeasonViewTest, LossesAreThoseOfThePlans) {
  open(sampleBike("club-600"));
  for (std::size_t track = 0; track < profile().tracks.size(); ++track) {
    Profile on = profile();
    on.ride->track = on.tracks[track].name;
    const auto lapOf = [&](const QString& pair) {
      on.proposed = proposalWithPair(profile(), Teeth::front(pair.section('/', 0, 0).toInt()).value(),
                                     Teeth::rear(pair.section('/', 1).toInt()).value());
      return plan(on).proposed.lap->timeS;
    };
    const int row = static_cast<int>(track);
    const double best = lapOf(pairIn(row));
    EXPECT_EQ(cell(row, Lap), ui::number(best, 2));
    EXPECT_EQ(cell(row, OneLoses), ui::number(lapOf(pairs().item(0, 0)->text()) - best, 2));
    on.proposed = profile().proposed;
    EXPECT_EQ(cell(row, StockLoses), ui::number(plan(on).stock.lap->timeS - best, 2));
    EXPECT_EQ(cell(row, ProposalLoses), ui::number(plan(on).proposed.lap->timeS - best, 2));
    // No pair that fits in the plainest search of all is quicker.
    const LadderInput input = ladderInput(on);
    for (const PairTeeth& pair : pairsThatFit(input, usualRange(input)))
      EXPECT_GE(lapOf(ui::pairText(pair.front, pair.rear)), best - 1e-9);
  }
}

TEST_F(SeasonViewTest, TickedTracksMakeTheSeasonAndStayTicked) {
  open(sampleBike("club-600"));
  const int sums = table().rowCount() - 1;
  for (int i = 1; i < sums; ++i) tick(i, false);
  const auto alone = seasonOf({0});
  EXPECT_EQ(pairs().item(0, 0)->text(), textOf(alone.one()));
  EXPECT_EQ(cell(sums, OneLoses), ui::number(alone.one().lossS, 2));
  EXPECT_EQ(cell(sums, Lap), cell(0, Lap));
  EXPECT_NE(cell(1, Lap), ui::number(0, 2)) << "the others are still told";
  const QVariantMap state = view_->state();
  open(sampleBike("club-600"));
  EXPECT_EQ(table().item(1, 0)->checkState(), Qt::Checked);
  view_->restore(state);
  EXPECT_EQ(table().item(1, 0)->checkState(), Qt::Unchecked);
  EXPECT_EQ(pairs().item(0, 0)->text(), textOf(alone.one()));
  for (int i = 0; i < sums; ++i) tick(i, false);
  EXPECT_EQ(words(), "Tick the tracks of the season.");
  EXPECT_EQ(pairs().rowCount(), 0);
}

TEST_F(SeasonViewTest, WhatIsLeftOutOfOneBikesSeasonIsNotLeftOutOfAnothers) {
  open(sampleBike("club-600"));
  tick(1, false);
  const QVariantMap state = view_->state();
  Profile another = sampleBike("club-600");
  another.name = "Another bike";
  open(another);
  view_->restore(state);
  EXPECT_EQ(table().item(1, 0)->checkState(), Qt::Checked);
}

TEST_F(SeasonViewTest, TheSpaceBarTicks) {
  open(sampleBike("club-600"));
  table().setFocus();
  table().setCurrentCell(1, Lap);
  QTest::keyClick(&table(), Qt::Key_Space);
  EXPECT_EQ(table().item(1, 0)->checkState(), Qt::Unchecked);
  QTest::keyClick(&table(), Qt::Key_Space);
  EXPECT_EQ(table().item(1, 0)->checkState(), Qt::Checked);
}

TEST_F(SeasonViewTest, ARowsPairBecomesTheProposalInOneStep) {
  open(sampleBike("club-600"));
  const Profile before = profile();
  const QString pair = pairs().item(2, 0)->text();
  pairs().setFocus();
  pairs().setCurrentCell(2, 0);
  EXPECT_EQ(button("Propose").text(), "Propose " + pair);
  QTest::keyClick(&pairs(), Qt::Key_Return);
  EXPECT_EQ(ui::teethPair(proposedSetup(document())), pair);
  EXPECT_EQ(history().count(), 1);
  EXPECT_TRUE(soon([&] { return table().horizontalHeaderItem(ProposalLoses)->text().contains(pair); }));
  history().undo();
  EXPECT_TRUE(same(profile(), before));
  table().setCurrentCell(0, 0);
  button("Propose").click();
  EXPECT_EQ(ui::teethPair(proposedSetup(document())), pairIn(0)) << "of the table chosen last";
}

TEST_F(SeasonViewTest, ARowsTrackBecomesTheOneThatIsRidden) {
  open(sampleBike("club-600"));
  table().setCurrentCell(1, 0);
  button("Ride").click();
  EXPECT_EQ(profile().ride->track, profile().tracks[1].name);
  history().undo();
  table().setCurrentCell(table().rowCount() - 1, 0);
  EXPECT_FALSE(button("Ride").isEnabled()) << "the row of sums is no track";
}

TEST(SeasonBook, APairOutsideOfTheRangeIsNotTheOneEvenIfItIsQuicker) {
  const auto rowOf = [](int front, int rear, double lapS) {
    return LapRow{.frontTeeth = front, .rearTeeth = rear, .finalRatio = 3.0, .lapS = lapS, .fits = true};
  };
  ui::SeasonBook book;
  book.range = {15, 16, 40, 45};
  book.tracks.push_back({.track = {.name = "Short"}, .rows = {rowOf(16, 45, 60.0), rowOf(16, 50, 59.0)}});
  addUp(book);
  ASSERT_FALSE(book.season.empty());
  EXPECT_EQ(book.season.one().rearTeeth, 45);
  EXPECT_EQ(book.quickest(0)->rearTeeth, 45);
  EXPECT_EQ(book.lossS(0, book.lapS(0, {16, 50})), -1.0);
  EXPECT_EQ(book.lapS(0, {16, 44}), std::nullopt);
}

TEST_F(SeasonViewTest, AProposalOutsideOfTheRangeIsLappedTooButIsNotTheOne) {
  Profile bike = sampleBike("club-600");
  const LadderRange range = usualRange(ladderInput(bike));
  bike.proposed.rearTeeth = rear(range.mostRear + 4);
  open(bike);
  EXPECT_TRUE(soon([&] { return cell(0, ProposalLoses).toDouble() != 0.0; }));
  EXPECT_FALSE(pairs().item(0, 0)->text().endsWith(QString::number(range.mostRear + 4)));
}

TEST(SeasonBook, SaysWhichChainAPairTakesAndWhatIsNotKnown) {
  const LapRow needs{.frontTeeth = 15,
                     .rearTeeth = 42,
                     .finalRatio = 2.8,
                     .lapS = 60.0,
                     .changeS = {},
                     .bandS = {},
                     .fits = false,
                     .links = 112};
  LapRow unknown = needs;
  unknown.fits = true;
  unknown.links.reset();
  const auto bookOf = [](const LapRow& row) {
    ui::SeasonBook book;
    book.range = {15, 15, 42, 42};
    book.tracks = {{.track = {.name = "Fen"}, .chosen = true, .rows = {row}}};
    book.worked = true;
    ui::addUp(book);
    return book;
  };
  EXPECT_EQ(ui::seasonTable(bookOf(needs), {15, 42}, {15, 42})[1][1], "15/42, 112 links");
  EXPECT_EQ(ui::seasonPairsTable(bookOf(needs))[1][3], "fits with 112 links");
  EXPECT_EQ(ui::seasonTable(bookOf(unknown), {15, 42}, {15, 42})[1][1], "15/42");
  EXPECT_EQ(ui::seasonPairsTable(bookOf(unknown))[1][3], "–");
}

/// A book of pairs on one track that lap it in these times.
ui::SeasonBook bookOfTimes(const std::vector<double>& seconds) {
  ui::SeasonBook book;
  book.range = {15, 15, 40, 49};
  book.tracks = {{.track = {.name = "Fen"}}};
  for (std::size_t i = 0; i < seconds.size(); ++i)
    book.tracks[0].rows.push_back({.frontTeeth = 15,
                                   .rearTeeth = 40 + static_cast<int>(i),
                                   .finalRatio = 2.8,
                                   .lapS = seconds[i],
                                   .changeS = {},
                                   .bandS = {},
                                   .fits = true,
                                   .links = 112});
  book.worked = true;
  ui::addUp(book);
  return book;
}

TEST(SeasonBook, KnowsWhichPairsAreEqualToTheOneOnceBandsAreThere) {
  ui::SeasonBook book = bookOfTimes({60.0, 60.03, 60.04, 60.2});
  EXPECT_FALSE(book.pick({15, 41}));
  EXPECT_THAT(ui::seasonWords(book, {15, 41}).toStdString(), testing::Not(testing::HasSubstr("equal")));
  book.bandS = 0.03;
  book.behindBandS = {0.05, 0.02, 0.05};
  EXPECT_THAT(book.pick({15, 41})->equal, testing::ElementsAre(1));
  EXPECT_THAT(ui::seasonWords(book, {15, 41}).toStdString(),
              testing::HasSubstr("Fen. 15/41 is equal to it. Stock is one of them"));
  EXPECT_THAT(ui::seasonWords(book, {14, 40}).toStdString(),
              testing::HasSubstr("15/41 is equal to it. Take 15/40: it alone swaps one sprocket only."));
  book.season.pairs[1].fits = false;
  EXPECT_THAT(book.pick({15, 41})->equal, testing::IsEmpty()) << "one that does not fit is no choice";
}

TEST(SeasonBook, OfABeltItSpeaksOfPulleysAndTeeth) {
  ui::SeasonBook book = bookOfTimes({60.0});
  book.season.swaps = 2;
  book.season.chainChanges = 1;
  EXPECT_THAT(ui::seasonWords(book, {15, 40}).toStdString(),
              testing::HasSubstr("2 sprockets and the chain once"));
  book.belt = true;
  EXPECT_THAT(ui::seasonWords(book, {15, 40}).toStdString(),
              testing::HasSubstr("2 pulleys and the belt once"));
  book.tracks[0].rows[0].fits = false;
  ui::addUp(book);
  EXPECT_EQ(ui::seasonTable(book, {15, 40}, {15, 40})[1][1], "15/40, belt of 112");
  EXPECT_EQ(ui::seasonPairsTable(book)[1][3], "fits with 112 teeth");
}

TEST_F(SeasonViewTest, TracksWithoutALapAreSaidWithTheReason) {
  Profile bike = sampleBike("club-600");
  bike.tracks.push_back({.name = "Begun"});
  bike.tracks.push_back({.name = "Oval", .closed = true, .segments = {{.name = {}, .lengthM = 900}}});
  open(bike);
  EXPECT_THAT(words().toStdString(),
              testing::AllOf(testing::HasSubstr("Begun has nothing to ride on yet."),
                             testing::HasSubstr("Oval is closed and has no bend"),
                             testing::StartsWith(pairs().item(0, 0)->text().toStdString())));
  const int sums = table().rowCount() - 1;
  EXPECT_EQ(cell(sums - 1, Pair), "no lap");
  EXPECT_NE(cell(sums, OneLoses), "–") << "the others have their sum";
}

TEST_F(SeasonViewTest, WithOneTrackThePairIsItsOwn) {
  Profile bike = sampleBike("club-600");
  bike.tracks.resize(1);
  open(bike);
  EXPECT_EQ(table().rowCount(), 2);
  EXPECT_THAT(words().toStdString(), testing::HasSubstr("over a lap of " + bike.tracks[0].name));
  EXPECT_THAT(words().toStdString(), testing::Not(testing::HasSubstr("change")));
}

TEST_F(SeasonViewTest, NothingIsWorkedOutUnlessSomebodyLooks) {
  openPage(sampleBike("club-600"));
  QSignalSpy parts(study_, &ui::SeasonStudy::partReady);
  QTest::qWait(100);
  EXPECT_EQ(parts.count(), 0);
  EXPECT_FALSE(study_->running());
  look();
  EXPECT_TRUE(study_->running());
  look("One Lap");
  EXPECT_FALSE(study_->running());
  look();
  wait();
  const auto worked = parts.count();
  EXPECT_GT(worked, 0);
  ui::SetupEdits(document(), ui::Side::Proposed).setRearTeeth(44);
  QTest::qWait(100);
  EXPECT_EQ(parts.count(), worked) << "every pair was asked already";
  look("One Lap");
  look();
  EXPECT_FALSE(study_->running());
  document().edit({.field = "mass", .title = "mass", .shown = {}},
                  [](Profile& p) { p.bike.chassis->massKg = 175; });
  EXPECT_TRUE(soon([&] { return study_->running() || parts.count() > worked; }));
}

TEST_F(SeasonViewTest, AStopLeavesTheRestToBeAskedFor) {
  openPage(sampleBike("club-600"));
  look();
  ASSERT_TRUE(study_->running());
  button("Stop").click();
  EXPECT_FALSE(study_->running());
  EXPECT_TRUE(button("Recalculate").isVisible());
  EXPECT_EQ(cell(0, Pair), "–");
  QTest::qWait(50);
  EXPECT_FALSE(study_->running());
  button("Recalculate").click();
  wait();
  EXPECT_NE(cell(0, Pair), "–");
  EXPECT_FALSE(button("Recalculate").isVisible());
}

TEST_F(SeasonViewTest, OldFiguresStandBackUntilNewOnesAreThere) {
  open(sampleBike("club-600"));
  const QColor usual = table().palette().color(QPalette::Text);
  const QString lap = cell(0, Lap);
  document().edit({.field = "mass", .title = "mass", .shown = {}},
                  [](Profile& p) { p.bike.chassis->massKg = 175; });
  ASSERT_TRUE(soon([&] { return study_->running(); }));
  EXPECT_NE(table().palette().color(QPalette::Text), usual);
  EXPECT_EQ(cell(0, Lap), lap);
  EXPECT_TRUE(soon([&] { return cell(0, Lap) != lap; }));
  EXPECT_EQ(table().palette().color(QPalette::Text), usual);
}

TEST_F(SeasonViewTest, NothingIsCutOnAUsualScreenNorOnANarrowOne) {
  open(sampleBike("club-600"));
  expectNothingCut("The season in words", button("Ride"), table(), table().rowHeight(0));
  // In the narrow one: every column of both tables has its place, the names too.
  for (const auto* one : {&table(), &pairs()})
    EXPECT_LE(one->horizontalHeader()->length(), one->viewport()->width())
        << one->accessibleName().toStdString();
  const QString name = cell(0, Name);
  EXPECT_LE(table().fontMetrics().horizontalAdvance(name), 2 * (table().columnWidth(Name) - 30));
}

TEST_F(SeasonViewTest, TheTableGoesToOtherProgramsToo) {
  open(sampleBike("club-600"));
  const QStringList lines = view_->csv().split('\n', Qt::SkipEmptyParts);
  ASSERT_EQ(lines.size(), static_cast<qsizetype>(profile().tracks.size()) + 1);
  for (const QString& line : lines.mid(1)) EXPECT_THAT(line.toStdString(), testing::HasSubstr(",true,"));
  EXPECT_EQ(view_->numbers().size(), profile().tracks.size() + 2);
}

}  // namespace
}  // namespace layshaft::test
