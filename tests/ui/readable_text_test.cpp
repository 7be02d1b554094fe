// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/readable_text.h"

#include <QAccessible>

#include "tests/ui/support.h"

namespace layshaft::test {
namespace {

/// What a screen reader gets as the text of a widget; nothing if it gets none.
std::optional<QString> textRead(QWidget& widget) {
  QAccessibleInterface* read = QAccessible::queryAccessibleInterface(&widget);
  QAccessibleTextInterface* text = read ? read->textInterface() : nullptr;
  if (!text) return std::nullopt;
  return text->text(0, text->characterCount());
}

class ReadAloud : public testing::Test, FreshSettings {
 protected:
  ReadAloud() : window_(workedExample()) { QTest::qWait(50); }
  ui::MainWindow& window() { return *window_; }
  QAbstractSpinBox& rear() { return control<QAbstractSpinBox>(window(), "Rear teeth"); }

  Window window_;
};

TEST_F(ReadAloud, TheReadoutIsOneTextThatCanHaveTheFocus) {
  EXPECT_EQ(textRead(window().readout()), window().readout().text());
  EXPECT_GT(window().readout().text().size(), 200);
  EXPECT_TRUE(window().readout().focusPolicy() & Qt::TabFocus);
  QTest::keyClick(&rear(), Qt::Key_Up);
  QTest::qWait(30);
  EXPECT_EQ(textRead(window().readout()), window().readout().text()) << "also after a change";
}

TEST_F(ReadAloud, ATextIsReadByCharacterWordAndLine) {
  QAccessibleTextInterface* text =
      QAccessible::queryAccessibleInterface(&window().readout())->textInterface();
  ASSERT_TRUE(text);
  const QString whole = window().readout().text();
  int from = -1, to = -1;
  EXPECT_EQ(text->textAtOffset(0, QAccessible::LineBoundary, &from, &to).trimmed(),
            window().readout().headline());
  EXPECT_EQ(text->textAtOffset(0, QAccessible::CharBoundary, &from, &to), whole.left(1));
  text->setCursorPosition(1'000'000);
  EXPECT_EQ(text->cursorPosition(), text->characterCount());
}

TEST_F(ReadAloud, TheNameOfALabelDoesNotHideItsWords) {
  ui::exposeReadableTexts();
  QLabel label;
  label.setAccessibleName("Whether it fits");
  label.setText("Fits with 114 links.");
  EXPECT_EQ(textRead(label), "Fits with 114 links.");
  EXPECT_EQ(QAccessible::queryAccessibleInterface(&label)->text(QAccessible::Name), "Whether it fits");
  label.setText("<b>Fits</b> with 116 links &amp; more.");
  EXPECT_EQ(textRead(label), "Fits with 116 links & more.");
  label.setTextFormat(Qt::PlainText);
  EXPECT_EQ(textRead(label), "<b>Fits</b> with 116 links &amp; more.");
}

TEST_F(ReadAloud, AFieldThatIsTurnedIsDescribedByTheNewHeadlineUntilItIsLeft) {
  rear().setFocus();
  const QString own = rear().accessibleDescription();
  QTest::keyClick(&rear(), Qt::Key_Up);
  QTest::qWait(30);
  EXPECT_EQ(rear().accessibleDescription(), window().readout().headline());
  EXPECT_NE(rear().accessibleDescription(), own);
  QTest::keyClick(&rear(), Qt::Key_Up);
  QTest::qWait(30);
  EXPECT_EQ(rear().accessibleDescription(), window().readout().headline());
  control<QAbstractSpinBox>(window(), "Front teeth").setFocus();
  EXPECT_EQ(rear().accessibleDescription(), own);
}

TEST_F(ReadAloud, WhatWasSaidOfAFieldMeanwhileStays) {
  rear().setFocus();
  QTest::keyClick(&rear(), Qt::Key_Up);
  QTest::qWait(30);
  rear().setAccessibleDescription("99,999 is out of range");
  window().readout().setFocus();
  EXPECT_EQ(rear().accessibleDescription(), "99,999 is out of range");
}

}  // namespace
}  // namespace layshaft::test
