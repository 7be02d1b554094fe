// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <span>
#include <vector>

namespace layshaft {

/// A symmetric matrix with two bands beside its diagonal, that come round at the corners if it is cyclic:
/// rows i and j meet where they are at most two apart. At least five rows if cyclic.
struct BandMatrix {
  std::vector<double> diagonal, first, second;  ///< (i,i), (i,i+1), (i,i+2); i+1 and i+2 come round if cyclic
  bool cyclic = false;
  std::size_t size() const { return diagonal.size(); }
};

/// L·D·Lᵀ of a positive definite band matrix, in time and room that grow with its rows. A cyclic one is
/// factored without its last two rows, which are then eliminated as a border. The libraries at hand hide or
/// copy the factors, which the trace of the inverse is found from.
class BandFactors {
 public:
  explicit BandFactors(const BandMatrix& matrix);

  /// Replaces the right side by the solution.
  void solve(std::span<double> x) const;

  /// The bands of the inverse of a matrix that is not cyclic, in the places of a BandMatrix.
  /// Source: Hutchinson and de Hoog, Smoothing noisy data with spline functions, Numer. Math. 47 (1985),
  /// 99-106.
  BandMatrix bandsOfInverse() const;

 private:
  void solveInner(std::span<double> x) const;

  std::vector<double> d_, l1_, l2_;  ///< of the inner rows: D, and L one and two below its diagonal
  bool cyclic_ = false;
  std::array<std::vector<double>, 2> border_;      ///< the inner inverse times the border's columns
  std::array<std::array<double, 2>, 2> corner_{};  ///< inverse of what is left of the last two rows
  std::array<std::array<double, 4>, 2>
      edge_{};  ///< of the border's columns: first two and last two inner rows
};

}  // namespace layshaft
