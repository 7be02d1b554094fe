// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/pair_laps_view.h"

#include <QLabel>
#include <QPushButton>
#include <QTabBar>
#include <QTabWidget>
#include <QThread>

#include "tests/ui/support.h"
#include "ui/document/preferences.h"
#include "ui/document/setup_edits.h"
#include "ui/pages/lap_page.h"
#include "ui/words/pair_laps_words.h"

namespace layshaft::test {
namespace {

/// The example that was worked out independently; stock is 16/43, proposed 15/43.
Profile lapped() {
  return profileFrom(contentsOf(sourceFolder() / "tests/reference/data/lap-club-600.bike.json"));
}

/// Instrumented code laps slowly, and its threads give way to others.
constexpr int kPatienceMs = 180000;

class PairLapsViewTest : public testing::Test, FreshSettings {
 protected:
  PairLapsViewTest() { ui::preferences::setUnits(ui::UnitsShown(ui::UnitSystem::Metric)); }

  void open(Profile profile) {
    window_ = std::make_unique<Window>(std::move(profile));
    page_ = (*window_)->findChild<ui::LapPage*>();
    view_ = (*window_)->findChild<ui::PairLapsView*>();
    (*window_)->findChild<QTabWidget*>()->setCurrentWidget(page_);
    look("Pairs");
  }
  void openAndFill(Profile profile) {
    open(std::move(profile));
    fill();
  }
  void fill() {
    ASSERT_TRUE(soon([&] { return view_->isVisible() && !view_->working(); }, kPatienceMs));
  }
  void look(const QString& name) {
    auto& bar = control<QTabBar>(*page_, "Ways to look at the laps");
    for (int i = 0; i < bar.count(); ++i)
      if (bar.tabText(i) == name) bar.setCurrentIndex(i);
    QTest::qWait(20);
  }
  ui::PairMap& map() { return *view_->findChild<ui::PairMap*>(); }
  QTableWidget& table() { return control<QTableWidget>(*view_, "Pairs by lap time"); }
  QString words() { return control<QLabel>(*view_, "Which pair to take").text(); }
  QString cell(int row, int column) { return table().item(row, column)->text(); }
  QPushButton& button(const QString& text) {
    for (auto* button : view_->findChildren<QPushButton*>())
      if (button->text() == text) return *button;
    throw std::runtime_error("no button " + text.toStdString());
  }
  QString proposed() {
    const auto setup = proposedSetup(document());
    return QString("%1/%2").arg(setup.frontTeeth.count()).arg(setup.rearTeeth.count());
  }
  ui::Document& document() { return (*window_)->document(); }

  std::unique_ptr<Window> window_;
  ui::LapPage* page_ = nullptr;
  ui::PairLapsView* view_ = nullptr;
};

TEST_F(PairLapsViewTest, RanksAllPairsThoseThatFitFirst) {
  openAndFill(lapped());
  const LadderInput input = ladderInput(window_->profile());
  const auto rows = LapLadder(input, *input.track).rows(usualRange(input), LapLadder::Bands::All);
  ASSERT_EQ(table().rowCount(), static_cast<int>(rows.size()));
  ASSERT_TRUE(rows[0].fits && !rows.back().fits) << "or the order says nothing";
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const auto at = static_cast<int>(i);
    EXPECT_EQ(cell(at, 0).section(',', 0, 0),
              QString("%1/%2").arg(rows[i].frontTeeth).arg(rows[i].rearTeeth));
    EXPECT_EQ(cell(at, 1), QLocale().toString(*rows[i].lapS, 'f', 2));
    EXPECT_NE(cell(at, 3), "–") << "its band";
  }
  const LapPick pick = lapPick(rows, 16, 43).value();
  EXPECT_TRUE(words().startsWith(cell(static_cast<int>(pick.quickest), 0).section(',', 0, 0)))
      << words().toStdString();
  EXPECT_TRUE(cell(static_cast<int>(pick.taken), 0).contains("the one to take"));
  for (const std::size_t equal : pick.equal)
    EXPECT_TRUE(cell(static_cast<int>(equal), 0).contains("equal to the quickest"));
  EXPECT_EQ(page_->picture(), &map());
  EXPECT_EQ(page_->numbers().size(), rows.size() + 1);
  EXPECT_THAT(
      page_->csv().toStdString(),
      testing::StartsWith("front_teeth,rear_teeth,final_ratio,lap_s,lap_change_s,lap_band_s,fits,links\n"));
}

TEST_F(PairLapsViewTest, AClickAKeyAndARowProposeAndCanBeUndone) {
  openAndFill(lapped());
  auto& history = document().undoStack();
  QTest::mouseClick(&map(), Qt::LeftButton, {}, map().cellOf(16, 44).center().toPoint());
  EXPECT_EQ(proposed(), "16/44");
  EXPECT_EQ(history.count(), 1);
  map().setFocus();
  QTest::keyClick(&map(), Qt::Key_Left);
  QTest::keyClick(&map(), Qt::Key_Up);
  QTest::keyClick(&map(), Qt::Key_Return);
  EXPECT_EQ(proposed(), "15/43");
  QTest::qWait(50);
  table().setFocus();
  table().setCurrentCell(0, 0);
  const QString first = cell(0, 0).section(',', 0, 0);
  QTest::keyClick(&table(), Qt::Key_Return);
  EXPECT_EQ(proposed(), first);
  while (history.canUndo()) history.undo();
  EXPECT_TRUE(same(window_->profile(), lapped()));
}

TEST_F(PairLapsViewTest, AnotherProposalIsMarkedAtOnceAndLapsNothing) {
  openAndFill(lapped());
  const auto proposedRows = [&] {
    QStringList rows;
    for (int r = 0; r < table().rowCount(); ++r)
      if (cell(r, 0).contains("proposed")) rows << cell(r, 0).section(',', 0, 0);
    return rows.join(' ');
  };
  EXPECT_EQ(proposedRows(), "15/43");
  ui::SetupEdits(document(), ui::Side::Proposed).setPair(16, 42);
  EXPECT_TRUE(soon([&] { return proposedRows() == "16/42"; }));
  EXPECT_FALSE(view_->working());
  ui::SetupEdits(document(), ui::Side::Proposed).setPair(9, 70);
  EXPECT_TRUE(soon([&] { return words().contains("The proposal, 9/70, is none of these pairs."); }))
      << words().toStdString();
}

TEST(PairLapsWords, SayWhatIsNotKnownAndWhoseTheOtherPartsAre) {
  ui::PairBook book;
  const LapRow row{.frontTeeth = 15,
                   .rearTeeth = 43,
                   .finalRatio = 2.867,
                   .lapS = 60.0,
                   .changeS = -0.2,
                   .bandS = 0.02,
                   .fits = true,
                   .links = {}};
  const auto said = [&](bool otherParts, const LapRow& of) {
    book.begin({.range = {15, 15, 43, 43}, .stockFront = 16, .stockRear = 43, .otherParts = otherParts});
    book.add({of});
    book.settle();
    return ui::pairPickWords(book).toStdString();
  };
  EXPECT_THAT(said(true, row), testing::AllOf(testing::HasSubstr("Whether pairs fit is not known"),
                                              testing::HasSubstr("the proposal's tyre, gearbox and chain")));
  LapRow known = row;
  known.links = 112;
  EXPECT_THAT(said(false, known), testing::AllOf(testing::Not(testing::HasSubstr("not known")),
                                                 testing::Not(testing::HasSubstr("tyre"))));
}

TEST(PairLapsWords, ABeltHasPulleys) {
  const LapRow both{.frontTeeth = 15,
                    .rearTeeth = 42,
                    .finalRatio = 2.8,
                    .lapS = 60.0,
                    .changeS = -0.2,
                    .bandS = 0.02,
                    .fits = true,
                    .links = 112};
  LapRow one = both;
  one.rearTeeth = 43;
  const auto said = [&](bool belt) {
    ui::PairBook book;
    book.begin({.range = {15, 15, 42, 43}, .stockFront = 16, .stockRear = 43, .belt = belt});
    book.add({both, one});
    book.settle();
    return ui::pairPickWords(book).toStdString();
  };
  EXPECT_THAT(said(true), testing::AllOf(testing::HasSubstr("swaps one pulley only"),
                                         testing::Not(testing::HasSubstr("sprocket"))));
  EXPECT_THAT(said(false), testing::HasSubstr("swaps one sprocket only"));
}

TEST_F(PairLapsViewTest, AnAimChangesNothing) {
  openAndFill(lapped());
  document().edit({.field = QStringLiteral("aims"), .title = QStringLiteral("aims")},
                  [](Profile& p) { p.aims = {{.want = Aim::Want::LeastLapTime}}; });
  EXPECT_FALSE(view_->working());
}

TEST_F(PairLapsViewTest, WhatTheLapsDependOnLapsThemAnew) {
  openAndFill(lapped());
  const QString before = cell(0, 1);
  document().edit({.field = QStringLiteral("temperature"), .title = QStringLiteral("temperature")},
                  [](Profile& p) { p.bike.chassis->tyreGrip = 1.0; });
  EXPECT_TRUE(view_->working());
  EXPECT_TRUE(soon([&] { return !view_->working() && cell(0, 1) != before; }));
}

TEST_F(PairLapsViewTest, OutOfSightNothingIsLapped) {
  open(lapped());
  look("One Lap");
  EXPECT_FALSE(view_->working()) << "what was under way is stopped";
  document().edit({.field = QStringLiteral("grip"), .title = QStringLiteral("grip")},
                  [](Profile& p) { p.bike.chassis->tyreGrip = 1.0; });
  QTest::qWait(150);
  EXPECT_FALSE(view_->working());
  look("Pairs");
  EXPECT_TRUE(soon([&] { return !view_->working() && !words().isEmpty(); }));
}

/// A recorded line of many stretches, so that laps take their time.
Profile longLaps() {
  Profile profile = lapped();
  TrackPath path{.spacingM = 2.0, .curvaturePerKm = {}, .slopePercent = {}, .xM = {}, .yM = {}, .source = {}};
  for (int i = 0; i < 1200; ++i)  // no two alike, or they would be one stretch
    path.curvaturePerKm.push_back(i % 150 < 100 ? 0.001 * (i % 3) : 20.0 + 0.01 * (i % 7));
  Track track{.name = "Recorded", .closed = true};
  track.path = SharedPath(path);
  profile.tracks = {track};
  profile.ride->track.clear();
  return profile;
}

TEST_F(PairLapsViewTest, CanBeStoppedAndGoesOnWhenAsked) {
  open(longLaps());
  ASSERT_TRUE(soon([&] { return button("Stop").isVisible(); }));
  button("Stop").click();
  EXPECT_FALSE(view_->working());
  EXPECT_FALSE(button("Stop").isVisible());
  ASSERT_TRUE(button("Recalculate").isVisible());
  EXPECT_TRUE(words().isEmpty());
  button("Recalculate").click();
  EXPECT_TRUE(view_->working());
  EXPECT_TRUE(soon([&] { return !view_->working() && !words().isEmpty(); }, kPatienceMs));
  EXPECT_FALSE(button("Recalculate").isVisible());
}

TEST_F(PairLapsViewTest, OldFiguresStayGreyedUntilNewOnesCome) {
  openAndFill(longLaps());
  const int rows = table().rowCount();
  const QColor usual = table().palette().color(QPalette::Text);
  // Keeps every thread of the lane busy, so that the new laps are late.
  ui::BackgroundWork busy((*window_)->session().lane());
  constexpr std::size_t kMoreThanThreads = 256;
  busy.start(std::vector<ui::BackgroundWork::Part>(
      kMoreThanThreads, [](const ui::BackgroundWork::Stopped& stopped) -> ui::BackgroundWork::Delivery {
        while (!stopped()) QThread::msleep(1);
        return {};
      }));
  document().edit({.field = QStringLiteral("grip"), .title = QStringLiteral("grip")},
                  [](Profile& p) { p.bike.chassis->tyreGrip = 1.0; });
  ASSERT_TRUE(soon([&] { return table().palette().color(QPalette::Text) != usual; }));
  EXPECT_EQ(table().rowCount(), rows);
  EXPECT_FALSE(control<QLabel>(*view_, "Which pair to take").isEnabled());
  busy.cancel();
  fill();
  EXPECT_EQ(table().palette().color(QPalette::Text), usual);
  EXPECT_TRUE(control<QLabel>(*view_, "Which pair to take").isEnabled());
}

TEST_F(PairLapsViewTest, WhatIsUnderTheCursorIsSaid) {
  openAndFill(lapped());
  auto& under = control<QLabel>(*view_, "The pair under the cursor");
  EXPECT_TRUE(under.text().contains("Hatched")) << "what the signs mean, until something is pointed at";
  map().moveTo(std::pair(15, 43));
  EXPECT_TRUE(under.text().startsWith("15/43: 39.58 s a lap; 0.04 s quicker than stock"))
      << under.text().toStdString();
}

TEST_F(PairLapsViewTest, TheViewInUseIsKept) {
  openAndFill(lapped());
  const QVariantMap state = page_->state();
  EXPECT_EQ(state.value("view").toString(), "pairs");
  window_.reset();
  open(lapped());
  look("One Lap");
  page_->restore(state);
  EXPECT_TRUE(soon([&] { return view_->isVisible(); }));
}

TEST_F(PairLapsViewTest, OnAUsualScreenTheWholeMapIsInView) {
  ui::preferences::setHintsDismissed(true);
  openAndFill(lapped());
  (*window_)->resize(1270, 690);
  EXPECT_TRUE(soon([&] { return map().visibleRegion().boundingRect() == map().rect(); })) << map().height();
}

}  // namespace
}  // namespace layshaft::test
