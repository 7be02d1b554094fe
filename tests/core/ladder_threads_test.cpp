// SPDX-License-Identifier: GPL-3.0-or-later
#include <gtest/gtest.h>

#include <latch>
#include <thread>

#include "core/study/ladder.h"
#include "tests/core/support.h"

namespace layshaft::test {
namespace {

constexpr std::size_t kThreads = 4;
constexpr LadderRange kAskedAtOnce{15, 16, 42, 45};

LadderInput ladderOf(const std::string& sample) {
  return ladderInput(profileFrom(contentsOf(sourceFolder() / "sample-profiles" / (sample + ".bike.json"))));
}

/// What every thread gets from `ask`, which is given the thread's number; all of them begin together.
template <class Ask>
std::vector<std::vector<LadderRow>> onThreads(const Ask& ask) {
  std::vector<std::vector<LadderRow>> answers(kThreads);
  std::latch begin(kThreads);
  std::vector<std::thread> threads;
  for (std::size_t i = 0; i < kThreads; ++i)
    threads.emplace_back([&, i] {
      begin.arrive_and_wait();
      answers[i] = ask(i);
    });
  for (std::thread& thread : threads) thread.join();
  return answers;
}

/// To the last bit: what a thread works out does not depend on the others.
void expectSame(const std::vector<LadderRow>& rows, const std::vector<LadderRow>& wanted) {
  ASSERT_EQ(rows.size(), wanted.size());
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const LadderRow &a = rows[i], &b = wanted[i];
    EXPECT_EQ(std::pair(a.frontTeeth, a.rearTeeth), std::pair(b.frontTeeth, b.rearTeeth));
    EXPECT_EQ(a.finalRatio, b.finalRatio);
    EXPECT_EQ(a.speedAtLimitMps, b.speedAtLimitMps);
    EXPECT_EQ(a.topSpeedMps, b.topSpeedMps);
    EXPECT_EQ(a.zeroTo100KmhS, b.zeroTo100KmhS);
    EXPECT_EQ(a.quarterMileS, b.quarterMileS);
    EXPECT_EQ(a.driveS(), b.driveS());
    ASSERT_EQ(a.chainRun.has_value(), b.chainRun.has_value());
    if (a.chainRun) {
      EXPECT_EQ(a.chainRun->axleShiftM, b.chainRun->axleShiftM);
    }
    ASSERT_EQ(a.aims.size(), b.aims.size());
    for (std::size_t aim = 0; aim < a.aims.size(); ++aim) {
      EXPECT_EQ(a.aims[aim].reached, b.aims[aim].reached);
      EXPECT_EQ(a.aims[aim].margin, b.aims[aim].margin);
    }
  }
}

TEST(LadderOnThreads, OneLadderAnswersSeveralThreadsAtOnce) {
  const Ladder shared(ladderOf("club-600"));
  const std::vector<LadderRow> wanted = Ladder(ladderOf("club-600")).rows(kAskedAtOnce);
  ASSERT_TRUE(wanted.front().quarterMileS) << "a ladder that has to work";
  for (const auto& rows : onThreads([&](std::size_t) { return shared.rows(kAskedAtOnce); }))
    expectSame(rows, wanted);
}

TEST(LadderOnThreads, LaddersOfSeveralBikesKeepOutOfEachOthersWay) {
  const std::vector<LadderInput> inputs{ladderOf("club-600"), ladderOf("adventure-twin"),
                                        ladderOf("motocross-450")};
  std::vector<std::vector<LadderRow>> wanted;
  for (const LadderInput& input : inputs) wanted.push_back(Ladder(input).rows(kAskedAtOnce));
  const auto answers = onThreads(
      [&](std::size_t thread) { return Ladder(inputs[thread % inputs.size()]).rows(kAskedAtOnce); });
  for (std::size_t i = 0; i < answers.size(); ++i) expectSame(answers[i], wanted[i % wanted.size()]);
}

}  // namespace
}  // namespace layshaft::test
