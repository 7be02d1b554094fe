// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/problem_words.h"
#include "tests/ui/support.h"

namespace layshaft::test {
namespace {

/// A problem of each kind as the reader makes it, with what its sentence must name: value and what is
/// allowed.
struct Case {
  const char* name;
  Problem problem;
  std::vector<const char*> named;
};

const std::vector<Case>& cases() {
  static const std::vector<Case> all{
      {"FileUnreadable", {.kind = Kind::FileUnreadable, .given = "No such file"}, {"No such file"}},
      {"FileUnwritable", {.kind = Kind::FileUnwritable, .given = "No space"}, {"saved", "No space"}},
      {"NotAFile", {.kind = Kind::NotAFile}, {"pipe or a device"}},
      {"FileTooLarge", {.kind = Kind::FileTooLarge, .high = 8 << 20}, {"8 MiB"}},
      {"NotUtf8", {.kind = Kind::NotUtf8, .given = "17"}, {"UTF-8", "17"}},
      {"NotJson", {.kind = Kind::NotJson, .given = "line 3, column 7"}, {"JSON", "line 3, column 7"}},
      {"TooDeep", {.kind = Kind::TooDeep, .high = 64}, {"64 levels"}},
      {"DuplicateKey", {.kind = Kind::DuplicateKey, .path = "bike.engine"}, {"bike.engine", "twice", "once"}},
      {"NotFinite", {.kind = Kind::NotFinite, .path = "a.b", .given = "NaN"}, {"a.b", "NaN", "number"}},
      {"MissingKey", {.kind = Kind::MissingKey, .path = "stock.rear_teeth"}, {"stock.rear_teeth", "missing"}},
      {"WrongType",
       {.kind = Kind::WrongType, .path = "name", .given = "7", .allowed = {"text"}},
       {"name", "7", "text"}},
      {"NotWhole", {.kind = Kind::NotWhole, .path = "a.b", .given = "15.5"}, {"a.b", "15.5", "whole number"}},
      {"OutOfRange",
       {.kind = Kind::OutOfRange, .path = "a.b", .given = "5", .low = 6, .high = 48.5, .unit = "mm"},
       {"a.b", "5", "6 to 48.5 mm"}},
      {"OutOfRangeByAnother",
       {.kind = Kind::OutOfRange, .path = "a.b", .given = "9000", .low = 500, .high = 8000, .below = "c.d"},
       {"a.b", "9000", "500 to 8,000", "c.d"}},
      {"NotOneOf",
       {.kind = Kind::NotOneOf, .path = "a.b", .given = "\"mud\"", .allowed = {"loam", "sand"}},
       {"a.b", "mud", "loam, sand"}},
      {"WrongCount",
       {.kind = Kind::WrongCount, .path = "a.b", .given = "11", .low = 1, .high = 10},
       {"a.b", "11", "1 to 10"}},
      {"NotFalling",
       {.kind = Kind::NotFalling, .path = "stock.gear_ratios[1]", .given = "2.9", .high = 2.71},
       {"stock.gear_ratios[1]", "2.9", "2.71"}},
      {"NotRising",
       {.kind = Kind::NotRising, .path = "a.b.torque_curve[1].rpm", .given = "4000", .low = 6000},
       {"a.b.torque_curve[1].rpm", "4000", "6,000 rpm"}},
      {"BadTyreSize", {.kind = Kind::BadTyreSize, .path = "a.b", .given = "bald"}, {"a.b", "bald", "180/55"}},
      {"ImpossibleTyre",
       {.kind = Kind::ImpossibleTyre,
        .path = "a.b",
        .given = "180/55-5",
        .low = 6,
        .high = 30,
        .unit = "in",
        .part = "rim"},
       {"a.b", "180/55-5", "rim", "6 to 30 in"}},
      {"OtherRatio",
       {.kind = Kind::OtherRatio,
        .path = "a.teeth",
        .given = "72/35",
        .low = 2.05714,
        .high = 2.06,
        .below = "a.r"},
       {"a.teeth", "72/35", "2.05714", "a.r is 2.06"}},
      {"TorqueAllZero", {.kind = Kind::TorqueAllZero, .path = "a.b"}, {"a.b", "above 0"}},
      {"NewerVersion",
       {.kind = Kind::NewerVersion, .path = "version", .given = "9", .high = 1},
       {"version", "9", "up to 1"}},
      {"NotADate",
       {.kind = Kind::NotADate, .path = "a.date", .given = "\"12.5.\""},
       {"a.date", "12.5.", "2026-05-12"}},
      {"NotASegment",
       {.kind = Kind::NotASegment, .path = "a.b", .given = "length_m, angle_deg"},
       {"a.b", "length, angle", "a radius with an angle"}},
      {"NotASegmentAtAll", {.kind = Kind::NotASegment, .path = "a.b"}, {"a.b", "nothing"}},
      {"NameTaken", {.kind = Kind::NameTaken, .path = "a.b", .given = "Reedmace"}, {"a.b", "Reedmace"}},
      {"OnlyOneOf", {.kind = Kind::OnlyOneOf, .path = "a.b", .given = {}, .below = "c.d"}, {"a.b", "c.d"}},
      {"NotARecording", {.kind = Kind::NotARecording, .allowed = {"GPX 1.1", "CSV"}}, {"GPX 1.1, CSV"}},
      {"NotXml", {.kind = Kind::NotXml, .line = 3, .column = 7}, {"line 3, column 7", "XML"}},
      {"DocumentType", {.kind = Kind::DocumentType, .line = 1, .column = 9}, {"line 1, column 9", "DOCTYPE"}},
      {"NotATime",
       {.kind = Kind::NotATime,
        .path = "time",
        .given = "noon",
        .allowed = {"hhmmss"},
        .line = 2,
        .column = 8},
       {"time: line 2, column 8", "noon", "hhmmss"}},
      {"BadChecksum",
       {.kind = Kind::BadChecksum, .given = "6B", .allowed = {"6A"}, .line = 1, .column = 70},
       {"6A", "6B"}},
      {"NoChecksum",
       {.kind = Kind::BadChecksum, .allowed = {"6A"}, .line = 1, .column = 70},
       {"missing", "6A"}},
      {"MissingColumn",
       {.kind = Kind::MissingColumn, .allowed = {"x", "y"}, .line = 4, .column = 1},
       {"line 4", "x, y"}},
      {"ColumnTwice",
       {.kind = Kind::ColumnTwice, .path = "lat", .line = 4, .column = 2},
       {"lat", "column 2", "two"}},
      {"QuoteLeftOpen",
       {.kind = Kind::QuoteLeftOpen, .line = 4, .column = 1},
       {"line 4", "quotation mark", "closed"}},
      {"WrongFormat",
       {.kind = Kind::WrongFormat, .path = "format", .given = "\"x\"", .allowed = {"layshaft-bike"}},
       {"format", "x", "layshaft-bike"}},
  };
  return all;
}

class ProblemWordsTest : public testing::TestWithParam<Case> {};

TEST_P(ProblemWordsTest, NamePathValueAndWhatIsAllowedInOneLine) {
  const std::string sentence = ui::sentence(GetParam().problem).toStdString();
  for (const char* word : GetParam().named) EXPECT_THAT(sentence, testing::HasSubstr(word));
  EXPECT_THAT(sentence, testing::Not(testing::HasSubstr("%")));
  EXPECT_THAT(sentence, testing::Not(testing::EndsWith(".")));
  EXPECT_THAT(sentence, testing::Not(testing::HasSubstr("  ")));
}

INSTANTIATE_TEST_SUITE_P(Kinds, ProblemWordsTest, testing::ValuesIn(cases()),
                         [](const auto& one) { return std::string(one.param.name); });

TEST(ProblemWords, EveryKindIsCovered) {
  for (int kind = 0; kind <= static_cast<int>(Kind::WrongFormat); ++kind)
    EXPECT_TRUE(std::any_of(cases().begin(), cases().end(),
                            [kind](const Case& one) { return static_cast<int>(one.problem.kind) == kind; }))
        << "no case for kind " << kind;
}

TEST(ProblemWords, AreOneLineWhateverTheFileHolds) {
  const std::string texts[] = {with("/stock/rear_tyre", "bald\ntyre\r\n17"), with("/na\nme", 1) + "x",
                               R"({"a\nb": 1, "a\nb": 2})"};
  for (const std::string& text : texts) {
    const QString sentence = ui::sentence(problemOf(text));
    EXPECT_FALSE(sentence.contains('\n') || sentence.contains('\r')) << sentence.toStdString();
  }
}

TEST(ProblemWords, AtTheWindowNameThePlaceWithoutAKeyPath) {
  EXPECT_EQ(ui::spokenSentence(problemOf(with("/stock/gear_ratios", {2.0, 2.1}))),
            "Gear 2: 2.1 must be lower than the ratio of the gear before, 2");
  EXPECT_EQ(ui::spokenSentence(problemOf(with("/bike/engine/shift_rpm", 12000))),
            "Shift point: 12,000 is out of range (500 to 10,000 rpm) (because of the rev limit)");
  EXPECT_EQ(ui::spokenSentence(problemOf(with("/ride", {{"surface", "wet"}}))),
            "Surface: \"wet\" is not known; allowed: asphalt, wet asphalt, hardpack, loam, sand");
  EXPECT_EQ(ui::spokenSentence(problemOf(with("/pins", {{{"name", "a"}}, {{"name", "b"}, {"links", 5}}}))),
            "Pin 2: Links: 5 is out of range (30 to 300)");
  for (const Case& one : cases()) {
    const QString spoken = ui::spokenSentence(one.problem);
    EXPECT_FALSE(spoken.isEmpty());
    EXPECT_FALSE(spoken.contains("a.b") || spoken.contains('[') || spoken.contains("c.d"))
        << spoken.toStdString();
  }
}

TEST(ProblemWords, OfRealFilesReadWell) {
  EXPECT_EQ(ui::sentence(problemOf(with("/stock/front_teeth", 5))),
            "stock.front_teeth: 5 is out of range (6 to 48)");
  EXPECT_EQ(ui::sentence(problemOf(without("/stock/primary_ratio"))),
            "stock.primary_ratio: this key is missing and must be given");
  EXPECT_EQ(ui::sentence(problemOf(with("/stock/gear_ratios", {2.0, 2.1}))),
            "stock.gear_ratios[1]: 2.1 must be lower than the ratio of the gear before, 2");
  EXPECT_EQ(ui::sentence(problemOf(with("/bike/engine/shift_rpm", 12000))),
            "bike.engine.shift_rpm: 12000 is out of range (500 to 10,000 rpm, bounded by "
            "bike.engine.rev_limit_rpm)");
}

}  // namespace
}  // namespace layshaft::test
