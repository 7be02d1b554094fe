// SPDX-License-Identifier: GPL-3.0-or-later
//
// Pins reach every chart: a line, a name, a column under the crosshair and a colour of their own.
#include <QRegularExpression>
#include <QTemporaryDir>
#include <set>

#include "core/traces.h"
#include "tests/ui/support.h"
#include "ui/charts/pull_chart.h"
#include "ui/charts/run_chart.h"
#include "ui/charts/sawtooth_chart.h"
#include "ui/words/numbers.h"

namespace layshaft::test {
namespace {

constexpr int kPinRears[] = {41, 45, 47, 50};

/// Stock, proposed and as many pins as there is room for, each of other teeth.
SharedPlan fourPins() {
  Profile profile = workedExample();
  profile.pins.clear();
  for (const int teeth : kPinRears)
    profile.pins.push_back({"Rear of " + std::to_string(teeth), {.rearTeeth = rear(teeth)}});
  return std::make_shared<const Plan>(plan(profile));
}

/// A chart whose inner answers are open.
template <class Chart>
class Opened : public Chart {
 public:
  Opened() {
    Chart::resize(1000, 560);
    Chart::show(plan_, ui::UnitsShown());
    Chart::ensureLaidOut();
  }
  using Chart::crosshairRows;
  using Chart::setupColours;
  using Chart::setupNames;

  const Plan& plan() const { return *plan_; }
  /// The line of a pin; stock's is below them and the proposal's above.
  const QLineSeries& pinLine(std::size_t pin) const { return *Chart::lines().at(1 + pin); }

  /// What is written in the picture.
  QStringList writtenTexts() {
    QTemporaryDir folder;
    const QString file = folder.filePath("chart.svg");
    EXPECT_EQ(Chart::savePicture(file), std::nullopt);
    static const QRegularExpression text(QStringLiteral("<text[^>]*>([^<]*)</text>"));
    QStringList texts;
    const QString svg = QString::fromStdString(contentsOf(file.toStdString()));
    for (auto it = text.globalMatch(svg); it.hasNext();) texts << it.next().captured(1).trimmed();
    return texts;
  }

  /// Whether the picture holds so many pixels of a colour.
  int pixelsOf(const QColor& colour) {
    const QImage picture = Chart::grab().toImage();
    int count = 0;
    for (int y = 0; y < picture.height(); ++y)
      for (int x = 0; x < picture.width(); ++x) count += picture.pixel(x, y) == colour.rgb() ? 1 : 0;
    return count;
  }

 private:
  const SharedPlan plan_ = fourPins();
};

template <class Chart>
void expectPinsToBeSeen() {
  Opened<Chart> chart;
  const QStringList texts = chart.writtenTexts();
  std::set<QRgb> colours;
  for (const QColor& colour : chart.setupColours()) colours.insert(colour.rgb());
  EXPECT_EQ(colours.size(), 6U) << "no two setups share a colour";
  ASSERT_EQ(chart.setupNames().size(), 6);
  for (std::size_t pin = 0; pin < 4; ++pin) {
    const QString name = QString::fromStdString(chart.plan().pins[pin].name);
    EXPECT_EQ(chart.setupNames()[static_cast<qsizetype>(pin) + 2], name);
    EXPECT_TRUE(texts.contains(QStringLiteral("%1 15/%2").arg(name).arg(kPinRears[pin])) ||
                texts.contains(QStringLiteral("%1 16/%2").arg(name).arg(kPinRears[pin])))
        << name.toStdString() << " in: " << texts.join(" | ").toStdString();
    const QColor own = chart.setupColours()[pin + 2];
    const QColor line = chart.colours().pinColour(static_cast<int>(pin));
    EXPECT_EQ(own, chart.colours().words(line));
    EXPECT_EQ(chart.pinLine(pin).pen().color(), line);
    EXPECT_GT(chart.pixelsOf(line), 60) << name.toStdString();
  }
}

TEST(Pins, AreSeenInTheSawtooth) {
  expectPinsToBeSeen<ui::SawtoothChart>();
}
TEST(Pins, AreSeenInThePull) {
  expectPinsToBeSeen<ui::PullChart>();
}
TEST(Pins, AreSeenInTheRun) {
  expectPinsToBeSeen<ui::RunChart>();
}

TEST(Pins, SawtoothHasTheirLinesAndColumns) {
  const Opened<ui::SawtoothChart> chart;
  constexpr double kKmh = 120.0;
  const auto rows = chart.crosshairRows(kKmh);
  ASSERT_FALSE(rows.empty());
  for (std::size_t pin = 0; pin < 4; ++pin) {
    const Gearing& gearing = chart.plan().pins[pin].gearing;
    const QList<QPointF> line = chart.pinLine(pin).points();
    ASSERT_FALSE(line.isEmpty());
    EXPECT_NEAR(line.back().x(), *gearing.gears.back().speedAtRevLimitMps * 3.6, 1e-9);
    for (const ui::CrosshairRow& row : rows) {
      ASSERT_EQ(row.values.size(), 6);
      const auto gear = static_cast<std::size_t>(row.name.mid(5).toInt() - 1);
      const double rpm = gearing.rpm(kKmh / 3.6, gear);
      const bool ridden = rpm >= chart.plan().idleRpm && rpm <= gearing.revLimitRpm;
      const QString value = row.values[static_cast<qsizetype>(pin) + 2];
      EXPECT_TRUE(ridden ? value.startsWith(ui::number(rpm, 0)) : value == "–")
          << row.name.toStdString() << ": " << value.toStdString();
    }
  }
}

TEST(Pins, PullHasTheirLinesAndColumns) {
  const Opened<ui::PullChart> chart;
  constexpr double kKmh = 120.0;
  const auto rows = chart.crosshairRows(kKmh);
  ASSERT_FALSE(rows.empty());
  for (std::size_t pin = 0; pin < 4; ++pin) {
    const SetupPlan& setup = chart.plan().pins[pin];
    const PullCurves curves = pullCurves(setup);
    const QList<QPointF> line = chart.pinLine(pin).points();
    ASSERT_EQ(static_cast<std::size_t>(line.size()), curves.followed.size());
    for (std::size_t i = 0; i < curves.followed.size(); ++i) {
      EXPECT_NEAR(line[static_cast<qsizetype>(i)].x(), curves.followed[i].speedMps * 3.6, 1e-9);
      EXPECT_NEAR(line[static_cast<qsizetype>(i)].y(), curves.followed[i].forceN, 1e-9);
    }
    for (const ui::CrosshairRow& row : rows) {
      ASSERT_EQ(row.values.size(), 6);
      QList<QPointF> gear;
      const auto& points = row.name == "Drag and rolling"
                               ? curves.resistance
                               : curves.gears.at(static_cast<std::size_t>(row.name.mid(5).toInt() - 1));
      for (const PullPoint& point : points) gear << QPointF(point.speedMps * 3.6, point.forceN);
      const auto force = ui::valueAt(gear, kKmh);
      EXPECT_EQ(row.values[static_cast<qsizetype>(pin) + 2], force ? ui::number(*force, 0) : "–")
          << row.name.toStdString();
    }
  }
}

TEST(Pins, RunHasTheirLinesAndColumns) {
  const Opened<ui::RunChart> chart;
  constexpr double kSeconds = 4.0;
  const auto rows = chart.crosshairRows(kSeconds);
  ASSERT_EQ(rows.size(), 4U) << "speed, distance, gear, engine";
  for (std::size_t pin = 0; pin < 4; ++pin) {
    const RunTrace trace = standingStartTrace(chart.plan().pins[pin]);
    const QList<QPointF> line = chart.pinLine(pin).points();
    ASSERT_EQ(static_cast<std::size_t>(line.size()), trace.points.size());
    QList<QPointF> speeds, distances;
    for (const RunPoint& point : trace.points) {
      speeds << QPointF(point.timeS, point.speedMps * 3.6);
      distances << QPointF(point.timeS, point.distanceM);
    }
    for (qsizetype i = 0; i < line.size(); ++i) {
      EXPECT_NEAR(line[i].x(), speeds[i].x(), 1e-9);
      EXPECT_NEAR(line[i].y(), speeds[i].y(), 1e-9);
    }
    const auto value = [&](std::size_t row) { return rows[row].values.at(static_cast<qsizetype>(pin) + 2); };
    EXPECT_EQ(value(0), ui::number(*ui::valueAt(speeds, kSeconds), 0));
    EXPECT_EQ(value(1), ui::number(*ui::valueAt(distances, kSeconds), 0));
  }
}

}  // namespace
}  // namespace layshaft::test
