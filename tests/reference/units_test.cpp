// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/units.h"

#include <gtest/gtest.h>

#include <array>
#include <cstdio>
#include <cstdlib>
#include <string>

namespace layshaft::test {
namespace {

using namespace units;

/// What the GNU units program says of one conversion.
double gnuUnits(const std::string& have, const std::string& want) {
  const std::string command = "LC_ALL=C units -t -o '%.17g' '" + have + "' '" + want + "' 2>/dev/null";
  std::FILE* pipe = popen(command.c_str(), "r");
  if (!pipe) return 0;
  std::array<char, 200> line{};
  const bool answered = std::fgets(line.data(), static_cast<int>(line.size()), pipe) != nullptr;
  const bool fine = pclose(pipe) == 0;
  return answered && fine ? std::strtod(line.data(), nullptr) : 0;
}

// GNU units 2.22, whose data file cites NIST SP 811.
TEST(UnitsReference, AgreeWithGnuUnits) {
  ASSERT_NEAR(gnuUnits("1 foot", "inch"), 12, 1e-12)
      << "The program 'units' does not answer: install the Debian package 'units'.";
  struct Row {
    const char* have;
    const char* want;
    double ours;
  };
  for (const Row& row : {
           Row{"1 mm", "m", metresFromMillimetres(1)},
           Row{"1 m", "mm", millimetresFromMetres(1)},
           Row{"1 inch", "m", metresFromInches(1)},
           Row{"1 m", "inch", inchesFromMetres(1)},
           Row{"1 mile", "m", kMetresPerMile},
           Row{"1 km/hour", "m/s", mpsFromKmh(1)},
           Row{"1 m/s", "km/hour", kmhFromMps(1)},
           Row{"1 mile/hour", "m/s", mpsFromMph(1)},
           Row{"1 m/s", "mile/hour", mphFromMps(1)},
           Row{"1 lb", "kg", kilogramsFromPounds(1)},
           Row{"1 kg", "lb", poundsFromKilograms(1)},
           Row{"1 gravity", "m/s^2", kStandardGravityMps2},
           Row{"1 lbf", "N", newtonsFromPoundForce(1)},
           Row{"1 N", "lbf", poundForceFromNewtons(1)},
           Row{"1 lbf ft", "N m", newtonMetresFromPoundFeet(1)},
           Row{"1 N m", "lbf ft", poundFeetFromNewtonMetres(1)},
           Row{"1 horsepower", "W", wattsFromHorsepower(1)},
           Row{"1 W", "horsepower", horsepowerFromWatts(1)},
           Row{"1 metrichorsepower", "W", wattsFromMetricHorsepower(1)},
           Row{"1 W", "metrichorsepower", metricHorsepowerFromWatts(1)},
           Row{"1 revolution/minute", "radian/s", radPerSecondFromRpm(1)},
           Row{"1 radian/s", "revolution/minute", rpmFromRadPerSecond(1)},
           Row{"1 degree", "radian", radiansFromDegrees(1)},
           Row{"1 radian", "degree", degreesFromRadians(1)},
           Row{"tempC(-40)", "K", kelvinFromCelsius(-40)},
           Row{"tempC(23.5)", "K", kelvinFromCelsius(23.5)},
           Row{"tempC(23.5)", "tempF", fahrenheitFromCelsius(23.5)},
           Row{"tempF(71.5)", "tempC", celsiusFromFahrenheit(71.5)},
           Row{"1 foot", "m", kMetresPerFoot},
           Row{"1 foot^2", "m^2", kSquareMetresPerSquareFoot},
           Row{"1 lb foot^2", "kg m^2", kKilogramSquareMetresPerPoundSquareFoot},
           Row{"1 inHg", "Pa", kPascalsPerInchOfMercury},
           Row{"1 hPa", "Pa", pascalsFromHectopascals(1)},
           Row{"1 bar", "Pa", pascalsFromBar(1)},
           Row{"1 psi", "bar", barFromPsi(1)},
           Row{"1 bar", "psi", psiFromBar(1)},
           Row{"100 horsepower / (6000 revolution/minute)", "N m/radian",
               torqueFromPower(wattsFromHorsepower(100), 6000)},
           Row{"37.5 kW / (5250 revolution/minute)", "N m/radian", torqueFromPower(37500, 5250)},
       }) {
    const double theirs = gnuUnits(row.have, row.want);
    EXPECT_NEAR(row.ours, theirs, 1e-14 * theirs) << row.have << " in " << row.want;
  }
}

// NIST Special Publication 811, appendix B.8, to the digits printed there.
TEST(UnitsReference, AgreeWithNistSp811) {
  struct Row {
    const char* what;
    double ours, printed, lastDigit;
  };
  for (const Row& row : {
           Row{"mile to metre", kMetresPerMile, 1609.344, 1e-3},
           Row{"mile per hour to metre per second", mpsFromMph(1), 0.44704, 1e-5},
           Row{"mile per hour to kilometre per hour", kmhFromMps(mpsFromMph(1)), 1.609344, 1e-6},
           Row{"inch to metre", metresFromInches(1), 0.0254, 1e-4},
           Row{"pound to kilogram", kilogramsFromPounds(1), 0.4535924, 1e-7},
           Row{"kilogram-force to newton", kStandardGravityMps2, 9.80665, 1e-5},
           Row{"pound-force to newton", newtonsFromPoundForce(1), 4.448222, 1e-6},
           Row{"foot pound-force to newton metre", newtonMetresFromPoundFeet(1), 1.355818, 1e-6},
           Row{"inch pound-force to newton metre", newtonMetresFromPoundFeet(1) / 12, 0.1129848, 1e-7},
           Row{"horsepower (550 ft lbf/s) to watt", wattsFromHorsepower(1), 745.6999, 1e-4},
           Row{"horsepower (metric) to watt", wattsFromMetricHorsepower(1), 735.4988, 1e-4},
           Row{"square foot to square metre", kSquareMetresPerSquareFoot, 0.09290304, 1e-8},
           Row{"pound foot squared to kilogram metre squared", kKilogramSquareMetresPerPoundSquareFoot,
               0.04214011, 1e-8},
           Row{"inch of mercury, conventional, to pascal", kPascalsPerInchOfMercury, 3386.389, 1e-3},
           Row{"psi to pascal", pascalsFromBar(barFromPsi(1)), 6894.757, 1e-3},
       })
    EXPECT_NEAR(row.ours, row.printed, 0.5 * row.lastDigit * (1 + 1e-6)) << row.what;
}

// The numbers that dyno sheets use: kW = N·m × rpm / 9549, hp = lb·ft × rpm / 5252 (common practice).
TEST(UnitsReference, AgreeWithTheDynoNumbers) {
  EXPECT_NEAR(torqueFromPower(1000, 9549.296586), 1, 1e-9);
  EXPECT_NEAR(poundFeetFromNewtonMetres(torqueFromPower(wattsFromHorsepower(1), 5252.113122)), 1, 1e-9);
}

TEST(UnitsReference, ThereAndBackIsTheSame) {
  for (const double x : {1e-3, 0.7, 1.0, 55.0, 12345.6}) {
    EXPECT_DOUBLE_EQ(millimetresFromMetres(metresFromMillimetres(x)), x);
    EXPECT_DOUBLE_EQ(inchesFromMetres(metresFromInches(x)), x);
    EXPECT_DOUBLE_EQ(kmhFromMps(mpsFromKmh(x)), x);
    EXPECT_DOUBLE_EQ(mphFromMps(mpsFromMph(x)), x);
    EXPECT_DOUBLE_EQ(poundsFromKilograms(kilogramsFromPounds(x)), x);
    EXPECT_DOUBLE_EQ(poundForceFromNewtons(newtonsFromPoundForce(x)), x);
    EXPECT_DOUBLE_EQ(poundFeetFromNewtonMetres(newtonMetresFromPoundFeet(x)), x);
    EXPECT_DOUBLE_EQ(horsepowerFromWatts(wattsFromHorsepower(x)), x);
    EXPECT_DOUBLE_EQ(metricHorsepowerFromWatts(wattsFromMetricHorsepower(x)), x);
    EXPECT_DOUBLE_EQ(rpmFromRadPerSecond(radPerSecondFromRpm(x)), x);
    EXPECT_DOUBLE_EQ(degreesFromRadians(radiansFromDegrees(x)), x);
    EXPECT_DOUBLE_EQ(psiFromBar(barFromPsi(x)), x);
    EXPECT_NEAR(fahrenheitFromCelsius(celsiusFromFahrenheit(x)), x, 1e-14 * (32 + x));
  }
}

}  // namespace
}  // namespace layshaft::test
