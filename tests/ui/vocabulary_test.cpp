// SPDX-License-Identifier: GPL-3.0-or-later
//
// One thing has one name, everywhere: the window of every sample is read out, and the reports, and none of
// the words that were given up is heard.
#include <QDockWidget>

#include "tests/ui/what_is_said.h"
#include "ui/document/setup_edits.h"
#include "ui/editors/new_bike_dialog.h"
#include "ui/pages/ladder_page.h"
#include "ui/window/counter_view.h"
#include "ui/window/tracks_window.h"
#include "ui/words/cautions.h"
#include "ui/words/text_report.h"

namespace layshaft::test {
namespace {

const char* const kSamples[] = {"adventure-twin",   "club-600",    "enduro-250",     "motocross-450",
                                "roadster-classic", "tourer-belt", "two-stroke-125", "youth-85"};

/// Words that say less, or something else, than the ones that took their place.
const QRegularExpression& givenUp() {
  static const QRegularExpression words(QStringList{"\\blast gear\\b",
                                                    "^Run$",
                                                    "[Cc]hain run\\b",
                                                    "\\b[Tt]he drive\\b(?! (line|belt))",
                                                    "[Dd]rive of \\d",
                                                    "^drive\\b",
                                                    "\\b[Mm]eeting\\b",
                                                    "\\b[Cc]hordal\\b",
                                                    "\\bfront lift\\b",
                                                    "(?<!the )front lifts$",
                                                    "grip ends",
                                                    "\\b[Bb]ound\\b",
                                                    "\\b[Pp]lay\\b",
                                                    "pulls up to",
                                                    "[Gg]reatest (tension|push)",
                                                    "[Ss]afety factor",
                                                    "\\b[Tt]win of\\b",
                                                    "^[Tt]wins$",
                                                    "[Ff]orce to roll",
                                                    "[Aa]xle, back",
                                                    "axle from stock",
                                                    "\\bsooner\\b",
                                                    "% further",
                                                    "[Ff]ewer is shorter",
                                                    "[Mm]ore is shorter",
                                                    "every gear alike",
                                                    "Other parts",
                                                    "beyond its slot",
                                                    "by a hair",
                                                    "too large for its place",
                                                    "does not run on",
                                                    "\\(other ",
                                                    "the \\d+ of the spares box",
                                                    "As it turns",
                                                    "contradict each other",
                                                    "turns [\\d.,]+ % (less|more)",
                                                    "of this range",
                                                    "asked for already",
                                                    "engine speed at a speed",
                                                    "so taken",
                                                    "cannot be ridden",
                                                    "left to the limit",
                                                    "Work it out",
                                                    "rows in grey",
                                                    "at most so much",
                                                    "leaned \\d",
                                                    "≈ rear",
                                                    "change %",
                                                    "up to the sprockets",
                                                    "of which anything is said",
                                                    "the joining one",
                                                    "on sale",
                                                    "can be had in",
                                                    "\\bIts (grip|rolling)\\b",
                                                    "clutch slips when",
                                                    "spreadsheet are taken",
                                                    "\\bmended\\b",
                                                    "title that names a unit",
                                                    "torque, at most",
                                                    "Each gear is below",
                                                    "shows too much",
                                                    "is broken",
                                                    "counted on below",
                                                    "stands twice",
                                                    "curve never pulls",
                                                    "outside what is allowed",
                                                    "^Turn the wheel$",
                                                    "Hold the wheel",
                                                    "^M?&?otion$",
                                                    "As the &?Desktop",
                                                    "Usual Ones",
                                                    "Picture and Numbers",
                                                    "Numbers of the chart",
                                                    "ended last time",
                                                    "Throw It Away",
                                                    "is there already",
                                                    "since is lost",
                                                    "says more",
                                                    "does not reach round"}
                                            .join('|'));
  return words;
}

/// A belt's wheels are pulleys; where a text is for chains and belts alike, it says both.
bool namesSprocketsAlone(QString text) {
  text.remove(QRegularExpression(QStringLiteral("[Ss]prockets? or [Pp]ulleys?")));
  return text.contains("sprocket", Qt::CaseInsensitive);
}

class Vocabulary : public testing::TestWithParam<const char*> {
 protected:
  Vocabulary() : profile_(sampleBike(GetParam())) { profile_.notes.clear(); }

  bool belt() const { return profile_.stock.options.finalDrive == FinalDrive::Belt; }
  Hear taken() {
    return [this](const QString& text, const std::string& where) {
      ++heard_;
      const auto found = givenUp().match(text);
      EXPECT_FALSE(found.hasMatch()) << where << " says “" << found.captured().toStdString()
                                     << "” in: " << text.toStdString();
    };
  }
  /// The same where only what concerns this bike is in view.
  Hear takenOfThisBike() {
    return [this, all = taken()](const QString& text, const std::string& where) {
      all(text, where);
      if (belt()) {
        EXPECT_FALSE(namesSprocketsAlone(text)) << where << ": " << text.toStdString();
      }
    };
  }

  Profile profile_;
  int heard_ = 0;
};

TEST_P(Vocabulary, OfTheWindow) {
  Window window(profile_);
  auto* tabs = window->findChild<QTabWidget*>();
  EXPECT_EQ(tabs->tabText(3), belt() ? "Belt" : "Chain");
  for (int page = 0; page < tabs->count(); ++page) {
    tabs->setCurrentIndex(page);
    QTest::qWait(30);
    if (qobject_cast<ui::LadderPage*>(tabs->currentWidget())) {
      ASSERT_TRUE(soon([&] { return !window->session().ladder().running(); }));
    }
    const std::string where = "page " + std::to_string(page);
    hear(*window, where, takenOfThisBike());
    for (const QStringList& row : window->currentPage()->numbers())
      for (const QString& cell : row) takenOfThisBike()(cell, where + ", numbers");
    if (ui::Picture* picture = window->currentPage()->picture())
      for (const QString& text : textsOf(*picture)) taken()(text, where + ", picture");
  }
  hear(*window->menuBar(), takenOfThisBike());
  takenOfThisBike()(window->readout().text(), "readout");
  ASSERT_EQ(ui::SetupEdits(window->document(), ui::Side::Proposed).setRearTeeth(60), std::nullopt);
  taken()(window->document().undoStack().undoText(), "undo");
  QTest::qWait(30);
  takenOfThisBike()(window->readout().text(), "readout");
  EXPECT_GT(heard_, 1000);
  window->document().undoStack().undo();
}

TEST_P(Vocabulary, OfTheDetails) {
  Window window(profile_);
  window->showDetails();
  auto* details = window->findChild<QDockWidget*>();
  ASSERT_TRUE(details);
  auto* tabs = details->findChild<QTabWidget*>();
  for (int tab = 0; tab < tabs->count(); ++tab) {
    tabs->setCurrentIndex(tab);
    hear(*details, "details", taken());
  }
  EXPECT_GT(heard_, 300);
}

TEST_P(Vocabulary, OfTheCounterView) {
  Window window(profile_);
  ui::CounterView::open(*window);
  auto* view = window->findChild<ui::CounterView*>();
  ASSERT_TRUE(view);
  for (const char* answer : {"More Punch", "Less Buzz", "Compare Choices", "Familiar Steps"}) {
    control<QPushButton>(*view, answer).click();
    hear(*view, std::string("counter, ") + answer, takenOfThisBike());
    if (QString(answer) != "Compare Choices" || profile_.pins.empty()) QTest::keyClick(view, Qt::Key_Escape);
    if (profile_.pins.empty() && QString(answer) == "Compare Choices") break;
  }
  EXPECT_GT(heard_, 150);
}

TEST_P(Vocabulary, OfTheTextReport) {
  for (const auto system : {ui::UnitSystem::Metric, ui::UnitSystem::Imperial})
    for (const QString& line : ui::textReport(plan(profile_), ui::UnitsShown(system)).split('\n'))
      takenOfThisBike()(line, "text report");
}

INSTANTIATE_TEST_SUITE_P(Samples, Vocabulary, testing::ValuesIn(kSamples), [](const auto& name) {
  return QString(name.param).replace('-', '_').toStdString();
});

TEST(VocabularyItself, HearsWhatWasGivenUp) {
  for (const char* text : {"80–120 km/h, last gear, s", "least play, mm", "safety factor", "twin of 14/42",
                           "end of the drive in least time", "1 % further", "Chain run"})
    EXPECT_TRUE(givenUp().match(QString::fromUtf8(text)).hasMatch()) << text;
  EXPECT_FALSE(givenUp().match("The front lifts more easily than the drive line displays.").hasMatch());
  EXPECT_TRUE(namesSprocketsAlone("front sprocket"));
  EXPECT_FALSE(namesSprocketsAlone("Front sprockets or pulleys"));
}

TEST(VocabularyItself, OfTheNewBikeDialogAndTheCautions) {
  const Hear take = [](const QString& text, const std::string& where) {
    EXPECT_FALSE(givenUp().match(text).hasMatch()) << where << ": " << text.toStdString();
  };
  hear(ui::NewBikeDialog({}), "new bike", take);
  for (const QString& caution : ui::allCautions()) take(caution, "cautions");
}

/// Words that stay small inside a title.
bool isTitle(QString text) {
  static const QRegularExpression apart(QStringLiteral("[\\s/]+"));
  static const QStringList small{"a",  "an", "the",  "of", "to", "in", "on",   "at",  "for", "and", "or",
                                 "by", "as", "from", "it", "is", "be", "with", "rpm", "mph", "km"};
  text.remove('&');
  const qsizetype units = text.indexOf(',');
  if (units >= 0) text.truncate(units);                                             // "Mass, kg"
  if (const qsizetype colon = text.indexOf(':'); colon >= 0) text.truncate(colon);  // "Metric: km/h, mm"
  bool first = true;
  for (const QString& word : text.split(apart, Qt::SkipEmptyParts)) {
    if (word[0].isLower() && (first || !small.contains(word))) return false;
    first = false;
  }
  return true;
}

TEST(Capitals, TitlesHaveThemOnEveryWordAndLabelsOnTheFirst) {
  Profile profile = sampleBike("club-600");
  profile.pins.clear();  // their names are the user's
  Window window(profile);
  window->showDetails();
  ui::TracksWindow::open(*window);
  auto* tabs = window->findChild<QTabWidget*>();
  for (int page = 0; page < tabs->count(); ++page) {
    tabs->setCurrentIndex(page);
    QTest::qWait(10);
  }
  int titles = 0, labels = 0;
  const auto title = [&](const QString& text) {
    if (text.isEmpty()) return;
    ++titles;
    EXPECT_TRUE(isTitle(text)) << text.toStdString();
  };
  const auto label = [&](QString text) {
    text.remove('&');
    if (text.isEmpty() || !text[0].isLetter()) return;
    ++labels;
    EXPECT_TRUE(text[0].isUpper()) << text.toStdString();
  };
  const std::function<void(const QMenu&)> menu = [&](const QMenu& of) {
    for (const QAction* action : of.actions()) {
      if (!action->isEnabled() && !action->menu<QMenu*>()) continue;  // what it says, not what it does
      if (action->text().startsWith("&Undo ") || action->text().startsWith("&Redo "))
        continue;  // what was done
      title(action->text());
      if (auto* more = action->menu<QMenu*>(); more && !action->text().contains("Figures")) menu(*more);
    }
  };
  for (const QAction* action : window->menuBar()->actions()) menu(*action->menu<QMenu*>());
  for (auto* button : window->findChildren<QPushButton*>()) title(button->text());
  for (auto* box : window->findChildren<QCheckBox*>()) label(box->text());
  for (auto* button : window->findChildren<QRadioButton*>()) label(button->text());
  for (auto* bar : window->findChildren<QTabWidget*>())
    for (int i = 0; i < bar->count(); ++i) title(bar->tabText(i));
  for (auto* dialog : window->findChildren<QDialog*>()) title(dialog->windowTitle());
  for (auto* dock : window->findChildren<QDockWidget*>()) title(dock->windowTitle());
  for (auto* view : window->findChildren<QTableView*>())
    for (int c = 0; c < view->model()->columnCount(); ++c)
      title(view->model()->headerData(c, Qt::Horizontal).toString());
  for (auto* text : window->findChildren<QLabel*>())
    if (text->buddy()) label(text->text());
  for (auto* choice : window->findChildren<QComboBox*>())
    for (int i = 0; i < choice->count(); ++i) label(choice->itemText(i));
  EXPECT_GT(titles, 80);
  EXPECT_GT(labels, 100);
}

}  // namespace
}  // namespace layshaft::test
