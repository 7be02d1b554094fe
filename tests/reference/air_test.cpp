// SPDX-License-Identifier: GPL-3.0-or-later
//
// The standard atmosphere, moist air and the engine's correction beside published tables, and what they do to
// the top speed.
#include "core/study/air.h"

#include <gtest/gtest.h>

#include <cmath>
#include <memory>
#include <numbers>
#include <vector>

#include "core/study/pull.h"
#include "core/study/top_speed.h"
#include "tests/core/support.h"

namespace layshaft::test {
namespace {

// ISO 2533 / ICAO 7488 standard atmosphere over geopotential altitude; the ratio of densities as printed at
// engineeringtoolbox.com d_985, pressures and densities at engineerlaboratory.com to the places given there.
TEST(AirReference, StandardAtmosphere) {
  struct Row {
    double altitudeM, kelvin, pressurePa, densityKgM3, ratio;
  };
  for (const Row& row :
       {Row{0, 288.15, 101325.0, 1.22500, 1.0000}, Row{500, 284.9, 95460.8, 1.16727, 0.9529},
        Row{1000, 281.65, 89874.6, 1.11164, 0.9075}, Row{1500, 278.4, 84556.0, 1.05807, 0.8638},
        Row{2000, 275.15, 79495.2, 1.00649, 0.8217}, Row{3000, 268.65, 70108.5, 0.90912, 0.7423}}) {
    EXPECT_NEAR(standardPressurePa(row.altitudeM), row.pressurePa, 0.06) << row.altitudeM;
    const AirState air = airState(row.kelvin - 273.15, {}, {}, row.altitudeM);
    EXPECT_NEAR(air.densityKgM3(), row.densityKgM3, 6e-6) << row.altitudeM;
    // The printed ratios are over geometric altitude: off by 1 in the last place at 3 km.
    EXPECT_NEAR(air.densityKgM3() / airState({}, {}, {}).densityKgM3(), row.ratio, 1.6e-4) << row.altitudeM;
  }
  EXPECT_NEAR(standardPressurePa(-500), 107477.5, 0.6);  // ICAO 7488, from memory
}

TEST(AirReference, AltitudeCountsOnlyWithoutAPressure) {
  EXPECT_EQ(airState(20, 990.0, {}, 2500).pressurePa, 99000);
  EXPECT_NEAR(airState(20, {}, {}, 2500).pressurePa, 74682.5, 0.6);  // the standard's table, from memory
  // The temperature stays what it is: 15 °C where nothing is typed, on the mountain too.
  EXPECT_EQ(airState({}, {}, {}, 2500).temperatureC, 15);
}

// CIPM-2007 (Picard, Davis, Glaser, Fujii, Metrologia 45 (2008) 149), worked out with its coefficients; two
// ideal gases are within 5e-4 of it.
TEST(AirReference, MoistAir) {
  struct Row {
    double celsius, pressureHpa, humidityPercent, densityKgM3;
  };
  for (const Row& row :
       {Row{20, 1013.25, 50, 1.199314}, Row{20, 1013.25, 0, 1.204557}, Row{15, 1013.25, 0, 1.225521},
        Row{30, 1013.25, 80, 1.150012}, Row{25, 1000, 50, 1.161824}, Row{35, 900, 60, 1.003291}}) {
    const AirState air = airState(row.celsius, row.pressureHpa, row.humidityPercent);
    EXPECT_NEAR(air.densityKgM3(), row.densityKgM3, 5e-4 * row.densityKgM3) << row.celsius;
  }
  // Dry air at 0 °C: engineersedge.com, air density equation.
  EXPECT_NEAR(airState(0, 1013.25, 0).densityKgM3(), 1.2922, 6.5e-4);
  // Saturated vapour at 20 °C by CIPM-2007: 2339.16 Pa; Magnus' formula is good to about 0.3 %.
  EXPECT_NEAR(airState(20, 1013.25, 100).vapourPressurePa(), 2339.16, 0.003 * 2339.16);
}

// SAE J1349 (June 1990), 1.180·(990/pd)·√((t + 273)/298) − 0.18, worked out by hand to five places.
TEST(AirReference, CorrectionOfSaeJ1349) {
  struct Row {
    double pressureHpa, vapourHpa, celsius, factor;
  };
  for (const Row& row :
       {Row{1000, 10, 25, 1.00000}, Row{1013.25, 0, 15, 0.95341}, Row{1013.25, 20, 30, 1.00596},
        Row{950, 15, 20, 1.05889}, Row{900, 12, 25, 1.13554}, Row{1020, 8, 10, 0.94492}}) {
    AirState air{.temperatureC = row.celsius, .pressurePa = 100 * row.pressureHpa, .humidity = 1};
    air.humidity = 100 * row.vapourHpa / air.vapourPressurePa();
    EXPECT_NEAR(air.torqueCorrection(), row.factor, 6e-6) << row.pressureHpa;
  }
}

/// A 600 of 90 kW at the crankshaft whatever its engine speed, 90 % of it at the wheel, CdA 0.33 m², 270 kg,
/// rolling 0.015: 262.216 km/h at 1.225 kg/m³ by the cubic of its resistance.
Bike constantPower600() {
  std::vector<TorquePoint> points;
  for (int i = 0; i < 1000; ++i) {
    const double rpm = 3000 * std::pow(5.0, i / 999.0);
    points.push_back({rpm, 90e3 / (rpm * std::numbers::pi / 30)});
  }
  Bike bike;
  bike.engine.revLimitRpm = 15000;
  bike.engine.torqueCurve = TorqueCurve::make(std::move(points)).value();
  bike.chassis = Chassis{.massKg = 190,
                         .riderMassKg = 80,
                         .dragAreaM2 = 0.33,
                         .rollingResistance = 0.015,
                         .drivetrainEfficiency = 0.9};
  return bike;
}

double topKmhOf(const Bike& bike, const Ride& ride) {
  Setup setup = bareSetup();
  setup.options.rolloutMm = 2000;
  setup.gearRatios = gears({1.05});  // 15 000 rpm at 90 m/s
  const PullModel model(std::make_shared<const PullBike>(pullBike(bike, ride)), roadOf(bike, ride), setup,
                        rolloutOf(setup), Fitted{});
  const auto top = topSpeed(model);
  return top ? top->speedMps * 3.6 : 0.0;
}

TEST(AirReference, TopSpeedFollowsDragAndTorque) {
  Bike bike = constantPower600();
  EXPECT_NEAR(topKmhOf(bike, {}), 262.216, 0.003);
  // At 2000 m and 15 °C: 79495.2 Pa, so 0.961082 kg/m³ and factors 0.953414 and 1.264656: 75.39 % of the
  // torque. The cubic gives 257.7795 km/h: thin air costs the engine a little more than it spares the rider.
  EXPECT_NEAR(topKmhOf(bike, {.altitudeM = 2000}), 257.7795, 0.001);
  // A motor that does not breathe gains all of it: 284.0130 km/h.
  bike.engine.torqueFollowsAir = false;
  EXPECT_NEAR(topKmhOf(bike, {.altitudeM = 2000}), 284.0130, 0.001);
  EXPECT_NEAR(topKmhOf(bike, {}), 262.216, 0.003);
}

TEST(AirReference, TheCurvesOwnAirIsItsReference) {
  Bike bike = constantPower600();
  // Measured where it is ridden: nothing to correct.
  const Ride hot{.airTemperatureC = 30, .airPressureHpa = 950, .humidityPercent = 60};
  bike.engine.curveAir = Air{.temperatureC = 30, .pressureHpa = 950, .humidityPercent = 60};
  EXPECT_DOUBLE_EQ(roadOf(bike, hot).torqueFactor, 1);
  // Measured there and ridden at 15 °C, 1013.25 hPa, dry: vapour 25.402 hPa, so 1.094024 over 0.953414.
  EXPECT_NEAR(roadOf(bike, {}).torqueFactor, 1.094024 / 0.953414, 2e-6);
  bike.engine.curveAir.reset();
  EXPECT_NEAR(roadOf(bike, hot).torqueFactor, 0.953414 / 1.094024, 2e-6);
  EXPECT_DOUBLE_EQ(roadOf(bike, {}).torqueFactor, 1);
}

}  // namespace
}  // namespace layshaft::test
