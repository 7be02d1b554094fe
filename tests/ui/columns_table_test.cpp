// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/columns_table.h"

#include <QClipboard>
#include <QContextMenuEvent>
#include <QMenu>
#include <QSignalSpy>

#include "tests/ui/support.h"

namespace layshaft::test {
namespace {

using testing::ElementsAre;
using ui::ColumnsTable;
using ui::pastedCells;
using ui::typedNumber;

using Rows = std::vector<QStringList>;

TEST(PastedCells, SplitByTabSemicolonBlanksOrComma) {
  const Rows wanted{{"4000", "41.5"}, {"6000", "49"}};
  EXPECT_EQ(pastedCells("4000\t41.5\n6000\t49\n"), wanted);
  EXPECT_EQ(pastedCells("4000;41.5\r\n6000;49"), wanted);
  EXPECT_EQ(pastedCells("4000   41.5\n\n  6000 49  \n"), wanted);
  EXPECT_EQ(pastedCells("4000,41.5\n6000,49"), wanted);
  EXPECT_EQ(pastedCells("4000, 41.5\n6000, 49"), wanted);
}

TEST(PastedCells, KeepADecimalComma) {
  const Rows wanted{{"4000", "41,5"}};
  EXPECT_EQ(pastedCells("4000\t41,5"), wanted);
  EXPECT_EQ(pastedCells("4000;41,5"), wanted);
  EXPECT_EQ(pastedCells("4000 41,5"), wanted);
}

TEST(PastedCells, KeepEmptyCellsBetweenTabs) {
  EXPECT_EQ(pastedCells("45\t\taluminium"), (Rows{{"45", "", "aluminium"}}));
  EXPECT_EQ(pastedCells("\t520"), (Rows{{"", "520"}}));
}

TEST(TypedNumber, TakesPointOrComma) {
  EXPECT_EQ(typedNumber("41.5"), 41.5);
  EXPECT_EQ(typedNumber(" 41,5 "), 41.5);
  EXPECT_EQ(typedNumber("15,200"), 15200) << "grouped as this desktop does";
  EXPECT_EQ(typedNumber("-3"), -3);
  for (const char* none : {"", "x", "41.5 Nm", "1.2.3", "inf", "nan", "1e999"})
    EXPECT_EQ(typedNumber(none), std::nullopt) << none;
}

TEST(TypedNumber, KnowsWhatIsTooHighToBeMeant) {
  EXPECT_EQ(typedNumber("0,415", 20), 0.415) << "no sprocket weighs 415 kg";
  EXPECT_EQ(typedNumber("1,125", 20), 1.125);
  EXPECT_EQ(typedNumber("1,125", 30000), 1125) << "grouped as this desktop does";
  EXPECT_EQ(typedNumber("25", 20), 25) << "a number, to be refused as one";
}

class ColumnsTableTest : public testing::Test {
 protected:
  ColumnsTable table_{{"rpm", "torque"}, 5};
  QSignalSpy edited_{&table_, &ColumnsTable::edited};
};

TEST_F(ColumnsTableTest, APasteIsOneEditAndLeavesAnEmptyRowToTypeInto) {
  table_.pasteText("4000\t41\n6000\t49");
  EXPECT_EQ(edited_.count(), 1);
  EXPECT_THAT(table_.rows(), ElementsAre(QStringList{"4000", "41"}, QStringList{"6000", "49"}));
  EXPECT_EQ(table_.rowCount(), 3);
}

TEST_F(ColumnsTableTest, PastesFromTheCurrentCellOn) {
  table_.pasteText("4000\t41\n6000\t49");
  table_.setCurrentCell(1, 1);
  table_.pasteText("50\n55");
  EXPECT_THAT(table_.rows(),
              ElementsAre(QStringList{"4000", "41"}, QStringList{"6000", "50"}, QStringList{"", "55"}));
}

TEST_F(ColumnsTableTest, TheTitlesOfPastedColumnsAreNoRow) {
  table_.pasteText("rpm\tNm\n4000\t41\n6000\t49");
  EXPECT_THAT(table_.rows(), ElementsAre(QStringList{"4000", "41"}, QStringList{"6000", "49"}));
}

TEST_F(ColumnsTableTest, PastesByKeyFromTheClipboard) {
  showActive(table_);
  table_.setFocus();
  QApplication::clipboard()->setText("4000;41,5");
  QTest::keyClick(&table_, Qt::Key_V, Qt::ControlModifier);
  EXPECT_THAT(table_.rows(), ElementsAre(QStringList{"4000", "41,5"}));
}

TEST_F(ColumnsTableTest, DeleteEmptiesTheSelectionAndItsRows) {
  table_.pasteText("4000\t41\n6000\t49\n8000\t57");
  table_.selectRow(1);
  QTest::keyClick(&table_, Qt::Key_Delete);
  EXPECT_EQ(edited_.count(), 2);
  EXPECT_THAT(table_.rows(), ElementsAre(QStringList{"4000", "41"}, QStringList{"8000", "57"}));
}

TEST_F(ColumnsTableTest, ShowingRowsIsNoEdit) {
  table_.showRows({{"4000", "41"}});
  table_.showRows({});
  EXPECT_EQ(edited_.count(), 0);
  EXPECT_EQ(table_.rowCount(), 1) << "an empty row to type into";
}

TEST_F(ColumnsTableTest, TypingInACellIsAnEdit) {
  table_.item(0, 0) ? void() : table_.setItem(0, 0, new QTableWidgetItem);
  edited_.clear();
  table_.item(0, 0)->setText("4000");
  EXPECT_EQ(edited_.count(), 1);
  EXPECT_EQ(table_.rowCount(), 2);
}

TEST_F(ColumnsTableTest, TooManyRowsAreRefusedWholeAndNothingChanges) {
  table_.pasteText("4000\t41\n6000\t49");
  const auto before = table_.rows();
  QStringList said;
  QObject::connect(&table_, &ColumnsTable::refused, &table_, [&](const QString& why) { said << why; });
  QSignalSpy edited(&table_, &ColumnsTable::edited);
  QString million;
  for (int i = 0; i < 1000000; ++i) million += QStringLiteral("%1\t40\n").arg(i + 1);
  table_.pasteText(million);
  table_.pasteText(QString(1000000, '9'));
  table_.pasteText("1\t1\n2\t2\n3\t3\n4\t4\n5\t5\n6\t6");
  table_.setCurrentCell(2, 0);
  table_.pasteText("1\t1\n2\t2\n3\t3\n4\t4");
  EXPECT_EQ(said.size(), 4);
  EXPECT_TRUE(said[0].contains("at most 5 rows")) << said[0].toStdString();
  EXPECT_EQ(edited.count(), 0);
  EXPECT_EQ(table_.rows(), before);
  table_.setCurrentCell(0, 0);
  table_.pasteText("rpm\tNm\n1\t1\n2\t2\n3\t3\n4\t4\n5\t5\n\n\n");
  EXPECT_EQ(table_.rows().size(), 5u) << "a heading and empty lines are no rows";
}

/// Types as at a keyboard: each key goes to what has the focus.
void typeAtFocus(const QString& text) {
  for (const QChar c : text) QTest::keyClick(QApplication::focusWidget(), c.toLatin1());
}
void keyAtFocus(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) {
  QTest::keyClick(QApplication::focusWidget(), key, modifiers);
}

TEST_F(ColumnsTableTest, EnterGoesDownTheColumnAndTheRowsCome) {
  showActive(table_);
  table_.setCurrentCell(0, 0);
  table_.setFocus();
  for (const char* speed : {"4000", "6000", "8000"}) {
    typeAtFocus(speed);
    keyAtFocus(Qt::Key_Return);
  }
  EXPECT_THAT(table_.rows(),
              ElementsAre(QStringList{"4000", ""}, QStringList{"6000", ""}, QStringList{"8000", ""}));
  EXPECT_EQ(table_.currentRow(), 3);
  EXPECT_EQ(table_.currentColumn(), 0);
  keyAtFocus(Qt::Key_Return);
  EXPECT_EQ(table_.currentRow(), 3) << "the empty row is the last";
  keyAtFocus(Qt::Key_Return, Qt::ShiftModifier);
  EXPECT_EQ(table_.currentRow(), 2) << "with Shift it goes up";
}

TEST_F(ColumnsTableTest, UpAndDownEndTheTyping) {
  showActive(table_);
  table_.setCurrentCell(0, 1);
  table_.setFocus();
  typeAtFocus("41");
  keyAtFocus(Qt::Key_Down);
  typeAtFocus("49");
  keyAtFocus(Qt::Key_Up);
  typeAtFocus("42");
  keyAtFocus(Qt::Key_Return);
  EXPECT_THAT(table_.rows(), ElementsAre(QStringList{"", "42"}, QStringList{"", "49"}));
}

TEST_F(ColumnsTableTest, SelectAllAndCopyTakeTheTableWithItsTitles) {
  showActive(table_);
  table_.pasteText("4000\t41,5\n6000\t49");
  table_.setFocus();
  keyAtFocus(Qt::Key_A, Qt::ControlModifier);
  keyAtFocus(Qt::Key_C, Qt::ControlModifier);
  EXPECT_EQ(QApplication::clipboard()->text(), "rpm\ttorque\n4000\t41,5\n6000\t49\n");
  table_.setCurrentCell(1, 1, QItemSelectionModel::ClearAndSelect);
  keyAtFocus(Qt::Key_C, Qt::ControlModifier);
  EXPECT_EQ(QApplication::clipboard()->text(), "49") << "one cell is its text";
}

TEST_F(ColumnsTableTest, WhatIsCutCanBePastedBack) {
  showActive(table_);
  table_.pasteText("4000\t41\n6000\t49\n8000\t57");
  const auto before = table_.rows();
  table_.setFocus();
  keyAtFocus(Qt::Key_A, Qt::ControlModifier);
  keyAtFocus(Qt::Key_X, Qt::ControlModifier);
  EXPECT_TRUE(table_.rows().empty());
  keyAtFocus(Qt::Key_V, Qt::ControlModifier);
  EXPECT_EQ(table_.rows(), before);
}

TEST_F(ColumnsTableTest, APasteOverASelectionBeginsAtItsCorner) {
  showActive(table_);
  table_.pasteText("4000\t41\n6000\t49\n8000\t57");
  table_.setCurrentCell(2, 1);
  table_.selectAll();
  table_.pasteText("5000\t44\n7000\t50");
  EXPECT_THAT(table_.rows(), ElementsAre(QStringList{"5000", "44"}, QStringList{"7000", "50"}));
}

TEST_F(ColumnsTableTest, ItsMenuSaysWhatCanBeDone) {
  showActive(table_);
  table_.pasteText("4000\t41\n6000\t49");
  table_.selectAll();
  QStringList texts;
  QTimer::singleShot(20, &table_, [&] {
    auto* menu = qobject_cast<QMenu*>(QApplication::activePopupWidget());
    if (!menu) return;
    for (const QAction* action : menu->actions()) texts << action->text().remove('&');
    for (QAction* action : menu->actions())
      if (action->text().remove('&') == "Copy") action->trigger();
    menu->close();
  });
  QContextMenuEvent event(QContextMenuEvent::Keyboard, QPoint(5, 5), table_.mapToGlobal(QPoint(5, 5)));
  QApplication::sendEvent(table_.viewport(), &event);
  texts.removeAll("");
  EXPECT_THAT(texts, ElementsAre("Cut", "Copy", "Paste", "Delete", "Select All"));
  EXPECT_EQ(QApplication::clipboard()->text(), "rpm\ttorque\n4000\t41\n6000\t49\n");
}

TEST_F(ColumnsTableTest, TwoRowsOfTitlesAreOneTitlePerColumn) {
  QStringList titles;
  QObject::connect(&table_, &ColumnsTable::titlesPasted, &table_,
                   [&](const QStringList& pasted) { titles = pasted; });
  table_.pasteText("speed\ttorque\nrpm\tNm\n4000\t41\n6000\t49");
  EXPECT_THAT(titles, ElementsAre("speed rpm", "torque Nm"));
  table_.setCurrentCell(0, 1);
  table_.pasteText("hp\n50\n60");
  EXPECT_THAT(titles, ElementsAre("", "hp")) << "of the column it stands over";
}

}  // namespace
}  // namespace layshaft::test
