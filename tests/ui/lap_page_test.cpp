// SPDX-License-Identifier: GPL-3.0-or-later
#include <QComboBox>
#include <QLabel>
#include <QPushButton>
#include <QRadioButton>
#include <QScrollBar>
#include <QTabWidget>
#include <QTableWidget>
#include <cmath>

#include "core/study/asked.h"
#include "core/study/lean.h"
#include "tests/ui/lap_bikes.h"
#include "ui/document/preferences.h"
#include "ui/document/track_edits.h"
#include "ui/pages/lap_page.h"
#include "ui/pages/one_lap_view.h"
#include "ui/window/tracks_window.h"
#include "ui/words/lap_words.h"

namespace layshaft::test {
namespace {

/// The example that was worked out independently: 39.6193 s with stock, 39.5823 s with the proposal.
ui::LapBook bookOf(const Profile& profile) {
  return ui::lapBook(std::make_shared<const Plan>(plan(profile)));
}

class LapPageTest : public testing::Test, FreshSettings {
 protected:
  LapPageTest() { ui::preferences::setUnits(ui::UnitsShown(ui::UnitSystem::Metric)); }

  void open(Profile profile) {
    window_ = std::make_unique<Window>(std::move(profile));
    page_ = (*window_)->findChild<ui::LapPage*>();
    (*window_)->findChild<QTabWidget*>()->setCurrentWidget(page_);
    QTest::qWait(50);
  }
  ui::LapChart& chart() { return *page_->findChild<ui::LapChart*>(); }
  ui::TrackMap& map() { return *page_->findChild<ui::TrackMap*>(); }
  QString words() { return control<QLabel>(*page_, "The lap in words").text(); }
  QTableWidget& table() { return control<QTableWidget>(*page_, "Corners of the lap"); }
  QUndoStack& history() { return (*window_)->document().undoStack(); }
  /// A field of the page itself: Bike Details have some of the same name.
  QAbstractSpinBox& field(const char* name) { return control<QAbstractSpinBox>(*page_, name); }

  std::unique_ptr<Window> window_;
  ui::LapPage* page_ = nullptr;
};

TEST_F(LapPageTest, ShowsTheLapOfTheWorkedExample) {
  open(lapExampleBike());
  const auto line = chart().lines().back()->points();
  ASSERT_GT(line.size(), 20);
  EXPECT_NEAR(line.front().x(), 0.0, 1e-9);
  // Pit straight 400, Sluice 60·π/2, Dyke 150, Heron 35·π/2, 250, 50, 180 and Willow 90·π/2.
  EXPECT_NEAR(line.back().x(), 1030.0 + 185.0 * 3.14159265358979 / 2.0, 1e-6);
  EXPECT_NEAR(line.front().y(), 111.1465, 1e-3) << "out of Willow onto the pit straight";
  double top = 0.0, low = 1000.0;
  for (const QPointF& point : line) {
    top = std::max(top, point.y());
    low = std::min(low, point.y());
  }
  EXPECT_NEAR(top, 202.7462, 1e-3);
  EXPECT_NEAR(low, 69.3103, 1e-3);
  EXPECT_THAT(words().toStdString(), testing::HasSubstr("Reedmace Short: 39.58 s with the proposal, 0.04 s "
                                                        "quicker than stock with 39.62 s."));
  EXPECT_THAT(words().toStdString(), testing::HasSubstr("It wins 0.02 s on Long Meadow"));
  ASSERT_EQ(table().rowCount(), 5) << "four corners and the whole lap";
  EXPECT_EQ(table().item(0, 0)->text(), "Sluice");
  EXPECT_EQ(table().item(0, 1)->text(), "91") << "alike with both";
  EXPECT_EQ(table().item(0, 3)->text(), "12,252 → 13,069") << "leaned over, from the example";
  EXPECT_EQ(table().item(1, 5)->text().section(' ', 0, 0), "13,284") << "Long Meadow's end with stock";
  EXPECT_EQ(table().item(2, 5)->text().section(' ', 0, 0), "15,025") << "Back lane's";
}

TEST_F(LapPageTest, TheDifferenceEndsAtThatOfTheLapTimes) {
  const ui::LapBook book = bookOf(lapExampleBike());
  ASSERT_TRUE(book.laps());
  const auto& later = book.proposed().later;
  EXPECT_EQ(later.front().laterS, 0.0);
  EXPECT_NEAR(later.back().laterS, 39.582319 - 39.619275, 2e-6);
  double parts = 0.0;
  for (const ui::LapPart& part : book.parts) parts += ui::wonS(book.proposed(), part.fromM, part.toM);
  EXPECT_NEAR(parts, 39.619275 - 39.582319, 2e-6) << "the parts make the whole";
  // Times of segments, from the example.
  EXPECT_NEAR(ui::partFigures(book, book.stock(), 0).timeS, 9.1002, 1e-4);
  EXPECT_NEAR(ui::partFigures(book, book.stock(), 4).timeS, 7.1758, 1e-4);
  EXPECT_NEAR(ui::partFigures(book, book.proposed(), 4).timeS, 7.1593, 1e-4);
}

/// From a standstill with 5 m/s²: t = √(2d/a), v = √(2ad).
TEST(LapPlaces, BetweenTwoPointsThereIsOneAcceleration) {
  ui::LapOfSetup lap;
  lap.points = {{0.0, 0.0, 0.0, 1, 4000.0, false}, {10.0, 2.0, 10.0, 1, 8000.0, false}};
  const auto place = ui::lapAt(lap, 2.5);
  ASSERT_TRUE(place);
  EXPECT_NEAR(place->timeS, 1.0, 1e-12);
  EXPECT_NEAR(place->speedMps, 5.0, 1e-12);
  EXPECT_EQ(ui::lapAt(lap, 10.1), std::nullopt);
}

TEST_F(LapPageTest, AStepOfTheTeethRedrawsTheLap) {
  open(lapExampleBike());
  const auto before = chart().lines().back()->points();
  const auto stock = chart().lines().front()->points();
  const QString said = words();
  QTest::keyClick(&control<QAbstractSpinBox>(**window_, "Rear teeth"), Qt::Key_Up);
  EXPECT_TRUE(soon([&] { return chart().lines().back()->points() != before; }));
  EXPECT_EQ(chart().lines().front()->points(), stock);
  EXPECT_NE(words(), said);
}

TEST_F(LapPageTest, TheCrosshairIsOneForChartAndMap) {
  open(lapExampleBike());
  EXPECT_EQ(map().marked(), std::nullopt);
  chart().setCrosshair(500.0);
  ASSERT_TRUE(map().marked());
  EXPECT_NEAR(*map().marked(), 500.0, 1e-9);
  chart().setCrosshair(std::nullopt);
  EXPECT_EQ(map().marked(), std::nullopt);
  // Asked anew each time: the map may still be getting its size.
  ASSERT_TRUE(soon([&] {
    const auto place = map().positionOf(250.0);
    if (place) QTest::mouseMove(&map(), place->toPoint());
    return chart().crosshairX() && std::abs(*chart().crosshairX() - 250.0) <= 10.0;
  })) << "as near as a pixel is";
  EXPECT_NEAR(*map().marked(), *chart().crosshairM(), 1e-9);
  map().setFocus();
  QTest::keyClick(&map(), Qt::Key_Home);
  EXPECT_EQ(chart().crosshairX(), 0.0);
  QTest::keyClick(&map(), Qt::Key_Right);
  EXPECT_GT(chart().crosshairX().value(), 5.0);
}

TEST_F(LapPageTest, TheCrosshairReadsSpeedGearRevsAndTime) {
  open(lapExampleBike());
  // In the middle of Heron: from 644.2 to 699.2 m.
  chart().setCrosshair(670.0);
  const std::string read = chart().crosshairWords().toStdString();
  EXPECT_THAT(read, testing::HasSubstr("Heron"));
  EXPECT_THAT(read, testing::HasSubstr("Stock 69"));
  EXPECT_THAT(read, testing::HasSubstr("Engine, rpm: Stock 9,358, Proposed 9,981"));
  EXPECT_THAT(read, testing::HasSubstr("Gear: Stock 1, Proposed 1"));
  EXPECT_THAT(read, testing::HasSubstr("Won, s: Proposed +0.01"));
}

TEST_F(LapPageTest, InImperialUnitsAllOfItIs) {
  ui::preferences::setUnits(ui::UnitsShown(ui::UnitSystem::Imperial));
  open(lapExampleBike());
  EXPECT_NEAR(chart().lines().back()->points().back().x(), 1320.597 / 0.3048, 0.01);
  EXPECT_EQ(table().horizontalHeaderItem(1)->text().contains("mph"), true);
  EXPECT_EQ(table().item(1, 1)->text(), "43") << "69.31 km/h";
  EXPECT_THAT(page_->csv().toStdString(), testing::HasSubstr("setup,distance_ft,time_s,speed_mph,gear"));
}

TEST_F(LapPageTest, ShareOfGripIsAnUndoableStep) {
  open(lapExampleBike());
  const auto before = chart().lines().back()->points();
  QAbstractSpinBox& share = field("Grip used in bends");
  share.setFocus();
  QTest::keyClick(&share, Qt::Key_Down);
  EXPECT_EQ(window_->profile().tracks.front().cornerSharePercent, 89.0);
  EXPECT_EQ(history().undoText(), "grip used in bends of Reedmace Short 90 % → 89 %");
  EXPECT_TRUE(soon([&] { return chart().lines().back()->points() != before; }));
  QTest::keyClick(&share, Qt::Key_Down);
  EXPECT_EQ(history().count(), 1) << "a run of steps is one";
  history().undo();
  EXPECT_EQ(window_->profile().tracks.front().cornerSharePercent, 90.0);
  EXPECT_TRUE(soon([&] { return chart().lines().back()->points() == before; }));
}

TEST_F(LapPageTest, WhatIsOutsideIsRefusedWithAWord) {
  open(lapExampleBike());
  auto& lean = field("Most lean");
  typeInto(lean, "88");
  QTest::keyClick(&lean, Qt::Key_Return);
  EXPECT_EQ(window_->profile().tracks.front().maxLeanDeg, 52.0);
  EXPECT_TRUE(soon([&] { return control<QLabel>(**window_, "Message").text().contains("70"); }))
      << control<QLabel>(**window_, "Message").text().toStdString();
}

TEST_F(LapPageTest, AnotherTrackIsChosenAndUndone) {
  open(sampleBike("club-600"));
  ASSERT_GE(window_->profile().tracks.size(), 2U);
  auto& tracks = control<QComboBox>(*page_, "Track");
  const QString first = tracks.currentText();
  const auto before = chart().lines().back()->points();
  tracks.setFocus();
  QTest::keyClick(&tracks, Qt::Key_Down);
  const std::string other = window_->profile().tracks[1].name;
  EXPECT_EQ(window_->profile().ride->track, other);
  EXPECT_TRUE(soon([&] { return words().startsWith(QString::fromStdString(other)); }))
      << words().toStdString();
  EXPECT_NE(chart().lines().back()->points(), before);
  history().undo();
  EXPECT_TRUE(soon([&] { return chart().lines().back()->points() == before; }));
  EXPECT_EQ(tracks.currentText(), first);
}

TEST_F(LapPageTest, EverySampleWithATrackLaps) {
  for (const char* name : {"club-600", "motocross-450", "roadster-classic"}) {
    open(sampleBike(name));
    const auto line = chart().lines().back()->points();
    EXPECT_GT(line.size(), 20) << name;
    EXPECT_FALSE(words().isEmpty()) << name;
    EXPECT_GT(table().rowCount(), 3) << name;
  }
}

TEST_F(LapPageTest, SaysWhereALimiterRules) {
  Profile profile = lapExampleBike();
  // So short that the top gear runs into the limiter down every straight.
  profile.proposed = {.frontTeeth = front(11), .rearTeeth = rear(58)};
  open(profile);
  const ui::LapBook book = bookOf(profile);
  ASSERT_GT(book.proposed().figures->limiterS, 0.2);
  EXPECT_THAT(words().toStdString(), testing::HasSubstr("It loses "));
  const double seconds = ui::partFigures(book, book.proposed(), 0).limiterS;
  EXPECT_THAT(words().toStdString(),
              testing::HasSubstr("s on Pit straight, where it sits " +
                                 QLocale().toString(seconds, 'f', 2).toStdString() + " s on the limiter"));
  double told = 0.0;
  for (std::size_t i = 0; i < book.parts.size(); ++i)
    told += ui::partFigures(book, book.proposed(), i).limiterS;
  EXPECT_NEAR(told, book.proposed().figures->limiterS, 1e-9) << "all of it lies in some part";
}

TEST_F(LapPageTest, EqualTimesAreCalledEqual) {
  Profile profile = lapExampleBike();
  // Two thousandths shorter: 0.0019 s.
  profile.proposed = {.primaryRatio = 1.002 * profile.stock.primaryRatio};
  open(profile);
  EXPECT_THAT(words().toStdString(), testing::HasSubstr("equal within ±0.01 s, 39.62 s"));
  EXPECT_THAT(words().toStdString(), testing::Not(testing::HasSubstr("wins")));
}

/// A difference below its band is not called one even before anybody has waited.
TEST_F(LapPageTest, TheBandIsKnownAtFirstSight) {
  open(sampleBike("club-600"));
  EXPECT_THAT(words().toStdString(), testing::HasSubstr("equal within"));
}

TEST_F(LapPageTest, WithoutATrackItSaysWhatToGive) {
  Profile profile = workedExample();
  profile.tracks.clear();
  if (profile.ride) profile.ride->track.clear();
  open(profile);
  auto* lacking = page_->findChild<ui::LackingPanel*>();
  EXPECT_TRUE(lacking->isVisible());
  EXPECT_THAT(lacking->findChild<QLabel*>()->text().toStdString(), testing::HasSubstr("the tracks"));
  EXPECT_TRUE(page_->numbers().empty());
  EXPECT_EQ(page_->picture(), nullptr);
}

TEST_F(LapPageTest, WithoutATorqueCurveItSaysSo) {
  Profile profile = lapExampleBike();
  profile.bike.engine.torqueCurve.reset();
  open(profile);
  auto* lacking = page_->findChild<ui::LackingPanel*>();
  EXPECT_TRUE(lacking->isVisible());
  EXPECT_THAT(lacking->findChild<QLabel*>()->text().toStdString(), testing::HasSubstr("torque curve"));
}

TEST_F(LapPageTest, WithoutGeometryItLapsAndSaysWhatIsLeftOut) {
  Profile profile = lapExampleBike();
  profile.bike.chassis->wheelbaseMm.reset();
  profile.bike.chassis->cgHeightMm.reset();
  open(profile);
  EXPECT_FALSE(words().isEmpty());
  EXPECT_THAT(control<QLabel>(*page_, "What the times rest on").text().toStdString(),
              testing::AllOf(testing::HasSubstr("no wheel lifts here"), testing::HasSubstr("closed course")));
}

TEST_F(LapPageTest, AClosedTrackWithoutABendIsRefusedInWords) {
  Profile profile = lapExampleBike();
  profile.tracks.front().segments = {{.name = "Oval", .lengthM = 900}};
  open(profile);
  auto* lacking = page_->findChild<ui::LackingPanel*>();
  EXPECT_TRUE(lacking->isVisible());
  EXPECT_THAT(lacking->findChild<QLabel*>()->text().toStdString(), testing::HasSubstr("no bend"));
}

TEST_F(LapPageTest, SaysWhereTheBikeStopsForGood) {
  Profile profile = lapExampleBike();
  Track up{.name = "Up", .closed = false, .segments = {{.name = "Foot", .lengthM = 100}}};
  up.segments.push_back({.name = "The Wall", .lengthM = 900, .slopePercent = 55});
  profile.bike.chassis->tyreGrip = 0.3;
  profile.tracks = {up};
  profile.ride->track.clear();
  open(profile);
  auto* lacking = page_->findChild<ui::LackingPanel*>();
  EXPECT_TRUE(lacking->isVisible());
  const std::string told = "The bike stops on Up for good, on The Wall: no gear pulls there.";
  EXPECT_EQ(lacking->findChild<QLabel*>()->text().toStdString(), told);
  EXPECT_EQ(ui::noLapWords(plan(profile)).toStdString(), told);
}

/// Two corners of 40 m radius, each half a turn, with 200 m between: a recorded line of the same track.
Track stadium() {
  constexpr double kPi = 3.14159265358979323846;
  TrackPath path{.spacingM = 5.0, .curvaturePerKm = {}, .slopePercent = {}, .xM = {}, .yM = {}, .source = {}};
  const auto add = [&](double metres, double radius) {
    for (int i = 0; i < static_cast<int>(metres / path.spacingM); ++i)
      path.curvaturePerKm.push_back(radius > 0.0 ? 1000.0 / radius : 0.0);
  };
  for (int half = 0; half < 2; ++half) {
    add(200.0, 0.0);
    add(40.0 * kPi, 40.0);
  }
  Track track{.name = "Recorded", .closed = true};
  track.path = SharedPath(path);
  return track;
}

TEST_F(LapPageTest, ARecordedLineGetsItsCornersNumbered) {
  Profile profile = lapExampleBike();
  profile.tracks = {stadium()};
  profile.ride->track.clear();
  open(profile);
  ASSERT_EQ(table().rowCount(), 3);
  EXPECT_EQ(table().item(0, 0)->text(), "Corner 1");
  EXPECT_EQ(table().item(1, 0)->text(), "Corner 2");
  const ui::LapBook book = bookOf(profile);
  ASSERT_EQ(book.parts.size(), 4U);
  EXPECT_NEAR(book.parts[1].fromM, 200.0, 1e-9);
  EXPECT_NEAR(book.parts[1].toM, 325.0, 1e-9);
  // v² = μ·share·g·r, level and upright: the closed form of a bend.
  const Road road = roadOf(profile.bike, *profile.ride);
  const double mps = std::sqrt(*road.grip * 0.9 * 9.80665 * 40.0);
  EXPECT_NEAR(ui::partFigures(book, book.stock(), 1).minMps, mps, 1e-9);
}

TEST_F(LapPageTest, ANoisyRecordingSaysWhatItsNoiseDoes) {
  Profile profile = lapExampleBike();
  Track track = stadium();
  TrackPath path = *track.path;
  path.curvatureNoisePerKm = 20.0;
  path.smoothingM = 8.0;
  track.path = SharedPath(path);
  profile.tracks = {track};
  profile.ride->track.clear();
  open(profile);
  const auto change = lapChange(*bookOf(profile).plan, bookOf(profile).plan->proposed);
  ASSERT_GT(change->noiseS, ui::kLapBandS);
  EXPECT_THAT(words().toStdString(),
              testing::HasSubstr("The noise of the recording alone makes it uncertain by ±" +
                                 ui::bandText(change->noiseS).toStdString() + " s."));
  profile.tracks = {stadium()};
  open(profile);
  EXPECT_THAT(words().toStdString(), testing::Not(testing::HasSubstr("noise")));
}

TEST_F(LapPageTest, WhereAxleAndGearingWorkAgainstEachOtherBothAreTold) {
  ui::LapBook book = bookOf(lapExampleBike());
  book.bandS = 0.01;
  book.change = LapChange{.seconds = -0.09, .bandS = 0.01, .axleS = -0.11};
  EXPECT_THAT(ui::lapWords(book).toStdString(),
              testing::HasSubstr("The axle's new place wins 0.11 s, the gearing by itself loses 0.02 s."));
  book.change = LapChange{.seconds = -0.09, .bandS = 0.01, .axleS = -0.03};
  EXPECT_THAT(ui::lapWords(book).toStdString(),
              testing::HasSubstr("Of it the axle's new place wins 0.03 s."));
}

TEST_F(LapPageTest, SaysWhereTheClutchIsTakenToSlip) {
  Profile profile = sampleBike("club-600");
  profile.ride->track = "Sallow Fen";
  EXPECT_THAT(ui::lapHonesty(plan(profile)).toStdString(),
              testing::HasSubstr("first gear turns slower than 8,340 rpm the clutch is taken to slip"));
  profile.ride->launchRpm = 2500;
  EXPECT_THAT(ui::lapHonesty(plan(profile)).toStdString(), testing::Not(testing::HasSubstr("clutch")));
}

TEST_F(LapPageTest, ARecordingsTimesRestOnItsPositions) {
  Profile profile = lapExampleBike();
  EXPECT_THAT(ui::lapHonesty(plan(profile)).toStdString(), testing::Not(testing::HasSubstr("recording")));
  profile.tracks = {stadium()};
  profile.ride->track.clear();
  EXPECT_THAT(ui::lapHonesty(plan(profile)).toStdString(), testing::HasSubstr("The line is a recording"));
}

/// A rally's stage takes some laps too many for the window to wait for.
TEST_F(LapPageTest, OnALongRecordingTheBandComesLaterAndNothingIsCalledQuickerBefore) {
  const Profile profile = onALongLine();
  open(profile);
  EXPECT_THAT(words().toStdString(), testing::HasSubstr("being worked out"));
  EXPECT_THAT(words().toStdString(), testing::Not(testing::HasSubstr("quicker")));
  ui::LapBook book = bookOf(profile);
  ui::takeChange(book);
  EXPECT_TRUE(soon([&] { return words() == ui::lapWords(book); })) << words().toStdString();
}

TEST_F(LapPageTest, WithoutATrackItLeadsToTheTracks) {
  Profile profile = workedExample();
  profile.tracks.clear();
  open(profile);
  page_->findChild<ui::LackingPanel*>()->findChild<QPushButton*>()->click();
  auto* tracks = (*window_)->findChild<ui::TracksWindow*>();
  ASSERT_TRUE(tracks);
  EXPECT_TRUE(tracks->isVisible());
}

/// Beside the details of the bike the page is narrow: what does not fit is scrolled to.
TEST_F(LapPageTest, ATableThatIsTooWideScrollsSideways) {
  ui::FiguresTable table(QStringLiteral("Wide"), 6);
  table.showWhole();
  std::vector<QStringList> rows(4, QStringList(6, QStringLiteral("a cell of words")));
  table.resize(300, 100);
  table.show(rows);
  table.QWidget::show();
  QTest::qWait(20);
  EXPECT_GT(table.horizontalScrollBar()->maximum(), 0);
  const int last = table.rowCount() - 1;
  EXPECT_LE(table.rowViewportPosition(last) + table.rowHeight(last), table.viewport()->height());
}

TEST_F(LapPageTest, TheMapKeepsHowItWasSetUp) {
  open(lapExampleBike());
  for (auto* button : page_->findChildren<QRadioButton*>())
    if (button->text() == "Won") button->click();
  for (auto* button : page_->findChildren<QToolButton*>())
    if (button->text() == "Map") button->click();
  EXPECT_FALSE(map().isVisible());
  const QVariantMap state = page_->state();
  open(lapExampleBike());
  page_->restore(state);
  EXPECT_EQ(map().colouring(), ui::TrackMap::Colouring::Won);
  EXPECT_FALSE(map().isVisible());
}

TEST_F(LapPageTest, OnAUsualScreenTheWholeChartIsInView) {
  ui::preferences::setHintsDismissed(true);
  open(lapExampleBike());
  (*window_)->resize(1270, 690);
  EXPECT_TRUE(soon([&] {
    return chart().viewport()->visibleRegion().boundingRect() == chart().viewport()->rect();
  })) << chart().height()
      << " px, of which " << chart().viewport()->visibleRegion().boundingRect().height() << " are seen";
}

TEST_F(LapPageTest, EveryColouringCanBeReadWithoutColours) {
  open(lapExampleBike());
  const auto grey = [&] { return map().grab().toImage().convertToFormat(QImage::Format_Grayscale8); };
  std::vector<QImage> pictures;
  for (const auto colouring :
       {ui::TrackMap::Colouring::Speed, ui::TrackMap::Colouring::Gear, ui::TrackMap::Colouring::Won}) {
    map().setColouring(colouring);
    pictures.push_back(grey());
  }
  EXPECT_NE(pictures[0], pictures[1]);
  EXPECT_NE(pictures[1], pictures[2]);
}

}  // namespace
}  // namespace layshaft::test
