// SPDX-License-Identifier: GPL-3.0-or-later
//
// English has a catalogue for its singulars: one link, two links.
#include <QFile>
#include <QProcess>
#include <QTemporaryDir>

#include "tests/ui/support.h"
#include "ui/words/aim_words.h"
#include "ui/words/chain_labels.h"
#include "ui/words/chain_words.h"
#include "ui/words/summary.h"

namespace layshaft::test {
namespace {

QString catalogueText(const QString& file) {
  return QString::fromStdString(contentsOf(file.toStdString()));
}

TEST(EnglishPlurals, TheCatalogueKnowsEveryTextWithANumberOfThings) {
  const QString source = QStringLiteral(LAYSHAFT_SOURCE_DIR);
  const QString catalogue = source + "/resources/translations/layshaft_en.ts";
  QTemporaryDir folder;
  const QString fresh = folder.filePath("layshaft_en.ts");
  ASSERT_TRUE(QFile::copy(catalogue, fresh));
  QProcess collecting;
  collecting.start(QStringLiteral(LAYSHAFT_LUPDATE), {"-I", source, source + "/ui", source + "/app",
                                                      "-pluralonly", "-locations", "none", "-ts", fresh});
  ASSERT_TRUE(collecting.waitForFinished(120000));
  ASSERT_EQ(collecting.exitCode(), 0);
  const QString text = catalogueText(fresh);
  EXPECT_FALSE(text.contains("unfinished")) << "a text lacks its English singular";
  EXPECT_FALSE(text.contains("vanished") || text.contains("obsolete")) << "a text is said no longer";
  EXPECT_EQ(text.count("<message"), catalogueText(catalogue).count("<message"));
}

TEST(EnglishPlurals, OneLinkAndTwoLinks) {
  const ui::UnitsShown metric;
  Plan shown = plan(sampleBike("club-600"));
  ChainRunFigures& run = *shown.proposed.chainRun;
  run.slotKnown = true;
  run.fits = false;
  run.misfits = {Misfit::AxleTooFarBack};
  const auto words = [&](int taken, std::optional<SpareCut> spare) {
    run.lengthsThatFit = {
        {112, 0.0, spare ? std::optional<int>() : std::optional<int>(taken), std::move(spare)}};
    return ui::fitWords(shown, shown.proposed, metric, ui::FitDetail::Full);
  };
  EXPECT_TRUE(words(1, {}).contains("Would fit: 112 (this chain, 1 link taken out; axle stays where it is)."))
      << words(1, {}).toStdString();
  EXPECT_TRUE(words(2, {}).contains("(this chain, 2 links taken out;")) << words(2, {}).toStdString();
  EXPECT_TRUE(
      words(0, SpareCut{113, 1}).contains("(the 113-link chain in the spares box, 1 link taken out;"));
  EXPECT_TRUE(
      words(0, SpareCut{116, 4}).contains("(the 116-link chain in the spares box, 4 links taken out;"));
  run.links = 1;
  EXPECT_TRUE(words(2, {}).startsWith("Does not fit with 1 link: ")) << words(2, {}).toStdString();
  EXPECT_EQ(ui::loopLabel(shown, metric).front(), "520, 1 link (stock 114)");
  run.links = 112;
  EXPECT_TRUE(words(2, {}).startsWith("Does not fit with 112 links: "));
  EXPECT_EQ(ui::otherLengthsWords(run), "with 112 links");
  run.lengthsThatFit = {{112, 0.0, 2, {}}, {110, 0.001, 4, {}}};
  EXPECT_EQ(ui::otherLengthsWords(run), "with 110 or 112 links");
}

TEST(EnglishPlurals, OneToothAndTwoTeeth) {
  Profile profile = sampleBike("club-600");
  const auto headline = [&](int rearTeeth) {
    profile.proposed = {.rearTeeth = rear(rearTeeth)};
    return ui::summary(plan(profile), ui::UnitsShown()).headline;
  };
  EXPECT_TRUE(headline(44).endsWith("about as much as one more tooth at the rear."));
  EXPECT_TRUE(headline(45).endsWith("about as much as 2 more teeth at the rear."));
  EXPECT_TRUE(headline(42).endsWith("about as much as one tooth fewer at the rear."));
  EXPECT_TRUE(headline(41).endsWith("about as much as 2 teeth fewer at the rear."));
}

TEST(EnglishPlurals, OneMorePairAndSeveral) {
  Profile profile = sampleBike("club-600");
  profile.aims = {{.want = Aim::Want::TopSpeedAtLeast, .speedKmh = 100}};
  auto rows = Ladder(ladderInput(profile)).rows({15, 16, 42, 45});
  const auto answer = [&](std::size_t unfit) {
    for (std::size_t i = 0; i < rows.size(); ++i) {
      rows[i].chainRun->fits = false;
      rows[i].chainRun->misfits = {Misfit::RearTooLarge};
      for (AimOutcome& aim : rows[i].aims) aim.reached = i < unfit;
    }
    return ui::aimAnswerWords(rows, profile.aims, ui::UnitsShown());
  };
  EXPECT_FALSE(answer(3).contains("more")) << answer(3).toStdString();
  EXPECT_TRUE(answer(4).endsWith("One more is left out.")) << answer(4).toStdString();
  EXPECT_TRUE(answer(5).endsWith("2 more are left out.")) << answer(5).toStdString();
}

}  // namespace
}  // namespace layshaft::test
