// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/parts/tyre.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <string>

#include "tests/core/support.h"

namespace layshaft::test {
namespace {

using TyreKind = TyreSize::Kind;

struct Spelling {
  const char* text;
  TyreKind kind;
  double widthMm, heightMm, rimInches;
  const char* construction;
};

void expectReads(const Spelling& expected) {
  SCOPED_TRACE(expected.text);
  const Result<TyreSize> size = TyreSize::parse(expected.text);
  ASSERT_TRUE(size) << testing::PrintToString(size.problem());
  EXPECT_EQ(size->kind(), expected.kind);
  EXPECT_NEAR(size->widthM() * 1000, expected.widthMm, 1e-9);
  EXPECT_NEAR(size->sectionHeightM() * 1000, expected.heightMm, 1e-9);
  EXPECT_DOUBLE_EQ(size->rimInches(), expected.rimInches);
  EXPECT_EQ(size->construction(), expected.construction);
  EXPECT_NEAR(size->aspectPercent(), 100 * expected.heightMm / expected.widthMm, 1e-9);
  EXPECT_NEAR(size->diameterM() * 1000, 25.4 * expected.rimInches + 2 * expected.heightMm, 1e-9);
}

TEST(TyreSize, ReadsMetricSizes) {
  for (const Spelling& row :
       {Spelling{"180/55-17", TyreKind::Metric, 180, 99, 17, "-"},
        Spelling{"180/55ZR17 M/C (73W)", TyreKind::Metric, 180, 99, 17, "ZR"},
        Spelling{"180/55ZR17M/C(73W)", TyreKind::Metric, 180, 99, 17, "ZR"},
        Spelling{"180/55ZR17 M/C 73W TL", TyreKind::Metric, 180, 99, 17, "ZR"},
        Spelling{"180/55 ZR 17 (73 W)", TyreKind::Metric, 180, 99, 17, "ZR"},
        Spelling{"180/55ZR17 (W)", TyreKind::Metric, 180, 99, 17, "ZR"},
        Spelling{"180/55zr17 m/c (73w) tl", TyreKind::Metric, 180, 99, 17, "ZR"},
        Spelling{"  180/55R17\t", TyreKind::Metric, 180, 99, 17, "R"},
        Spelling{"150/70R17 M/C 69V TL", TyreKind::Metric, 150, 105, 17, "R"},
        Spelling{"120/80 - 19", TyreKind::Metric, 120, 96, 19, "-"},
        Spelling{"120/80 -19 M/C 63M TT NHS", TyreKind::Metric, 120, 96, 19, "-"},
        Spelling{"120 / 80 - 19", TyreKind::Metric, 120, 96, 19, "-"},
        Spelling{"130/90B16", TyreKind::Metric, 130, 117, 16, "B"},
        Spelling{"130/90 B 16 M/C 73H REINF.", TyreKind::Metric, 130, 117, 16, "B"},
        Spelling{"130/90 HB16 RF", TyreKind::Metric, 130, 117, 16, "HB"},
        Spelling{"110/90-19 62M M+S", TyreKind::Metric, 110, 99, 19, "-"},
        Spelling{"100/90 H 19", TyreKind::Metric, 100, 90, 19, "H"},
        Spelling{"120/90-18 4PR", TyreKind::Metric, 120, 108, 18, "-"},
        Spelling{"90/90-21 54S MC", TyreKind::Metric, 90, 81, 21, "-"},
        Spelling{"150/80-16.5", TyreKind::Metric, 150, 120, 16.5, "-"},
        Spelling{"180/55\u201317", TyreKind::Metric, 180, 99, 17, "-"},           // en dash
        Spelling{"180/55\u201017", TyreKind::Metric, 180, 99, 17, "-"},           // hyphen
        Spelling{"180/55\u221217", TyreKind::Metric, 180, 99, 17, "-"},           // minus
        Spelling{"180/55\u00a0ZR\u00a017", TyreKind::Metric, 180, 99, 17, "ZR"},  // no-break
        Spelling{"180/55\u202f-\u202f17", TyreKind::Metric, 180, 99, 17, "-"},    // narrow
        Spelling{"180/55ZR17\u00a0M/C", TyreKind::Metric, 180, 99, 17, "ZR"}})
    expectReads(row);
}

TEST(TyreSize, ReadsRacingMetricSizes) {
  for (const Spelling& row : {Spelling{"200/660R17", TyreKind::RacingMetric, 200, 114.1, 17, "R"},
                              Spelling{"120/600 R17", TyreKind::RacingMetric, 120, 84.1, 17, "R"},
                              Spelling{"165/630-17", TyreKind::RacingMetric, 165, 99.1, 17, "-"}})
    expectReads(row);
}

// Width and height where the section is listed (tyre.cpp), else the section itself at its aspect.
TEST(TyreSize, ReadsSizesInInches) {
  for (const Spelling& row : {Spelling{"3.00-21", TyreKind::Code, 80, 85, 21, "-"},
                              Spelling{"3.00 - 21 51P TT", TyreKind::Code, 80, 85, 21, "-"},
                              Spelling{"4.00 H 18", TyreKind::Code, 108, 107, 18, "H"},
                              Spelling{"4.00H18 M/C 64H", TyreKind::Code, 108, 107, 18, "H"},
                              Spelling{"4.00h18", TyreKind::Code, 108, 107, 18, "H"},
                              Spelling{"3,50-18", TyreKind::Code, 93, 96, 18, "-"},
                              Spelling{"3.50x18", TyreKind::Code, 93, 96, 18, "-"},
                              Spelling{"3.50\u00d718", TyreKind::Code, 93, 96, 18, "-"},
                              Spelling{"3.5-18", TyreKind::Code, 93, 96, 18, "-"},
                              Spelling{"2.75\u201310", TyreKind::Code, 75, 78, 10, "-"},
                              Spelling{"4.10-18 4PR", TyreKind::Code, 108, 92, 18, "-"},
                              Spelling{"4.25/85-18", TyreKind::Code, 112, 101, 18, "-"},
                              Spelling{"4.25/85 B 18 64H", TyreKind::Code, 112, 101, 18, "B"},
                              Spelling{"4.25-18", TyreKind::Code, 112, 113, 18, "-"},
                              Spelling{"2 3/4-17", TyreKind::Code, 75, 78, 17, "-"},
                              Spelling{"2 1/2 - 17 TT", TyreKind::Code, 65, 68, 17, "-"},
                              Spelling{"3.10-18", TyreKind::Code, 78.74, 78.74, 18, "-"},
                              Spelling{"3.20/80-18", TyreKind::Code, 81.28, 65.024, 18, "-"}})
    expectReads(row);
}

TEST(TyreSize, ReadsAlphanumericSizes) {
  for (const Spelling& row : {Spelling{"MT90B16", TyreKind::Alphanumeric, 130, 117, 16, "B"},
                              Spelling{"mt90b16", TyreKind::Alphanumeric, 130, 117, 16, "B"},
                              Spelling{"MT90 B 16 71H", TyreKind::Alphanumeric, 130, 117, 16, "B"},
                              Spelling{"MT 90-16", TyreKind::Alphanumeric, 130, 117, 16, "-"},
                              Spelling{"MU85 HB16", TyreKind::Alphanumeric, 140, 126, 16, "HB"},
                              Spelling{"MU85B16 M/C 77H", TyreKind::Alphanumeric, 140, 126, 16, "B"},
                              Spelling{"MV85-15", TyreKind::Alphanumeric, 150, 120, 15, "-"},
                              Spelling{"MH90\u201321", TyreKind::Alphanumeric, 80, 72, 21, "-"},
                              // A letter of the charts with an aspect that they leave out: as printed.
                              Spelling{"MT85-18", TyreKind::Alphanumeric, 130, 110.5, 18, "-"}})
    expectReads(row);
}

TEST(TyreSize, KeepsTheTextAsTypedWithoutBlanksAround) {
  EXPECT_EQ(tyre(" 180/55zr17 m/c (73W) \t").text(), "180/55zr17 m/c (73W)");
  EXPECT_EQ(tyre("3,50\u201318").text(), "3,50\u201318");
}

TEST(TyreSize, TakesNoBreakBlanksAroundASizeThatWasPasted) {
  ASSERT_TRUE(TyreSize::parse("\u00a0180/55-17\u202f"));
  EXPECT_EQ(tyre("\u00a0180/55-17\u202f").text(), "180/55-17");
}

TEST(TyreSize, RefusesWhatIsNoSize) {
  for (const char* text : {"",
                           " ",
                           "\u00a0",
                           "180",
                           "180/55",
                           "180/",
                           "/55-17",
                           "180/55-",
                           "180/55R",
                           "180/55ZR",
                           "180/5517",
                           "1805517",
                           "180//55-17",
                           "180/55--17",
                           "180/55-17-",
                           "180/55-17 x",
                           "180/55-17/3",
                           "180/55-17,5,5",
                           "180/55-17 18",
                           "180/55-17 73",
                           "180/55-17 (73W",
                           "180/55-17 73W)",
                           "180/55-17 (",
                           "180/55-17 ()",
                           "180/55-17 WW",
                           "180/55-17 M/CX",
                           "180/55-17.",

                           "180/55.5-17",
                           "-180/55-17",
                           "+180/55-17",
                           "1800/55-17",
                           "180/5500-17",
                           "180/55-1700",
                           "180/55ZRR17",
                           "180/55AR17",
                           "180/55RZ17",
                           "180/55I17",
                           "3.00",
                           "3.00-",
                           "3.000-21",
                           "3.-21",
                           ".00-21",
                           "4-18",
                           "4 1/-18",

                           "4 2/2-18",
                           "4 1/0-18",
                           "4 1/16-18",
                           "4.25/-18",
                           "MT",
                           "MT90",
                           "MT90B",
                           "MX90-16",
                           "M90-16",
                           "T90-16",
                           "MT9O-16",
                           "MT90.5-16",
                           "nan",
                           "inf/inf-inf",
                           "1e2/55-17",
                           "0x10/55-17",
                           "180/55-17; DROP",
                           "tyre",
                           "\u0661\u0668\u0660/55-17"}) {
    const Result<TyreSize> size = TyreSize::parse(text);
    ASSERT_FALSE(size) << "'" << text << "' was taken for " << size->diameterM() << " m";
    EXPECT_EQ(size.problem().kind, Kind::BadTyreSize) << text;
  }
  // Read as something else that cannot be.
  for (const char* text : {"180.5/55-17", "4 /2-18"}) EXPECT_FALSE(TyreSize::parse(text)) << text;
  EXPECT_EQ(TyreSize::parse(" 180/5517 ").problem(),
            (Problem{.kind = Kind::BadTyreSize, .given = "180/5517"}));
}

// One field, one tyre: which of two is meant nobody can know.
TEST(TyreSize, RefusesTwoSizesInOne) {
  for (const char* text : {"180/55-17 180/55-17", "180/55ZR17 3.00-21", "3.00-21 180/55-17",
                           "MT90B16 180/55-17", "MT90B16 3.00-21", "3.00-21 MT90B16", "180/55-17, 190/55-17"})
    EXPECT_FALSE(TyreSize::parse(text)) << text;
}

TEST(TyreSize, RefusesBytesThatAreNoText) {
  std::string everyByte;
  for (int byte = 0; byte < 256; ++byte) everyByte += static_cast<char>(byte);
  EXPECT_FALSE(TyreSize::parse(everyByte));
  EXPECT_FALSE(TyreSize::parse(std::string("180/55-17\0", 10)));
  EXPECT_FALSE(TyreSize::parse(std::string("180/55-17\0\0 TL", 14)));
  EXPECT_FALSE(TyreSize::parse("180/55-17\xff"));
  EXPECT_FALSE(TyreSize::parse("\x80\xe2\x80"));
  EXPECT_FALSE(TyreSize::parse("180/55\n-17"));
}

struct Impossible {
  const char* text;
  const char* part;
  double low, high;
  const char* unit;
};

TEST(TyreSize, SaysWhichPartCannotBe) {
  for (const Impossible& row : {
           Impossible{"49/90-17", "width", 50, 400, "mm"},
           Impossible{"401/25-17", "width", 50, 400, "mm"},
           Impossible{"0/90-17", "width", 50, 400, "mm"},
           Impossible{"120/24-17", "aspect", 25, 110, "%"},
           Impossible{"120/111-17", "aspect", 25, 110, "%"},
           Impossible{"55/180-17", "aspect", 25, 110, "%"},  // the wrong way round
           Impossible{"180/55-70", "rim", 6, 30, "in"},
           Impossible{"180/55-5", "rim", 6, 30, "in"},
           Impossible{"180/55-5.99", "rim", 6, 30, "in"},
           Impossible{"180/55-30.01", "rim", 6, 30, "in"},
           Impossible{"3.00-31", "rim", 6, 30, "in"},
           Impossible{"4.25/24-18", "aspect", 25, 110, "%"},
           Impossible{"MT24-16", "aspect", 25, 110, "%"},
           Impossible{"MT111-16", "aspect", 25, 110, "%"},
           Impossible{"MT90-31", "rim", 6, 30, "in"},
           Impossible{"200/660R31", "rim", 6, 30, "in"},
           Impossible{"200/480R17", "aspect", 25, 110, "%"},
           Impossible{"50/800R17", "aspect", 25, 110, "%"},
       }) {
    const Result<TyreSize> size = TyreSize::parse(row.text);
    ASSERT_FALSE(size) << row.text;
    EXPECT_EQ(size.problem(), (Problem{.kind = Kind::ImpossibleTyre,
                                       .given = row.text,
                                       .low = row.low,
                                       .high = row.high,
                                       .unit = row.unit,
                                       .part = row.part}))
        << row.text;
  }
}

TEST(TyreSize, SaysThatTheWidthInInchesCannotBe) {
  for (const char* text : {"1.49-17", "8.01-17"}) {
    const Result<TyreSize> size = TyreSize::parse(text);
    ASSERT_FALSE(size) << text;
    EXPECT_EQ(size.problem(), (Problem{.kind = Kind::ImpossibleTyre,
                                       .given = text,
                                       .low = 1.5,
                                       .high = 8,
                                       .unit = "in",
                                       .part = "width"}));
  }
}

TEST(TyreSize, TakesTheEndsOfEveryLimit) {
  for (const char* text : {"50/90-17", "400/25-17", "120/25-17", "120/110-17", "180/55-6", "180/55-30",
                           "1.50-17", "8.00-17", "4.25/25-18", "4.25/110-18", "MT25-16", "MT110-16"})
    EXPECT_TRUE(TyreSize::parse(text)) << text;
}

TEST(TyreSize, QuotesLongTextsShortAndWhole) {
  const std::string digits(1000, '1');
  EXPECT_EQ(TyreSize::parse(digits).problem().given, digits.substr(0, 60) + "…");
  // Two bytes each, and one byte before them: the sixtieth byte is the first half of a character.
  std::string umlauts = "a";
  for (int i = 0; i < 100; ++i) umlauts += "\u00fc";
  EXPECT_NO_THROW(Json(TyreSize::parse(umlauts).problem().given).dump()) << "cut inside a character";
}

// A profile may hold a text of eight megabytes: it must not keep the program busy.
TEST(TyreSize, RefusesVeryLongTexts) {
  for (const char* piece : {"1", " ", "-", "\u2013", "\u00a0", "(", "TL ", "180/55-17 ", "3.00-21 "}) {
    std::string text;
    while (text.size() < 1'500'000) text += piece;
    EXPECT_FALSE(TyreSize::parse(text)) << piece;
  }
}

TEST(TyreSize, MetricTakesNumbers) {
  const Result<TyreSize> size = TyreSize::metric(180, 55, 17, "ZR");
  ASSERT_TRUE(size);
  EXPECT_EQ(size->text(), "180/55ZR17");
  EXPECT_EQ(size->kind(), TyreKind::Metric);
  EXPECT_EQ(TyreSize::metric(120, 80, 19)->text(), "120/80-19");
  EXPECT_EQ(TyreSize::metric(150, 80, 16.5)->text(), "150/80-16.5");
  EXPECT_EQ(TyreSize::metric(49, 80, 19).problem().kind, Kind::ImpossibleTyre);
  EXPECT_EQ(TyreSize::metric(120, 111, 19).problem().part, "aspect");
  EXPECT_EQ(TyreSize::metric(120, 80, 31).problem().part, "rim");
}

TEST(TyreSize, MetricRefusesNumbersThatAreNone) {
  for (const double rim : {kNaN, kInfinity, -kInfinity, -17.0, 0.0, 1e300, 1e-300})
    EXPECT_FALSE(TyreSize::metric(180, 55, rim)) << rim;
  for (const int number : {-180, 0, std::numeric_limits<int>::max(), std::numeric_limits<int>::min()}) {
    EXPECT_FALSE(TyreSize::metric(number, 55, 17)) << number;
    EXPECT_FALSE(TyreSize::metric(180, number, 17)) << number;
  }
  EXPECT_FALSE(TyreSize::metric(180, 55, 17, ""));
  EXPECT_FALSE(TyreSize::metric(180, 55, 17, "??"));
}

TEST(TyreSize, IsTheSameTyreHoweverItIsWritten) {
  EXPECT_TRUE(tyre("180/55ZR17").sameTyre(tyre("180/55 - 17 M/C (73W)")));
  EXPECT_TRUE(tyre("3.50-18").sameTyre(tyre("3,50 H 18")));
  EXPECT_TRUE(tyre("MT90B16").sameTyre(tyre("130/90-16")));
  EXPECT_FALSE(tyre("180/55ZR17").sameTyre(tyre("180/60ZR17")));
  EXPECT_FALSE(tyre("180/55ZR17").sameTyre(tyre("190/55ZR17")));
  EXPECT_FALSE(tyre("110/90-18").sameTyre(tyre("110/90-19")));
  // Equal is stricter: what would be saved is the same.
  EXPECT_FALSE(tyre("180/55ZR17") == tyre("180/55-17"));
  EXPECT_TRUE(tyre("180/55ZR17") == tyre(" 180/55ZR17 "));
}

}  // namespace
}  // namespace layshaft::test
