// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <limits>

namespace layshaft {

/// A place on the way from one speed to another: how fast it is, and how fast that by which the way is
/// measured changes, per second. Where the way is measured by the speed itself, that is the acceleration.
struct SpeedRate {
  double mps, rate;
  double judged;  ///< the part of the rate whose zeros end the way: what must be smooth
};

/// Seconds and metres of a way.
struct SpeedSums {
  double timeS = 0.0, distanceM = 0.0;
  double least = 0.0;   ///< rate at the nodes, positive towards the end
  bool smooth = false;  ///< the sums are good to 1e-11 of themselves; else halve the way
};

/// Nodes of the seven-point Gauss-Legendre rule on −1..1: Abramowitz and Stegun, table 25.4.
inline constexpr std::array kSumNodes{
    -0.949107912342758524526, -0.741531185599394439864, -0.405845151377397166907, 0.0,
    0.405845151377397166907,  0.741531185599394439864,  0.949107912342758524526};
inline constexpr std::array kSumWeights{
    0.129484966168869693271, 0.279705391489276667901, 0.381830050505118944950, 0.417959183673469387755,
    0.381830050505118944950, 0.279705391489276667901, 0.129484966168869693271};

/// t = ∫dq/q̇ and x = ∫v·dq/q̇ by that rule, q going from `from` to `to`; `at(q)` gives speed and rate there.
template <class At>
SpeedSums speedSums(const At& at, double from, double to) {
  const double half = (to - from) / 2.0, middle = from + half, sign = half < 0.0 ? -1.0 : 1.0;
  SpeedSums sums;
  sums.least = std::numeric_limits<double>::infinity();
  std::array<double, kSumNodes.size()> values{};
  for (std::size_t i = 0; i < kSumNodes.size(); ++i) {
    const SpeedRate here = at(middle + half * kSumNodes[i]);
    const double rate = here.rate * sign, seconds = kSumWeights[i] / rate;
    values[i] = here.judged;
    sums.least = std::min(sums.least, rate);
    sums.timeS += seconds;
    sums.distanceM += here.mps * seconds;
  }
  sums.timeS *= std::abs(half);
  sums.distanceM *= std::abs(half);
  // What is judged on a way −1..1 is about a·(1 + λt + κt² + γt³). Where |λ|R + |κ|R² + |γ|R³ stays below 1,
  // 1/a has no pole within R, and the rule's error falls with the fourteenth power of R + √(R² − 1): 1e-11
  // and better.
  constexpr double kOuter = kSumNodes[6], kInner = kSumNodes[5], kR = 3.2;
  const double oddOuter = (values[6] - values[0]) / (2.0 * kOuter),
               oddInner = (values[5] - values[1]) / (2.0 * kInner);
  const double cubic = (oddOuter - oddInner) / (kOuter * kOuter - kInner * kInner);
  const double linear = oddOuter - cubic * kOuter * kOuter;
  const double square = ((values[6] + values[0]) / 2.0 - values[3]) / (kOuter * kOuter);
  sums.smooth = sums.least > 0.0 && kR * (std::abs(linear) + kR * (std::abs(square) + kR * std::abs(cubic))) <
                                        std::abs(values[3]);
  return sums;
}

/// The same by the three-point rule, for a way on which the speed changes by no more than `kShortWay` of
/// itself. Smooth, then good to 1e-10, where every rate is within `kEven` of the first one, `firstRate`.
inline constexpr double kShortWay = 0.04, kEven = 0.03;
template <class At>
SpeedSums evenSums(const At& at, double from, double to, double firstRate) {
  constexpr std::array kNodes{-0.774596669241483377036, 0.0, 0.774596669241483377036};
  constexpr std::array kWeights{5.0 / 9.0, 8.0 / 9.0, 5.0 / 9.0};
  const double half = (to - from) / 2.0, middle = from + half, sign = half < 0.0 ? -1.0 : 1.0;
  SpeedSums sums;
  sums.least = std::numeric_limits<double>::infinity();
  sums.smooth = true;
  for (std::size_t i = 0; i < kNodes.size(); ++i) {
    const SpeedRate here = at(middle + half * kNodes[i]);
    const double rate = here.rate * sign, seconds = kWeights[i] / rate;
    sums.smooth = sums.smooth && std::abs(here.rate - firstRate) <= kEven * std::abs(firstRate);
    sums.least = std::min(sums.least, rate);
    sums.timeS += seconds;
    sums.distanceM += here.mps * seconds;
  }
  sums.timeS *= std::abs(half);
  sums.distanceM *= std::abs(half);
  sums.smooth = sums.smooth && sums.least > 0.0;
  return sums;
}

/// A speed and how fast it changes over the way: v·dv/dx, m/s².
struct SpeedChange {
  double mps, mps2;
};

/// The speed where a share of a way is done that goes from one speed to another: by the cubic of v²/2 over
/// the way that has the accelerations of both ends. A first guess.
inline double speedOnWay(const SpeedChange& from, const SpeedChange& to, double wholeM, double share) {
  const double f = std::clamp(share, 0.0, 1.0), g = 1.0 - f;
  const double energy = g * g * ((1.0 + 2.0 * f) * from.mps * from.mps / 2.0 + f * wholeM * from.mps2) +
                        f * f * ((3.0 - 2.0 * f) * to.mps * to.mps / 2.0 - g * wholeM * to.mps2);
  // Not a number, where a cubic has no place between the ends, is caught too.
  const double mps = std::sqrt(2.0 * energy), low = std::min(from.mps, to.mps),
               high = std::max(from.mps, to.mps);
  return mps >= low && mps <= high ? mps : from.mps + f * (to.mps - from.mps);
}

/// A place on a way: its measure and the seconds to it.
struct ReachedOnWay {
  double measure, timeS;
};

/// Where `metres` of a way from `from` to `to` are done, which has more; `guess` is a first measure and
/// `sumsTo(q)` are the sums from its beginning. Newton inside the way, the last step in time, where it is
/// exact to the last digits.
template <class At, class SumsTo>
ReachedOnWay reachedOnWay(const At& at, const SumsTo& sumsTo, double from, double to, double metres,
                          double guess) {
  constexpr double kNearS = 3e-6;
  constexpr int kMostSteps = 60;
  double low = from, high = to, q = guess;
  for (int step = 0;; ++step) {
    const SpeedSums part = sumsTo(q);
    const SpeedRate here = at(q);
    const double rest = metres - part.distanceM, seconds = rest / here.mps;
    const double next = q + seconds * here.rate;
    if (std::abs(seconds) <= kNearS || step >= kMostSteps) return {next, part.timeS + seconds};
    (rest > 0.0 ? low : high) = q;
    const bool inside = low < high ? next > low && next < high : next < low && next > high;
    q = inside ? next : low + (high - low) / 2.0;
  }
}

}  // namespace layshaft
