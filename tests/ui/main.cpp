// SPDX-License-Identifier: GPL-3.0-or-later
#include <gmock/gmock.h>

#include <QApplication>
#include <QLocale>
#include <QSettings>
#include <QStandardPaths>
#include <QTemporaryDir>

#include "tests/ui/crashing_program.h"
#include "ui/words/english.h"

/// Each run has a home, settings and recovery folder of its own, and leaves nothing behind.
int main(int argc, char** argv) {
  const QTemporaryDir home;
  qputenv("QT_QPA_PLATFORM", "offscreen");
  qputenv("HOME", home.path().toLocal8Bit());
  for (const char* name : {"XDG_DATA_HOME", "XDG_CONFIG_HOME"}) qunsetenv(name);
  QStandardPaths::setTestModeEnabled(true);
  QLocale::setDefault(QLocale(QLocale::English, QLocale::UnitedKingdom));

  QApplication application(argc, argv);
  QCoreApplication::setOrganizationName(QStringLiteral("Layshaft"));
  QCoreApplication::setApplicationName(QStringLiteral("Layshaft tests"));
  QSettings::setDefaultFormat(QSettings::IniFormat);
  QSettings::setPath(QSettings::IniFormat, QSettings::UserScope, home.path());

  layshaft::ui::installEnglish(application);
  if (const auto code = layshaft::test::crashingProgram(QCoreApplication::arguments())) return *code;
  testing::InitGoogleMock(&argc, argv);
  return RUN_ALL_TESTS();
}
