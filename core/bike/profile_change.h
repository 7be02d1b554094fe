// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <memory>

#include "core/bike/profile.h"

namespace layshaft {

/// What turns one profile into another: of each part that differs the value before and after, and nothing of
/// the rest. A value; copies share what they hold.
class ProfileChange {
 public:
  ProfileChange(const Profile& before, const Profile& after);

  void redo(Profile& profile) const;
  void undo(Profile& profile) const;
  bool changesNothing() const;

  /// This change and then `next`, as one.
  ProfileChange followedBy(const ProfileChange& next) const;

  /// About how much memory it takes; unknown data, which is shared with the profile, is not counted.
  std::size_t bytes() const;

 private:
  struct Parts;
  explicit ProfileChange(std::shared_ptr<const Parts> parts) : parts_(std::move(parts)) {}

  std::shared_ptr<const Parts> parts_;
};

}  // namespace layshaft
