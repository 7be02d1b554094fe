// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/refusal_bubble.h"

#include <QAccessible>
#include <QMenuBar>
#include <QScrollArea>
#include <QScrollBar>
#include <QTabWidget>

#include "tests/ui/contrast.h"
#include "tests/ui/support.h"
#include "ui/charts/appearance.h"
#include "ui/editors/aim_editor.h"
#include "ui/editors/bike_details.h"
#include "ui/editors/field_form.h"
#include "ui/editors/station.h"

namespace layshaft::test {
namespace {

using ui::RefusalBubble;

QRect placeOf(const QWidget& widget) {
  return {widget.mapTo(widget.window(), QPoint()), widget.size()};
}

/// What is refused in a window is said beside its field.
class RefusedEntry : public testing::Test, FreshSettings {
 protected:
  RefusedEntry() { QTest::qWait(30); }

  RefusalBubble& bubble() { return RefusalBubble::near(*window_); }
  QTabWidget& tabs() { return *window_->findChild<QTabWidget*>(); }
  QAbstractSpinBox& field(const char* name) {
    return control<QAbstractSpinBox>(*window_, QString::fromUtf8(name));
  }
  QAbstractSpinBox& fieldInView(const char* name) {
    for (auto* box : window_->findChildren<QAbstractSpinBox*>())
      if (box->isVisible() && isNamed(*box, QString::fromUtf8(name))) return *box;
    throw std::runtime_error(std::string("no field in view named ") + name);
  }
  QString foot() { return control<QLabel>(*window_, "Message").text(); }

  void refuse(QAbstractSpinBox& box, Qt::Key finish = Qt::Key_Return) {
    typeInto(box, "99999");
    QTest::keyClick(&box, finish);
    QTest::qWait(40);
  }
  void expectBeside(const QWidget& box) {
    ASSERT_TRUE(soon([&] { return bubble().isVisible(); }, 2000));
    const QRect said = placeOf(bubble()), at = placeOf(box);
    EXPECT_TRUE(window_->rect().contains(said)) << testing::PrintToString(said);
    EXPECT_FALSE(said.intersects(at))
        << testing::PrintToString(said) << " covers " << testing::PrintToString(at);
    EXPECT_TRUE(said.top() == at.bottom() + 1 || said.bottom() == at.top() - 1) << "touches it";
    EXPECT_LE(said.left(), at.center().x());
    EXPECT_GE(said.right(), at.center().x());
    EXPECT_FALSE(bubble().text().isEmpty());
    EXPECT_GE(bubble().contentsRect().height(), bubble()
                                                    .fontMetrics()
                                                    .boundingRect(0, 0, bubble().contentsRect().width(), 1000,
                                                                  Qt::TextWordWrap, bubble().text())
                                                    .height())
        << "all of it is read";
  }

  Window window_{workedExample()};
};

TEST_F(RefusedEntry, IsSaidBesideEachFieldOfTheDriveLineAndMovesNothing) {
  for (const QSize size : {QSize(1280, 720), QSize(1024, 600)}) {
    window_->resize(size);
    QTest::qWait(30);
    for (const char* name : {"Rev limit", "Gear 1 ratio", "Front teeth", "Rear teeth", "Width", "Rollout"}) {
      std::vector<QRect> before, after;
      for (auto* station : window_->findChildren<ui::Station*>()) before.push_back(station->geometry());
      refuse(field(name));
      expectBeside(field(name));
      EXPECT_TRUE(bubble().text().startsWith(name) && bubble().text().contains("is out of range"))
          << bubble().text().toStdString();
      EXPECT_EQ(foot(), bubble().text());
      for (auto* station : window_->findChildren<ui::Station*>()) after.push_back(station->geometry());
      EXPECT_EQ(before, after);
    }
  }
}

TEST_F(RefusedEntry, IsSaidAlsoAfterTabAndStaysUntilTheNextEditOrField) {
  auto& limit = field("Rev limit");
  refuse(limit, Qt::Key_Tab);
  EXPECT_FALSE(limit.hasFocus());
  expectBeside(limit);
  QTest::qWait(200);
  EXPECT_TRUE(bubble().isVisible());
  QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
  EXPECT_FALSE(bubble().isVisible()) << "who goes on has read it";
  EXPECT_EQ(foot(), "");
  refuse(limit, Qt::Key_Tab);
  QTest::keyClick(&field("Rear teeth"), Qt::Key_Up);
  EXPECT_FALSE(bubble().isVisible());
  EXPECT_EQ(foot(), "");
  refuse(limit, Qt::Key_Tab);
  QTest::keyClicks(QApplication::focusWidget(), "x");
  EXPECT_FALSE(bubble().isVisible()) << "typing there is no edit yet";
}

TEST_F(RefusedEntry, GoesWithTypingUndoAnotherPageAClickAndEscape) {
  auto& limit = field("Rev limit");
  QTest::keyClick(&field("Rear teeth"), Qt::Key_Up);
  const std::pair<const char*, std::function<void()>> ends[] = {
      {"typing", [&] { QTest::keyClick(&limit, Qt::Key_1); }},
      {"undo", [&] { window_->document().undoStack().undo(); }},
      {"another page", [&] { tabs().setCurrentIndex((tabs().currentIndex() + 1) % tabs().count()); }},
      {"a click on it", [&] { QTest::mouseClick(&bubble(), Qt::LeftButton); }},
      {"Escape", [&] { QTest::keyClick(&limit, Qt::Key_Escape); }}};
  for (const auto& [what, end] : ends) {
    refuse(limit);
    ASSERT_TRUE(bubble().isVisible()) << what;
    EXPECT_NE(foot(), "") << what;
    end();
    EXPECT_FALSE(bubble().isVisible()) << what;
    EXPECT_EQ(foot(), "") << what;
    EXPECT_EQ(limit.accessibleDescription().indexOf("out of range"), -1) << what;
  }
}

TEST_F(RefusedEntry, WhatTheBikeDoesNotAllowIsSaidWhenTheValueFromBeforeIsBack) {
  auto& second = field("Gear 2 ratio");
  const QString before = second.text();
  typeInto(second, "4.5");
  EXPECT_TRUE(bubble().isVisible()) << "while it is typed";
  QTest::keyClick(&second, Qt::Key_Tab);
  QTest::qWait(40);
  EXPECT_EQ(second.text(), before);
  expectBeside(second);
  EXPECT_EQ(foot(), bubble().text());
}

TEST_F(RefusedEntry, ATyreThatIsNoneIsSaidBesideItsField) {
  auto& tyre = control<QLineEdit>(*window_, "Rear tyre");
  typeInto(tyre, "180/");
  QTest::keyClick(&tyre, Qt::Key_Return);
  QTest::qWait(40);
  expectBeside(tyre);
}

TEST_F(RefusedEntry, IsSaidBesideTheFieldsOfAPage) {
  for (const QSize size : {QSize(1280, 720), QSize(1024, 600)}) {
    window_->resize(size);
    for (int page = 0; page < tabs().count(); ++page) {
      tabs().setCurrentIndex(page);
      QTest::qWait(30);
      auto* form = tabs().currentWidget()->findChild<ui::FieldForm*>();
      if (!form) continue;
      for (auto* box : form->findChildren<QAbstractSpinBox*>()) {
        if (box->isHidden()) continue;
        refuse(*box);
        if (box->text().contains("99")) continue;  // as much is allowed
        expectBeside(*box);
      }
    }
  }
}

TEST_F(RefusedEntry, ComesAndGoesWithAFieldThatIsScrolled) {
  tabs().setCurrentIndex(1);
  window_->resize(1024, 600);
  settle(*window_);
  QScrollArea* scroll = nullptr;
  for (auto* area : tabs().currentWidget()->findChildren<QScrollArea*>())
    if (area->verticalScrollBar()->maximum() > 0) scroll = area;
  ASSERT_TRUE(scroll) << "a page that scrolls";
  QAbstractSpinBox* box = scroll->findChild<ui::FieldForm*>()->findChild<QAbstractSpinBox*>();
  refuse(*box);
  expectBeside(*box);
  // Something high enough to scroll it out of view.
  scroll->widget()->setMinimumHeight(5000);
  QTest::qWait(20);
  ASSERT_TRUE(soon([&] { return scroll->verticalScrollBar()->maximum() > scroll->height(); }));
  scroll->verticalScrollBar()->setValue(scroll->verticalScrollBar()->maximum());
  EXPECT_TRUE(soon([&] { return !bubble().isVisible(); }));
  scroll->verticalScrollBar()->setValue(0);
  EXPECT_TRUE(soon([&] { return bubble().isVisible(); }));
  expectBeside(*box);
}

TEST_F(RefusedEntry, IsSaidBesideTheFieldsOfAnAim) {
  for (int page = 0; page < tabs().count(); ++page)
    if (tabs().tabText(page) == "Ladder") tabs().setCurrentIndex(page);
  QTest::qWait(30);
  auto& aims = *window_->findChild<ui::AimEditor*>();
  for (auto* box : aims.findChildren<QAbstractSpinBox*>()) {
    if (!box->isVisible()) continue;
    refuse(*box);
    expectBeside(*box);
  }
  auto* add = control<QComboBox>(aims, "Kind of aim").parentWidget()->findChild<QPushButton*>();
  add->click();
  EXPECT_FALSE(bubble().isVisible()) << "an edit";
  add->click();
  expectBeside(*add);
  EXPECT_TRUE(bubble().text().contains("already listed")) << bubble().text().toStdString();
}

TEST_F(RefusedEntry, IsSaidBesideTheFieldsOfTheLadder) {
  for (int page = 0; page < tabs().count(); ++page)
    if (tabs().tabText(page) == "Ladder") tabs().setCurrentIndex(page);
  QTest::qWait(30);
  for (const char* name : {"Fewest front teeth", "Most front teeth", "Fewest rear teeth", "Most rear teeth",
                           "Within per cent"}) {
    auto& box = fieldInView(name);
    const QString before = box.text();
    refuse(box);
    EXPECT_EQ(box.text(), before) << name;
    expectBeside(box);
    EXPECT_TRUE(bubble().text().startsWith(name)) << bubble().text().toStdString();
  }
}

TEST_F(RefusedEntry, IsSaidBesideTheFieldsOfBikeDetails) {
  window_->showDetails("bike.chassis.wheelbase_mm");
  QTest::qWait(50);
  auto& details = *window_->findChild<ui::BikeDetails*>();
  auto& wheelbase = control<QAbstractSpinBox>(details, "Wheelbase");
  const QRect before = placeOf(wheelbase);
  refuse(wheelbase);
  auto& beside = RefusalBubble::near(wheelbase);
  ASSERT_TRUE(beside.isVisible());
  EXPECT_FALSE(placeOf(beside).intersects(placeOf(wheelbase)));
  EXPECT_TRUE(wheelbase.window()->rect().contains(placeOf(beside)));
  EXPECT_EQ(placeOf(wheelbase), before) << "nothing jumps";
  EXPECT_EQ(wheelbase.accessibleDescription(), beside.text());
  details.close();
  EXPECT_FALSE(beside.isVisible());
}

TEST_F(RefusedEntry, IsAnAlertAndTheDescriptionOfTheFieldThatHasTheFocus) {
  auto& limit = field("Rev limit");
  refuse(limit);
  EXPECT_EQ(limit.accessibleDescription(), bubble().text());
  QAccessibleInterface* alert = QAccessible::queryAccessibleInterface(&bubble());
  ASSERT_TRUE(alert);
  EXPECT_EQ(alert->role(), QAccessible::AlertMessage);
  EXPECT_EQ(alert->text(QAccessible::Name), bubble().text());
  refuse(limit, Qt::Key_Tab);
  EXPECT_EQ(QApplication::focusWidget()->accessibleDescription(), bubble().text())
      << "a reader is already at the next field";
  QTest::qWait(60);
  EXPECT_EQ(QApplication::focusWidget()->accessibleDescription(), bubble().text())
      << "no headline takes its place";
}

TEST_F(RefusedEntry, IsReadableInLightAndDark) {
  EXPECT_NEAR(contrast(Qt::black, Qt::white), 21.0, 1e-9);
  const QPalette desktop = QApplication::palette();
  for (const QPalette& palette : {ui::lightPalette(), ui::darkPalette()}) {
    QApplication::setPalette(palette);
    refuse(field("Rev limit"));
    const QImage picture = bubble().grab().toImage();
    const QColor ground = picture.pixelColor(bubble().width() / 2, bubble().contentsRect().bottom() + 2);
    const QColor words = bubble().palette().color(bubble().foregroundRole());
    EXPECT_GE(contrast(ground, words), 4.5);
    bool painted = false;
    for (int x = 0; x < picture.width(); ++x)
      painted =
          painted || contrast(ground, picture.pixelColor(x, bubble().contentsRect().center().y())) >= 4.5;
    EXPECT_TRUE(painted) << "its words are painted so";
  }
  QApplication::setPalette(desktop);
}

}  // namespace
}  // namespace layshaft::test
