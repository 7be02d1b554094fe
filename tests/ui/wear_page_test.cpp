// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/wear_page.h"

#include <QDialogButtonBox>
#include <QLineEdit>
#include <QRadioButton>
#include <QTabWidget>
#include <QTemporaryDir>

#include "tests/ui/support.h"
#include "ui/document/preferences.h"
#include "ui/document/setup_edits.h"
#include "ui/editors/calm_spin_box.h"
#include "ui/editors/measure_dialog.h"
#include "ui/pages/chain_page.h"

namespace layshaft::test {
namespace {

class WearPageTest : public testing::Test, FreshSettings {
 protected:
  WearPageTest() { ui::preferences::setUnits(ui::UnitsShown(ui::UnitSystem::Metric)); }

  void open(Profile profile) {
    window_ = std::make_unique<Window>(std::move(profile));
    page_ = (*window_)->findChild<ui::WearPage*>();
    (*window_)->findChild<QTabWidget*>()->setCurrentWidget(page_);
    QTest::qWait(50);
  }
  QString words(const QString& name) {
    const auto& label = control<QLabel>(*page_, name);
    return label.isVisible() ? label.text() : QString();
  }
  QAbstractButton& button(const QString& text) {
    for (auto* candidate : page_->findChildren<QAbstractButton*>())
      if (candidate->text() == text) return *candidate;
    throw std::runtime_error("no button " + text.toStdString());
  }
  QSlider& slider() { return control<QSlider>(*page_, "Elongation drawn"); }
  ui::ToothDrawing& drawing() { return *page_->findChild<ui::ToothDrawing*>(); }
  QTableWidget& table() { return control<QTableWidget>(*page_, "Measurements"); }
  const Entries<WearMeasurement>& measurements() { return window_->profile().wear.value().measurements; }

  std::unique_ptr<Window> window_;
  ui::WearPage* page_ = nullptr;
};

/// Fills in the dialog that is asked for next, and says yes.
void enter(QDialog& dialog, const QString& length, const QString& use) {
  typeInto(control<QAbstractSpinBox>(dialog, "Length at place 1"), length);
  typeInto(control<QAbstractSpinBox>(dialog, "Use of the bike"), use);
  for (auto* radio : dialog.findChildren<QRadioButton*>())
    if (radio->accessibleName() == "Rear teeth: Worn") radio->click();
  dialog.findChild<QDialogButtonBox*>()->button(QDialogButtonBox::Ok)->click();
}

TEST_F(WearPageTest, SaysHowWornTheSampleIs) {
  open(sampleBike("enduro-250"));
  EXPECT_TRUE(words("Verdict").startsWith("Watch chain and both sprockets"))
      << words("Verdict").toStdString();
  EXPECT_TRUE(words("Limit and trend in words").contains("usual for sealed chains"));
  EXPECT_TRUE(words("Limit and trend in words").contains("nine times in ten between"));
  EXPECT_TRUE(words("Expected length").contains("317.5 mm"));
  EXPECT_TRUE(words("Cautions").contains("Turn the wheel by hand only"));
  EXPECT_EQ(table().rowCount(), 4);
  const auto* gauge = page_->findChild<ui::WearGauge*>();
  EXPECT_TRUE(gauge->accessibleDescription().startsWith("Elongation 0.35 % of a limit of 1.0 %."));
}

TEST_F(WearPageTest, TheSliderMakesTheRollersClimb) {
  open(sampleBike("enduro-250"));
  EXPECT_NEAR(drawing().elongation(), 0.346, 0.001) << "begins at the bike's own";
  slider().setValue(slider().minimum());
  const QImage fresh = drawing().grab().toImage();
  EXPECT_TRUE(drawing().accessibleDescription().contains("0.00 % longer"));
  slider().setValue(slider().maximum());
  EXPECT_NEAR(drawing().elongation(), 3.0, 1e-9);
  EXPECT_NE(drawing().grab().toImage(), fresh);
  // 51 teeth of 15.875 mm ride on 128.94 mm; 3 % of that are 3.87 mm.
  EXPECT_TRUE(drawing().accessibleDescription().contains("ride 3.87 mm higher"))
      << drawing().accessibleDescription().toStdString();
  const QImage worn = drawing().grab().toImage();
  button("New chain on worn teeth").click();
  EXPECT_NE(drawing().grab().toImage(), worn);
  EXPECT_TRUE(drawing().accessibleDescription().contains("slop (a sketch)"));
  button("Limit").click();
  EXPECT_NEAR(drawing().elongation(), 1.0, 1e-9);
  button("This Chain").click();
  EXPECT_NEAR(drawing().elongation(), 0.346, 0.001);
}

TEST_F(WearPageTest, MeasuringAddsAnEntryThatIsOneStep) {
  open(sampleBike("club-600"));
  EXPECT_TRUE(words("Verdict").startsWith("Nothing measured yet"));
  DialogAnswer answer([](QDialog& dialog) { enter(dialog, "321.5", "12.5"); });
  button("Measure…").click();
  ASSERT_TRUE(answer.seen());
  ASSERT_EQ(measurements().size(), 1U);
  const WearMeasurement& entry = measurements()[0];
  EXPECT_EQ(entry.lengthsMm, std::vector<double>{321.5});
  EXPECT_EQ(entry.at, 12.5);
  EXPECT_EQ(entry.rear, TeethSeen::Worn);
  EXPECT_FALSE(entry.pitches) << "20 is what is taken anyway";
  EXPECT_TRUE(soon([&] { return words("Verdict").startsWith("Replace chain and both sprockets as a set"); }));
  EXPECT_TRUE(words("Cautions").contains("Past the wear limit"));
  (*window_)->document().undoStack().undo();
  EXPECT_TRUE(soon([&] { return words("Verdict").startsWith("Nothing measured yet"); }));
}

TEST_F(WearPageTest, MeasuringMayBeInInches) {
  ui::preferences::setUnits(ui::UnitsShown(ui::UnitSystem::Imperial));
  open(sampleBike("club-600"));
  DialogAnswer answer([](QDialog& dialog) { enter(dialog, "12.6", "3"); });
  button("Measure…").click();
  ASSERT_EQ(measurements().size(), 1U);
  EXPECT_NEAR(measurements()[0].lengthsMm.at(0), 320.04, 1e-9);
}

TEST_F(WearPageTest, NothingFoundIsNothingWrittenDown) {
  open(sampleBike("club-600"));
  DialogAnswer answer([](QDialog& dialog) {
    EXPECT_FALSE(dialog.findChild<QDialogButtonBox*>()->button(QDialogButtonBox::Ok)->isEnabled());
    dialog.reject();
  });
  button("Measure…").click();
  EXPECT_TRUE(answer.seen());
  EXPECT_FALSE(window_->profile().wear);
}

TEST_F(WearPageTest, AnEntryIsStruckThroughWithAReason) {
  open(sampleBike("enduro-250"));
  EXPECT_FALSE(button("Strike Through…").isEnabled());
  table().selectRow(0);
  ASSERT_TRUE(button("Strike Through…").isEnabled());
  DialogAnswer answer([](QDialog& dialog) {
    control<QLineEdit>(dialog, "Reason").setText("the tape had slipped");
    dialog.findChild<QDialogButtonBox*>()->button(QDialogButtonBox::Ok)->click();
  });
  button("Strike Through…").click();
  ASSERT_TRUE(measurements()[3].struck);
  EXPECT_EQ(measurements()[3].struck->reason, "the tape had slipped");
  EXPECT_TRUE(
      soon([&] { return table().item(0, 0)->text().contains("struck through: the tape had slipped"); }));
  table().selectRow(0);
  EXPECT_FALSE(button("Strike Through…").isEnabled());
}

TEST_F(WearPageTest, TheManualsSlackIsTypedHereAndReadWhereTheChainIsHandled) {
  open(sampleBike("club-600"));
  typeInto(control<QAbstractSpinBox>(*page_, "Slack from"), "25\t");
  EXPECT_FALSE(window_->profile().wear && window_->profile().wear->slackMm) << "one end is no range";
  typeInto(control<QAbstractSpinBox>(*page_, "Slack to"), "35\t");
  ASSERT_TRUE(window_->profile().wear);
  EXPECT_EQ(window_->profile().wear->slackMm, (LengthRange{25, 35}));
  auto* chain = (*window_)->findChild<ui::ChainPage*>();
  (*window_)->findChild<QTabWidget*>()->setCurrentWidget(chain);
  EXPECT_TRUE(soon([&] {
    return control<QLabel>(*chain, "The manual's slack").text() == "Slack by the manual: 25 to 35 mm.";
  }));
}

TEST_F(WearPageTest, BeltsAreJudgedByTheManual) {
  open(sampleBike("tourer-belt"));
  EXPECT_TRUE(words("Wear of belts").contains("by the bike's manual"));
  EXPECT_EQ(page_->picture(), nullptr);
  EXPECT_TRUE(page_->numbers().empty());
}

TEST_F(WearPageTest, SaysThatItNeedsTheChainsSize) {
  Profile profile = workedExample();
  profile.stock.options.chainSize.reset();
  open(profile);
  bool found = false;
  for (auto* label : page_->findChildren<QLabel*>())
    found = found || (label->isVisible() && label->text().contains("Missing: stock's chain size"));
  EXPECT_TRUE(found);
}

TEST_F(WearPageTest, TheTrendIsAChartWithLimitAndLine) {
  open(sampleBike("adventure-twin"));
  ui::LiveChart* chart = (*window_)->currentChart();
  ASSERT_TRUE(chart);
  ASSERT_EQ(chart->lines().size(), 2U);
  EXPECT_EQ(chart->lines()[0]->points().front().y(), 1.0);
  EXPECT_EQ(chart->lines()[0]->points().back().y(), 1.0);
  const auto line = chart->lines()[1]->points();
  EXPECT_EQ(line.size(), 2);
  EXPECT_NEAR(line.back().y(), 1.0, 1e-9) << "up to the limit";
  chart->setCrosshair(30100);
  EXPECT_TRUE(chart->crosshairWords().contains("Measured at 30,100 km: Elongation 0.41 %"))
      << chart->crosshairWords().toStdString();
  ui::preferences::setUnits(ui::UnitsShown(ui::UnitSystem::Mixed));
  ui::MainWindow::allPreferencesChanged();
  EXPECT_LT(chart->lines()[1]->points().back().x(), line.back().x()) << "in miles";
  QTemporaryDir folder;
  EXPECT_EQ(page_->picture()->savePicture(folder.filePath("wear.png")), std::nullopt);
  EXPECT_EQ(page_->numbers().size(), 4U);
  EXPECT_EQ(page_->csv().count('\n'), 4);
}

TEST_F(WearPageTest, ADialogStepsFromANewChainsLength) {
  const Profile profile = sampleBike("enduro-250");
  ui::MeasureDialog dialog(ui::wearBook(profile, plan(profile)), ui::UnitsShown(), QDate(2026, 6, 7));
  auto& place = static_cast<ui::DecimalBox&>(control<QAbstractSpinBox>(dialog, "Length at place 1"));
  place.stepUp();
  EXPECT_NEAR(place.value(), 317.6, 1e-9);
  EXPECT_EQ(dialog.entry()->date, *Date::parse("2026-06-07"));
  place.setValue(316.0);
  EXPECT_TRUE(control<QLabel>(dialog, "What the lengths come to").text().contains("count the links again"));
  static_cast<ui::DecimalBox&>(control<QAbstractSpinBox>(dialog, "Use of the bike")).setValue(70.0);
  EXPECT_TRUE(
      control<QLabel>(dialog, "What the lengths come to").text().contains("Less use than an earlier"));
  static_cast<ui::WholeBox&>(control<QAbstractSpinBox>(dialog, "Links measured over")).setValue(16);
  EXPECT_EQ(dialog.entry()->pitches, 16);
}

}  // namespace
}  // namespace layshaft::test
