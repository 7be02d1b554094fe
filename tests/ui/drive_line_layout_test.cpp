// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/ui/support.h"

namespace layshaft::test {
namespace {

Json manyGears() {
  return {3.1, 2.8, 2.5, 2.2, 1.95, 1.75, 1.55, 1.4, 1.25, 1.1};
}

/// Where a station stands on the drive line.
QRect placeOn(const ui::DriveLine& line, const ui::Station& station) {
  return QRect(station.mapTo(&line, QPoint(0, 0)), station.size());
}

/// Every visible station of the drive line inside the window, none over another.
void expectAllStationsFit(ui::MainWindow& window) {
  auto& line = window.driveLine();
  const auto stations = line.findChildren<ui::Station*>();
  // Layouts settle in posted events, some of which post further ones: a busy machine takes its time.
  (void)soon([&] {
    return std::all_of(stations.begin(), stations.end(), [&](const ui::Station* station) {
      return !station->isVisible() || line.rect().contains(placeOn(line, *station));
    });
  });
  QList<QRect> taken;
  for (auto* station : stations) {
    if (!station->isVisible()) continue;
    const QRect place = placeOn(line, *station);
    EXPECT_TRUE(line.rect().contains(place)) << station->editor()->accessibleName().toStdString();
    EXPECT_GE(station->editor()->width(), station->editor()->minimumSizeHint().width() / 2);
    for (const QRect& other : taken) EXPECT_FALSE(other.intersects(place));
    taken << place;
  }
  EXPECT_GE(taken.size(), 14);
}

TEST(DriveLineLayout, TenGearsFitIn1280Pixels) {
  Window window(bike({{"/stock/gear_ratios", manyGears()}}));
  QTest::qWait(30);
  EXPECT_EQ(window->width(), 1280);
  EXPECT_EQ(window->height(), 720);
  expectAllStationsFit(*window);
}

TEST(DriveLineLayout, TenDifferingGearsAndTyreFitToo) {
  Json longer = manyGears();
  for (auto& ratio : longer) ratio = ratio.get<double>() + 0.0123;
  Window window(bike({{"/stock/gear_ratios", manyGears()},
                      {"/proposed/gear_ratios", longer},
                      {"/proposed/rear_tyre", "190/55ZR17 M/C"},
                      {"/proposed/front_teeth", 15},
                      {"/proposed/links", 110}}));
  QTest::qWait(30);
  EXPECT_EQ(window->size(), QSize(1280, 720));
  expectAllStationsFit(*window);
}

TEST(DriveLineLayout, GearsThatComeLaterFitToo) {
  Window window(bike());
  for (int count = 4; count <= 10; ++count)
    ui::SetupEdits(window->document(), ui::Side::Stock).setGearCount(static_cast<std::size_t>(count));
  QTest::qWait(60);
  EXPECT_EQ(window->size(), QSize(1280, 720));
  expectAllStationsFit(*window);
}

TEST(DriveLineLayout, TheChartKeepsMostOfTheSmallestScreen) {
  Window window(sampleBike("club-600"));
  QTest::qWait(30);
  EXPECT_GE(window->currentChart()->height(), 300);
}

TEST(DriveLineLayout, NothingMovesWhileAValueIsTurned) {
  Window window(sampleBike("club-600"));
  QTest::qWait(30);
  const auto places = [&] {
    std::vector<std::pair<QString, QRect>> all{{"chart", window->currentChart()->geometry()},
                                               {"readout", window->readout().geometry()},
                                               {"drive line", window->driveLine().geometry()}};
    for (auto* station : window->driveLine().findChildren<ui::Station*>())
      if (station->isVisible())
        all.emplace_back(station->editor()->accessibleName(),
                         QRect(station->mapTo(&*window, QPoint()), station->size()));
    return all;
  };
  const auto before = places();
  for (const char* name : {"Front teeth", "Rear teeth", "Primary", "Gear 1 ratio", "Links", "Width"}) {
    auto& box = control<QAbstractSpinBox>(*window, name);
    box.setFocus();
    for (const auto key : {Qt::Key_Up, Qt::Key_Up, Qt::Key_Down, Qt::Key_Down, Qt::Key_Down}) {
      QTest::keyClick(&box, key);
      QTest::qWait(20);
      const auto now = places();
      for (std::size_t i = 0; i < now.size(); ++i)
        ASSERT_EQ(now[i].second, before[i].second)
            << now[i].first.toStdString() << " moves while " << name << " is turned";
    }
  }
}

}  // namespace
}  // namespace layshaft::test
