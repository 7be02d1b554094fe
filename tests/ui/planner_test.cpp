// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/document/planner.h"

#include <QSignalSpy>

#include "tests/ui/support.h"
#include "ui/document/setup_edits.h"

namespace layshaft::test {
namespace {

using ui::Document;
using ui::Planner;
using ui::SetupEdits;
using ui::Side;

class PlannerTest : public testing::Test {
 protected:
  void propose(int rearTeeth) { SetupEdits(document_, Side::Proposed).setRearTeeth(rearTeeth); }
  int plannedRearTeeth() const { return planner_.current().proposed.setup.rearTeeth.count(); }

  Document document_{bike()};
  Planner planner_{document_};
  QSignalSpy planned_{&planner_, &Planner::planned};
};

TEST_F(PlannerTest, HasAPlanFromTheStart) {
  EXPECT_EQ(plannedRearTeeth(), 43);
  EXPECT_EQ(planned_.count(), 0);
}

TEST_F(PlannerTest, PlansTheFirstChangeAtOnce) {
  propose(45);
  EXPECT_EQ(planned_.count(), 1);
  EXPECT_EQ(plannedRearTeeth(), 45);
}

TEST_F(PlannerTest, ABurstWithinOneFrameGivesTwoPlansAndTheLastIsRight) {
  for (int i = 0; i < 300; ++i) propose(40 + i % 20);
  EXPECT_EQ(planned_.count(), 1) << "nothing but the first before the frame has passed";
  EXPECT_TRUE(soon([&] { return planned_.count() > 1; }));
  QTest::qWait(50);
  EXPECT_EQ(planned_.count(), 2);
  EXPECT_EQ(plannedRearTeeth(), 40 + 299 % 20);
}

TEST_F(PlannerTest, KeepsPlanningWhileChangesKeepComing) {
  // A change every few milliseconds, as from a held key: a timer restarted by each would never fire.
  for (int i = 0; i < 40; ++i) {
    propose(40 + i % 20);
    QTest::qWait(4);
  }
  EXPECT_GE(planned_.count(), 5);
  EXPECT_LT(planned_.count(), 40);
}

TEST_F(PlannerTest, PlansNothingWithoutAChange) {
  propose(45);
  QTest::qWait(60);
  EXPECT_EQ(planned_.count(), 1);
  propose(45);
  QTest::qWait(60);
  EXPECT_EQ(planned_.count(), 1);
}

TEST_F(PlannerTest, WhatNoPlanDependsOnCostsNone) {
  const QSignalSpy settled(&planner_, &Planner::settled);
  const auto edit = [this](const char* field, const std::function<void(Profile&)>& change) {
    ASSERT_EQ(document_.edit({.field = field, .title = field, .shown = {}}, change), std::nullopt);
    QTest::qWait(40);
  };
  const SharedPlan before = planner_.shared();
  edit("notes", [](Profile& p) { p.notes = "worth keeping"; });
  edit("aims", [](Profile& p) { p.aims.push_back({.want = Aim::Want::LeastDriveTime}); });
  edit("unknown", [](Profile& p) { p.extras.keep("mine", "1"); });
  EXPECT_EQ(planned_.count(), 0);
  EXPECT_EQ(planner_.shared(), before);
  EXPECT_EQ(settled.count(), 3) << "but what shows aims and notes hears of it";
  edit("name", [](Profile& p) { p.name = "Another name"; });
  EXPECT_EQ(planner_.current().bikeName, "Another name");
  EXPECT_EQ(planner_.current().stock.model, before->stock.model) << "a name costs no study";
}

TEST_F(PlannerTest, AStepOfTheProposalTakesStockOver) {
  document_.load(sampleBike("club-600"), QString());
  QTest::qWait(40);
  const SharedPlan before = planner_.shared();
  ASSERT_TRUE(before->stock.model);
  propose(47);
  QTest::qWait(40);
  EXPECT_EQ(planner_.current().stock.model, before->stock.model);
  EXPECT_NE(planner_.current().proposed.model, before->proposed.model);
  ASSERT_EQ(before->pins.size(), planner_.current().pins.size());
  for (std::size_t i = 0; i < before->pins.size(); ++i)
    EXPECT_EQ(planner_.current().pins[i].model, before->pins[i].model);
}

TEST_F(PlannerTest, FollowsUndoAndLoading) {
  propose(45);
  document_.undoStack().undo();
  EXPECT_TRUE(soon([&] { return plannedRearTeeth() == 43; }));
  QTest::qWait(30);
  document_.load(bike({{"/stock/rear_teeth", 50}}), "x");
  EXPECT_EQ(plannedRearTeeth(), 50);
}

}  // namespace
}  // namespace layshaft::test
