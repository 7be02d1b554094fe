// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>

#include "core/problem.h"

/// Whole files, read and replaced. Names are bytes, as the system has them, whatever their encoding.
namespace layshaft {

/// What a plain file holds. Problems: FileUnreadable; NotAFile for pipes and devices, which are never opened,
/// so that none can block; FileTooLarge beyond `most` bytes.
Result<std::string> readFile(const std::filesystem::path& file, std::size_t most);

/// Makes `bytes` the whole content of a file, behind whatever links lead to it. The new content is complete
/// and on the disk before it takes the old one's place; if anything fails the old file is as it was and the
/// problem (FileUnwritable, NotAFile) says why. Permissions of an old file stay; another hard link to it
/// keeps the old content. Where the folder allows no new file, the old one is written over after room for all
/// of it was set aside, and restored if that fails.
std::optional<Problem> saveFile(const std::filesystem::path& file, std::string_view bytes);

/// The file that a name leads to: links are followed, the last one also to a file that does not exist yet.
std::filesystem::path fileBehind(const std::filesystem::path& file);

/// Whether two names lead to one file; also told for files that do not exist yet.
bool sameFile(const std::filesystem::path& a, const std::filesystem::path& b);

/// By what it is told that a file has been changed by somebody else.
struct FileMark {
  std::int64_t modifiedNs;  ///< since 1970
  std::uintmax_t size;
  bool operator==(const FileMark&) const = default;
};
/// None if there is no such file.
std::optional<FileMark> markOf(const std::filesystem::path& file);

}  // namespace layshaft
