// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/records_csv.h"

#include <gmock/gmock.h>

#include <algorithm>

#include "tests/core/support.h"

namespace layshaft::test {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using Why = CsvRefusal::Why;

Profile withoutRecords(Profile profile) {
  profile.records.reset();
  if (profile.wear) profile.wear->measurements = {};
  return profile;
}

RecordsRead recordsIn(const std::string& text, const Profile& profile) {
  const auto read = readRecordsCsv(text, profile);
  if (const auto* refusal = std::get_if<CsvRefusal>(&read))
    throw std::runtime_error("refused in row " + std::to_string(refusal->row) + ", column " +
                             refusal->column);
  return std::get<RecordsRead>(read);
}

CsvRefusal refusalOf(const std::string& text, const Profile& profile) {
  const auto read = readRecordsCsv(text, profile);
  return std::holds_alternative<CsvRefusal>(read) ? std::get<CsvRefusal>(read)
                                                  : throw std::runtime_error("not refused");
}

Profile hourBike() {
  return profileFrom(minimalProfile().dump());
}

TEST(RecordsCsv, WhatWasWrittenIsReadAgain) {
  const Profile full = profileFrom(everyKeyProfile().dump());
  ASSERT_FALSE(full.records->trackNotes[0].setup->gearRatios->values().empty());
  const RecordsRead read = recordsIn(recordsCsv(full), withoutRecords(full));
  ASSERT_EQ(read.entries.size(), 3U);
  EXPECT_EQ(read.entries.services[0], full.records->services[0]);
  EXPECT_EQ(read.entries.trackNotes[0], full.records->trackNotes[0]);
  EXPECT_EQ(read.entries.measurements[0], full.wear->measurements[0]);
  EXPECT_THAT(read.ignored, IsEmpty());
}

TEST(RecordsCsv, EveryKeyOfAnEntryHasAColumn) {
  const Json profile = everyKeyProfile();
  const std::string csv = recordsCsv(profileFrom(profile.dump()));
  const std::string titles = ',' + csv.substr(0, csv.find('\n')) + ',';
  const auto check = [&](const Json& entry, const std::string& before, auto& self) -> void {
    for (const auto& [key, value] : entry.items()) {
      if (value.is_object())
        self(value, key == "setup" ? "" : before + key + '_', self);
      else
        EXPECT_THAT(titles, HasSubstr(',' + (key == "at" ? "at_km" : before + key) + ',')) << key;
    }
  };
  for (const Json& entry : {profile["records"]["services"][0], profile["records"]["track_notes"][0],
                            profile["wear"]["measurements"][0]})
    check(entry, "", check);
}

TEST(RecordsCsv, ReadingWhatIsThereAlreadyAddsNothing) {
  const Profile full = profileFrom(everyKeyProfile().dump());
  const RecordsRead read = recordsIn(recordsCsv(full), full);
  EXPECT_EQ(read.entries.size(), 0U);
  EXPECT_EQ(read.known, 3U);
}

TEST(RecordsCsv, TitlesInAnyOrderAnySeparatorAndEitherDecimalMark) {
  const char* const tables[] = {
      "Date,KIND,lap_time_s,weather\n2026-05-12,track_note,92.5,\"dry, 20 °C\"\n",
      "\xEF\xBB\xBFlap_time_s;weather;date;kind\r\n92,5;dry, 20 °C;2026-05-12;Track_Note\r\n\r\n",
      "kind\tdate\tlap_time_s\tweather\ntrack_note\t2026-05-12\t92,5\tdry, 20 °C"};
  for (const char* table : tables) {
    const RecordsRead read = recordsIn(table, hourBike());
    ASSERT_EQ(read.entries.trackNotes.size(), 1U) << table;
    EXPECT_EQ(read.entries.trackNotes[0].lapTimeS, 92.5);
    EXPECT_EQ(read.entries.trackNotes[0].weather, "dry, 20 °C");
    EXPECT_EQ(read.entries.trackNotes[0].date.text(), "2026-05-12");
  }
}

TEST(RecordsCsv, ColumnsThatNobodyKnowsAreNamed) {
  const RecordsRead read =
      recordsIn("kind,date,Tyre pressure,note\nservice,2026-05-12,2.1,oiled\n", hourBike());
  EXPECT_THAT(read.ignored, ElementsAre("Tyre pressure"));
  EXPECT_EQ(read.entries.services[0].note, "oiled");
}

TEST(RecordsCsv, TextsKeepQuotesLinesAndWhatLooksLikeAFormula) {
  Profile profile = hourBike();
  profile.records.emplace();
  Service service;
  service.date = Date::parse("2026-05-12").value();
  service.parts = "=sum, \"all\" of it;\nsecond line";
  service.note = "'quoted'";
  profile.records->services.add(service);
  const RecordsRead read = recordsIn(recordsCsv(profile), hourBike());
  ASSERT_EQ(read.entries.services.size(), 1U);
  EXPECT_EQ(read.entries.services[0].parts, service.parts);
  EXPECT_EQ(read.entries.services[0].note, service.note);
}

TEST(RecordsCsv, ARefusalNamesRowAndColumn) {
  struct Case {
    const char* table;
    Why why;
    int row;
    const char* column;
  };
  const Case cases[] = {
      {"", Why::ColumnMissing, 1, "kind"},
      {"kind,note\nservice,x\n", Why::ColumnMissing, 1, "date"},
      {"kind,date,Date\n", Why::ColumnTwice, 1, "Date"},
      {"kind,date\nservice,2026-05-12\nservice,12.05.2026\n", Why::Cell, 3, "date"},
      {"kind,date\nservice,\n", Why::Cell, 2, "date"},
      {"kind,date\nservice,2026-02-30\n", Why::Cell, 2, "date"},
      {"kind,date\nparty,2026-05-12\n", Why::NoSuchKind, 2, "kind"},
      {"kind,date,lap_time_s\nservice,2026-05-12,92\n", Why::NotOfThisKind, 2, "lap_time_s"},
      {"kind,date,rating\n\ntrack_note,2026-05-12,11\n", Why::Cell, 3, "rating"},
      {"kind,date,rating\ntrack_note,2026-05-12,7.5\n", Why::Cell, 2, "rating"},
      {"kind,date,lap_time_s\ntrack_note,2026-05-12,1:32\n", Why::Cell, 2, "lap_time_s"},
      {"kind,date,surface\ntrack_note,2026-05-12,ice\n", Why::Cell, 2, "surface"},
      {"kind,date,rear_tyre\ntrack_note,2026-05-12,round\n", Why::Cell, 2, "rear_tyre"},
      {"kind,date,gear_ratios\ntrack_note,2026-05-12,1.2 1.4\n", Why::Cell, 2, "gear_ratios"},
      {"kind,date,lengths_mm\nmeasurement,2026-05-12,318 4000\n", Why::Cell, 2, "lengths_mm"},
      {"kind,date,struck_reason\nservice,2026-05-12,wrong bike\n", Why::Cell, 2, "struck_date"},
      {"kind,date,at_km\nservice,2026-05-12,100\n", Why::OtherUseUnit, 1, "at_km"},
      {"kind,date,note\nservice,2026-05-12,\"open\n", Why::QuoteLeftOpen, 2, ""},
  };
  for (const Case& c : cases) {
    const CsvRefusal refusal = refusalOf(c.table, hourBike());
    EXPECT_EQ(refusal.why, c.why) << c.table;
    EXPECT_EQ(refusal.row, c.row) << c.table;
    EXPECT_EQ(refusal.column, c.column) << c.table;
  }
}

TEST(RecordsCsv, UseThatGoesBackIsRefusedAgainstFileAndProfile) {
  const CsvRefusal inside = refusalOf(
      "kind,date,at_hours\nservice,2026-05-12,20\nmeasurement,2026-05-20,12\nservice,2026-06-01,25\n",
      hourBike());
  EXPECT_EQ(inside.why, Why::UseGoesBack);
  EXPECT_EQ(inside.row, 3);
  EXPECT_EQ(inside.column, "at_hours");
  EXPECT_EQ(inside.problem.given, "12");
  EXPECT_EQ(inside.problem.low, 20.0);

  Profile profile = hourBike();
  profile.records.emplace();
  Service service;
  service.date = Date::parse("2026-05-15").value();
  service.at = 15.0;
  profile.records->services.add(service);
  EXPECT_EQ(refusalOf("kind,date,at\nservice,2026-05-12,20\n", profile).row, 2);
  EXPECT_EQ(recordsIn("kind,date,at\nservice,2026-05-12,14.5\n", profile).entries.size(), 1U);

  // One that is struck through does not count.
  service.struck = Struck{.date = service.date, .reason = "other bike", .extras = {}};
  profile.records->services.put(0, service);
  EXPECT_EQ(recordsIn("kind,date,at\nservice,2026-05-12,20\n", profile).entries.size(), 1U);
}

TEST(RecordsCsv, NoMoreThanAFileHolds) {
  std::string table = "kind,date\n";
  for (int i = 0; i <= limits::kMostRecords; ++i) table += "service,2026-05-12\n";
  const CsvRefusal refusal = refusalOf(table, hourBike());
  EXPECT_EQ(refusal.why, Why::TooMany);
  EXPECT_EQ(refusal.problem.high, limits::kMostRecords);
}

}  // namespace
}  // namespace layshaft::test
