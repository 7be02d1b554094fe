// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/document/samples.h"

#include <QTemporaryDir>
#include <cmath>
#include <filesystem>

#include "core/bike/words.h"
#include "tests/ui/support.h"
#include "ui/words/summary.h"

namespace layshaft::test {
namespace {

std::vector<std::string> sampleNames() {
  std::vector<std::string> names;
  for (const auto& entry : std::filesystem::directory_iterator(sourceFolder() / "sample-profiles"))
    if (const std::string name = entry.path().filename().string(); name.ends_with(".bike.json"))
      names.push_back(name.substr(0, name.size() - 10));
  std::sort(names.begin(), names.end());
  return names;
}

class SampleProfile : public testing::TestWithParam<std::string> {
 protected:
  const Profile profile_ = sampleBike(GetParam());
};

TEST_P(SampleProfile, LoadsPlansSavesAndReloadsEqual) {
  const Plan planned = plan(profile_);
  EXPECT_EQ(planned.stock.gearing.gears.size(), profile_.stock.gearRatios.count());
  for (const GearFigures& gear : planned.proposed.gearing.gears) EXPECT_GT(gear.speedAtRevLimitMps, 0);

  QTemporaryDir folder;
  ui::Document document(profile_);
  ASSERT_EQ(document.save(folder.filePath("copy.bike.json")), std::nullopt);
  const auto reloaded = loadProfile(folder.filePath("copy.bike.json").toStdString());
  ASSERT_TRUE(reloaded);
  EXPECT_TRUE(same(*reloaded, profile_));
}

TEST_P(SampleProfile, ProposesAChangeThatTheReadoutTellsOf) {
  const auto words = ui::summary(plan(profile_), ui::UnitsShown());
  EXPECT_TRUE(words.headline.contains("horter") || words.headline.contains("aller"))
      << words.headline.toStdString();
  EXPECT_FALSE(words.detail.isEmpty());
}

TEST_P(SampleProfile, HasAStockChainThatFitsAndAgreesWithTheCentreDistance) {
  const auto run = plan(profile_).stock.chainRun;
  ASSERT_TRUE(run);
  EXPECT_EQ(run->fits, true);
  EXPECT_EQ(run->measuredCentreOffLinks, std::nullopt);
}

TEST_P(SampleProfile, GivesRollingResistanceByOneMeansOnly) {
  if (profile_.bike.chassis->rollingResistanceForm != RollingResistanceForm::SpeedDependent) return;
  EXPECT_FALSE(profile_.bike.chassis->rollingResistance) << "without effect";
  for (const auto& [surface, values] : profile_.ride->surfaces)
    EXPECT_FALSE(values.rollingResistance) << "overrules the form on " << wordFor(surface, kSurfaceWords);
}

/// Whether two gears of one gearbox may have this ratio, to the three digits that ratios are printed with.
bool isOfTwoGears(double ratio) {
  // All pairs share one centre distance, so their teeth add up to much the same; common practice.
  constexpr int kFewestTogether = 40, kMostTogether = 62, kFewest = 11;
  for (int together = kFewestTogether; together <= kMostTogether; ++together)
    for (int driving = kFewest; driving <= together - kFewest; ++driving)
      if (std::abs(static_cast<double>(together - driving) / driving - ratio) <= 0.0005 + 1e-9) return true;
  return false;
}

TEST_P(SampleProfile, HasGearsWithWholeTeeth) {
  const Plan planned = plan(profile_);
  std::vector<layshaft::Setup> setups{planned.stock.setup, planned.proposed.setup};
  for (const SetupPlan& pin : planned.pins) setups.push_back(pin.setup);
  for (const layshaft::Setup& setup : setups)
    for (const double ratio : setup.gearRatios.values()) EXPECT_TRUE(isOfTwoGears(ratio)) << ratio;
}

TEST_P(SampleProfile, IsBuiltIntoTheProgram) {
  for (const auto& [name, profile] : ui::samples())
    if (profile == profile_) {
      EXPECT_EQ(name.toStdString(), profile_.name);
      return;
    }
  FAIL() << "not among the samples of the Help menu";
}

INSTANTIATE_TEST_SUITE_P(Files, SampleProfile, testing::ValuesIn(sampleNames()), [](const auto& name) {
  return QString::fromStdString(name.param).replace('-', '_').toStdString();
});

TEST(Samples, TheTrackBikeComesFirst) {
  ASSERT_FALSE(ui::samples().empty());
  EXPECT_TRUE(same(ui::samples().front().second, sampleBike("club-600")));
  EXPECT_EQ(ui::samples().size(), sampleNames().size());
}

}  // namespace
}  // namespace layshaft::test
