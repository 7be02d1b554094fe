// SPDX-License-Identifier: GPL-3.0-or-later
#include <QClipboard>
#include <QDir>
#include <QMenuBar>
#include <QTabWidget>
#include <QTableView>
#include <QTemporaryDir>
#include <QTextBrowser>

#include "core/profile_file.h"
#include "tests/ui/what_is_said.h"
#include "ui/document/preferences.h"
#include "ui/document/samples.h"
#include "ui/document/setup_edits.h"
#include "ui/pages/ladder_page.h"
#include "ui/window/help_window.h"
#include "ui/window/hints.h"

namespace layshaft::test {
namespace {

/// What the menus do beyond files and views: the clipboard, help, full screen, the start.
class WindowMenus : public testing::Test, FreshSettings {
 protected:
  QAction& action(const QString& text) {
    for (auto* candidate : window_->findChildren<QAction*>())
      if (candidate->text().remove('&') == text) return *candidate;
    throw std::runtime_error("no action " + text.toStdString());
  }
  /// Whether an action is offered by its menu as that opens.
  bool offered(const QString& text) {
    auto* menu = qobject_cast<QMenu*>(action(text).associatedObjects().value(0));
    emit menu->aboutToShow();
    const bool enabled = action(text).isEnabled();
    emit menu->aboutToHide();
    return enabled;
  }
  QString clipboard() { return QApplication::clipboard()->text(); }

  Window window_{sampleBike("club-600")};
};

TEST_F(WindowMenus, TheEditMenuActsOnTheFieldThatHasTheFocus) {
  auto& tyre = control<QLineEdit>(*window_, "Rear tyre");
  tyre.setFocus();
  tyre.deselect();
  EXPECT_FALSE(offered("Copy"));
  EXPECT_FALSE(offered("Cut"));
  action("Select All").trigger();
  EXPECT_EQ(tyre.selectedText(), tyre.text());
  EXPECT_TRUE(offered("Copy"));
  action("Copy").trigger();
  EXPECT_EQ(clipboard(), "180/55ZR17");
  QApplication::clipboard()->setText("160/60ZR17");
  action("Paste").trigger();
  EXPECT_EQ(tyre.text(), "160/60ZR17");
  tyre.selectAll();
  action("Cut").trigger();
  EXPECT_EQ(tyre.text(), "");
  EXPECT_EQ(clipboard(), "160/60ZR17");
  QTest::keyClick(&tyre, Qt::Key_Escape);
  QApplication::clipboard()->clear();
  EXPECT_FALSE(offered("Paste")) << "there is nothing to paste";
}

TEST_F(WindowMenus, TheEditMenuActsOnANumberToo) {
  auto& teeth = control<QSpinBox>(*window_, "Rear teeth");
  teeth.setFocus();
  teeth.selectAll();
  action("Copy").trigger();
  EXPECT_EQ(clipboard(), "45");
  QApplication::clipboard()->setText("47");
  action("Paste").trigger();
  QTest::keyClick(&teeth, Qt::Key_Return);
  EXPECT_EQ(proposedSetup(window_->document()).rearTeeth.count(), 47);
  window_->document().undoStack().undo();
}

TEST_F(WindowMenus, ARowOfTheLadderIsCopiedForASpreadsheet) {
  window_->findChild<QTabWidget*>()->setCurrentWidget(window_->findChild<ui::LadderPage*>());
  ASSERT_TRUE(soon([&] { return !window_->session().ladder().running(); }));
  auto& table = control<QTableView>(*window_, "Ladder");
  table.setFocus();
  table.clearSelection();
  EXPECT_FALSE(offered("Copy"));
  table.selectRow(0);
  EXPECT_TRUE(offered("Copy"));
  EXPECT_FALSE(offered("Paste")) << "it is only read";
  action("Copy").trigger();
  const QStringList lines = clipboard().split('\n');
  ASSERT_EQ(lines.size(), 2);
  EXPECT_TRUE(lines[0].startsWith("Pair\t")) << lines[0].toStdString();
  EXPECT_EQ(lines[1].count('\t'), lines[0].count('\t'));
  EXPECT_TRUE(lines[1].startsWith(table.model()->index(0, 0).data().toString())) << lines[1].toStdString();
}

TEST_F(WindowMenus, NothingIsOfferedWhereNothingHasTheFocus) {
  if (QWidget* focused = window_->focusWidget()) focused->clearFocus();
  for (const char* verb : {"Cut", "Copy", "Paste", "Select All"})
    EXPECT_FALSE(offered(QString::fromUtf8(verb))) << verb;
}

TEST_F(WindowMenus, WhatHasNothingToDoIsDisabled) {
  ui::SetupEdits::clearProposal(window_->document());
  EXPECT_FALSE(action("All Back to Stock").isEnabled());
  EXPECT_FALSE(action("Make the Proposal Stock").isEnabled());
  ui::SetupEdits(window_->document(), ui::Side::Proposed).setRearTeeth(47);
  EXPECT_TRUE(action("All Back to Stock").isEnabled());
  EXPECT_TRUE(action("Make the Proposal Stock").isEnabled());
  EXPECT_TRUE(action("Unpin").isEnabled());
  while (!window_.profile().pins.empty()) ui::SetupEdits::removePin(window_->document(), 0);
  EXPECT_FALSE(action("Unpin").isEnabled());
  window_->document().undoStack().setIndex(0);
}

TEST_F(WindowMenus, HelpIsOneWindowWithAGlossaryAndEveryShortcut) {
  EXPECT_EQ(action("Layshaft Help").shortcut(), QKeySequence(Qt::Key_F1));
  action("Layshaft Help").trigger();
  action("Layshaft Help").trigger();
  ASSERT_EQ(window_->findChildren<ui::HelpWindow*>().size(), 1);
  auto* help = window_->findChild<ui::HelpWindow*>();
  ASSERT_TRUE(help->isVisible());
  const QString words = help->findChild<QTextBrowser*>()->toPlainText();
  EXPECT_TRUE(words.contains("Glossary"));
  EXPECT_TRUE(words.contains("Rollout: "));
  int shortcuts = 0;
  const std::function<void(const QMenu&)> lookIn = [&](const QMenu& menu) {
    for (const QAction* candidate : menu.actions()) {
      if (const auto* more = candidate->menu<QMenu*>()) lookIn(*more);
      if (candidate->shortcut().isEmpty()) continue;
      ++shortcuts;
      EXPECT_TRUE(words.contains(candidate->text().remove('&').remove(QChar(0x2026))))
          << candidate->text().toStdString();
      EXPECT_TRUE(words.contains(candidate->shortcut().toString(QKeySequence::NativeText)))
          << candidate->text().toStdString();
    }
  };
  for (const QAction* top : window_->menuBar()->actions()) lookIn(*top->menu<QMenu*>());
  EXPECT_GE(shortcuts, 12);
}

TEST_F(WindowMenus, EveryLinkOfTheHelpLeadsSomewhere) {
  QFile file(":/help/help.html");
  ASSERT_TRUE(file.open(QIODevice::ReadOnly));
  const QString text = QString::fromUtf8(file.readAll());
  static const QRegularExpression link("href=\"([^\"]*)\"");
  int links = 0;
  for (auto it = link.globalMatch(text); it.hasNext(); ++links) {
    const QString to = it.next().captured(1);
    ASSERT_TRUE(to.startsWith('#')) << "all of it is here: " << to.toStdString();
    EXPECT_TRUE(text.contains("name=\"" + to.mid(1) + "\"")) << to.toStdString();
  }
  EXPECT_GE(links, 7);
}

TEST_F(WindowMenus, TheHelpNamesMenusAndPagesAsTheyAreNamed) {
  QFile file(":/help/help.html");
  ASSERT_TRUE(file.open(QIODevice::ReadOnly));
  const QString text = QString::fromUtf8(file.readAll()).simplified();
  static const QRegularExpression path("<b>(File|Edit|View|Bike|Help) ▸ ([^<]*)</b>");
  int paths = 0;
  for (auto it = path.globalMatch(text); it.hasNext(); ++paths) {
    const QString name = it.next().captured(2);
    bool there = false;
    for (const QAction* candidate : window_->findChildren<QAction*>())
      there = there || candidate->text().remove('&').remove(QChar(0x2026)) == name ||
              (name == "Undo" && candidate->text().remove('&').startsWith("Undo"));
    EXPECT_TRUE(there) << name.toStdString();
  }
  EXPECT_GE(paths, 6);
  auto* tabs = window_->findChild<QTabWidget*>();
  for (int page = 0; page < tabs->count(); ++page)
    EXPECT_TRUE(text.contains("<b>" + tabs->tabText(page).remove('&') + "</b>"))
        << tabs->tabText(page).toStdString();
}

TEST_F(WindowMenus, EscapeLeavesFullScreenOnlyWhereTheMenuEnteredIt) {
  EXPECT_EQ(action("Full Screen").shortcut(), QKeySequence(Qt::Key_F11));
  action("Full Screen").trigger();
  EXPECT_TRUE(window_->isFullScreen());
  EXPECT_TRUE(action("Full Screen").isChecked());
  QTest::keyClick(&*window_, Qt::Key_Escape);
  EXPECT_FALSE(window_->isFullScreen());
  EXPECT_FALSE(action("Full Screen").isChecked());
  window_->showFullScreen();
  EXPECT_TRUE(action("Full Screen").isChecked());
  QTest::keyClick(&*window_, Qt::Key_Escape);
  EXPECT_TRUE(window_->isFullScreen()) << "somebody else made it so";
  action("Full Screen").trigger();
  EXPECT_FALSE(window_->isFullScreen());
}

TEST_F(WindowMenus, EscapeInAFieldIsTheFieldsFirst) {
  action("Full Screen").trigger();
  auto& tyre = control<QLineEdit>(*window_, "Rear tyre");
  typeInto(tyre, "160/");
  QTest::keyClick(&tyre, Qt::Key_Escape);
  EXPECT_TRUE(window_->isFullScreen()) << "it took back what was half typed";
  QTest::keyClick(&tyre, Qt::Key_Escape);
  EXPECT_FALSE(window_->isFullScreen());
}

TEST_F(WindowMenus, TheLastFileIsOpenedAgainOnlyByChoice) {
  QTemporaryDir folder;
  const QString file = folder.filePath("last.bike.json");
  ASSERT_EQ(saveProfile(bike({{"/name", "Last"}}), file.toStdString()), std::nullopt);
  ui::preferences::addRecentFile(file);
  window_->openLastFile();
  EXPECT_EQ(window_->document().file(), "") << "not unless it is wanted";
  action("Open the Last File at Start").trigger();
  EXPECT_TRUE(ui::preferences::opensLastFile());
  window_->openLastFile();
  EXPECT_EQ(window_->document().title(), "Last");
}

TEST_F(WindowMenus, ALastFileThatIsGoneIsSaid) {
  QTemporaryDir folder;
  const QString file = folder.filePath("gone.bike.json");
  ui::preferences::setOpensLastFile(true);
  ui::preferences::addRecentFile(file);
  DialogAnswer none;
  window_->openLastFile();
  EXPECT_FALSE(none.seen());
  EXPECT_TRUE(control<QLabel>(*window_, "Message").text().contains(file));
  EXPECT_EQ(ui::preferences::recentFiles().value(0), file) << "a stick may be plugged in again";
}

TEST_F(WindowMenus, OnlyASampleIsCalledOne) {
  const auto hint = [](ui::MainWindow& window) {
    return window.findChild<ui::Hints*>()->findChild<QLabel*>()->text();
  };
  Window sample(ui::firstSample());
  EXPECT_TRUE(hint(*sample).contains("This is a sample"));
  ui::SetupEdits(sample->document(), ui::Side::Proposed).setRearTeeth(48);
  EXPECT_TRUE(hint(*sample).contains("This is a sample")) << "also with another proposal";
  sample->document().load(bike(), QDir::temp().filePath("own.bike.json"));
  EXPECT_FALSE(hint(*sample).contains("sample"));
  EXPECT_TRUE(hint(*sample).contains("drive line"));
  Window own(bike());
  EXPECT_FALSE(hint(*own).contains("sample"));
}

}  // namespace
}  // namespace layshaft::test
