// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QStringList>
#include <optional>

namespace layshaft::test {

inline constexpr const char* kCrashAfterInput = "--leave-recovery-copy";

/// The test program run as `--leave-recovery-copy FOLDER` is one with unsaved work: it writes its recovery
/// copy, says so, and dies without tidying up when its input ends. The exit code if it was run like that.
std::optional<int> crashingProgram(const QStringList& arguments);

}  // namespace layshaft::test
