// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/document/recovery.h"

#include <QProcess>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <fstream>

#include "tests/small_disk.h"
#include "tests/ui/crashing_program.h"
#include "tests/ui/support.h"
#include "ui/document/file_name.h"

namespace layshaft::test {

namespace {

using ui::Document;
using ui::recoverable;
using ui::RecoveryCopy;

class RecoveryTest : public testing::Test {
 protected:
  void change(Document& document, const char* name) {
    document.edit({.field = "name", .title = "name", .shown = {}}, [&](Profile& p) { p.name = name; });
  }
  QStringList copies() const { return QDir(folder_.path()).entryList({"*.recovery.json"}, QDir::Files); }
  QStringList everything() const {
    return QDir(folder_.path()).entryList(QDir::AllEntries | QDir::NoDotAndDotDot);
  }

  QTemporaryDir folder_;
};

TEST_F(RecoveryTest, ACopyAppearsAfterAChangeAndHoldsIt) {
  Document document(bike());
  RecoveryCopy copy(document, folder_.path());
  EXPECT_TRUE(copies().isEmpty());
  change(document, "Unsaved");
  ASSERT_TRUE(soon([&] { return copies().size() == 1; }));
  EXPECT_THAT(contentsOf(QDir(folder_.path()).filePath(copies()[0]).toStdString()),
              testing::HasSubstr("Unsaved"));
}

TEST_F(RecoveryTest, ChangesThatKeepComingDoNotPutTheCopyOff) {
  Document document(bike());
  RecoveryCopy copy(document, folder_.path());
  for (int i = 0; i < 60 && copies().isEmpty(); ++i) {
    change(document, i % 2 ? "One" : "Two");
    QTest::qWait(40);
  }
  EXPECT_EQ(copies().size(), 1);
}

TEST_F(RecoveryTest, TheCopyGoesWhenTheWorkIsSavedUndoneOrClosed) {
  Document document(bike());
  {
    RecoveryCopy copy(document, folder_.path());
    change(document, "Unsaved");
    copy.writeNow();
    ASSERT_EQ(copies().size(), 1);
    ASSERT_EQ(document.save(folder_.filePath("saved.json")), std::nullopt);
    EXPECT_TRUE(copies().isEmpty()) << "saved";

    change(document, "Unsaved again");
    copy.writeNow();
    ASSERT_EQ(copies().size(), 1);
    document.undoStack().undo();
    EXPECT_TRUE(copies().isEmpty()) << "undone";

    change(document, "And again");
    copy.writeNow();
    ASSERT_EQ(copies().size(), 1);
  }
  EXPECT_EQ(everything(), QStringList{"saved.json"}) << "closed";
}

TEST_F(RecoveryTest, NothingIsCopiedWhileNothingIsUnsaved) {
  Document document(bike());
  RecoveryCopy copy(document, folder_.path());
  copy.writeNow();
  EXPECT_TRUE(everything().isEmpty());
}

TEST_F(RecoveryTest, WorkOfThisVeryProgramIsNotOfferedToIt) {
  Document document(bike());
  RecoveryCopy copy(document, folder_.path());
  change(document, "Unsaved");
  copy.writeNow();
  EXPECT_TRUE(recoverable(folder_.path()).empty());
}

TEST_F(RecoveryTest, WorkIsOfferedOfADeadProgramButNotOfALiveOne) {
  QProcess program;
  program.start(QCoreApplication::applicationFilePath(), {kCrashAfterInput, folder_.path()});
  ASSERT_TRUE(program.waitForReadyRead(20000));
  ASSERT_EQ(copies().size(), 1);
  EXPECT_TRUE(recoverable(folder_.path()).empty()) << "its program still runs";

  program.closeWriteChannel();
  ASSERT_TRUE(program.waitForFinished(20000));
  ASSERT_EQ(program.exitCode(), 3);
  {
    const auto work = recoverable(folder_.path());
    ASSERT_EQ(work.size(), 1u);
    EXPECT_EQ(work[0].profile.name, "Unsaved");
    EXPECT_EQ(work[0].originalFile, "");
    EXPECT_LT(std::abs(work[0].written.secsTo(QDateTime::currentDateTimeUtc())), 60);
    EXPECT_TRUE(recoverable(folder_.path()).empty()) << "one copy is offered to one start";
  }
  const auto work = recoverable(folder_.path());
  ASSERT_EQ(work.size(), 1u) << "asking does not take it away";
  ui::removeRecovery(work[0].copy);
  EXPECT_TRUE(everything().isEmpty());
}

TEST_F(RecoveryTest, ACopyThatCannotBeReadIsKeptAndNotOffered) {
  QFile broken(folder_.filePath("x.recovery.json"));
  ASSERT_TRUE(broken.open(QIODevice::WriteOnly));
  broken.write("{\"file\": \"\", \"profile\": \"{");
  broken.close();
  EXPECT_TRUE(recoverable(folder_.path()).empty());
  EXPECT_EQ(copies().size(), 1);
}

/// A copy without a program, as a crash leaves it; `lock` is what its lock says.
class RecoveryOfTheDead : public RecoveryTest {
 protected:
  void leaveCopy(const std::string& text) {
    std::ofstream(folder_.filePath("x.recovery.json").toStdString()) << text;
  }
  void leaveGoodCopy() {
    leaveCopy(Json{{"file", ""}, {"profile", writeProfile(bike({{"/name", "Left"}}))}}.dump());
  }
  void leaveLock(const std::string& text) {
    std::ofstream(folder_.filePath("x.recovery.json.lock").toStdString()) << text;
  }
};

TEST_F(RecoveryOfTheDead, IsOfferedWhateverItsLockSays) {
  leaveGoodCopy();
  EXPECT_EQ(recoverable(folder_.path()).size(), 1u) << "without a lock";
  for (const std::string& lock :
       {std::string(), std::to_string(::getpid()) + "\nui_tests\nsomewhere\n", std::string("1\ninit\n")}) {
    leaveLock(lock);
    const auto work = recoverable(folder_.path());
    ASSERT_EQ(work.size(), 1u) << lock;
    EXPECT_EQ(work[0].profile.name, "Left");
  }
}

TEST_F(RecoveryOfTheDead, IsOfferedWhereNoLockCanBeMade) {
  leaveGoodCopy();
  ASSERT_TRUE(QDir(folder_.path()).mkdir("x.recovery.json.lock"));  // opens for nobody to write
  EXPECT_EQ(recoverable(folder_.path()).size(), 1u);
}

TEST_F(RecoveryOfTheDead, ReadsNoMoreThanACopyCanBe) {
  leaveCopy(std::string(std::size_t{40} << 20, ' '));
  EXPECT_TRUE(recoverable(folder_.path()).empty());
  EXPECT_EQ(copies().size(), 1) << "and keeps it";
}

TEST_F(RecoveryTest, AFolderThatCannotBeWrittenIsSaidAtOnce) {
  std::ofstream(folder_.filePath("taken").toStdString()) << "a file";
  Document document(bike());
  const RecoveryCopy copy(document, folder_.filePath("taken/recovery"));
  EXPECT_FALSE(copy.trouble().isEmpty());
  const RecoveryCopy fine(document, folder_.filePath("new/recovery"));
  EXPECT_EQ(fine.trouble(), "");
}

TEST_F(RecoveryTest, AFullDiskLeavesTheCopyBeforeAndSaysSoOnce) {
  const SmallDisk disk;
  LAYSHAFT_NEEDS(disk);
  const QString folder = ui::nameOf(disk.folder());
  Document document(bike());
  RecoveryCopy copy(document, folder);
  QSignalSpy troubled(&copy, &RecoveryCopy::troubled);
  change(document, "First");
  EXPECT_TRUE(copy.writeNow());
  const QStringList made = QDir(folder).entryList({"*.recovery.json"}, QDir::Files);
  ASSERT_EQ(made.size(), 1);
  const std::string before = contentsOf(disk.file(made[0].toStdString()));
  disk.fillUpTo(0);
  for (const char* name : {"Second", "Third"}) {
    change(document, name);
    EXPECT_FALSE(copy.writeNow()) << "so that nothing older is given up for it";
    QCoreApplication::processEvents();
  }
  EXPECT_EQ(contentsOf(disk.file(made[0].toStdString())), before);
  EXPECT_EQ(troubled.count(), 1);
  EXPECT_FALSE(copy.trouble().isEmpty());
}

TEST_F(RecoveryTest, AWorkThatCannotBeSavedKeepsItsCopy) {
  const SmallDisk disk;
  LAYSHAFT_NEEDS(disk);
  Document document(bike());
  RecoveryCopy copy(document, folder_.path());
  change(document, "Unsaved");
  copy.writeNow();
  disk.fillUpTo(0);
  EXPECT_TRUE(document.save(ui::nameOf(disk.file("a.bike.json"))));
  EXPECT_EQ(copies().size(), 1);
}

TEST_F(RecoveryTest, ACopyKnowsItsFileAndHowItWas) {
  const OddFile file(folder_.path());
  const std::filesystem::path& odd = file.path;
  Document document(bike());
  ASSERT_EQ(document.save(ui::nameOf(odd)), std::nullopt);
  std::string text;
  {
    RecoveryCopy copy(document, folder_.path());
    change(document, "Unsaved");
    copy.writeNow();
    ASSERT_EQ(copies().size(), 1);
    text = contentsOf(folder_.filePath(copies()[0]).toStdString());
  }
  std::ofstream(folder_.filePath("x.recovery.json").toStdString()) << text;
  const auto work = recoverable(folder_.path());
  ASSERT_EQ(work.size(), 1u);
  EXPECT_EQ(ui::pathOf(work[0].originalFile), odd);
  EXPECT_EQ(work[0].mark, markOf(odd));
}

TEST_F(RecoveryTest, AFolderThatIsNotThereHoldsNothing) {
  EXPECT_TRUE(recoverable(folder_.filePath("not there")).empty());
}

TEST_F(RecoveryTest, AWindowKeepsACopyUntilItCloses) {
  const QDir own(ui::recoveryFolder());
  const auto ownCopies = [&] { return own.entryList({"*.recovery.json"}, QDir::Files).size(); };
  Window window(bike());
  change(window->document(), "Unsaved");
  EXPECT_TRUE(soon([&] { return ownCopies() == 1; }));
  DialogAnswer question(press(QMessageBox::Discard));
  EXPECT_TRUE(window->close());
  EXPECT_EQ(ownCopies(), 0);
}

/// The question at the next start.
class RecoveryOffer : public RecoveryTest {
 protected:
  void SetUp() override {
    QDir().mkpath(ui::recoveryFolder());
    QProcess program;
    program.start(QCoreApplication::applicationFilePath(), {kCrashAfterInput, ui::recoveryFolder()});
    ASSERT_TRUE(program.waitForReadyRead(20000));
    program.closeWriteChannel();
    ASSERT_TRUE(program.waitForFinished(20000));
    ASSERT_EQ(recoverable(ui::recoveryFolder()).size(), 1u);
  }
  static std::function<void(QDialog&)> pressText(const QString& text) {
    return [text](QDialog& dialog) {
      for (auto* button : dialog.findChildren<QPushButton*>())
        if (button->text() == text) return button->click();
      dialog.reject();
      ADD_FAILURE() << "no button " << text.toStdString();
    };
  }
  /// Answers the offer of the first window.
  void answer(const QString& button) {
    DialogAnswer question(pressText(button));
    first_->offerRecovery();
    EXPECT_TRUE(question.seen());
    EXPECT_TRUE(question.said().contains("“Unsaved”")) << question.said().toStdString();
  }
  /// The windows that show the work.
  std::vector<ui::MainWindow*> showingIt() const {
    std::vector<ui::MainWindow*> windows;
    for (QWidget* widget : QApplication::topLevelWidgets())
      if (auto* window = qobject_cast<ui::MainWindow*>(widget);
          window && window->document().profile().name == "Unsaved")
        windows.push_back(window);
    return windows;
  }

  struct Tidy {
    ~Tidy() { QDir(ui::recoveryFolder()).removeRecursively(); }
  } afterTheWindowsAreGone_;
  Window first_{bike()};
};

TEST_F(RecoveryOffer, NamesTheFileAndTellsThatItHasChangedSince) {
  const QString file = folder_.filePath("<b>shared.bike.json");
  Document other(bike({{"/name", "Older"}}));
  ASSERT_EQ(other.save(file), std::nullopt);
  const auto mark = markOf(ui::pathOf(file)).value();
  QDir(ui::recoveryFolder()).removeRecursively();
  QDir().mkpath(ui::recoveryFolder());
  std::ofstream(QDir(ui::recoveryFolder()).filePath("x.recovery.json").toStdString()) << Json{
      {"file", file.toStdString()},
      {"file_bytes", file.toStdString()},
      {"file_modified_ns", std::to_string(mark.modifiedNs - 1)},
      {"file_size", std::to_string(mark.size)},
      {"written", "2026-05-12T14:03:00.000Z"},
      {"profile", writeProfile(bike({{"/name", "Unsaved"}}))}}.dump();
  DialogAnswer question([&](QDialog& dialog) {
    EXPECT_EQ(dynamic_cast<QMessageBox&>(dialog).textFormat(), Qt::PlainText);
    pressText("Recover")(dialog);
  });
  first_->offerRecovery();
  EXPECT_TRUE(question.said().contains(file)) << question.said().toStdString();
  EXPECT_TRUE(question.said().contains("2026") || question.said().contains("/26"));
  EXPECT_TRUE(question.said().contains("has changed since")) << question.said().toStdString();

  ASSERT_EQ(showingIt().size(), 1u);
  DialogAnswer save(press(QMessageBox::Cancel));
  for (auto* action : showingIt()[0]->findChildren<QAction*>())
    if (action->text() == "&Save") action->trigger();
  EXPECT_TRUE(save.seen()) << "the newer file is not replaced unasked";
  EXPECT_EQ(loadProfile(ui::pathOf(file))->name, "Older");
  delete showingIt()[0];
}

TEST_F(RecoveryOffer, OpensTheWorkAsModifiedAndKeepsItSafe) {
  answer("Recover");
  ASSERT_EQ(showingIt().size(), 1u);
  EXPECT_TRUE(showingIt()[0]->isWindowModified());
  EXPECT_EQ(QDir(ui::recoveryFolder()).entryList({"*.recovery.json"}).size(), 1)
      << "a copy of its own, before the old one goes";
}

TEST_F(RecoveryOffer, DoesNotReplaceOtherUnsavedWork) {
  change(first_->document(), "Mine");
  answer("Recover");
  EXPECT_EQ(first_.profile().name, "Mine");
  ASSERT_EQ(showingIt().size(), 1u);
  EXPECT_TRUE(showingIt()[0]->isVisible());
  delete showingIt()[0];
}

TEST_F(RecoveryOffer, ThrowsItAway) {
  answer("Discard");
  EXPECT_TRUE(showingIt().empty());
  EXPECT_TRUE(recoverable(ui::recoveryFolder()).empty());
}

TEST_F(RecoveryOffer, AsksAgainLater) {
  answer("Ask Again Later");
  EXPECT_TRUE(showingIt().empty());
  EXPECT_EQ(recoverable(ui::recoveryFolder()).size(), 1u);
}

}  // namespace
}  // namespace layshaft::test
