// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/new_bike_dialog.h"

#include <QComboBox>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

#include "tests/ui/support.h"
#include "ui/document/samples.h"

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
      {"Gear ratios", "", "Gear ratios"},
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

}  // namespace
}  // namespace layshaft::test
