// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/thinned_line.h"

#include <algorithm>
#include <limits>

namespace layshaft::ui {
namespace {

/// The slopes at which a line from a point passes all that came since near enough.
struct Cone {
  QPointF from;
  double low = -std::numeric_limits<double>::infinity();
  double high = std::numeric_limits<double>::infinity();

  /// Whether the line may end there; if so, later ends have to pass it.
  bool take(const QPointF& point, double px) {
    const double right = point.x() - from.x(), up = point.y() - from.y();
    if (!(right > 0.0) || up / right < low || up / right > high) return false;
    low = std::max(low, (up - px) / right);
    high = std::min(high, (up + px) / right);
    return true;
  }
};

}  // namespace

QPolygonF thinnedLine(const QPolygonF& line, double px) {
  if (line.size() < 3) return line;
  QPolygonF thinned{line.front()};
  Cone cone{line.front()};
  for (qsizetype i = 1; i < line.size(); ++i) {
    if (cone.take(line[i], px)) continue;
    if (thinned.back() != line[i - 1]) thinned << line[i - 1];
    cone = Cone{line[i - 1]};
    if (!cone.take(line[i], px)) {  // straight up or down
      thinned << line[i];
      cone = Cone{line[i]};
    }
  }
  if (thinned.back() != line.back()) thinned << line.back();
  return thinned;
}

}  // namespace layshaft::ui
