// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/straight_line.h"

#include <boost/math/distributions/students_t.hpp>
#include <boost/math/statistics/linear_regression.hpp>
#include <cmath>

namespace layshaft {

std::optional<double> StraightLine::slopeError() const {
  if (!residualSd) return std::nullopt;
  return *residualSd / std::sqrt(sxx);
}

std::optional<double> StraightLine::interceptError() const {
  if (!residualSd) return std::nullopt;
  return *residualSd * std::sqrt(1.0 / static_cast<double>(points) + meanX * meanX / sxx);
}

std::optional<StraightLine> straightLine(const std::vector<LinePoint>& points) {
  std::vector<double> x, y;
  double sum = 0.0;
  for (const LinePoint& point : points) {
    x.push_back(point.x);
    y.push_back(point.y);
    sum += point.x;
  }
  if (points.size() < 2) return std::nullopt;
  const auto count = static_cast<double>(points.size());
  const double meanX = sum / count;
  double sxx = 0.0;
  for (const double one : x) sxx += (one - meanX) * (one - meanX);
  if (sxx <= 0.0) return std::nullopt;
  const auto [intercept, slope] = boost::math::statistics::simple_ordinary_least_squares(x, y);
  StraightLine line{.points = points.size(),
                    .intercept = intercept,
                    .slope = slope,
                    .meanX = meanX,
                    .sxx = sxx,
                    .residualSd = std::nullopt};
  if (points.size() == 2) return line;
  double squares = 0.0;
  for (const LinePoint& point : points) squares += std::pow(point.y - line.at(point.x), 2);
  line.residualSd = std::sqrt(squares / (count - 2.0));
  return line;
}

std::optional<Reached> reaches(const StraightLine& line, double y, double confidence) {
  if (!(line.slope > 0.0)) return std::nullopt;
  Reached reached{.x = (y - line.intercept) / line.slope, .low = {}, .high = {}};
  if (!line.residualSd) return reached;
  const boost::math::students_t student(static_cast<double>(line.points) - 2.0);
  const double t = boost::math::quantile(student, 0.5 + confidence / 2.0);
  const double off = reached.x - line.meanX;
  const double half = t * *line.residualSd / line.slope *
                      std::sqrt(1.0 / static_cast<double>(line.points) + off * off / line.sxx);
  reached.low = reached.x - half;
  reached.high = reached.x + half;
  return reached;
}

}  // namespace layshaft
