// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/document.h"

#include <QFile>
#include <QFileInfo>
#include <QSignalSpy>
#include <QTemporaryDir>

#include "tests/ui/support.h"
#include "ui/setup_edits.h"

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
  EXPECT_FALSE(why->isEmpty());
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
  document_.recover(bike({{"/name", "Rescued"}}), fileIn("rescued.bike.json"));
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
