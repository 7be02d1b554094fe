// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/parts/peak_curve.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

#include "core/limits.h"
#include "core/number_text.h"
#include "core/units.h"

namespace layshaft {
namespace {

std::optional<Problem> outside(const char* path, double value, const Limit& limit) {
  if (limit.contains(value)) return std::nullopt;
  return Problem{.kind = std::isfinite(value) ? Problem::Kind::OutOfRange : Problem::Kind::NotFinite,
                 .path = path,
                 .given = numberText(value),
                 .low = limit.low,
                 .high = limit.high,
                 .unit = limit.unit};
}

double kilowatts(double torqueNm, double rpm) {
  return torqueNm * units::radPerSecondFromRpm(rpm) / 1000.0;
}

std::optional<Problem> impossible(const EnginePeaks& peaks, double revLimitRpm) {
  // Below this an engine would not run, and nothing of a curve could be told (common practice, no source).
  constexpr double kLeastRpm = 500.0, kLeastTorqueNm = 0.1;
  if (auto problem =
          outside("torque_nm", peaks.torqueNm, {kLeastTorqueNm, limits::kCurveTorqueNm.high, "N·m"}))
    return problem;
  if (auto problem = outside("torque_rpm", peaks.torqueRpm, {kLeastRpm, revLimitRpm - 1.0, "rpm"}))
    return problem;
  if (auto problem = outside("power_rpm", peaks.powerRpm, {peaks.torqueRpm + 1.0, revLimitRpm, "rpm"}))
    return problem;
  const Limit power{kilowatts(peaks.torqueNm, peaks.torqueRpm), kilowatts(peaks.torqueNm, peaks.powerRpm),
                    "kW"};
  // Where both torques are the same to the last digit, the torque between them is.
  constexpr double kRoundOff = 1e-9;
  if (peaks.powerKw > power.low * (1.0 + kRoundOff) && peaks.powerKw <= power.high * (1.0 + kRoundOff))
    return std::nullopt;
  return Problem{.kind = std::isfinite(peaks.powerKw) ? Problem::Kind::OutOfRange : Problem::Kind::NotFinite,
                 .path = "power_kw",
                 .given = numberText(peaks.powerKw),
                 .low = power.low,
                 .high = power.high,
                 .unit = "kW"};
}

/// Torque over engine speed, as `curveFromPeaks` says.
class Form {
 public:
  explicit Form(const EnginePeaks& peaks)
      : torque_(peaks.torqueNm),
        torqueRpm_(peaks.torqueRpm),
        powerRpm_(peaks.powerRpm),
        power_(peaks.powerKw * 1000.0 / units::radPerSecondFromRpm(1.0)),
        atTorquePeak_(torque_ * torqueRpm_),
        exponent_(torque_ * (powerRpm_ - torqueRpm_) / (power_ - atTorquePeak_)) {
    constexpr double kGentlest = 1.0, kSteepest = 6.0;  // common practice, no source
    const double apart = (powerRpm_ - torqueRpm_) / powerRpm_;
    fall_ = std::clamp((1.0 - atTorquePeak_ / power_) / (apart * apart), kGentlest, kSteepest);
  }

  /// Whether the power is all but level from one peak to the other: the torque bends close to its own.
  bool bendsEarly() const {
    constexpr double kEarly = 4.0;
    return exponent_ > kEarly;
  }

  double torqueNm(double rpm) const {
    if (rpm <= torqueRpm_) {
      constexpr double kLostAtStandstill = 0.75, kExponent = 1.5;  // common practice, no source
      return torque_ * (1.0 - kLostAtStandstill * std::pow((torqueRpm_ - rpm) / torqueRpm_, kExponent));
    }
    const double away = (powerRpm_ - rpm) / (powerRpm_ - torqueRpm_);
    if (away >= 0.0) return (power_ - (power_ - atTorquePeak_) * std::pow(away, exponent_)) / rpm;
    const double beyond = (rpm - powerRpm_) / powerRpm_;
    return power_ / (1.0 + fall_ * beyond * beyond) / rpm;
  }

 private:
  double torque_, torqueRpm_, powerRpm_;
  double power_, atTorquePeak_;  ///< N·m times rpm
  double exponent_;
  double fall_ = 0.0;
};

}  // namespace

Result<TorqueCurve> curveFromPeaks(const EnginePeaks& peaks, double revLimitRpm) {
  if (auto problem = impossible(peaks, revLimitRpm)) return *problem;
  constexpr double kLowRpm = 1000.0;
  const double low = std::min(kLowRpm, peaks.torqueRpm / 2.0);
  const Form form(peaks);
  std::vector<TorquePoint> points;
  // The ends of each part keep every digit; between them nobody reads finer.
  const auto add = [&](double at, double end) {
    constexpr double kHundredths = 100.0;
    const double rpm = std::round(at);
    if (rpm >= end || (!points.empty() && rpm <= points.back().rpm)) return;
    const double torque = form.torqueNm(rpm);
    const double few = std::round(torque * kHundredths) / kHundredths;
    points.push_back({.rpm = rpm, .torqueNm = few > 0.0 ? few : torque});
  };
  constexpr int kRising = 10, kBetween = 8;
  for (int i = 0; i < kRising; ++i) add(low + (peaks.torqueRpm - low) * i / kRising, peaks.torqueRpm);
  points.push_back({.rpm = peaks.torqueRpm, .torqueNm = peaks.torqueNm});
  const double crowded = form.bendsEarly() ? 3.0 : 1.0;
  for (int i = 1; i < kBetween; ++i)
    add(peaks.torqueRpm +
            (peaks.powerRpm - peaks.torqueRpm) * std::pow(static_cast<double>(i) / kBetween, crowded),
        peaks.powerRpm);
  points.push_back({.rpm = peaks.powerRpm, .torqueNm = form.torqueNm(peaks.powerRpm)});
  // The further from the peak, the further apart.
  constexpr double kFirst = 0.025, kFurther = 1.5;
  for (double beyond = kFirst; peaks.powerRpm * (1.0 + beyond) < revLimitRpm; beyond *= kFurther)
    add(peaks.powerRpm * (1.0 + beyond), revLimitRpm);
  if (revLimitRpm > points.back().rpm)
    points.push_back({.rpm = revLimitRpm, .torqueNm = form.torqueNm(revLimitRpm)});
  return TorqueCurve::make(std::move(points));
}

}  // namespace layshaft
