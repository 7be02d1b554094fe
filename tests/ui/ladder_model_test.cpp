// SPDX-License-Identifier: GPL-3.0-or-later
//
// The ladder's columns beside the rows of the core, and what becomes of rows that are out of date.
#include "ui/pages/ladder_model.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "tests/ui/support.h"
#include "ui/document/ladder_study.h"
#include "ui/words/aim_words.h"
#include "ui/words/gear_words.h"
#include "ui/words/numbers.h"

namespace layshaft::test {
namespace {

using ui::LadderModel;

constexpr LadderRange kRange{14, 17, 40, 46};
constexpr double kKmh = 3.6;
constexpr double kLastOfAll = std::numeric_limits<double>::max();

/// The track bike with two aims, and its rows in a model as they are after a whole ladder.
class LadderModelTest : public testing::Test {
 protected:
  LadderModelTest() {
    profile_.aims = {{.want = Aim::Want::RevAtSpeed, .speedKmh = 205, .rpm = 13400},
                     {.want = Aim::Want::TopSpeedAtLeast, .speedKmh = 230}};
    rows_ = Ladder(ladderInput(profile_)).rows(kRange);
    model_.show(ui::UnitsShown(), false);
    model_.mark(16, 43, 15, 43);
    model_.add(rows_);
    model_.settle(profile_.aims);
  }

  QString cell(std::size_t row, int column, int role = Qt::DisplayRole) const {
    return model_.index(static_cast<int>(row), column).data(role).toString();
  }
  QString title(int column, int role = Qt::DisplayRole) const {
    return model_.headerData(column, Qt::Horizontal, role).toString();
  }
  std::size_t placeOf(int frontTeeth, int rearTeeth) const {
    for (std::size_t i = 0; i < rows_.size(); ++i)
      if (rows_[i].frontTeeth == frontTeeth && rows_[i].rearTeeth == rearTeeth) return i;
    throw std::runtime_error("no such pair");
  }
  /// A figure as the tests' locale writes it, a minus as a true one.
  static QString written(double x, int decimals) { return QLocale().toString(x, 'f', decimals); }
  static QString withSign(double x, int decimals) {
    const QString size = written(std::abs(x), decimals);
    return size == written(0, decimals) ? "±0" : (x < 0 ? "−" : "+") + size;
  }

  /// On a track, which the example is without.
  static Profile lapping() {
    Profile profile = workedExample();
    Track track;
    track.name = "Oval";
    track.closed = true;
    track.segments = {{.lengthM = 420.0},
                      {.radiusM = 45.0, .angleDeg = 180.0},
                      {.lengthM = 420.0},
                      {.radiusM = 45.0, .angleDeg = 180.0}};
    profile.tracks = {track};
    return profile;
  }

  Profile profile_ = lapping();
  std::vector<LadderRow> rows_;
  LadderModel model_;
};

TEST_F(LadderModelTest, TitlesNameTheUnitsShown) {
  const QStringList metric{"Pair",          "Final Ratio",     "Change, %",
                           "Step",          "= Rear Teeth",    "Gears at the Limit, km/h",
                           "Cruise, rpm",   "Top Speed, km/h", "Straight, s",
                           "End Gear",      "End rpm",         "End Speed, km/h",
                           "Lap, s",        "0–100 km/h, s",   "Fits, mm",
                           "Shared Factor", "In the Box",      "Aims, Same Ratio"};
  ASSERT_EQ(metric.size(), LadderModel::ColumnCount);
  for (int c = 0; c < LadderModel::ColumnCount; ++c) EXPECT_EQ(title(c), metric[c]);
  model_.show(ui::UnitsShown(ui::UnitSystem::Imperial), false);
  EXPECT_EQ(title(LadderModel::Gears), "Gears at the Limit, mph");
  EXPECT_EQ(title(LadderModel::TopSpeed), "Top Speed, mph");
  EXPECT_EQ(title(LadderModel::EndSpeed), "End Speed, mph");
  EXPECT_EQ(title(LadderModel::Fits), "Fits, in");
  model_.settle({});
  EXPECT_EQ(title(LadderModel::Aims), "Same Ratio");
}

TEST_F(LadderModelTest, TitlesThatNeedOneExplainThemselves) {
  const std::map<int, QString> begins{{LadderModel::Change, "Positive is shorter"},
                                      {LadderModel::Gears, "Road speed at the rev limit in every gear"},
                                      {LadderModel::EndGear, "At the end of the straight"},
                                      {LadderModel::EndRpm, "At the end of the straight"},
                                      {LadderModel::EndSpeed, "At the end of the straight"},
                                      {LadderModel::Lap, "Round the track that is ridden"},
                                      {LadderModel::RearTeeth, "Rear teeth that would change"},
                                      {LadderModel::Meeting, "Shared factor of teeth and links"},
                                      {LadderModel::Fits, "Whether the axle stays in its slot"},
                                      {LadderModel::Aims, "Sort by this to rank the pairs by the aims"}};
  for (int c = 0; c < LadderModel::ColumnCount; ++c) {
    const auto known = begins.find(c);
    if (known == begins.end())
      EXPECT_EQ(title(c, Qt::ToolTipRole), "") << c;
    else
      EXPECT_TRUE(title(c, Qt::ToolTipRole).startsWith(known->second)) << c;
  }
}

TEST_F(LadderModelTest, CellsSayTheFiguresOfTheCore) {
  for (std::size_t i = 0; i < rows_.size(); ++i) {
    const LadderRow& row = rows_[i];
    const QString pair = QStringLiteral("%1/%2").arg(row.frontTeeth).arg(row.rearTeeth);
    const bool stock = pair == "16/43", proposed = pair == "15/43";
    EXPECT_EQ(cell(i, LadderModel::Pair), pair + (proposed ? " proposed" : stock ? " stock" : ""));
    EXPECT_EQ(cell(i, LadderModel::FinalRatio),
              written(static_cast<double>(row.rearTeeth) / row.frontTeeth, 3));
    EXPECT_EQ(cell(i, LadderModel::Change), withSign(row.change.gearingPercent, 1));
    EXPECT_EQ(cell(i, LadderModel::RearTeeth), withSign(row.change.rearTeethEquivalent, 1));
    QStringList speeds;
    for (const double mps : row.speedAtLimitMps) speeds << written(mps * kKmh, 0);
    EXPECT_EQ(cell(i, LadderModel::Gears), speeds.join("  "));
    EXPECT_EQ(cell(i, LadderModel::Cruise), written(*row.cruiseRpm, 0));
    EXPECT_EQ(cell(i, LadderModel::TopSpeed), written(*row.topSpeedMps * kKmh, 0));
    EXPECT_EQ(cell(i, LadderModel::Drive), written(*row.driveS(), 2));
    EXPECT_EQ(cell(i, LadderModel::EndGear), ui::gearOrdinal(row.drive->endGear));
    EXPECT_EQ(cell(i, LadderModel::EndRpm), written(row.drive->endRpm, 0));
    EXPECT_EQ(cell(i, LadderModel::EndSpeed), written(row.drive->endSpeedMps * kKmh, 0));
    EXPECT_EQ(cell(i, LadderModel::Lap), row.lapS ? written(*row.lapS, 2) : "–");
    EXPECT_EQ(cell(i, LadderModel::StandingStart), written(*row.zeroTo100KmhS, 2));
    EXPECT_EQ(
        cell(i, LadderModel::Meeting),
        QStringLiteral("%1 / %2").arg(row.chainRun->commonFactorFront).arg(row.chainRun->commonFactorRear));
    EXPECT_EQ(cell(i, LadderModel::Spares), row.frontInSparesBox && row.rearInSparesBox ? "both"
                                            : row.frontInSparesBox                      ? "front"
                                            : row.rearInSparesBox                       ? "rear"
                                                                                        : "");
  }
}

TEST_F(LadderModelTest, TheStepIsNamedBySizeAndDirection) {
  for (std::size_t i = 0; i < rows_.size(); ++i) {
    const GearingChange& change = rows_[i].change;
    const QString way = change.direction == Direction::Shorter ? "shorter" : "taller";
    const QString size = change.size == StepSize::Large      ? "large, "
                         : change.size == StepSize::Moderate ? "moderate, "
                                                             : "small, ";
    EXPECT_EQ(cell(i, LadderModel::Step), change.direction == Direction::Same ? "same" : size + way);
  }
}

TEST_F(LadderModelTest, WhetherItFitsAndWhyNot) {
  int fit = 0, unfit = 0;
  for (std::size_t i = 0; i < rows_.size(); ++i) {
    const ChainRunFigures& run = *rows_[i].chainRun;
    const QString text = cell(i, LadderModel::Fits), tip = cell(i, LadderModel::Fits, Qt::ToolTipRole);
    if (*run.fits) {
      ++fit;
      EXPECT_EQ(text, "fits, axle " + withSign(*run.axleShiftM * 1000, 1));
      EXPECT_EQ(tip, text);
    } else {
      ++unfit;
      EXPECT_TRUE(run.lengthsThatFit.empty() ? text == "does not fit" : text.startsWith("fits with "))
          << text.toStdString();
      EXPECT_TRUE(tip.startsWith("the axle would have to move ") &&
                  tip.endsWith(", past the end of its slot"))
          << tip.toStdString();
    }
  }
  EXPECT_GT(fit, 0);
  EXPECT_GT(unfit, 0);
}

TEST_F(LadderModelTest, AChainOfTheSparesBoxThatFitsIsNamedAndFilteredFor) {
  ui::LadderFilter filter(&model_);
  for (LadderRow& row : rows_) {
    row.chainRun->fits = false;
    row.chainRun->lengthsThatFit.clear();
  }
  const std::size_t spare = placeOf(15, 45), cut = placeOf(14, 42);
  rows_[spare].chainRun->lengthsThatFit = {{116, 0.0042, {}, SpareCut{116, 0}}};
  rows_[cut].chainRun->lengthsThatFit = {{112, -0.0042, {}, SpareCut{116, 4}}};
  model_.add(rows_);
  EXPECT_EQ(cell(spare, LadderModel::Fits), "fits with the 116-link spare, axle +4.2");
  EXPECT_EQ(cell(cut, LadderModel::Fits), "fits with the 116-link spare cut to 112, axle −4.2");
  filter.setFit(ui::FitAsked::Own);
  EXPECT_EQ(filter.rowCount(), 1) << "the proposal is always there";
  filter.setFit(ui::FitAsked::OwnOrSpare);
  EXPECT_EQ(filter.rowCount(), 3);
}

TEST_F(LadderModelTest, AnOffsetLinkIsSaidBesideTheFit) {
  rows_[0].chainRun->fits = true;
  rows_[0].chainRun->axleShiftM = 0.0042;
  rows_[0].chainRun->offsetLink = true;
  model_.add({rows_[0]});
  EXPECT_EQ(cell(0, LadderModel::Fits), "odd number of links, axle +4.2");
  rows_[0].chainRun->fits.reset();
  model_.add({rows_[0]});
  EXPECT_EQ(cell(0, LadderModel::Fits), "odd number of links, axle +4.2");
  rows_[0].chainRun->offsetLink = false;
  model_.add({rows_[0]});
  EXPECT_EQ(cell(0, LadderModel::Fits), "axle +4.2");
}

TEST_F(LadderModelTest, AimsAndTwinsStandInOneCellAndInItsTip) {
  for (std::size_t i = 0; i < rows_.size(); ++i) {
    const LadderRow& row = rows_[i];
    const auto reached =
        std::count_if(row.aims.begin(), row.aims.end(), [](const AimOutcome& a) { return a.reached; });
    const QString score = reached < 2           ? QStringLiteral("%1 of 2").arg(reached)
                          : *row.chainRun->fits ? QStringLiteral("all")
                                                : QStringLiteral("all, but does not fit");
    const QString margins = ui::marginWords(profile_.aims[0], row.aims[0], ui::UnitsShown()) + ", " +
                            ui::marginWords(profile_.aims[1], row.aims[1], ui::UnitsShown());
    const QString text = cell(i, LadderModel::Aims);
    EXPECT_TRUE(text.startsWith(score + ": " + margins)) << text.toStdString();
    EXPECT_EQ(cell(i, LadderModel::Aims, Qt::ToolTipRole), text);
    EXPECT_EQ(text.contains("; same ratio as "), model_.isTwin(static_cast<int>(i)));
  }
  // 15/45 and 14/42 are both 3.
  EXPECT_TRUE(cell(placeOf(15, 45), LadderModel::Aims).contains("; same ratio as 14/42; wears best"))
      << cell(placeOf(15, 45), LadderModel::Aims).toStdString();
  EXPECT_TRUE(cell(placeOf(14, 42), LadderModel::Aims).contains("; same ratio as 15/45"));
  EXPECT_FALSE(model_.isTwin(static_cast<int>(placeOf(16, 43))));
}

TEST_F(LadderModelTest, WhatIsNotKnownIsADash) {
  const auto bare = Ladder(ladderInput(bike())).rows({16, 16, 43, 43});
  LadderModel model;
  model.add(bare);
  model.settle({});
  const auto text = [&](int column) { return model.index(0, column).data().toString(); };
  for (const int column : {LadderModel::Cruise, LadderModel::Drive, LadderModel::EndGear, LadderModel::EndRpm,
                           LadderModel::EndSpeed, LadderModel::Lap, LadderModel::StandingStart,
                           LadderModel::Fits, LadderModel::Meeting})
    EXPECT_EQ(text(column), "–") << column;
  EXPECT_EQ(text(LadderModel::Spares), "");
  EXPECT_EQ(text(LadderModel::Aims), "");
  EXPECT_EQ(model.index(0, LadderModel::Fits).data(Qt::ToolTipRole).toString(), "Chain or belt not given.");
}

/// What a column sorts by, taken from the core's row; `rank` is its place by the aims.
double keyOf(const LadderRow& row, int column, std::size_t rank) {
  const auto orLast = [](const std::optional<double>& x) { return x.value_or(kLastOfAll); };
  switch (column) {
    case LadderModel::Pair:
      return row.frontTeeth * 1000.0 + row.rearTeeth;
    case LadderModel::FinalRatio:
      return static_cast<double>(row.rearTeeth) / row.frontTeeth;
    case LadderModel::Change:
      return row.change.gearingPercent;
    case LadderModel::Step:
      return std::abs(row.change.gearingPercent);
    case LadderModel::RearTeeth:
      return row.change.rearTeethEquivalent;
    case LadderModel::Gears:
      return row.speedAtLimitMps.back();
    case LadderModel::Cruise:
      return orLast(row.cruiseRpm);
    case LadderModel::TopSpeed:
      return row.topSpeedMps.value_or(0.0);
    case LadderModel::Drive:
      return orLast(row.driveS());
    case LadderModel::EndGear:
      return row.drive->endGear + row.drive->endRpm / 1e6;
    case LadderModel::EndRpm:
      return row.drive->endRpm;
    case LadderModel::EndSpeed:
      return row.drive->endSpeedMps;
    case LadderModel::Lap:
      return orLast(row.lapS);
    case LadderModel::StandingStart:
      return orLast(row.zeroTo100KmhS);
    case LadderModel::Fits:
      return (row.fits() ? 0.0 : 1e6) + std::abs(*row.chainRun->axleShiftM);
    case LadderModel::Meeting:
      return row.chainRun->commonFactorFront + row.chainRun->commonFactorRear;
    case LadderModel::Spares:
      return -(static_cast<int>(row.frontInSparesBox) + static_cast<int>(row.rearInSparesBox));
    default:
      return static_cast<double>(rank);
  }
}

class LadderSorting : public LadderModelTest, public testing::WithParamInterface<int> {};

TEST_P(LadderSorting, BothWays) {
  const int column = GetParam();
  const auto ranked = rankedByAims(rows_, profile_.aims);
  std::vector<std::size_t> rankOf(rows_.size());
  for (std::size_t place = 0; place < ranked.size(); ++place) rankOf[ranked[place]] = place;
  ui::LadderFilter view(&model_);
  for (const auto order : {Qt::AscendingOrder, Qt::DescendingOrder}) {
    view.sort(column, order);
    ASSERT_EQ(static_cast<std::size_t>(view.rowCount()), rows_.size());
    std::vector<double> keys;
    for (int r = 0; r < view.rowCount(); ++r) {
      const auto source = static_cast<std::size_t>(view.mapToSource(view.index(r, 0)).row());
      keys.push_back(keyOf(rows_[source], column, rankOf[source]));
    }
    if (order == Qt::DescendingOrder) std::reverse(keys.begin(), keys.end());
    EXPECT_TRUE(std::is_sorted(keys.begin(), keys.end()));
    EXPECT_LT(keys.front(), keys.back()) << "a column whose rows are all alike shows nothing";
  }
}

INSTANTIATE_TEST_SUITE_P(Column, LadderSorting,
                         testing::Range(0, static_cast<int>(LadderModel::ColumnCount)));

TEST_F(LadderModelTest, RowsOutsideANewRangeStayGreyUntilTheNewLadderIsWhole) {
  model_.fade();
  const auto fewer = Ladder(ladderInput(profile_)).rows({15, 16, 42, 43});
  model_.add({fewer[0], fewer[1]});
  EXPECT_EQ(model_.rows().size(), rows_.size()) << "nothing goes before all is there";
  int faded = 0;
  for (int r = 0; r < model_.rowCount(); ++r) faded += model_.isFaded(r) ? 1 : 0;
  EXPECT_EQ(static_cast<std::size_t>(faded), rows_.size() - 2);
  model_.add({fewer[2], fewer[3]});
  model_.settle(profile_.aims);
  ASSERT_EQ(model_.rows().size(), fewer.size());
  for (int r = 0; r < model_.rowCount(); ++r) {
    EXPECT_FALSE(model_.isFaded(r));
    const LadderRow& row = model_.row(r);
    EXPECT_TRUE(row.frontTeeth >= 15 && row.frontTeeth <= 16 && row.rearTeeth >= 42 && row.rearTeeth <= 43)
        << row.frontTeeth << '/' << row.rearTeeth;
  }
}

TEST_F(LadderModelTest, ANewRowOfAPairTakesTheOldOnesPlace) {
  Profile other = profile_;
  other.proposed.rearTyre = tyre("190/55ZR17");
  model_.fade();
  const auto fresh = Ladder(ladderInput(other)).rows(kRange);
  model_.add(fresh);
  model_.settle(other.aims);
  ASSERT_EQ(model_.rows().size(), fresh.size());
  for (std::size_t i = 0; i < fresh.size(); ++i) {
    EXPECT_EQ(model_.rows()[i].rearTeeth, rows_[i].rearTeeth) << "in the place where it was";
    EXPECT_GT(model_.rows()[i].speedAtLimitMps.back(), rows_[i].speedAtLimitMps.back());
  }
}

TEST_F(LadderModelTest, RowsOfAnOlderRequestNeverLand) {
  ui::BackgroundLane lane;
  ui::LadderStudy study{lane};
  LadderModel model;
  QObject::connect(&study, &ui::LadderStudy::rowsReady, &model, &LadderModel::add);
  int ended = 0;
  QObject::connect(&study, &ui::LadderStudy::finished, &model, [&] {
    model.settle({});
    ++ended;
  });
  constexpr LadderRange kWide{9, 24, 25, 70};
  for (int fewestRear = 60; fewestRear <= 66; ++fewestRear) {
    model.fade();
    study.start(ladderInput(profile_), kWide);
    QTest::qWait(5);  // some of its rows may come, some are still under way
    model.fade();
    Profile other = profile_;
    other.proposed.rearTyre = tyre("190/55ZR17");
    const LadderRange range{12, 13, fewestRear, fewestRear + 2};
    study.start(ladderInput(other), range);
    const int before = ended;
    ASSERT_TRUE(soon([&] { return ended > before; }));
    QTest::qWait(20);
    ASSERT_EQ(model.rows().size(), range.pairs());
    const Ladder wanted(ladderInput(other));
    for (const LadderRow& row : model.rows())
      EXPECT_EQ(row.speedAtLimitMps, wanted.row(row.frontTeeth, row.rearTeeth).speedAtLimitMps)
          << row.frontTeeth << '/' << row.rearTeeth;
  }
  EXPECT_EQ(ended, 7) << "the older requests never end";
}

TEST_F(LadderModelTest, ATopSpeedThatOnlyTheRevLimitAllowsIsCalledSo) {
  EXPECT_EQ(title(LadderModel::TopSpeed), "Top Speed, km/h");
  EXPECT_TRUE(model_.show(ui::UnitsShown(), true));
  EXPECT_EQ(title(LadderModel::TopSpeed), "Top Speed at the Rev Limit, km/h");
}

TEST_F(LadderModelTest, TheStandingStartIsToTheSpeedOfTheUnits) {
  EXPECT_EQ(cell(0, LadderModel::StandingStart), ui::number(*rows_[0].zeroTo100KmhS, 2));
  model_.show(ui::UnitsShown(ui::UnitSystem::Mixed), false);
  EXPECT_EQ(title(LadderModel::StandingStart), "0–60 mph, s");
  EXPECT_EQ(cell(0, LadderModel::StandingStart), ui::number(*rows_[0].zeroTo60MphS, 2));
}

}  // namespace
}  // namespace layshaft::test
