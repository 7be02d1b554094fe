// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <filesystem>
#include <string>
#include <string_view>

#include "core/bike/profile.h"
#include "core/problem.h"

/// The profile file: JSON text <-> Profile. Unknown keys survive a round trip; everything else is checked.
namespace layshaft {

inline constexpr std::string_view kProfileFormat = "layshaft-bike";
inline constexpr int kProfileVersion = 1;
inline constexpr std::size_t kLargestProfileBytes = std::size_t{8} << 20;
inline constexpr int kDeepestProfileNesting = 64;

/// Reads a profile from its text. The first thing that is wrong is the problem, with its key path.
Result<Profile> readProfile(std::string_view text);

/// Reads a profile from a file; also FileUnreadable, NotAFile and FileTooLarge.
Result<Profile> loadProfile(const std::filesystem::path& file);

/// Makes a file hold the profile, or leaves it as it is and says why: as `saveFile`, and FileTooLarge or any
/// other problem with which the file could not be opened again.
std::optional<Problem> saveProfile(const Profile& profile, const std::filesystem::path& file);

/// The text to save: UTF-8, keys in the order of the format, numbers with a point and the digits they were
/// given.
std::string writeProfile(const Profile& profile);

/// A whole profile that breaks no rule between its values, as after an edit; the problem if it does.
/// Checks what single values cannot: shift and launch speed against the rev limit, idle below it, centre of
/// gravity inside the wheelbase, smallest sprocket not above largest, teeth of gears that make the ratio,
/// what tracks are made of and their names.
std::optional<Problem> conflictIn(const Profile& profile);

}  // namespace layshaft
