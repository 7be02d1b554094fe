// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <cstddef>
#include <optional>
#include <vector>

#include "core/parts/torque_curve.h"

namespace layshaft {

/// Full-throttle torque at every engine speed: a monotone cubic through the curve's points, so that no peak
/// or dip appears that nobody measured. Two or three points are joined by straight lines. Flat below the
/// first point, zero above the rev limit; between the last point and the limit, where nobody measured, it
/// goes on along its end slope where that falls, down to zero, else flat.
///
/// Interior slopes are the weighted harmonic mean of the neighbouring secants (Fritsch and Butland, SIAM J.
/// Sci. Stat. Comput. 5 (1984) 300), end slopes the shape-preserving three-point rule.
class TorqueSpline {
 public:
  TorqueSpline(const TorqueCurve& curve, double revLimitRpm);

  double revLimitRpm() const { return revLimitRpm_; }
  /// Engine speeds between which the curve is one cubic, rising, none above the rev limit.
  const std::vector<double>& knotsRpm() const { return knots_; }
  /// Of the curve's first point, the rev limit if that is lower.
  double firstRpm() const { return knots_.empty() ? revLimitRpm_ : knots_.front(); }

  /// What is assumed of the engine speeds between the curve's last point and the rev limit.
  struct Beyond {
    double lastPointRpm;
    bool falls;  ///< else level
  };
  /// None where the curve reaches the limit.
  const std::optional<Beyond>& beyond() const { return beyond_; }

  /// Whether a piece is of what is assumed.
  bool isBeyond(std::size_t piece) const {
    return beyond_ && pieces_[piece].startRpm >= beyond_->lastPointRpm;
  }

  /// The piece that holds an engine speed: 0 is below the first knot, i between knots i − 1 and i.
  std::size_t pieceAt(double rpm) const {
    return static_cast<std::size_t>(std::upper_bound(knots_.begin(), knots_.end(), rpm) - knots_.begin());
  }
  /// N·m on a piece, for engine speeds on it.
  double onPiece(std::size_t piece, double rpm) const {
    const Piece& p = pieces_[piece];
    const double x = rpm - p.startRpm;
    return p.c0 + x * (p.c1 + x * (p.c2 + x * p.c3));
  }
  /// N·m per rpm on a piece.
  double slopeOnPiece(std::size_t piece, double rpm) const {
    const Piece& p = pieces_[piece];
    const double x = rpm - p.startRpm;
    return p.c1 + x * (2.0 * p.c2 + x * 3.0 * p.c3);
  }
  /// N·m.
  double at(double rpm) const { return rpm > revLimitRpm_ ? 0.0 : onPiece(pieceAt(rpm), rpm); }

  /// The greatest torque up to the rev limit and the lowest engine speed at which a point or the limit gives
  /// it.
  TorquePoint peak() const;

 private:
  struct Piece {
    double startRpm, c0, c1, c2, c3;
  };

  void goOnFrom(const TorquePoint& last, double slope);

  double revLimitRpm_;
  std::vector<double> knots_;
  std::vector<Piece> pieces_;  ///< one more than knots
  std::optional<Beyond> beyond_;
};

}  // namespace layshaft
