// SPDX-License-Identifier: GPL-3.0-or-later
//
// A bike of which no rev limit and no gear ratios are known, in the window, in words and on paper.
#include <QDialogButtonBox>
#include <QPushButton>
#include <QTabWidget>
#include <QTemporaryDir>

#include "tests/ui/drive_line.h"
#include "tests/ui/on_paper.h"
#include "ui/document/preferences.h"
#include "ui/editors/gears_dialog.h"
#include "ui/pages/lacking_panel.h"
#include "ui/words/chart_words.h"
#include "ui/words/compare_rows.h"
#include "ui/words/compare_table.h"
#include "ui/words/gear_table.h"
#include "ui/words/key_figures.h"
#include "ui/words/road_words.h"
#include "ui/words/summary.h"
#include "ui/words/text_report.h"

namespace layshaft::test {
namespace {

using ui::UnitsShown;

Profile toothBike() {
  Profile profile = bike({{"/proposed/front_teeth", 15},
                          {"/stock/chain_size", "525"},
                          {"/stock/links", 114},
                          {"/cruise_speed_kmh", 110},
                          {"/bike/speedometer", {{"sensor", "gearbox_output"}}}});
  profile.bike.engine.revLimitRpm.reset();
  profile.stock.gearRatios = {};
  return profile;
}

TEST(UnknownGearsInWords, TheHeadlineStillTellsHowFarTheChangeGoes) {
  const Plan bare = plan(toothBike());
  const ui::Summary words = ui::summary(bare, UnitsShown());
  EXPECT_TRUE(words.headline.startsWith("Shorter (geared down) by 6.7 %")) << words.headline.toStdString();
  EXPECT_FALSE(words.detail.contains("Every gear"));
  EXPECT_TRUE(words.cautions.join(" ").contains("over-rev")) << "shorter is shorter, whatever the gears";
  Profile same = toothBike();
  same.proposed = {};
  EXPECT_EQ(ui::summary(plan(same), UnitsShown()).headline, "The proposal is the same as stock.");
}

TEST(UnknownGearsInWords, EveryTableAndReportCopes) {
  const UnitsShown units;
  for (Profile profile : {toothBike(), bike({{"/cruise_speed_kmh", 110}})}) {
    profile.bike.engine.revLimitRpm.reset();
    const Plan bare = plan(profile);
    EXPECT_EQ(ui::gearTable(bare, units).size(), bare.stock.gearing.gears.size() + 1);
    EXPECT_FALSE(ui::keyFigures(bare, units, {}).empty());
    EXPECT_FALSE(ui::everyFigure(bare, units).empty());
    EXPECT_FALSE(ui::compareRows(ui::compareTable(bare, units, ui::allCompareFigures())).empty());
    EXPECT_FALSE(ui::textReport(bare, units).isEmpty());
    EXPECT_EQ(ui::sawtoothWords(bare, units), ui::sawtoothNeeds());
    for (const ui::KeyFigure& figure : ui::everyFigure(bare, units))
      EXPECT_FALSE(figure.label.contains("rev limit")) << figure.label.toStdString();
  }
}

TEST(UnknownGearsInWords, ThePrintedPageSaysWhatIsMissing) {
  QTemporaryDir folder;
  const QString file = folder.filePath("page.pdf");
  ASSERT_EQ(savePdf(benchSheetOf(toothBike()), file), std::nullopt);
  const QString missing =
      ui::lackingWords(ui::sawtoothNeeds(), sawtoothLacks(plan(toothBike()))).simplified();
  EXPECT_TRUE(wordsOnPaper(file).contains(missing)) << wordsOnPaper(file).toStdString();
  for (const ui::SheetKind kind : ui::kSheetKinds)
    EXPECT_EQ(savePdf(ui::makeSheet(kind, sheetInputOf(toothBike())), file), std::nullopt);
}

class UnknownGearsInTheWindow : public testing::Test, FreshSettings {
 protected:
  ui::LackingPanel* panel() {
    for (auto* panel : window_->findChildren<ui::LackingPanel*>())
      if (panel->isVisible()) return panel;
    return nullptr;
  }
  Window window_{toothBike()};
};

TEST_F(UnknownGearsInTheWindow, TheSawtoothSaysWhatIsMissingAndLeadsThere) {
  ASSERT_TRUE(panel());
  EXPECT_TRUE(panel()->findChild<QLabel*>()->text().endsWith("Missing: the rev limit, stock's gear ratios."))
      << panel()->findChild<QLabel*>()->text().toStdString();
  panel()->findChild<QPushButton*>()->click();
  auto& limit = control<QAbstractSpinBox>(*window_, "Rev limit");
  EXPECT_TRUE(limit.hasFocus());
  typeInto(limit, "9000");
  QTest::keyClick(&limit, Qt::Key_Tab);
  EXPECT_EQ(window_.profile().bike.engine.revLimitRpm, 9000);
  ASSERT_TRUE(soon([&] { return panel() && !panel()->findChild<QLabel*>()->text().contains("rev limit,"); }));
  panel()->findChild<QPushButton*>()->click();
  auto* dialog = window_->findChild<ui::GearsDialog*>();
  ASSERT_TRUE(dialog);
  const auto lines = dialog->findChildren<QLineEdit*>();
  auto* create = dialog->findChild<QDialogButtonBox*>()->button(QDialogButtonBox::Ok);
  EXPECT_FALSE(create->isEnabled());
  lines[0]->setText("2.5 2 1.5");
  EXPECT_FALSE(create->isEnabled()) << "ratios need the primary";
  lines[1]->setText("76/36");
  ASSERT_TRUE(create->isEnabled());
  create->click();
  EXPECT_THAT(window_.profile().stock.gearRatios.values(), testing::ElementsAre(2.5, 2, 1.5));
  EXPECT_EQ(window_.profile().stock.options.primaryTeeth, (GearTeeth{36, 76}));
  EXPECT_TRUE(soon([&] { return !panel(); })) << "the sawtooth is drawn";
  window_->document().undoStack().undo();
  EXPECT_TRUE(window_.profile().stock.gearRatios.empty()) << "one step";
}

TEST_F(UnknownGearsInTheWindow, EveryPageOpens) {
  auto* tabs = window_->findChild<QTabWidget*>();
  for (int i = 0; i < tabs->count(); ++i) {
    tabs->setCurrentIndex(i);
    QTest::qWait(30);
  }
  SUCCEED();
}

class UnknownGearsInTheStrip : public DriveLineTest {
 protected:
  UnknownGearsInTheStrip() : DriveLineTest(toothBike()) {}
};

TEST_F(UnknownGearsInTheStrip, NothingIsShownThatNobodyKnows) {
  EXPECT_TRUE(box("Rev limit").isNone());
  EXPECT_FALSE(decimal("Primary").isVisible());
  EXPECT_THROW(gear(1), std::runtime_error);
  EXPECT_EQ(steps(), 0);
  use(bike());
  EXPECT_TRUE(decimal("Primary").isVisible());
  EXPECT_EQ(box("Rev limit").value(), 10000);
}

}  // namespace
}  // namespace layshaft::test
