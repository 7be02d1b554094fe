// SPDX-License-Identifier: GPL-3.0-or-later
//
// Two people on one file, each at a program of their own: whoever comes second learns of it before saving.
#include <QSignalSpy>
#include <QTemporaryDir>

#include "core/profile_file.h"
#include "tests/ui/support.h"
#include "ui/document/file_name.h"
#include "ui/document/session.h"
#include "ui/document/setup_edits.h"

namespace layshaft::test {
namespace {

using ui::Session;
using ui::SetupEdits;
using ui::Side;

class TwoSessions : public testing::Test, FreshSettings {
 protected:
  TwoSessions() : file_(folder_.filePath("shared.bike.json")), one_(bike()), other_(bike()) {
    if (one_.document().save(file_)) throw std::runtime_error("cannot save");
    load(other_);
    for (Session* session : {&one_, &other_}) session->watch().follow(file_);
  }
  void load(Session& session) { session.document().load(loadProfile(ui::pathOf(file_)).value(), file_); }
  static void propose(Session& session, int rearTeeth) {
    SetupEdits(session.document(), Side::Proposed).setRearTeeth(rearTeeth);
  }

  QTemporaryDir folder_;
  QString file_;
  Session one_, other_;
};

TEST_F(TwoSessions, NeitherIsWarnedWhileNobodySaves) {
  propose(one_, 45);
  propose(other_, 47);
  EXPECT_FALSE(one_.document().changedOutside());
  EXPECT_FALSE(other_.document().changedOutside());
}

TEST_F(TwoSessions, TheOtherNoticesBeforeSavingAndLosesNothing) {
  QSignalSpy noticed(&other_.watch(), &ui::FileWatch::changed);
  propose(other_, 47);
  propose(one_, 45);
  ASSERT_FALSE(one_.document().save(file_));
  EXPECT_TRUE(soon([&] { return noticed.count() > 0; }));
  EXPECT_TRUE(other_.document().changedOutside());
  EXPECT_FALSE(one_.document().changedOutside()) << "its own saving is none of somebody else";
  EXPECT_EQ(proposedSetup(other_.document()).rearTeeth.count(), 47) << "what is worked on stays";
}

TEST_F(TwoSessions, WhoLoadsWhatTheFirstSavedMayGoOnAndThenTheFirstIsWarned) {
  propose(one_, 45);
  ASSERT_FALSE(one_.document().save(file_));
  load(other_);
  EXPECT_FALSE(other_.document().changedOutside());
  EXPECT_EQ(proposedSetup(other_.document()).rearTeeth.count(), 45);
  propose(other_, 47);
  ASSERT_FALSE(other_.document().save(file_));
  EXPECT_TRUE(one_.document().changedOutside());
}

}  // namespace
}  // namespace layshaft::test
