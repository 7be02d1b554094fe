// SPDX-License-Identifier: GPL-3.0-or-later
#include <QDialog>
#include <QVBoxLayout>

#include "tests/ui/drive_line.h"
#include "ui/editors/field_form.h"

namespace layshaft::test {
namespace {

/// What the keys and a click do in a field, wherever it stands.
class FieldKeys : public DriveLineTest {
 protected:
  void click(QAbstractSpinBox& field) {
    auto* line = field.findChild<QLineEdit*>();
    QTest::mouseClick(line, Qt::LeftButton, {}, line->rect().center());
    QCoreApplication::processEvents();
  }
};

TEST_F(FieldKeys, AClickIntoAnUnsetFieldAndTypingSetsIt) {
  box("Front teeth").setFocus();
  ASSERT_TRUE(decimal("Rollout").isNone());
  click(decimal("Rollout"));
  QTest::keyClicks(&decimal("Rollout"), "1955");
  EXPECT_EQ(proposed().options.rolloutMm, 1955);
  click(box("Links"));
  QTest::keyClicks(&box("Links"), "112");
  EXPECT_EQ(proposed().options.links, 112);
}

TEST_F(FieldKeys, TypingReplacesTheWordsWhereverTheCursorStands) {
  auto& rollout = decimal("Rollout");
  rollout.setFocus(Qt::TabFocusReason);
  QTest::keyClick(&rollout, Qt::Key_End);
  QTest::keyClicks(&rollout, "1955");
  EXPECT_EQ(proposed().options.rolloutMm, 1955);
}

TEST_F(FieldKeys, AClickSelectsAllAndTheNextOnePlacesTheCursor) {
  box("Front teeth").setFocus();
  auto& rear = box("Rear teeth");
  click(rear);
  EXPECT_EQ(rear.findChild<QLineEdit*>()->selectedText(), rear.text());
  QTest::qWait(QApplication::doubleClickInterval() + 20);
  click(rear);
  EXPECT_FALSE(rear.findChild<QLineEdit*>()->hasSelectedText());
}

TEST_F(FieldKeys, BackspaceEmptiesTheSelectedFieldToNotGiven) {
  use(bike({{"/proposed/links", 112}}));
  box("Front teeth").setFocus();
  click(box("Links"));
  QTest::keyClick(&box("Links"), Qt::Key_Backspace);
  leave();
  EXPECT_EQ(proposed().options.links, std::nullopt);
}

TEST_F(FieldKeys, EscapeBringsBackWhatStoodBefore) {
  auto& rear = box("Rear teeth");
  const QString before = rear.text();
  typeInto(rear, "51");
  ASSERT_EQ(proposed().rearTeeth.count(), 51);
  settle();
  QTest::keyClick(&rear, Qt::Key_Up);
  QTest::keyClick(&rear, Qt::Key_Escape);
  EXPECT_EQ(rear.text(), before);
  EXPECT_EQ(proposed().rearTeeth, stock().rearTeeth);
  auto& rollout = decimal("Rollout");
  const QString words = rollout.text();
  typeInto(rollout, "99");
  QTest::keyClick(&rollout, Qt::Key_Escape);
  settle();
  EXPECT_EQ(rollout.text(), words);
  EXPECT_EQ(proposed().options.rolloutMm, std::nullopt);
  EXPECT_EQ(message(), "") << "what was taken back is not refused";
}

TEST_F(FieldKeys, EscapeTakesNothingBackThatUndoHasTakenBackAlready) {
  auto& rear = box("Rear teeth");
  typeInto(rear, "51");
  settle();
  document_.undoStack().setIndex(0);
  settle();
  const int index = document_.undoStack().index();
  QTest::keyClick(&rear, Qt::Key_Escape);
  EXPECT_EQ(document_.undoStack().index(), index);
}

TEST_F(FieldKeys, ARefusedEntryLeavesNothingOfItself) {
  auto& rollout = decimal("Rollout");
  typeInto(rollout, "99999");
  leave();
  EXPECT_EQ(proposed().options.rolloutMm, std::nullopt) << "999 on the way there was allowed";
  EXPECT_NE(message(), "");
  use(bike({{"/proposed/rollout_mm", 1955}}));
  typeInto(rollout, "99999");
  leave();
  EXPECT_EQ(proposed().options.rolloutMm, 1955);
}

TEST(FieldKeysInADialog, EscapeClosesItUnlessTheFieldWasChanged) {
  ui::Document document(bike());
  QDialog dialog;
  auto* form = new ui::FieldForm(document);
  form->addField("ride.air_temperature_c");
  (new QVBoxLayout(&dialog))->addWidget(form);
  form->refresh(ui::UnitsShown(ui::UnitSystem::Metric));
  showActive(dialog);
  auto& field = static_cast<ui::DecimalBox&>(*form->editorOf("ride.air_temperature_c"));
  const QString words = field.text();
  typeInto(field, "31");
  QTest::keyClick(&field, Qt::Key_Escape);
  EXPECT_TRUE(dialog.isVisible());
  EXPECT_EQ(field.text(), words);
  QTest::keyClick(&field, Qt::Key_Escape);
  EXPECT_FALSE(dialog.isVisible());
}

}  // namespace
}  // namespace layshaft::test
