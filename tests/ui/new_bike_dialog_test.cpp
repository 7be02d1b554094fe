// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/new_bike_dialog.h"

#include <QComboBox>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

#include "core/bike/typical_bike.h"
#include "core/study/gearing.h"
#include "tests/ui/support.h"
#include "ui/document/samples.h"
#include "ui/editors/class_chooser.h"

namespace layshaft::test {
namespace {

using ui::NewBikeDialog;

class NewBikeDialogTest : public testing::Test {
 protected:
  QLineEdit& line(const QString& label) {
    for (auto* caption : dialog_.findChildren<QLabel*>())
      if (caption->text().remove('&').startsWith(label)) return dynamic_cast<QLineEdit&>(*caption->buddy());
    throw std::runtime_error("no line " + label.toStdString());
  }
  void fill() {
    line("Name").setText("Nipper");
    line("Rev limit").setText("12500");
    line("Primary").setText("76/36");
    line("Gear ratios").setText("2.71 2,06 35/20");
    line("Front").setText("15");
    line("Rear teeth").setText("45");
    line("Rear tyre").setText("180/55ZR17");
  }
  /// What a line offers as an example, in each of the ways it may be typed.
  QStringList examples(const QString& label) {
    return line(label).placeholderText().section("or example ", 1).split(", or ", Qt::SkipEmptyParts);
  }
  void startFrom(const QString& name) { dialog_.findChild<QComboBox*>()->setCurrentText(name); }
  bool canCreate() {
    return dialog_.findChild<QDialogButtonBox*>()->button(QDialogButtonBox::Ok)->isEnabled();
  }
  bool says(const QString& words) {
    for (auto* label : dialog_.findChildren<QLabel*>())
      if (!label->buddy() && label->text().contains(words)) return true;
    return false;
  }

  NewBikeDialog dialog_{ui::samples()};
};

TEST_F(NewBikeDialogTest, StartsIncompleteAndSaysWhatIsMissing) {
  EXPECT_FALSE(canCreate());
  EXPECT_EQ(dialog_.profile(), std::nullopt);
  EXPECT_TRUE(says("needs a name"));
}

TEST_F(NewBikeDialogTest, MakesAPlainBikeOfWhatIsTyped) {
  fill();
  ASSERT_TRUE(canCreate());
  const auto made = dialog_.profile();
  ASSERT_TRUE(made);
  EXPECT_EQ(made->name, "Nipper");
  EXPECT_EQ(made->bike.engine.revLimitRpm, 12500);
  EXPECT_NEAR(made->stock.primaryRatio, 76.0 / 36.0, 1e-6);
  EXPECT_THAT(made->stock.gearRatios.values(), testing::ElementsAre(2.71, 2.06, 1.75));
  EXPECT_EQ(made->stock.frontTeeth.count(), 15);
  EXPECT_EQ(made->stock.rearTeeth.count(), 45);
  EXPECT_EQ(made->stock.rearTyre.text(), "180/55ZR17");
  EXPECT_TRUE(made->proposed.changesNothing());
  EXPECT_FALSE(made->bike.chassis || made->bike.chainRun || made->bike.speedometer || made->ride);
  EXPECT_TRUE(same(profileFrom(writeProfile(*made)), *made));
}

TEST_F(NewBikeDialogTest, RefusesEachWrongValueByName) {
  const struct {
    const char *label, *value, *said;
  } wrongs[] = {
      {"Name", "  ", "name"},
      {"Rev limit", "900", "Rev limit"},
      {"Rev limit", "fast", "Rev limit"},
      {"Primary", "76/0", "Primary ratio"},
      {"Primary", "", "Primary ratio"},
      {"Gear ratios", "2.7 3.0", "Gear ratios: Gear 2"},
      {"Gear ratios", "2.7 x", "“x”"},
      {"Gear ratios", "11 10 9 8 7 6 5 4 3 2 1", "Gear ratios"},
      {"Front", "5", "Front teeth"},
      {"Front", "15.5", "whole"},
      {"Rear teeth", "121", "Rear teeth"},
      {"Rear tyre", "round", "Rear tyre"},
  };
  for (const auto& wrong : wrongs) {
    fill();
    line(wrong.label).setText(wrong.value);
    EXPECT_FALSE(canCreate()) << wrong.label << " " << wrong.value;
    EXPECT_EQ(dialog_.profile(), std::nullopt);
    EXPECT_TRUE(says(wrong.said)) << wrong.label << " " << wrong.value;
  }
}

TEST_F(NewBikeDialogTest, EveryExampleCanBeTyped) {
  for (const char* label : {"Rev limit", "Primary", "Gear ratios", "Front", "Rear teeth", "Rear tyre"}) {
    EXPECT_FALSE(examples(label).isEmpty()) << label;
    for (const QString& example : examples(label)) {
      fill();
      line(label).setText(example);
      EXPECT_TRUE(canCreate()) << label << ": " << example.toStdString();
    }
  }
}

TEST_F(NewBikeDialogTest, ExamplesInTeethGiveTheRatiosBesideThem) {
  constexpr double kThirdDigit = 0.0005;  // ratios are printed to three digits
  const QStringList primaries = examples("Primary"), gears = examples("Gear ratios");
  ASSERT_EQ(primaries.size(), 2);
  ASSERT_EQ(gears.size(), 2);
  const auto typed = [&](int way) {
    fill();
    line("Primary").setText(primaries[way]);
    line("Gear ratios").setText(gears[way]);
    return dialog_.profile().value().stock;
  };
  const layshaft::Setup numbers = typed(0), teeth = typed(1);
  EXPECT_NEAR(teeth.primaryRatio, numbers.primaryRatio, kThirdDigit);
  EXPECT_THAT(teeth.gearRatios.values(),
              testing::Pointwise(testing::DoubleNear(kThirdDigit), numbers.gearRatios.values()));
}

TEST_F(NewBikeDialogTest, TakesGearRatiosWithCommasBetween) {
  fill();
  line("Gear ratios").setText("2.71, 2.06, 1.75");
  ASSERT_TRUE(canCreate());
  EXPECT_EQ(dialog_.profile()->stock.gearRatios.count(), 3u);
}

TEST_F(NewBikeDialogTest, ASampleFillsEverythingAndBringsItsDetails) {
  const auto& [name, sample] = ui::samples().front();
  startFrom(name);
  ASSERT_TRUE(canCreate());
  const auto made = dialog_.profile();
  EXPECT_EQ(made->name, "Copy of " + sample.name);
  EXPECT_EQ(made->stock, sample.stock);
  EXPECT_EQ(made->bike, sample.bike);
  EXPECT_TRUE(made->proposed.changesNothing());
  EXPECT_TRUE(made->pins.empty());
}

TEST_F(NewBikeDialogTest, AnotherTyreKeepsTheSamplesFinalDrive) {
  const auto belt = std::find_if(ui::samples().begin(), ui::samples().end(), [](const auto& sample) {
    return sample.second.stock.options.finalDrive == FinalDrive::Belt;
  });
  ASSERT_NE(belt, ui::samples().end());
  startFrom(belt->first);
  line("Rear tyre").setText("180/65B16");
  const auto made = dialog_.profile();
  ASSERT_TRUE(made);
  EXPECT_EQ(made->stock.options.finalDrive, FinalDrive::Belt);
  EXPECT_EQ(made->stock.options.beltTeeth, belt->second.stock.options.beltTeeth);
  EXPECT_FALSE(made->stock.options.rolloutMm) << "measured on the sample's tyre";
}

TEST_F(NewBikeDialogTest, OtherTeethAreAnotherSprocketOfWhichNothingWasMeasured) {
  Profile sample =
      bike({{"/stock/front_sprocket", {{"material", "steel"}, {"mass_kg", 0.3}, {"size", "520"}}},
            {"/stock/rear_sprocket", {{"material", "steel"}, {"mass_kg", 1.1}, {"size", "520"}}}});
  NewBikeDialog dialog({{QStringLiteral("weighed"), sample}});
  dialog.findChild<QComboBox*>()->setCurrentIndex(1);
  ASSERT_TRUE(dialog.profile());
  EXPECT_EQ(dialog.profile()->stock, sample.stock) << "the same teeth are the same sprockets";
  for (auto* caption : dialog.findChildren<QLabel*>())
    if (caption->text() == "&Rear teeth") dynamic_cast<QLineEdit&>(*caption->buddy()).setText("47");
  const auto made = dialog.profile();
  ASSERT_TRUE(made && made->stock.options.rearSprocket);
  EXPECT_EQ(made->stock.rearTeeth.count(), 47);
  EXPECT_EQ(made->stock.options.rearSprocket->massKg, std::nullopt) << "weighed on the sample's 43";
  EXPECT_EQ(made->stock.options.rearSprocket->size, std::nullopt);
  EXPECT_EQ(made->stock.options.rearSprocket->material, SprocketMaterial::Steel);
  EXPECT_EQ(made->stock.options.frontSprocket, sample.stock.options.frontSprocket) << "the front one stays";
}

TEST_F(NewBikeDialogTest, ARevLimitBelowTheSamplesShiftPointIsExplained) {
  const auto shifting = std::find_if(ui::samples().begin(), ui::samples().end(), [](const auto& sample) {
    return sample.second.bike.engine.shiftRpm.has_value();
  });
  ASSERT_NE(shifting, ui::samples().end());
  startFrom(shifting->first);
  line("Rev limit").setText(QString::number(*shifting->second.bike.engine.shiftRpm - 100));
  EXPECT_FALSE(canCreate());
  EXPECT_TRUE(says("Shift point")) << "in the user's words";
}

TEST_F(NewBikeDialogTest, TakesTeethAsTheTradeWritesThem) {
  fill();
  for (const char* pair : {"27/16", "27:16", "27-16", " 27 / 16 ", "27–16"}) {
    line("Primary").setText(QString::fromUtf8(pair));
    line("Gear ratios").setText(QString::fromUtf8(pair) + " 1.2");
    ASSERT_TRUE(canCreate()) << pair;
    EXPECT_EQ(dialog_.profile()->stock.primaryRatio, 1.6875) << pair;
    EXPECT_THAT(dialog_.profile()->stock.gearRatios.values(), testing::ElementsAre(1.6875, 1.2)) << pair;
    EXPECT_EQ(dialog_.profile()->stock.options.primaryTeeth, (GearTeeth{16, 27})) << pair;
    EXPECT_EQ(teethOf(dialog_.profile()->stock.options.gearTeeth, 0), (GearTeeth{16, 27})) << pair;
  }
  for (const char* pair : {"27/0", "0/16", "27/", "/16", "27.5/16", "27/16/2", "1000/16"}) {
    line("Primary").setText(pair);
    EXPECT_FALSE(canCreate()) << pair;
    EXPECT_TRUE(says("Primary ratio")) << pair;
  }
}

TEST_F(NewBikeDialogTest, ARevLimitMayHaveItsUnitAndNoOther) {
  fill();
  line("Rev limit").setText("11200 rpm");
  ASSERT_TRUE(canCreate());
  EXPECT_EQ(dialog_.profile()->bike.engine.revLimitRpm, 11200);
  line("Rev limit").setText("11200 mph");
  EXPECT_FALSE(canCreate());
  EXPECT_TRUE(says("Rev limit, rpm"));
}

TEST_F(NewBikeDialogTest, TeethAndTyreAloneMakeABike) {
  line("Name").setText("Nipper");
  line("Front").setText("15");
  line("Rear teeth").setText("45");
  line("Rear tyre").setText("180/55ZR17");
  ASSERT_TRUE(canCreate());
  const auto made = dialog_.profile();
  EXPECT_EQ(made->bike.engine.revLimitRpm, std::nullopt);
  EXPECT_TRUE(made->stock.gearRatios.empty());
  EXPECT_TRUE(same(profileFrom(writeProfile(*made)), *made));
  line("Gear ratios").setText("5000@110");
  ASSERT_TRUE(dialog_.profile()) << "a reading needs neither primary ratio nor rev limit";
  EXPECT_EQ(dialog_.profile()->stock.gearRatios.count(), 1u);
}

TEST_F(NewBikeDialogTest, AClassOfBikeFillsWhatIsOpen) {
  fill();
  EXPECT_FALSE(dialog_.profile()->bike.chassis) << "left out unless somebody asks";
  dialog_.findChild<ui::ClassChooser*>()->setCurrentIndex(2);
  const auto made = dialog_.profile();
  ASSERT_TRUE(made && made->bike.chassis);
  EXPECT_EQ(made->bike.bikeClass, BikeClass::Naked);
  EXPECT_EQ(made->bike.chassis->dragAreaM2, 0.50);
  EXPECT_TRUE(isTypical(*made, "bike.chassis.drag_area_m2"));
  EXPECT_TRUE(same(profileFrom(writeProfile(*made)), *made));
}

TEST_F(NewBikeDialogTest, OpensWithTheFocusInTheNameAndTellsHowAReadingIsTyped) {
  showActive(dialog_);
  EXPECT_TRUE(line("Name").hasFocus());
  EXPECT_TRUE(line("Gear ratios").toolTip().contains("5000@110"));
}

TEST_F(NewBikeDialogTest, RevsAtASpeedStandInForRatios) {
  fill();
  const layshaft::Setup known = dialog_.profile().value().stock;
  QStringList readings;
  const Gearing geared = gearing(known, {.revLimitRpm = 12500});
  for (const GearFigures& gear : geared.gears)
    readings << QStringLiteral("%1@60").arg(geared.rollout.rpm(60 / 3.6, gear.overallRatio), 0, 'f', 1);
  line("Gear ratios").setText(readings.join(' '));
  ASSERT_TRUE(canCreate());
  EXPECT_THAT(dialog_.profile()->stock.gearRatios.values(),
              testing::Pointwise(testing::DoubleNear(0.0005), known.gearRatios.values()));
  line("Primary").clear();
  ASSERT_TRUE(canCreate()) << "folded into the gears";
  EXPECT_EQ(dialog_.profile()->stock.primaryRatio, 1.0);
  EXPECT_NEAR(dialog_.profile()->stock.gearRatios[0], known.primaryRatio * known.gearRatios[0], 0.0005);
  line("Gear ratios").setText("5000@110");
  ASSERT_TRUE(canCreate()) << "one reading is enough";
  const double inKmh = dialog_.profile()->stock.gearRatios[0];
  line("Gear ratios").setText("5000 rpm @ 110 km/h");
  ASSERT_TRUE(canCreate());
  EXPECT_EQ(dialog_.profile()->stock.gearRatios[0], inKmh);
  line("Gear ratios").setText("5000@68.35mph");
  ASSERT_TRUE(canCreate());
  EXPECT_NEAR(dialog_.profile()->stock.gearRatios[0], inKmh, 0.0005);
}

TEST_F(NewBikeDialogTest, AReadingThatIsNoneIsExplained) {
  fill();
  for (const char* reading : {"5000@", "@110", "5000@0", "100@110", "5000@110@2", "5000@fast", "5000@900"}) {
    line("Gear ratios").setText(reading);
    EXPECT_FALSE(canCreate()) << reading;
    EXPECT_TRUE(says(QStringLiteral("“%1”").arg(reading))) << reading;
    EXPECT_TRUE(says("5000@110")) << reading;
  }
  line("Gear ratios").setText("5000@110");
  line("Rear tyre").clear();
  EXPECT_FALSE(canCreate());
  EXPECT_TRUE(says("Rear tyre")) << "without it a reading is no ratio";
}

TEST_F(NewBikeDialogTest, EscapeAsksBeforeWhatWasTypedIsLost) {
  showActive(dialog_);
  QTest::keyClick(&dialog_, Qt::Key_Escape);
  EXPECT_FALSE(dialog_.isVisible()) << "nothing was typed";
  showActive(dialog_);
  startFrom(ui::samples().front().first);
  QTest::keyClick(&dialog_, Qt::Key_Escape);
  EXPECT_FALSE(dialog_.isVisible()) << "a sample is soon chosen again";
  showActive(dialog_);
  QTest::keyClicks(&line("Name"), "Nipper");
  {
    DialogAnswer stay;
    QTest::keyClick(&dialog_, Qt::Key_Escape);
    EXPECT_TRUE(stay.seen());
    EXPECT_TRUE(dialog_.isVisible());
  }
  DialogAnswer discard(press(QMessageBox::Discard));
  QTest::keyClick(&dialog_, Qt::Key_Escape);
  EXPECT_FALSE(dialog_.isVisible());
}

TEST_F(NewBikeDialogTest, OnlyTheLinesOfTheDriveChosenAreThere) {
  showActive(dialog_);
  QComboBox* drive = nullptr;
  for (auto* box : dialog_.findChildren<QComboBox*>())
    if (box->findText("Toothed belt") >= 0) drive = box;
  ASSERT_TRUE(drive);
  drive->setCurrentText("Chain 520");
  EXPECT_TRUE(line("Links").isVisible());
  EXPECT_FALSE(line("Belt pitch").isVisible());
  EXPECT_FALSE(line("Belt teeth").isVisible());
  drive->setCurrentText("Toothed belt");
  EXPECT_FALSE(line("Links").isVisible());
  EXPECT_TRUE(line("Belt pitch").isVisible());
}

TEST_F(NewBikeDialogTest, ChainOrBeltIsTakenIfItIsKnown) {
  fill();
  auto& drive = *dialog_.findChildren<QComboBox*>()[1];
  const SetupOptions typed{.primaryTeeth = GearTeeth{36, 76},
                           .gearTeeth = {std::nullopt, std::nullopt, GearTeeth{20, 35}}};
  EXPECT_EQ(dialog_.profile()->stock.options, typed) << "nothing is made up";
  drive.setCurrentText("Chain 525");
  line("Links").setText("114");
  ASSERT_TRUE(canCreate());
  EXPECT_EQ(dialog_.profile()->stock.options.chainSize, chainSize("525"));
  EXPECT_EQ(dialog_.profile()->stock.options.links, 114);
  for (const char* links : {"12", "114.5", "many"}) {
    line("Links").setText(links);
    EXPECT_FALSE(canCreate()) << links;
    EXPECT_TRUE(says("Links:")) << links;
  }
  drive.setCurrentText("Toothed belt");
  line("Belt pitch").setText("14");
  line("Belt teeth").setText("133");
  ASSERT_TRUE(canCreate()) << "the links are not the belt's";
  const SetupOptions belt = dialog_.profile()->stock.options;
  EXPECT_EQ(belt.finalDrive, FinalDrive::Belt);
  EXPECT_EQ(belt.beltPitchMm, 14);
  EXPECT_EQ(belt.beltTeeth, 133);
  EXPECT_EQ(belt.links, std::nullopt);
  line("Belt pitch").setText("1");
  EXPECT_FALSE(canCreate());
  EXPECT_TRUE(says("Belt pitch:"));
}

TEST_F(NewBikeDialogTest, AUsualCruiseSpeedIsOfferedInTheUnitsShown) {
  fill();
  EXPECT_EQ(dialog_.profile()->cruiseSpeedKmh, 110);
  line("Cruise").clear();
  EXPECT_EQ(dialog_.profile()->cruiseSpeedKmh, std::nullopt);
  line("Cruise").setText("60 mph");
  EXPECT_NEAR(dialog_.profile()->cruiseSpeedKmh.value(), 96.56064, 1e-5);
  line("Cruise").setText("2");
  EXPECT_FALSE(canCreate());
  EXPECT_TRUE(says("Cruise speed:"));
  for (const double kept : {0.0, 101.3}) {
    Profile sample = workedExample();
    sample.cruiseSpeedKmh = kept > 0 ? std::optional(kept) : std::nullopt;
    NewBikeDialog imperial({{QStringLiteral("sample"), sample}}, nullptr,
                           ui::UnitsShown(ui::UnitSystem::Imperial));
    imperial.findChild<QComboBox*>()->setCurrentIndex(1);
    ASSERT_TRUE(imperial.profile() && imperial.profile()->cruiseSpeedKmh);
    if (kept > 0)
      EXPECT_EQ(imperial.profile()->cruiseSpeedKmh, kept) << "no digit of a sample's is lost";
    else
      EXPECT_NEAR(*imperial.profile()->cruiseSpeedKmh, 112.65408, 1e-5) << "70 mph";
  }
}

}  // namespace
}  // namespace layshaft::test
