// SPDX-License-Identifier: GPL-3.0-or-later
// What a person waits for: from the step of a spin box to the painted chart, and from start to the first paint, each
// beside a bare Qt Charts window in the same run. Targets: a step at most 1.25 times the bare chart, p95 inside
// 8.3 ms with axes at rest and 16.7 ms when they move; a start at most 1.3 times its bare twin.
#include <benchmark/benchmark.h>

#include <QApplication>
#include <QChart>
#include <QChartView>
#include <QDir>
#include <QElapsedTimer>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineSeries>
#include <QSpinBox>
#include <QStandardPaths>
#include <QTest>
#include <QVBoxLayout>
#include <QValueAxis>
#include <algorithm>
#include <array>
#include <vector>

#include "core/profile_file.h"
#include "ui/main_window.h"
#include "ui/samples.h"

namespace {

using namespace layshaft;

constexpr QSize kWindow{1280, 800};
constexpr int kFramePauseMs = 20;  // longer than the planner's frame, so that every step is a first one

/// Notes when a widget has been painted.
class PaintWatch : public QObject {
 public:
  explicit PaintWatch(QWidget* widget) { widget->installEventFilter(this); }
  bool eventFilter(QObject*, QEvent* event) override {
    painted_ = painted_ || event->type() == QEvent::Paint;
    return false;
  }
  void waitFor() {
    while (!painted_) QCoreApplication::processEvents();
    QCoreApplication::processEvents();
  }
  void reset() { painted_ = false; }

 private:
  bool painted_ = false;
};

void addPercentile(benchmark::State& state, std::vector<double>& seconds) {
  if (seconds.empty()) return;
  std::sort(seconds.begin(), seconds.end());
  state.counters["p50_ms"] = 1e3 * seconds[seconds.size() / 2];
  state.counters["p95_ms"] = 1e3 * seconds[seconds.size() * 95 / 100];
}

/// Times `step(i)` until `watch` has seen a paint, with a pause between the steps.
template <class Step>
void timeSteps(benchmark::State& state, PaintWatch& watch, Step step) {
  std::vector<double> seconds;
  int i = 1;  // the window starts with the first of the two values
  for (auto _ : state) {
    QTest::qWait(kFramePauseMs);
    watch.reset();
    QElapsedTimer clock;
    clock.start();
    step(i++);
    watch.waitFor();
    seconds.push_back(1e-9 * static_cast<double>(clock.nsecsElapsed()));
    state.SetIterationTime(seconds.back());
  }
  addPercentile(state, seconds);
}

Profile benchProfile() {
  Profile profile = ui::samples().front().second;
  profile.proposed = {};
  return profile;
}

/// The same chart without anything of ours: series, points, axes, pens and view settings alike.
struct BareChart {
  QWidget window;
  QChartView* view;
  QValueAxis *x, *y;
  std::vector<QLineSeries*> lines;

  explicit BareChart(ui::LiveChart& twin) {
    auto* chart = new QChart;
    chart->legend()->hide();
    chart->setBackgroundRoundness(0);
    chart->setMargins({});
    view = new QChartView(chart, &window);
    view->setRenderHint(QPainter::Antialiasing);
    view->setViewportUpdateMode(QGraphicsView::BoundingRectViewportUpdate);
    view->setFrameShape(QFrame::NoFrame);
    x = new QValueAxis(chart);
    y = new QValueAxis(chart);
    chart->addAxis(x, Qt::AlignBottom);
    chart->addAxis(y, Qt::AlignLeft);
    for (auto* axis : {x, y}) {
      axis->setTickType(QValueAxis::TicksDynamic);
      axis->setTickAnchor(0);
    }
    setRanges(twin);
    for (auto* series : twin.lines()) {
      auto* line = new QLineSeries(chart);
      line->setPen(series->pen());
      chart->addSeries(line);
      line->attachAxis(x);
      line->attachAxis(y);
      line->replace(series->points());
      lines.push_back(line);
    }
    window.resize(twin.size());
    view->resize(twin.size());
    window.show();
  }

  void setRanges(const ui::LiveChart& twin) {
    x->setTickInterval(twin.xRange().step);
    y->setTickInterval(twin.yRange().step);
    x->setRange(twin.xRange().low, twin.xRange().high);
    y->setRange(twin.yRange().low, twin.yRange().high);
  }
};

QList<QList<QPointF>> pointsOf(ui::LiveChart& chart) {
  QList<QList<QPointF>> all;
  for (auto* series : chart.lines()) all << series->points();
  return all;
}

QSpinBox* rearTeeth(ui::MainWindow& window) {
  for (auto* box : window.driveLine().findChildren<QSpinBox*>())
    if (box->accessibleName() == QLatin1String("rear teeth")) return box;
  return nullptr;
}

/// Rear teeth between which the axes rest, and between which they must move.
constexpr std::array<int, 2> kRest{44, 45};
constexpr std::array<int, 2> kMove{43, 30};

void stepInTheWindow(benchmark::State& state, const std::array<int, 2>& teeth) {
  ui::MainWindow window(benchProfile());
  window.resize(kWindow);
  window.show();
  PaintWatch watch(window.currentChart()->viewport());
  QSpinBox* box = rearTeeth(window);
  timeSteps(state, watch, [&](int i) { box->setValue(teeth[static_cast<std::size_t>(i % 2)]); });
}

void stepInTheBareChart(benchmark::State& state, const std::array<int, 2>& teeth) {
  ui::MainWindow window(benchProfile());
  window.resize(kWindow);
  window.show();
  QTest::qWait(kFramePauseMs);
  BareChart bare(*window.currentChart());
  QSpinBox* box = rearTeeth(window);
  std::array<QList<QList<QPointF>>, 2> points;
  std::array<std::array<ui::AxisRange, 2>, 2> ranges;
  for (std::size_t i = 0; i < 2; ++i) {
    box->setValue(teeth[i]);
    QTest::qWait(kFramePauseMs * 2);
    points[i] = pointsOf(*window.currentChart());
    ranges[i] = {window.currentChart()->xRange(), window.currentChart()->yRange()};
  }
  window.hide();
  PaintWatch watch(bare.view->viewport());
  timeSteps(state, watch, [&](int i) {
    const auto which = static_cast<std::size_t>(i % 2);
    for (std::size_t s = 0; s < bare.lines.size(); ++s)
      if (bare.lines[s]->points() != points[which][static_cast<qsizetype>(s)]) bare.lines[s]->replace(points[which][static_cast<qsizetype>(s)]);
    if (ranges[0] == ranges[1]) return;
    bare.x->setTickInterval(ranges[which][0].step);
    bare.x->setRange(ranges[which][0].low, ranges[which][0].high);
    bare.y->setTickInterval(ranges[which][1].step);
    bare.y->setRange(ranges[which][1].low, ranges[which][1].high);
  });
}

void startOfTheWindow(benchmark::State& state) {
  for (auto _ : state) {
    QElapsedTimer clock;
    clock.start();
    ui::MainWindow window(benchProfile());
    window.resize(kWindow);
    PaintWatch watch(window.currentChart()->viewport());
    window.show();
    watch.waitFor();
    state.SetIterationTime(1e-9 * static_cast<double>(clock.nsecsElapsed()));
  }
}

/// One chart with as many lines, and as many spin boxes and labels.
void startOfTheBareTwin(benchmark::State& state) {
  ui::MainWindow twin(benchProfile());
  twin.resize(kWindow);
  twin.show();
  QTest::qWait(kFramePauseMs);
  const auto boxes = twin.findChildren<QAbstractSpinBox*>().size();
  const auto labels = twin.findChildren<QLabel*>().size();
  const auto points = pointsOf(*twin.currentChart());
  for (auto _ : state) {
    QElapsedTimer clock;
    clock.start();
    QWidget window;
    auto* column = new QVBoxLayout(&window);
    auto* chart = new QChart;
    chart->legend()->hide();
    auto* view = new QChartView(chart);
    view->setRenderHint(QPainter::Antialiasing);
    for (const auto& line : points) {
      auto* series = new QLineSeries(chart);
      series->replace(line);
      chart->addSeries(series);
    }
    chart->createDefaultAxes();
    column->addWidget(view, 1);
    auto* row = new QHBoxLayout;
    for (qsizetype i = 0; i < boxes; ++i) {
      auto* pair = new QVBoxLayout;
      pair->addWidget(new QSpinBox);
      for (qsizetype l = 0; l < labels / boxes; ++l) pair->addWidget(new QLabel(QStringLiteral("1.955")));
      row->addLayout(pair);
    }
    column->addLayout(row);
    window.resize(kWindow);
    PaintWatch watch(view->viewport());
    window.show();
    watch.waitFor();
    state.SetIterationTime(1e-9 * static_cast<double>(clock.nsecsElapsed()));
  }
}

BENCHMARK_CAPTURE(stepInTheBareChart, axes_at_rest, kRest)->UseManualTime()->Iterations(120)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(stepInTheWindow, axes_at_rest, kRest)->UseManualTime()->Iterations(120)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(stepInTheBareChart, axes_move, kMove)->UseManualTime()->Iterations(120)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(stepInTheWindow, axes_move, kMove)->UseManualTime()->Iterations(120)->Unit(benchmark::kMillisecond);
BENCHMARK(startOfTheBareTwin)->UseManualTime()->Iterations(30)->Unit(benchmark::kMillisecond);
BENCHMARK(startOfTheWindow)->UseManualTime()->Iterations(30)->Unit(benchmark::kMillisecond);

}  // namespace

int main(int argc, char** argv) {
  if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
  QStandardPaths::setTestModeEnabled(true);
  QApplication application(argc, argv);
  QCoreApplication::setOrganizationName(QStringLiteral("LayshaftBench"));
  ui::preferences::setHintsDismissed(true);
  benchmark::Initialize(&argc, argv);
  benchmark::RunSpecifiedBenchmarks();
  return 0;
}
