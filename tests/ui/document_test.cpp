// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/document/document.h"

#include <QFile>
#include <QFileInfo>
#include <QSignalSpy>
#include <QTemporaryDir>

#include "tests/small_disk.h"
#include "tests/ui/support.h"
#include "ui/document/file_name.h"
#include "ui/document/setup_edits.h"

namespace layshaft::test {
namespace {

using testing::Eq;
using ui::Document;
using ui::EditName;
using ui::SetupEdits;
using ui::Side;

class DocumentTest : public testing::Test {
 protected:
  void propose(int rearTeeth) {
    ASSERT_EQ(SetupEdits(document_, Side::Proposed).setRearTeeth(rearTeeth), std::nullopt);
  }
  QString fileIn(const char* name) const { return folder_.filePath(QString::fromUtf8(name)); }

  QTemporaryDir folder_;
  Document document_{bike()};
  QUndoStack& undo_ = document_.undoStack();
};

TEST_F(DocumentTest, NamesAnEditByFieldAndBothValues) {
  propose(45);
  EXPECT_EQ(undo_.undoText(), "proposed rear teeth 43 → 45");
  undo_.undo();
  EXPECT_EQ(undo_.redoText(), "proposed rear teeth 43 → 45");
  EXPECT_TRUE(same(document_.profile(), bike()));
}

TEST_F(DocumentTest, MergesARunOnOneFieldIntoOneStep) {
  for (const int teeth : {44, 45, 46, 47}) propose(teeth);
  EXPECT_EQ(undo_.count(), 1);
  EXPECT_EQ(undo_.undoText(), "proposed rear teeth 43 → 47");
  undo_.undo();
  EXPECT_TRUE(same(document_.profile(), bike()));
}

TEST_F(DocumentTest, KeepsRunsOnDifferentFieldsApart) {
  propose(44);
  ASSERT_EQ(SetupEdits(document_, Side::Stock).setRearTeeth(42), std::nullopt);
  propose(45);
  EXPECT_EQ(undo_.count(), 3);
  undo_.undo();
  EXPECT_EQ(proposedSetup(document_).rearTeeth.count(), 44);
  EXPECT_EQ(document_.profile().stock.rearTeeth.count(), 42);
}

TEST_F(DocumentTest, ARunThatReturnsToItsStartLeavesNoStep) {
  propose(44);
  propose(43);
  EXPECT_EQ(undo_.count(), 0);
  EXPECT_FALSE(document_.isModified());
}

TEST_F(DocumentTest, AnEditThatChangesNothingLeavesNoTrace) {
  const QSignalSpy changed(&document_, &Document::changed);
  const EditName name{.field = "x", .title = "nothing", .shown = {}};
  EXPECT_EQ(document_.edit(name, [](Profile&) {}), std::nullopt);
  EXPECT_EQ(undo_.count(), 0);
  EXPECT_EQ(changed.count(), 0);
}

TEST_F(DocumentTest, RefusesAConflictBetweenValuesAndStaysAsItIs) {
  const QSignalSpy changed(&document_, &Document::changed);
  const auto problem = document_.edit({.field = "shift", .title = "shift point", .shown = {}},
                                      [](Profile& p) { p.bike.engine.shiftRpm = 12000; });
  ASSERT_TRUE(problem);
  EXPECT_EQ(problem->path, "bike.engine.shift_rpm");
  EXPECT_EQ(problem->high, 10000);
  EXPECT_TRUE(same(document_.profile(), bike()));
  EXPECT_EQ(undo_.count(), 0);
  EXPECT_EQ(changed.count(), 0);
}

TEST_F(DocumentTest, ANewEditDropsWhatWasUndone) {
  propose(45);
  undo_.undo();
  propose(41);
  EXPECT_FALSE(undo_.canRedo());
  EXPECT_EQ(undo_.undoText(), "proposed rear teeth 43 → 41");
}

TEST_F(DocumentTest, SavesWhatReadsBackEqualAndIsCleanThen) {
  propose(45);
  ASSERT_EQ(document_.save(fileIn("a.bike.json")), std::nullopt);
  EXPECT_EQ(document_.file(), fileIn("a.bike.json"));
  EXPECT_FALSE(document_.isModified());
  const auto reloaded = loadProfile(fileIn("a.bike.json").toStdString());
  ASSERT_TRUE(reloaded);
  EXPECT_TRUE(same(*reloaded, document_.profile()));
}

TEST_F(DocumentTest, UndoPastTheSavedStateIsModifiedAndRedoBackIsClean) {
  propose(45);
  ASSERT_EQ(document_.save(fileIn("a.bike.json")), std::nullopt);
  undo_.undo();
  EXPECT_TRUE(document_.isModified());
  undo_.redo();
  EXPECT_FALSE(document_.isModified());
}

TEST_F(DocumentTest, AStepAfterSavingDoesNotMergeIntoWhatWasSaved) {
  propose(45);
  ASSERT_EQ(document_.save(fileIn("a.bike.json")), std::nullopt);
  propose(46);
  EXPECT_TRUE(document_.isModified());
  undo_.undo();
  EXPECT_EQ(proposedSetup(document_).rearTeeth.count(), 45);
  EXPECT_FALSE(document_.isModified());
}

TEST_F(DocumentTest, AFailedSaveKeepsTheOldFileAndTheModifiedMark) {
  const QString file = fileIn("a.bike.json");
  ASSERT_EQ(document_.save(file), std::nullopt);
  const std::string before = contentsOf(file.toStdString());
  propose(45);
  const auto why = document_.save(fileIn("no such folder/a.bike.json"));
  ASSERT_TRUE(why);
  EXPECT_EQ(why->kind, Problem::Kind::FileUnwritable);
  EXPECT_FALSE(why->given.empty());
  EXPECT_TRUE(document_.isModified());
  EXPECT_EQ(document_.file(), file);
  EXPECT_EQ(contentsOf(file.toStdString()), before);
}

TEST_F(DocumentTest, AFileThatCannotBeReplacedStaysWholeAndIsReported) {
  ASSERT_TRUE(QDir(folder_.path()).mkdir("taken"));
  propose(45);
  EXPECT_TRUE(document_.save(fileIn("taken")));
  EXPECT_TRUE(QFileInfo(fileIn("taken")).isDir());
  EXPECT_TRUE(document_.isModified());
}

TEST_F(DocumentTest, AFullDiskCostsNeitherTheFileNorTheModifiedMark) {
  const SmallDisk disk;
  LAYSHAFT_NEEDS(disk);
  const QString file = ui::nameOf(disk.file("a.bike.json"));
  ASSERT_EQ(document_.save(file), std::nullopt);
  const std::string before = contentsOf(disk.file("a.bike.json"));
  propose(45);
  disk.fillUpTo(0);
  const auto why = document_.save(file);
  ASSERT_TRUE(why);
  EXPECT_EQ(why->given, "No space left on device");
  EXPECT_EQ(contentsOf(disk.file("a.bike.json")), before);
  EXPECT_TRUE(document_.isModified());
}

TEST_F(DocumentTest, AFileWhoseNameIsNoTextIsSavedUnderThatName) {
  const OddFile file(folder_.path());
  const std::filesystem::path& odd = file.path;
  ASSERT_EQ(document_.save(ui::nameOf(odd)), std::nullopt);
  EXPECT_TRUE(loadProfile(odd));
  EXPECT_FALSE(document_.changedOutside());
  EXPECT_EQ(ui::pathOf(document_.file()), odd);
}

TEST(FileName, GoesToQtAndBackWhateverItsBytes) {
  for (const char* bytes : {"plain", "gr\xc3\xbc\xc3\x9f", "\xf0\x9f\x8f\x8d", "\xff", "a\xffz", "\xc3",
                            "\xe2\x82", "\xed\xa0\x80", "\xc0\xaf", "\xf0\x9f\x8f\x8d\xff\xc3\xbc"}) {
    EXPECT_EQ(ui::pathOf(ui::nameOf(bytes)).native(), bytes);
    const QString shown = ui::shownFile(ui::nameOf(bytes));
    EXPECT_EQ(shown, QString::fromUtf8(shown.toUtf8())) << "what is shown is well-formed";
  }
}

TEST_F(DocumentTest, UndoKeepsWhatAnEditChangesAndNoMore) {
  document_.load(bike({{"/notes", std::string(20000, 'n')}}), QString());
  for (int i = 0; i < 100; ++i)
    document_.edit({.field = QString::number(i), .title = "teeth", .shown = {}},
                   [i](Profile& p) { p.cruiseSpeedKmh = 100 + i; });
  ASSERT_EQ(undo_.count(), 100);
  EXPECT_LT(document_.historyBytes(), 100u * 8000u) << "no notes in it";
}

TEST_F(DocumentTest, HistoryIsBoundedInMemory) {
  constexpr int kEdits = 990, kSaved = kEdits - 5;
  const auto marked = [](int i) { return static_cast<char>('a' + i % 26); };
  for (int i = 0; i < kEdits; ++i) {
    const std::string notes(20000, marked(i));
    document_.edit({.field = QString::number(i), .title = QString::number(i), .shown = {}}, [&](Profile& p) {
      p.notes = notes;
      p.pins.assign(4, {.name = notes.substr(0, 200), .change = {}});
    });
    if (i == kSaved) {
      ASSERT_EQ(document_.save(fileIn("a.bike.json")), std::nullopt);
    }
  }
  EXPECT_LE(document_.historyBytes(), Document::kMostHistoryBytes);
  EXPECT_LT(undo_.count(), kEdits);
  EXPECT_GT(undo_.count(), 200);
  EXPECT_EQ(undo_.undoText(), QString::number(kEdits - 1));
  EXPECT_TRUE(document_.isModified());
  while (undo_.undoText() != QString::number(kSaved)) undo_.undo();
  EXPECT_FALSE(document_.isModified()) << "the saved state is still known";
  EXPECT_EQ(document_.profile().notes[0], marked(kSaved));
  while (undo_.canUndo()) undo_.undo();
  while (undo_.canRedo()) undo_.redo();
  EXPECT_EQ(document_.profile().notes[0], marked(kEdits - 1));
}

TEST_F(DocumentTest, BoundingTheHistoryNeverSaysThatAllIsSaved) {
  QStringList saidClean;
  QObject::connect(&document_, &Document::titleChanged, &document_, [&] {
    if (!document_.isModified()) saidClean << undo_.undoText();
  });
  for (int i = 0; i < 900; ++i) {
    const std::string notes(20000, static_cast<char>('a' + i % 26));
    document_.edit({.field = QString::number(i), .title = "notes", .shown = {}},
                   [&](Profile& p) { p.notes = notes; });
  }
  EXPECT_LT(undo_.count(), 900) << "it was bounded";
  EXPECT_TRUE(saidClean.isEmpty());
}

TEST_F(DocumentTest, RevertingRecoveredWorkIsClean) {
  document_.recover(bike({{"/name", "Rescued"}}), fileIn("a.bike.json"), std::nullopt);
  document_.load(bike(), fileIn("a.bike.json"));
  EXPECT_FALSE(document_.isModified());
}

TEST_F(DocumentTest, AFileChangedBetweenReadingAndShowingIsOneChangedOutside) {
  ASSERT_EQ(document_.save(fileIn("a.bike.json")), std::nullopt);
  FileMark before = *markOf(ui::pathOf(fileIn("a.bike.json")));
  --before.modifiedNs;
  document_.load(bike(), fileIn("a.bike.json"), before);
  EXPECT_TRUE(document_.changedOutside());
}

TEST(DocumentsEnd, NobodyIsToldOfIt) {
  int told = 0;
  QObject listener;
  {
    Document document(bike());
    document.edit({.field = "name", .title = "name", .shown = {}}, [](Profile& p) { p.name = "Changed"; });
    QObject::connect(&document, &Document::titleChanged, &listener, [&] { ++told; });
  }
  EXPECT_EQ(told, 0);
}

TEST_F(DocumentTest, HistoryIsBoundedInSteps) {
  for (int i = 0; i < Document::kMostSteps + 50; ++i)
    document_.edit({.field = QString::number(i), .title = "cruise", .shown = {}},
                   [i](Profile& p) { p.cruiseSpeedKmh = 50 + i % 100; });
  EXPECT_EQ(undo_.count(), Document::kMostSteps);
}

TEST_F(DocumentTest, SavingThroughALinkKeepsTheLink) {
  ASSERT_EQ(document_.save(fileIn("real.bike.json")), std::nullopt);
  ASSERT_TRUE(QFile::link("real.bike.json", fileIn("near.bike.json")));
  ASSERT_TRUE(QFile::link("near.bike.json", fileIn("far.bike.json")));
  propose(45);
  ASSERT_EQ(document_.save(fileIn("far.bike.json")), std::nullopt);
  EXPECT_TRUE(QFileInfo(fileIn("far.bike.json")).isSymLink());
  EXPECT_TRUE(QFileInfo(fileIn("near.bike.json")).isSymLink());
  EXPECT_TRUE(same(*loadProfile(fileIn("real.bike.json").toStdString()), document_.profile()));
}

TEST_F(DocumentTest, LoadingReplacesEverythingWithAnEmptyHistory) {
  propose(45);
  QSignalSpy changed(&document_, &Document::changed);
  document_.load(bike({{"/name", "Other"}}), fileIn("other.bike.json"));
  EXPECT_EQ(changed.count(), 1);
  EXPECT_EQ(document_.title(), "Other");
  EXPECT_FALSE(document_.isModified());
  EXPECT_FALSE(undo_.canUndo());
}

TEST_F(DocumentTest, RecoveredWorkIsModifiedUntilItIsSaved) {
  document_.recover(bike({{"/name", "Rescued"}}), fileIn("rescued.bike.json"), std::nullopt);
  EXPECT_TRUE(document_.isModified());
  EXPECT_EQ(document_.file(), fileIn("rescued.bike.json"));
  propose(45);
  undo_.undo();
  EXPECT_TRUE(document_.isModified()) << "the file on disk is still the old one";
  ASSERT_EQ(document_.save(document_.file()), std::nullopt);
  EXPECT_FALSE(document_.isModified());
}

TEST_F(DocumentTest, TellsWhenTitleOrModifiedMarkChange) {
  QSignalSpy title(&document_, &Document::titleChanged);
  propose(45);
  EXPECT_EQ(title.count(), 1) << "from clean to modified";
  propose(46);
  EXPECT_EQ(title.count(), 1);
  ASSERT_EQ(
      document_.edit({.field = "name", .title = "name", .shown = {}}, [](Profile& p) { p.name = "Renamed"; }),
      std::nullopt);
  EXPECT_EQ(title.count(), 2);
  EXPECT_EQ(document_.title(), "Renamed");
}

}  // namespace
}  // namespace layshaft::test
