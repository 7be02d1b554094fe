// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <boost/math/tools/toms748_solve.hpp>
#include <cstdint>

namespace layshaft {

/// The place between `a` and `b` where `f` changes sign, to the last digits that a double has; `fa` and `fb`
/// are its values there, of opposite sign or 0.
template <class F>
double polishedRoot(F f, double a, double b, double fa, double fb) {
  if (fa == 0.0) return a;
  if (fb == 0.0) return b;
  std::uintmax_t steps = 100;
  if (a > b) {
    std::swap(a, b);
    std::swap(fa, fb);
  }
  const auto [low, high] = boost::math::tools::toms748_solve(
      f, a, b, fa, fb, boost::math::tools::eps_tolerance<double>(52), steps);
  return low + (high - low) / 2.0;
}

}  // namespace layshaft
