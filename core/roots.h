// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <array>
#include <boost/math/policies/policy.hpp>
#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <utility>

namespace layshaft {

/// The place between `a` and `b` where `f` changes sign, to the last digits that a double has; `fa` and `fb`
/// are its values there, of opposite sign or 0. Never throws: where there is no change of sign to look for
/// (values of one sign, not a number, an end that is not finite) it is the end with the smaller value.
template <class F>
double polishedRoot(F f, double a, double b, double fa, double fb) {
  if (fa == 0.0) return a;
  if (fb == 0.0) return b;
  if (a > b) {
    std::swap(a, b);
    std::swap(fa, fb);
  }
  const double nearer = std::abs(fb) < std::abs(fa) || std::isnan(fa) ? b : a;
  const bool opposite = (fa < 0.0 && fb > 0.0) || (fa > 0.0 && fb < 0.0);
  if (!opposite || !(a < b) || !std::isfinite(a) || !std::isfinite(b)) return nearer;
  // What boost would throw for is excluded above, but a function may still turn into no number inside.
  using namespace boost::math::policies;
  using Quiet = policy<domain_error<ignore_error>, pole_error<ignore_error>, overflow_error<ignore_error>,
                       rounding_error<ignore_error>, evaluation_error<ignore_error>>;
  std::uintmax_t steps = 100;
  const auto [low, high] = boost::math::tools::toms748_solve(
      f, a, b, fa, fb, boost::math::tools::eps_tolerance<double>(52), steps, Quiet());
  const double root = low + (high - low) / 2.0;
  return root >= a && root <= b ? root : nearer;
}

/// Whether a cubic keeps one sign over a range, told from its values at the ends and at both thirds: it does
/// if its four Bernstein coefficients do. False where it may still keep it.
inline bool cubicKeepsSign(const std::array<double, 4>& f) {
  const double second = (-5.0 * f[0] + 18.0 * f[1] - 9.0 * f[2] + 2.0 * f[3]) / 6.0,
               third = (2.0 * f[0] - 9.0 * f[1] + 18.0 * f[2] - 5.0 * f[3]) / 6.0;
  return (f[0] > 0.0 && second > 0.0 && third > 0.0 && f[3] > 0.0) ||
         (f[0] < 0.0 && second < 0.0 && third < 0.0 && f[3] < 0.0);
}

/// Places that cut a range into pieces on each of which a function only rises or only falls, ends included,
/// rising; with the function's values there.
struct MonotonePieces {
  std::array<double, 4> at;
  std::array<double, 4> value;
  std::size_t count;
};

/// For a function that is a cubic between `a` and `b`, which pull, resistance and bounds are on a stretch: a
/// sign change between its ends cannot hide.
template <class F>
MonotonePieces monotonePieces(F f, double a, double b) {
  // The cubic through four points a third of the range apart, p(s) = f0 + d1·s + d2·s(s−1)/2 +
  // d3·s(s−1)(s−2)/6.
  const double third = (b - a) / 3.0;
  const double f0 = f(a), f1 = f(a + third), f2 = f(b - third), f3 = f(b);
  const double d1 = f1 - f0, d2 = f2 - 2.0 * f1 + f0, d3 = f3 - 3.0 * f2 + 3.0 * f1 - f0;
  const double square = d3 / 2.0, linear = d2 - d3, constant = d1 - d2 / 2.0 + d3 / 3.0;  // of p'(s)
  MonotonePieces pieces{{a}, {f0}, 1};
  const auto add = [&](double s) {
    if (!(s > 0.0 && s < 3.0)) return;
    const double v = a + s * third;
    pieces.at[pieces.count] = v;
    pieces.value[pieces.count] = f(v);
    ++pieces.count;
  };
  const double discriminant = linear * linear - 4.0 * square * constant;
  if (discriminant > 0.0) {
    // Both roots without cancellation.
    const double q = -0.5 * (linear + std::copysign(std::sqrt(discriminant), linear));
    const double first = q != 0.0 ? constant / q : 0.0, second = square != 0.0 ? q / square : -1.0;
    add(std::min(first, second));
    add(std::max(first, second));
  }
  pieces.at[pieces.count] = b;
  pieces.value[pieces.count] = f3;
  ++pieces.count;
  return pieces;
}

}  // namespace layshaft
