// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <optional>
#include <string_view>
#include <utility>

#include "core/bike/profile.h"

/// The word that stands for each choice in files and reports.
namespace layshaft {

template <class Enum, std::size_t N>
using Words = std::array<std::pair<Enum, std::string_view>, N>;

inline constexpr Words<BikeClass, 5> kBikeClassWords{{{BikeClass::Sport, "sport"},
                                                      {BikeClass::Naked, "naked"},
                                                      {BikeClass::Tourer, "tourer"},
                                                      {BikeClass::Lightweight, "lightweight"},
                                                      {BikeClass::Motocross, "motocross"}}};
inline constexpr Words<CurvePlace, 2> kCurvePlaceWords{
    {{CurvePlace::Crankshaft, "crankshaft"}, {CurvePlace::RearWheel, "rear_wheel"}}};
inline constexpr Words<RollingResistanceForm, 2> kRollingResistanceWords{
    {{RollingResistanceForm::Constant, "constant"},
     {RollingResistanceForm::SpeedDependent, "speed_dependent"}}};
inline constexpr Words<SpeedSensor, 3> kSpeedSensorWords{{{SpeedSensor::GearboxOutput, "gearbox_output"},
                                                          {SpeedSensor::RearWheel, "rear_wheel"},
                                                          {SpeedSensor::FrontWheel, "front_wheel"}}};
inline constexpr Words<FinalDrive, 2> kFinalDriveWords{
    {{FinalDrive::Chain, "chain"}, {FinalDrive::Belt, "belt"}}};
inline constexpr Words<ChainKind, 2> kChainKindWords{
    {{ChainKind::Plain, "plain"}, {ChainKind::Sealed, "sealed"}}};
inline constexpr Words<UseUnit, 2> kUseUnitWords{{{UseUnit::Hours, "hours"}, {UseUnit::Km, "km"}}};
inline constexpr Words<TeethSeen, 3> kTeethSeenWords{
    {{TeethSeen::Good, "good"}, {TeethSeen::Worn, "worn"}, {TeethSeen::Hooked, "hooked"}}};
inline constexpr Words<SprocketMaterial, 2> kMaterialWords{
    {{SprocketMaterial::Steel, "steel"}, {SprocketMaterial::Aluminium, "aluminium"}}};
inline constexpr Words<Surface, 5> kSurfaceWords{{{Surface::Asphalt, "asphalt"},
                                                  {Surface::WetAsphalt, "wet_asphalt"},
                                                  {Surface::Hardpack, "hardpack"},
                                                  {Surface::Loam, "loam"},
                                                  {Surface::Sand, "sand"}}};
inline constexpr Words<Turn, 2> kTurnWords{{{Turn::Left, "left"}, {Turn::Right, "right"}}};
inline constexpr Words<SpareState, 3> kSpareStateWords{
    {{SpareState::New, "new"}, {SpareState::Used, "used"}, {SpareState::Worn, "worn"}}};
inline constexpr Words<Aim::Want, 7> kAimWords{{{Aim::Want::RevAtSpeed, "rev_at_speed"},
                                                {Aim::Want::CruiseBelow, "cruise_below"},
                                                {Aim::Want::PullGain, "pull_gain"},
                                                {Aim::Want::LeastDriveTime, "least_drive_time"},
                                                {Aim::Want::TopSpeedAtLeast, "top_speed_at_least"},
                                                {Aim::Want::RevAtDriveEnd, "rev_at_drive_end"},
                                                {Aim::Want::LeastLapTime, "least_lap_time"}}};

template <class Enum, std::size_t N>
constexpr std::string_view wordFor(Enum value, const Words<Enum, N>& words) {
  for (const auto& [candidate, word] : words)
    if (candidate == value) return word;
  return {};
}

template <class Enum, std::size_t N>
constexpr std::optional<Enum> fromWord(std::string_view text, const Words<Enum, N>& words) {
  for (const auto& [value, word] : words)
    if (word == text) return value;
  return std::nullopt;
}

}  // namespace layshaft
