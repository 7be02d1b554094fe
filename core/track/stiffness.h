// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <span>
#include <vector>

#include "core/track/smoothing_spline.h"

namespace layshaft {

struct Stiffness {
  double smoothingM = 0.0;  ///< the smoothing length, as in `smoothing_spline.h`
  double freedom = 0.0;     ///< of the noise, for each series (`Smoother::freedomOfNoise`)
};

/// To about 8 % of the smoothing length, which hardly matters, or to about 40 %.
enum class Search { Fine, Rough };

/// The stiffness at which the spline through all values but one foretells that one best, on average over all
/// (generalised cross-validation), and the noise that is left then. All series of values share knots and
/// noise. `leastM` is the least smoothing length. Fewer than 16 knots are taken at their word: no noise, no
/// smoothing but the least. Noise that comes in waves longer than the steps, as a receiver's own filter makes
/// it, is not told from the line. `knots` must be open.
///
/// Source: Craven and Wahba, Smoothing noisy data with spline functions, Numer. Math. 31 (1979), 377-403;
/// freedom counted 1.4 times against smoothing too little: Kim and Gu, J. R. Statist. Soc. B 66 (2004),
/// 337-356.
Stiffness chosenStiffness(const SplineKnots& knots, std::span<const std::vector<double>> series,
                          double leastM = 0.0, Search search = Search::Fine);

/// Σ(yᵢ − gᵢ)² is weighed against α·∫g″²: the α of a smoothing length.
double alphaOf(const SplineKnots& knots, double smoothingM);

}  // namespace layshaft
