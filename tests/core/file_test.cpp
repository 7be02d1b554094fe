// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/file.h"

#include <sys/stat.h>

#include <chrono>
#include <fstream>

#include "tests/core/support.h"
#include "tests/small_disk.h"

namespace layshaft::test {
namespace {

using Kind = Problem::Kind;
using std::filesystem::path;

class FileTest : public testing::Test {
 protected:
  FileTest() {
    std::string name = (std::filesystem::temp_directory_path() / "layshaft-files-XXXXXX").string();
    folder_ = ::mkdtemp(name.data());
  }
  ~FileTest() override { std::filesystem::remove_all(folder_); }

  path made(const std::string& name, const std::string& content) const {
    std::ofstream(folder_ / name, std::ios::binary) << content;
    return folder_ / name;
  }
  std::size_t filesIn(const path& folder) const {
    return static_cast<std::size_t>(std::distance(std::filesystem::directory_iterator(folder), {}));
  }

  path folder_;
};

TEST_F(FileTest, SavesWhatIsReadBackAndLeavesNothingElse) {
  const path file = folder_ / "new.json";
  EXPECT_EQ(saveFile(file, "one"), std::nullopt);
  EXPECT_EQ(saveFile(file, std::string("two\0three", 9)), std::nullopt);
  EXPECT_EQ(*readFile(file, 100), std::string("two\0three", 9));
  EXPECT_EQ(saveFile(file, ""), std::nullopt);
  EXPECT_EQ(*readFile(file, 100), "");
  EXPECT_EQ(filesIn(folder_), 1u);
}

TEST_F(FileTest, AFullDiskLeavesTheOldFileWholeAndSaysSo) {
  const SmallDisk disk;
  LAYSHAFT_NEEDS(disk);
  const path file = disk.file("bike.json");
  const std::string old(20000, 'o');
  ASSERT_EQ(saveFile(file, old), std::nullopt);
  disk.fillUpTo(8192);
  for (const std::size_t size : {9000u, 12000u, 20000u, 500000u}) {
    const auto problem = saveFile(file, std::string(size, 'n'));
    ASSERT_TRUE(problem) << size;
    EXPECT_EQ(problem->kind, Kind::FileUnwritable);
    EXPECT_EQ(problem->given, "No space left on device");
    EXPECT_EQ(*readFile(file, 100000), old) << size;
    EXPECT_EQ(filesIn(disk.folder()), 2u) << "no half of a new file is left";
  }
}

TEST_F(FileTest, AFullDiskMakesNoNewFile) {
  const SmallDisk disk;
  LAYSHAFT_NEEDS(disk);
  disk.fillUpTo(0);
  EXPECT_TRUE(saveFile(disk.file("new.json"), "something"));
  EXPECT_EQ(filesIn(disk.folder()), 1u);
}

TEST_F(FileTest, AFileThatCanOnlyBeWrittenOverSurvivesAFullDisk) {
  // A file that is itself a place where another is mounted cannot be replaced.
  const SmallDisk disk;
  LAYSHAFT_NEEDS(disk);
  const path file = made("fixed.json", ""), behind = disk.file("behind.json");
  const std::string old(20000, 'o');
  ASSERT_EQ(saveFile(behind, old), std::nullopt);
  ASSERT_EQ(::mount(behind.c_str(), file.c_str(), nullptr, MS_BIND, nullptr), 0);
  EXPECT_EQ(saveFile(file, std::string(24000, 'n')), std::nullopt);
  EXPECT_EQ(*readFile(behind, 100000), std::string(24000, 'n'));
  EXPECT_EQ(saveFile(file, old), std::nullopt) << "and shorter again";
  EXPECT_EQ(*readFile(behind, 100000), old);
  disk.fillUpTo(4096);
  EXPECT_EQ(saveFile(file, std::string(60000, 'n')).value().kind, Kind::FileUnwritable);
  EXPECT_EQ(*readFile(behind, 100000), old);
  ::umount2(file.c_str(), MNT_DETACH);
  EXPECT_EQ(filesIn(folder_), 1u);
}

TEST_F(FileTest, KeepsPermissionsAndLinks) {
  const path real = made("real.json", "old");
  ASSERT_EQ(::chmod(real.c_str(), 0640), 0);
  std::filesystem::create_symlink("real.json", folder_ / "near.json");
  std::filesystem::create_symlink("near.json", folder_ / "far.json");
  ASSERT_EQ(saveFile(folder_ / "far.json", "new"), std::nullopt);
  EXPECT_EQ(*readFile(real, 10), "new");
  EXPECT_TRUE(std::filesystem::is_symlink(folder_ / "far.json"));
  EXPECT_TRUE(std::filesystem::is_symlink(folder_ / "near.json"));
  EXPECT_EQ(std::filesystem::status(real).permissions(), std::filesystem::perms{0640});
}

TEST_F(FileTest, ALinkToWhatIsNotThereYetMakesThat) {
  std::filesystem::create_symlink("later.json", folder_ / "link.json");
  ASSERT_EQ(saveFile(folder_ / "link.json", "new"), std::nullopt);
  EXPECT_TRUE(std::filesystem::is_symlink(folder_ / "link.json"));
  EXPECT_EQ(*readFile(folder_ / "later.json", 10), "new");
}

TEST_F(FileTest, LinksInACircleAreRefused) {
  std::filesystem::create_symlink("b", folder_ / "a");
  std::filesystem::create_symlink("a", folder_ / "b");
  EXPECT_TRUE(saveFile(folder_ / "a", "new"));
  EXPECT_EQ(readFile(folder_ / "a", 10).problem().kind, Kind::FileUnreadable);
}

TEST_F(FileTest, PipesAndDevicesAreRefusedAtOnce) {
  const path pipe = folder_ / "pipe";
  ASSERT_EQ(::mkfifo(pipe.c_str(), 0600), 0);
  for (const path& odd : {pipe, path("/dev/zero"), path("/dev/null")}) {
    EXPECT_EQ(readFile(odd, 100).problem().kind, Kind::NotAFile) << odd;
    EXPECT_EQ(saveFile(odd, "x").value().kind, Kind::NotAFile) << odd;
  }
  EXPECT_EQ(saveFile(folder_, "x").value().kind, Kind::FileUnwritable);
}

TEST_F(FileTest, NamesAreBytes) {
  const path odd = folder_ / "\xff\xfe bike \x01.json";
  ASSERT_EQ(saveFile(odd, "x"), std::nullopt);
  EXPECT_EQ(*readFile(odd, 10), "x");
}

TEST_F(FileTest, TellsWhetherTwoNamesAreOneFile) {
  const path a = made("a", "1"), b = made("b", "1");
  std::filesystem::create_symlink("a", folder_ / "link");
  std::filesystem::create_symlink("later", folder_ / "dangling");
  std::filesystem::create_hard_link(a, folder_ / "twin");
  EXPECT_FALSE(sameFile(a, b));
  EXPECT_TRUE(sameFile(a, folder_ / "link"));
  EXPECT_TRUE(sameFile(a, folder_ / "." / "a"));
  EXPECT_TRUE(sameFile(a, folder_ / "twin"));
  EXPECT_TRUE(sameFile(folder_ / "dangling", folder_ / "later")) << "neither is there yet";
  EXPECT_FALSE(sameFile(folder_ / "dangling", a));
}

TEST_F(FileTest, AMarkChangesWithTheFile) {
  const path file = made("a", "1");
  const auto before = markOf(file);
  ASSERT_TRUE(before);
  EXPECT_EQ(markOf(file), before);
  std::filesystem::last_write_time(file,
                                   std::filesystem::last_write_time(file) + std::chrono::milliseconds(3));
  EXPECT_NE(markOf(file), before) << "the same size, another time";
  made("a", "22");
  EXPECT_EQ(markOf(file)->size, 2u);
  EXPECT_EQ(markOf(folder_ / "none"), std::nullopt);
}

TEST_F(FileTest, AFileThatMayNotBeWrittenIsRefused) {
  if (::geteuid() == 0) GTEST_SKIP() << "root may write anything";
  const path file = made("a", "1");
  ASSERT_EQ(::chmod(file.c_str(), 0400), 0);
  EXPECT_EQ(saveFile(file, "x").value().kind, Kind::FileUnwritable);
}

TEST(SaveProfile, RefusesWhatCouldNotBeOpenedAgain) {
  const SmallDisk disk(1024);
  LAYSHAFT_NEEDS(disk);
  Profile profile = profileFrom(minimalProfile().dump());
  ASSERT_EQ(saveProfile(profile, disk.file("a")), std::nullopt);
  profile.extras.keep("mine", "\"" + std::string(kLargestProfileBytes, 'x') + "\"");
  EXPECT_EQ(saveProfile(profile, disk.file("a")).value().kind, Kind::FileTooLarge);
  EXPECT_TRUE(loadProfile(disk.file("a"))) << "the old file is whole";
  profile.extras.clear();
  profile.name.clear();  // no window can do that; a file could not be opened
  EXPECT_EQ(saveProfile(profile, disk.file("a")).value().path, "name");
}

TEST(SaveProfile, UnknownDataStaysAsCompactAsItWas) {
  // Deep lists of little things: two blanks per level would make many times as much of them.
  std::string deep;
  for (int i = 0; i < 40; ++i) deep += "[";
  deep += "1";
  for (int i = 0; i < 40; ++i) deep += "]";
  std::string list = "[";
  for (int i = 0; i < 5000; ++i) list += (i ? "," : "") + deep;
  list += "]";
  const std::string text = withRaw("/unknown", list);
  const std::string written = writeProfile(profileFrom(text));
  EXPECT_LT(written.size(), text.size() + 2000);
  EXPECT_EQ(Json::parse(written)["unknown"], Json::parse(list));
}

TEST(SaveProfile, ManyUnknownKeysTakeNoLongerThanTheirText) {
  // 200,000 keys beside one value of the same size: were each looked for among all, this would take minutes.
  std::string many = "{";
  for (int i = 0; i < 200000; ++i) many += (i ? ",\"k" : "\"k") + std::to_string(i) + "\":1";
  many += "}";
  for (const std::string& text : {withRaw("/unknown", many),
                                  minimalProfile().dump().insert(1, many.substr(1, many.size() - 2) + ",")}) {
    const Profile profile = profileFrom(text);
    EXPECT_EQ(profileFrom(writeProfile(profile)), profile);
  }
}

TEST(ExtrasTest, CopiesShareUntilOneIsChanged) {
  Extras a;
  a.keep("x", "1");
  Extras b = a;
  EXPECT_EQ(&a.at("x"), &b.at("x")) << "nothing is copied";
  b.keep("x", "2");
  EXPECT_EQ(a.at("x"), "1");
  EXPECT_EQ(b.at("x"), "2");
  EXPECT_FALSE(a == b);
  b.clear();
  EXPECT_TRUE(b == Extras());
  EXPECT_EQ(a.size(), 1u);
}

}  // namespace
}  // namespace layshaft::test
