// SPDX-License-Identifier: GPL-3.0-or-later
#include <QDragEnterEvent>
#include <QDropEvent>
#include <QFileDialog>
#include <QMenuBar>
#include <QMimeData>
#include <QTabWidget>
#include <QTemporaryDir>

#include "core/profile_file.h"
#include "tests/ui/support.h"
#include "ui/document/file_name.h"
#include "ui/document/preferences.h"
#include "ui/document/setup_edits.h"

namespace layshaft::test {
namespace {

using ui::MainWindow;
using ui::SetupEdits;
using ui::Side;

/// Files, titles and several windows.
class MainWindowFiles : public testing::Test {
 protected:
  ~MainWindowFiles() override {
    for (MainWindow* other : otherWindows()) delete other;
  }

  QString write(const char* name, const Profile& profile) const {
    const QString path = folder_.filePath(QString::fromUtf8(name));
    QFile file(path);
    if (!file.open(QIODevice::WriteOnly)) throw std::runtime_error("cannot write");
    file.write(writeProfile(profile).c_str());
    return path;
  }
  std::vector<MainWindow*> otherWindows() const {
    std::vector<MainWindow*> others;
    for (QWidget* widget : QApplication::topLevelWidgets())
      if (auto* window = qobject_cast<MainWindow*>(widget); window && window != &*window_)
        others.push_back(window);
    return others;
  }
  void change(MainWindow& window) {
    SetupEdits edits(window.document(), Side::Proposed);
    edits.setRearTeeth(edits.current().rearTeeth.count() + 1);
  }
  QAction& action(const QString& text) {
    for (auto* candidate : window_->findChildren<QAction*>())
      if (candidate->text().remove('&') == text) return *candidate;
    throw std::runtime_error("no action " + text.toStdString());
  }
  /// A drag with a file over the middle of a widget, then its drop; whether the drag was accepted.
  bool dropOn(QWidget& target, const QList<QUrl>& urls) {
    QMimeData data;
    data.setUrls(urls);
    data.setText(urls.value(0).toString());  // as file managers do
    const QPoint middle = target.rect().center();
    QDragEnterEvent enter(middle, Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(&target, &enter);
    if (!enter.isAccepted()) return false;
    QDropEvent drop(middle, Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(&target, &drop);
    return true;
  }

  /// Saves under a name that is there already: chooses it, confirms that it is to be replaced, reads what is
  /// said then and gives up. What was said.
  QStringList saveOver(const QString& taken) {
    QStringList said;
    bool chosen = false;
    QTimer answering;
    QObject::connect(&answering, &QTimer::timeout, &answering, [&] {
      auto* dialog = qobject_cast<QDialog*>(QApplication::activeModalWidget());
      if (auto* files = qobject_cast<QFileDialog*>(dialog)) {
        if (std::exchange(chosen, true)) return files->reject();
        typeFileName(*files, taken);
        QMetaObject::invokeMethod(files, "accept", Qt::QueuedConnection);  // it asks from inside
      } else if (auto* box = qobject_cast<QMessageBox*>(dialog)) {
        said << box->text();
        if (auto* yes = box->button(QMessageBox::Yes))
          yes->click();
        else
          box->reject();
      }
    });
    answering.start(10);
    action("Save").trigger();
    return said;
  }

  QTemporaryDir folder_;
  Window window_{bike({{"/name", "Sample"}})};
};

TEST_F(MainWindowFiles, TheTitleShowsBikeFileAndAModifiedMark) {
  EXPECT_EQ(window_->windowTitle(), "Sample[*] – Layshaft");
  EXPECT_FALSE(window_->isWindowModified());
  window_->openFile(write("nipper.bike.json", bike({{"/name", "Nipper"}})));
  EXPECT_EQ(window_->windowTitle(), "Nipper – nipper.bike.json[*] – Layshaft");
  change(*window_);
  EXPECT_TRUE(window_->isWindowModified());
  window_->document().undoStack().undo();
  EXPECT_FALSE(window_->isWindowModified());
}

TEST_F(MainWindowFiles, AFileChangedBySomethingElseIsNotReplacedUnasked) {
  const QString file = write("shared.bike.json", bike({{"/name", "Mine"}}));
  window_->openFile(file);
  change(*window_);
  write("shared.bike.json", bike({{"/name", "Somebody else's"}}));
  DialogAnswer no(press(QMessageBox::Cancel));
  action("Save").trigger();
  EXPECT_TRUE(no.seen());
  EXPECT_EQ(loadProfile(file.toStdString())->name, "Somebody else's");
  EXPECT_TRUE(window_->document().isModified());
  DialogAnswer yes(press(QMessageBox::Save));
  action("Save").trigger();
  EXPECT_EQ(loadProfile(file.toStdString())->name, "Mine");
  DialogAnswer none;
  change(*window_);
  action("Save").trigger();
  EXPECT_FALSE(none.seen()) << "what was saved here is known";
}

TEST_F(MainWindowFiles, ANameLikeTheModifiedMarkIsStillAName) {
  window_->openFile(write("mark.bike.json", bike({{"/name", "Blue[*]"}})));
  EXPECT_EQ(window_->windowTitle(), "Blue[*][*] – mark.bike.json[*] – Layshaft")
      << "doubled, Qt shows it as it is";
}

TEST_F(MainWindowFiles, AFileOpensInPlaceOfAnUntouchedSample) {
  window_->openFile(write("a.bike.json", bike({{"/name", "A"}})));
  EXPECT_EQ(window_.profile().name, "A");
  EXPECT_TRUE(otherWindows().empty());
}

TEST_F(MainWindowFiles, AFileOpensBesideWorkInAWindowOfItsOwn) {
  change(*window_);
  window_->openFile(write("a.bike.json", bike({{"/name", "A"}})));
  EXPECT_EQ(window_.profile().name, "Sample");
  ASSERT_EQ(otherWindows().size(), 1u);
  EXPECT_EQ(otherWindows()[0]->document().title(), "A");
  EXPECT_TRUE(otherWindows()[0]->isVisible());
  EXPECT_FALSE(otherWindows()[0]->isWindowModified());
}

TEST_F(MainWindowFiles, TheSameFileTwiceRaisesTheOneWindow) {
  const QString file = write("a.bike.json", bike({{"/name", "A"}}));
  window_->openFile(file);
  window_->openFile(file);
  EXPECT_TRUE(otherWindows().empty());
}

TEST_F(MainWindowFiles, AFileThatIsOpenElsewhereComesToTheFront) {
  const QString a = write("a.bike.json", bike({{"/name", "A"}}));
  const QString b = write("b.bike.json", bike({{"/name", "B"}}));
  window_->openFile(a);
  window_->openFile(b);
  ASSERT_EQ(otherWindows().size(), 1u);
  MainWindow* second = otherWindows()[0];
  ASSERT_TRUE(soon([&] { return second->isActiveWindow(); })) << "the window that just opened";
  second->openFile(a);
  EXPECT_TRUE(soon([&] { return window_->isActiveWindow(); }));
  EXPECT_EQ(otherWindows().size(), 1u);
}

TEST_F(MainWindowFiles, TheSameFileByAnotherPathRaisesTheOneWindow) {
  const QString file = write("a.bike.json", bike({{"/name", "A"}}));
  window_->openFile(file);
  window_->openFile(folder_.filePath("../" + QDir(folder_.path()).dirName() + "/a.bike.json"));
  EXPECT_TRUE(otherWindows().empty()) << "two windows on one file would save over each other";
  ASSERT_TRUE(QFile::link(file, folder_.filePath("link.bike.json")));
  window_->openFile(folder_.filePath("link.bike.json"));
  EXPECT_TRUE(otherWindows().empty()) << "nor by a link";
}

TEST_F(MainWindowFiles, AFileThatCannotBeOpenedIsExplainedAndLeavesTheDocumentAlone) {
  const Profile before = window_.profile();
  for (const char* name : {"missing.bike.json", "broken.bike.json", "."}) {
    QFile broken(folder_.filePath("broken.bike.json"));
    ASSERT_TRUE(broken.open(QIODevice::WriteOnly));
    broken.write(with("/stock/front_teeth", 5).c_str());
    broken.close();
    DialogAnswer warning;
    window_->openFile(folder_.filePath(name));
    EXPECT_TRUE(warning.seen()) << name;
    EXPECT_TRUE(warning.said().contains(QDir::cleanPath(folder_.filePath(name))))
        << warning.said().toStdString();
    if (QLatin1String(name) != QLatin1String("broken.bike.json")) continue;
    EXPECT_TRUE(warning.said().contains("stock.front_teeth: 5")) << warning.said().toStdString();
  }
  EXPECT_TRUE(same(window_.profile(), before));
  EXPECT_EQ(window_->document().file(), "");
  EXPECT_TRUE(otherWindows().empty());
}

TEST_F(MainWindowFiles, AFileDroppedAnywhereOnTheWindowOpens) {
  int number = 0;
  for (QWidget* target :
       {static_cast<QWidget*>(&*window_), static_cast<QWidget*>(&window_->readout()),
        window_->currentChart()->viewport(), static_cast<QWidget*>(&window_->driveLine()),
        static_cast<QWidget*>(&control<QLineEdit>(*window_, "Rear tyre")),
        static_cast<QWidget*>(control<QAbstractSpinBox>(*window_, "Rear teeth").findChild<QLineEdit*>())}) {
    const QString name = QStringLiteral("dropped-%1").arg(++number);
    const QString file =
        write((name + ".bike.json").toUtf8().constData(), bike({{"/name", name.toStdString()}}));
    window_->document().load(bike(), QString());
    EXPECT_TRUE(dropOn(*target, {QUrl::fromLocalFile(file)})) << target->metaObject()->className();
    EXPECT_EQ(window_.profile().name, name.toStdString()) << target->metaObject()->className();
    EXPECT_FALSE(window_->isWindowModified());
  }
}

TEST_F(MainWindowFiles, SeveralDroppedFilesOpenInAWindowEach) {
  dropOn(*window_, {QUrl::fromLocalFile(write("a.bike.json", bike({{"/name", "A"}}))),
                    QUrl::fromLocalFile(write("b.bike.json", bike({{"/name", "B"}})))});
  EXPECT_EQ(window_.profile().name, "A");
  ASSERT_EQ(otherWindows().size(), 1u);
  EXPECT_EQ(otherWindows()[0]->document().title(), "B");
}

TEST_F(MainWindowFiles, AnAddressThatIsNoFileIsExplained) {
  DialogAnswer warning;
  dropOn(*window_, {QUrl("https://example.org/a.bike.json")});
  EXPECT_TRUE(warning.said().contains("example.org")) << warning.said().toStdString();
}

TEST_F(MainWindowFiles, SaveWritesBackAndClearsTheMark) {
  const QString file = write("a.bike.json", bike());
  window_->openFile(file);
  change(*window_);
  action("Save").trigger();
  EXPECT_FALSE(window_->isWindowModified());
  EXPECT_TRUE(same(*loadProfile(file.toStdString()), window_.profile()));
}

TEST_F(MainWindowFiles, SaveAsAsksForANameAndAddsTheEnding) {
  change(*window_);
  const QString wanted = folder_.filePath("named");
  DialogAnswer dialog([&](QDialog& asked) {
    auto& files = dynamic_cast<QFileDialog&>(asked);
    typeFileName(files, wanted);
    QMetaObject::invokeMethod(&files, "accept");
  });
  action("Save").trigger();
  EXPECT_TRUE(dialog.seen());
  EXPECT_EQ(window_->document().file(), wanted + ".bike.json");
  EXPECT_TRUE(same(*loadProfile((wanted + ".bike.json").toStdString()), window_.profile()));
}

TEST_F(MainWindowFiles, SaveAsDoesNotReplaceAFileThatAnotherWindowShows) {
  const QString taken = write("taken.bike.json", bike({{"/name", "Taken"}}));
  change(*window_);
  window_->openFile(taken);
  ASSERT_EQ(otherWindows().size(), 1u);
  const QStringList said = saveOver(taken);
  EXPECT_EQ(loadProfile(taken.toStdString())->name, "Taken");
  EXPECT_TRUE(window_->isWindowModified());
  EXPECT_FALSE(said.isEmpty());
}

TEST_F(MainWindowFiles, RevertGoesBackToTheFileAfterAQuestion) {
  const QString file = write("a.bike.json", bike());
  window_->openFile(file);
  EXPECT_FALSE(action("Revert to Saved").isEnabled());
  change(*window_);
  const Profile changed = window_.profile();
  ASSERT_TRUE(action("Revert to Saved").isEnabled());
  {
    DialogAnswer question([](QDialog& dialog) {
      auto& box = dynamic_cast<QMessageBox&>(dialog);
      EXPECT_EQ(box.defaultButton(), box.button(QMessageBox::Cancel));
      EXPECT_EQ(box.buttons().size(), 2);
      box.button(QMessageBox::Cancel)->click();
    });
    action("Revert to Saved").trigger();
    EXPECT_TRUE(same(window_.profile(), changed));
  }
  DialogAnswer question([](QDialog& dialog) {
    for (auto* button : dialog.findChildren<QPushButton*>())
      if (button->text().remove('&') == "Revert") return button->click();
    dialog.reject();
  });
  action("Revert to Saved").trigger();
  EXPECT_TRUE(same(window_.profile(), bike()));
  EXPECT_FALSE(window_->isWindowModified());
  EXPECT_EQ(window_->document().undoStack().undoText(), "revert to saved");
  window_->document().undoStack().undo();
  EXPECT_TRUE(same(window_.profile(), changed)) << "nothing is lost";
  EXPECT_TRUE(window_->isWindowModified());
}

TEST_F(MainWindowFiles, AFileChangedOutsideIsSaidAndCanBeLoadedAnew) {
  const QString file = write("shared.bike.json", bike({{"/name", "Mine"}}));
  window_->openFile(file);
  ASSERT_FALSE(action("Revert to Saved").isEnabled());
  auto& message = control<QLabel>(*window_, "Message");
  write("shared.bike.json", bike({{"/name", "Somebody else's"}}));
  ASSERT_TRUE(soon([&] { return action("Revert to Saved").isEnabled(); }));
  EXPECT_TRUE(message.text().contains("shared.bike.json was changed")) << message.text().toStdString();
  DialogAnswer none;
  action("Revert to Saved").trigger();
  EXPECT_FALSE(none.seen()) << "nothing of ours is lost";
  EXPECT_EQ(window_.profile().name, "Somebody else's");
  EXPECT_FALSE(action("Revert to Saved").isEnabled());

  // Replaced by another file, as other programs save.
  write("fresh", bike({{"/name", "Again"}}));
  ASSERT_EQ(std::rename(folder_.filePath("fresh").toStdString().c_str(), file.toStdString().c_str()), 0);
  EXPECT_TRUE(soon([&] { return action("Revert to Saved").isEnabled(); }));
  action("Revert to Saved").trigger();
  EXPECT_EQ(window_.profile().name, "Again");
}

TEST_F(MainWindowFiles, WhatIsSavedHereIsNoChangeOfSomebodyElse) {
  window_->openFile(write("own.bike.json", bike()));
  change(*window_);
  action("Save").trigger();
  QTest::qWait(200);
  EXPECT_FALSE(action("Revert to Saved").isEnabled());
  EXPECT_EQ(control<QLabel>(*window_, "Message").text(), "");
}

TEST_F(MainWindowFiles, SaveAsThroughALinkNeverLetsTwoWindowsShareAFile) {
  const QString taken = write("taken.bike.json", bike({{"/name", "Taken"}}));
  ASSERT_TRUE(QFile::link(taken, folder_.filePath("link.bike.json")));
  change(*window_);
  window_->openFile(taken);
  ASSERT_EQ(otherWindows().size(), 1u);
  const QStringList said = saveOver(folder_.filePath("link.bike.json"));
  EXPECT_EQ(loadProfile(taken.toStdString())->name, "Taken");
  EXPECT_NE(window_->document().file(), folder_.filePath("link.bike.json"));
  EXPECT_TRUE(said.last().contains("open in another window")) << said.join('|').toStdString();
}

TEST_F(MainWindowFiles, NamesAreNeverTakenForMarkup) {
  window_->document().load(bike({{"/name", "<b>Bold</b><img src=x>"}}), QString());
  change(*window_);
  Qt::TextFormat format = Qt::AutoText;
  DialogAnswer question([&](QDialog& dialog) {
    format = dynamic_cast<QMessageBox&>(dialog).textFormat();
    press(QMessageBox::Cancel)(dialog);
  });
  EXPECT_FALSE(window_->close());
  EXPECT_EQ(format, Qt::PlainText);
  EXPECT_TRUE(question.said().contains("<b>Bold</b>"));
  window_->driveLine().say("<b>x</b>");
  EXPECT_EQ(control<QLabel>(*window_, "Message").textFormat(), Qt::PlainText);
  EXPECT_FALSE(Qt::mightBeRichText(control<QLabel>(*window_, "Message").toolTip()) &&
               control<QLabel>(*window_, "Message").toolTip().contains("<b>"));
}

TEST_F(MainWindowFiles, OpenRecentListsWhatWasOpenedAndOpensIt) {
  const QString a = write("a&b.bike.json", bike({{"/name", "A"}})), c = write("c.bike.json", bike());
  window_->openFile(a);
  window_->openFile(c);
  auto* recent = qobject_cast<QMenu*>(action("Open Recent").menu<QMenu*>());
  emit recent->aboutToShow();
  ASSERT_GE(recent->actions().size(), 2);
  EXPECT_TRUE(recent->actions()[0]->text().endsWith("c.bike.json"));
  EXPECT_TRUE(recent->actions()[1]->text().endsWith("a&&b.bike.json"));
}

TEST_F(MainWindowFiles, AFileWhoseNameIsNoTextOpensSavesAndIsRemembered) {
  const OddFile file(folder_.path());
  const std::filesystem::path& odd = file.path;
  ASSERT_EQ(saveProfile(bike({{"/name", "Odd"}}), odd), std::nullopt);
  window_->openFile(ui::nameOf(odd));
  EXPECT_EQ(window_.profile().name, "Odd");
  change(*window_);
  action("Save").trigger();
  EXPECT_TRUE(same(*loadProfile(odd), window_.profile()));
  ASSERT_FALSE(ui::preferences::recentFiles().isEmpty());
  EXPECT_EQ(ui::pathOf(ui::preferences::recentFiles()[0]), odd);
  window_->document().load(bike(), QString());
  window_->openFile(ui::preferences::recentFiles()[0]);
  EXPECT_EQ(window_.profile().name, "Odd");
}

TEST_F(MainWindowFiles, WhatIsStillBeingTypedIsSavedToo) {
  const QString file = write("a.bike.json", sampleBike("club-600"));
  window_->openFile(file);
  window_->findChild<QTabWidget*>()->setCurrentIndex(1);
  auto& slope = control<QDoubleSpinBox>(*window_, "Slope");
  typeInto(slope, "3");
  action("Save").trigger();
  EXPECT_EQ(loadProfile(file.toStdString())->ride->slopePercent, 3.0);
  typeInto(slope, "4");
  DialogAnswer question(press(QMessageBox::Discard));
  EXPECT_TRUE(window_->close());
  EXPECT_TRUE(question.seen()) << "closing knows of it";
}

TEST_F(MainWindowFiles, AWindowThatHasTheLastOfAFileAsksBeforeItCloses) {
  const QString file = write("a.bike.json", bike());
  window_->openFile(file);
  ASSERT_TRUE(QFile::remove(file));
  DialogAnswer question(press(QMessageBox::Save));
  EXPECT_TRUE(window_->close());
  EXPECT_TRUE(question.said().contains("is gone")) << question.said().toStdString();
  EXPECT_TRUE(loadProfile(file.toStdString()));
}

TEST_F(MainWindowFiles, WhatIsSavedOfABikeStartsBesideItsFile) {
  const QString file = write("mine.bike.json", bike());
  window_->openFile(file);
  for (const auto& [entry, name] :
       {std::pair{"Save Picture…", "mine – sawtooth.png"}, std::pair{"Save Data…", "mine – sawtooth.csv"},
        std::pair{"Save Report…", "mine – report.pdf"}}) {
    QString suggested;
    DialogAnswer dialog([&](QDialog& asked) {
      suggested = dynamic_cast<QFileDialog&>(asked).selectedFiles().value(0);
      asked.reject();
    });
    action(entry).trigger();
    EXPECT_TRUE(dialog.seen());
    EXPECT_EQ(QFileInfo(suggested).fileName(), name);
    EXPECT_EQ(QFileInfo(suggested).absolutePath(), QFileInfo(file).absolutePath());
  }
}

TEST_F(MainWindowFiles, ANameNeverMeansAFolder) {
  window_->document().load(bike({{"/name", "../Club/600: \"new\"\n*?"}}), QString());
  QString suggested;
  DialogAnswer dialog([&](QDialog& asked) {
    suggested = dynamic_cast<QFileDialog&>(asked).selectedFiles().value(0);
    asked.reject();
  });
  action("Save Data…").trigger();
  EXPECT_TRUE(dialog.seen());
  EXPECT_EQ(QFileInfo(suggested).fileName(), "-Club-600- -new- -- – sawtooth.csv");
}

TEST_F(MainWindowFiles, ClosingWithChangesAsksAndClosingWithoutDoesNot) {
  change(*window_);
  {
    DialogAnswer question(press(QMessageBox::Cancel));
    EXPECT_FALSE(window_->close());
    EXPECT_TRUE(question.said().contains("“Sample”"));
  }
  EXPECT_TRUE(window_->isVisible());
  DialogAnswer question(press(QMessageBox::Discard));
  EXPECT_TRUE(window_->close());
  EXPECT_TRUE(question.seen());
  window_->document().undoStack().undo();
  window_->show();
  DialogAnswer none;
  EXPECT_TRUE(window_->close());
  EXPECT_FALSE(none.seen());
}

}  // namespace
}  // namespace layshaft::test
