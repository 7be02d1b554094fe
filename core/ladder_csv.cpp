// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/ladder_csv.h"

#include <algorithm>
#include <optional>

#include "core/number_text.h"
#include "core/units.h"

namespace layshaft {
namespace {

std::string cell(const std::optional<double>& x) {
  return x ? numberText(*x) : std::string();
}

std::string cell(const std::optional<bool>& yes) {
  return yes ? *yes ? "true" : "false" : "";
}

/// Links or teeth that would fit, each once.
std::string lengthsThatFit(const ChainRunFigures& run) {
  std::vector<int> lengths;
  for (const FittingLength& length : run.lengthsThatFit)
    if (std::find(lengths.begin(), lengths.end(), length.links) == lengths.end())
      lengths.push_back(length.links);
  std::sort(lengths.begin(), lengths.end());
  std::string text;
  for (const int links : lengths) text += (text.empty() ? "" : " ") + std::to_string(links);
  return text;
}

std::string chainCells(const std::optional<ChainRunFigures>& run) {
  if (!run) return ",,,,,";
  const auto shiftMm =
      run->axleShiftM ? std::optional(units::millimetresFromMetres(*run->axleShiftM)) : std::nullopt;
  return cell(run->fits) + ',' + cell(shiftMm) + ',' + std::to_string(run->links) + ',' +
         lengthsThatFit(*run) + ',' + std::to_string(run->commonFactorFront) + ',' +
         std::to_string(run->commonFactorRear);
}

/// Gear, engine speed and road speed at the end of the straight.
std::string driveEndCells(const std::optional<DriveFigures>& drive) {
  if (!drive) return ",,,";
  return ',' + std::to_string(drive->endGear) + ',' + numberText(drive->endRpm) + ',' +
         numberText(drive->endSpeedMps);
}

/// What an aim's margin is measured in.
const char* marginUnit(Aim::Want want) {
  switch (want) {
    case Aim::Want::PullGain:
      return "_percent";
    case Aim::Want::LeastDriveTime:
    case Aim::Want::LeastLapTime:
      return "_s";
    case Aim::Want::TopSpeedAtLeast:
      return "_mps";
    case Aim::Want::RevAtSpeed:
    case Aim::Want::CruiseBelow:
    case Aim::Want::RevAtDriveEnd:
      break;
  }
  return "_rpm";
}

}  // namespace

std::string ladderCsv(const std::vector<LadderRow>& rows, const std::vector<Aim>& asked) {
  // While a ladder is worked out anew, rows of the old one may have other gears and aims.
  std::size_t gears = 0, aims = 0;
  for (const LadderRow& row : rows) {
    gears = std::max(gears, row.speedAtLimitMps.size());
    aims = std::max(aims, row.aims.size());
  }
  std::string out = "front_teeth,rear_teeth,final_ratio,gearing_percent,rear_teeth_equivalent";
  for (std::size_t g = 1; g <= gears; ++g) out += ",speed_at_rev_limit_gear_" + std::to_string(g) + "_mps";
  out +=
      ",cruise_rpm,top_speed_mps,zero_to_60_mph_s,zero_to_100_kmh_s,quarter_mile_s,drive_s,drive_end_gear,"
      "drive_end_rpm,drive_"
      "end_speed_mps,lap_s,fits,axle_shift_mm,links,"
      "links_that_fit,common_factor_front,common_factor_rear,front_in_spares_box,rear_in_spares_box";
  for (std::size_t a = 1; a <= aims; ++a)
    out += ",aim_" + std::to_string(a) + "_reached,aim_" + std::to_string(a) + "_margin" +
           (a <= asked.size() ? marginUnit(asked[a - 1].want) : "");
  out += '\n';
  for (const LadderRow& row : rows) {
    out += std::to_string(row.frontTeeth) + ',' + std::to_string(row.rearTeeth) + ',' +
           numberText(row.finalRatio) + ',' + numberText(row.change.gearingPercent) + ',' +
           numberText(row.change.rearTeethEquivalent);
    for (std::size_t g = 0; g < gears; ++g)
      out += ',' + (g < row.speedAtLimitMps.size() ? numberText(row.speedAtLimitMps[g]) : std::string());
    for (const auto& figure : {row.cruiseRpm, row.topSpeedMps, row.zeroTo60MphS, row.zeroTo100KmhS,
                               row.quarterMileS, row.driveS()})
      out += ',' + cell(figure);
    out += driveEndCells(row.drive);
    out += ',' + cell(row.lapS) + ',' + chainCells(row.chainRun) + ',' +
           cell(std::optional(row.frontInSparesBox)) + ',' + cell(std::optional(row.rearInSparesBox));
    for (std::size_t a = 0; a < aims; ++a)
      out += a < row.aims.size()
                 ? ',' + cell(std::optional(row.aims[a].reached)) + ',' + cell(row.aims[a].margin)
                 : ",,";
    out += '\n';
  }
  return out;
}

}  // namespace layshaft
