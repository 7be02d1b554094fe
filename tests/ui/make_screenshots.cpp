// SPDX-License-Identifier: GPL-3.0-or-later
// Makes the pictures of the README with the program itself: make_screenshots FOLDER
#include <QApplication>
#include <QDir>
#include <QSlider>
#include <QStandardPaths>
#include <QTabBar>
#include <QTabWidget>
#include <QTest>
#include <cstdio>

#include "ui/charts/appearance.h"
#include "ui/charts/live_chart.h"
#include "ui/document/samples.h"
#include "ui/pages/chain_page.h"
#include "ui/pages/pair_laps_view.h"
#include "ui/window/main_window.h"
#include "ui/words/english.h"

namespace {

using namespace layshaft;

enum PageShown { kSawtooth, kPull, kRun, kChainRun, kWear, kLap, kLadder };

bool shoot(const Profile& profile, PageShown page, ui::Appearance appearance, std::optional<double> crosshair,
           const QString& file) {
  ui::applyAppearance(appearance);
  ui::MainWindow window(profile);
  window.resize(1280, 720);
  window.findChild<QTabWidget*>()->setCurrentIndex(page);
  window.show();
  window.driveLine().focusTeeth();
  QTest::qWait(100);
  if (ui::LiveChart* chart = window.currentChart()) chart->setCrosshair(crosshair);
  if (page == kChainRun) window.findChild<ui::ChainPage*>()->findChild<QSlider*>()->setValue(1440);
  QTest::qWait(page == kLadder ? 1000 : 50);
  return window.grab().save(file);
}

/// The pairs of the Lap page, once all are lapped.
bool shootPairs(const Profile& profile, const QString& file) {
  ui::applyAppearance(ui::Appearance::Light);
  ui::MainWindow window(profile);
  window.resize(1280, 720);
  window.findChild<QTabWidget*>()->setCurrentIndex(kLap);
  window.show();
  auto* view = window.findChild<ui::PairLapsView*>();
  for (auto* bar : window.findChildren<QTabBar*>())
    for (int i = 0; i < bar->count(); ++i)
      if (bar->tabText(i) == QStringLiteral("Pairs")) bar->setCurrentIndex(i);
  window.driveLine().focusTeeth();
  return QTest::qWaitFor([&] { return view->isVisible() && !view->working(); }, 20000) &&
         window.grab().save(file);
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
  ui::installEnglish(application);
  ui::preferences::setHintsDismissed(true);
  ui::preferences::setUnits(ui::UnitsShown(ui::UnitSystem::Metric));
  const QDir folder(QString::fromLocal8Bit(argv[1]));
  const auto in = [&](const char* name) { return folder.filePath(QString::fromUtf8(name)); };
  const Profile track = ui::firstSample();
  bool good = shoot(track, kSawtooth, ui::Appearance::Light, 20.0, in("sawtooth-light.png")) &&
              shoot(track, kRun, ui::Appearance::Light, std::nullopt, in("acceleration-light.png")) &&
              shoot(track, kLap, ui::Appearance::Light, 1100.0, in("lap-light.png")) &&
              shootPairs(track, in("lap-pairs-light.png"));
  Profile aiming = track;
  aiming.aims = {{.want = Aim::Want::RevAtSpeed, .speedKmh = 205, .rpm = 11870}};
  good = shoot(aiming, kLadder, ui::Appearance::Light, std::nullopt, in("ladder-light.png")) && good;
  for (const auto& [name, profile] : ui::samples()) {
    if (profile.stock.options.finalDrive == FinalDrive::Belt)
      good = shoot(profile, kSawtooth, ui::Appearance::Dark, std::nullopt, in("sawtooth-dark.png")) && good;
    const auto& rear = profile.proposed.options.rearSprocket;
    if (rear && rear->massKg)
      good = shoot(profile, kChainRun, ui::Appearance::Light, std::nullopt, in("chain-light.png")) && good;
    if (profile.ride && profile.ride->surface == Surface::Loam)
      good = shoot(profile, kPull, ui::Appearance::Light, std::nullopt, in("pull-light.png")) && good;
    if (profile.wear && profile.wear->useUnit.value_or(UseUnit::Hours) == UseUnit::Hours)
      good = shoot(profile, kWear, ui::Appearance::Light, std::nullopt, in("wear-light.png")) && good;
  }
  return good ? 0 : 1;
}
