// SPDX-License-Identifier: GPL-3.0-or-later
#include <QCheckBox>
#include <QDockWidget>
#include <QSlider>
#include <QTabWidget>
#include <QTableWidget>
#include <QTemporaryDir>
#include <QToolButton>
#include <cmath>

#include "core/report.h"
#include "tests/ui/support.h"
#include "ui/document/preferences.h"
#include "ui/pages/chain_page.h"
#include "ui/words/chain_words.h"

namespace layshaft::test {
namespace {

/// The page that shows the chain on its sprockets, in a window.
class ChainPageTest : public testing::Test, FreshSettings {
 protected:
  ChainPageTest() { ui::preferences::setUnits(ui::UnitsShown(ui::UnitSystem::Metric)); }

  void open(Profile profile) {
    window_ = std::make_unique<Window>(std::move(profile));
    page_ = (*window_)->findChild<ui::ChainPage*>();
    (*window_)->findChild<QTabWidget*>()->setCurrentWidget(page_);
    QTest::qWait(50);
  }
  ui::ChainDrawing& drawing() { return *page_->findChild<ui::ChainDrawing*>(); }
  QSlider& slider() { return control<QSlider>(*page_, "Turn of the rear wheel"); }
  QToolButton& button(const QString& text) {
    for (auto* candidate : page_->findChildren<QToolButton*>())
      if (candidate->text() == text || candidate->accessibleName() == text) return *candidate;
    throw std::runtime_error("no button " + text.toStdString());
  }
  QString words(const QString& name) {
    const auto& label = control<QLabel>(*page_, name);
    return label.isHidden() ? QString() : label.text();
  }
  QString cell(const QString& row, int column) {
    auto& table = control<QTableWidget>(*page_, "Figures of chain or belt");
    for (int r = 0; r < table.rowCount(); ++r)
      if (table.item(r, 0)->text().startsWith(row)) return table.item(r, column)->text();
    throw std::runtime_error("no row " + row.toStdString());
  }
  QImage picture() { return drawing().grab().toImage(); }
  int pixelsOf(const QColor& colour) {
    const QImage image = picture();
    int count = 0;
    for (int y = 0; y < image.height(); ++y)
      for (int x = 0; x < image.width(); ++x) count += image.pixel(x, y) == colour.rgb() ? 1 : 0;
    return count;
  }

  std::unique_ptr<Window> window_;
  ui::ChainPage* page_ = nullptr;
};

TEST_F(ChainPageTest, TheTableHasThePlansFigures) {
  open(workedExample());
  EXPECT_EQ(cell("Links", 2), "114");
  EXPECT_TRUE(cell("Centre distance", 1).startsWith("667.2"));
  EXPECT_EQ(cell("Axle shift", 2), "+3.7");
  EXPECT_EQ(cell("Wheelbase", 3), "+3.7");
  EXPECT_EQ(cell("Front wrap", 1), "168.3");
  EXPECT_EQ(cell("Peak tension", 2), "7,836");
  EXPECT_TRUE(words("Whether it fits").startsWith("Fits with 114 links: the axle moves 3.7 mm back."));
}

TEST_F(ChainPageTest, AStepOfTheTeethShowsAtOnce) {
  open(workedExample());
  const QImage before = picture();
  ui::SetupEdits((*window_)->document(), ui::Side::Proposed).setRearTeeth(45);
  EXPECT_TRUE(soon([&] { return cell("Axle shift", 2) == "−4.8"; }));
  EXPECT_NE(picture(), before);
}

TEST_F(ChainPageTest, StockIsAGhostAndTheProposalSolid) {
  open(workedExample());
  const ui::ChartPalette colours(drawing().palette());
  EXPECT_GT(pixelsOf(colours.proposed), 1000);
  EXPECT_GT(pixelsOf(colours.stock), 20);
  EXPECT_LT(pixelsOf(colours.stock), pixelsOf(colours.proposed));
}

TEST_F(ChainPageTest, TheSliderTurnsTheWheel) {
  open(workedExample());
  const QImage before = picture();
  slider().setValue(slider().maximum() / 4);
  EXPECT_NEAR(drawing().turn(), 0.25, 1e-9);
  EXPECT_NE(picture(), before);
  slider().setFocus();
  QTest::keyClick(&slider(), Qt::Key_End);
  EXPECT_EQ(drawing().turn(), 1.0);
}

TEST_F(ChainPageTest, AStepIsOneLink) {
  open(workedExample());  // 43 rear teeth
  button("One link on").click();
  EXPECT_NEAR(drawing().turn(), 1.0 / 43, 1e-9);
  button("One link on").click();
  EXPECT_NEAR(drawing().turn(), 2.0 / 43, 1e-9);
  button("One link back").click();
  button("One link back").click();
  button("One link back").click();
  EXPECT_EQ(drawing().turn(), 0.0) << "never beyond the ends";
}

TEST_F(ChainPageTest, TheWheelRollsOnceAndStands) {
  open(workedExample());
  slider().setValue(slider().maximum() * 19 / 20);
  button("Animate").click();
  EXPECT_TRUE(soon([&] { return drawing().turn() == 1.0; }));
  EXPECT_EQ(button("Animate").isChecked(), false);
  // Once more from the start.
  button("Animate").click();
  EXPECT_LT(drawing().turn(), 0.5);
  button("Stop").click();
  const double held = drawing().turn();
  QTest::qWait(60);
  EXPECT_EQ(drawing().turn(), held);
}

TEST_F(ChainPageTest, NothingMovesWhileAnotherPageIsInView) {
  open(workedExample());
  button("Animate").click();
  (*window_)->findChild<QTabWidget*>()->setCurrentIndex(0);
  const double left = drawing().turn();
  QTest::qWait(60);
  EXPECT_EQ(drawing().turn(), left);
}

TEST_F(ChainPageTest, WithoutMotionTheWheelIsTurnedByHandAndTheDrawingStillExplains) {
  ui::preferences::setMotion(false);
  open(workedExample());
  EXPECT_TRUE(button("Animate").isHidden());
  slider().setValue(slider().maximum() / 2);
  EXPECT_EQ(drawing().turn(), 0.5);
  EXPECT_TRUE(drawing().accessibleDescription().contains(
      "For one turn of the rear wheel the front sprocket makes 6.7 % more turns: every gear is shorter."));
  ui::preferences::setMotion(true);
}

TEST_F(ChainPageTest, MotionIsSwitchedInTheViewMenu) {
  open(workedExample());
  QAction* motion = nullptr;
  for (auto* action : (*window_)->findChildren<QAction*>())
    if (action->text().remove('&') == "Animations") motion = action;
  ASSERT_TRUE(motion);
  EXPECT_TRUE(motion->isChecked());
  motion->trigger();
  EXPECT_FALSE(ui::preferences::motion());
  EXPECT_TRUE(button("Animate").isHidden());
  motion->trigger();
  EXPECT_FALSE(button("Animate").isHidden());
}

TEST_F(ChainPageTest, TheRearSprocketCanBeDraggedRound) {
  open(workedExample());
  // A quarter of a turn up its right side and over the top.
  const QRectF rear = drawing().sprocketBoxes().at(1);
  const QPoint edge(static_cast<int>(rear.right()) - 12, static_cast<int>(rear.center().y()));
  QTest::mousePress(&drawing(), Qt::LeftButton, {}, edge);
  QTest::mouseMove(&drawing(), edge - QPoint(4, 50));
  EXPECT_GT(drawing().turn(), 0.02);
  EXPECT_LT(drawing().turn(), 0.25);
  EXPECT_NEAR(slider().value(), drawing().turn() * slider().maximum(), 1.0);
  QTest::mouseRelease(&drawing(), Qt::LeftButton, {}, edge);
  const double held = drawing().turn();
  QTest::mouseMove(&drawing(), edge);
  EXPECT_EQ(drawing().turn(), held);
}

TEST_F(ChainPageTest, ZoomsToTheAxle) {
  open(sampleBike("motocross-450"));
  (*window_)->resize(1280, 800);  // in a lower drawing the sprocket comes into view beside the slot
  QTest::qWait(20);
  const QImage before = picture();
  for (auto* box : page_->findChildren<QCheckBox*>())
    if (box->text() == "Zoom to the axle") box->click();
  EXPECT_NE(picture(), before);
  const QImage zoomed = picture();
  slider().setValue(slider().maximum() / 3);
  EXPECT_EQ(picture(), zoomed) << "an axle does not turn in its slot";
}

TEST_F(ChainPageTest, AProposalThatMixesSizesIsRefusedByName) {
  Profile profile = workedExample();
  profile.proposed.options.chainSize = chainSize("525");
  open(profile);
  const QString said = words("Whether it fits");
  EXPECT_TRUE(said.contains("Does not fit")) << said.toStdString();
  EXPECT_TRUE(
      said.contains("a 525 chain will not run on the rear sprocket, cut for 520 (different inner width)"))
      << said.toStdString();
  EXPECT_FALSE(said.contains("front sprocket")) << "the front one is another and bought to suit";
}

TEST_F(ChainPageTest, ALongerChainIsShortenedByALinksCount) {
  Profile profile = workedExample();
  profile.proposed.options.links = 118;
  profile.sparesBox.reset();
  open(profile);
  EXPECT_TRUE(words("Whether it fits").contains("Would fit: 114 (this chain; axle moves 3.7 mm back)"))
      << words("Whether it fits").toStdString() << "\nthe 118 are not on the bike";
  profile.proposed.options.links.reset();
  profile.proposed.frontTeeth = front(14);
  profile.proposed.rearTeeth = rear(40);
  open(profile);
  EXPECT_TRUE(words("Whether it fits").contains("112 (this chain, 2 links taken out; axle moves "))
      << words("Whether it fits").toStdString();
}

TEST_F(ChainPageTest, ASpareThatFitsAsItIsIsNamedBesideTheBikesOwn) {
  Profile profile = workedExample();
  profile.proposed.options.links = 118;
  profile.sparesBox.emplace().chains = {{.size = *chainSize("520"), .links = 114}};
  open(profile);
  EXPECT_TRUE(
      words("Whether it fits").contains("114 (this chain or the 114-link chain in the spares box; axle"))
      << words("Whether it fits").toStdString();
}

TEST_F(ChainPageTest, SaysThatNoLengthFits) {
  Profile profile = workedExample();
  profile.bike.chainRun->adjusterForwardMm = 0.1;
  profile.bike.chainRun->adjusterBackMm = 0.1;
  open(profile);
  EXPECT_TRUE(words("Whether it fits").contains("No even number of links fits."))
      << words("Whether it fits").toStdString();
}

TEST_F(ChainPageTest, ABeltIsCalledABelt) {
  Profile profile = sampleBike("tourer-belt");
  profile.proposed.options.beltTeeth = 60;
  open(profile);
  EXPECT_TRUE(words("Whether it fits").contains("the belt is too short for its pulleys"));
  EXPECT_FALSE(words("Whether it fits").contains("links"));
  EXPECT_FALSE(words("Weight and suspension in words").contains("tightest"))
      << "nothing is said of an axle that is nowhere";
  open(sampleBike("tourer-belt"));
  EXPECT_TRUE(words("Weight and suspension in words").contains("The belt is tightest"));
  EXPECT_EQ(cell("Front pulley", 1), "1.65") << "weighed pulleys are shown";
}

TEST_F(ChainPageTest, EveryGearIsShorterOnlyWhereNothingElseChanges) {
  Profile profile = workedExample();
  profile.proposed.primaryRatio = 1.7;
  open(profile);
  EXPECT_FALSE(drawing().accessibleDescription().contains("every gear"));
  EXPECT_TRUE(drawing().accessibleDescription().contains("primary, gears or tyre change too"));
}

TEST_F(ChainPageTest, AContradictionIsPointedOut) {
  Profile profile = workedExample();
  if (!profile.bike.chainRun) profile.bike.chainRun.emplace();
  profile.bike.chainRun->centreDistanceMm = 650;
  open(profile);
  EXPECT_TRUE(words("Whether it fits").contains("don't agree, by 2.2 links"))
      << words("Whether it fits").toStdString();
}

TEST_F(ChainPageTest, AnOddNumberOfLinksIsAdvisedAgainst) {
  Profile profile = workedExample();
  profile.proposed.options.links = 113;
  open(profile);
  EXPECT_TRUE(words("Whether it fits").startsWith("With 113 links, an odd number: the axle moves "))
      << words("Whether it fits").toStdString();
  EXPECT_TRUE(words("Cautions").contains("Does not fit properly: use an even number of links."));
}

TEST_F(ChainPageTest, WeightAndSuspensionAreSaidInWords) {
  open(sampleBike("motocross-450"));
  const QString said = words("Weight and suspension in words");
  EXPECT_TRUE(said.contains("The rear sprocket weighs 0.52 kg less than stock's.")) << said.toStdString();
  EXPECT_TRUE(said.contains("It counts in pull and acceleration."));
  EXPECT_TRUE(said.contains("Anti-squat goes from 98.1 to 98.8 %: under power the rear squats less."));
  EXPECT_TRUE(said.contains("of slack in mid-run it binds there.")) << said.toStdString();
  EXPECT_TRUE(words("Cautions").contains("never a setting"));
  EXPECT_EQ(cell("Rear sprocket", 2), "0.44");
  ui::SetupEdits((*window_)->document(), ui::Side::Proposed).setRearTeeth(49);  // not in the box
  EXPECT_TRUE(soon([&] { return cell("Rear sprocket", 2).startsWith("≈"); }));
  EXPECT_TRUE(words("Weight and suspension in words").contains("an estimate"));
}

TEST_F(ChainPageTest, SaysWhatItLacksAndLeadsThere) {
  Profile profile = workedExample();
  profile.stock.options.links.reset();
  open(profile);
  bool found = false;
  for (auto* label : page_->findChildren<QLabel*>())
    found = found || (label->isVisible() && label->text().contains("Missing: stock's number of links."));
  EXPECT_TRUE(found);
  EXPECT_EQ(page_->picture(), nullptr);
  for (auto* button : page_->findChildren<QPushButton*>())
    if (button->text() == "Fill Them In…") button->click();
  EXPECT_TRUE(soon([&] { return (*window_)->findChild<QDockWidget*>() != nullptr; }));
  auto* pages = (*window_)->findChild<QDockWidget*>()->findChild<QTabWidget*>();
  EXPECT_EQ(pages->tabText(pages->currentIndex()), "Chain or Belt");
  ui::SetupEdits((*window_)->document(), ui::Side::Stock).setLinks(114);
  EXPECT_TRUE(soon([&] { return page_->picture() != nullptr; }));
}

TEST_F(ChainPageTest, AChainThatDoesNotReachRoundIsStillDrawn) {
  Profile profile = workedExample();
  profile.proposed.options.links = 46;
  open(profile);
  EXPECT_TRUE(words("Whether it fits").contains("is too short for its sprockets"));
  EXPECT_GT(pixelsOf(ui::ChartPalette(drawing().palette()).proposed), 100) << "the sprockets at least";
  EXPECT_EQ(cell("Centre distance", 2), "–");
  EXPECT_EQ(cell("Axle shift", 2), "–");
}

TEST_F(ChainPageTest, EverySampleAndUnitIsDrawn) {
  for (const char* name : {"adventure-twin", "club-600", "enduro-250", "motocross-450", "roadster-classic",
                           "tourer-belt", "two-stroke-125", "youth-85"})
    for (const auto system : {ui::UnitSystem::Metric, ui::UnitSystem::Imperial}) {
      ui::preferences::setUnits(ui::UnitsShown(system));
      open(sampleBike(name));
      ASSERT_TRUE(page_->picture()) << name;
      EXPECT_GT(pixelsOf(ui::ChartPalette(drawing().palette()).proposed), 100) << name;
      EXPECT_FALSE(words("Whether it fits").isEmpty()) << name;
    }
}

TEST_F(ChainPageTest, PictureAndNumbersCanBeSaved) {
  open(workedExample());
  QTemporaryDir folder;
  for (const char* ending : {"png", "svg", "pdf"}) {
    const QString file = folder.filePath(QStringLiteral("chain.") + ending);
    EXPECT_EQ(page_->picture()->savePicture(file), std::nullopt) << ending;
    EXPECT_GT(QFileInfo(file).size(), 2000) << ending;
  }
  const QStringList lines = page_->csv().split('\n', Qt::SkipEmptyParts);
  ASSERT_EQ(lines.size(), 3) << "titles, stock, proposed";
  const QStringList titles = lines[0].split(','), proposed = lines[2].split(',');
  ASSERT_EQ(titles.size(), proposed.size());
  EXPECT_NEAR(proposed[titles.indexOf("axle_shift_mm")].toDouble(), 3.726, 1e-3);
  EXPECT_EQ(proposed[titles.indexOf("fits")], "true");
  EXPECT_GE(titles.indexOf("swingarm_anti_squat_percent"), 0);
  EXPECT_GE(titles.indexOf("sprocket_saved_kg"), 0);
  EXPECT_EQ(page_->numbers().front().size(), 4);
}

}  // namespace
}  // namespace layshaft::test
