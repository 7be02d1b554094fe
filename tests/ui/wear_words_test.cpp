// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/wear_words.h"

#include "core/wear_csv.h"
#include "tests/ui/support.h"
#include "ui/words/cautions.h"
#include "ui/words/dates.h"
#include "ui/words/text_report.h"
#include "ui/words/use_words.h"

namespace layshaft::test {
namespace {

using ui::UnitsShown;
using ui::UnitSystem;

constexpr double kNew20Mm = 317.5;  // 20 pitches of 15.875 mm

WearMeasurement measured(const char* date, std::optional<double> at, const std::vector<double>& percents) {
  WearMeasurement entry;
  entry.date = Date::parse(date).value();
  entry.at = at;
  for (const double percent : percents) entry.lengthsMm.push_back(kNew20Mm * (1 + percent / 100));
  return entry;
}

class WearWords : public testing::Test {
 protected:
  WearWords() {
    profile_.stock.options.chainKind = ChainKind::Sealed;
    profile_.stock.options.chainElongationPercent.reset();
    profile_.wear.emplace();
  }
  void add(const WearMeasurement& entry) { profile_.wear->measurements.add(entry); }
  ui::WearBook book() const { return ui::wearBook(profile_, plan(profile_)); }
  QString verdict() const { return ui::wearVerdictWords(book().figures); }

  Profile profile_ = workedExample();
};

TEST_F(WearWords, VerdictIsOneSentenceOfTheWholeSetWithItsReason) {
  EXPECT_TRUE(verdict().startsWith("Nothing measured yet"));
  add(measured("2026-03-01", 4, {0.3}));
  EXPECT_EQ(verdict(),
            "Good so far: the chain is 0.30 % longer than new; its limit is 1.0 %. Look at the teeth of both "
            "sprockets, too.");
  add(measured("2026-03-08", 8, {0.8}));
  EXPECT_EQ(
      verdict(),
      "Watch chain and both sprockets, and have the set at hand: the chain is 0.80 % longer than new, near "
      "its limit of 1.0 %.");
  WearMeasurement last = measured("2026-03-15", 12, {1.1});
  last.rear = TeethSeen::Hooked;
  add(last);
  EXPECT_EQ(
      verdict(),
      "Replace chain and both sprockets as a set: the chain is 1.10 % longer than new, past its limit of "
      "1.0 %; rear teeth are hooked, pointed or broken.");
}

TEST_F(WearWords, TheLimitSaysWhereItComesFrom) {
  const auto words = [&] { return ui::wearLimitWords(book().figures); };
  EXPECT_TRUE(words().startsWith("Limit 1.0 %, usual for sealed chains")) << words().toStdString();
  profile_.stock.options.chainKind = ChainKind::Plain;
  EXPECT_TRUE(words().startsWith("Limit 2.0 %, usual for plain chains"));
  profile_.stock.options.chainKind.reset();
  EXPECT_TRUE(words().contains("the stricter one"));
  profile_.wear->limitPercent = 1.7;
  EXPECT_EQ(words(), "Limit 1.7 %, from the bike's manual.");
}

TEST_F(WearWords, TheTrendIsToldInHoursAndInTheDistanceShown) {
  add(measured("2026-03-01", 1000, {0.2}));
  EXPECT_EQ(ui::wearTrendWords(book().figures, UnitsShown()),
            "Two measurements at different use make a trend.");
  add(measured("2026-03-08", 2000, {0.4}));
  profile_.wear->useUnit = UseUnit::Km;
  EXPECT_EQ(
      ui::wearTrendWords(book().figures, UnitsShown()),
      "Wears 0.200 % in 1,000 km. At that rate the limit is reached at 5,000 km; a third measurement tells "
      "how sure that is.");
  // 1 mile is 1.609344 km: 0.2 % × 1.609 in 1,000 miles, and 5,000 km are 3,107 miles.
  const QString miles = ui::wearTrendWords(book().figures, UnitsShown(UnitSystem::Mixed));
  EXPECT_TRUE(miles.startsWith("Wears 0.322 % in 1,000 mi. At that rate the limit is reached at 3,107 mi"))
      << miles.toStdString();
  profile_.wear->useUnit = UseUnit::Hours;
  EXPECT_EQ(ui::useText(UseUnit::Hours, 12.5, UnitsShown(UnitSystem::Imperial)), "12.5 h");
  add(measured("2026-03-15", 3000, {0.61}));
  EXPECT_TRUE(ui::wearTrendWords(book().figures, UnitsShown()).contains("nine times in ten between"));
}

TEST_F(WearWords, ATrendThatDoesNotRiseTellsNoEnd) {
  add(measured("2026-03-01", 4, {0.4}));
  add(measured("2026-03-08", 8, {0.4}));
  EXPECT_TRUE(ui::wearTrendWords(book().figures, UnitsShown()).contains("do not rise"));
}

// 20 links of 15.875 mm are 317.5 mm new (chain makers' dimension tables) and 320.7 mm at 1 %; in
// inches 12.500 and 12.625.
TEST_F(WearWords, TheLengthToExpectIsInTheUnitsShown) {
  EXPECT_EQ(ui::expectedLengthWords(*chainSize("520"), 20, 1.0, UnitsShown()),
            "20 links of a new 520 chain are 317.5 mm long, 320.7 mm at the limit.");
  EXPECT_EQ(ui::expectedLengthWords(*chainSize("520"), 20, 1.0, UnitsShown(UnitSystem::Imperial)),
            "20 links of a new 520 chain are 12.500 in long, 12.625 in at the limit.");
}

TEST_F(WearWords, WhatIsTypedIsJudgedAtOnce) {
  const ChainSize size = *chainSize("520");
  EXPECT_TRUE(ui::livePlacesWords(size, 20, {}).isEmpty());
  EXPECT_EQ(ui::livePlacesWords(size, 20, {319.5, 319.0}),
            "Longest place: 0.63 % longer than new. Unevenness 0.16 %.");
  EXPECT_TRUE(ui::livePlacesWords(size, 20, {317.0}).contains("Shorter than a new chain"));
  EXPECT_TRUE(ui::livePlacesWords(size, 20, {333.4}).contains("count the links again")) << "21 links";
}

TEST_F(WearWords, TheTableIsNewestFirstAndSaysWhatIsLeftOut) {
  WearMeasurement first = measured("2026-03-01", 4, {0.2});
  first.front = TeethSeen::Worn;
  add(first);
  WearMeasurement wrong = measured("2026-03-20", 12, {1.4});
  wrong.struck = Struck{.date = Date::parse("2026-03-21").value(), .reason = "counted pins", .extras = {}};
  add(wrong);
  add(measured("2026-03-10", 3, {0.4, 0.5}));
  const auto rows = ui::measurementTable(book(), UnitsShown());
  ASSERT_EQ(rows.size(), 4U);
  EXPECT_TRUE(rows[1][0].contains("struck through: counted pins"));
  EXPECT_EQ(rows[1][2], "–");
  EXPECT_TRUE(rows[2][0].contains("less use than before"));
  EXPECT_EQ(rows[2][2], "0.50");
  EXPECT_EQ(rows[2][3], "0.10");
  EXPECT_EQ(rows[3][1], "4.0");
  EXPECT_TRUE(rows[3][0].endsWith(": front worn"));
  EXPECT_EQ(ui::measurementOrder(*profile_.wear), (std::vector<std::size_t>{1, 2, 0}));
}

TEST_F(WearWords, CsvHasEveryEntryAtFullPrecision) {
  WearMeasurement entry = measured("2026-03-01", 4.25, {0.2, 0.4});
  entry.front = TeethSeen::Worn;
  entry.note = "mud, sand";
  add(entry);
  const ui::WearBook now = book();
  const QStringList lines = QString::fromStdString(wearCsv(now.wear, now.figures)).split('\n');
  EXPECT_TRUE(lines[0].startsWith("date,at_hours,pitches,greatest_length_mm,elongation_percent"));
  EXPECT_TRUE(lines[1].startsWith("2026-03-01,4.25,20,318.77,")) << lines[1].toStdString();
  EXPECT_TRUE(lines[1].endsWith(",worn,,,false,\"mud, sand\"")) << lines[1].toStdString();
  EXPECT_NEAR(lines[1].split(',')[4].toDouble(), 0.4, 1e-9);
}

TEST_F(WearWords, SlackIsInTheUnitsShownWithThePosture) {
  EXPECT_TRUE(ui::slackWords(*profile_.wear, UnitsShown()).isEmpty());
  profile_.wear->slackMm = LengthRange{25, 35};
  EXPECT_EQ(ui::slackWords(*profile_.wear, UnitsShown()), "Slack by the manual: 25 to 35 mm.");
  profile_.wear->slackPosture = "on its side stand";
  EXPECT_EQ(ui::slackWords(*profile_.wear, UnitsShown(UnitSystem::Imperial)),
            "Slack by the manual: 0.98 to 1.38 in, on its side stand.");
}

TEST_F(WearWords, TheReportHasASectionOfIt) {
  profile_.wear->slackMm.reset();
  add(measured("2026-03-01", 4, {0.2}));
  add(measured("2026-03-08", 8, {0.8}));
  const QString report = ui::textReport(plan(profile_), UnitsShown());
  EXPECT_TRUE(report.contains("\nWear\nWatch chain and both sprockets"));
  EXPECT_TRUE(report.contains("Measured " + ui::shownDate(*Date::parse("2026-03-08"))));
  profile_.wear.reset();
  EXPECT_FALSE(ui::textReport(plan(profile_), UnitsShown()).contains("\nWear\n"));
}

TEST_F(WearWords, TheCautionGoesByTheLimitThatCounts) {
  add(measured("2026-03-01", 4, {1.5}));
  const auto said = [&] { return ui::cautionsFor(plan(profile_), ui::CautionPlace::WearPage).join(' '); };
  EXPECT_TRUE(said().contains("Past the wear limit: replace chain and both sprockets as a set. Limit 1.0 %"));
  profile_.stock.options.chainKind = ChainKind::Plain;
  EXPECT_FALSE(said().contains("replace")) << "a plain chain's limit is 2 %";
  WearMeasurement hooked = measured("2026-03-02", 5, {});
  hooked.front = TeethSeen::Hooked;
  add(hooked);
  EXPECT_TRUE(said().contains("Replace chain and both sprockets as a set: front teeth are hooked"));
}

TEST_F(WearWords, MixingNewWithWornIsSaidForWhatTheProposalChanges) {
  add(measured("2026-03-01", 4, {0.9}));
  profile_.sparesBox.reset();
  const QStringList words = ui::wearMixWords(book().mixes);
  ASSERT_EQ(words.size(), 1) << "the worked example's proposal has another rear sprocket";
  EXPECT_TRUE(words[0].contains("a new sprocket under a worn chain"));
}

TEST(Dates, AreWrittenWithAllDigitsOfTheYear) {
  EXPECT_TRUE(ui::shownDate(*Date::parse("2026-05-12")).contains("2026"));
  EXPECT_EQ(ui::coreDate(QDate(2026, 5, 12)), *Date::parse("2026-05-12"));
  EXPECT_EQ(ui::calendarDate(*Date::parse("2026-05-12")), QDate(2026, 5, 12));
}

}  // namespace
}  // namespace layshaft::test
