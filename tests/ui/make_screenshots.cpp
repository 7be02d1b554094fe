// SPDX-License-Identifier: GPL-3.0-or-later
// Makes the pictures of the README with the program itself: make_screenshots FOLDER
#include <QApplication>
#include <QDir>
#include <QStandardPaths>
#include <QTest>
#include <cstdio>

#include "ui/charts/live_chart.h"
#include "ui/main_window.h"
#include "ui/preferences.h"
#include "ui/samples.h"

namespace {

using namespace layshaft;

bool shoot(const Profile& profile, ui::Appearance appearance, std::optional<double> crosshair,
           const QString& file) {
  ui::applyAppearance(appearance);
  ui::MainWindow window(profile);
  window.resize(1280, 720);
  window.show();
  QTest::qWait(100);
  window.currentChart()->setCrosshair(crosshair);
  QTest::qWait(50);
  return window.grab().save(file);
}

}  // namespace

int main(int argc, char** argv) {
  qputenv("QT_QPA_PLATFORM", "offscreen");
  QStandardPaths::setTestModeEnabled(true);
  QApplication application(argc, argv);
  if (argc != 2) {
    std::fputs("usage: make_screenshots FOLDER\n", stderr);
    return 2;
  }
  QLocale::setDefault(QLocale(QLocale::English, QLocale::UnitedKingdom));
  ui::preferences::setHintsDismissed(true);
  ui::preferences::setUnits(ui::UnitsShown(ui::UnitSystem::Metric));
  const QDir folder(QString::fromLocal8Bit(argv[1]));
  const Profile track = ui::firstSample();
  bool good = false;
  for (const auto& [name, profile] : ui::samples())
    if (profile.stock.options.finalDrive == FinalDrive::Belt)
      good = shoot(profile, ui::Appearance::Dark, std::nullopt,
                   folder.filePath(QStringLiteral("sawtooth-dark.png")));
  return shoot(track, ui::Appearance::Light, 182.0, folder.filePath(QStringLiteral("sawtooth-light.png"))) &&
                 good
             ? 0
             : 1;
}
