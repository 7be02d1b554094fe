// SPDX-License-Identifier: GPL-3.0-or-later
// What a person waits for: from the step of a spin box to the painted chart, and from start to the first
// paint, each beside a bare Qt Charts window in the same run. Limits: ratios.py; besides, a step's p95 is to
// be inside 8.3 ms with axes at rest and 16.7 ms when they move.
#include <benchmark/benchmark.h>

#include <QApplication>
#include <QBuffer>
#include <QChart>
#include <QChartView>
#include <QElapsedTimer>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineSeries>
#include <QPageSize>
#include <QProcess>
#include <QPushButton>
#include <QSpinBox>
#include <QStandardPaths>
#include <QTabBar>
#include <QTabWidget>
#include <QTableView>
#include <QTemporaryDir>
#include <QTest>
#include <QVBoxLayout>
#include <QValueAxis>
#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <memory>
#include <vector>

#include "core/profile_file.h"
#include "core/units.h"
#include "ui/charts/chain_drawing.h"
#include "ui/charts/pair_map.h"
#include "ui/charts/speed_bars.h"
#include "ui/document/ladder_study.h"
#include "ui/document/preferences.h"
#include "ui/pages/compare_view.h"
#include "ui/pages/ladder_page.h"
#include "ui/pages/lap_page.h"
#include "ui/sheet/sheets.h"
#include "ui/window/counter_view.h"
#include "ui/window/main_window.h"

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

/// Stock and a proposal without pins: as many lines as the bare chart draws.
Profile workedExample() {
  return *loadProfile(LAYSHAFT_SOURCE_DIR "/tests/reference/data/club-600.bike.json");
}

Profile benchProfile() {
  Profile profile = workedExample();
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

/// The same bike after years: a thousand services and a thousand track notes.
Profile profileWithRecords() {
  constexpr int kOfEach = 1000;
  Profile profile = workedExample();
  Records& records = profile.records.emplace();
  for (int i = 0; i < kOfEach; ++i) {
    const Date day = *Date::make(2020 + i / 336, 1 + i / 28 % 12, 1 + i % 28);
    Service service;
    service.date = day;
    service.at = i;
    service.parts = "front sprocket 15, chain shortened to 112 links";
    records.services.add(service);
    TrackNote note;
    note.date = day;
    note.place = "Short course";
    note.weather = "dry, 18 °C";
    note.setup = profile.proposed;
    note.lapTimeS = 90.0 + 0.01 * (i % 300);
    note.rating = 1 + i % 10;
    note.words = "better out of the hairpin, busy at the end of the straight";
    records.trackNotes.add(note);
  }
  return profile;
}

QList<QList<QPointF>> pointsOf(ui::LiveChart& chart) {
  QList<QList<QPointF>> all;
  for (auto* series : chart.lines()) all << series->points();
  return all;
}

QSpinBox* rearTeeth(ui::MainWindow& window) {
  for (auto* box : window.driveLine().findChildren<QSpinBox*>())
    if (box->accessibleName() == QLatin1String("Rear teeth")) return box;
  return nullptr;
}

/// Rear teeth over which the axes rest, and between which they must move.
const std::vector<int> kRest{43, 44, 45, 46, 47, 48, 47, 46, 45, 44};
const std::vector<int> kMove{43, 30};

/// In the order of the tabs.
enum PageInView { kSawtooth, kPull, kRun, kChainRun, kWear, kLap, kLadder, kCompare };

Profile lapProfile() {
  return *loadProfile(LAYSHAFT_SOURCE_DIR "/tests/reference/data/lap-club-600.bike.json");
}

/// 3 km of a line that bends and rises little by little, in stretches of 5 m, as a recording is cut.
Profile recordedLapProfile() {
  constexpr int kStretches = 600;
  Profile profile = lapProfile();
  TrackPath path;
  path.spacingM = 5.0;
  for (int i = 0; i < kStretches; ++i) {
    const double round = 2.0 * units::kPi * i / kStretches;
    path.curvaturePerKm.push_back(25.0 * std::pow(std::sin(4.0 * round), 8) + 0.5 * std::sin(97.0 * round));
    path.slopePercent.push_back(3.0 * std::sin(3.0 * round));
  }
  profile.tracks.front().segments.clear();
  profile.tracks.front().path = SharedPath(std::move(path));
  return profile;
}

void stepInTheWindow(benchmark::State& state, const std::vector<int>& teeth, PageInView page,
                     const Profile& profile) {
  ui::MainWindow window(profile);
  window.resize(kWindow);
  window.findChild<QTabWidget*>()->setCurrentIndex(page);
  window.show();
  QWidget* picture = nullptr;
  if (page == kChainRun)
    picture = window.findChild<ui::ChainDrawing*>();
  else if (page == kCompare)
    picture = window.findChild<ui::CompareView*>()->viewport();
  else if (page == kLadder)
    picture = window.findChild<ui::LadderPage*>()->findChild<QTableView*>()->viewport();
  else
    picture = window.currentChart()->viewport();
  PaintWatch watch(picture);
  QSpinBox* box = rearTeeth(window);
  timeSteps(state, watch, [&](int i) { box->setValue(teeth[static_cast<std::size_t>(i) % teeth.size()]); });
}

void stepInTheWindow(benchmark::State& state, const std::vector<int>& teeth, PageInView page) {
  stepInTheWindow(state, teeth, page, page == kLap ? lapProfile() : benchProfile());
}

void stepInTheRecordedLap(benchmark::State& state) {
  stepInTheWindow(state, kRest, kLap, recordedLapProfile());
}

/// The map of pairs in view: each step marks another proposal, and the laps of all pairs go on beside it.
void stepWhileTheMapOfPairsFills(benchmark::State& state) {
  ui::MainWindow window(recordedLapProfile());
  window.resize(kWindow);
  window.findChild<QTabWidget*>()->setCurrentIndex(kLap);
  window.show();
  auto* bar = window.findChild<ui::LapPage*>()->findChild<QTabBar*>();
  for (int i = 0; i < bar->count(); ++i)
    if (bar->tabText(i) == QLatin1String("Pairs")) bar->setCurrentIndex(i);
  PaintWatch watch(window.findChild<ui::PairMap*>());
  QSpinBox* box = rearTeeth(window);
  timeSteps(state, watch, [&](int i) { box->setValue(kRest[static_cast<std::size_t>(i) % kRest.size()]); });
}

/// The same while the largest ladder is worked out on all cores, over and over.
void stepWhileALadderFills(benchmark::State& state) {
  ui::BackgroundLane lane;
  ui::LadderStudy study(lane);
  const LadderRange largest{9, 24, 25, 70};
  const LadderInput input = ladderInput(benchProfile());
  QObject::connect(
      &study, &ui::LadderStudy::finished, &study, [&] { study.start(input, largest); }, Qt::QueuedConnection);
  study.start(input, largest);
  stepInTheWindow(state, kRest, kSawtooth);
  study.cancel();
}

/// A step in the window while somebody looks at three choices in the counter view.
void stepInTheCounterView(benchmark::State& state) {
  ui::MainWindow window(benchProfile());
  window.resize(kWindow);
  window.show();
  ui::CounterView::open(window);
  auto* view = window.findChild<ui::CounterView*>();
  for (auto* button : view->findChildren<QPushButton*>())
    if (button->accessibleName() == QLatin1String("More Punch")) button->click();
  auto* bars = view->findChild<ui::SpeedBars*>();
  if (!bars || !bars->isVisible()) return state.SkipWithError("no choices in view");
  PaintWatch watch(bars);
  QSpinBox* box = rearTeeth(window);
  timeSteps(state, watch, [&](int i) { box->setValue(kRest[static_cast<std::size_t>(i) % kRest.size()]); });
}

void stepInTheBareChart(benchmark::State& state, const std::vector<int>& teeth) {
  ui::MainWindow window(benchProfile());
  window.resize(kWindow);
  window.show();
  QTest::qWait(kFramePauseMs);
  BareChart bare(*window.currentChart());
  QSpinBox* box = rearTeeth(window);
  std::vector<QList<QList<QPointF>>> points(teeth.size());
  std::vector<std::array<ui::AxisRange, 2>> ranges(teeth.size());
  for (std::size_t i = 0; i < teeth.size(); ++i) {
    box->setValue(teeth[i]);
    QTest::qWait(kFramePauseMs * 2);
    points[i] = pointsOf(*window.currentChart());
    ranges[i] = {window.currentChart()->xRange(), window.currentChart()->yRange()};
  }
  window.hide();
  PaintWatch watch(bare.view->viewport());
  timeSteps(state, watch, [&](int i) {
    const auto which = static_cast<std::size_t>(i) % teeth.size();
    for (std::size_t s = 0; s < bare.lines.size(); ++s)
      if (bare.lines[s]->points() != points[which][static_cast<qsizetype>(s)])
        bare.lines[s]->replace(points[which][static_cast<qsizetype>(s)]);
    if (ranges[0] == ranges[1]) return;
    bare.x->setTickInterval(ranges[which][0].step);
    bare.x->setRange(ranges[which][0].low, ranges[which][0].high);
    bare.y->setTickInterval(ranges[which][1].step);
    bare.y->setRange(ranges[which][1].low, ranges[which][1].high);
  });
}

/// As many charts with as many lines, and as many spin boxes and labels, as the program's window.
class BareTwin : public QWidget {
 public:
  BareTwin() {
    constexpr int kCharts = 3, kLines = 6, kBoxes = 31, kLabelsPerBox = 2;
    auto* column = new QVBoxLayout(this);
    auto* tabs = new QTabWidget;
    for (int c = 0; c < kCharts; ++c) {
      auto* chart = new QChart;
      chart->legend()->hide();
      auto* view = new QChartView(chart);
      view->setRenderHint(QPainter::Antialiasing);
      for (int i = 0; i < kLines; ++i) {
        auto* series = new QLineSeries(chart);
        for (int p = 0; p < 12; ++p) series->append(p, p % 2 ? p : p + i);
        chart->addSeries(series);
      }
      chart->createDefaultAxes();
      tabs->addTab(view, QStringLiteral("chart"));
      if (c == 0) view_ = view;
    }
    column->addWidget(tabs, 1);
    auto* row = new QHBoxLayout;
    for (int i = 0; i < kBoxes; ++i) {
      auto* station = new QVBoxLayout;
      station->addWidget(new QSpinBox);
      for (int l = 0; l < kLabelsPerBox; ++l) station->addWidget(new QLabel(QStringLiteral("1.955")));
      row->addLayout(station);
    }
    column->addLayout(row);
  }
  QWidget* viewport() { return view_->viewport(); }

 private:
  QChartView* view_;
};

const QString kStart = QStringLiteral("--start=");

/// A program of its own that ends once its window has been painted: what a person waits for after the double
/// click.
int paintOnce(const QString& which) {
  std::unique_ptr<QWidget> window;
  QWidget* viewport = nullptr;
  if (which == QLatin1String("bare")) {
    auto twin = std::make_unique<BareTwin>();
    viewport = twin->viewport();
    window = std::move(twin);
  } else {
    auto ours = std::make_unique<ui::MainWindow>(
        which == QLatin1String("window") ? workedExample() : *loadProfile(which.toStdString()));
    viewport = ours->currentChart()->viewport();
    window = std::move(ours);
  }
  window->resize(kWindow);
  PaintWatch watch(viewport);
  window->show();
  watch.waitFor();
  std::fputs("painted\n", stdout);
  std::fflush(stdout);
  std::_Exit(0);
}

void benchSheetAsPdf(benchmark::State& state) {
  const Profile profile = workedExample();
  const ui::SheetInput input{
      .profile = profile, .plan = std::make_shared<const Plan>(plan(profile)), .units = ui::UnitsShown()};
  for (auto _ : state) {
    QBuffer out;
    out.open(QIODevice::WriteOnly);
    if (ui::writePdf(ui::makeSheet(ui::SheetKind::Bench, input), QPageSize(QPageSize::A4), out)) std::abort();
    benchmark::DoNotOptimize(out.size());
  }
}

void start(benchmark::State& state, const QString& which) {
  std::vector<double> seconds;
  for (auto _ : state) {
    QProcess program;
    QElapsedTimer clock;
    clock.start();
    program.start(QCoreApplication::applicationFilePath(), {kStart + which});
    program.waitForReadyRead();
    seconds.push_back(1e-9 * static_cast<double>(clock.nsecsElapsed()));
    state.SetIterationTime(seconds.back());
    program.waitForFinished();
  }
  addPercentile(state, seconds);
}

/// The double click on a bike's file.
void openAFile(benchmark::State& state, Profile (*make)()) {
  const QTemporaryDir folder;
  const QString file = folder.filePath(QStringLiteral("one.bike.json"));
  saveProfile(make(), file.toStdString());
  start(state, file);
}

BENCHMARK_CAPTURE(stepInTheBareChart, axes_at_rest, kRest)
    ->UseManualTime()
    ->Iterations(120)
    ->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(stepInTheWindow, axes_at_rest, kRest, kSawtooth)
    ->UseManualTime()
    ->Iterations(120)
    ->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(stepInTheBareChart, axes_move, kMove)
    ->UseManualTime()
    ->Iterations(120)
    ->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(stepInTheWindow, axes_move, kMove, kSawtooth)
    ->UseManualTime()
    ->Iterations(120)
    ->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(stepInTheWindow, pull_in_view, kRest, kPull)
    ->UseManualTime()
    ->Iterations(120)
    ->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(stepInTheWindow, run_in_view, kRest, kRun)
    ->UseManualTime()
    ->Iterations(120)
    ->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(stepInTheWindow, chain_run_in_view, kRest, kChainRun)
    ->UseManualTime()
    ->Iterations(120)
    ->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(stepInTheWindow, ladder_in_view, kRest, kLadder)
    ->UseManualTime()
    ->Iterations(120)
    ->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(stepInTheWindow, lap_in_view, kRest, kLap)
    ->UseManualTime()
    ->Iterations(120)
    ->Unit(benchmark::kMillisecond);
BENCHMARK(stepWhileTheMapOfPairsFills)->UseManualTime()->Iterations(120)->Unit(benchmark::kMillisecond);
BENCHMARK(stepInTheRecordedLap)->UseManualTime()->Iterations(120)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(stepInTheWindow, compare_in_view, kRest, kCompare)
    ->UseManualTime()
    ->Iterations(120)
    ->Unit(benchmark::kMillisecond);
BENCHMARK(stepInTheCounterView)->UseManualTime()->Iterations(120)->Unit(benchmark::kMillisecond);
BENCHMARK(stepWhileALadderFills)->UseManualTime()->Iterations(120)->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(openAFile, bare, workedExample)
    ->UseManualTime()
    ->Iterations(30)
    ->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(openAFile, with_2000_records, profileWithRecords)
    ->UseManualTime()
    ->Iterations(30)
    ->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(start, bare_twin, QStringLiteral("bare"))
    ->UseManualTime()
    ->Iterations(30)
    ->Unit(benchmark::kMillisecond);
BENCHMARK_CAPTURE(start, window, QStringLiteral("window"))
    ->UseManualTime()
    ->Iterations(30)
    ->Unit(benchmark::kMillisecond);
BENCHMARK(benchSheetAsPdf)->Iterations(20)->Unit(benchmark::kMillisecond);

}  // namespace

int main(int argc, char** argv) {
  if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
  QStandardPaths::setTestModeEnabled(true);
  QApplication application(argc, argv);
  QCoreApplication::setOrganizationName(QStringLiteral("LayshaftBench"));
  ui::preferences::setHintsDismissed(true);
  const QString word = application.arguments().value(1);
  if (word.startsWith(kStart)) return paintOnce(word.mid(kStart.size()));
  benchmark::Initialize(&argc, argv);
  benchmark::RunSpecifiedBenchmarks();
  return 0;
}
