// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <gtest/gtest.h>
#include <sys/mount.h>
#include <unistd.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <string>

namespace layshaft::test {

/// A disk of a few kilobytes, which is soon full. Only root can have one; where there is none, a test that
/// needs it skips with a word, but fails where LAYSHAFT_NO_SKIP is set.
class SmallDisk {
 public:
  explicit SmallDisk(int kilobytes = 64) {
    std::string name = (std::filesystem::temp_directory_path() / "layshaft-disk-XXXXXX").string();
    if (!::mkdtemp(name.data())) return;
    folder_ = name;
    const std::string size = "size=" + std::to_string(kilobytes) + "k";
    mounted_ = ::mount("none", folder_.c_str(), "tmpfs", 0, size.c_str()) == 0;
  }
  SmallDisk(const SmallDisk&) = delete;
  SmallDisk& operator=(const SmallDisk&) = delete;
  ~SmallDisk() {
    if (mounted_) ::umount2(folder_.c_str(), MNT_DETACH);
    std::error_code error;
    std::filesystem::remove(folder_, error);
  }

  bool there() const { return mounted_; }
  const std::filesystem::path& folder() const { return folder_; }
  std::filesystem::path file(const std::string& name) const { return folder_ / name; }

  /// Leaves so many bytes free, give or take a page.
  void fillUpTo(std::size_t free) const {
    std::ofstream filler(file("filler"), std::ios::binary);
    const auto space = std::filesystem::space(folder_).available;
    if (space > free) filler << std::string(space - free, 'x');
  }

 private:
  std::filesystem::path folder_;
  bool mounted_ = false;
};

}  // namespace layshaft::test

/// Ends the test if there is no small disk to be had.
#define LAYSHAFT_NEEDS(disk)                                                         \
  if (!(disk).there()) {                                                             \
    if (std::getenv("LAYSHAFT_NO_SKIP")) FAIL() << "no small disk could be mounted"; \
    GTEST_SKIP() << "only root can mount a small disk";                              \
  }
