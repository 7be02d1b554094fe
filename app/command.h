// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QMap>
#include <QStringList>
#include <functional>
#include <optional>

class QIODevice;

/// What the commands without a window share.
namespace layshaft::app {

inline constexpr int kSuccess = 0;
inline constexpr int kBadInput = 1;
inline constexpr int kBadUsage = 2;

/// One line to standard error, of something that does not keep the command from its work.
void remark(const QString& message);
/// One line to standard error. Returns the code.
int fail(int code, const QString& message);
/// The same, kBadInput, of a file.
int failOf(const QString& file, const QString& why);

/// The words behind a command: one file, options with a value and marks without one. `--` ends the options.
struct CommandLine {
  QString file;
  QMap<QString, QString> values;  ///< of the options and marks that were given; the last one counts
  QString complaint;              ///< what is wrong first; empty if the words make sense

  bool has(const QString& option) const { return values.contains(option); }
  QString output() const { return values.value(QStringLiteral("--output")); }
  /// The value of an option out of those that are allowed; another one is complained of.
  QString choice(const QString& option, const QString& usual, const QStringList& allowed);
  void complain(const QString& what) {
    if (complaint.isEmpty()) complaint = what;
  }
};

/// Reads the words. `--output` is known to every command. `needed`: what to say where no file is named.
CommandLine commandLine(const QStringList& words, const QStringList& options, const QStringList& marks,
                        const QString& needed);

/// Writes to standard output, or to a file if one is named: a plain file is replaced whole, a pipe or a
/// device is written to. `write` returns why it could not. Returns the exit code; what goes wrong is said.
int writeOutput(const QString& output, const std::function<std::optional<QString>(QIODevice&)>& write);

}  // namespace layshaft::app
