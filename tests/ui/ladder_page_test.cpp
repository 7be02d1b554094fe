// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/ladder_page.h"
#include "ui/document/preferences.h"

#include <QContextMenuEvent>
#include <QHeaderView>
#include <QLabel>
#include <QListWidget>
#include <QMenu>
#include <QScrollBar>
#include <QSignalSpy>
#include <QTabWidget>
#include <algorithm>

#include "tests/ui/support.h"
#include "ui/editors/aim_editor.h"
#include "ui/editors/pin_menu.h"
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
  void moveTo(const QString& pair) {
    table().setFocus();
    table().setCurrentIndex(table().model()->index(rowOf(pair), 0));
  }
  void propose(const QString& pair) {
    moveTo(pair);
    QTest::keyClick(&table(), Qt::Key_Return);
  }
  QRect placeOf(const QString& pair) { return table().visualRect(table().model()->index(rowOf(pair), 0)); }
  bool isProposal(int row) { return cell(row, LadderModel::Pair).contains("proposed"); }
  QPushButton& hintsButton() {
    for (auto* button : (*window_)->findChildren<QPushButton*>())
      if (button->text() == "Got It") return *button;
    throw std::runtime_error("no hints");
  }
  QPushButton& pinButton() {
    for (auto* button : page_->findChildren<QPushButton*>())
      if (button->text().contains("in 1") || button->text() == "Pin") return *button;
    throw std::runtime_error("no button for the pin");
  }
  /// The action of a menu that is open.
  QAction* offered(const QString& text) {
    for (auto* menu : page_->findChildren<QMenu*>())
      for (auto* action : menu->actions())
        if (action->text().remove('&') == text) return action;
    return nullptr;
  }
  void openRowMenu() {
    const QPoint middle = table().rect().center();
    QContextMenuEvent event(QContextMenuEvent::Keyboard, middle, table().mapToGlobal(middle));
    QApplication::sendEvent(&table(), &event);
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

TEST_F(LadderPageTest, SortingKeepsTheCursorsRowInView) {
  moveTo("16/43");
  for (const auto order : {Qt::AscendingOrder, Qt::DescendingOrder})
    for (const int column :
         {int(LadderModel::Pair), int(LadderModel::FinalRatio), int(LadderModel::TopSpeed)}) {
      table().sortByColumn(column, order);
      const QRect row = table().visualRect(table().currentIndex());
      EXPECT_TRUE(row.top() >= 0 && row.bottom() <= table().viewport()->height()) << column << " " << order;
    }
}

TEST_F(LadderPageTest, ShowsEveryPairOfTheRangeFromShortToTall) {
  const LadderRange range = usualRange(ladderInput(window_->profile()));
  EXPECT_TRUE(soon([&] { return static_cast<std::size_t>(shownRows()) == range.pairs(); }));
  for (int r = 1; r < shownRows(); ++r)
    EXPECT_GE(cell(r - 1, LadderModel::FinalRatio).toDouble(), cell(r, LadderModel::FinalRatio).toDouble());
  EXPECT_EQ(cell(rowOf("15/43"), LadderModel::Pair), "15/43 proposed");
  EXPECT_EQ(cell(rowOf("16/43"), LadderModel::Pair), "16/43 stock");
}

TEST_F(LadderPageTest, AChosenRowBecomesTheProposalInOneStep) {
  propose("16/45");
  const layshaft::Setup proposed = proposedSetup((*window_)->document());
  EXPECT_EQ(proposed.frontTeeth.count(), 16);
  EXPECT_EQ(proposed.rearTeeth.count(), 45);
  EXPECT_EQ((*window_)->document().undoStack().count(), 1);
  EXPECT_EQ((*window_)->document().undoStack().undoText(), "proposed pair 15/43 → 16/45");
  EXPECT_TRUE(soon([&] { return cell(rowOf("16/45"), LadderModel::Pair) == "16/45 proposed"; }));
}

TEST_F(LadderPageTest, ManyPairsAreInViewOnASmallScreen) {
  (*window_)->document().edit({.field = "aims", .title = "aims", .shown = {}}, [](Profile& p) {
    p.aims = {{.want = Aim::Want::PullGain, .gear = 2, .percent = 5},
              {.want = Aim::Want::TopSpeedAtLeast, .speedKmh = 235}};
  });
  ASSERT_TRUE(soon([&] { return control<QLabel>(*page_, "Answer to the aims").isVisible(); }));
  QTest::qWait(50);
  const auto wholeRows = [&] {
    return table().viewport()->height() / table().verticalHeader()->defaultSectionSize();
  };
  EXPECT_GE(wholeRows(), 7) << "with the hints";
  QTest::mouseClick(&hintsButton(), Qt::LeftButton);
  EXPECT_TRUE(soon([&] { return wholeRows() >= 9; })) << wholeRows();
}

TEST_F(LadderPageTest, ChoosingAPairDoesNotWorkTheLadderOutAgain) {
  const int rows = shownRows();
  QSignalSpy worked(&(*window_)->session().ladder(), &ui::LadderStudy::progressed);
  propose("16/45");
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
  auto& fit = control<QComboBox>(*page_, "Fit");
  ASSERT_EQ(fit.itemText(1), "Fits this chain");
  fit.setCurrentIndex(1);
  ASSERT_GT(shownRows(), 1);
  for (int r = 0; r < shownRows(); ++r)
    EXPECT_TRUE(isProposal(r) || cell(r, LadderModel::Fits).startsWith("fits, "));
  tick("From the spares box");
  ASSERT_GT(shownRows(), 1);
  for (int r = 0; r < shownRows(); ++r) EXPECT_TRUE(isProposal(r) || cell(r, LadderModel::Spares) == "both");
  tick("From the spares box");
  fit.setCurrentIndex(0);
  tick("Same ratio only");
  ASSERT_GT(shownRows(), 0);
  EXPECT_GE(rowOf("15/45"), 0);
  EXPECT_TRUE(cell(rowOf("15/45"), LadderModel::Aims).contains("same ratio as"));
  EXPECT_EQ(rowOf("16/43"), -1);
  tick("Same ratio only");
  control<QAbstractSpinBox>(*page_, "Within per cent").setFocus();
  typeInto(control<QAbstractSpinBox>(*page_, "Within per cent"), "3");
  ASSERT_GT(shownRows(), 1);
  for (int r = 0; r < shownRows(); ++r)
    EXPECT_TRUE(isProposal(r) ||
                std::abs(cell(r, LadderModel::Change).replace("−", "-").remove("±").toDouble()) <= 3.0);
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
  moveTo("14/43");
  EXPECT_EQ(pinButton().text(), "Pin 14/43");
  push("Pin 14/43");
  ASSERT_EQ(window_->profile().pins.size(), 1u);
  EXPECT_EQ(window_->profile().pins[0].name, "14/43");
  EXPECT_EQ(window_->profile().pins[0].change.frontTeeth, front(14));
  EXPECT_TRUE(same(profileFrom(writeProfile(window_->profile())), window_->profile()));
  ASSERT_TRUE(soon([&] { return pinButton().text() == "Unpin 14/43"; }));
  EXPECT_EQ(cell(rowOf("14/43"), LadderModel::Pair), "14/43 pinned");
  for (const char* pair : {"15/44", "15/45", "16/44", "16/45", "14/44"}) {
    moveTo(pair);
    ASSERT_TRUE(soon([&] { return pinButton().text() == QString("Pin ") + pair; }));
    pinButton().click();
  }
  EXPECT_EQ(window_->profile().pins.size(), 4u) << "there is room for four";
  moveTo("15/44");
  ASSERT_TRUE(soon([&] { return pinButton().text() == "Unpin 15/44"; }));
  QTest::keyClick(&table(), Qt::Key_P);
  ASSERT_EQ(window_->profile().pins.size(), 3u);
  EXPECT_TRUE(soon([&] { return cell(rowOf("15/44"), LadderModel::Pair) == "15/44"; }));
  tick("Pinned only");
  EXPECT_EQ(shownRows(), 4) << "and the proposal";
  EXPECT_EQ(rowOf("15/44"), -1);
  EXPECT_EQ(cell(rowOf("15/43"), LadderModel::Pair), "15/43 proposed");
}

TEST_F(LadderPageTest, AClickMovesTheCursorADoubleClickProposes) {
  moveTo("15/44");
  table().scrollTo(table().currentIndex(), QAbstractItemView::PositionAtCenter);
  QTest::mouseClick(table().viewport(), Qt::LeftButton, {}, placeOf("15/45").center());
  EXPECT_EQ(table().currentIndex().row(), rowOf("15/45"));
  EXPECT_EQ((*window_)->document().undoStack().count(), 0) << "a click changes nothing";
  emit table().doubleClicked(table().currentIndex());
  EXPECT_EQ(proposedSetup((*window_)->document()).rearTeeth.count(), 45);
}

TEST_F(LadderPageTest, TheWholeRowChangesAtOnceWhenItIsProposedOrPinned) {
  QSignalSpy changed(table().model(), &QAbstractItemModel::dataChanged);
  propose("16/45");
  ASSERT_TRUE(soon([&] { return cell(rowOf("16/45"), LadderModel::Pair) == "16/45 proposed"; }));
  const auto whole = [&](const QString& pair) {
    return std::any_of(changed.begin(), changed.end(), [&](const QList<QVariant>& signal) {
      return signal[0].toModelIndex().row() == rowOf(pair) && signal[0].toModelIndex().column() == 0 &&
             signal[1].toModelIndex().column() == LadderModel::ColumnCount - 1;
    });
  };
  EXPECT_TRUE(whole("16/45"));
  EXPECT_TRUE(whole("15/43")) << "which is the proposal no longer";
  EXPECT_NE(table()
                .model()
                ->index(rowOf("16/45"), 0)
                .data(Qt::DecorationRole)
                .value<QIcon>()
                .pixmap(24, 12)
                .toImage(),
            table()
                .model()
                ->index(rowOf("15/43"), 0)
                .data(Qt::DecorationRole)
                .value<QIcon>()
                .pixmap(24, 12)
                .toImage());
}

TEST_F(LadderPageTest, TheCursorStartsOnTheProposalInView) {
  EXPECT_EQ(table().currentIndex().row(), rowOf("15/43"));
  EXPECT_TRUE(table().viewport()->rect().contains(placeOf("15/43").center()));
  moveTo("16/44");
  auto* tabs = (*window_)->findChild<QTabWidget*>();
  const int here = tabs->currentIndex();
  tabs->setCurrentIndex(0);
  ui::SetupEdits((*window_)->document(), ui::Side::Proposed).setPair(14, 49);
  tabs->setCurrentIndex(here);
  EXPECT_TRUE(soon([&] { return rowOf("14/49") >= 0 && table().currentIndex().row() == rowOf("14/49"); }));
  EXPECT_TRUE(table().viewport()->rect().contains(placeOf("14/49").center()));
}

TEST_F(LadderPageTest, AProposalOutsideTheRangeIsThereAndSaysSo) {
  const int rows = shownRows();
  ui::SetupEdits((*window_)->document(), ui::Side::Proposed).setPair(15, 60);
  ASSERT_TRUE(soon([&] { return rowOf("15/60") >= 0; }));
  EXPECT_EQ(cell(rowOf("15/60"), LadderModel::Pair), "15/60 proposed (outside the range)");
  EXPECT_EQ(shownRows(), rows + 1);
  ui::SetupEdits((*window_)->document(), ui::Side::Proposed).setPair(15, 61);
  ASSERT_TRUE(soon([&] { return rowOf("15/61") >= 0; }));
  EXPECT_EQ(rowOf("15/60"), -1);
  control<QSpinBox>(*page_, "Most rear teeth").setValue(44);
  EXPECT_TRUE(soon([&] { return rowOf("15/45") == -1 && rowOf("15/61") >= 0; }))
      << "nor does a new ladder lose it";
  ui::SetupEdits((*window_)->document(), ui::Side::Proposed).setPair(15, 44);
  EXPECT_TRUE(soon([&] { return rowOf("15/61") == -1 && isProposal(rowOf("15/44")); }));
}

TEST_F(LadderPageTest, TheMenuOfARowProposesPinsAndSorts) {
  moveTo("16/45");
  openRowMenu();
  ASSERT_TRUE(offered("Pin 16/45"));
  EXPECT_EQ(offered("Pin 16/45")->shortcut(), QKeySequence(Qt::Key_P));
  offered("Pin 16/45")->trigger();
  EXPECT_EQ(window_->profile().pins.size(), 1u);
  offered("Propose This Pair")->trigger();
  EXPECT_EQ(proposedSetup((*window_)->document()).frontTeeth.count(), 16);
  ASSERT_TRUE(offered("Change, %"));
  for (auto* action : page_->findChildren<QAction*>())
    if (action->text() == "= Rear Teeth" && action->actionGroup()) action->trigger();
  EXPECT_EQ(table().horizontalHeader()->sortIndicatorSection(), LadderModel::RearTeeth);
  offered("Ascending")->trigger();
  EXPECT_EQ(table().horizontalHeader()->sortIndicatorOrder(), Qt::AscendingOrder);
  EXPECT_LT(cell(0, LadderModel::FinalRatio).toDouble(),
            cell(shownRows() - 1, LadderModel::FinalRatio).toDouble());
}

TEST_F(LadderPageTest, APinWithOtherPartsSaysSoAndIsRemovedByItself) {
  ui::SetupEdits::pin((*window_)->document(), "15/45", 15, 45);
  ui::SetupEdits((*window_)->document(), ui::Side::Proposed).setTyre("190/55ZR17");
  ASSERT_TRUE(
      soon([&] { return cell(rowOf("15/45"), LadderModel::Pair) == "15/45 pinned with other parts"; }));
  moveTo("15/45");
  EXPECT_EQ(pinButton().text(), "Pin 15/45");
  openRowMenu();
  ASSERT_TRUE(offered("Unpin 15/45 with Other Parts"));
  offered("Unpin 15/45 with Other Parts")->trigger();
  EXPECT_TRUE(window_->profile().pins.empty());
}

TEST_F(LadderPageTest, TheProposalIsPinnedInTheBikeMenuAndTheDriveLine) {
  QAction* action = (*window_)->driveLine().pins().proposalAction();
  EXPECT_EQ(action->text().remove('&'), "Pin the Proposal");
  action->trigger();
  ASSERT_EQ(window_->profile().pins.size(), 1u);
  EXPECT_EQ(window_->profile().pins[0].name, "15/43");
  EXPECT_EQ(action->text().remove('&'), "Unpin the Proposal");
  EXPECT_TRUE(soon([&] { return cell(rowOf("15/43"), LadderModel::Pair) == "15/43 proposed, pinned"; }));
  for (auto* button : (*window_)->driveLine().findChildren<QPushButton*>()) {
    if (button->text() != "Pins") continue;
    emit button->menu()->aboutToShow();
    ASSERT_EQ(button->menu()->actions().size(), 3);
    EXPECT_EQ(button->menu()->actions().back()->text(), "Unpin 15/43");
    button->menu()->actions().back()->trigger();
  }
  EXPECT_TRUE(window_->profile().pins.empty());
  EXPECT_EQ(action->text().remove('&'), "Pin the Proposal");
  ui::SetupEdits::clearProposal((*window_)->document());
  EXPECT_FALSE(action->isEnabled()) << "stock is on every chart as it is";
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
  EXPECT_TRUE(soon([&] { return shownRows() == 1 && isProposal(0) && !why.isHidden(); }));
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
  EXPECT_TRUE(answer.text().contains("Nearer to the aim but left out: ")) << answer.text().toStdString();
  EXPECT_TRUE(answer.text().contains("because the axle would have to move")) << answer.text().toStdString();
  EXPECT_TRUE(cell(rowOf("15/43"), LadderModel::Aims).contains("rpm off"));
}

TEST_F(LadderPageTest, APinIsRemovedInTheBikeMenu) {
  moveTo("14/43");
  push("Pin 14/43");
  ASSERT_EQ(window_->profile().pins.size(), 1u);
  for (auto* menu : (*window_)->findChildren<QMenu*>()) {
    if (menu->title().remove('&') != "Unpin") continue;
    emit menu->aboutToShow();
    ASSERT_EQ(menu->actions().size(), 1);
    menu->actions().front()->trigger();
  }
  EXPECT_TRUE(window_->profile().pins.empty());
  EXPECT_EQ((*window_)->document().undoStack().undoText(), "remove pin 14/43");
}

TEST(AimWords, WhereNoPairMeetsEveryAimTheNearestIsNamed) {
  Profile profile = workedExample();
  profile.aims = {{.want = Aim::Want::TopSpeedAtLeast, .speedKmh = 400}};
  auto rows = Ladder(ladderInput(profile)).rows({15, 16, 42, 44});
  const auto words = [&] { return ui::aimAnswerWords(rows, profile.aims, ui::UnitsShown()); };
  const AimAnswer answer = aimAnswer(rows, profile.aims);
  const auto named = [&](std::size_t i) {
    return ui::pairText(rows[i].frontTeeth, rows[i].rearTeeth) + " (" +
           ui::marginWords(profile.aims[0], rows[i].aims[0], ui::UnitsShown()) + ").";
  };
  for (LadderRow& row : rows) row.chainRun->fits = true;
  EXPECT_EQ(words(), "No pair in this range meets every aim. Nearest: " + named(*answer.nearest));
  rows[*answer.nearest].chainRun->fits = false;
  EXPECT_EQ(words(), "No pair in this range meets every aim. Nearest that fits: " +
                         named(*aimAnswer(rows, profile.aims).nearestThatFits));
  for (LadderRow& row : rows) row.chainRun->fits = false;
  EXPECT_EQ(words(), "No pair in this range meets every aim. Nearest, though it does not fit: " +
                         named(*answer.nearest));
}

TEST_F(LadderPageTest, WithinIsAnyWhenItIsEmptiedAndWhenAnyIsTyped) {
  auto& within = control<QSpinBox>(*page_, "Within per cent");
  ASSERT_EQ(within.text(), "Any");
  for (const bool emptied : {true, false}) {
    typeInto(within, "3");
    QTest::keyClick(&within, Qt::Key_Return);
    ASSERT_EQ(within.text(), "3 %");
    if (emptied) {
      QTest::keyClick(&within, Qt::Key_A, Qt::ControlModifier);
      QTest::keyClick(&within, Qt::Key_Backspace);
    } else {
      typeInto(within, "any");
    }
    QTest::keyClick(&within, Qt::Key_Return);
    EXPECT_EQ(within.text(), "Any") << emptied;
    EXPECT_EQ(within.value(), 0) << emptied;
  }
}

TEST_F(LadderPageTest, ANarrowWindowBreaksTheBarIntoRows) {
  auto& within = control<QAbstractSpinBox>(*page_, "Within per cent");
  auto& fewest = control<QSpinBox>(*page_, "Fewest front teeth");
  const auto top = [&](QWidget& widget) { return widget.mapTo(page_, QPoint()).y(); };
  EXPECT_NEAR(top(within), top(fewest), 8) << "one row where there is room";
  (*window_)->resize(900, 560);
  EXPECT_TRUE(soon([&] { return top(within) > top(fewest) + fewest.height(); }));
  EXPECT_LE(page_->minimumSizeHint().width(), 900);
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
