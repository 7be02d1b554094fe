// SPDX-License-Identifier: GPL-3.0-or-later
//
// What is written in the charts: nothing over anything else, nothing cut, nothing left out; on every sample,
// in small and large windows, with and without pins, in small and large type.
#include <cmath>
#include <type_traits>

#include "tests/ui/support.h"
#include "ui/charts/pull_chart.h"
#include "ui/charts/run_chart.h"
#include "ui/charts/sawtooth_chart.h"

namespace layshaft::test {
namespace {

const char* const kBikes[] = {"adventure-twin",   "club-600",    "enduro-250",     "motocross-450",
                              "roadster-classic", "tourer-belt", "two-stroke-125", "youth-85"};

/// A sample with so many pins, one of which has a long name.
Profile withPins(const char* sample, int pins) {
  Profile profile = sampleBike(sample);
  profile.pins.clear();
  const int stock = profile.stock.rearTeeth.count();
  for (int i = 0; i < pins; ++i)
    profile.pins.push_back(
        {i == 2 ? "The pair that came with the other wheel last spring" : "Pin " + std::to_string(i + 1),
         {.rearTeeth = Teeth::rear(stock - 3 + 2 * i).value()}});
  return profile;
}

/// A chart whose inner answers are open.
template <class Chart>
class Lettered : public Chart {
 public:
  using Chart::at;
  using Chart::colours;
  using Chart::footArea;
  using Chart::namesArea;
  using Chart::plotArea;
  void layOut(const QSize& size, double points, const SharedPlan& plan) {
    QFont font = Chart::font();
    font.setPointSizeF(points);
    Chart::setFont(font);
    Chart::show(plan, ui::UnitsShown());
    Chart::resize(size.expandedTo(Chart::minimumSizeHint()));
    Chart::ensureLaidOut();
    Chart::show(plan, ui::UnitsShown());
  }
};

/// How large a chart is, at least, in windows of 1024×600, 1280×720 and 2560×1440.
constexpr QSize kSizes[] = {{640, 220}, {880, 360}, {2100, 1000}};

template <class Chart>
class ChartLabels : public testing::Test {};

using Charts = testing::Types<ui::SawtoothChart, ui::PullChart, ui::RunChart>;
TYPED_TEST_SUITE(ChartLabels, Charts);

TYPED_TEST(ChartLabels, StandClearOfEachOtherInsideThePlot) {
  Lettered<TypeParam> chart;
  for (const char* sample : kBikes)
    for (const int pins : {0, 2, 4}) {
      const auto shown = std::make_shared<const Plan>(plan(withPins(sample, pins)));
      for (const QSize& size : kSizes)
        for (const double points : {9.0, 12.0, 15.0}) {
          chart.layOut(size, points, shown);
          const auto& labels = chart.labels();
          const QRectF plot = chart.plotArea().adjusted(-0.1, -0.1, 0.1, 0.1);
          ASSERT_GE(labels.size(), 5u + static_cast<std::size_t>(pins)) << sample;
          for (std::size_t a = 0; a < labels.size(); ++a) {
            const auto& label = labels[a];
            EXPECT_TRUE(plot.contains(label.box))
                << label.text.toStdString() << ", " << sample << ", " << pins << " pins, " << size.width()
                << " px, " << points << " pt";
            for (std::size_t b = 0; b < a; ++b)
              EXPECT_FALSE(label.box.intersects(labels[b].box))
                  << label.text.toStdString() << " and " << labels[b].text.toStdString() << ", " << sample
                  << ", " << pins << " pins, " << size.width() << " px, " << points << " pt";
          }
        }
    }
}

/// The text of each label that is one of a picture's, once.
template <class Chart>
QStringList written(const Lettered<Chart>& chart) {
  QStringList texts;
  for (const auto& label : chart.labels())
    if (!label.text.contains("limit")) texts << label.text;  // bounds may lie beyond the axis
  return texts;
}

TYPED_TEST(ChartLabels, AreAllThereWithFourPins) {
  Lettered<TypeParam> chart;
  for (const char* sample : kBikes) {
    const auto shown = std::make_shared<const Plan>(plan(withPins(sample, 4)));
    chart.layOut(kSizes[2], 9.0, shown);
    const QStringList whole = written(chart);
    for (const QSize& size : kSizes)
      for (const double points : {9.0, 12.0, 15.0}) {
        chart.layOut(size, points, shown);
        EXPECT_EQ(written(chart).size(), whole.size())
            << sample << ", " << size.width() << " px, " << points << " pt: only "
            << written(chart).join(", ").toStdString();
      }
  }
}

TYPED_TEST(ChartLabels, TheCrosshairsTableKeepsOffTheNames) {
  Lettered<TypeParam> chart;
  for (const int pins : {0, 4}) {
    const auto shown = std::make_shared<const Plan>(plan(withPins("club-600", pins)));
    double widest = 0.0;
    for (const QSize& size : {kSizes[2], kSizes[1]}) {
      chart.layOut(size, 9.0, shown);
      for (const double share : {0.02, 0.2, 0.5, 0.7, 0.85}) {
        chart.setCrosshair(chart.xRange().high * share);
        const QRectF panel = chart.crosshairPanel();
        if (panel.isEmpty()) continue;
        EXPECT_FALSE(panel.intersects(chart.namesArea()))
            << pins << " pins, " << size.width() << ", " << share;
        EXPECT_TRUE(QRectF(chart.rect()).contains(panel)) << pins << ", " << size.width();
        widest = std::max(widest, panel.width());
      }
    }
    chart.layOut(kSizes[0], 9.0, shown);
    chart.setCrosshair(chart.xRange().high * 0.4);
    EXPECT_FALSE(chart.crosshairPanel().isEmpty());
    EXPECT_TRUE(QRectF(chart.rect()).contains(chart.crosshairPanel()));
    if (pins == 4) {
      EXPECT_LT(chart.crosshairPanel().width(), 0.9 * widest) << "smaller in a small chart";
    }
    chart.setCrosshair(std::nullopt);
  }
}

/// A name may be cut where there is no room for it, the teeth never.
TYPED_TEST(ChartLabels, EveryNamedSetupHasItsTeeth) {
  Lettered<TypeParam> chart;
  Profile profile = sampleBike("club-600");
  profile.pins = {{"Short course: 16 × 47", {.frontTeeth = *Teeth::front(16), .rearTeeth = *Teeth::rear(47)}},
                  {"The pair that came with the other wheel last spring", {.rearTeeth = *Teeth::rear(46)}}};
  const auto shown = std::make_shared<const Plan>(plan(profile));
  for (const QSize& size : {QSize(420, 220), kSizes[0], kSizes[1]})
    for (const double points : {9.0, 13.0, 18.0}) {
      chart.layOut(size, points, shown);
      QStringList names;
      for (const auto& label : chart.labels())
        if (label.sample) names << QString(label.text).remove(' ').replace(QChar(0xd7), '/');
      ASSERT_EQ(names.size(), 4);
      for (const auto& [name, teeth] : {std::pair{0, "17/45"}, {1, "16/45"}, {2, "16/47"}, {3, "17/46"}})
        EXPECT_TRUE(names[name].contains(teeth))
            << names[name].toStdString() << ", " << size.width() << " px";
    }
}

TYPED_TEST(ChartLabels, SayThatTheTorqueCurveIsEstimatedWhereItCounts) {
  Lettered<TypeParam> chart;
  Profile profile = sampleBike("club-600");
  for (const bool estimated : {false, true}) {
    profile.bike.engine.curveEstimated = estimated;
    chart.layOut(kSizes[1], 9.0, std::make_shared<const Plan>(plan(profile)));
    const bool says = written(chart).join(' ').contains("estimated torque curve");
    EXPECT_EQ(says, (estimated && !std::is_same_v<TypeParam, ui::SawtoothChart>));
  }
}

/// What comes up from the axis, such as a top speed, leaves the axis titles readable.
TYPED_TEST(ChartLabels, NoLineToAWordCrossesAnAxisTitle) {
  Lettered<TypeParam> chart;
  int leaders = 0;
  for (const char* sample : kBikes) {
    Profile profile = withPins(sample, 0);
    for (const int rear : {-4, 0, 4}) {
      profile.proposed.rearTeeth = Teeth::rear(profile.stock.rearTeeth.count() + rear).value();
      for (const QSize& size : kSizes) {
        chart.layOut(size, 9.0, std::make_shared<const Plan>(plan(profile)));
        for (const auto& label : chart.labels()) {
          if (!label.leader) continue;
          ++leaders;
          const double x = label.leader->x1();
          const double top = label.leader->y2(), bottom = label.leader->y1();
          for (const auto& other : chart.labels()) {
            if (&other == &label || other.leader || other.bold) continue;
            EXPECT_FALSE(other.box.left() < x && x < other.box.right() && other.box.top() < bottom &&
                         other.box.bottom() > top)
                << label.text.toStdString() << " through " << other.text.toStdString() << ", " << sample
                << ", " << size.width() << " px";
          }
        }
      }
    }
  }
  EXPECT_EQ(leaders > 0, (std::is_same_v<TypeParam, ui::PullChart>));
}

TEST(SawtoothBars, EachPinHasABarInItsColour) {
  Lettered<ui::SawtoothChart> chart;
  for (const int pins : {0, 1, 4}) {
    chart.layOut({1000, 560}, 9.0, std::make_shared<const Plan>(plan(withPins("club-600", pins))));
    const QImage picture = chart.grab().toImage();
    const auto inFoot = [&](const QColor& colour) {
      int found = 0;
      const QRect foot = chart.footArea().toAlignedRect() & picture.rect();
      for (int y = foot.top(); y <= foot.bottom(); ++y)
        for (int x = foot.left(); x <= foot.right(); ++x) found += picture.pixelColor(x, y) == colour ? 1 : 0;
      return found;
    };
    const ui::ChartPalette& palette = chart.colours();
    EXPECT_GT(inFoot(palette.stock), 200);
    EXPECT_GT(inFoot(palette.proposed), 200);
    for (int i = 0; i < 4; ++i)
      EXPECT_EQ(inFoot(palette.pinColour(i)) > 200, i < pins) << i << " of " << pins << " pins";
  }
}

TEST(SawtoothLabels, NoWordLiesOnTheRevLimit) {
  Lettered<ui::SawtoothChart> chart;
  for (const char* sample : kBikes) {
    const auto shown = std::make_shared<const Plan>(plan(withPins(sample, 4)));
    for (const QSize& size : kSizes)
      for (const double points : {9.0, 12.0, 15.0}) {
        chart.layOut(size, points, shown);
        const double limit = chart.at(0, *shown->revLimitRpm / 1000).y();
        for (const auto& label : chart.labels())
          EXPECT_FALSE(label.box.top() < limit && label.box.bottom() > limit)
              << label.text.toStdString() << ", " << sample << ", " << size.width() << " px, " << points;
      }
  }
}

TEST(SawtoothLabels, GearNumbersAreNotCrossedWhereOneLineStandsAlone) {
  Lettered<ui::SawtoothChart> chart;
  Profile profile = sampleBike("club-600");
  profile.pins.clear();
  profile.proposed = {};
  const auto shown = std::make_shared<const Plan>(plan(profile));
  chart.layOut({880, 420}, 9.0, shown);
  for (const auto& label : chart.labels()) {
    bool isNumber = false;
    label.text.toInt(&isNumber);
    if (!isNumber) continue;
    const auto points = chart.lines().back()->points();
    for (qsizetype i = 1; i < points.size(); ++i) {
      const QPointF a = chart.at(points[i - 1].x(), points[i - 1].y());
      const QPointF b = chart.at(points[i].x(), points[i].y());
      for (int step = 0; step <= 200; ++step)
        ASSERT_FALSE(label.box.contains(a + (b - a) * step / 200.0)) << "gear " << label.text.toStdString();
    }
  }
}

}  // namespace
}  // namespace layshaft::test
