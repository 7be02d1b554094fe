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
