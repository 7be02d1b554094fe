// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/curve_editor.h"

#include <QSignalSpy>

#include "core/units.h"
#include "tests/ui/support.h"
#include "ui/editors/curve_preview.h"

namespace layshaft::test {
namespace {

using ui::CurveUnit;

class CurveEditorTest : public testing::Test {
 protected:
  CurveEditorTest() {
    editor_.refresh(ui::UnitsShown());
    QObject::connect(&editor_, &ui::CurveEditor::said, &editor_,
                     [this](const QString& text) { said_ = text; });
    showActive(editor_);
  }
  void paste(const QString& text) {
    table().setCurrentCell(0, 0);
    table().pasteText(text);
  }
  ui::ColumnsTable& table() { return control<ui::ColumnsTable>(editor_, "Torque curve"); }
  std::vector<double> torques() const {
    std::vector<double> result;
    if (const auto& curve = document_.profile().bike.engine.torqueCurve)
      for (const TorquePoint& point : curve->points()) result.push_back(point.torqueNm);
    return result;
  }

  ui::Document document_{bike()};
  ui::CurveEditor editor_{document_};
  QString said_;
};

TEST_F(CurveEditorTest, TitlesNameTheUnit) {
  const std::pair<const char*, CurveUnit> titles[] = {
      {"Nm", CurveUnit::NewtonMetre},  {"torque (N·m)", CurveUnit::NewtonMetre},
      {"lb-ft", CurveUnit::PoundFoot}, {"Torque [ft.lb]", CurveUnit::PoundFoot},
      {"kW", CurveUnit::Kilowatt},     {"Power hp", CurveUnit::Horsepower},
      {"rwhp", CurveUnit::Horsepower}, {"Leistung, PS", CurveUnit::MetricHorsepower},
  };
  for (const auto& [title, unit] : titles)
    EXPECT_EQ(ui::curveUnitIn(QString::fromUtf8(title)), unit) << title;
  EXPECT_EQ(ui::curveUnitIn("second"), std::nullopt);
}

TEST_F(CurveEditorTest, PoundFeetBecomeNewtonMetres) {
  paste("rpm\tlb-ft\n4000\t30\n8000\t45");
  // 1 lb·ft = 1.355 817 948 N·m (NIST SP 811).
  ASSERT_EQ(torques().size(), 2u);
  EXPECT_NEAR(torques()[0], 40.6745, 1e-4);
  EXPECT_NEAR(torques()[1], 61.0118, 1e-4);
  EXPECT_TRUE(said_.contains("Torque, lb·ft")) << said_.toStdString();
}

TEST_F(CurveEditorTest, PowerBecomesTorqueAtItsEngineSpeed) {
  paste("rpm\tkW\n9549.2966\t60\n12000\t80");
  ASSERT_EQ(torques().size(), 2u);
  EXPECT_NEAR(torques()[0], 60.0, 1e-6) << "kW and N·m meet at 9549.3 rpm";
  EXPECT_NEAR(torques()[1], 80 * 9549.2966 / 12000, 1e-4);
  paste("rpm\thp\n5252.1131\t50\n10000\t110");
  EXPECT_NEAR(torques()[0] / units::kNewtonMetresPerPoundFoot, 50, 1e-4) << "hp and lb·ft meet at 5252 rpm";
  paste("rpm\tPS\n5000\t50\n10000\t110");
  EXPECT_NEAR(torques()[0], 50 * 735.49875 / (5000 * 2 * M_PI / 60), 1e-4);
}

TEST_F(CurveEditorTest, PowerAtAStandstillIsRefused) {
  paste("rpm\tkW\n0\t10\n8000\t45");
  EXPECT_TRUE(torques().empty());
  EXPECT_TRUE(said_.startsWith("Row 1:")) << said_.toStdString();
}

TEST_F(CurveEditorTest, TheUnitShownChangesNoDigitOfTheBike) {
  paste("4000\t41.3\n8000\t57.7\n12000\t50.1");
  const Profile before = document_.profile();
  auto& unit = control<QComboBox>(editor_, "Second column");
  for (int i = 0; i < unit.count(); ++i) {
    unit.setCurrentIndex(i);
    emit unit.activated(i);
    // Typing one value again as it stands is no edit of the others.
    emit table().edited();
    EXPECT_TRUE(same(document_.profile(), before)) << unit.currentText().toStdString();
  }
}

TEST_F(CurveEditorTest, ImperialStartsWithPoundFeet) {
  editor_.refresh(ui::UnitsShown(ui::UnitSystem::Imperial));
  EXPECT_EQ(control<QComboBox>(editor_, "Second column").currentText(), "Torque, lb·ft");
}

TEST_F(CurveEditorTest, TypedInHorsepowerItIsShownInHorsepowerAgain) {
  const auto opened = [&](ui::UnitSystem system) {
    ui::Document document(profileFrom(writeProfile(document_.profile())));
    ui::CurveEditor editor(document);
    editor.refresh(ui::UnitsShown(system));
    QStringList seen{control<QComboBox>(editor, "Second column").currentText()};
    auto& cells = control<QTableWidget>(editor, "Torque curve");
    for (int row = 0; row < 3; ++row) seen << cells.item(row, 1)->text();
    return seen;
  };
  const QStringList typed{"31.5", "48.75", "62.118"};
  const QString rows = "4000\t31.5\n6500\t48.75\n9000\t62.118";
  for (const auto& [title, words] :
       {std::pair{"rpm\thp\n", "Power, hp"}, {"rpm\tlb-ft\n", "Torque, lb·ft"}, {"rpm\tPS\n", "Power, PS"}}) {
    paste(title + rows);
    EXPECT_EQ(opened(ui::UnitSystem::Metric), QStringList{words} + typed);
    EXPECT_EQ(opened(ui::UnitSystem::Imperial), QStringList{words} + typed);
  }
  paste("rpm\tNm\n" + rows);
  EXPECT_EQ(opened(ui::UnitSystem::Metric), QStringList{"Torque, N·m"} + typed);
  EXPECT_EQ(opened(ui::UnitSystem::Imperial), (QStringList{"Torque, lb·ft", "23.23", "35.96", "45.82"}));
}

TEST_F(CurveEditorTest, ACommaIsReadAlikeInTheWholeColumn) {
  paste("4,000\t41,5\n8,000\t57,125\n12,000\t50");
  EXPECT_EQ(torques(), (std::vector{41.5, 57.125, 50.0}));
  EXPECT_EQ(document_.profile().bike.engine.torqueCurve->points()[2].rpm, 12000);
  paste("4000\t41,500\n8000\t57,125");
  EXPECT_EQ(torques(), (std::vector{41.5, 57.125})) << "41,500 N·m cannot be";
}

TEST_F(CurveEditorTest, CellsAreGroupedAndReadWhateverIsTypedBesideThem) {
  paste("4000\t41\n8000\t57\n10200\t50");
  editor_.refresh(ui::UnitsShown(ui::UnitSystem::Imperial));
  EXPECT_EQ(table().item(2, 0)->text(), "10,200");
  const auto speeds = [&] {
    std::vector<double> result;
    for (const TorquePoint& point : document_.profile().bike.engine.torqueCurve->points())
      result.push_back(point.rpm);
    return result;
  };
  for (const auto& [typed, rpm] : {std::pair{"10300", 10300.0}, {"10,400", 10400.0}, {"10500,5", 10500.5}}) {
    table().item(2, 0)->setText(typed);
    EXPECT_EQ(speeds(), (std::vector{4000.0, 8000.0, rpm})) << typed;
    EXPECT_NEAR(torques()[1], 57, 1e-9);
  }
}

TEST_F(CurveEditorTest, APastedTitleNamesTheColumn) {
  const std::pair<const char*, const char*> titles[] = {{"hp", "Power, hp"},
                                                        {"Power kW", "Power, kW"},
                                                        {"torque (lb·ft)", "Torque, lb·ft"},
                                                        {"lbs-ft", "Torque, lb·ft"},
                                                        {"metric hp", "Power, PS"}};
  for (const auto& [pasted, shown] : titles) {
    paste(QStringLiteral("rpm\t%1\n4000\t30\n8000\t45").arg(QString::fromUtf8(pasted)));
    EXPECT_EQ(table().horizontalHeaderItem(1)->text(), shown);
    EXPECT_EQ(control<QComboBox>(editor_, "Second column").currentText(), shown);
  }
}

TEST_F(CurveEditorTest, AFallingFileIsSortedAndThatIsSaid) {
  paste("rpm\tNm\n12000\t50\n8000\t57\n4000\t41");
  EXPECT_EQ(torques(), (std::vector{41.0, 57.0, 50.0}));
  EXPECT_TRUE(said_.contains("sorted")) << said_.toStdString();
  EXPECT_TRUE(said_.contains("3 points read: 4,000 to 12,000 rpm")) << said_.toStdString();
  EXPECT_EQ(table().item(0, 0)->text(), "4,000");
  EXPECT_EQ(document_.undoStack().count(), 1);
}

TEST_F(CurveEditorTest, TwoPastesAreTwoSteps) {
  paste("4000\t41\n8000\t57");
  paste("4000\t42\n8000\t58");
  EXPECT_EQ(document_.undoStack().count(), 2);
  document_.undoStack().undo();
  EXPECT_EQ(torques(), (std::vector{41.0, 57.0}));
}

TEST_F(CurveEditorTest, WhatIsHalfTypedStaysUntilItIsWhole) {
  const auto type = [&](int row, int column, const char* text) {
    table().setCurrentCell(row, column);
    if (!table().item(row, column)) table().setItem(row, column, new QTableWidgetItem);
    table().item(row, column)->setText(text);
    editor_.refresh(ui::UnitsShown());  // as another edit would
  };
  type(0, 0, "4000");
  type(1, 0, "8000");
  EXPECT_TRUE(said_.startsWith("Row 1 has no")) << said_.toStdString();
  type(0, 1, "41");
  type(1, 1, "57");
  EXPECT_EQ(torques(), (std::vector{41.0, 57.0}));
  type(1, 1, "5x");
  EXPECT_EQ(table().item(1, 1)->text(), "5x") << "to be corrected";
  document_.undoStack().undo();
  editor_.refresh(ui::UnitsShown());
  EXPECT_TRUE(table().rows().empty()) << "what is undone is gone";
}

TEST_F(CurveEditorTest, WhatIsHalfTypedGoesWithTheBike) {
  paste("4000\t41\n8000\t57");
  const Profile another = document_.profile();
  table().item(1, 1)->setText("5x");
  EXPECT_TRUE(said_.startsWith("Row 2")) << said_.toStdString();
  document_.load(another, "another.bike.json");
  editor_.refresh(ui::UnitsShown());
  EXPECT_EQ(table().item(1, 1)->text(), "57") << "of the bike that is open, which has an equal curve";
  EXPECT_EQ(said_, "");
}

TEST_F(CurveEditorTest, ThePictureShowsWhatWasTyped) {
  auto& preview = control<ui::CurvePreview>(editor_, "Picture of the torque curve");
  const QImage empty = preview.grab().toImage();
  paste("4000\t41\n8000\t57\n12000\t50");
  EXPECT_NE(preview.grab().toImage(), empty);
}

/// How much of the torque line's colour stands above an engine speed, in pixels.
double torqueInk(double lastPointRpm, double rpm) {
  ui::CurvePreview preview;
  preview.setPalette(QPalette(Qt::white));
  preview.resize(416, 240);  // the picture is 400 wide
  preview.show(TorqueCurve::make({{2000, 50}, {lastPointRpm, 50}}).value(), 10000, ui::UnitsShown());
  const QImage picture = preview.grab().toImage();
  const int x = 8 + qRound(rpm / 10000 * 400);
  double ink = 0.0;
  // Below the words, which have the same colour.
  for (int y = 12 + preview.fontMetrics().height(); y < picture.height(); ++y) {
    const QColor pixel = picture.pixelColor(x, y);
    ink += std::max(0, pixel.blue() - pixel.red()) / 178.0;  // of 0x0072b2
  }
  return ink;
}

TEST(CurvePreviewTest, WhatIsAssumedBeyondTheLastPointIsThin) {
  const double thick = torqueInk(10000, 9000);
  EXPECT_NEAR(torqueInk(8000, 7000), thick, 0.2);
  EXPECT_GT(torqueInk(8000, 9000), 0.5);
  EXPECT_LT(torqueInk(8000, 9000), 0.75 * thick);
}

}  // namespace
}  // namespace layshaft::test
