// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "core/parts/torque_curve.h"
#include "core/problem.h"

namespace layshaft {

/// What data sheets tell of an engine: its highest torque and its highest power, each with its engine speed.
struct EnginePeaks {
  double torqueNm = 0.0;
  double torqueRpm = 0.0;
  double powerKw = 0.0;
  double powerRpm = 0.0;
  bool operator==(const EnginePeaks&) const = default;
};

/// A full-throttle curve that passes through both peaks, from a low engine speed up to the rev limit: torque
/// level and highest at the torque peak, power level and highest at the power peak, both above 0 throughout.
///
/// With n the engine speed, T and P the peaks at nT and nP, Q = T·nT the power at the torque peak (all powers
/// as torque times engine speed):
///  - up to nT: torque T·(1 − 0.75·((nT − n)/nT)^1.5), which leaves a quarter of it at standstill;
///  - from nT to nP: power P − (P − Q)·((nP − n)/(nP − nT))^m with m = T·(nP − nT)/(P − Q), the exponent with
///    which the torque leaves its peak level; it is concave, so neither peak is passed;
///  - above nP: power P/(1 + c·((n − nP)/nP)²), with c = (1 − Q/P)·(nP/(nP − nT))², so that it falls about as
///    it has risen, but between 1 and 6.
/// That engines breathe alike is common practice, no source: measured curves take its place.
///
/// Problems, with the path `torque_nm`, `torque_rpm`, `power_kw` or `power_rpm`: OutOfRange for what no
/// engine has, for a power peak that is not above the torque peak or is above the rev limit, and for a power
/// that is no more than the torque peak gives at its own engine speed, or more than it would give at the
/// power peak's.
Result<TorqueCurve> curveFromPeaks(const EnginePeaks& peaks, double revLimitRpm);

}  // namespace layshaft
