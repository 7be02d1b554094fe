// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/segments_editor.h"

#include "core/track/track_csv.h"
#include "core/track/track_line.h"
#include "core/units.h"
#include "tests/ui/support.h"
#include "ui/document/track_list_edits.h"

namespace layshaft::test {
namespace {

class SegmentsEditorTest : public testing::Test {
 protected:
  SegmentsEditorTest() {
    for (const char* name : {"Ring", "Hill"}) {
      Track track;
      track.name = name;
      track.closed = true;
      edits_.add(track);
    }
    QObject::connect(&editor_, &ui::SegmentsEditor::said, &editor_,
                     [this](const QString& why) { said_ = why; });
    QObject::connect(&document_, &ui::Document::changed, &editor_, [this] { editor_.refresh(units_); });
    look(0);
    showActive(editor_);
  }
  void look(std::size_t track) {
    editor_.edit(track);
    editor_.refresh(units_);
  }
  void use(ui::UnitSystem system) {
    units_ = ui::UnitsShown(system);
    editor_.refresh(units_);
  }
  void paste(const QString& text, int row = 0, int column = 0) {
    table().setCurrentCell(row, column);
    table().pasteText(text);
  }
  /// Types into a cell as a user does: keys, then Enter.
  void type(int row, int column, const QString& text) {
    table().setCurrentCell(row, column);
    table().setFocus();
    for (const QChar c : text) QTest::keyClick(QApplication::focusWidget(), c.toLatin1());
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
  }
  QString cell(int row, int column) {
    const auto* item = table().item(row, column);
    return item ? item->text() : QString();
  }
  ui::ColumnsTable& table() { return editor_.table(); }
  const std::vector<TrackSegment>& segments(std::size_t track = 0) const {
    return document_.profile().tracks[track].segments;
  }

  ui::Document document_{bike()};
  ui::TrackListEdits edits_{document_};
  ui::UnitsShown units_;
  ui::SegmentsEditor editor_{document_};
  QString said_;
};

enum Column { Name, Length, Radius, Angle, Speed, Slope, SurfaceOf, TurnOf };

TEST_F(SegmentsEditorTest, RowsAreTypedOneAfterAnother) {
  type(0, Name, "Start");
  EXPECT_TRUE(segments().empty());
  EXPECT_TRUE(said_.startsWith("Row 1: ")) << said_.toStdString();
  EXPECT_TRUE(said_.endsWith("left out until corrected.")) << said_.toStdString();
  type(0, Length, "420");
  ASSERT_EQ(segments().size(), 1u);
  EXPECT_EQ(segments()[0], (TrackSegment{.name = "Start", .lengthM = 420.0}));
  EXPECT_EQ(said_, "");
  type(1, Radius, "30");
  type(1, Angle, "90");
  type(1, TurnOf, "right");
  ASSERT_EQ(segments().size(), 2u);
  EXPECT_EQ(segments()[1], (TrackSegment{.radiusM = 30.0, .angleDeg = 90.0, .turn = Turn::Right}));
  document_.undoStack().undo();
  EXPECT_EQ(segments()[1].turn, std::nullopt) << "each cell is a step of its own";
  EXPECT_EQ(cell(1, TurnOf), "");
  document_.undoStack().undo();
  EXPECT_EQ(segments().size(), 1u);
}

TEST_F(SegmentsEditorTest, APastedTableIsReadByItsTitlesAndUnits) {
  paste(
      "Turn\tCorner\tLength (ft)\tRadius\tAngle\tSpeed [mph]\tLap record\n"
      "\t\t\tft\tdeg\t\t\n"
      "\tStart\t1,200\t\t\t\tno\n"
      "R\tOld Mill\t\t98.4252\t90\t\t\n"
      "l\tChicane\t200\t\t\t45\t\n");
  ASSERT_EQ(segments().size(), 3u) << said_.toStdString();
  // 1 ft = 0.3048 m and 1 mile = 1.609344 km (international yard of 1959).
  EXPECT_EQ(segments()[0].name, "Start");
  EXPECT_NEAR(*segments()[0].lengthM, 1200 * 0.3048, 1e-9);
  EXPECT_NEAR(*segments()[1].radiusM, 30.0, 1e-5);
  EXPECT_EQ(segments()[1].angleDeg, 90.0);
  EXPECT_EQ(segments()[1].turn, Turn::Right);
  EXPECT_EQ(segments()[2].turn, Turn::Left);
  EXPECT_NEAR(*segments()[2].cornerSpeedKmh, 45 * 1.609344, 1e-9);
  EXPECT_NEAR(*segments()[2].lengthM, 60.96, 1e-9);
  EXPECT_TRUE(said_.contains("Lap record")) << "what is passed over is told: " << said_.toStdString();
  EXPECT_FALSE(said_.contains("Row"));
}

TEST_F(SegmentsEditorTest, ATableWithoutTitlesIsInTheColumnsOrder) {
  paste("Start;300;;;;2,5;sand;\nBend;;25;180;;-2,5;;right\n");
  ASSERT_EQ(segments().size(), 2u) << said_.toStdString();
  EXPECT_EQ(segments()[0].slopePercent, 2.5);
  EXPECT_EQ(segments()[0].surface, Surface::Sand);
  EXPECT_EQ(segments()[1].slopePercent, -2.5);
  paste("310\n320\n", 0, Length);
  EXPECT_EQ(segments()[0].lengthM, 310.0) << "a column alone goes where the cursor is";
}

TEST_F(SegmentsEditorTest, WhatThisProgramExportsIsPastedBack) {
  const std::vector<TrackSegment> all{
      {.name = "One, \"the\" first", .lengthM = 123.4, .slopePercent = -3.5, .surface = Surface::WetAsphalt},
      {.radiusM = 12.5, .angleDeg = 45.0, .turn = Turn::Left},
      {.name = "By speed", .lengthM = 80.0, .cornerSpeedKmh = 77.7}};
  paste(QString::fromStdString(segmentsCsv(all)));
  EXPECT_EQ(segments(), all) << said_.toStdString();
}

TEST_F(SegmentsEditorTest, EveryRowThatIsNotReadIsNamedAndStays) {
  paste(
      "Start\t300\t\t\t\t\t\t\nBad\tmany\t\t\t\t\t\t\nTight\t\t0.2\t90\t\t\t\t\nGood\t\t20\t90\t\t\t\t\n"
      "Ice\t100\t\t\t\t\tice\t\n");
  ASSERT_EQ(segments().size(), 2u) << "the others are taken";
  EXPECT_EQ(segments()[1].name, "Good");
  const QStringList lines = said_.split('\n');
  ASSERT_EQ(lines.size(), 3) << said_.toStdString();
  EXPECT_EQ(lines[0],
            "Row 2, Length: “many” is not understood; a number is expected; left out until corrected.");
  EXPECT_EQ(lines[1], "Row 3, Radius: “0.2” is out of range (1 to 20,000 m); left out until corrected.");
  EXPECT_TRUE(lines[2].startsWith("Row 5, Surface: “ice” is not understood;")) << lines[2].toStdString();
  EXPECT_TRUE(lines[2].contains("wet asphalt"));
  EXPECT_EQ(cell(1, Length), "many") << "nothing is lost";
  type(1, Length, "55");
  type(2, Radius, "12");
  type(4, SurfaceOf, "sand");
  ASSERT_EQ(segments().size(), 5u);
  EXPECT_EQ(segments()[1].lengthM, 55.0);
  EXPECT_EQ(said_, "");
}

TEST_F(SegmentsEditorTest, ASegmentStaysWhileItsRowIsBeingMended) {
  paste("Start\t300\nBend\t\t20\t90\n");
  type(1, Radius, "round");
  ASSERT_EQ(segments().size(), 2u);
  EXPECT_EQ(segments()[1].radiusM, 20.0);
  EXPECT_TRUE(said_.endsWith("the track keeps what was there until corrected.")) << said_.toStdString();
  type(0, Length, "310");
  EXPECT_EQ(segments()[0].lengthM, 310.0);
  EXPECT_EQ(cell(1, Radius), "round");
  document_.undoStack().undo();
  EXPECT_EQ(cell(1, Radius), "20") << "undone, the table shows the track";
  EXPECT_EQ(said_, "");
}

TEST_F(SegmentsEditorTest, WhatIsToBeMendedWaitsWhileAnotherTrackIsLookedAt) {
  paste("Start\t300\nBend\tlong\n");
  look(1);
  EXPECT_EQ(table().rows().size(), 0u);
  EXPECT_EQ(said_, "");
  paste("Hill\t800\n");
  EXPECT_EQ(segments(1).size(), 1u);
  look(0);
  EXPECT_EQ(cell(1, Length), "long");
  EXPECT_TRUE(said_.startsWith("Row 2, Length")) << said_.toStdString();
  EXPECT_EQ(segments(0).size(), 1u);
  edits_.rename(0, "Other");
  look(0);
  EXPECT_EQ(cell(1, Length), "long") << "another name is no other track";
}

TEST_F(SegmentsEditorTest, ImperialIsTypedInFeetAndMiles) {
  use(ui::UnitSystem::Imperial);
  EXPECT_EQ(table().horizontalHeaderItem(Length)->text(), "Length, ft");
  EXPECT_EQ(table().horizontalHeaderItem(Speed)->text(), "Speed, mph");
  paste("Start\t1000\nBend\t300\t\t\t60\n");
  ASSERT_EQ(segments().size(), 2u) << said_.toStdString();
  EXPECT_NEAR(*segments()[0].lengthM, 304.8, 1e-9);
  EXPECT_NEAR(*segments()[1].cornerSpeedKmh, 96.56064, 1e-9);
  type(0, Length, "400 m");
  EXPECT_NEAR(*segments()[0].lengthM, 400.0, 1e-9) << "a unit may be typed";
  type(0, Length, "0.1");
  EXPECT_EQ(said_.section(';', 0, 0), "Row 1, Length: “0.1” is out of range (0.3281 to 65,617 ft)");
}

TEST_F(SegmentsEditorTest, TheUnitShownChangesNoDigit) {
  paste("A\t123.456789\t\t\t\t1.25\nB\t\t33.3333333\t77.7\nC\t100\t\t\t88.8888\n");
  const Profile before = document_.profile();
  for (const auto system : {ui::UnitSystem::Imperial, ui::UnitSystem::Mixed, ui::UnitSystem::Metric}) {
    use(system);
    emit table().edited();
    EXPECT_TRUE(same(document_.profile(), before));
  }
}

TEST_F(SegmentsEditorTest, DigitsThatAreNotShownAreTheirSegmentsOwn) {
  edits_.setSegments(0, {{.name = "A", .lengthM = 123.456789}, {.name = "B", .lengthM = 50.0}}, 1);
  look(0);
  EXPECT_EQ(cell(0, Length), "123");
  type(1, Length, "123");
  EXPECT_EQ(segments()[1].lengthM, 123.0) << "typed is typed";
  type(0, Name, "C");
  EXPECT_EQ(segments()[0].lengthM, 123.456789) << "what nobody touched keeps its digits";
  table().selectRow(0);
  paste("50\n", 1, Length);
  EXPECT_EQ(segments()[0].lengthM, 123.456789);
}

TEST_F(SegmentsEditorTest, CellsUnderNoColumnAreToldOf) {
  paste("Name\tLength\t\nA\t100\tx\nB\t200\ty\n");
  EXPECT_EQ(segments().size(), 2u);
  EXPECT_EQ(said_, "2 cells that stand under no column were passed over.");
}

TEST_F(SegmentsEditorTest, KeysOfLaterVersionsStayWithTheirSegment) {
  std::vector<TrackSegment> kept{{.name = "A", .lengthM = 100.0, .extras = {{"kerb", "3"}}}};
  edits_.setSegments(0, kept, 1);
  look(0);
  type(0, Length, "110");
  EXPECT_EQ(segments()[0].lengthM, 110.0);
  EXPECT_EQ(segments()[0].extras, kept[0].extras);
}

TEST_F(SegmentsEditorTest, TooManyRowsAreRefusedWhole) {
  paste("Start\t300\n");
  QString many;
  for (int i = 0; i < 501; ++i) many += "x\t10\n";
  paste(many);
  EXPECT_EQ(segments().size(), 1u);
  EXPECT_TRUE(said_.contains("500")) << said_.toStdString();
}

}  // namespace
}  // namespace layshaft::test
