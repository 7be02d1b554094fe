// SPDX-License-Identifier: GPL-3.0-or-later
//
// Every caution stands where the danger is: in the window, in saved pictures, in the text report and on
// paper.
#include "tests/ui/on_paper.h"
#include "tests/ui/what_is_said.h"
#include "ui/pages/chain_page.h"
#include "ui/pages/ladder_page.h"
#include "ui/words/cautions.h"
#include "ui/words/text_report.h"

namespace layshaft::test {
namespace {

using ui::Caution;
using ui::CautionPlace;

QString onPaper(const Profile& profile) {
  QTemporaryDir folder;
  const QString file = folder.filePath("page.pdf");
  EXPECT_EQ(savePdf(benchSheetOf(profile), file), std::nullopt);
  return wordsOnPaper(file);
}

struct Danger {
  const char* what;
  std::function<Profile()> profile;
  Caution caution;
  const char* words;  ///< as the trade has them
  std::vector<CautionPlace> places;
};

Profile changed(const char* sample, const std::function<void(Profile&)>& change) {
  Profile profile = sampleBike(sample);
  change(profile);
  return profile;
}

void setReadsHigh(Profile& profile, double percent) {
  profile.bike.speedometer = Speedometer{.sensor = SpeedSensor::GearboxOutput, .readsHighPercent = percent};
}

using enum CautionPlace;
const std::vector<CautionPlace> kAllPlaces{Readout, Counter, ChainPage, WearPage, Work, Paper};
const std::vector<CautionPlace> kChainAndPaper{ChainPage, Paper};
const std::vector<CautionPlace> kWhereHandsAre{ChainPage, WearPage, Work, Paper};
const std::vector<CautionPlace> kWhereChainsAreJoined{ChainPage, Work, Paper};
const std::vector<CautionPlace> kWhereSensorsAreTold{Counter, ChainPage, Work, Paper};
const std::vector<CautionPlace> kRideAndLaw{Readout, Counter, Work, Paper};
const std::vector<CautionPlace> kRide{Readout, Counter, Paper};
const std::vector<CautionPlace> kAllButWear{Readout, Counter, ChainPage, Work, Paper};

const std::vector<Danger>& dangers() {
  static const std::vector<Danger> all{
      {"hands", [] { return sampleBike("club-600"); }, Caution::Hands,
       "Key out, neutral, bike steady on a stand. Turn the wheel by hand only, with fingers and rags away "
       "from "
       "where chain or belt meets a sprocket or pulley.",
       kWhereHandsAre},
      {"alignment", [] { return sampleBike("club-600"); }, Caution::Alignment,
       "Align the wheel. Axle and sprocket fasteners to the manual's torque, new locking parts. Re-check "
       "slack at "
       "the tightest point. Check brake and ABS sensor; pump the brake before riding.",
       kWhereHandsAre},
      {"chain ordered",
       [] { return changed("club-600", [](Profile& p) { p.proposed.options.links = 112; }); },
       Caution::JoiningLink,
       "Join only with a new joining link made for that chain. Rivet link: proper tool, never reused. Clip "
       "link: "
       "closed end leads in the direction of travel.",
       kWhereChainsAreJoined},
      {"slack", [] { return sampleBike("motocross-450"); }, Caution::SlackLimit,
       "Slack comes from the manual, in the manual's posture. The figure here is a limit below which the "
       "chain "
       "binds at the swingarm angle given, never a setting.",
       kChainAndPaper},
      {"belt", [] { return sampleBike("tourer-belt"); }, Caution::BeltTension,
       "Belt tension: by the manual's method.", kWhereHandsAre},
      {"odd links", [] { return changed("club-600", [](Profile& p) { p.proposed.options.links = 113; }); },
       Caution::OddLinks, "Does not fit properly: use an even number of links.", kAllButWear},
      {"worn chain",
       [] { return changed("club-600", [](Profile& p) { p.stock.options.chainElongationPercent = 1.0; }); },
       Caution::WornChain, "Past the wear limit: replace chain and both sprockets as a set.", kAllPlaces},
      {"tyre",
       [] {
         return changed("club-600",
                        [](Profile& p) { p.proposed.rearTyre = TyreSize::parse("190/55ZR17").value(); });
       },
       Caution::TyreSize,
       "Only sizes approved for bike and rim, with the load and speed rating; check swingarm clearance.",
       kRideAndLaw},
      {"wheel speeds",
       [] {
         return changed("club-600",
                        [](Profile& p) { p.proposed.rearTyre = TyreSize::parse("190/55ZR17").value(); });
       },
       Caution::WheelSpeedRatios,
       "Tyre size changes wheel-speed ratios: ABS and traction control can be affected. Sprockets change "
       "what a "
       "gearbox sensor sees. Ask a qualified workshop; follow local law, insurance and warranty.",
       kRideAndLaw},
      {"gearbox sensor", [] { return changed("club-600", [](Profile& p) { setReadsHigh(p, 2); }); },
       Caution::GearboxSensor,
       "Sprockets change what a gearbox sensor sees. Ask a qualified workshop; follow local law, insurance "
       "and "
       "warranty.",
       kWhereSensorsAreTold},
      {"reads low", [] { return changed("club-600", [](Profile& p) { setReadsHigh(p, -10); }); },
       Caution::SpeedometerLow,
       "reads below true speed: outside UN Regulation 39, not for the road until recalibrated.", kRideAndLaw},
      {"reads high", [] { return changed("club-600", [](Profile& p) { setReadsHigh(p, 12); }); },
       Caution::SpeedometerHigh, "reads more high than UN Regulation 39 allows.", kRideAndLaw},
      {"shorter", [] { return sampleBike("club-600"); }, Caution::ShorterGearing,
       "Downshifts over-rev at a lower road speed; the front lifts more easily.", kRide},
      {"closed course", [] { return sampleBike("club-600"); }, Caution::ClosedCourse, "closed course", kRide},
      {"lap",
       [] { return profileFrom(contentsOf(sourceFolder() / "tests/reference/data/lap-club-600.bike.json")); },
       Caution::ClosedCourse, "closed course", kRide}};
  return all;
}

TEST(CautionPlaces, EachIsSaidWhereTheTableSaysAndInTheTablesWords) {
  for (const Danger& danger : dangers()) {
    const Plan planned = plan(danger.profile());
    for (const CautionPlace place : kAllPlaces) {
      const auto said = ui::cautionsAt(planned, place);
      const bool wanted = std::find(danger.places.begin(), danger.places.end(), place) != danger.places.end();
      EXPECT_EQ(std::count(said.begin(), said.end(), danger.caution), wanted ? 1 : 0)
          << danger.what << " at place " << static_cast<int>(place);
    }
    EXPECT_TRUE(ui::cautionText(danger.caution, isBelt(planned.proposed.setup)).contains(danger.words))
        << danger.what;
    const QString paper = onPaper(danger.profile());
    EXPECT_TRUE(paper.contains(danger.words)) << danger.what << "\n" << paper.toStdString();
    EXPECT_TRUE(ui::textReport(planned, ui::UnitsShown()).contains(danger.words)) << danger.what;
  }
}

TEST(CautionPlaces, InTheWindowAndInItsSavedPictures) {
  for (const Danger& danger : dangers()) {
    Window window(danger.profile());
    const auto at = [&](CautionPlace place) {
      return std::find(danger.places.begin(), danger.places.end(), place) != danger.places.end();
    };
    if (at(CautionPlace::Readout)) {
      EXPECT_TRUE(window->readout().text().contains(danger.words)) << danger.what;
    }
    if (!at(CautionPlace::ChainPage)) continue;
    window->findChild<QTabWidget*>()->setCurrentIndex(3);
    QTest::qWait(20);
    auto* page = window->findChild<ui::ChainPage*>();
    auto& label = control<QLabel>(*page, "Cautions");
    EXPECT_TRUE(label.isVisible() && label.text().contains(danger.words)) << danger.what;
    EXPECT_GE(label.font().pointSizeF(), 9.0);
    EXPECT_EQ(label.foregroundRole(), QPalette::WindowText);
    EXPECT_TRUE(textsOf(*page->picture()).join(' ').simplified().contains(danger.words)) << danger.what;
  }
}

TEST(CautionPlaces, NothingIsSaidWithoutNeed) {
  Profile profile = sampleBike("club-600");
  profile.proposed = {};
  profile.bike.speedometer.reset();
  const Plan same = plan(profile);
  EXPECT_EQ(ui::cautionsAt(same, CautionPlace::Readout), std::vector<Caution>{Caution::ClosedCourse});
  EXPECT_EQ(ui::cautionsAt(same, CautionPlace::ChainPage),
            (std::vector<Caution>{Caution::Hands, Caution::Alignment}));
  profile.stock.options.chainElongationPercent = 0.99;
  EXPECT_EQ(ui::cautionsAt(plan(profile), CautionPlace::Readout),
            std::vector<Caution>{Caution::ClosedCourse});
}

TEST(CautionPlaces, LinksTakenOutOfTheBikesOwnChainWantAJoiningLink) {
  Profile profile = sampleBike("club-600");
  profile.proposed = {.frontTeeth = front(14), .rearTeeth = rear(40)};
  const Plan shorter = plan(profile);
  ASSERT_EQ(shorter.proposed.chainRun->fits, false);
  const auto said = ui::cautionsAt(shorter, CautionPlace::ChainPage);
  EXPECT_EQ(std::count(said.begin(), said.end(), Caution::JoiningLink), 1);
}

TEST(CautionPlaces, EveryChartThatIsSavedSaysClosedCourse) {
  Window window(sampleBike("club-600"));
  auto* tabs = window->findChild<QTabWidget*>();
  for (int page : {0, 1, 2, 5}) {
    tabs->setCurrentIndex(page);
    QTest::qWait(20);
    const QStringList texts = textsOf(*window->currentPage()->picture());
    EXPECT_TRUE(texts.contains(ui::closedCourseMark())) << page;
  }
  tabs->setCurrentWidget(window->findChild<ui::LadderPage*>());
  QTest::qWait(20);
  bool ladder = false;
  for (auto* label : window->currentPage()->findChildren<QLabel*>())
    ladder = ladder || (label->isVisible() && label->text().contains(ui::closedCourseMark()));
  EXPECT_TRUE(ladder);
}

TEST(CautionPlaces, ALapThatIsHandedOverSaysClosedCourseInItsTitle) {
  const Profile profile =
      profileFrom(contentsOf(sourceFolder() / "tests/reference/data/lap-club-600.bike.json"));
  EXPECT_TRUE(ui::textReport(plan(profile), ui::UnitsShown()).contains("Lap (closed course)"));
  EXPECT_TRUE(onPaper(profile).contains("Lap (closed course)"));
}

TEST(CautionPlaces, HowTheSpeedometerStandsIsSaidAlsoWhereAllIsWell) {
  Profile profile = sampleBike("club-600");
  setReadsHigh(profile, 0);
  EXPECT_EQ(ui::speedometerWords(plan(profile)), "Speedometer reads within UN Regulation 39.");
  EXPECT_TRUE(ui::textReport(plan(profile), ui::UnitsShown()).contains("reads within UN Regulation 39"));
  EXPECT_TRUE(onPaper(profile).contains("reads within UN Regulation 39"));
  profile.bike.speedometer.reset();
  EXPECT_EQ(ui::speedometerWords(plan(profile)), "");
}

}  // namespace
}  // namespace layshaft::test
