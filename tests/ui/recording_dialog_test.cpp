// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/recording_dialog.h"

#include <QDialogButtonBox>
#include <QFile>
#include <QSlider>
#include <QTemporaryDir>
#include <cmath>
#include <cstdio>

#include "core/units.h"
#include "tests/ui/support.h"
#include "ui/charts/track_preview.h"

namespace layshaft::test {
namespace {

/// So many times around a circle in a plane, as a table of x and y in metres with the seconds, that runs on
/// to close the last lap.
std::string circleTable(double radiusM, int laps, double wobbleM = 0.0) {
  constexpr int kPoints = 120;
  std::string text = "time,x,y\ns,m,m\n";
  for (int i = 0; i <= kPoints * laps + 5; ++i) {
    const double angle = 2.0 * units::kPi * i / kPoints;
    const double r = radiusM + wobbleM * (i % 2 == 0 ? 1.0 : -1.0);
    char line[80];
    std::snprintf(line, sizeof line, "%.2f,%.3f,%.3f\n", 0.5 * i, r * std::cos(angle), r * std::sin(angle));
    text += line;
  }
  return text;
}

class RecordingDialogTest : public testing::Test {
 protected:
  QString write(const QString& name, const std::string& text) {
    const QString path = folder_.filePath(name);
    QFile file(path);
    if (!file.open(QIODevice::WriteOnly)) throw std::runtime_error("cannot write");
    file.write(QByteArray::fromStdString(text));
    return path;
  }
  ui::RecordingDialog& open(const QString& file, ui::UnitSystem system = ui::UnitSystem::Metric) {
    dialog_.emplace(lane_, file, ui::UnitsShown(system));
    showActive(*dialog_);
    if (!soon([&] { return !dialog_->working(); })) throw std::runtime_error("not read");
    return *dialog_;
  }
  QString findings() { return control<QLabel>(*dialog_, "What was found").text(); }
  bool mayBeAdded() {
    return dialog_->findChild<QDialogButtonBox*>()->button(QDialogButtonBox::Ok)->isEnabled();
  }
  void settle() {
    ASSERT_TRUE(soon([&] { return !dialog_->working(); }));
  }

  QTemporaryDir folder_;
  ui::BackgroundLane lane_;
  std::optional<ui::RecordingDialog> dialog_;
};

TEST_F(RecordingDialogTest, ALapBecomesATrackNamedAfterItsFile) {
  auto& dialog = open(write("Old Mill.csv", circleTable(100.0, 3)));
  ASSERT_TRUE(mayBeAdded()) << findings().toStdString();
  const auto track = dialog.track();
  ASSERT_TRUE(track);
  EXPECT_EQ(track->name, "Old Mill");
  EXPECT_EQ(track->closed, true);
  EXPECT_EQ(track->path->source, "Old Mill.csv");
  // A circle of 100 m: 2πr around, 10 per km bent everywhere.
  const auto& path = *track->path;
  EXPECT_NEAR(path.spacingM * static_cast<double>(path.curvaturePerKm.size()), 2 * M_PI * 100.0, 0.5);
  for (const double perKm : path.curvaturePerKm) EXPECT_NEAR(perKm, 10.0, 0.2);
  auto& laps = control<QComboBox>(dialog, "Lap");
  EXPECT_GE(laps.count(), 2);
  EXPECT_TRUE(laps.itemText(0).startsWith("Lap 1: 1:00.00, 628 m, gap ")) << laps.itemText(0).toStdString();
  EXPECT_TRUE(findings().contains("628 m once around")) << findings().toStdString();
  EXPECT_TRUE(findings().contains("Smallest radius: ")) << findings().toStdString();
  EXPECT_TRUE(findings().contains("before and after the lap")) << findings().toStdString();
  EXPECT_GT(dialog.findChild<ui::TrackPreview*>()->line().places.size(), 20u);
}

TEST_F(RecordingDialogTest, AnotherLapAndMoreSmoothingAreMadeAnew) {
  auto& dialog = open(write("a.csv", circleTable(60.0, 3, 0.8)));
  auto& laps = control<QComboBox>(dialog, "Lap");
  const int other = laps.currentIndex() == 0 ? 1 : 0;
  laps.setCurrentIndex(other);
  emit laps.activated(other);
  settle();
  EXPECT_EQ(laps.currentIndex(), other);
  auto& slider = control<QSlider>(dialog, "Smoothing");
  const auto roughest = [&](int step) {
    slider.setValue(step);
    EXPECT_FALSE(mayBeAdded()) << "what is made is not of what is chosen";
    EXPECT_FALSE(dialog.track());
    settle();
    double most = 0.0;
    const auto track = dialog.track();
    if (!track) throw std::runtime_error("no track");
    for (const double perKm : track->path->curvaturePerKm) most = std::max(most, std::abs(perKm));
    return most;
  };
  EXPECT_GT(roughest(3), 2.0 * roughest(45)) << "smoothing takes the wobble out of the bends";
  EXPECT_FALSE(control<QCheckBox>(dialog, "").isChecked());
}

TEST_F(RecordingDialogTest, AGpxFileIsReadInTheUnitsShown) {
  std::string points;
  for (int i = 0; i <= 200; ++i) {
    char line[120];
    const double t = 2.0 * units::kPi * i / 200.0;
    std::snprintf(line, sizeof line, "<trkpt lat=\"%.8f\" lon=\"%.8f\"><ele>100</ele></trkpt>\n",
                  48.0 + 0.0045 * std::sin(t), 11.0 + 0.00672 * std::cos(t));
    points += line;
  }
  auto& dialog =
      open(write("lap.gpx", "<gpx version=\"1.1\" xmlns=\"http://www.topografix.com/GPX/1/1\"><trk><trkseg>" +
                                points + "</trkseg></trk></gpx>"),
           ui::UnitSystem::Imperial);
  ASSERT_TRUE(mayBeAdded()) << findings().toStdString();
  // An ellipse with halves of 0.0045° of latitude and 0.00672° of longitude at 48° N: about 500.4 m and
  // 501.2 m (111.2 km and 74.6 km to the degree there), so about 3147 m or 1.96 miles around.
  EXPECT_TRUE(findings().contains(" mi once around")) << findings().toStdString();
  EXPECT_NEAR(findings().section(' ', 0, 0).toDouble(), 1.955, 0.02);
  EXPECT_TRUE(findings().contains(" ft from its start")) << findings().toStdString();
  EXPECT_FALSE(dialog.track()->path->slopePercent.empty());
}

TEST_F(RecordingDialogTest, WhatIsNoRecordingIsToldWithItsFileLineAndColumn) {
  open(write("torn.gpx",
             "<gpx version=\"1.1\" xmlns=\"http://www.topografix.com/GPX/1/1\">\n<trk><trkseg>\n"
             "<trkpt lat=\"95\" lon=\"7\"/>\n</trkseg></trk></gpx>"));
  EXPECT_FALSE(mayBeAdded());
  EXPECT_FALSE(dialog_->track());
  EXPECT_TRUE(findings().startsWith("torn.gpx: ")) << findings().toStdString();
  EXPECT_TRUE(findings().contains("line 3, column ")) << findings().toStdString();
  EXPECT_TRUE(findings().contains("95")) << findings().toStdString();
  open(folder_.filePath("missing.gpx"));
  EXPECT_TRUE(findings().startsWith("missing.gpx: cannot be read")) << findings().toStdString();
  open(write("few.csv", "x,y\n1,2\n3,4\n"));
  EXPECT_FALSE(mayBeAdded());
  EXPECT_TRUE(findings().startsWith("few.csv: ")) << findings().toStdString();
}

TEST_F(RecordingDialogTest, ALineThatNeverComesByAgainIsTakenWhole) {
  std::string text = "x;y\n";
  for (int i = 0; i < 100; ++i) text += std::to_string(10 * i) + ";" + std::to_string(i * i / 40) + "\n";
  auto& dialog = open(write("hill.csv", text));
  ASSERT_TRUE(mayBeAdded()) << findings().toStdString();
  EXPECT_EQ(dialog.track()->closed, false);
  EXPECT_EQ(control<QComboBox>(dialog, "Lap").currentText(), "The whole line");
  EXPECT_TRUE(findings().contains("open")) << findings().toStdString();
}

TEST_F(RecordingDialogTest, ReadingIsStoppedAndTheWindowStaysAwake) {
  dialog_.emplace(lane_, write("long.csv", circleTable(400.0, 600)), ui::UnitsShown());
  showActive(*dialog_);
  auto* stop = dialog_->findChild<QPushButton*>();
  for (auto* button : dialog_->findChildren<QPushButton*>())
    if (button->text().remove('&') == "Stop") stop = button;
  ASSERT_TRUE(stop->isVisible() || !dialog_->working());
  stop->click();
  EXPECT_FALSE(dialog_->working());
  EXPECT_FALSE(mayBeAdded());
  EXPECT_EQ(findings(), "Reading was stopped.");
  QTest::qWait(50);
  EXPECT_EQ(findings(), "Reading was stopped.") << "what it still brings is dropped";
}

TEST_F(RecordingDialogTest, ANameThatIsEmptyIsNotTaken) {
  auto& dialog = open(write("a.csv", circleTable(60.0, 1)));
  auto& name = control<QLineEdit>(dialog, "Name of the track");
  name.clear();
  EXPECT_FALSE(mayBeAdded());
  QTest::keyClicks(&name, "Test Day");
  EXPECT_TRUE(mayBeAdded());
  EXPECT_EQ(dialog.track()->name, "Test Day");
}

}  // namespace
}  // namespace layshaft::test
