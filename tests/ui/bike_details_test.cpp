// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/bike_details.h"

#include <QAction>
#include <QClipboard>
#include <QLabel>
#include <QLineEdit>
#include <QMenu>
#include <QPlainTextEdit>
#include <QTabWidget>
#include <QToolButton>
#include <tuple>

#include "tests/ui/support.h"
#include "ui/editors/calm_spin_box.h"
#include "ui/editors/columns_table.h"
#include "ui/words/cautions.h"
#include "ui/words/field_table.h"

namespace layshaft::test {
namespace {

using ui::BikeDetails;
using ui::ColumnsTable;
using ui::DecimalBox;
using ui::UnitsShown;
using ui::UnitSystem;

class BikeDetailsTest : public testing::Test {
 protected:
  BikeDetailsTest() { open(UnitSystem::Metric); }

  void open(UnitSystem system) {
    details_.refresh(UnitsShown(system));
    showActive(details_);
  }
  void use(Profile profile) { document_.load(std::move(profile), QString()); }
  /// Brings the page with a control to the front.
  template <class Control>
  Control& field(const QString& name) {
    auto& found = control<Control>(details_, name);
    auto* tabs = details_.findChild<QTabWidget*>();
    for (int i = 0; i < tabs->count(); ++i)
      if (tabs->widget(i)->isAncestorOf(&found)) tabs->setCurrentIndex(i);
    return found;
  }
  DecimalBox& numberBox(const char* name) {
    return static_cast<DecimalBox&>(field<QDoubleSpinBox>(QString::fromUtf8(name)));
  }
  void paste(const char* table, const QString& text) {
    field<QTableWidget>(QString::fromUtf8(table)).setCurrentCell(0, 0);
    static_cast<ColumnsTable&>(field<QTableWidget>(QString::fromUtf8(table))).pasteText(text);
  }
  /// Types a number and goes on to the next field, which finishes it.
  void enter(const char* name, const QString& text) {
    typeInto(numberBox(name), text);
    QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
    QTest::qWait(5);
  }
  bool says(const QString& words) {
    for (auto* label : details_.findChildren<QLabel*>())
      if (label->text().contains(words)) return true;
    return false;
  }
  const Profile& profile() const { return document_.profile(); }
  int steps() { return document_.undoStack().count(); }

  ui::Document document_{bike()};
  BikeDetails details_{document_};
};

TEST_F(BikeDetailsTest, OpeningItChangesNothing) {
  for (const auto system : {UnitSystem::Imperial, UnitSystem::Mixed, UnitSystem::Metric}) {
    open(system);
    details_.hide();
  }
  EXPECT_TRUE(same(profile(), bike())) << "no block of the profile is made by looking at it";
  EXPECT_EQ(steps(), 0);
}

TEST_F(BikeDetailsTest, ShowingEverySampleInAllUnitsChangesNothing) {
  for (const char* name : {"club-600", "adventure-twin", "enduro-250", "roadster-classic", "tourer-belt"}) {
    const Profile sample = sampleBike(name);
    use(sample);
    for (const auto system : {UnitSystem::Imperial, UnitSystem::Mixed, UnitSystem::Metric})
      details_.refresh(UnitsShown(system));
    EXPECT_TRUE(same(profile(), sample)) << name;
    EXPECT_EQ(steps(), 0) << name;
  }
}

TEST_F(BikeDetailsTest, TabbingThroughEveryFieldChangesNothing) {
  const Profile sample = sampleBike("adventure-twin");
  use(sample);
  for (const auto system : {UnitSystem::Imperial, UnitSystem::Metric}) {
    open(system);
    for (auto* box : details_.findChildren<QAbstractSpinBox*>()) {
      field<QAbstractSpinBox>(box->accessibleName());
      box->setFocus(Qt::TabFocusReason);
      QTest::keyClick(box, Qt::Key_Tab);
    }
    EXPECT_TRUE(same(profile(), sample));
    EXPECT_EQ(steps(), 0) << document_.undoStack().undoText().toStdString();
  }
}

TEST_F(BikeDetailsTest, ATypedNumberIsOneUndoableEdit) {
  enter("Rider", "81.5");
  EXPECT_EQ(profile().bike.chassis.value().riderMassKg, 81.5);
  EXPECT_EQ(steps(), 1);
  document_.undoStack().undo();
  EXPECT_TRUE(same(profile(), bike()));
  EXPECT_TRUE(numberBox("Rider").isNone());
}

TEST_F(BikeDetailsTest, ANumberIsTypedThroughWhatIsTooSmallOnTheWay) {
  // 1 and 17 are below the least mass; 172 is not.
  enter("Mass without rider", "172");
  EXPECT_EQ(profile().bike.chassis.value_or(Chassis{}).massKg, 172);
  enter("Cruise speed", "110");
  EXPECT_EQ(profile().cruiseSpeedKmh, 110);
  enter("Wheelbase", "1385");
  EXPECT_EQ(profile().bike.chassis.value_or(Chassis{}).wheelbaseMm, 1385);
}

TEST_F(BikeDetailsTest, ATooSmallNumberIsNeitherTakenNorLeftStanding) {
  enter("Wheelbase", "13");
  EXPECT_TRUE(same(profile(), bike()));
  EXPECT_TRUE(numberBox("Wheelbase").isNone());
}

TEST_F(BikeDetailsTest, EmptyingAFieldTakesTheValueOut) {
  use(workedExample());
  typeInto(numberBox("Rider"), "");
  QTest::keyClick(&numberBox("Rider"), Qt::Key_Delete);
  QTest::keyClick(&numberBox("Rider"), Qt::Key_Tab);
  EXPECT_EQ(profile().bike.chassis->riderMassKg, std::nullopt);
  EXPECT_EQ(profile().bike.chassis->massKg, 172);
}

TEST_F(BikeDetailsTest, ImperialNumbersAreKeptInTheUnitsOfTheFile) {
  open(UnitSystem::Imperial);
  enter("Wheelbase", "54.5");
  EXPECT_NEAR(profile().bike.chassis.value_or(Chassis{}).wheelbaseMm.value_or(0), 1384.3, 1e-6);
  enter("Mass without rider", "380");
  EXPECT_NEAR(profile().bike.chassis.value_or(Chassis{}).massKg.value_or(0), 172.365101, 1e-6);
}

TEST_F(BikeDetailsTest, SteppingAFieldThatIsNotGivenStartsSensibly) {
  for (const auto system : {UnitSystem::Imperial, UnitSystem::Metric}) {
    use(bike());
    open(system);
    for (const char* name : {"Countershaft above pivot", "Headwind", "Wheelbase", "Slope"}) {
      auto& box = numberBox(name);
      EXPECT_TRUE(box.isNone()) << name;
      box.setFocus(Qt::TabFocusReason);
      QTest::keyClick(&box, Qt::Key_Up);
      EXPECT_FALSE(box.isNone()) << name;
      EXPECT_GT(box.value(), 0) << name;
    }
  }
}

TEST_F(BikeDetailsTest, AConflictIsRefusedWithWordsAndTheBoxGoesBack) {
  use(bike({{"/bike/engine/rev_limit_rpm", 5000}, {"/bike/engine/idle_rpm", 1200}}));
  enter("Idle speed", "6000");
  EXPECT_TRUE(says("6,000 is out of range"));
  EXPECT_EQ(profile().bike.engine.idleRpm, 1200);
  EXPECT_EQ(numberBox("Idle speed").value(), 1200);
  EXPECT_EQ(steps(), 0);
}

TEST_F(BikeDetailsTest, ANumberOutsideItsLimitsIsRefusedWithWordsAndTheBoxGoesBack) {
  use(workedExample());
  enter("Wheelbase", "13850");
  EXPECT_TRUE(says("Wheelbase") && says("500 to 3,000"));
  EXPECT_EQ(profile().bike.chassis->wheelbaseMm, 1385);
  EXPECT_EQ(numberBox("Wheelbase").value(), 1385);
  EXPECT_EQ(steps(), 0);
}

TEST_F(BikeDetailsTest, ChoosingWhatIsChosenAlreadyLeavesNoTrace) {
  for (const char* name : {"Sensor", "Surface", "Curve measured at", "Final drive"}) {
    auto& box = field<QComboBox>(name);
    emit box.activated(0);
    EXPECT_EQ(steps(), 0) << name;
    EXPECT_TRUE(same(profile(), bike())) << name;
  }
}

TEST_F(BikeDetailsTest, AChoiceIsUndoable) {
  auto& box = field<QComboBox>("Sensor");
  box.setFocus();
  QTest::keyClick(&box, Qt::Key_Down);
  EXPECT_EQ(profile().bike.speedometer.value().sensor, SpeedSensor::GearboxOutput);
  EXPECT_EQ(document_.undoStack().undoText(), "Sensor Not known → Gearbox output");
  document_.undoStack().undo();
  EXPECT_TRUE(same(profile(), bike()));
  EXPECT_EQ(box.currentIndex(), 0);
}

TEST_F(BikeDetailsTest, AWeighedSprocketIsKeptAndTakenOutAgain) {
  enter("Proposed rear: mass", "0.44");
  ASSERT_TRUE(profile().proposed.options.rearSprocket);
  EXPECT_EQ(profile().proposed.options.rearSprocket->massKg, 0.44);
  auto& material = field<QComboBox>("Proposed rear: material");
  material.setFocus();
  QTest::keyClick(&material, Qt::Key_Down);
  QTest::keyClick(&material, Qt::Key_Down);
  EXPECT_EQ(profile().proposed.options.rearSprocket->material, SprocketMaterial::Aluminium);
  auto& size = field<QComboBox>("Proposed rear: cut for");
  size.setFocus();
  QTest::keyClick(&size, Qt::Key_End);
  EXPECT_EQ(profile().proposed.options.rearSprocket->size, chainSize("530"));
  typeInto(numberBox("Proposed rear: mass"), "");
  QTest::keyClick(&numberBox("Proposed rear: mass"), Qt::Key_Delete);
  QTest::keyClick(&numberBox("Proposed rear: mass"), Qt::Key_Tab);
  EXPECT_EQ(profile().proposed.options.rearSprocket->massKg, std::nullopt) << "taken out, the rest stays";
  EXPECT_EQ(profile().proposed.options.rearSprocket->material, SprocketMaterial::Aluminium);
}

TEST_F(BikeDetailsTest, ABadRowOfSparesLosesNothing) {
  paste("Front sprockets or pulleys", "15\t520\n4\t520\n16\t520");
  EXPECT_TRUE(says("Front sprockets or pulleys, row 2: “4” is not understood"));
  ASSERT_EQ(profile().sparesBox.value().front.size(), 2u) << "the others are taken";
  paste("Chains", "520\t116\tgold");
  EXPECT_TRUE(says("“gold” is not understood"));
  EXPECT_TRUE(says("“4” is not understood")) << "one message does not hide another";
  paste("Rear sprockets or pulleys", "43\t520");
  EXPECT_EQ(profile().sparesBox->rear.size(), 1u);
  details_.hide();
  open(UnitSystem::Metric);
  EXPECT_EQ(field<QTableWidget>("Front sprockets or pulleys").item(1, 0)->text(), "4")
      << "it is still there to be mended";
  EXPECT_EQ(field<QTableWidget>("Chains").item(0, 2)->text(), "gold");
  EXPECT_TRUE(says("“gold” is not understood")) << "and it is still said why";
}

TEST_F(BikeDetailsTest, ASpareStaysInTheBoxWhileItsRowIsMistyped) {
  Profile sample = workedExample();
  sample.sparesBox.emplace().rear = {{.teeth = 43, .extras = {{"shelf", "7"}}}, {.teeth = 45}};
  use(sample);
  auto& table = field<QTableWidget>("Rear sprockets or pulleys");
  table.item(0, 0)->setText("4x");
  EXPECT_TRUE(says("the box keeps what was there"));
  EXPECT_TRUE(same(profile(), sample));
  table.item(0, 0)->setText("43");
  EXPECT_TRUE(same(profile(), sample)) << "with all it had";
}

TEST_F(BikeDetailsTest, GearsStayInTheBoxWhileSprocketsAreEdited) {
  Profile sample = workedExample();
  sample.sparesBox.emplace().gearPairs = {{.gear = 2, .driving = 17, .driven = 33}};
  use(sample);
  paste("Rear sprockets or pulleys", "45");
  ASSERT_EQ(profile().sparesBox.value().rear.size(), 1u);
  EXPECT_TRUE(profile().sparesBox->gearPairs == sample.sparesBox->gearPairs);
}

TEST_F(BikeDetailsTest, HalfTypedSparesGoWithTheBike) {
  paste("Chains", "520\t112\n520\tmany");
  EXPECT_TRUE(says("many"));
  const Profile another = profile();
  use(another);
  details_.refresh(UnitsShown());
  EXPECT_EQ(static_cast<ColumnsTable&>(field<QTableWidget>("Chains")).rows().size(), 1u);
  EXPECT_FALSE(says("many"));
}

TEST_F(BikeDetailsTest, UndoneSparesAreShownAsTheyAre) {
  paste("Rear sprockets or pulleys", "43\n4x\n45");
  ASSERT_EQ(profile().sparesBox->rear.size(), 2u);
  document_.undoStack().undo();
  EXPECT_FALSE(profile().sparesBox);
  EXPECT_TRUE(static_cast<ColumnsTable&>(field<QTableWidget>("Rear sprockets or pulleys")).rows().empty());
  paste("Chains", "520\t116");
  EXPECT_TRUE(profile().sparesBox->rear.empty()) << "what was undone does not come back";
}

TEST_F(BikeDetailsTest, ASprocketOfWhichNothingIsSaidFollowsStock) {
  auto& material = field<QComboBox>("Proposed front: material");
  material.setFocus();
  QTest::keyClick(&material, Qt::Key_Down);
  EXPECT_TRUE(profile().proposed.options.frontSprocket);
  QTest::keyClick(&material, Qt::Key_Up);
  EXPECT_FALSE(profile().proposed.options.frontSprocket) << "no empty one is left behind";
}

TEST_F(BikeDetailsTest, StocksChainIsTyped) {
  auto& size = field<QComboBox>("Chain size");
  size.setFocus();
  QTest::keyClick(&size, Qt::Key_End);
  EXPECT_EQ(profile().stock.options.chainSize, chainSize("530"));
  enter("Links", "112");
  EXPECT_EQ(profile().stock.options.links, 112);
}

TEST_F(BikeDetailsTest, BeltLengthsAreAListInOneLine) {
  use(bike({{"/stock/final_drive", "belt"}}));
  auto& lengths = field<QLineEdit>("Available belt lengths");
  typeInto(lengths, "139, 146 149");
  QTest::keyClick(&lengths, Qt::Key_Return);
  EXPECT_EQ(profile().bike.chainRun.value().beltLengthsTeeth, (std::vector<int>{139, 146, 149}));
  typeInto(lengths, "139 9 149");
  QTest::keyClick(&lengths, Qt::Key_Return);
  EXPECT_EQ(profile().bike.chainRun->beltLengthsTeeth.size(), 3u);
  EXPECT_TRUE(says("Available belt lengths"));
  EXPECT_EQ(lengths.text(), "139 9 149") << "to be mended";
  typeInto(lengths, "");
  QTest::keyClick(&lengths, Qt::Key_Backspace);
  QTest::keyClick(&lengths, Qt::Key_Return);
  EXPECT_TRUE(profile().bike.chainRun->beltLengthsTeeth.empty());
}

TEST_F(BikeDetailsTest, OfChainAndBeltThereIsWhatTheBikeHas) {
  const auto inView = [&](const char* key) {
    auto& found = control<QWidget>(details_, ui::fieldLabel(key));
    return !found.isHidden();
  };
  const char* const chain[] = {"stock.chain_size", "stock.links", "stock.chain_elongation_percent",
                               "stock.front_sprocket.size", "stock.rear_sprocket.size"};
  const char* const belt[] = {"stock.belt_pitch_mm", "stock.belt_teeth", "bike.chain_run.belt_lengths_teeth"};
  for (const bool belts : {false, true}) {
    use(bike({{"/stock/final_drive", belts ? "belt" : "chain"}}));
    for (const char* key : chain) EXPECT_EQ(inView(key), !belts) << key;
    for (const char* key : belt) EXPECT_EQ(inView(key), belts) << key;
  }
  use(bike({{"/proposed/final_drive", "belt"}}));
  EXPECT_TRUE(inView("stock.links") && inView("proposed.belt_teeth"));
  EXPECT_TRUE(inView("bike.chain_run.belt_lengths_teeth")) << "for the proposal";
  EXPECT_FALSE(inView("stock.belt_teeth") || inView("proposed.links"));
}

TEST_F(BikeDetailsTest, WhatTheFileHoldsOfTheOtherKindIsKept) {
  const Profile both =
      bike({{"/stock/final_drive", "belt"}, {"/stock/links", 112}, {"/stock/belt_teeth", 139}});
  use(both);
  EXPECT_TRUE(same(profile(), both));
  auto& drive = field<QComboBox>("Final drive");
  drive.setFocus();
  QTest::keyClick(&drive, Qt::Key_Up);
  EXPECT_FALSE(numberBox("Links").isHidden());
  EXPECT_EQ(numberBox("Links").value(), 112);
  EXPECT_EQ(profile().stock.options.beltTeeth, 139);
}

TEST_F(BikeDetailsTest, TheWheelWithoutFocusChangesNothing) {
  use(workedExample());
  const Profile before = profile();
  details_.findChild<QTabWidget*>()->setFocus();
  for (auto* box : details_.findChildren<QAbstractSpinBox*>()) turnWheel(*box->findChild<QLineEdit*>());
  for (auto* box : details_.findChildren<QComboBox*>()) turnWheel(*box, -1);
  EXPECT_TRUE(same(profile(), before));
}

TEST_F(BikeDetailsTest, APastedCurveIsTaken) {
  paste("Torque curve", "4000\t41,5\n8000\t57\n12000\t50");
  ASSERT_TRUE(profile().bike.engine.torqueCurve);
  EXPECT_EQ(profile().bike.engine.torqueCurve->points().size(), 3u);
  EXPECT_EQ(profile().bike.engine.torqueCurve->points()[0].torqueNm, 41.5);
  EXPECT_TRUE(says("3 points read"));
  document_.undoStack().undo();
  EXPECT_TRUE(same(profile(), bike()));
}

TEST_F(BikeDetailsTest, ACurvePastedWithItsTitlesIsTaken) {
  paste("Torque curve", "rpm;Nm\n4000;41,5\n8000;57");
  ASSERT_TRUE(profile().bike.engine.torqueCurve);
  EXPECT_EQ(profile().bike.engine.torqueCurve->points().size(), 2u);
}

TEST_F(BikeDetailsTest, AWrongCurveLeavesTheOldOneAndSaysWhichRow) {
  paste("Torque curve", "4000\t41\n8000\t57");
  const auto before = profile().bike.engine.torqueCurve;
  paste("Torque curve", "4000\t41\n3000\t57\n5000\t50");
  EXPECT_EQ(profile().bike.engine.torqueCurve, before);
  EXPECT_TRUE(says("3,000 must be above"));
  paste("Torque curve", "4000\t41\nfast\t57");
  EXPECT_TRUE(says("Row 2"));
}

TEST_F(BikeDetailsTest, SparesArePastedAndReadBack) {
  paste("Rear sprockets or pulleys", "45\t520\taluminium\t0,41\tused\n47");
  ASSERT_TRUE(profile().sparesBox);
  ASSERT_EQ(profile().sparesBox->rear.size(), 2u);
  EXPECT_EQ(profile().sparesBox->rear[0].teeth, 45);
  EXPECT_EQ(profile().sparesBox->rear[0].massKg, 0.41);
  EXPECT_EQ(profile().sparesBox->rear[0].state, SpareState::Used);
  paste("Chains", "520 112");
  EXPECT_EQ(profile().sparesBox->chains.at(0).links, 112);
  paste("Front sprockets or pulleys", "5");
  EXPECT_TRUE(says("6 to 48"));
  EXPECT_TRUE(profile().sparesBox->front.empty());
}

TEST_F(BikeDetailsTest, SpareGearsArePastedAndKeptBesideOtherSpares) {
  paste("Gears", "2\t17\t33\tfrom the box\nprimary\t36\t76\n0\t35\t77");
  ASSERT_TRUE(profile().sparesBox);
  const auto& gears = profile().sparesBox->gearPairs;
  ASSERT_EQ(gears.size(), 3u);
  EXPECT_EQ(gears[0], (SpareGearPair{.gear = 2, .driving = 17, .driven = 33, .note = "from the box"}));
  EXPECT_EQ(gears[1], (SpareGearPair{.gear = 0, .driving = 36, .driven = 76}));
  EXPECT_EQ(gears[2].gear, 0);
  paste("Chains", "520 112");
  EXPECT_EQ(profile().sparesBox->gearPairs.size(), 3u) << "one table does not empty another";
  paste("Gears", "2\t17\t33\n11\t20\t30\n3\t0\t30");
  EXPECT_TRUE(says("Gears, row 2: “11” is not understood; expected a gear from 1 to 10, or “primary”"));
  EXPECT_TRUE(says("Gears, row 3: “0” is not understood"));
}

TEST_F(BikeDetailsTest, TwoPastesOfSparesAreTwoSteps) {
  paste("Rear sprockets or pulleys", "45\n47");
  paste("Rear sprockets or pulleys", "43\n44");
  EXPECT_EQ(steps(), 2);
  document_.undoStack().undo();
  EXPECT_EQ(profile().sparesBox.value().rear.at(0).teeth, 45);
}

TEST_F(BikeDetailsTest, AMaterialIsTakenUnderItsUsualNames) {
  paste("Rear sprockets or pulleys",
        "45\t\tAlu\n46\t\taluminum\n47\t\tALLOY\n48\t\tHardened Steel\n49\t\talu.");
  ASSERT_EQ(profile().sparesBox.value_or(SparesBox{}).rear.size(), 5u);
  for (const std::size_t at : {0u, 1u, 2u, 4u})
    EXPECT_EQ(profile().sparesBox->rear[at].material, SprocketMaterial::Aluminium) << at;
  EXPECT_EQ(profile().sparesBox->rear[3].material, SprocketMaterial::Steel);
}

TEST_F(BikeDetailsTest, NameAndNotesAreEdits) {
  typeInto(field<QLineEdit>("Name"), "Nipper");
  EXPECT_EQ(profile().name, "Nipper");
  typeInto(field<QPlainTextEdit>("Notes"), "Left-hand thread.");
  EXPECT_EQ(profile().notes, "Left-hand thread.");
  EXPECT_EQ(steps(), 2);
}

TEST_F(BikeDetailsTest, TheWayToAMissingFieldEndsInIt) {
  details_.resize(700, 260);  // too low for the chassis: its last field lies below
  const std::pair<const char*, const char*> fields[] = {{"bike.chassis.mass_kg", "Mass without rider"},
                                                        {"bike.chassis.tyre_grip", "Tyre grip"},
                                                        {"stock.links", "Links"},
                                                        {"proposed.belt_teeth", "Proposed: belt teeth"},
                                                        {"proposed.links", "Proposed: links"},
                                                        {"stock.chain_size", "Chain size"}};
  for (const auto& [key, name] : fields) {
    details_.findChild<QTabWidget*>()->setCurrentIndex(0);
    details_.showFieldsFor(key);
    QWidget* focus = QApplication::focusWidget();
    ASSERT_TRUE(focus) << key;
    EXPECT_TRUE(isNamed(*focus, name)) << focus->accessibleName().toStdString();
    QTest::qWait(20);
    EXPECT_TRUE(details_.rect().contains(QRect(focus->mapTo(&details_, QPoint()), focus->size()))) << key;
    EXPECT_FALSE(focus->visibleRegion().isEmpty()) << key;
  }
}

TEST_F(BikeDetailsTest, TheWayToAMissingCurveEndsInItsFirstCell) {
  details_.showFieldsFor("bike.engine.torque_curve");
  auto& table = control<QTableWidget>(details_, "Torque curve");
  EXPECT_TRUE(table.hasFocus() && table.isVisible());
  EXPECT_EQ(table.currentRow(), 0);
  EXPECT_EQ(table.currentColumn(), 0);
}

TEST_F(BikeDetailsTest, ALimitShownInAnotherUnitIsStillAllowed) {
  open(UnitSystem::Imperial);
  enter("Rider", "661.39");  // 300 kg are 661.3868 lb
  EXPECT_EQ(profile().bike.chassis.value_or(Chassis{}).riderMassKg, 300);
  EXPECT_TRUE(readProfile(writeProfile(profile()))) << "what is saved can be opened";
}

TEST_F(BikeDetailsTest, AYesOrNoIsChosen) {
  auto& box = field<QComboBox>("Torque falls in thin air");
  box.setFocus();
  QTest::keyClick(&box, Qt::Key_End);
  EXPECT_EQ(profile().bike.engine.torqueFollowsAir, false);
  EXPECT_EQ(document_.undoStack().undoText(), "Torque falls in thin air Yes (usual) → No");
  QTest::keyClick(&box, Qt::Key_Home);
  EXPECT_EQ(profile().bike.engine.torqueFollowsAir, std::nullopt);
}

TEST_F(BikeDetailsTest, WhatIsTypicalIsToldInTheUnitsShown) {
  EXPECT_TRUE(numberBox("Wheelbase").toolTip().contains("1,250 to 1,720 mm"))
      << numberBox("Wheelbase").toolTip().toStdString();
  open(UnitSystem::Imperial);
  EXPECT_TRUE(numberBox("Wheelbase").toolTip().contains("49.2 to 67.7 in"))
      << numberBox("Wheelbase").toolTip().toStdString();
}

TEST_F(BikeDetailsTest, TheFiguresOfASurfaceAreThoseOfTheOneChosen) {
  auto& surface = field<QComboBox>("Surface");
  surface.setFocus();
  QTest::keyClick(&surface, Qt::Key_End);
  enter("Surface grip", "0.55");
  EXPECT_EQ(profile().ride.value().surfaces.at(Surface::Sand).grip, 0.55);
  QTest::keyClick(&surface, Qt::Key_Home);
  EXPECT_TRUE(numberBox("Surface grip").isNone()) << "asphalt has its own";
}

TEST_F(BikeDetailsTest, AsphaltIsOneChoiceWhicheverWayTheFileSaysIt) {
  auto& surface = field<QComboBox>("Surface");
  EXPECT_EQ(surface.count(), 5);
  EXPECT_EQ(surface.findText("Asphalt"), 0);
  const int steps = document_.undoStack().count();
  document_.edit({.field = "surface", .title = "surface", .shown = {}}, [](Profile& p) {
    if (!p.ride) p.ride.emplace();
    p.ride->surface = Surface::Asphalt;
  });
  const auto chosen = [&] { return profile().ride ? profile().ride->surface : std::nullopt; };
  details_.refresh(ui::UnitsShown());
  EXPECT_EQ(surface.currentText(), "Asphalt");
  surface.setFocus();
  QTest::keyClick(&surface, Qt::Key_Home);
  emit surface.activated(0);
  EXPECT_EQ(chosen(), Surface::Asphalt) << "choosing what is chosen changes nothing";
  EXPECT_EQ(document_.undoStack().count(), steps + 1);
  QTest::keyClick(&surface, Qt::Key_End);
  EXPECT_EQ(chosen(), Surface::Sand);
  QTest::keyClick(&surface, Qt::Key_Home);
  EXPECT_EQ(chosen(), std::nullopt);
}

TEST_F(BikeDetailsTest, ACautionIsAsPlainToSeeAsAField) {
  for (const auto caution : {ui::Caution::Hands, ui::Caution::GearboxSensor}) {
    const QString words = ui::cautionText(caution, false);
    const auto labels = details_.findChildren<QLabel*>();
    const auto label =
        std::find_if(labels.begin(), labels.end(), [&](auto* l) { return l->text() == words; });
    ASSERT_NE(label, labels.end()) << words.toStdString();
    EXPECT_EQ((*label)->foregroundRole(), QPalette::WindowText);
  }
}

TEST_F(BikeDetailsTest, EnterInAFieldDoesNotCloseIt) {
  auto& box = numberBox("Rider");
  typeInto(box, "81");
  QTest::keyClick(&box, Qt::Key_Return);
  EXPECT_TRUE(details_.isVisible());
}

TEST_F(BikeDetailsTest, NamesOfNumbersCarryTheUnitThatIsShown) {
  auto& rider = numberBox("Rider");
  EXPECT_EQ(rider.accessibleName(), "Rider, kg");
  open(UnitSystem::Imperial);
  EXPECT_EQ(rider.accessibleName(), "Rider, lb");
  EXPECT_EQ(numberBox("Wheelbase").accessibleName().section(", ", 1), "in");
}

TEST_F(BikeDetailsTest, AUnitMayBeTypedBeforeTheOneThatIsShown) {
  auto& rider = numberBox("Rider");
  const auto type = [&rider](const char* text) {
    rider.setFocus(Qt::TabFocusReason);
    rider.selectAll();  // the number, as Tab does; its unit stays
    QTest::keyClicks(&rider, QString::fromUtf8(text));
    QTest::keyClick(&rider, Qt::Key_Return);
    QTest::qWait(5);
  };
  type("80");
  type("81.5 kg");
  EXPECT_EQ(profile().bike.chassis.value().riderMassKg, 81.5);
  // A pound is 0.45359237 kg exactly since 1959: NIST Special Publication 811, appendix B.
  type("180 lb");
  EXPECT_NEAR(*profile().bike.chassis.value().riderMassKg, 180 * 0.45359237, 0.05);
  EXPECT_EQ(rider.text(), rider.cleanText() + " kg");
  const auto before = profile().bike.chassis.value().riderMassKg;
  type("80 mm");
  EXPECT_EQ(profile().bike.chassis.value().riderMassKg, before);
  EXPECT_TRUE(says("Rider: 80 mm is not a number in kg"));
  QTest::keyClick(&rider, Qt::Key_End);
  QTest::keyClick(&rider, Qt::Key_Backspace);
  QTest::keyClick(&rider, Qt::Key_Return);
  EXPECT_EQ(profile().bike.chassis.value().riderMassKg, before) << "some of its unit deleted is no other one";
}

TEST_F(BikeDetailsTest, EveryFieldHasANameAndATooltip) {
  QWidgetList fields;
  for (auto* box : details_.findChildren<QAbstractSpinBox*>()) fields << box;
  for (auto* box : details_.findChildren<QComboBox*>()) fields << box;
  EXPECT_GT(fields.size(), 40);
  QStringList names;
  for (const QWidget* box : fields) {
    EXPECT_FALSE(box->accessibleName().isEmpty());
    EXPECT_FALSE(box->toolTip().isEmpty()) << box->accessibleName().toStdString();
    names << box->accessibleName();
  }
  EXPECT_EQ(names.removeDuplicates(), 0) << "a name twice would merge two fields' edits into one step";
}

/// The details where they live: beside the window's pages.
class BikeDetailsDockTest : public testing::Test {
 protected:
  BikeDetails& details() { return *window_->findChild<BikeDetails*>(); }
  static QMainWindow& docks(ui::MainWindow& window) {
    return *qobject_cast<QMainWindow*>(window.findChild<BikeDetails*>()->parentWidget());
  }
  QWidget& focus() { return *QApplication::focusWidget(); }
  QAction& action(const QString& text) {
    for (auto* found : window_->findChildren<QAction*>())
      if (found->text().remove('&') == text && !found->shortcut().isEmpty()) return *found;
    throw std::runtime_error("no action " + text.toStdString());
  }
  void key(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) {
    QTest::keyClick(QApplication::focusWidget(), key, modifiers);
  }

  FreshSettings fresh_;
  Window window_{bike()};
};

TEST_F(BikeDetailsDockTest, TheyStandBesideTheChartAndLeaveItInView) {
  const QSize before = window_->minimumSizeHint();
  window_->showDetails();
  QTest::qWait(50);
  EXPECT_EQ(docks(*window_).dockWidgetArea(&details()), Qt::RightDockWidgetArea);
  EXPECT_FALSE(details().isFloating());
  EXPECT_LE(docks(*window_).centralWidget()->geometry().right(), details().geometry().left());
  EXPECT_GE(docks(*window_).centralWidget()->width(), 700);
  EXPECT_EQ(window_->minimumSizeHint(), before) << "the window asks for no more room with them";
  EXPECT_EQ(window_->size(), QSize(1280, 720));
}

TEST_F(BikeDetailsDockTest, TheActionOpensAndCloses) {
  QWidget& before = focus();
  QAction& toggle = action("Bike Details");
  toggle.trigger();
  EXPECT_TRUE(details().isVisible() && details().holdsFocus() && toggle.isChecked());
  toggle.trigger();
  EXPECT_FALSE(details().isVisible() || toggle.isChecked());
  EXPECT_EQ(&focus(), &before);
  window_->showDetails("bike.chassis.rider_mass_kg");
  EXPECT_TRUE(toggle.isChecked());
  EXPECT_EQ(focus().accessibleName(), "Rider, kg");
  details().close();
  EXPECT_FALSE(toggle.isChecked()) << "also by its own button";
}

TEST_F(BikeDetailsDockTest, TheKeyLeadsInAndBackToTheSameFields) {
  QWidget& before = focus();
  key(Qt::Key_F6);
  ASSERT_TRUE(details().holdsFocus());
  window_->showDetails("bike.chassis.wheelbase_mm");
  key(Qt::Key_F6);
  EXPECT_EQ(&focus(), &before);
  key(Qt::Key_F6);
  EXPECT_EQ(focus().accessibleName(), "Wheelbase, mm");
}

TEST_F(BikeDetailsDockTest, EscapeTakesBackWhatIsTypedThenGoesBackAndKeepsWhatWasConfirmed) {
  QWidget& before = focus();
  window_->showDetails("bike.chassis.rider_mass_kg");
  QWidget& field = focus();
  typeInto(field, "99");
  key(Qt::Key_Escape);
  EXPECT_EQ(&focus(), &field);
  typeInto(field, "81.5");
  key(Qt::Key_Return);
  key(Qt::Key_Escape);
  EXPECT_EQ(&focus(), &before);
  EXPECT_EQ(window_.profile().bike.chassis.value_or(Chassis{}).riderMassKg, 81.5);
  EXPECT_TRUE(details().isVisible());
}

TEST_F(BikeDetailsDockTest, ThePageKeysTurnTheirOwnTabsWhileTheyHaveTheFocus) {
  window_->showDetails();
  auto& tabs = *details().findChild<QTabWidget*>();
  auto& pages = *window_->findChild<QTabWidget*>();
  ASSERT_NE(&tabs, &pages);
  const int page = pages.currentIndex();
  for (const auto& [turn, modifiers, at] : {std::tuple{Qt::Key_PageDown, Qt::ControlModifier, 1},
                                            {Qt::Key_PageDown, Qt::ControlModifier, 2},
                                            {Qt::Key_PageUp, Qt::ControlModifier, 1},
                                            {Qt::Key_Tab, Qt::ControlModifier, 2}}) {
    key(turn, modifiers);
    EXPECT_EQ(tabs.currentIndex(), at);
    EXPECT_TRUE(details().holdsFocus());
  }
  EXPECT_EQ(pages.currentIndex(), page);
  key(Qt::Key_Escape);
  key(Qt::Key_PageDown, Qt::ControlModifier);
  EXPECT_EQ(pages.currentIndex(), page + 1);
  EXPECT_EQ(tabs.currentIndex(), 2);
}

TEST_F(BikeDetailsDockTest, EachTabIsInAList) {
  window_->showDetails();
  auto& tabs = *details().findChild<QTabWidget*>();
  const auto& list = control<QToolButton>(details(), "All parts of Bike Details");
  ASSERT_EQ(list.menu()->actions().size(), tabs.count());
  for (int i = tabs.count() - 1; i >= 0; --i) {
    list.menu()->actions().at(i)->trigger();
    EXPECT_EQ(tabs.currentIndex(), i);
    EXPECT_EQ(list.menu()->actions().at(i)->text(), tabs.tabText(i));
  }
  EXPECT_EQ(list.visibleRegion().boundingRect(), list.rect());
}

TEST_F(BikeDetailsDockTest, UndoAndRedoReachTheBikesHistory) {
  window_->showDetails("bike.engine.torque_curve");
  auto& table = static_cast<ColumnsTable&>(focus());
  table.pasteText("4000\t41\n8000\t57");
  table.setCurrentCell(0, 0);
  table.pasteText("4000\t42\n8000\t58");
  const auto first = [&] {
    const auto& curve = window_.profile().bike.engine.torqueCurve;
    return curve ? curve->points().front().torqueNm : 0.0;
  };
  key(Qt::Key_Z, Qt::ControlModifier);
  EXPECT_EQ(first(), 41);
  key(Qt::Key_Z, Qt::ControlModifier);
  EXPECT_EQ(first(), 0);
  key(Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
  key(Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
  EXPECT_EQ(first(), 42);
}

TEST_F(BikeDetailsDockTest, WhatIsBeingTypedIsTakenBackFirst) {
  window_->showDetails("bike.chassis.rider_mass_kg");
  typeInto(focus(), "81.5");
  key(Qt::Key_Tab);
  window_->showDetails("bike.chain_run.belt_lengths_teeth");
  QTest::keyClicks(&focus(), "139");
  auto& line = dynamic_cast<QLineEdit&>(focus());
  key(Qt::Key_Z, Qt::ControlModifier);
  EXPECT_EQ(line.text(), "");
  EXPECT_EQ(window_.profile().bike.chassis.value_or(Chassis{}).riderMassKg, 81.5);
  key(Qt::Key_Z, Qt::ControlModifier);
  EXPECT_FALSE(window_.profile().bike.chassis) << "then the edit before";
  window_->showDetails("bike.chassis.rider_mass_kg");
  typeInto(focus(), "81.5");
  QTest::keyClick(&focus(), Qt::Key_Return);
  typeInto(focus(), "77");
  auto& rider = dynamic_cast<DecimalBox&>(focus());
  key(Qt::Key_Z, Qt::ControlModifier);
  EXPECT_EQ(rider.text(), "81.5 kg");
  EXPECT_EQ(window_.profile().bike.chassis.value_or(Chassis{}).riderMassKg, 81.5);
  key(Qt::Key_Z, Qt::ControlModifier);
  EXPECT_FALSE(window_.profile().bike.chassis);
}

TEST_F(BikeDetailsDockTest, SetFreeAndDockedAgainTheyKeepTheFocus) {
  QWidget& before = focus();
  window_->showDetails("bike.chassis.wheelbase_mm");
  QTest::qWait(20);
  for (const bool floating : {true, false}) {
    details().setFloating(floating);
    EXPECT_TRUE(soon([&] { return details().holdsFocus(); }, 2000)) << floating;
    EXPECT_EQ(focus().accessibleName(), "Wheelbase, mm") << floating;
    QTest::qWait(20);
  }
  details().setFloating(true);
  ASSERT_TRUE(soon([&] { return details().holdsFocus(); }, 2000));
  key(Qt::Key_Escape);
  EXPECT_TRUE(soon([&] { return QApplication::focusWidget() == &before; }, 2000));
}

TEST_F(BikeDetailsDockTest, TheirPlaceIsRemembered) {
  window_->showDetails();
  docks(*window_).addDockWidget(Qt::LeftDockWidgetArea, &details());
  window_->close();
  Window next(bike());
  auto* again = next->findChild<BikeDetails*>();
  ASSERT_TRUE(again && again->isVisible()) << "open as they were";
  EXPECT_EQ(docks(*next).dockWidgetArea(again), Qt::LeftDockWidgetArea);
  again->close();
  next->close();
  Window last(bike());
  EXPECT_FALSE(last->findChild<BikeDetails*>());
  QSettings().clear();
}

}  // namespace
}  // namespace layshaft::test
