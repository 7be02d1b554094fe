// SPDX-License-Identifier: GPL-3.0-or-later
#include <QAbstractItemView>
#include <QBuffer>
#include <QComboBox>
#include <QDir>
#include <QDockWidget>
#include <QFileDialog>
#include <QHeaderView>
#include <QMenuBar>
#include <QPlainTextEdit>
#include <QSvgGenerator>
#include <QTabWidget>
#include <QTextDocument>
#include <QTreeWidget>

#include "tests/ui/on_paper.h"
#include "tests/ui/pseudo_language.h"
#include "tests/ui/support.h"
#include "tests/ui/what_is_said.h"
#include "ui/document/preferences.h"
#include "ui/document/samples.h"
#include "ui/document/setup_edits.h"
#include "ui/editors/columns_table.h"
#include "ui/editors/copy_tracks_dialog.h"
#include "ui/editors/curve_editor.h"
#include "ui/editors/new_bike_dialog.h"
#include "ui/editors/recording_dialog.h"
#include "ui/pages/chain_page.h"
#include "ui/pages/ladder_page.h"
#include "ui/window/bikes_window.h"
#include "ui/window/counter_view.h"
#include "ui/window/messages.h"
#include "ui/window/tracks_window.h"
#include "ui/words/cautions.h"
#include "ui/words/problem_words.h"
#include "ui/words/text_report.h"
#include "ui/words/track_words.h"

namespace layshaft::test {
namespace {

/// The program in a language in which every word that it says is marked. Names in the bikes used here are
/// figures, so that every letter must be the program's.
class Translation : public testing::Test {
 protected:
  static void SetUpTestSuite() { language_ = new PseudoLanguage; }
  static void TearDownTestSuite() {
    delete language_;
    language_ = nullptr;
  }
  void SetUp() override { language_->install(); }
  void TearDown() override { language_->remove(); }

  /// A sample whose names are figures.
  static Profile nameless(const std::string& sample) {
    Profile profile = sampleBike(sample);
    profile.name = "№ 7";
    profile.notes.clear();
    int number = 0;
    for (Pin& pin : profile.pins) pin.name = "0" + std::to_string(++number);
    int trackNumber = 0;
    for (Track& track : profile.tracks) {
      track.name = "1" + std::to_string(++trackNumber);
      for (TrackSegment& segment : track.segments)
        if (!segment.name.empty()) segment.name = "2" + std::to_string(++trackNumber);
    }
    if (profile.ride) profile.ride->track.clear();
    if (profile.records) {
      for (std::size_t i = 0; i < profile.records->services.size(); ++i) {
        Service service = profile.records->services[i];
        service.parts = service.note = {};
        profile.records->services.put(i, service);
      }
      for (std::size_t i = 0; i < profile.records->trackNotes.size(); ++i) {
        TrackNote note = profile.records->trackNotes[i];
        note.place = note.weather = note.words = {};
        if (note.struck) note.struck->reason = {};
        profile.records->trackNotes.put(i, note);
      }
    }
    return profile;
  }

  void expectMarked(const QString& text, const std::string& where) {
    QString plain = text;
    if (Qt::mightBeRichText(text)) {
      QTextDocument document;
      document.setHtml(text);
      plain = document.toPlainText();
    }
    // What is the same in every language: sizes on tyres and chains, the program's name, endings of files.
    static const QRegularExpression universal(QStringLiteral(
        "\\b(Layshaft|\\d+(/\\d+)?-?(ZR|R|B|H|L)\\d*\\b|\\d+ ?M/C|\\d\\d[HLVWZ]|M/C|[A-Z]{2}\\d\\d"
        "[A-Z]\\d\\d|\\*?\\.(png|svg|pdf|csv|json|bike)|bike\\.json|G(PL)?-?3\\.0-or-later)"));
    plain.remove(universal);
    const QString bare = PseudoLanguage::unmarked(plain);
    if (bare.isEmpty() || !seen_.insert(bare).second) return;
    ADD_FAILURE() << where << " says unmarked: " << bare.toStdString();
  }

  Hear marked() {
    return [this](const QString& text, const std::string& where) { expectMarked(text, where); };
  }
  void expectMarked(const QWidget& widget, const std::string& where) { hear(widget, where, marked()); }

  void expectMarked(ui::Picture& picture, const std::string& where) {
    const QStringList texts = textsOf(picture);
    // Lines break inside marked words: the picture is taken as one text.
    expectMarked(texts.join(' '), where + ", picture");
    EXPECT_GT(texts.size(), 5) << where << ": a vector file has its texts as texts";
  }

  static PseudoLanguage* language_;
  std::set<QString> seen_;
};
PseudoLanguage* Translation::language_ = nullptr;

TEST_F(Translation, CollectingTheTextsWarnsOfNothing) {
  EXPECT_FALSE(language_->said().contains("warning", Qt::CaseInsensitive) ||
               language_->said().contains("lacks Q_OBJECT") || language_->said().contains("unknown"))
      << language_->said().toStdString();
}

TEST_F(Translation, TheCheckSeesWhatIsNotMarked) {
  EXPECT_EQ(PseudoLanguage::unmarked("⟦rear ⟦teeth⟧⟧ 43 → 45"), "");
  EXPECT_NE(PseudoLanguage::unmarked("⟦rear⟧ teeth"), "");
  EXPECT_EQ(PseudoLanguage::marked("%1 rpm"), "⟦%1 rpmrpm⟧");
}

class TranslationOf : public Translation, public testing::WithParamInterface<const char*> {};

TEST_P(TranslationOf, EveryPageMenuAndPicture) {
  Window window(nameless(GetParam()));
  auto* tabs = window->findChild<QTabWidget*>();
  for (int page = 0; page < tabs->count(); ++page) {
    tabs->setCurrentIndex(page);
    QTest::qWait(30);
    if (qobject_cast<ui::LadderPage*>(tabs->currentWidget())) {
      ASSERT_TRUE(soon([&] { return !window->session().ladder().running(); }));
    }
    const std::string where = std::string(GetParam()) + ", page " + std::to_string(page);
    expectMarked(*window, where);
    ui::Page* shown = window->currentPage();
    for (const QStringList& row : shown->numbers())
      for (const QString& cell : row) expectMarked(cell, where + ", numbers");
    if (ui::Picture* picture = shown->picture()) expectMarked(*picture, where);
  }
  hear(*window->menuBar(), marked());
  expectMarked(window->readout().text(), "readout");
}

TEST_P(TranslationOf, TheCounterView) {
  Window window(nameless(GetParam()));
  ui::CounterView::open(*window);
  auto* view = window->findChild<ui::CounterView*>();
  ASSERT_TRUE(view);
  auto* screens = view->findChild<QStackedWidget*>();
  for (int answer = 0; answer < 2; ++answer) {
    screens->currentWidget()->findChildren<QPushButton*>().at(answer)->click();
    expectMarked(*view, std::string(GetParam()) + ", counter");
    QTest::keyClick(view, Qt::Key_Escape);
  }
}

TEST_P(TranslationOf, Reports) {
  for (const auto system : {ui::UnitSystem::Metric, ui::UnitSystem::Imperial}) {
    const Plan planned = plan(nameless(GetParam()));
    for (const QString& line : ui::textReport(planned, ui::UnitsShown(system)).split('\n'))
      expectMarked(line, std::string(GetParam()) + ", text report");
  }
  QTemporaryDir folder;
  const QString file = folder.filePath("page.pdf");
  for (const ui::SheetKind kind : ui::kSheetKinds) {
    ASSERT_EQ(savePdf(ui::makeSheet(kind, sheetInputOf(nameless(GetParam()))), file), std::nullopt);
    // Lines break inside marked words: the page is taken as one text.
    expectMarked(readBy("pdftotext", {"-raw", file, "-"}).replace('\n', ' '),
                 std::string(GetParam()) + ", sheet " + std::to_string(static_cast<int>(kind)));
  }
}

INSTANTIATE_TEST_SUITE_P(Samples, TranslationOf,
                         testing::Values("club-600", "tourer-belt", "motocross-450", "roadster-classic"),
                         [](const auto& name) {
                           return QString(name.param).replace('-', '_').toStdString();
                         });

TEST_F(Translation, TheListOfBikes) {
  QTemporaryDir folder;
  QFile broken(folder.filePath("1.bike.json"));
  ASSERT_TRUE(broken.open(QIODevice::WriteOnly));
  broken.write("{}");
  broken.close();
  ui::preferences::setBikesFolder(folder.path());
  Window window(nameless("club-600"));
  ui::BikesWindow list(*window);
  QTest::qWait(50);
  hear(list, "bikes", [&](const QString& text, const std::string& where) {
    const bool date = QLocale().toDateTime(text, QLocale::ShortFormat).isValid();
    if (!date && !text.contains(QDir(folder.path()).dirName())) expectMarked(text, where);
  });
}

TEST_F(Translation, TracksAndWhatIsMadeOfThem) {
  Profile profile = nameless("club-600");
  profile.tracks.clear();
  profile.ride->track.clear();
  Track made;
  made.name = "1";
  made.closed = true;
  made.segments = {{.name = "2", .lengthM = 90.0},
                   {.radiusM = 30.0, .angleDeg = 170.0, .surface = Surface::Sand}};
  Track recorded;
  recorded.name = "3";
  recorded.path = SharedPath({.spacingM = 5.0, .curvaturePerKm = {1.0, -20.0, 30.0}, .source = "4"});
  profile.tracks = {made, recorded};
  Window window(profile);
  ui::TracksWindow::open(*window);
  auto* tracks = window->findChild<ui::TracksWindow*>();
  auto& list = control<QTreeWidget>(*tracks, language_->marked("Tracks"));
  for (int row = 0; row < 2; ++row) {
    list.setCurrentItem(list.topLevelItem(row));
    expectMarked(*tracks, "tracks");
  }
  list.setCurrentItem(list.topLevelItem(0));
  auto* table = tracks->findChild<ui::ColumnsTable*>();
  for (const char* bad :
       {"7\t8 9", "7\t8 k", "7\t99999", "7", "7\t8\t\t\t\t\t9", "9\t8\t7\t6\t5\t4\t\t\t3"}) {
    table->setCurrentCell(0, 0);
    table->pasteText(bad);
    hear(*tracks, "rows", [&](const QString& text, const std::string& where) {
      if (text != "8 k") expectMarked(QString(text).remove("8 k"), where);
    });
    expectMarked(window->document().undoStack().undoText(), "undo");
  }
  ui::RecordingDialog recording(window->session().lane(), "5.gpx", window->units());
  ASSERT_TRUE(soon([&] { return !recording.working(); }));
  hear(recording, "recording", [&](const QString& text, const std::string& where) {
    if (!text.contains("5.gpx")) expectMarked(text, where);
  });
  ui::CopyTracksDialog copying(profile.tracks, "6", window->units());
  expectMarked(copying, "copying");
  RecordedTrack all;
  all.closed = true;
  all.closingGapM = 3.0;
  all.smallestRadiusM = 20.0;
  all.leftOut = {1, 2, 3, 4, 5, 6};
  all.heightsLeftOut = 7;
  for (const QString& words : ui::recordedTrackWords(all, window->units()))
    expectMarked(words, "a recording");
  expectMarked(ui::lapOption({.lengthM = 1000.0, .closingGapM = 2.0, .timeS = 61.0}, 1, window->units()),
               "lap");
}

TEST_F(Translation, DialogsAndMessages) {
  Window window(nameless("club-600"));
  window->showDetails();
  auto* details = window->findChild<QDockWidget*>();
  ASSERT_TRUE(details);
  auto* tabs = details->findChild<QTabWidget*>();
  for (int tab = 0; tab < tabs->count(); ++tab) {
    tabs->setCurrentIndex(tab);
    expectMarked(*details, "details");
  }
  ui::NewBikeDialog fresh({});
  expectMarked(fresh, "new bike");
  for (const QString& caution : ui::allCautions()) expectMarked(caution, "cautions");
  for (QAction* action : window->findChildren<QAction*>()) {
    const QString text = action->text();
    if (!text.contains("Cautions") && !text.contains("Hints Again") && !text.contains("About")) continue;
    DialogAnswer answer([&](QDialog& dialog) {
      expectMarked(dialog, text.toStdString());
      dialog.reject();
    });
    action->trigger();
    EXPECT_TRUE(answer.seen()) << text.toStdString();
  }
  ASSERT_EQ(ui::SetupEdits(window->document(), ui::Side::Proposed).setRearTeeth(49), std::nullopt);
  expectMarked(window->document().undoStack().undoText(), "undo");
  DialogAnswer answer([&](QDialog& dialog) {
    expectMarked(dialog, "closing");
    press(QMessageBox::Discard)(dialog);
  });
  EXPECT_TRUE(window->close());
  EXPECT_TRUE(answer.seen());
}

TEST_F(Translation, PagesThatLackData) {
  Profile profile = bike();
  profile.name = "7";
  Window window(profile);
  auto* tabs = window->findChild<QTabWidget*>();
  for (int page = 0; page < tabs->count(); ++page) {
    tabs->setCurrentIndex(page);
    QTest::qWait(30);
    expectMarked(*window, "bare bike, page " + std::to_string(page));
  }
}

TEST_F(Translation, RefusalsOfEveryKind) {
  using Kind = Problem::Kind;
  const auto say = [this](Problem problem) {
    problem.given = problem.given.empty() ? "7" : problem.given;
    expectMarked(ui::spokenSentence(problem), "problem " + std::to_string(static_cast<int>(problem.kind)));
  };
  for (int kind = 0; kind <= static_cast<int>(Kind::WrongFormat); ++kind)
    say({.kind = static_cast<Kind>(kind), .low = 1, .high = 2});
  say({.kind = Kind::NotJson, .given = "line 3, column 4"});
  say({.kind = Kind::NotFinite, .given = "a number too large to hold"});
  for (const char* word : {"text", "number", "whole number", "list", "object", "true or false"})
    say({.kind = Kind::WrongType, .given = "a list", .allowed = {word}});
  for (const char* part : {"width", "aspect", "rim"})
    say({.kind = Kind::ImpossibleTyre, .low = 1, .high = 2, .unit = "mm", .part = part});
  for (const char* unit : {"mm", "rpm", "kg", "km/h", "characters", "in", "%", "°", "kN", "bar", "N·m"})
    say({.kind = Kind::OutOfRange,
         .path = "stock.links",
         .low = 1,
         .high = 2,
         .unit = unit,
         .below = "bike.engine.rev_limit_rpm"});
  say({.kind = Kind::NotOneOf, .path = "ride.surface", .allowed = {"wet_asphalt", "loam"}});
}

}  // namespace
}  // namespace layshaft::test
