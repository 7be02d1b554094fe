// SPDX-License-Identifier: GPL-3.0-or-later
//
// Typical values of a class of bike in Bike Details, on the pages and in the report.
#include "core/bike/typical_bike.h"

#include <QLabel>

#include "tests/ui/support.h"
#include "ui/editors/bike_details.h"
#include "ui/editors/class_chooser.h"
#include "ui/words/picture_words.h"
#include "ui/words/pull_notes.h"
#include "ui/words/road_words.h"
#include "ui/words/text_report.h"

namespace layshaft::test {
namespace {

class TypicalValues : public testing::Test {
 protected:
  TypicalValues() {
    details_.refresh(ui::UnitsShown(ui::UnitSystem::Metric));
    QObject::connect(&document_, &ui::Document::changed, &details_,
                     [this] { details_.refresh(ui::UnitsShown(ui::UnitSystem::Metric)); });
  }
  void choose(int index) {
    auto& chooser = *details_.findChild<ui::ClassChooser*>();
    chooser.setCurrentIndex(index);
    emit chooser.activated(index);
  }
  int marks(const QString& words) {
    int count = 0;
    for (auto* label : details_.findChildren<QLabel*>())
      count += !label->isHidden() && label->text() == words;
    return count;
  }
  const Profile& profile() { return document_.profile(); }

  ui::Document document_{bike({{"/bike/chassis/mass_kg", 187}})};
  ui::BikeDetails details_{document_};
};

TEST_F(TypicalValues, AreTakenOverInOneStepAndMarked) {
  const Profile before = profile();
  choose(2);
  EXPECT_EQ(profile().bike.bikeClass, BikeClass::Naked);
  EXPECT_EQ(profile().bike.chassis->massKg, 187) << "what is given stays";
  EXPECT_EQ(document_.undoStack().count(), 1);
  EXPECT_EQ(document_.undoStack().undoText(), "Take Over Typical Values");
  EXPECT_EQ(marks("Typical: naked bike"), 4) << "drag area, rolling, efficiency, grip";
  document_.undoStack().undo();
  EXPECT_TRUE(same(profile(), before));
  EXPECT_EQ(marks("Typical: naked bike"), 0);
}

TEST_F(TypicalValues, TheMarkGoesWithTheFirstOwnValue) {
  choose(2);
  auto& area = control<QDoubleSpinBox>(details_, "Drag area");
  area.setValue(0.47);
  EXPECT_EQ(profile().bike.chassis->dragAreaM2, 0.47);
  EXPECT_EQ(marks("Typical: naked bike"), 3);
}

TEST_F(TypicalValues, PagesAndReportSayWhatRestsOnThem) {
  choose(2);
  const Plan typical = plan(profile());
  const ui::UnitsShown units(ui::UnitSystem::Metric);
  const QString words = ui::typicalWords(*typical.pullBike, units);
  EXPECT_TRUE(words.startsWith("Typical values, not measured: the drag area 0.5")) << words.toStdString();
  EXPECT_TRUE(ui::pullNotes(typical, units).contains(words));
  EXPECT_TRUE(ui::textReport(typical, units).contains(words));
  EXPECT_TRUE(ui::pictureCaption(typical, true).contains("typical of the class")) << "saved pictures";
  EXPECT_FALSE(ui::pictureCaption(typical, false).contains("typical of the class"))
      << "nothing of it in gearing";
  EXPECT_TRUE(ui::typicalWords(*plan(bike()).pullBike, units).isEmpty());
}

}  // namespace
}  // namespace layshaft::test
