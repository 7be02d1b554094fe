// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <cmath>

#include "core/study/rollout.h"
#include "tests/core/support.h"

namespace layshaft::test {
namespace {

double diameterMm(const char* size) {
  return tyre(size).diameterM() * 1000;
}
double heightMm(const char* size) {
  return tyre(size).sectionHeightM() * 1000;
}

// A tyre maker's published worked examples, page on reading a motorcycle tyre's sidewall (UK site).
TEST(TyreSizesReference, MakersWorkedExamples) {
  EXPECT_NEAR(diameterMm("120/100-18"), 697.2, 0.05);
  EXPECT_NEAR(diameterMm("120/90-18"), 673.2, 0.05);
  EXPECT_NEAR(diameterMm("120/80-18"), 649.2, 0.05);
}

// A motorcycle tyre retailer's printed table, whole millimetres (UK). Its circumferences use 3.14 for pi.
TEST(TyreSizesReference, RetailersTable) {
  struct Row {
    const char* size;
    double height, diameter, circumference;
  };
  for (const Row& row :
       {Row{"120/70-17", 84, 600, 1883}, Row{"125/70-17", 87.5, 607, 1905}, Row{"160/60-17", 96, 624, 1959},
        Row{"180/55-17", 99, 630, 1977}, Row{"180/60-17", 108, 648, 2034}}) {
    EXPECT_NEAR(heightMm(row.size), row.height, 0.01) << row.size;
    EXPECT_NEAR(diameterMm(row.size), row.diameter, 1) << row.size;
    EXPECT_NEAR(3.14 * diameterMm(row.size), row.circumference, 1) << row.size;
  }
  EXPECT_NEAR(heightMm("190/50-17"), 95, 0.01);
  EXPECT_NEAR(diameterMm("190/50-17"), 622, 1);
}

// A data-logger maker's support page on wheel sizes: radius, diameter and circumference to 0.1 mm.
TEST(TyreSizesReference, SupportPageOnWheelSizes) {
  EXPECT_NEAR(diameterMm("120/70-17"), 599.8, 0.05);
  EXPECT_NEAR(diameterMm("120/70-17") / 2, 299.9, 0.05);
  EXPECT_NEAR(diameterMm("190/55-17") / 2, 431.8 / 2 + 104.5, 0.05);
  auto setup = bareSetup();
  setup.rearTyre = tyre("120/70-17");
  setup.options.rollingAllowancePercent = 0;
  EXPECT_NEAR(rolloutOf(setup).metres * 1000, 1884.3, 0.05);
}

// A tourer owner's tape measurements, 180/60-16 (owners' forum): new 75 1/4 in, and 74 1/8 in with 4.55 mm
// gone off the radius. The estimate claims about 2 % for the size and follows the tread by geometry.
TEST(TyreSizesReference, MeasuredTyre) {
  auto setup = bareSetup();
  setup.rearTyre = tyre("180/60-16");
  const double fresh = rolloutOf(setup).metres * 1000;
  EXPECT_NEAR(fresh, 75.25 * 25.4, 0.02 * 75.25 * 25.4);
  setup.options.treadWearMm = 4.55;
  EXPECT_NEAR(rolloutOf(setup).metres * 1000 - fresh, (74.125 - 75.25) * 25.4, 0.1);
}

// UN R75, rule for sizes outside its annex, from memory: D between d + 2H·0.97 and d + 2H·1.07 for rims from
// 13 in, with the standard's d in whole millimetres. A nominal size must lie inside its own tolerance.
TEST(TyreSizesReference, NominalSizesLieInsideTheTolerance) {
  struct Row {
    const char* size;
    double low, high;
  };
  for (const Row& row :
       {Row{"110/80R19", 653.7, 671.3}, Row{"120/70ZR17", 595.0, 611.8}, Row{"140/80-18", 674.3, 696.7},
        Row{"90/90-21", 690.1, 706.3}, Row{"180/55ZR17", 624.1, 643.9}, Row{"190/50ZR17", 616.3, 635.3},
        Row{"130/90B16", 633.0, 656.4}, Row{"80/100-12", 453.8, 481.0}}) {
    EXPECT_GT(diameterMm(row.size), row.low) << row.size;
    EXPECT_LT(diameterMm(row.size), row.high) << row.size;
  }
}

// UN R75 Annex 5, tables 3 and 4, design diameters, from memory of the standard.
TEST(TyreSizesReference, CodeSizes) {
  struct Row {
    const char* size;
    double diameter;
  };
  for (const Row& row :
       {Row{"2.00-16", 516}, Row{"2.25-17", 556},    Row{"2.50-17", 568}, Row{"2.75-17", 588},
        Row{"2.75-18", 613}, Row{"2.75-21", 689},    Row{"3.00-18", 627}, Row{"3.00-21", 703},
        Row{"3.00-23", 754}, Row{"3.25-18", 639},    Row{"3.25-19", 665}, Row{"3.50-18", 649},
        Row{"3.50-19", 675}, Row{"3.75-18", 661},    Row{"4.00-18", 671}, Row{"4.25-18", 683},
        Row{"4.50-18", 691}, Row{"5.00-16", 666},    Row{"3.60-18", 615}, Row{"3.60-19", 641},
        Row{"4.10-18", 641}, Row{"4.10-19", 667},    Row{"5.10-16", 625}, Row{"5.10-18", 676},
        Row{"4.60-16", 604}, Row{"4.25/85-18", 659}, Row{"4.60-18", 654}})
    EXPECT_NEAR(diameterMm(row.size), row.diameter, 1.5) << row.size;
}

// The same annex, smallest and largest diameters, from memory.
TEST(TyreSizesReference, CodeSizesLieInsideTheTolerance) {
  struct Row {
    const char* size;
    double low, high;
  };
  for (const Row& row : {Row{"2.50-17", 562, 582}, Row{"2.75-17", 581, 600}, Row{"2.75-21", 682, 701},
                         Row{"3.00-18", 618, 641}, Row{"3.00-21", 694, 717}, Row{"3.25-18", 630, 653},
                         Row{"3.25-19", 656, 679}, Row{"3.50-18", 640, 665}, Row{"4.00-18", 662, 689},
                         Row{"4.50-18", 684, 709}, Row{"5.00-16", 657, 686}, Row{"3.60-18", 605, 628},
                         Row{"4.10-18", 629, 654}, Row{"5.10-16", 615, 643}, Row{"4.25/85-18", 649, 673}}) {
    EXPECT_GT(diameterMm(row.size), row.low) << row.size;
    EXPECT_LT(diameterMm(row.size), row.high) << row.size;
  }
}

// A tyre maker's page: low-profile inch tyres are 90 % as high as wide, 4.10-19 about 3.7 in.
TEST(TyreSizesReference, LowSectionByTheMakersRule) {
  EXPECT_NEAR(heightMm("4.10-19") / 25.4, 3.7, 0.1);
}

// Moped sizes in fractions of an inch: UN R75 Annex 5 tables 1 and 2, from memory, which are not the tables
// of the decimal sizes. The estimate promises 2 %.
TEST(TyreSizesReference, MopedSizes) {
  struct Row {
    const char* size;
    double diameter;
  };
  for (const Row& row : {Row{"2 1/2-8", 345}, Row{"2 1/2-9", 371}, Row{"2 3/4-9", 381}, Row{"2 1/4-17", 558},
                         Row{"2 1/2-17", 574}, Row{"2 3/4-17", 584}})
    EXPECT_NEAR(diameterMm(row.size), row.diameter, 0.02 * row.diameter) << row.size;
}

// Retail charts of alphanumeric sizes, width and aspect of the metric equivalent; the first where they list
// two.
TEST(TyreSizesReference, AlphanumericEquivalents) {
  struct Row {
    const char* code;
    const char* metric;
  };
  for (const Row& row :
       {Row{"MH90-21", "80/90-21"}, Row{"MJ90-19", "90/90-19"}, Row{"MM90-19", "100/90-19"},
        Row{"MN90-18", "110/90-18"}, Row{"MP85-18", "120/80-18"}, Row{"MR90-18", "120/90-18"},
        Row{"MT90B16", "130/90B16"}, Row{"MU90-16", "140/90-16"}, Row{"MU85 HB16", "140/90 HB16"},
        Row{"MV85-15", "150/80-15"}})
    EXPECT_TRUE(tyre(row.code).sameTyre(tyre(row.metric))) << row.code;
  EXPECT_NEAR(diameterMm("MT90B16"), 640.4, 0.05);
}

// UN R75 Annex 5 table 7, design diameters, from memory: the charts' equivalents are near, not the same (2
// %).
TEST(TyreSizesReference, AlphanumericSizesOfTheStandard) {
  struct Row {
    const char* size;
    double diameter;
  };
  for (const Row& row : {Row{"MH90-21", 686}, Row{"MJ90-19", 650}, Row{"MM90-19", 669}, Row{"MN90-18", 662},
                         Row{"MP85-18", 660}, Row{"MT90-16", 650}, Row{"MU85-16", 658}, Row{"MV85-15", 635}})
    EXPECT_NEAR(diameterMm(row.size), row.diameter, 0.025 * row.diameter) << row.size;
}

}  // namespace
}  // namespace layshaft::test
