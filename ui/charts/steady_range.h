// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

namespace layshaft::ui {

/// An axis range with round ends and round ticks; of what ends somewhere by itself, the upper end is there.
struct AxisRange {
  double low = 0.0;
  double high = 1.0;
  double step = 0.2;
  bool operator==(const AxisRange&) const = default;
};

/// Where the ticks of a range stand, from its lower end on, a round upper end included; none for a range
/// without steps.
std::vector<double> ticks(const AxisRange& range);

/// The smallest round range that holds the data with about `ticks` steps of 1, 2 or 5 times a power of ten.
AxisRange roundRange(double dataLow, double dataHigh, int ticks);

/// The same where the ticks may stand a little closer if that leaves less of the range empty.
AxisRange closeRange(double dataLow, double dataHigh, int ticks);

/// A range that stays as it is while the data stay inside it and fill enough of it, so that the picture does
/// not jump while a spin box is turned; otherwise the round range of the data.
AxisRange steadyRange(const AxisRange& current, double dataLow, double dataHigh, int ticks);
/// The same with another range than the round one to go to.
AxisRange steadyRange(const AxisRange& current, double dataLow, double dataHigh, const AxisRange& otherwise);

}  // namespace layshaft::ui
