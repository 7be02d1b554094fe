// SPDX-License-Identifier: GPL-3.0-or-later
//
// The lap where it is handed over: the text report, the bench sheet, the readout's figure.
#include "ui/words/lap_report.h"

#include <QLocale>
#include <QTemporaryDir>

#include "tests/ui/lap_bikes.h"
#include "tests/ui/on_paper.h"
#include "ui/words/key_figures.h"
#include "ui/words/text_report.h"

namespace layshaft::test {
namespace {

Profile withoutATrack() {
  Profile profile = lapExampleBike();
  profile.tracks.clear();
  profile.ride->track.clear();
  return profile;
}

QString benchSheetText(const Profile& profile) {
  QTemporaryDir folder;
  const QString file = folder.filePath("sheet.pdf");
  EXPECT_EQ(savePdf(benchSheetOf(profile), file), std::nullopt);
  return wordsOnPaper(file);
}

TEST(LapInTheReport, TellsTimesBandAxleAndWhereItWins) {
  const QString text = ui::textReport(plan(lapExampleBike()), ui::UnitsShown());
  for (const char* part :
       {"Lap (closed course)\n",
        "Reedmace Short: 39.58 s with the proposal, 0.04 s quicker than stock with 39.62 s.",
        "The difference may be off by ±", "It wins 0.02 s on Long Meadow",
        "Lap times depend on grip and rider", "12,252 → 13,069", "Whole lap"})
    EXPECT_THAT(text.toStdString(), testing::HasSubstr(part));
}

TEST(LapInTheReport, TellsWhatOfItTheAxleDoes) {
  const Plan planned = plan(sampleBike("motocross-450"));  // on loose ground the place of the axle counts
  const double axleS = lapChange(planned, planned.proposed).value().axleS;
  ASSERT_LE(axleS, -0.01);
  EXPECT_THAT(
      ui::textReport(planned, ui::UnitsShown()).toStdString(),
      testing::HasSubstr("The axle's new place wins " + QLocale().toString(-axleS, 'f', 2).toStdString() +
                         " s, the gearing by itself loses "));
}

TEST(LapInTheReport, InsideTheBandNothingIsQuicker) {
  const ui::LapReport report = ui::lapReport(plan(sampleBike("club-600")), ui::UnitsShown());
  EXPECT_THAT(report.words.toStdString(), testing::HasSubstr("equal within ±"));
  EXPECT_THAT(report.words.toStdString(),
              testing::Not(testing::AnyOf(testing::HasSubstr("quicker"), testing::HasSubstr("slower"))));
}

TEST(LapInTheReport, SaysWhyThereIsNone) {
  Profile profile = lapExampleBike();
  profile.tracks.front().segments = {{.name = "Oval", .lengthM = 900}};
  const ui::LapReport refused = ui::lapReport(plan(profile), ui::UnitsShown());
  EXPECT_THAT(refused.words.toStdString(), testing::HasSubstr("no bend"));
  EXPECT_TRUE(refused.corners.empty());
  profile = lapExampleBike();
  profile.bike.engine.torqueCurve.reset();
  EXPECT_THAT(ui::textReport(plan(profile), ui::UnitsShown()).toStdString(),
              testing::HasSubstr("Lap (closed course)\nNot known: it needs "));
  EXPECT_TRUE(ui::lapReport(plan(withoutATrack()), ui::UnitsShown()).isEmpty());
  EXPECT_FALSE(ui::textReport(plan(withoutATrack()), ui::UnitsShown()).contains("Lap ("));
}

TEST(LapOnPaper, TheBenchSheetHasTheLapAndItsCorners) {
  const Profile profile = lapExampleBike();
  const QString text = benchSheetText(profile);
  const ui::LapReport report = ui::lapReport(plan(profile), ui::UnitsShown());
  for (const QString& part : {report.title, report.words.simplified(), report.restsOn.simplified()})
    EXPECT_TRUE(text.contains(part)) << part.toStdString() << "\n" << text.toStdString();
  ASSERT_GT(report.corners.size(), 2U);
  for (const QStringList& corner : report.corners) EXPECT_TRUE(text.contains(corner.front()));
  EXPECT_TRUE(text.contains("12,252 → 13,069")) << text.toStdString();
  EXPECT_FALSE(benchSheetText(withoutATrack()).contains("Lap ("));
}

TEST(LapOnPaper, OfManyCornersTheWordsAlone) {
  Profile profile = lapExampleBike();
  auto& segments = profile.tracks.front().segments;
  const std::vector<TrackSegment> once = segments;
  for (int i = 0; i < 11; ++i) segments.insert(segments.end(), once.begin(), once.end());
  ASSERT_GT(ui::lapReport(plan(profile), ui::UnitsShown()).corners.size(), 48U);
  const QString text = benchSheetText(profile);
  EXPECT_TRUE(text.contains("Lap (closed course)"));
  EXPECT_FALSE(text.contains("Whole lap"));
}

TEST(LapOnPaper, PinsHaveTheirLapsBesideOneAnother) {
  Profile profile = lapExampleBike();
  profile.pins = {{"Short", {.rearTeeth = rear(50)}}};
  EXPECT_TRUE(benchSheetText(profile).contains("Lap of Reedmace Short, s"));
}

TEST(LapFigure, IsForTheReadoutWhereThereIsATrack) {
  const Plan planned = plan(lapExampleBike());
  const auto figures = ui::keyFigures(planned, ui::UnitsShown(), {ui::Figure::Lap});
  ASSERT_EQ(figures.size(), 1U);
  EXPECT_EQ(figures[0].label, "Lap of Reedmace Short");
  EXPECT_TRUE(figures[0].stock.startsWith("39.6")) << figures[0].stock.toStdString();
  EXPECT_EQ(figures[0].difference, "") << "nothing without its band";
  EXPECT_FALSE(ui::hasFigure(plan(withoutATrack()), ui::Figure::Lap));
}

}  // namespace
}  // namespace layshaft::test
