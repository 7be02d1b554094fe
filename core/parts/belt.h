// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <vector>

namespace layshaft {

/// Lengths in teeth that a toothed belt can be had in: the listed ones and the one that is there, rising. A
/// belt cannot be cut, so nothing between them exists.
inline std::vector<int> beltLengths(std::vector<int> listed, int present) {
  listed.push_back(present);
  std::sort(listed.begin(), listed.end());
  listed.erase(std::unique(listed.begin(), listed.end()), listed.end());
  return listed;
}

}  // namespace layshaft
