// SPDX-License-Identifier: GPL-3.0-or-later
//
// Lap times side by side, and what their difference is worth.
#include <QLocale>
#include <QTabWidget>
#include <QTableView>
#include <cmath>

#include "tests/ui/lap_bikes.h"
#include "ui/document/setup_edits.h"
#include "ui/pages/compare_page.h"
#include "ui/words/compare_table.h"
#include "ui/words/lap_words.h"

namespace layshaft::test {
namespace {

using ui::CompareFigure;

const std::vector<CompareFigure> kLapRows{CompareFigure::LapTime,     CompareFigure::LapChange,
                                          CompareFigure::LapTopSpeed, CompareFigure::LapShifts,
                                          CompareFigure::LapLimiter,  CompareFigure::LapFullThrottle};

ui::CompareRow lapRowOf(const Plan& plan, CompareFigure figure) {
  return ui::compareTable(plan, ui::UnitsShown(), {figure}).rows.at(0);
}

std::string lapTextOf(const Plan& plan, CompareFigure figure, std::size_t setup) {
  return lapRowOf(plan, figure).cells.at(setup).text.toStdString();
}

std::vector<std::size_t> lapBestOf(const ui::CompareRow& row) {
  std::vector<std::size_t> best;
  for (std::size_t i = 0; i < row.cells.size(); ++i)
    if (row.cells[i].best) best.push_back(i);
  return best;
}

using Places = std::vector<std::size_t>;

TEST(CompareLap, HasTheFiguresOfTheLaps) {
  const Plan planned = plan(lapExampleBike());
  ASSERT_TRUE(planned.stock.lap && planned.proposed.lap);
  const LapFigures& lap = *planned.proposed.lap;
  EXPECT_EQ(lapRowOf(planned, CompareFigure::LapTime).name, "Lap of Reedmace Short, s");
  EXPECT_EQ(lapTextOf(planned, CompareFigure::LapTime, 0), "39.62") << "from the worked example";
  EXPECT_EQ(lapTextOf(planned, CompareFigure::LapTime, 1), "39.58");
  EXPECT_EQ(lapRowOf(planned, CompareFigure::LapTopSpeed).values[1], lap.topMps);
  EXPECT_EQ(lapRowOf(planned, CompareFigure::LapShifts).values[1], lap.shifts);
  EXPECT_EQ(lapRowOf(planned, CompareFigure::LapLimiter).values[1], lap.limiterS);
  const double share = 100.0 * lap.fullThrottleS / lap.timeS;
  ASSERT_GT(share, 10.0);
  EXPECT_EQ(lapTextOf(planned, CompareFigure::LapFullThrottle, 1),
            QLocale().toString(share, 'f', 0).toStdString());
}

TEST(CompareLap, TheDifferenceHasItsBand) {
  const Plan planned = plan(lapExampleBike());
  const LapChange change = lapChange(planned, planned.proposed).value();
  ASSERT_GT(std::abs(change.seconds), change.bandS);
  EXPECT_EQ(lapTextOf(planned, CompareFigure::LapChange, 1),
            "−0.04 ± " + ui::bandText(std::max(change.bandS, 0.01)).toStdString());
  EXPECT_EQ(lapTextOf(planned, CompareFigure::LapChange, 0), "0.00");
  const auto row = lapRowOf(planned, CompareFigure::LapTime);
  EXPECT_EQ(lapBestOf(row), Places{1});
  EXPECT_EQ(row.cells[1].difference, "") << "it stands below with its band";
}

TEST(CompareLap, InsideTheBandNobodyIsBest) {
  Profile profile = sampleBike("club-600");
  profile.pins.clear();
  const Plan planned = plan(profile);
  const LapChange change = lapChange(planned, planned.proposed).value();
  ASSERT_GT(change.bandS, 0.01);
  ASSERT_LE(std::abs(change.seconds), change.bandS);
  ASSERT_NE(lapTextOf(planned, CompareFigure::LapTime, 0), lapTextOf(planned, CompareFigure::LapTime, 1));
  const auto row = lapRowOf(planned, CompareFigure::LapChange);
  EXPECT_EQ(row.cells[1].text, "equal ± " + ui::bandText(change.bandS));
  EXPECT_THAT(row.cells[1].why.toStdString(), testing::HasSubstr("grip"));
  EXPECT_EQ(lapBestOf(lapRowOf(planned, CompareFigure::LapTime)), Places{});
  // Beside one that is slower by more than the band, the two share the mark.
  profile.pins = {{"Far too tall", {.rearTeeth = rear(30)}}};
  EXPECT_EQ(lapBestOf(lapRowOf(plan(profile), CompareFigure::LapTime)), (Places{0, 1}));
}

TEST(CompareLap, WithoutALapItSaysWhy) {
  Profile profile = lapExampleBike();
  const auto why = [&](const char* part) {
    for (const CompareFigure figure : kLapRows) {
      const ui::CompareCell cell = lapRowOf(plan(profile), figure).cells.at(1);
      EXPECT_EQ(cell.text, "–");
      EXPECT_THAT(cell.why.toStdString(), testing::HasSubstr(part));
    }
  };
  profile.tracks.front().segments = {{.name = "Oval", .lengthM = 900}};
  why("no bend");
  profile = lapExampleBike();
  profile.bike.engine.torqueCurve.reset();
  why("torque curve");
  profile = lapExampleBike();
  profile.tracks.clear();
  profile.ride->track.clear();
  why("the tracks");
  EXPECT_EQ(lapRowOf(plan(profile), CompareFigure::LapTime).name, "Lap, s");
}

TEST(CompareLap, ALongNameOfATrackIsCut) {
  Profile profile = lapExampleBike();
  profile.tracks.front().name = std::string(60, 'W');
  profile.ride->track = profile.tracks.front().name;
  EXPECT_LT(lapRowOf(plan(profile), CompareFigure::LapTime).name.size(), 40);
}

TEST(CompareLap, TheTimesAreInTheCsv) {
  const Plan planned = plan(lapExampleBike());
  const QString csv =
      ui::compareCsv(ui::compareTable(planned, ui::UnitsShown(), kLapRows), planned, ui::UnitsShown());
  EXPECT_THAT(csv.toStdString(), testing::HasSubstr("lap_s,lap_top_speed_kmh,lap_shifts,lap_limiter_s,"
                                                    "lap_full_throttle_over_lap\n"));
  EXPECT_THAT(csv.toStdString(), testing::HasSubstr("39.6192"));
}

TEST(LapBands, AreThoseOfTheDifferences) {
  Profile profile = lapExampleBike();
  profile.pins = {{"Short", {.rearTeeth = rear(50)}}};
  const Plan planned = plan(profile);
  const auto bands = ui::LapBands::workedOut(planned);
  ASSERT_TRUE(bands.isWhole());
  EXPECT_FALSE(bands.isGuessed());
  EXPECT_NEAR(bands.betweenS(0, 1).value(), lapChange(planned, planned.proposed)->bandS, 1e-12);
  EXPECT_NEAR(bands.betweenS(0, 2).value(), lapChange(planned, planned.pins[0])->bandS, 1e-12);
  EXPECT_EQ(bands.betweenS(1, 1), 0.0);
  EXPECT_EQ(bands.betweenS(0, 3), std::nullopt);
}

TEST(LapBands, WhileSomethingIsTurnedThoseBeforeWillDo) {
  Profile profile = lapExampleBike();
  const Plan first = plan(profile);
  const auto before = ui::LapBands::workedOut(first);
  profile.proposed.rearTeeth = rear(48);
  const Plan second = plan(PlanInput(first.input), &first);
  EXPECT_FALSE(ui::LapBands::guessed(second, before).isGuessed()) << "nothing is new";
  PlanInput turned = first.input;
  turned.proposed.rearTeeth = Teeth::rear(48).value();
  const Plan third = plan(turned, &first);
  const auto guessed = ui::LapBands::guessed(third, before);
  EXPECT_TRUE(guessed.isGuessed() && guessed.isWhole());
  EXPECT_NEAR(guessed.betweenS(0, 1).value(), before.betweenS(0, 1).value(), 1e-9);
  const auto after = ui::LapBands::workedOut(third, guessed);
  EXPECT_FALSE(after.isGuessed());
  EXPECT_NEAR(after.betweenS(0, 1).value(), lapChange(third, third.proposed)->bandS, 1e-12);
  EXPECT_NE(after.betweenS(0, 1), guessed.betweenS(0, 1));
  // Of another track nothing is known.
  const Plan elsewhere = plan(onARecordedLine());
  EXPECT_FALSE(ui::LapBands::guessed(elsewhere, before).isWhole());
}

TEST(LapBands, TheNoiseOfARecordingIsCarriedAlong) {
  Profile profile = onARecordedLine();
  TrackPath path = *profile.tracks.front().path;
  path.curvatureNoisePerKm = 5.0;
  path.smoothingM = 8.0;
  profile.tracks.front().path = SharedPath(path);
  const Plan first = plan(profile);
  const auto before = ui::LapBands::workedOut(first);
  ASSERT_GT(lapChange(first, first.proposed)->noiseS, 0.0);
  PlanInput turned = first.input;
  turned.proposed.rearTeeth = Teeth::rear(57).value();
  const auto guessed = ui::LapBands::guessed(plan(turned, &first), before);
  ASSERT_TRUE(guessed.isGuessed());
  EXPECT_NEAR(guessed.betweenS(0, 1).value(), before.betweenS(0, 1).value(), 1e-9);
}

class CompareLapPage : public testing::Test, FreshSettings {
 protected:
  void open(const Profile& profile) {
    window_ = std::make_unique<Window>(profile);
    page_ = (*window_)->findChild<ui::ComparePage*>();
    (*window_)->findChild<QTabWidget*>()->setCurrentWidget(page_);
    QTest::qWait(30);
  }
  QAbstractItemModel& model() { return *control<QTableView>(*page_, "Comparison").model(); }
  std::string shown(const char* row, int column) {
    for (int r = 0; r < model().rowCount(); ++r)
      if (model().headerData(r, Qt::Vertical).toString().startsWith(row))
        return model().index(r, column).data().toString().toStdString();
    return "no such row";
  }
  std::string changeNow(int rearTeeth) {
    Profile profile = onARecordedLine();
    profile.proposed.rearTeeth = rear(rearTeeth);
    return lapTextOf(plan(profile), CompareFigure::LapChange, 1);
  }

  std::unique_ptr<Window> window_;
  ui::ComparePage* page_ = nullptr;
};

/// Their bands take too long for a step; the times do not.
TEST_F(CompareLapPage, OnARecordedLineTheBandFollowsAMomentLater) {
  open(onARecordedLine());
  EXPECT_THAT(shown("Lap against", 1), testing::HasSubstr("±")) << "known at first sight";
  const std::string time = shown("Lap of Recorded", 1);
  ASSERT_EQ(ui::SetupEdits((*window_)->document(), ui::Side::Proposed).setRearTeeth(57), std::nullopt);
  EXPECT_TRUE(soon([&] { return shown("Lap of Recorded", 1) != time; }));
  EXPECT_THAT(shown("Lap against", 1), testing::HasSubstr("±"));
  EXPECT_TRUE(soon([&] { return shown("Lap against", 1) == changeNow(57); }))
      << shown("Lap against", 1) << " for " << changeNow(57);
}

TEST_F(CompareLapPage, OnALongLineTheDifferenceIsToldOnceItsBandIsThere) {
  const Profile profile = onALongLine();
  open(profile);
  EXPECT_THAT(shown("Lap of Recorded", 1), testing::HasSubstr("."));
  EXPECT_EQ(shown("Lap against", 1), "–");
  const std::string told = lapTextOf(plan(profile), CompareFigure::LapChange, 1);
  ASSERT_THAT(told, testing::HasSubstr("±"));
  EXPECT_TRUE(soon([&] { return shown("Lap against", 1) == told; })) << shown("Lap against", 1);
}

TEST_F(CompareLapPage, WhatIsCopiedIsNotGuessed) {
  open(onARecordedLine());
  const std::string time = shown("Lap of Recorded", 1);
  ASSERT_EQ(ui::SetupEdits((*window_)->document(), ui::Side::Proposed).setRearTeeth(57), std::nullopt);
  ASSERT_TRUE(soon([&] { return shown("Lap of Recorded", 1) != time; }));
  bool found = false;
  for (const QStringList& row : page_->numbers())
    if (row.front().startsWith("Lap against")) {
      EXPECT_EQ(row[2].toStdString(), changeNow(57));
      found = true;
    }
  EXPECT_TRUE(found);
}

}  // namespace
}  // namespace layshaft::test
