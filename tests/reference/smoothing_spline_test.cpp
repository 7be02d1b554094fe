// SPDX-License-Identifier: GPL-3.0-or-later
//
// Smoothing splines beside SciPy 1.10.1 (scipy.interpolate.make_smoothing_spline(x, y, lam=α), values and
// second derivatives at x), the gain of evenly spaced closed ones in closed form, and the definition of the
// trace; band matrices beside GSL's LU of full ones.
#include "core/track/smoothing_spline.h"

#include <gsl/gsl_linalg.h>
#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "core/track/stiffness.h"
#include "core/units.h"

namespace layshaft::test {
namespace {

const std::vector<double> kAt{0, 0.7, 1.9, 2.4, 4.1, 5.0, 5.3, 7.7, 8.2, 9.6, 11.0, 11.4};
const std::vector<double> kValues{1.2, 0.4, -0.3, 0.9, 2.2, 1.7, 2.9, 0.6, -1.1, -0.4, 1.3, 1.0};

TEST(SmoothingSpline, AgreesWithSciPy) {
  struct Row {
    double alpha;
    std::vector<double> value, bend;
    SplineAt between;  ///< at 6.5
  };
  for (const Row& row :
       {Row{0.05,
            {1.15670601267, 0.369590747863, 0.0508967758243, 0.635094806428, 2.07053570552, 2.2685003248,
             2.43195271953, 0.255297433421, -0.650966508496, -0.416928383867, 1.05074230389, 1.17857806241},
            {0.0, 0.606115822598, 2.37499356977, -0.396941793816, -0.814745448556, 1.29442168194,
             -1.41352455671, -0.610825003383, 3.00342973602, 0.550405244232, -1.42862449928, 0.0},
            {2.072390918109624, -0.9872096578784292, -1.0121747800480168}},
        Row{2.5,
            {0.634724183508, 0.6163299081, 0.783272661807, 0.968416136779, 1.69033888084, 1.76814279374,
             1.71313078783, 0.367907818443, 0.138626072401, 0.0883722706839, 0.707402025523, 0.92333646035},
            {0.0, 0.158277228618, 0.325771264646, 0.178905913963, -0.366959251369, -0.472468688941,
             -0.515815636713, 0.276803224792, 0.488350590583, 0.387052614255, 0.0122661663441, 0.0},
            {1.1265637714292966, -0.6397714567297412, -0.11950620596029932}},
        Row{400.0,
            {1.01785519366, 1.00953899869, 0.995293694048, 0.988987187982, 0.958313081344, 0.931208919912,
             0.920056348609, 0.804650181438, 0.778909509224, 0.711431694837, 0.65037315415, 0.633382036103},
            {0.0, 0.000318753411091, -0.00096342916597, -0.00311678902397, -0.0108164080901, -0.0120988814405,
             -0.0119497792472, 0.0011227002073, 0.00359032070019, 0.00392347479801, 0.000366617963897, 0.0},
            {0.8662510134779073, -0.049393150933356514, -0.005413539519954012}}}) {
    const SplineKnots knots(kAt);
    const CubicSpline spline = Smoother(knots, row.alpha).smooth(kValues);
    for (std::size_t i = 0; i < kAt.size(); ++i) {
      EXPECT_NEAR(spline.value[i], row.value[i], 1e-9) << row.alpha << ", knot " << i;
      EXPECT_NEAR(spline.bend[i], row.bend[i], 1e-9) << row.alpha << ", knot " << i;
    }
    const SplineAt there = knots.in(spline, 6, 1.2 / 2.4);
    EXPECT_NEAR(there.value, row.between.value, 1e-9);
    EXPECT_NEAR(there.slope, row.between.slope, 1e-9);
    EXPECT_NEAR(there.bend, row.between.bend, 1e-9);
  }
}

TEST(SmoothingSpline, WithoutStiffnessItGoesThroughAllValues) {
  const CubicSpline spline = Smoother(SplineKnots(kAt), 0.0).smooth(kValues);
  EXPECT_EQ(spline.value, kValues);
  const SplineKnots closed(kAt, 12.0);
  EXPECT_EQ(Smoother(closed, 0.0).smooth(kValues).value, kValues);
}

// A ripple of m waves over n evenly spaced knots is an eigenvector; with θ = 2πm/n, QᵀQ has (2 − 2cos θ)²/h²
// and R h·(2 + cos θ)/3 for it.
TEST(SmoothingSpline, GainOfRipplesOnAClosedLine) {
  constexpr std::size_t kKnots = 64;
  constexpr double kStep = 1.5;
  std::vector<double> at;
  for (std::size_t i = 0; i < kKnots; ++i) at.push_back(kStep * static_cast<double>(i));
  const SplineKnots knots(at, kStep * kKnots);
  for (const double alpha : {0.1, 10.0, 1e4})
    for (const int waves : {1, 3, 10, 31}) {
      const double theta = 2.0 * units::kPi * waves / kKnots;
      std::vector<double> y;
      for (std::size_t i = 0; i < kKnots; ++i) y.push_back(std::cos(theta * static_cast<double>(i) + 0.3));
      const CubicSpline spline = Smoother(knots, alpha).smooth(y);
      const double squared = std::pow((2.0 - 2.0 * std::cos(theta)) / kStep, 2);
      const double gain = 1.0 / (1.0 + alpha * squared / (kStep * (2.0 + std::cos(theta)) / 3.0));
      for (std::size_t i = 0; i < kKnots; ++i)
        EXPECT_NEAR(spline.value[i], gain * y[i], 1e-11) << alpha << " " << waves;
      // Long ripples: 1/(1 + (L·k)⁴).
      const double k = theta / kStep, lengthM = std::pow(alpha * kStep, 0.25);
      EXPECT_NEAR(alphaOf(knots, lengthM), alpha, 1e-9 * alpha);
      if (waves == 1) {
        EXPECT_NEAR(gain, 1.0 / (1.0 + std::pow(lengthM * k, 4)), 1e-3);
      }
    }
}

TEST(SmoothingSpline, ACloseLineComesRoundWithoutAKink) {
  std::mt19937 random(5);
  std::uniform_real_distribution<> step(0.2, 3.0), value(-1, 1);
  for (const std::size_t count : {5U, 6U, 7U, 40U}) {
    std::vector<double> at{0.0}, y{value(random)};
    while (at.size() < count) {
      at.push_back(at.back() + step(random));
      y.push_back(value(random));
    }
    const SplineKnots knots(at, at.back() + step(random));
    for (const double alpha : {0.0, 0.5, 50.0}) {
      const CubicSpline spline = Smoother(knots, alpha).smooth(y);
      for (std::size_t span = 0; span < count; ++span) {
        const SplineAt end = knots.in(spline, span, 1.0), begin = knots.in(spline, (span + 1) % count, 0.0);
        EXPECT_NEAR(end.value, begin.value, 1e-12);
        EXPECT_NEAR(end.slope, begin.slope, 1e-10) << count << " " << alpha << " " << span;
        EXPECT_NEAR(end.bend, begin.bend, 1e-12);
      }
    }
  }
}

TEST(SmoothingSpline, FreedomIsTheTraceOfWhatIsTakenOff) {
  const SplineKnots knots(kAt);
  for (const double alpha : {0.01, 1.0, 100.0, 1e5}) {
    const Smoother smoother(knots, alpha);
    double trace = 0.0;
    for (std::size_t i = 0; i < kAt.size(); ++i) {
      std::vector<double> unit(kAt.size());
      unit[i] = 1.0;
      trace += 1.0 - smoother.smooth(unit).value[i];
    }
    EXPECT_NEAR(smoother.freedomOfNoise(), trace, 1e-9) << alpha;
  }
}

TEST(BandMatrix, SolvesAndInvertsAsGslDoes) {
  std::mt19937 random(11);
  std::uniform_real_distribution<> value(-1, 1);
  for (const bool cyclic : {false, true})
    for (const std::size_t n : {5U, 6U, 9U, 30U}) {
      BandMatrix band{std::vector<double>(n), std::vector<double>(n), std::vector<double>(n), cyclic};
      gsl_matrix* full = gsl_matrix_calloc(n, n);
      const auto put = [&](std::size_t i, std::size_t j, double x) {
        if (!cyclic && j >= n) return;
        gsl_matrix_set(full, i, j % n, x);
        gsl_matrix_set(full, j % n, i, x);
      };
      for (std::size_t i = 0; i < n; ++i) {
        put(i, i, band.diagonal[i] = 5.0 + value(random));
        put(i, i + 1, band.first[i] = value(random));
        put(i, i + 2, band.second[i] = value(random));
      }
      std::vector<double> b(n);
      for (double& x : b) x = value(random);
      const BandFactors factors(band);
      std::vector<double> x = b;
      factors.solve(x);
      gsl_matrix* lu = gsl_matrix_alloc(n, n);
      gsl_matrix_memcpy(lu, full);
      gsl_permutation* order = gsl_permutation_alloc(n);
      int sign = 0;
      gsl_linalg_LU_decomp(lu, order, &sign);
      gsl_vector* expected = gsl_vector_alloc(n);
      const auto right = gsl_vector_view_array(b.data(), n);
      gsl_linalg_LU_solve(lu, order, &right.vector, expected);
      for (std::size_t i = 0; i < n; ++i)
        EXPECT_NEAR(x[i], gsl_vector_get(expected, i), 1e-13) << n << cyclic;
      if (!cyclic) {
        gsl_matrix* inverse = gsl_matrix_alloc(n, n);
        gsl_linalg_LU_invert(lu, order, inverse);
        const BandMatrix bands = factors.bandsOfInverse();
        for (std::size_t i = 0; i < n; ++i) {
          EXPECT_NEAR(bands.diagonal[i], gsl_matrix_get(inverse, i, i), 1e-13);
          if (i + 1 < n) {
            EXPECT_NEAR(bands.first[i], gsl_matrix_get(inverse, i, i + 1), 1e-13);
          }
          if (i + 2 < n) {
            EXPECT_NEAR(bands.second[i], gsl_matrix_get(inverse, i, i + 2), 1e-13);
          }
        }
        gsl_matrix_free(inverse);
      }
      gsl_vector_free(expected);
      gsl_permutation_free(order);
      gsl_matrix_free(lu);
      gsl_matrix_free(full);
    }
}

// White noise of a known size on a known line: what cross-validation takes for noise, and how far it is from
// the stiffness that is best for the line, which only the test can know.
TEST(Stiffness, IsNearTheBest) {
  std::mt19937 random(13);
  std::normal_distribution<> noise(0.0, 0.4);
  constexpr std::size_t kCount = 1200;
  std::vector<double> at, truth, y;
  for (std::size_t i = 0; i < kCount; ++i) {
    at.push_back(static_cast<double>(i));
    truth.push_back(20.0 * std::sin(at.back() / 40.0) + 5.0 * std::cos(at.back() / 15.0));
    y.push_back(truth.back() + noise(random));
  }
  const SplineKnots knots(at);
  const auto errorAt = [&](double smoothingM) {
    const CubicSpline spline = Smoother(knots, alphaOf(knots, smoothingM)).smooth(y);
    double squares = 0.0;
    for (std::size_t i = 0; i < kCount; ++i) squares += std::pow(spline.value[i] - truth[i], 2);
    return std::sqrt(squares / kCount);
  };
  const std::vector<std::vector<double>> series{y};
  const Stiffness chosen = chosenStiffness(knots, series);
  double best = 1e9;
  for (double smoothingM = 0.5; smoothingM < 100.0; smoothingM *= 1.1)
    best = std::min(best, errorAt(smoothingM));
  EXPECT_LT(errorAt(chosen.smoothingM), 1.15 * best);
  EXPECT_LT(errorAt(chosen.smoothingM), 0.2) << "half the noise and less";
}

}  // namespace
}  // namespace layshaft::test
