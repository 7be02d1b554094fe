// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QProcess>
#include <stdexcept>

#include "tests/ui/support.h"

/// The program as scripts run it.
namespace layshaft::test {

struct Outcome {
  int code;
  QByteArray out;
  QByteArray err;
};

/// Runs the program as a script on a machine without a display does.
inline Outcome run(const QStringList& arguments, const QString& outFile = {}) {
  QProcess program;
  QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
  for (const char* name : {"DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM", "XDG_RUNTIME_DIR"})
    environment.remove(QString::fromUtf8(name));
  program.setProcessEnvironment(environment);
  if (!outFile.isEmpty()) program.setStandardOutputFile(outFile);
  program.start(QStringLiteral(LAYSHAFT_PROGRAM), arguments);
  program.closeWriteChannel();
  if (!program.waitForFinished(60000)) throw std::runtime_error("the program does not end");
  EXPECT_EQ(program.exitStatus(), QProcess::NormalExit);
  return {program.exitCode(), program.readAllStandardOutput(), program.readAllStandardError()};
}

inline QString samplePath(const char* name) {
  return QString::fromStdString((sourceFolder() / "sample-profiles" / name).string() + ".bike.json");
}

inline void expectOneLineError(const Outcome& outcome, int code, const QStringList& named) {
  EXPECT_EQ(outcome.code, code) << outcome.err.toStdString();
  EXPECT_EQ(outcome.out, "") << "nothing half-done on standard output";
  EXPECT_TRUE(outcome.err.endsWith('\n'));
  EXPECT_EQ(outcome.err.count('\n'), 1) << outcome.err.toStdString();
  for (const QString& word : named)
    EXPECT_TRUE(QString::fromUtf8(outcome.err).contains(word))
        << word.toStdString() << " is not in " << outcome.err.toStdString();
}

}  // namespace layshaft::test
