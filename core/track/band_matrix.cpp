// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/track/band_matrix.h"

#include <cassert>

namespace layshaft {

BandFactors::BandFactors(const BandMatrix& a) : cyclic_(a.cyclic) {
  const std::size_t n = a.size(), inner = cyclic_ ? n - 2 : n;
  assert(!cyclic_ || n >= 5);
  d_.resize(inner);
  l1_.resize(inner);
  l2_.resize(inner);
  for (std::size_t i = 0; i < inner; ++i) {
    double d = a.diagonal[i], e = i + 1 < inner ? a.first[i] : 0.0;
    const double f = i + 2 < inner ? a.second[i] : 0.0;
    if (i >= 1) {
      d -= l1_[i - 1] * l1_[i - 1] * d_[i - 1];
      e -= l1_[i - 1] * l2_[i - 1] * d_[i - 1];
    }
    if (i >= 2) d -= l2_[i - 2] * l2_[i - 2] * d_[i - 2];
    d_[i] = d;
    l1_[i] = e / d;
    l2_[i] = f / d;
  }
  if (!cyclic_) return;
  // The last two rows against the inner ones: the first two, the last two.
  edge_[0] = {a.second[n - 2], 0.0, a.second[n - 4], a.first[n - 3]};
  edge_[1] = {a.first[n - 1], a.second[n - 1], 0.0, a.second[n - 3]};
  for (std::size_t b = 0; b < 2; ++b) {
    border_[b].assign(inner, 0.0);
    border_[b][0] += edge_[b][0];
    border_[b][1] += edge_[b][1];
    border_[b][inner - 2] += edge_[b][2];
    border_[b][inner - 1] += edge_[b][3];
    solveInner(border_[b]);
  }
  const auto across = [&](std::size_t b, const std::vector<double>& x) {
    return edge_[b][0] * x[0] + edge_[b][1] * x[1] + edge_[b][2] * x[inner - 2] + edge_[b][3] * x[inner - 1];
  };
  const double s00 = a.diagonal[n - 2] - across(0, border_[0]), s01 = a.first[n - 2] - across(0, border_[1]),
               s11 = a.diagonal[n - 1] - across(1, border_[1]), determinant = s00 * s11 - s01 * s01;
  corner_ = {{{s11 / determinant, -s01 / determinant}, {-s01 / determinant, s00 / determinant}}};
}

void BandFactors::solveInner(std::span<double> x) const {
  const std::size_t n = d_.size();
  for (std::size_t i = 0; i < n; ++i) {
    if (i >= 1) x[i] -= l1_[i - 1] * x[i - 1];
    if (i >= 2) x[i] -= l2_[i - 2] * x[i - 2];
  }
  for (std::size_t i = n; i-- > 0;) {
    x[i] /= d_[i];
    if (i + 1 < n) x[i] -= l1_[i] * x[i + 1];
    if (i + 2 < n) x[i] -= l2_[i] * x[i + 2];
  }
}

void BandFactors::solve(std::span<double> x) const {
  const std::size_t inner = d_.size();
  const auto inside = x.first(inner);
  if (!cyclic_) return solveInner(inside);
  solveInner(inside);
  std::array<double, 2> rest{};
  for (std::size_t b = 0; b < 2; ++b)
    rest[b] = x[inner + b] - (edge_[b][0] * x[0] + edge_[b][1] * x[1] + edge_[b][2] * x[inner - 2] +
                              edge_[b][3] * x[inner - 1]);
  for (std::size_t b = 0; b < 2; ++b) x[inner + b] = corner_[b][0] * rest[0] + corner_[b][1] * rest[1];
  for (std::size_t i = 0; i < inner; ++i) x[i] -= border_[0][i] * x[inner] + border_[1][i] * x[inner + 1];
}

BandMatrix BandFactors::bandsOfInverse() const {
  assert(!cyclic_);
  const std::size_t n = d_.size();
  // Two rows of nothing behind the last keep the recursion free of questions.
  BandMatrix m{std::vector<double>(n + 2), std::vector<double>(n + 2), std::vector<double>(n + 2)};
  for (std::size_t i = n; i-- > 0;) {
    m.second[i] = -l1_[i] * m.first[i + 1] - l2_[i] * m.diagonal[i + 2];
    m.first[i] = -l1_[i] * m.diagonal[i + 1] - l2_[i] * m.first[i + 1];
    m.diagonal[i] = 1.0 / d_[i] - l1_[i] * m.first[i] - l2_[i] * m.second[i];
  }
  return m;
}

}  // namespace layshaft
