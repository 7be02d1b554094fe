// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QStringList>
#include <functional>
#include <optional>

class QIODevice;

/// What the commands without a window share.
namespace layshaft::app {

inline constexpr int kSuccess = 0;
inline constexpr int kBadInput = 1;
inline constexpr int kBadUsage = 2;

/// One line to standard error. Returns the code.
int fail(int code, const QString& message);
/// The same, kBadInput, of a file.
int failOf(const QString& file, const QString& why);

/// Whether the word at `at` is this option, as `--option VALUE` or `--option=VALUE`; goes to the value's
/// word. A missing value is complained of.
bool takeValue(const QStringList& words, qsizetype& at, const QString& option, QString& value,
               QString& complaint);

/// Writes to standard output, or to a file if one is named: a plain file is replaced whole, a pipe or a
/// device is written to. `write` returns why it could not. Returns the exit code; what goes wrong is said.
int writeOutput(const QString& output, const std::function<std::optional<QString>(QIODevice&)>& write);

}  // namespace layshaft::app
