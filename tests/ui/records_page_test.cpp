// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/records_page.h"

#include <QCheckBox>
#include <QComboBox>
#include <QDialogButtonBox>
#include <QSignalSpy>
#include <QTabWidget>
#include <QTemporaryDir>
#include <fstream>

#include "core/records_csv.h"
#include "tests/ui/support.h"
#include "ui/document/record_edits.h"
#include "ui/editors/record_dialogs.h"
#include "ui/words/dates.h"
#include "ui/words/record_words.h"

namespace layshaft::test {
namespace {

Date onDay(const char* text) {
  return Date::parse(text).value();
}

TrackNote noteOf(const char* date, int frontTeeth, int rearTeeth, double lapTimeS, const char* place) {
  TrackNote note;
  note.date = onDay(date);
  note.place = place;
  note.setup = SetupChange{.frontTeeth = front(frontTeeth), .rearTeeth = rear(rearTeeth)};
  note.lapTimeS = lapTimeS;
  note.rating = 7;
  return note;
}

Profile bikeWithRecords() {
  Profile profile = bike();
  profile.records.emplace();
  Service service;
  service.date = onDay("2026-04-01");
  service.at = 12.5;
  service.parts = "520 chain of 114 links";
  service.newChain = true;
  profile.records->services.add(service);
  profile.records->trackNotes.add(noteOf("2026-05-12", 15, 45, 92.41, "Gravel Hill"));
  profile.records->trackNotes.add(noteOf("2026-03-12", 16, 45, 93.2, "Short course"));
  TrackNote struck = noteOf("2026-05-20", 15, 47, 71.0, "Gravel Hill");
  struck.struck = Struck{.date = onDay("2026-05-21"), .reason = "other bike", .extras = {}};
  profile.records->trackNotes.add(struck);
  profile.wear.emplace();
  WearMeasurement measurement;
  measurement.date = onDay("2026-04-20");
  measurement.at = 14.0;
  measurement.lengthsMm = {318.2};
  profile.wear->measurements.add(measurement);
  return profile;
}

class RecordsPageTest : public testing::Test, FreshSettings {
 protected:
  RecordsPageTest() {
    auto* tabs = window_->findChild<QTabWidget*>();
    for (int i = 0; i < tabs->count(); ++i)
      if (tabs->tabText(i) == "Records") tabs->setCurrentIndex(i);
  }
  ui::RecordsPage& page() { return *window_->findChild<ui::RecordsPage*>(); }
  QTableView& table() { return control<QTableView>(page(), "Records"); }
  QString cell(int row, int column) { return table().model()->index(row, column).data().toString(); }
  QStringList column(int which) {
    QStringList cells;
    for (int r = 0; r < table().model()->rowCount(); ++r) cells << cell(r, which);
    return cells;
  }
  QPushButton& button(const QString& text) {
    for (auto* candidate : page().findChildren<QPushButton*>())
      if (candidate->text() == text) return *candidate;
    throw std::runtime_error("no button " + text.toStdString());
  }
  /// Waits for what follows the document a frame later.
  void settle() { QTest::qWait(40); }

  Window window_{bikeWithRecords()};
};

using Column = ui::RecordsModel::Column;

TEST_F(RecordsPageTest, TheNewestIsFirstAndAnyColumnSorts) {
  EXPECT_EQ(column(Column::Day),
            (QStringList{ui::shownDate(onDay("2026-05-20")), ui::shownDate(onDay("2026-05-12")),
                         ui::shownDate(onDay("2026-04-20")), ui::shownDate(onDay("2026-04-01")),
                         ui::shownDate(onDay("2026-03-12"))}));
  table().sortByColumn(Column::LapTime, Qt::AscendingOrder);
  EXPECT_EQ(column(Column::LapTime), (QStringList{"1:11.00", "1:32.41", "1:33.20", "", ""}));
  table().sortByColumn(Column::LapTime, Qt::DescendingOrder);
  EXPECT_EQ(column(Column::LapTime), (QStringList{"1:33.20", "1:32.41", "1:11.00", "", ""}));
  table().sortByColumn(Column::Pair, Qt::AscendingOrder);  // by the final ratio
  EXPECT_EQ(column(Column::Pair), (QStringList{"16/45", "15/45", "15/47", "", ""}));
}

TEST_F(RecordsPageTest, SearchAndKindNarrowTheListAndSayWhyItIsEmpty) {
  control<QComboBox>(page(), "Kind of entries").setCurrentIndex(2);
  EXPECT_EQ(column(Column::Kind), (QStringList{"Track note", "Track note", "Track note"}));
  auto& search = control<QLineEdit>(page(), "Search the records");
  search.setText("hill 15/45");
  EXPECT_EQ(column(Column::Pair), QStringList{"15/45"});
  search.setText("nowhere");
  EXPECT_EQ(table().model()->rowCount(), 0);
  EXPECT_TRUE(control<QLabel>(page(), "Why nothing is listed").isVisible());
}

TEST_F(RecordsPageTest, WhatIsStruckThroughStaysAndSaysWhy) {
  const QModelIndex struck = table().model()->index(0, Column::Day);
  EXPECT_TRUE(struck.data(Qt::FontRole).value<QFont>().strikeOut());
  EXPECT_TRUE(struck.data(Qt::ToolTipRole).toString().contains("other bike"));
  EXPECT_TRUE(struck.data(Qt::AccessibleTextRole).toString().contains("other bike"));
  table().setCurrentIndex(struck);
  EXPECT_FALSE(button("Strike Through…").isEnabled());
  table().setCurrentIndex(table().model()->index(1, Column::Day));
  EXPECT_TRUE(button("Strike Through…").isEnabled());
}

TEST_F(RecordsPageTest, StrikingNeedsAReasonAndIsAStep) {
  table().setCurrentIndex(table().model()->index(1, Column::Day));
  bool mayWithoutReason = true;
  DialogAnswer answer([&](QDialog& dialog) {
    auto* ok = dialog.findChild<QDialogButtonBox*>()->button(QDialogButtonBox::Ok);
    mayWithoutReason = ok->isEnabled();
    control<QLineEdit>(dialog, "Reason").setText("wrong day");
    ok->click();
  });
  button("Strike Through…").click();
  EXPECT_FALSE(mayWithoutReason);
  settle();
  ASSERT_TRUE(window_.profile().records->trackNotes[0].struck);
  EXPECT_EQ(window_.profile().records->trackNotes[0].struck->reason, "wrong day");
  EXPECT_EQ(table().model()->rowCount(), 5);
  window_->document().undoStack().undo();
  EXPECT_FALSE(window_.profile().records->trackNotes[0].struck);
}

TEST_F(RecordsPageTest, ANoteBeginsWithTodayTheLastPlaceAndTheWholeProposal) {
  window_->document().edit({.field = "t", .title = "t", .shown = {}}, [](Profile& profile) {
    profile.proposed.rearTeeth = rear(47);
    profile.ride.emplace();
    profile.ride->airTemperatureC = 21.0;
    profile.ride->surface = Surface::WetAsphalt;
  });
  QString place, weather;
  DialogAnswer answer([&](QDialog& dialog) {
    place = control<QLineEdit>(dialog, "Place").text();
    weather = control<QLineEdit>(dialog, "Weather").text();
    control<QLineEdit>(dialog, "Lap time").setText("1:31.5");
    dialog.findChild<QDialogButtonBox*>()->button(QDialogButtonBox::Ok)->click();
  });
  button("New Track Note…").click();
  EXPECT_EQ(place, "Gravel Hill");
  EXPECT_EQ(weather, "21 °C");
  const auto& notes = window_.profile().records->trackNotes;
  ASSERT_EQ(notes.size(), 4U);
  EXPECT_EQ(notes[3].date, ui::coreDate(QDate::currentDate()));
  EXPECT_EQ(notes[3].lapTimeS, 91.5);
  EXPECT_EQ(notes[3].surface, Surface::WetAsphalt);
  const SetupChange& setup = notes[3].setup.value();
  EXPECT_EQ(setup.frontTeeth, window_.profile().stock.frontTeeth);
  EXPECT_EQ(setup.rearTeeth, rear(47));
  EXPECT_EQ(setup.gearRatios, window_.profile().stock.gearRatios);
  EXPECT_EQ(setup.rearTyre->text(), window_.profile().stock.rearTyre.text());
}

TEST_F(RecordsPageTest, WritingDownCostsNoStudy) {
  QSignalSpy planned(&window_->planner(), &ui::Planner::planned);
  const PlanInput before = planInput(window_.profile());
  ui::RecordEdits(window_->document()).addTrackNote(noteOf("2026-06-01", 14, 45, 90.0, "Short course"));
  Service service;
  service.date = onDay("2026-06-02");
  service.note = "oil";
  ui::RecordEdits(window_->document()).addService(service);
  settle();
  EXPECT_EQ(planned.count(), 0);
  EXPECT_TRUE(planInput(window_.profile()) == before);
  EXPECT_EQ(table().model()->rowCount(), 7);
}

TEST_F(RecordsPageTest, ANotesSetupBecomesTheProposal) {
  table().setCurrentIndex(table().model()->index(1, Column::Day));
  button("Propose This Setup").click();
  EXPECT_EQ(proposedSetup(window_->document()).frontTeeth, front(15));
  EXPECT_EQ(proposedSetup(window_->document()).rearTeeth, rear(45));
  table().setCurrentIndex(table().model()->index(2, Column::Day));  // a measurement
  EXPECT_FALSE(button("Propose This Setup").isEnabled());
}

TEST_F(RecordsPageTest, TheChartShowsWhatCameOfEachRatioAndSaysWhichNote) {
  auto& chart = *static_cast<ui::NoteChart*>(page().chart());
  const auto notes = ui::notePoints(window_.profile());
  ASSERT_EQ(notes.size(), 2U);  // the one that is struck through does not count
  EXPECT_NEAR(notes[0].finalRatio, 3.0, 1e-12);
  chart.setCrosshair(3.01);
  EXPECT_TRUE(chart.crosshairWords().contains("15/45")) << chart.crosshairWords().toStdString();
  EXPECT_TRUE(chart.crosshairWords().contains("Gravel Hill"));
  EXPECT_TRUE(chart.crosshairWords().contains("1:32.41"));
  EXPECT_FALSE(chart.crosshairWords().contains("Short course"));
  for (auto* choice : page().findChildren<QRadioButton*>())
    if (choice->text() == "Rating") choice->click();
  EXPECT_EQ(chart.figure(), ui::NoteChart::Figure::Rating);
  EXPECT_TRUE(chart.accessibleDescription().contains("Best rating: 7"))
      << chart.accessibleDescription().toStdString();
}

TEST_F(RecordsPageTest, AdoptingTheProposalOffersToWriteDownTheWork) {
  window_->document().edit({.field = "t", .title = "t", .shown = {}},
                           [](Profile& profile) { profile.proposed.rearTeeth = rear(47); });
  QString parts;
  bool rearTicked = false, frontTicked = true;
  DialogAnswer answer([&](QDialog& dialog) {
    parts = control<QPlainTextEdit>(dialog, "Parts fitted").toPlainText();
    for (auto* box : dialog.findChildren<QCheckBox*>()) {
      if (box->text() == "New &rear sprocket") rearTicked = box->isChecked();
      if (box->text() == "New &front sprocket") frontTicked = box->isChecked();
    }
    dialog.findChild<QDialogButtonBox*>()->button(QDialogButtonBox::Ok)->click();
  });
  for (auto* action : window_->findChildren<QAction*>())
    if (action->text() == "&Make the Proposal Stock") action->trigger();
  EXPECT_TRUE(answer.seen());
  EXPECT_TRUE(parts.contains("47")) << parts.toStdString();
  EXPECT_TRUE(rearTicked);
  EXPECT_FALSE(frontTicked);
  EXPECT_EQ(window_.profile().stock.rearTeeth, rear(47));
  ASSERT_EQ(window_.profile().records->services.size(), 2U);
  EXPECT_TRUE(window_.profile().records->services[1].newRearSprocket.value_or(false));
}

TEST_F(RecordsPageTest, OpeningAFileSaysWhatWasDecidedLast) {
  EXPECT_EQ(ui::latestDecision(window_.profile()),
            ui::shownDate(onDay("2026-05-12")) + ": 15/45, Gravel Hill");
  Profile chained = bikeWithRecords();
  TrackNote note = noteOf("2026-06-12", 13, 50, 80.0, "Short course");
  note.setup->options.links = 116;
  note.words = "pulls out of the hairpin";
  chained.records->trackNotes.add(note);
  EXPECT_EQ(ui::latestDecision(chained), ui::shownDate(onDay("2026-06-12")) +
                                             ": 13/50 on the 116-link chain, Short course, pulls out of the "
                                             "hairpin");
  EXPECT_EQ(ui::latestDecision(bike()), QString());
}

TEST(RecordWords, LapTimesAreReadAsTheyAreWritten) {
  EXPECT_EQ(ui::lapTimeText(58.2), "58.20");
  EXPECT_EQ(ui::lapTimeText(92.41), "1:32.41");
  EXPECT_EQ(ui::lapTimeText(65.0), "1:05.00");
  EXPECT_EQ(ui::lapTimeText(119.999), "2:00.00");
  EXPECT_EQ(ui::typedLapTime("1:32.41"), 92.41);
  EXPECT_EQ(ui::typedLapTime(" 92,41 "), 92.41);
  for (const char* wrong : {"", "fast", "1:72", "1:2:3", "-1:20"})
    EXPECT_FALSE(ui::typedLapTime(wrong)) << wrong;
}

TEST(RecordWords, ARefusedTableIsToldInOneLineWithRowAndColumn) {
  const Profile profile = bike();
  const auto words = [&](const char* table) {
    return ui::refusalWords(std::get<CsvRefusal>(readRecordsCsv(table, profile)), profile);
  };
  EXPECT_EQ(
      words("kind,date\nservice,12.05.2026\n"),
      "Row 2, column “date”: 12.05.2026 is not a date; expected a day of the calendar as in 2026-05-12");
  EXPECT_EQ(words("kind,date\nservice,\n"),
            "Row 2, column “date”: a day is missing; expected one as in 2026-05-12");
  EXPECT_TRUE(words("kind,date,rating\ntrack_note,2026-05-12,12\n")
                  .startsWith("Row 2, column “rating”: 12 is out of range (1 to 10)"));
  EXPECT_TRUE(words("kind,date,at\nservice,2026-05-12,20\nservice,2026-05-13,10\n")
                  .startsWith("Row 3, column “at”: the use goes backwards"));
  EXPECT_TRUE(words("date\n2026-05-12\n").contains("“kind”"));
}

TEST(ServiceForm, MilesBecomeKilometresAndSomethingMustHaveBeenDone) {
  Service start;
  start.date = onDay("2026-05-12");
  ui::ServiceDialog dialog(start, UseUnit::Km, ui::UnitsShown(ui::UnitSystem::Imperial));
  auto* ok = dialog.findChild<QDialogButtonBox*>()->button(QDialogButtonBox::Ok);
  EXPECT_FALSE(ok->isEnabled());
  control<QPlainTextEdit>(dialog, "Note").setPlainText("chain adjusted");
  EXPECT_TRUE(ok->isEnabled());
  control<QLineEdit>(dialog, "Use, mi").setText("1,000");
  EXPECT_DOUBLE_EQ(dialog.entry().at.value(), 1609.344);
  control<QLineEdit>(dialog, "Use, mi").setText("many");
  EXPECT_FALSE(ok->isEnabled());
}

}  // namespace
}  // namespace layshaft::test
