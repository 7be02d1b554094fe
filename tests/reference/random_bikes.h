// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <random>
#include <string>

#include "tests/core/support.h"

/// Bikes, setups and rides of any kind, for studies that are worked out a second time.
namespace layshaft::test {

/// Draws of a fixed seed, the same on every platform.
class Draw {
 public:
  explicit Draw(std::uint32_t seed) : engine_(seed) {}
  double between(double low, double high) {
    return low + (high - low) * static_cast<double>(engine_()) / 4294967296.0;
  }
  int whole(int low, int high) { return low + static_cast<int>(between(0.0, high - low + 1.0)); }
  bool once(double share) { return between(0.0, 1.0) < share; }

 private:
  std::mt19937 engine_;
};

inline Json randomEngine(Draw& draw) {
  const double limit = draw.between(4500, 15500), peak = draw.between(8, 150);
  Json engine{{"rev_limit_rpm", limit}};
  if (draw.once(0.7)) engine["idle_rpm"] = draw.between(0.08, 0.2) * limit;
  const int points = draw.whole(2, 14);
  const double first = draw.between(0.1, 0.5) * limit, last = draw.between(0.8, 1.1) * limit;
  const double tallest = draw.between(0.3, 0.9) * limit;
  Json curve = Json::array();
  for (int i = 0; i < points; ++i) {
    const double part = (i + (i > 0 && i + 1 < points ? draw.between(-0.4, 0.4) : 0.0)) / (points - 1);
    const double rpm = first + (last - first) * part;
    const double hump = 1.0 - 1.2 * std::pow((rpm - tallest) / limit, 2);
    curve.push_back({{"rpm", rpm}, {"torque_nm", peak * hump * draw.between(0.85, 1.0)}});
  }
  engine["torque_curve"] = curve;
  engine["curve_measured_at"] = draw.once(0.5) ? "crankshaft" : "rear_wheel";
  if (draw.once(0.3))
    engine["curve_air"] = {{"temperature_c", draw.between(0, 35)},
                           {"pressure_hpa", draw.between(900, 1030)},
                           {"humidity_percent", draw.between(0, 100)}};
  if (draw.once(0.7)) engine["rotating_inertia_kgm2"] = peak * draw.between(0.00005, 0.0005);
  if (draw.once(0.1)) engine["torque_follows_air"] = false;
  return engine;
}

inline Json randomChassis(Draw& draw, double peak) {
  Json chassis{{"mass_kg", 60 + peak * draw.between(0.8, 2.5)}, {"drag_area_m2", draw.between(0.2, 0.75)}};
  if (draw.once(0.8)) chassis["rider_mass_kg"] = draw.between(40, 115);
  if (draw.once(0.8)) {
    const double wheelbase = draw.between(1200, 1750);
    chassis["cg_height_mm"] = draw.between(480, 850);
    chassis["cg_ahead_of_rear_axle_mm"] = wheelbase * draw.between(0.4, 0.58);
    if (draw.once(0.85)) chassis["wheelbase_mm"] = wheelbase;
    if (draw.once(0.85)) chassis["tyre_grip"] = draw.between(0.6, 1.7);
    if (draw.once(0.5)) chassis["drag_height_mm"] = draw.between(450, 1000);
  }
  if (draw.once(0.3)) {
    chassis["rolling_resistance_form"] = "speed_dependent";
    if (draw.once(0.7)) chassis["tyre_pressure_bar"] = draw.between(1.6, 2.9);
  } else if (draw.once(0.8)) {
    chassis["rolling_resistance"] = draw.between(0.008, 0.03);
  }
  if (draw.once(0.7)) chassis["drivetrain_efficiency"] = draw.between(0.8, 0.97);
  if (draw.once(0.6)) chassis["front_wheel_inertia_kgm2"] = draw.between(0.2, 0.8);
  if (draw.once(0.6)) chassis["rear_wheel_inertia_kgm2"] = draw.between(0.2, 1.2);
  if (draw.once(0.5)) chassis["front_rollout_mm"] = draw.between(1700, 2200);
  if (draw.once(0.8)) chassis["shift_time_s"] = draw.once(0.1) ? 0.0 : draw.between(0.0, 0.4);
  return chassis;
}

inline Json randomSetup(Draw& draw) {
  static constexpr const char* kTyres[] = {"180/55ZR17", "120/80-19", "150/70R17",
                                           "130/90B16",  "4.00-18",   "80/100-12"};
  Json ratios = Json::array();
  double ratio = draw.between(1.8, 3.2);
  for (int gears = draw.whole(1, 8); gears > 0; --gears) {
    ratios.push_back(ratio);
    ratio *= draw.between(0.68, 0.93);
  }
  Json setup{{"front_teeth", draw.whole(11, 18)},
             {"rear_teeth", draw.whole(34, 56)},
             {"rear_tyre", kTyres[draw.whole(0, 5)]},
             {"primary_ratio", draw.between(1.4, 3.2)},
             {"gear_ratios", ratios}};
  if (draw.once(0.5))
    setup["rollout_mm"] = draw.between(1500, 2200);
  else if (draw.once(0.5))
    setup["tread_wear_mm"] = draw.between(0, 5);
  if (draw.once(0.2)) setup["growth_per_kmh2"] = draw.between(0, 1e-7);
  return setup;
}

inline Json randomRide(Draw& draw) {
  static constexpr const char* kSurfaces[] = {"wet_asphalt", "hardpack", "loam", "sand"};
  Json ride{{"slope_percent", draw.once(0.3) ? 0.0 : draw.between(-6, 12)},
            {"headwind_kmh", draw.once(0.3) ? 0.0 : draw.between(-30, 40)}};
  if (draw.once(0.5)) ride["altitude_m"] = draw.between(0, 3000);
  if (draw.once(0.5)) ride["air_temperature_c"] = draw.between(-5, 40);
  if (draw.once(0.3)) ride["air_pressure_hpa"] = draw.between(750, 1040);
  if (draw.once(0.5)) ride["humidity_percent"] = draw.between(0, 100);
  if (draw.once(0.4)) {
    const std::string surface = kSurfaces[draw.whole(0, 3)];
    ride["surface"] = surface;
    if (draw.once(0.3))
      ride["surfaces"] = {
          {surface, {{"grip", draw.between(0.4, 1.2)}, {"rolling_resistance", draw.between(0.01, 0.2)}}}};
    if (draw.once(0.5)) ride["surfaces"][surface]["slip_percent"] = draw.between(0, 40);
  }
  return ride;
}

inline Json randomBike(Draw& draw) {
  Json profile = minimalProfile();
  profile["bike"]["engine"] = randomEngine(draw);
  double peak = 0.0;
  for (const Json& point : profile["bike"]["engine"]["torque_curve"])
    peak = std::max(peak, point["torque_nm"].get<double>());
  profile["bike"]["chassis"] = randomChassis(draw, peak);
  profile["stock"] = randomSetup(draw);
  profile["ride"] = randomRide(draw);
  return profile;
}

}  // namespace layshaft::test
