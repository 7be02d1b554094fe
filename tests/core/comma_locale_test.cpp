// SPDX-License-Identifier: GPL-3.0-or-later
//
// On a desktop that writes 1,5 the program must read and write the same files.
#include <gtest/gtest.h>

#include <clocale>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <locale>
#include <sstream>
#include <string>

#include "core/ladder_csv.h"
#include "core/number_text.h"
#include "core/plan.h"
#include "core/profile_file.h"
#include "core/report.h"
#include "tests/core/support.h"

namespace layshaft::test {
namespace {

/// The same for C++ streams. By name it would come from glibc's newlocale, which loses a few bytes each time
/// LOCPATH is set, and the leak sanitizer would blame this test.
struct GermanNumbers : std::numpunct<char> {
  char do_decimal_point() const override { return ','; }
  char do_thousands_sep() const override { return '.'; }
  std::string do_grouping() const override { return "\3"; }
};

/// Puts a locale with a decimal comma in force; few machines have one installed, so it is built first.
class CommaLocale : public testing::Test {
 protected:
  void SetUp() override {
    std::string name = (std::filesystem::temp_directory_path() / "layshaft-locale-XXXXXX").string();
    ASSERT_TRUE(mkdtemp(name.data()));
    folder_ = name;
    const std::string command =
        "localedef -i de_DE -f UTF-8 '" + (folder_ / "de_DE.UTF-8").string() + "' >/dev/null 2>&1";
    ASSERT_EQ(std::system(command.c_str()), 0)
        << "No locale with a decimal comma can be built: install the Debian package 'locales'.";
    ASSERT_EQ(setenv("LOCPATH", folder_.c_str(), 1), 0);
    plain_ = results();
    ASSERT_TRUE(std::setlocale(LC_ALL, "de_DE.UTF-8")) << "the locale was built but is not found";
    std::locale::global(std::locale(std::locale::classic(), new GermanNumbers));
  }
  void TearDown() override {
    std::locale::global(std::locale::classic());
    std::setlocale(LC_ALL, "C");
    unsetenv("LOCPATH");
    std::error_code ignored;
    if (!folder_.empty()) std::filesystem::remove_all(folder_, ignored);
  }

  struct Results {
    std::string written, json, csv, numbers;
    Profile profile = profileFrom(minimalProfile().dump());
  };
  static Results results() {
    Results all;
    all.profile = profileFrom(profileText());
    all.written = writeProfile(all.profile);
    const Plan planned = plan(all.profile);
    all.json = reportJson(planned);
    const Profile sample = profileFrom(contentsOf(sourceFolder() / "sample-profiles/club-600.bike.json"));
    const Plan ridden = plan(sample);
    all.csv = reportCsv(planned) + pullCsv(ridden) + runCsv(ridden) + chainRunCsv(ridden) +
              ladderCsv(Ladder(ladderInput(sample)).rows({15, 16, 42, 44}));
    for (const double x : {0.0, 1.5, -1234567.25, 1e-7, 1e22}) all.numbers += numberText(x) + ' ';
    return all;
  }
  static std::string profileText() { return everyKeyProfile().dump(2); }

  std::filesystem::path folder_;
  Results plain_;
};

// One test, because building the locale takes a second or two.
TEST_F(CommaLocale, ChangesNothing) {
  char text[32];
  std::snprintf(text, sizeof text, "%.1f", 1.5);
  ASSERT_STREQ(text, "1,5");
  std::ostringstream stream;
  stream << 1234.5;
  ASSERT_EQ(stream.str(), "1.234,5");

  const Results comma = results();
  EXPECT_EQ(comma.profile, plain_.profile);
  EXPECT_EQ(comma.written, plain_.written);
  EXPECT_EQ(comma.json, plain_.json);
  EXPECT_EQ(comma.csv, plain_.csv);
  EXPECT_EQ(comma.numbers, plain_.numbers);

  EXPECT_EQ(numberText(1234.5), "1234.5");
  EXPECT_EQ(numberFromText("1234.5"), 1234.5);
  EXPECT_FALSE(numberFromText("1234,5"));
  EXPECT_DOUBLE_EQ(tyre("3.50-18").widthM(), tyre("3,50-18").widthM());
  EXPECT_EQ(GearRatios::make({20.5}).problem().given, "20.5");
}

}  // namespace
}  // namespace layshaft::test
