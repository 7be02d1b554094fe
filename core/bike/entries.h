// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <cstddef>
#include <memory>
#include <utility>
#include <vector>

namespace layshaft {

/// A book of records: entries are added at its end, and one may be put in place of itself to be struck
/// through. A value; copies share their entries, so that a book of thousands costs a copy, or a step of the
/// history, little.
template <class T>
class Entries {
 public:
  bool empty() const { return held_.empty(); }
  std::size_t size() const { return held_.size(); }
  const T& operator[](std::size_t index) const { return *held_[index]; }

  void add(T entry) { held_.push_back(std::make_shared<const T>(std::move(entry))); }
  void put(std::size_t index, T entry) { held_[index] = std::make_shared<const T>(std::move(entry)); }

  friend bool operator==(const Entries& a, const Entries& b) {
    return std::equal(a.held_.begin(), a.held_.end(), b.held_.begin(), b.held_.end(),
                      [](const auto& x, const auto& y) { return x == y || *x == *y; });
  }

 private:
  std::vector<std::shared_ptr<const T>> held_;
};

}  // namespace layshaft
