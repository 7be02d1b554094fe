// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/peaks_dialog.h"

#include <QComboBox>
#include <QDialogButtonBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

#include "tests/ui/support.h"
#include "ui/editors/curve_editor.h"
#include "ui/editors/new_bike_dialog.h"
#include "ui/words/pull_notes.h"
#include "ui/words/road_words.h"
#include "ui/words/text_report.h"

namespace layshaft::test {
namespace {

using ui::PeaksDialog;

QLineEdit& lineOf(const QWidget& dialog, const QString& label) {
  for (auto* caption : dialog.findChildren<QLabel*>())
    if (caption->text().remove('&') == label && caption->buddy())
      return dynamic_cast<QLineEdit&>(*caption->buddy());
  throw std::runtime_error("no line " + label.toStdString());
}

void fillPeaks(const QWidget& dialog, const char* torque, const char* at, const char* power,
               const char* powerAt) {
  lineOf(dialog, "Highest torque").setText(torque);
  control<QLineEdit>(dialog, "Engine speed of the highest torque, rpm").setText(at);
  lineOf(dialog, "Highest power").setText(power);
  control<QLineEdit>(dialog, "Engine speed of the highest power, rpm").setText(powerAt);
}

QPushButton& okOf(const QWidget& dialog) {
  return *dialog.findChild<QDialogButtonBox*>()->button(QDialogButtonBox::Ok);
}

QPushButton& buttonNamed(const QWidget& widget, const QString& text) {
  for (auto* button : widget.findChildren<QPushButton*>())
    if (button->text().remove('&') == text) return *button;
  throw std::runtime_error("no button " + text.toStdString());
}

bool peaksSay(const QWidget& dialog, const QString& words) {
  for (auto* label : dialog.findChildren<QLabel*>())
    if (label->text().contains(words)) return true;
  return false;
}

TEST(PeaksDialogTest, ReadsThePeaksInTheUnitsOfADataSheet) {
  PeaksDialog dialog(15200, ui::UnitsShown());
  EXPECT_FALSE(okOf(dialog).isEnabled());
  EXPECT_EQ(dialog.curve(), std::nullopt);
  fillPeaks(dialog, "65,5", "11500", "83.7", "13000");
  ASSERT_TRUE(okOf(dialog).isEnabled());
  EXPECT_EQ(dialog.peaks(),
            (EnginePeaks{.torqueNm = 65.5, .torqueRpm = 11500, .powerKw = 83.7, .powerRpm = 13000}));
  ASSERT_TRUE(dialog.curve());
  EXPECT_EQ(dialog.curve()->points().back().rpm, 15200);
  // 1 lb·ft = 1.355 817 948 N·m, 1 metric horsepower = 735.498 75 W (NIST SP 811).
  control<QComboBox>(dialog, "Unit of the torque").setCurrentText("lb·ft");
  control<QComboBox>(dialog, "Unit of the power").setCurrentText("PS");
  fillPeaks(dialog, "48.3", "11500", "114", "13000");
  ASSERT_TRUE(dialog.peaks());
  EXPECT_NEAR(dialog.peaks()->torqueNm, 65.486, 0.001);
  EXPECT_NEAR(dialog.peaks()->powerKw, 83.847, 0.001);
}

TEST(PeaksDialogTest, TakesUnitsBehindTheFigures) {
  PeaksDialog dialog(15200, ui::UnitsShown());
  fillPeaks(dialog, "65.5 Nm", "11500 rpm", "83.7 kW", "13,000 1/min");
  EXPECT_EQ(dialog.peaks(),
            (EnginePeaks{.torqueNm = 65.5, .torqueRpm = 11500, .powerKw = 83.7, .powerRpm = 13000}));
  // 1 lb·ft = 1.355 817 948 N·m, 1 metric horsepower = 735.498 75 W (NIST SP 811).
  fillPeaks(dialog, "48.3 lb-ft", "11500", "114 PS", "13000");
  ASSERT_TRUE(dialog.peaks());
  EXPECT_NEAR(dialog.peaks()->torqueNm, 65.486, 0.001);
  EXPECT_NEAR(dialog.peaks()->powerKw, 83.847, 0.001);
}

TEST(PeaksDialogTest, NamesTheFieldThatIsWrong) {
  PeaksDialog dialog(15200, ui::UnitsShown());
  fillPeaks(dialog, "65.5", "7000 turns", "83.7", "13000");
  EXPECT_TRUE(peaksSay(dialog, "Engine speed of the highest torque: “7000 turns” is not understood"));
  fillPeaks(dialog, "65.5", "11500", "83.7 Nm", "13000");
  EXPECT_TRUE(peaksSay(dialog, "Highest power: “83.7 Nm” is not understood"));
  fillPeaks(dialog, "65.5", "11500", "", "13000");
  EXPECT_TRUE(peaksSay(dialog, "Highest power: a number is still missing"));
  EXPECT_FALSE(okOf(dialog).isEnabled());
}

TEST(PeaksDialogTest, SaysWhatDoesNotGoTogether) {
  PeaksDialog dialog(15200, ui::UnitsShown());
  fillPeaks(dialog, "65.5", "11500", "83.7", "11000");
  EXPECT_TRUE(peaksSay(dialog, "11,501 to 15,200 rpm"));
  fillPeaks(dialog, "65.5", "11500", "95", "13000");
  EXPECT_TRUE(peaksSay(dialog, "78.9 to 89.1 kW goes with that torque"));
  EXPECT_FALSE(okOf(dialog).isEnabled());
}

TEST(EstimatedCurve, IsTakenMarkedAndTheMarkGoesWithTheFirstEdit) {
  ui::Document document(bike());
  ui::CurveEditor editor(document);
  editor.refresh(ui::UnitsShown());
  showActive(editor);
  const Profile before = document.profile();
  buttonNamed(editor, "Estimate From Peaks…").click();
  auto* dialog = editor.findChild<PeaksDialog*>();
  ASSERT_TRUE(dialog);
  fillPeaks(*dialog, "50", "7000", "45", "9500");
  dialog->accept();
  const Engine& engine = document.profile().bike.engine;
  ASSERT_TRUE(engine.torqueCurve);
  EXPECT_EQ(engine.curveEstimated, true);
  const auto marked = [&] {
    for (auto* label : editor.findChildren<QLabel*>())
      if (label->isVisible() && label->text() == "Estimated from peak power and torque.") return true;
    return false;
  };
  EXPECT_TRUE(marked());
  auto& table = control<ui::ColumnsTable>(editor, "Torque curve");
  table.setCurrentCell(0, 0);
  table.pasteText("rpm\tNm\n4000\t30\n8000\t45");
  EXPECT_EQ(engine.curveEstimated, std::nullopt);
  EXPECT_FALSE(marked());
  document.undoStack().undo();
  EXPECT_EQ(engine.curveEstimated, true);
  document.undoStack().undo();
  EXPECT_TRUE(document.profile() == before);
}

TEST(EstimatedCurve, IsSaidWhereverItCounts) {
  const QString words = "Estimated from peak power and torque";
  Profile profile = workedExample();
  EXPECT_FALSE(ui::textReport(plan(profile), ui::UnitsShown()).contains(words));
  profile.bike.engine.curveEstimated = true;
  const Plan estimated = plan(profile);
  EXPECT_TRUE(ui::pullNotes(estimated, ui::UnitsShown()).join("\n").contains(words)) << "the pull page";
  EXPECT_TRUE(ui::textReport(estimated, ui::UnitsShown()).contains(words));
  EXPECT_TRUE(ui::assumedWords(*estimated.pullBike, ui::UnitsShown()).isEmpty()) << "it has no value";
  profile.bike.engine.torqueCurve.reset();
  EXPECT_EQ(ui::estimatedCurveWords(*plan(profile).pullBike), QString()) << "there is none";
}

TEST(NewBikeFromPeaks, TellsThemInTheUnitsShownAndUnclipped) {
  ui::NewBikeDialog dialog({}, nullptr, ui::UnitsShown(ui::UnitSystem::Imperial));
  showActive(dialog);
  buttonNamed(dialog, "Estimate From Peaks…").click();
  auto* peaks = dialog.findChild<PeaksDialog*>();
  fillPeaks(*peaks, "20", "8000", "35", "10500");
  peaks->accept();
  QTest::qWait(20);
  for (auto* label : dialog.findChildren<QLabel*>())
    if (label->text().startsWith("Estimated from")) {
      EXPECT_EQ(label->text(), "Estimated from 20.0 lb·ft at 8,000 rpm, 35.0 hp at 10,500 rpm");
      EXPECT_GE(label->width(), label->sizeHint().width());
      EXPECT_GE(label->height(), label->sizeHint().height());
      return;
    }
  FAIL() << "it says nothing of them";
}

TEST(NewBikeFromPeaks, HasAnEstimatedCurve) {
  ui::NewBikeDialog dialog({});
  lineOf(dialog, "Name").setText("Nipper");
  lineOf(dialog, "Rev limit, rpm").setText("12500");
  lineOf(dialog, "Primary ratio").setText("1.955");
  lineOf(dialog, "Gear ratios").setText("2.7 2.0 1.6");
  lineOf(dialog, "Front teeth").setText("15");
  lineOf(dialog, "Rear teeth").setText("45");
  lineOf(dialog, "Rear tyre").setText("180/55ZR17");
  ASSERT_TRUE(dialog.profile());
  EXPECT_EQ(dialog.profile()->bike.engine.torqueCurve, std::nullopt);
  buttonNamed(dialog, "Estimate From Peaks…").click();
  auto* peaks = dialog.findChild<PeaksDialog*>();
  ASSERT_TRUE(peaks);
  fillPeaks(*peaks, "50", "8000", "50", "10500");
  peaks->accept();
  EXPECT_TRUE(peaksSay(dialog, "50.0 N·m at 8,000 rpm, 50.0 kW at 10,500 rpm"));
  ASSERT_TRUE(dialog.profile());
  EXPECT_TRUE(dialog.profile()->bike.engine.torqueCurve);
  EXPECT_EQ(dialog.profile()->bike.engine.curveEstimated, true);
  lineOf(dialog, "Rev limit, rpm").setText("10000");
  EXPECT_EQ(dialog.profile(), std::nullopt);
  EXPECT_TRUE(peaksSay(dialog, "Engine speed of the highest power")) << "it lies above the limit now";
}

}  // namespace
}  // namespace layshaft::test
