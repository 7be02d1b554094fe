// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/tracks_window.h"

#include <QCheckBox>
#include <QDialogButtonBox>
#include <QFile>
#include <QFileDialog>
#include <QListWidget>
#include <QTemporaryDir>
#include <QTreeWidget>

#include "core/bike/track_rules.h"
#include "core/import/recording.h"
#include "core/track/segment_table.h"
#include "tests/ui/support.h"
#include "ui/charts/track_preview.h"
#include "ui/document/file_name.h"
#include "ui/document/track_edits.h"
#include "ui/document/track_list_edits.h"
#include "ui/editors/columns_table.h"
#include "ui/editors/recording_dialog.h"

namespace layshaft::test {
namespace {

class TracksWindowTest : public testing::Test, FreshSettings {
 protected:
  void SetUp() override {
    for (QAction* action : window_->findChildren<QAction*>())
      if (action->text().remove('&') == "Tracks…") action->trigger();
    tracks_ = window_->findChild<ui::TracksWindow*>();
    ASSERT_TRUE(tracks_ && QTest::qWaitForWindowActive(tracks_));
  }
  void press(const QString& text) {
    for (auto* button : tracks_->findChildren<QPushButton*>())
      if (button->text().remove('&') == text) {
        ASSERT_TRUE(button->isEnabled()) << text.toStdString();
        button->click();
        return;
      }
    FAIL() << "no button " << text.toStdString();
  }
  QTreeWidget& list() { return control<QTreeWidget>(*tracks_, "Tracks"); }
  QString listed(int row, int column) { return list().topLevelItem(row)->text(column); }
  ui::ColumnsTable& table() { return control<ui::ColumnsTable>(*tracks_, "Segments"); }
  QString message() { return control<QLabel>(*tracks_, "Message").text(); }
  QString shape() { return control<QLabel>(*tracks_, "Length and closing").text(); }
  const std::vector<Track>& all() const { return window_.profile().tracks; }
  void paste(const QString& text) {
    table().setCurrentCell(0, 0);
    table().pasteText(text);
  }

  QTemporaryDir folder_;
  Window window_{bike()};
  ui::TracksWindow* tracks_ = nullptr;
};

TEST_F(TracksWindowTest, ATrackIsMadeNamedAndDrawnAsItGrows) {
  EXPECT_EQ(list().topLevelItemCount(), 0);
  press("New");
  ASSERT_EQ(all().size(), 1u);
  auto& name = control<QLineEdit>(*tracks_, "Name of the track");
  EXPECT_EQ(name.text(), "Track");
  typeInto(name, "Stadium");
  QTest::keyClick(&name, Qt::Key_Return);
  EXPECT_EQ(all()[0].name, "Stadium");
  EXPECT_EQ(listed(0, 0), "Stadium");
  // Two straights and two half circles: 2·200 m + 2π·50 m, which closes.
  paste("A\t200\n\t\t50\t180\nB\t200\n");
  auto* map = tracks_->findChild<ui::TrackPreview*>();
  const std::size_t places = map->line().places.size();
  EXPECT_TRUE(shape().contains("557 m; ends 100 m from its start, turned 180° too little."))
      << shape().toStdString();
  paste("A\t200\n\t\t50\t180\nB\t200\n\t\t50\t180\n");
  EXPECT_GT(map->line().places.size(), places);
  EXPECT_EQ(shape(), "714 m; its end meets its start.");
  EXPECT_EQ(listed(0, 1), "714 m");
  EXPECT_EQ(listed(0, 2), "Segments, closed; ridden");
  EXPECT_EQ(map->accessibleDescription(), shape());
}

TEST_F(TracksWindowTest, VerbsOfTheListCanBeUndoneFromHere) {
  press("New");
  paste("A\t200\n");
  press("Duplicate");
  ASSERT_EQ(all().size(), 2u);
  EXPECT_EQ(message(), "Added the track “Track 2”.");
  EXPECT_EQ(list().indexOfTopLevelItem(list().currentItem()), 1) << "the new one is looked at";
  press("Ride This One");
  EXPECT_EQ(trackOfTheRide(window_.profile())->name, "Track 2");
  EXPECT_TRUE(listed(1, 2).endsWith("ridden"));
  EXPECT_FALSE(listed(0, 2).endsWith("ridden"));
  press("Remove");
  ASSERT_EQ(all().size(), 1u);
  table().setFocus();
  QTest::keyClick(&table(), Qt::Key_Z, Qt::ControlModifier);
  ASSERT_EQ(all().size(), 2u) << "Undo works where the focus is";
  EXPECT_EQ(trackOfTheRide(window_.profile())->name, "Track 2");
}

TEST_F(TracksWindowTest, AnOpenTrackHasAStartSpeed) {
  press("New");
  paste("A\t200\n");
  auto& start = control<QDoubleSpinBox>(*tracks_, "Start speed");
  EXPECT_FALSE(start.isEnabled());
  for (auto* box : tracks_->findChildren<QCheckBox*>())
    if (box->text().startsWith("C&losed")) box->click();
  EXPECT_EQ(all()[0].closed, false);
  ASSERT_TRUE(start.isEnabled());
  EXPECT_EQ(start.text(), "Standing start");
  typeInto(start, "80 km/h");
  QTest::keyClick(&start, Qt::Key_Return);
  EXPECT_NEAR(all()[0].startSpeedKmh.value_or(0.0), 80.0, 0.01);
  EXPECT_EQ(shape(), "200 m, open.");
  window_->document().undoStack().undo();
  EXPECT_EQ(start.text(), "Standing start");
}

TEST_F(TracksWindowTest, ANameThatIsTakenIsRefusedAndTheOldOneComesBack) {
  press("New");
  press("New");
  auto& name = control<QLineEdit>(*tracks_, "Name of the track");
  typeInto(name, "Track");
  QTest::keyClick(&name, Qt::Key_Return);
  EXPECT_EQ(all()[1].name, "Track 2");
  EXPECT_EQ(name.text(), "Track 2");
  EXPECT_TRUE(message().contains("another one is called")) << message().toStdString();
}

TEST_F(TracksWindowTest, AHalfTypedNameIsItsTracksOwn) {
  press("New");
  auto& name = control<QLineEdit>(*tracks_, "Name of the track");
  typeInto(name, "Short Course");
  press("Duplicate");  // as by its key, which leaves the focus where it is
  ASSERT_EQ(all().size(), 2u);
  EXPECT_EQ(all()[0].name, "Short Course");
  EXPECT_EQ(all()[1].name, "Short Course 2");
  EXPECT_EQ(name.text(), "Short Course 2");
}

TEST_F(TracksWindowTest, RowsToBeMendedOutliveTheWindow) {
  press("New");
  paste("A\t200\nB\tlong\n");
  tracks_->close();
  ui::TracksWindow::open(*window_);
  EXPECT_EQ(table().item(1, 1)->text(), "long");
  EXPECT_TRUE(control<QLabel>(*tracks_, "What is not understood").isVisibleTo(tracks_));
}

TEST_F(TracksWindowTest, TracksOfAnotherBikeAreCopied) {
  Profile other = bike();
  other.name = "Other";
  for (const char* name : {"Ring", "Hill", "Track"}) {
    Track track;
    track.name = name;
    track.segments = {{.lengthM = 500.0}};
    other.tracks.push_back(track);
  }
  const QString file = folder_.filePath("other.bike.json");
  ASSERT_EQ(saveFile(ui::pathOf(file), writeProfile(other)), std::nullopt);
  press("New");
  {
    DialogAnswer answer([](QDialog& dialog) {
      auto& list = control<QListWidget>(dialog, "Tracks to copy");
      EXPECT_EQ(list.count(), 3);
      list.item(1)->setCheckState(Qt::Unchecked);
      dialog.accept();
    });
    tracks_->copyFrom(file);
    EXPECT_TRUE(answer.seen());
  }
  ASSERT_EQ(all().size(), 3u);
  EXPECT_EQ(all()[1].name, "Ring");
  EXPECT_EQ(all()[2].name, "Track 2") << "this bike has a “Track” already";
  EXPECT_EQ(all()[2].segments, other.tracks[2].segments);
  EXPECT_EQ(message(), "Added 2 tracks.");
  window_->document().undoStack().undo();
  EXPECT_EQ(all().size(), 1u) << "one step";
  DialogAnswer answer;
  tracks_->copyFrom(folder_.filePath("missing.bike.json"));
  EXPECT_TRUE(answer.said().contains("cannot be read")) << answer.said().toStdString();
}

TEST_F(TracksWindowTest, ARecordedLapIsImportedAndShown) {
  std::string text = "x,y\n";
  for (int i = 0; i <= 130; ++i)
    text += std::to_string(80 * std::cos(M_PI * i / 60)) + "," +
            std::to_string(80 * std::sin(M_PI * i / 60)) + "\n";
  const QString file = folder_.filePath("test day.csv");
  ASSERT_EQ(saveFile(ui::pathOf(file), text), std::nullopt);
  DialogAnswer answer([](QDialog& dialog) {
    auto& importing = dynamic_cast<ui::RecordingDialog&>(dialog);
    EXPECT_TRUE(soon([&] { return !importing.working(); }));
    dialog.accept();
  });
  tracks_->importRecording(file);
  ASSERT_EQ(all().size(), 1u);
  EXPECT_EQ(all()[0].name, "test day");
  EXPECT_TRUE(all()[0].path);
  EXPECT_EQ(listed(0, 2), "Recording, closed; ridden");
  EXPECT_FALSE(table().isVisibleTo(tracks_)) << "a recorded line has no segments to type";
  EXPECT_EQ(window_->document().undoStack().undoText(), "new track test day");
}

TEST_F(TracksWindowTest, ATrackIsExportedAsATableAndForOtherPrograms) {
  press("New");
  paste("A\t200\nMill\t\t50\t180\t\t\t\tright\n");
  for (const char* name : {"track.csv", "track.gpx"}) {
    const QString file = folder_.filePath(name);
    DialogAnswer answer([&](QDialog& dialog) {
      typeFileName(dynamic_cast<QFileDialog&>(dialog), file);
      QMetaObject::invokeMethod(&dialog, "accept");
    });
    press("Export…");
    ASSERT_TRUE(answer.seen());
    ASSERT_TRUE(QFile::exists(file)) << name;
  }
  const auto csv = readSegments(contentsOf(folder_.filePath("track.csv").toStdString()));
  ASSERT_TRUE(std::holds_alternative<SegmentsRead>(csv));
  EXPECT_EQ(std::get<SegmentsRead>(csv).segments, all()[0].segments);
  const auto gpx = loadRecording(ui::pathOf(folder_.filePath("track.gpx")));
  ASSERT_TRUE(gpx);
  EXPECT_GT(gpx->fixes.size(), 10u);
}

}  // namespace
}  // namespace layshaft::test
