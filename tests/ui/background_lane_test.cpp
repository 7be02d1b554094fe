// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/document/background_lane.h"

#include <sys/resource.h>

#include <QSignalSpy>
#include <QThread>
#include <atomic>
#include <memory>
#include <stdexcept>

#include "tests/ui/support.h"
#include "ui/document/ladder_study.h"

namespace layshaft::test {
namespace {

using ui::BackgroundLane;
using ui::BackgroundWork;

class LaneTest : public testing::Test {
 protected:
  /// A part that brings one number.
  BackgroundWork::Part bring(int number) {
    return [this, number](const BackgroundWork::Stopped&) -> BackgroundWork::Delivery {
      return [this, number] { brought_.push_back(number); };
    };
  }
  /// A part that goes on until nobody wants it any more.
  BackgroundWork::Part endless() {
    return [this](const BackgroundWork::Stopped& stopped) -> BackgroundWork::Delivery {
      ++begun_;
      while (!stopped()) QThread::msleep(1);
      ++ended_;
      return [] { ADD_FAILURE() << "a result that nobody wants"; };
    };
  }
  QStringList heard() const { return heard_; }

  std::vector<int> brought_;
  QStringList heard_;
  std::atomic<int> begun_ = 0, ended_ = 0;
  QObject listener_;
  BackgroundLane lane_;
  BackgroundWork work_{lane_};

  void SetUp() override {
    QObject::connect(&work_, &BackgroundWork::finished, &listener_, [this] { heard_ << "finished"; });
    QObject::connect(&work_, &BackgroundWork::cancelled, &listener_, [this] { heard_ << "cancelled"; });
    QObject::connect(&work_, &BackgroundWork::failed, &listener_,
                     [this](const QString& why) { heard_ << "failed: " + why; });
  }
};

TEST_F(LaneTest, WhatIsGivenUpStopsAndNothingIsSaidOfIt) {
  work_.start({endless(), bring(1)});
  ASSERT_TRUE(soon([&] { return begun_ == 1; }));
  work_.giveUp();
  EXPECT_FALSE(work_.running());
  EXPECT_TRUE(soon([&] { return ended_ == 1; }));
  QTest::qWait(20);
  EXPECT_TRUE(heard().isEmpty());
  EXPECT_TRUE(brought_.empty());
}

TEST_F(LaneTest, WorkIsNicerThanTheWindow) {
  const int window = ::getpriority(PRIO_PROCESS, 0);
  std::atomic<int> work = window;
  work_.start({[&work](const BackgroundWork::Stopped&) -> BackgroundWork::Delivery {
    work = ::getpriority(PRIO_PROCESS, 0);
    return {};
  }});
  ASSERT_TRUE(soon([&] { return !heard().isEmpty(); }));
  EXPECT_GT(work, window) << "a thread of the lane gives way";
  EXPECT_EQ(::getpriority(PRIO_PROCESS, 0), window) << "the window does not";
}

TEST_F(LaneTest, BringsEveryPartAndThenFinishes) {
  QSignalSpy progressed(&work_, &BackgroundWork::progressed);
  work_.start({bring(1), bring(2), bring(3)});
  EXPECT_TRUE(work_.running());
  ASSERT_TRUE(soon([&] { return !heard().isEmpty(); }));
  EXPECT_THAT(brought_, testing::UnorderedElementsAre(1, 2, 3));
  EXPECT_EQ(progressed.count(), 3);
  EXPECT_EQ(progressed.last()[0].toInt(), 3);
  EXPECT_EQ(heard(), QStringList{"finished"});
  EXPECT_FALSE(work_.running());
}

TEST_F(LaneTest, AShortRequestDoesNotWaitForAllOfALongOne) {
  constexpr int kParts = 400;
  const auto done = std::make_shared<std::atomic<int>>(0);  // a part may still be at it when the test is over
  work_.start(std::vector<BackgroundWork::Part>(
      kParts, [done](const BackgroundWork::Stopped&) -> BackgroundWork::Delivery {
        QThread::msleep(5);
        ++*done;
        return [] {};
      }));
  BackgroundWork other(lane_);
  int before = kParts;
  QObject::connect(&other, &BackgroundWork::finished, &listener_, [&] { before = *done; });
  other.start({bring(1), bring(2)});
  EXPECT_TRUE(soon([&] { return !other.running(); }));
  EXPECT_EQ(brought_, (std::vector<int>{1, 2}));
  EXPECT_LT(before, kParts / 2);
  work_.cancel();
}

TEST_F(LaneTest, NothingToDoIsDoneAtOnce) {
  work_.start({});
  EXPECT_EQ(heard(), QStringList{"finished"});
}

TEST_F(LaneTest, TheLatestRequestWinsAndOldResultsAreDropped) {
  work_.start({endless()});
  ASSERT_TRUE(soon([&] { return begun_ == 1; }));
  work_.start({bring(2)});
  ASSERT_TRUE(soon([&] { return !heard().isEmpty() && ended_ == 1; }));
  QTest::qWait(20);
  EXPECT_EQ(brought_, std::vector{2});
  EXPECT_EQ(heard(), QStringList{"finished"});
}

TEST_F(LaneTest, ResultsOnTheirWayWhenANewRequestComesAreDropped) {
  work_.start({bring(1)});
  QThread::msleep(50);  // it is done and waits to be delivered
  work_.start({bring(2)});
  ASSERT_TRUE(soon([&] { return !heard().isEmpty(); }));
  QTest::qWait(20);
  EXPECT_EQ(brought_, std::vector{2});
  EXPECT_EQ(heard().size(), 1);
}

TEST_F(LaneTest, CancellingStopsAndSaysSoOnce) {
  work_.cancel();
  EXPECT_TRUE(heard().isEmpty()) << "nothing was under way";
  work_.start({endless()});
  ASSERT_TRUE(soon([&] { return begun_ == 1; }));
  work_.cancel();
  work_.cancel();
  EXPECT_TRUE(soon([&] { return ended_ == 1; }));
  QTest::qWait(20);
  EXPECT_EQ(heard(), QStringList{"cancelled"});
  EXPECT_TRUE(brought_.empty());
}

TEST_F(LaneTest, WhoCancelsWhileResultsArriveHearsNothingMore) {
  QSignalSpy progressed(&work_, &BackgroundWork::progressed);
  work_.start({[this](const BackgroundWork::Stopped&) -> BackgroundWork::Delivery {
    return [this] { work_.cancel(); };
  }});
  ASSERT_TRUE(soon([&] { return !heard().isEmpty(); }));
  QTest::qWait(20);
  EXPECT_EQ(heard(), QStringList{"cancelled"}) << "and no end of it besides";
  EXPECT_EQ(progressed.count(), 0);
}

TEST_F(LaneTest, WhoStartsAnewWhileProgressIsToldIsNotToldOfTheOldEnd) {
  bool again = false;
  QObject::connect(&work_, &BackgroundWork::progressed, &listener_, [&] {
    if (!std::exchange(again, true)) work_.start({bring(2), bring(3)});
  });
  work_.start({bring(1)});
  ASSERT_TRUE(soon([&] { return !heard().isEmpty(); }));
  QTest::qWait(20);
  EXPECT_EQ(heard(), QStringList{"finished"});
  EXPECT_EQ(brought_.size(), 3u);
}

TEST_F(LaneTest, WhatIsThrownIsSaidAndEndsTheRequest) {
  work_.start({[](const BackgroundWork::Stopped&) -> BackgroundWork::Delivery {
    throw std::runtime_error("no root in here");
  }});
  ASSERT_TRUE(soon([&] { return !heard().isEmpty(); }));
  EXPECT_TRUE(heard()[0].startsWith("failed: ") && heard()[0].contains("no root in here"))
      << heard()[0].toStdString();
  EXPECT_FALSE(work_.running());
  work_.start({bring(1)});
  EXPECT_TRUE(soon([&] { return brought_.size() == 1; })) << "and the lane goes on";
}

TEST_F(LaneTest, WorkMayGoWhileItIsUnderWay) {
  {
    BackgroundWork brief(lane_);
    brief.start({endless()});
    ASSERT_TRUE(soon([&] { return begun_ == 1; }));
  }
  EXPECT_TRUE(soon([&] { return ended_ == 1; }));
  EXPECT_TRUE(brought_.empty());
}

TEST(LadderInTheBackground, MayBeQuitWhileTheLargestFills) {
  int rows = 0;
  {
    BackgroundLane lane;
    ui::LadderStudy study(lane);
    QObject::connect(&study, &ui::LadderStudy::rowsReady, &study,
                     [&](const std::vector<LadderRow>& some) { rows += static_cast<int>(some.size()); });
    study.start(ladderInput(sampleBike("club-600")), {6, 48, 12, 120});
    QThread::msleep(5);
  }
  QTest::qWait(20);
  EXPECT_EQ(rows, 0) << "nothing comes to who has gone";
}

}  // namespace
}  // namespace layshaft::test
