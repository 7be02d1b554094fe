// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "core/bike/track.h"
#include "core/track/smoothing_spline.h"

/// What is left of the noise of a recording's fixes in the curvature of the line that was made of it.
namespace layshaft {

/// Standard deviation of the mean curvature of a stretch, in 1/m, for fixes that are off by `noiseM` to
/// either side of the line, each by itself; the line runs along the knots and is smoothed with `alpha`, then
/// cut into `stretches` of one length. Follows single fixes through the smoother and adds up their squares:
/// it holds for whatever spacing and stiffness.
double curvatureNoisePerM(const SplineKnots& knots, double alpha, std::size_t stretches, double noiseM);

/// The line as it might have been recorded another day: the same but for noise of the same size and the same
/// waves. Equal arguments give equal lines. As it is where its noise is not known, and where it has
/// less than five stretches.
TrackPath recordedAnotherDay(const TrackPath& path, bool closed, std::uint64_t day);

}  // namespace layshaft
