// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/ladder_page.h"
#include "ui/document/preferences.h"

#include <QLabel>
#include <QListWidget>
#include <QMenu>
#include <QScrollBar>
#include <QSignalSpy>
#include <QTabWidget>

#include "tests/ui/support.h"
#include "ui/editors/aim_editor.h"
#include "ui/words/aim_words.h"
#include "ui/words/numbers.h"

namespace layshaft::test {
namespace {

using ui::LadderModel;

class LadderPageTest : public testing::Test, FreshSettings {
 protected:
  LadderPageTest() {
    ui::preferences::setUnits(ui::UnitsShown(ui::UnitSystem::Metric));
    window_ = std::make_unique<Window>(workedExample());
    auto* tabs = (*window_)->findChild<QTabWidget*>();
    for (int i = 0; i < tabs->count(); ++i)
      if (tabs->tabText(i) == "Ladder") tabs->setCurrentIndex(i);
    page_ = qobject_cast<ui::LadderPage*>(tabs->currentWidget());
    fill();
  }
  QTableView& table() { return control<QTableView>(*page_, "Ladder"); }
  int shownRows() { return table().model()->rowCount(); }
  QString cell(int row, int column) { return table().model()->index(row, column).data().toString(); }
  void fill() {
    const std::size_t pairs = usualRange(ladderInput(window_->profile())).pairs();
    ASSERT_TRUE(soon([&] { return static_cast<std::size_t>(shownRows()) == pairs; }));
    QTest::qWait(50);
  }
  int rowOf(const QString& pair) {
    for (int r = 0; r < shownRows(); ++r)
      if (cell(r, LadderModel::Pair).startsWith(pair)) return r;
    return -1;
  }
  void tick(const QString& name) {
    for (auto* box : page_->findChildren<QCheckBox*>())
      if (box->text() == name) return box->click();
    throw std::runtime_error("no box " + name.toStdString());
  }
  void push(const QString& name) {
    for (auto* button : page_->findChildren<QPushButton*>())
      if (button->text() == name) return button->click();
    throw std::runtime_error("no button " + name.toStdString());
  }

  std::unique_ptr<Window> window_;
  ui::LadderPage* page_ = nullptr;
};

TEST_F(LadderPageTest, ShowsEveryPairOfTheRangeFromShortToTall) {
  const LadderRange range = usualRange(ladderInput(window_->profile()));
  EXPECT_TRUE(soon([&] { return static_cast<std::size_t>(shownRows()) == range.pairs(); }));
  for (int r = 1; r < shownRows(); ++r)
    EXPECT_GE(cell(r - 1, LadderModel::FinalRatio).toDouble(), cell(r, LadderModel::FinalRatio).toDouble());
  EXPECT_EQ(cell(rowOf("15/43"), LadderModel::Pair), "15/43 proposed");
  EXPECT_EQ(cell(rowOf("16/43"), LadderModel::Pair), "16/43 stock");
}

TEST_F(LadderPageTest, AChosenRowBecomesTheProposalInOneStep) {
  const QModelIndex index = table().model()->index(rowOf("16/45"), 0);
  emit table().activated(index);
  const layshaft::Setup proposed = proposedSetup((*window_)->document());
  EXPECT_EQ(proposed.frontTeeth.count(), 16);
  EXPECT_EQ(proposed.rearTeeth.count(), 45);
  EXPECT_EQ((*window_)->document().undoStack().count(), 1);
  EXPECT_EQ((*window_)->document().undoStack().undoText(), "proposed pair 15/43 → 16/45");
  EXPECT_TRUE(soon([&] { return cell(rowOf("16/45"), LadderModel::Pair) == "16/45 proposed"; }));
}

TEST_F(LadderPageTest, ChoosingAPairDoesNotWorkTheLadderOutAgain) {
  const int rows = shownRows();
  QSignalSpy worked(&(*window_)->session().ladder(), &ui::LadderStudy::progressed);
  emit table().activated(table().model()->index(rowOf("16/45"), 0));
  QTest::qWait(100);
  EXPECT_EQ(shownRows(), rows);
  EXPECT_EQ(worked.count(), 0);
}

TEST_F(LadderPageTest, AnotherTyreDoes) {
  const QString before = cell(rowOf("16/43"), LadderModel::Gears);
  ui::SetupEdits((*window_)->document(), ui::Side::Proposed).setTyre("190/55ZR17");
  EXPECT_TRUE(
      soon([&] { return rowOf("16/43") >= 0 && cell(rowOf("16/43"), LadderModel::Gears) != before; }));
}

TEST_F(LadderPageTest, FiltersLeaveWhatTheySay) {
  tick("Fits this chain");
  ASSERT_GT(shownRows(), 0);
  for (int r = 0; r < shownRows(); ++r) EXPECT_TRUE(cell(r, LadderModel::Fits).startsWith("fits"));
  tick("From the spares box");
  ASSERT_GT(shownRows(), 0);
  for (int r = 0; r < shownRows(); ++r) EXPECT_EQ(cell(r, LadderModel::Spares), "both");
  tick("From the spares box");
  tick("Fits this chain");
  tick("Same ratio only");
  ASSERT_GT(shownRows(), 0);
  EXPECT_GE(rowOf("15/45"), 0);
  EXPECT_TRUE(cell(rowOf("15/45"), LadderModel::Aims).contains("same ratio as"));
  EXPECT_EQ(rowOf("16/43"), -1);
  tick("Same ratio only");
  control<QAbstractSpinBox>(*page_, "Within per cent").setFocus();
  typeInto(control<QAbstractSpinBox>(*page_, "Within per cent"), "3");
  ASSERT_GT(shownRows(), 0);
  for (int r = 0; r < shownRows(); ++r)
    EXPECT_LE(std::abs(cell(r, LadderModel::Change).replace("−", "-").remove("±").toDouble()), 3.0);
}

TEST_F(LadderPageTest, AWiderRangeFillsUpAndCanBeStopped) {
  auto& most = control<QSpinBox>(*page_, "Most rear teeth");
  const int before = shownRows();
  most.setValue(60);
  EXPECT_TRUE(soon([&] { return shownRows() > before; }));
  ui::BackgroundLane lane;
  ui::LadderStudy study{lane};
  QSignalSpy stopped(&study, &ui::LadderStudy::cancelled), ended(&study, &ui::LadderStudy::finished);
  study.start(ladderInput(window_->profile()), {9, 24, 25, 70});
  EXPECT_TRUE(study.running());
  study.cancel();
  EXPECT_EQ(stopped.count(), 1);
  EXPECT_FALSE(study.running());
  QTest::qWait(100);
  EXPECT_EQ(ended.count(), 0) << "what was under way is dropped";
}

TEST_F(LadderPageTest, TheWholeOfTheLargestLadderComesIn) {
  ui::BackgroundLane lane;
  ui::LadderStudy study{lane};
  std::size_t rows = 0;
  QObject::connect(&study, &ui::LadderStudy::rowsReady, &study,
                   [&](const std::vector<LadderRow>& more) { rows += more.size(); });
  QSignalSpy ended(&study, &ui::LadderStudy::finished);
  study.start(ladderInput(window_->profile()), {9, 24, 25, 70});
  EXPECT_TRUE(soon([&] { return ended.count() == 1; }));
  EXPECT_EQ(rows, 16u * 46u);
}

TEST_F(LadderPageTest, APairIsPinnedToTheChartsAndSaved) {
  table().setCurrentIndex(table().model()->index(rowOf("14/43"), 0));
  push("Pin");
  ASSERT_EQ(window_->profile().pins.size(), 1u);
  EXPECT_EQ(window_->profile().pins[0].name, "14/43");
  EXPECT_EQ(window_->profile().pins[0].change.frontTeeth, front(14));
  EXPECT_TRUE(same(profileFrom(writeProfile(window_->profile())), window_->profile()));
  push("Pin");
  EXPECT_EQ(window_->profile().pins.size(), 1u) << "once is enough";
  for (const char* pair : {"15/44", "15/45", "16/44", "16/45", "14/44"}) {
    table().setCurrentIndex(table().model()->index(rowOf(pair), 0));
    push("Pin");
  }
  EXPECT_EQ(window_->profile().pins.size(), 4u) << "there is room for four";
}

TEST_F(LadderPageTest, AnAimIsStatedRankedSavedAndRemoved) {
  auto& kind = control<QComboBox>(*page_, "Kind of aim");
  kind.setCurrentIndex(static_cast<int>(Aim::Want::PullGain));
  control<QSpinBox>(*page_, "Aim: per cent").setValue(10);
  control<QSpinBox>(*page_, "Aim: gear").setValue(2);
  push("Add Aim");
  ASSERT_EQ(window_->profile().aims.size(), 1u);
  EXPECT_EQ(window_->profile().aims[0], (Aim{.want = Aim::Want::PullGain, .gear = 2, .percent = 10}));
  auto& list = control<QListWidget>(*page_, "Aims");
  ASSERT_TRUE(soon([&] { return list.count() == 1; }));
  EXPECT_EQ(list.item(0)->text(), "10 % more pull in gear 2");
  EXPECT_TRUE(soon(
      [&] { return rowOf("15/43") >= 0 && cell(rowOf("15/43"), LadderModel::Aims).startsWith("0 of 1"); }));
  table().sortByColumn(LadderModel::Aims, Qt::AscendingOrder);
  EXPECT_TRUE(soon([&] {
    return cell(0, LadderModel::Aims).startsWith("all") && cell(0, LadderModel::Fits).startsWith("fits");
  })) << "those that reach it and fit come first";
  list.setCurrentRow(0);
  push("Remove Aim");
  EXPECT_TRUE(window_->profile().aims.empty());
}

TEST_F(LadderPageTest, CsvHasARowPerPairInView) {
  EXPECT_EQ(page_->csv().count('\n'), shownRows() + 1);
}

TEST_F(LadderPageTest, TheOldLadderStaysGreyedUntilTheNewOneIsThere) {
  const int rows = shownRows();
  const QScrollBar& bar = *table().verticalScrollBar();
  table().scrollToBottom();
  const int scrolled = bar.value();
  const auto faded = [&](int row) {
    return table().model()->index(row, 0).data(Qt::ForegroundRole).isValid();
  };
  ASSERT_FALSE(faded(0));
  ui::SetupEdits((*window_)->document(), ui::Side::Proposed).setTyre("190/55ZR17");
  EXPECT_EQ(shownRows(), rows) << "nothing is cleared";
  EXPECT_TRUE(faded(0));
  EXPECT_TRUE(soon([&] { return !faded(0) && !faded(rows - 1); }));
  EXPECT_EQ(shownRows(), rows);
  EXPECT_EQ(bar.value(), scrolled) << "nor does it scroll";
}

TEST_F(LadderPageTest, RowsAnswerTheAimsTheyWereWorkedOutFor) {
  auto& document = (*window_)->document();
  const auto aim = [&](std::vector<Aim> aims) {
    document.edit({.field = QStringLiteral("aims %1").arg(aims.size()), .title = "aims", .shown = {}},
                  [&](Profile& p) { p.aims = aims; });
  };
  aim({{.want = Aim::Want::RevAtSpeed, .speedKmh = 205, .rpm = 13384}});
  const auto& answer = control<QLabel>(*page_, "Answer to the aims");
  EXPECT_TRUE(soon([&] { return answer.text().startsWith("Best"); }));
  aim({});
  EXPECT_TRUE(soon([&] { return answer.text().isEmpty(); }));
  // The aim comes back while another page is in view, and the units change before the ladder is seen again.
  auto* tabs = (*window_)->findChild<QTabWidget*>();
  const int here = tabs->currentIndex();
  tabs->setCurrentIndex(0);
  document.undoStack().undo();
  ui::preferences::setUnits(ui::UnitsShown(ui::UnitSystem::Imperial));
  for (auto* action : (*window_)->findChildren<QAction*>())
    if (action->text().remove('&').startsWith("Imperial")) action->trigger();
  tabs->setCurrentIndex(here);
  EXPECT_TRUE(soon([&] { return answer.text().startsWith("Best"); }));
}

TEST_F(LadderPageTest, AStoppedLadderGoesOnWhenAsked) {
  control<QSpinBox>(*page_, "Most rear teeth").setValue(70);
  push("Stop");
  QTest::qWait(50);
  const int stopped = shownRows();
  push("Recalculate");
  EXPECT_TRUE(soon([&] { return shownRows() > stopped || rowOf("15/70") >= 0; }));
}

TEST_F(LadderPageTest, ARangeIsNeverUpsideDown) {
  control<QSpinBox>(*page_, "Fewest front teeth").setValue(30);
  EXPECT_EQ(control<QSpinBox>(*page_, "Most front teeth").value(), 30);
  EXPECT_TRUE(soon([&] { return rowOf("30/43") >= 0; }));
}

TEST_F(LadderPageTest, SaysWhyNothingIsListed) {
  const auto& why = control<QLabel>(*page_, "Why nothing is listed");
  EXPECT_TRUE(why.isHidden());
  control<QSpinBox>(*page_, "Within per cent").setValue(1);
  control<QSpinBox>(*page_, "Fewest rear teeth").setValue(60);
  EXPECT_TRUE(soon([&] { return shownRows() == 0 && !why.isHidden(); }));
}

TEST_F(LadderPageTest, ANarrowerRangeLeavesNoOldRows) {
  control<QSpinBox>(*page_, "Most rear teeth").setValue(44);
  EXPECT_TRUE(soon([&] { return rowOf("15/45") == -1 && rowOf("15/44") >= 0; }));
}

TEST_F(LadderPageTest, SpeedsOfAllGearsAreInView) {
  EXPECT_EQ(cell(rowOf("15/43"), LadderModel::Gears).split(' ', Qt::SkipEmptyParts).size(), 6);
}

TEST_F(LadderPageTest, TheAnswerNamesTheBestByHowMuchAndWhyABetterOneIsLeftOut) {
  const auto& answer = control<QLabel>(*page_, "Answer to the aims");
  EXPECT_TRUE(answer.isHidden());
  (*window_)->document().edit({.field = "aims", .title = "aims", .shown = {}}, [](Profile& p) {
    p.aims = {{.want = Aim::Want::RevAtSpeed, .speedKmh = 205, .rpm = 13384}};
  });
  EXPECT_TRUE(soon([&] { return answer.text().startsWith("Best for the aims: "); }));
  EXPECT_TRUE(answer.text().contains(" rpm off)")) << answer.text().toStdString();
  EXPECT_TRUE(answer.text().contains("Better but left out: ")) << answer.text().toStdString();
  EXPECT_TRUE(answer.text().contains("because the axle would have to move")) << answer.text().toStdString();
  EXPECT_TRUE(cell(rowOf("15/43"), LadderModel::Aims).contains("rpm off"));
}

TEST_F(LadderPageTest, APinIsRemovedInTheBikeMenu) {
  table().setCurrentIndex(table().model()->index(rowOf("14/43"), 0));
  push("Pin");
  ASSERT_EQ(window_->profile().pins.size(), 1u);
  for (auto* menu : (*window_)->findChildren<QMenu*>()) {
    if (menu->title().remove('&') != "Remove a Pin") continue;
    emit menu->aboutToShow();
    ASSERT_EQ(menu->actions().size(), 1);
    menu->actions().front()->trigger();
  }
  EXPECT_TRUE(window_->profile().pins.empty());
  EXPECT_EQ((*window_)->document().undoStack().undoText(), "remove pin 14/43");
}

TEST(AimWords, SayByHowMuch) {
  const ui::UnitsShown metric;
  const auto words = [&](Aim::Want want, bool reached, double margin) {
    return ui::marginWords({.want = want}, {reached, margin}, metric);
  };
  EXPECT_EQ(words(Aim::Want::RevAtSpeed, true, -35), "35 rpm off");
  EXPECT_EQ(words(Aim::Want::CruiseBelow, true, 180), "180 rpm below");
  EXPECT_EQ(words(Aim::Want::CruiseBelow, false, -120), "120 rpm above");
  EXPECT_EQ(words(Aim::Want::PullGain, false, -0.8), "0.8 % pull short");
  EXPECT_EQ(words(Aim::Want::LeastDriveTime, true, 0.12), "0.12 s quicker");
  EXPECT_EQ(words(Aim::Want::LeastDriveTime, true, 0.01), "as quick as stock") << "nobody can tell";
  EXPECT_EQ(words(Aim::Want::LeastDriveTime, true, -0.011), "0.01 s slower");
  EXPECT_EQ(words(Aim::Want::RevAtDriveEnd, true, -60), "60 rpm off");
  EXPECT_EQ(words(Aim::Want::TopSpeedAtLeast, false, -1.0), "4 km/h short");
  EXPECT_EQ(ui::marginWords({.want = Aim::Want::LeastDriveTime}, {false, {}}, metric), "");
  EXPECT_EQ(words(Aim::Want::TopSpeedAtLeast, false, -0.1), "0.4 km/h short") << "never nothing short";
}

TEST(AimWords, SayWhatIsWanted) {
  const ui::UnitsShown metric;
  EXPECT_EQ(ui::aimWords({.want = Aim::Want::RevAtSpeed, .speedKmh = 205, .rpm = 12800}, metric),
            "12,800 rpm at 205 km/h in top gear");
  EXPECT_EQ(ui::aimWords({.want = Aim::Want::CruiseBelow, .speedKmh = 110, .rpm = 4500}, metric),
            "below 4,500 rpm at 110 km/h in top gear");
  EXPECT_EQ(ui::aimWords({.want = Aim::Want::PullGain, .gear = 3, .percent = 1.5}, metric),
            "1.5 % more pull in gear 3");
  EXPECT_EQ(ui::aimWords({.want = Aim::Want::PullGain, .percent = -4}, metric),
            "at most 4 % less pull in top gear");
  EXPECT_EQ(ui::aimWords({.want = Aim::Want::LeastDriveTime}, metric), "quickest to the end of the straight");
  EXPECT_EQ(ui::aimWords({.want = Aim::Want::TopSpeedAtLeast, .speedKmh = 190}, metric),
            "top speed at least 190 km/h");
  EXPECT_EQ(ui::aimWords({.want = Aim::Want::RevAtDriveEnd, .rpm = 13900}, metric),
            "top gear at 13,900 rpm at the end of the straight");
  EXPECT_EQ(ui::aimWords({.want = Aim::Want::RevAtDriveEnd, .gear = 5, .rpm = 13900}, metric),
            "gear 5 at 13,900 rpm at the end of the straight");
}

TEST(AimWords, NamePairsThatAreEqualToTheBest) {
  Profile profile = workedExample();
  profile.aims = {{.want = Aim::Want::LeastDriveTime}};
  const auto rows = Ladder(ladderInput(profile)).rows({14, 17, 38, 52});
  const AimAnswer answer = aimAnswer(rows, profile.aims);
  ASSERT_FALSE(answer.asQuick.empty());
  const QString words = ui::aimAnswerWords(rows, profile.aims, ui::UnitsShown());
  EXPECT_TRUE(words.contains("Equal to it within 0.01 s: ")) << words.toStdString();
  for (const std::size_t i : answer.asQuick)
    EXPECT_TRUE(words.contains(ui::pairText(rows[i].frontTeeth, rows[i].rearTeeth)));
}

}  // namespace
}  // namespace layshaft::test
