// SPDX-License-Identifier: GPL-3.0-or-later
#include <QAction>
#include <QDockWidget>
#include <QGraphicsTextItem>
#include <QRadioButton>
#include <QTabWidget>
#include <QTableWidget>

#include "core/traces.h"
#include "tests/ui/support.h"
#include "ui/document/preferences.h"
#include "ui/editors/columns_table.h"
#include "ui/pages/pull_page.h"
#include "ui/pages/run_page.h"
#include "ui/pages/side_scroll.h"
#include "ui/words/figure_rows.h"
#include "ui/words/numbers.h"
#include "ui/words/pull_notes.h"
#include "ui/words/road_words.h"
#include "ui/words/text_report.h"

namespace layshaft::test {
namespace {

/// The pages that show what a change does on the road, in a window.
class RoadPages : public testing::Test, FreshSettings {
 protected:
  RoadPages() { ui::preferences::setUnits(ui::UnitsShown(ui::UnitSystem::Metric)); }

  void open(Profile profile, const QString& page) {
    window_ = std::make_unique<Window>(std::move(profile));
    auto* tabs = (*window_)->findChild<QTabWidget*>();
    for (int i = 0; i < tabs->count(); ++i)
      if (tabs->tabText(i) == page) tabs->setCurrentIndex(i);
    QTest::qWait(50);
    chart_ = (*window_)->currentChart();
  }
  void press(const QString& name) {
    for (auto* button :
         (*window_)->currentChart()->parentWidget()->parentWidget()->findChildren<QRadioButton*>())
      if (button->text() == name) return button->click();
    throw std::runtime_error("no switch " + name.toStdString());
  }
  Plan shown() const { return plan(window_->profile()); }
  static Profile withoutCurve() {
    Profile profile = workedExample();
    profile.bike.engine.torqueCurve.reset();
    return profile;
  }
  QAbstractSpinBox& field(const char* name) {
    return control<QAbstractSpinBox>(**window_, QString::fromUtf8(name));
  }
  /// The field of that name beside the picture in view.
  void step(const char* name, Qt::Key key) {
    for (auto* box : (*window_)->findChildren<QAbstractSpinBox*>())
      if (box->isVisible() && isNamed(*box, QString::fromUtf8(name))) {
        box->setFocus();
        return QTest::keyClick(box, key);
      }
    throw std::runtime_error(std::string("no field in view named ") + name);
  }
  QString cell(int row, int column) {
    return control<QTableWidget>(**window_, "Acceleration figures").item(row, column)->text();
  }

  std::unique_ptr<Window> window_;
  ui::LiveChart* chart_ = nullptr;
};

TEST_F(RoadPages, ThePullLineFollowsTheCurvesOfTheGears) {
  open(workedExample(), "Pull");
  const auto points = chart_->lines().back()->points();
  const auto followed = pullCurves(shown().proposed).followed;
  ASSERT_EQ(static_cast<std::size_t>(points.size()), followed.size());
  for (std::size_t i = 0; i < followed.size(); ++i) {
    EXPECT_NEAR(points[static_cast<qsizetype>(i)].x(), followed[i].speedMps * 3.6, 1e-9);
    EXPECT_NEAR(points[static_cast<qsizetype>(i)].y(), followed[i].forceN, 1e-9);
  }
}

TEST_F(RoadPages, PullSwitchesToAccelerationAndPower) {
  open(workedExample(), "Pull");
  press("Acceleration, g");
  double most = 0;
  for (const QPointF& p : chart_->lines().back()->points()) most = std::max(most, p.y());
  EXPECT_GT(most, 0.5);
  EXPECT_LT(most, 2.0) << "in g";
  press("Power at the wheel");
  most = 0;
  for (const QPointF& p : chart_->lines().back()->points()) most = std::max(most, p.y());
  // 61.5 N·m at 13,000 rpm is 83.7 kW at the crank, of which 91 % reach the wheel.
  EXPECT_NEAR(most, 0.91 * 83.9, 1.0);
}

TEST_F(RoadPages, NothingBesideThePullIsCut) {
  for (const auto system : {ui::UnitSystem::Metric, ui::UnitSystem::Imperial}) {
    ui::preferences::setUnits(ui::UnitsShown(system));
    open(sampleBike("club-600"), "Pull");
    auto* scroll = (*window_)->findChild<ui::SideScroll*>();
    ASSERT_TRUE(scroll);
    EXPECT_TRUE(soon([&] { return scroll->viewport()->width() >= scroll->widget()->width(); }));
    EXPECT_GE(scroll->widget()->width(), scroll->widget()->minimumSizeHint().width());
    for (auto* box : scroll->findChildren<QAbstractSpinBox*>()) {
      const QRect place(box->mapTo(scroll->viewport(), QPoint()), box->size());
      EXPECT_LE(place.right(), scroll->viewport()->rect().right()) << box->accessibleName().toStdString();
    }
    EXPECT_EQ((*window_)->width(), 1280);
    EXPECT_GE(chart_->width(), 700) << "most of the screen is the picture's";
  }
}

TEST_F(RoadPages, TheAxesWriteThousandsApart) {
  open(sampleBike("club-600"), "Pull");
  QStringList texts;
  for (auto* item : chart_->scene()->items())
    if (auto* text = qgraphicsitem_cast<QGraphicsTextItem*>(item)) texts << text->toPlainText();
  EXPECT_TRUE(texts.contains("2,500") || texts.contains("2,000")) << texts.join(' ').toStdString();
}

TEST_F(RoadPages, AStepChangesPullAndRunAtOnce) {
  for (const char* page : {"Pull", "Acceleration"}) {
    open(workedExample(), page);
    const auto before = chart_->lines().back()->points();
    const auto stock = chart_->lines().front()->points();
    QTest::keyClick(&field("Rear teeth"), Qt::Key_Up);
    EXPECT_TRUE(soon([&] { return chart_->lines().back()->points() != before; })) << page;
    EXPECT_EQ(chart_->lines().front()->points(), stock) << page;
  }
}

TEST_F(RoadPages, SlopeAndWindBesideThePictureChangeIt) {
  open(workedExample(), "Pull");
  const double flat = shown().proposed.road.topSpeed->speedMps;
  step("Slope", Qt::Key_Up);
  EXPECT_GT(window_->profile().ride->slopePercent.value_or(0.0), 0.0);
  EXPECT_LT(shown().proposed.road.topSpeed->speedMps, flat);
}

TEST_F(RoadPages, TheSurfacesOwnGripCanBeTyped) {
  open(sampleBike("motocross-450"), "Pull");
  const auto before = window_->profile().ride->surfaces;
  for (auto* box : (*window_)->findChildren<QDoubleSpinBox*>())
    if (box->isVisible() && isNamed(*box, "Surface grip")) {
      typeInto(*box, "0.95");
      QTest::keyClick(box, Qt::Key_Return);
    }
  EXPECT_EQ(window_->profile().ride->surfaces.at(Surface::Loam).grip, 0.95);
  EXPECT_EQ(shown().road.grip, 0.95);
  (*window_)->document().undoStack().undo();
  EXPECT_EQ(window_->profile().ride->surfaces, before);
}

TEST_F(RoadPages, TheSurfacesWheelSlipCanBeTyped) {
  open(sampleBike("motocross-450"), "Pull");
  for (auto* box : (*window_)->findChildren<QDoubleSpinBox*>())
    if (box->isVisible() && isNamed(*box, "Wheel slip")) {
      EXPECT_TRUE(box->toolTip().contains("5 % on hardpack, 10 % on loam, 15 % on sand"));
      typeInto(*box, "12");
      QTest::keyClick(box, Qt::Key_Return);
    }
  EXPECT_EQ(window_->profile().ride->surfaces.at(Surface::Loam).slipPercent, 12);
  EXPECT_NEAR(shown().road.slip, 0.12, 1e-12);
}

TEST_F(RoadPages, ARunEndsWhereItWasAskedTo) {
  open(workedExample(), "Acceleration");
  EXPECT_NEAR(chart_->lines().back()->points().back().x(), *shown().proposed.road.run.quarterMileS, 1e-6);
  press("Straight");
  EXPECT_NEAR(chart_->lines().back()->points().back().x(), shown().proposed.road.run.drive->timeS, 1e-6);
  EXPECT_NEAR(chart_->lines().back()->points().front().y(), 80, 1e-9);
  press("Distance");
  EXPECT_NEAR(chart_->lines().back()->points().back().x(), 400, 1e-6);
}

TEST_F(RoadPages, TheDriveIsLive) {
  open(workedExample(), "Acceleration");
  step("Straight", Qt::Key_Up);
  EXPECT_EQ(window_->profile().ride->drive->lengthM, 405);
  auto& words = control<QLabel>(**window_, "The straight in words");
  EXPECT_TRUE(soon([&] { return words.text().startsWith("405 m straight from 80 km/h."); }))
      << words.text().toStdString();
  EXPECT_TRUE(words.text().contains("Stock: 1st to 4th, 3 shifts"));
  EXPECT_TRUE(
      words.text().endsWith("1/4 mile: stock starts in 1st, 3 shifts; proposed starts in 1st, 3 shifts."))
      << words.text().toStdString();
  step("Straight", Qt::Key_Up);
  EXPECT_EQ((*window_)->document().undoStack().count(), 1) << "a run of steps is one";
}

TEST_F(RoadPages, APageChosenBeforeTheWindowIsShownHasItsFieldsFilled) {
  ui::MainWindow window(workedExample());
  window.findChild<QTabWidget*>()->setCurrentIndex(2);
  window.show();
  EXPECT_EQ(control<QDoubleSpinBox>(window, "Straight").value(), 400);
}

TEST_F(RoadPages, TheTableSaysWhatTheReportSays) {
  open(workedExample(), "Acceleration");
  const RunFigures run = shown().stock.road.run;
  EXPECT_EQ(cell(0, 0), "0–100 km/h, s");
  EXPECT_EQ(cell(0, 1), ui::number(*run.zeroTo100KmhS, 2));
  const auto quarterMile = ui::comparedTexts(run.quarterMileS, shown().proposed.road.run.quarterMileS, 2);
  EXPECT_EQ(cell(3, 1), quarterMile.stock) << "as many decimals as the difference needs";
  EXPECT_TRUE(cell(0, 4).startsWith("±")) << "the rollout is an estimate";
}

TEST_F(RoadPages, AMeasuredRolloutHasNoBand) {
  Profile profile = workedExample();
  profile.stock.options.rolloutMm = 1940;
  open(profile, "Acceleration");
  EXPECT_EQ(cell(0, 4), "");
}

TEST_F(RoadPages, LimiterTimeIsSaid) {
  Profile profile = workedExample();
  profile.proposed.rearTeeth = rear(70);
  profile.ride->drive->lengthM = 900;
  EXPECT_TRUE(ui::driveWords(plan(profile), ui::UnitsShown()).contains("s on the limiter"));
}

TEST_F(RoadPages, APageThatLacksDataNamesItAndLeadsThere) {
  for (const char* page : {"Pull", "Acceleration"}) {
    open(withoutCurve(), page);
    auto* panel = (*window_)->findChild<QTabWidget*>()->currentWidget()->findChild<ui::LackingPanel*>();
    ASSERT_TRUE(panel && panel->isVisible()) << page;
    EXPECT_TRUE(panel->findChild<QLabel*>()->text().contains("the torque curve")) << page;
    panel->findChild<QPushButton*>()->click();
    EXPECT_TRUE(soon([&] {
      auto* details = (*window_)->findChild<QDockWidget*>();
      return details && details->windowTitle() == "Bike Details" && details->isVisible();
    })) << page;
    EXPECT_TRUE(soon([] {
      auto* table = qobject_cast<ui::ColumnsTable*>(QApplication::focusWidget());
      return table && table->accessibleName() == "Torque curve" && table->currentRow() == 0;
    })) << page
        << ": the cursor is where the typing begins";
  }
}

TEST_F(RoadPages, WhatWasTakenForWhatIsMissingIsSaid) {
  Profile profile = workedExample();
  profile.bike.chassis->drivetrainEfficiency.reset();
  profile.bike.chassis->riderMassKg.reset();
  const QString words = ui::assumedWords(*plan(profile).pullBike, ui::UnitsShown());
  EXPECT_TRUE(words.contains("drive-train efficiency 0.9")) << words.toStdString();
  EXPECT_TRUE(words.contains("rider's mass 75 kg")) << words.toStdString();
  EXPECT_EQ(ui::assumedWords(*plan(workedExample()).pullBike, ui::UnitsShown()), "");
}

TEST_F(RoadPages, TheTorqueBeyondTheCurveIsSaidToBeAssumed) {
  Profile profile = sampleBike("club-600");
  profile.bike.engine.torqueCurve = TorqueCurve::make({{4000, 50}, {9000, 60}, {13000, 55}}).value();
  const QString falling =
      "Beyond the curve's last point, 13,000 rpm, the torque is assumed to go on falling as it does there.";
  EXPECT_EQ(ui::pullNotes(plan(profile), ui::UnitsShown()), QStringList{falling});
  EXPECT_TRUE(ui::textReport(plan(profile), ui::UnitsShown()).contains('\n' + falling + '\n'));
  open(profile, "Pull");
  QStringList said;
  for (auto* label : (*window_)->findChildren<QLabel*>()) said << label->text();
  EXPECT_TRUE(said.join('|').contains(falling));
  profile.bike.engine.torqueCurve = TorqueCurve::make({{4000, 50}, {13000, 60}}).value();
  EXPECT_EQ(ui::pullNotes(plan(profile), ui::UnitsShown()),
            QStringList{"Beyond the curve's last point, 13,000 rpm, the torque is assumed to stay level."});
  EXPECT_EQ(ui::pullNotes(plan(sampleBike("club-600")), ui::UnitsShown()), QStringList{})
      << "its curve reaches the limit";
}

TEST_F(RoadPages, ASurfaceThatOverrulesTheFormOfRollingIsSaid) {
  Profile profile = sampleBike("club-600");
  profile.bike.chassis->rollingResistanceForm = RollingResistanceForm::SpeedDependent;
  profile.bike.chassis->tyrePressureBar = 2.5;
  profile.ride->surface = Surface::WetAsphalt;
  EXPECT_EQ(ui::pullNotes(plan(profile), ui::UnitsShown()), QStringList{});
  profile.ride->surfaces[Surface::WetAsphalt].rollingResistance = 0.018;
  EXPECT_EQ(
      ui::pullNotes(plan(profile), ui::UnitsShown()),
      QStringList{"The rolling resistance typed for wet asphalt, 0.018, counts instead of the one growing "
                  "with speed."});
}

/// A pull chart whose places can be asked for.
class OpenPullChart : public ui::PullChart {
 public:
  using PullChart::at;
};

/// How much of the proposal's colour stands in a picture's column, in pixels.
double blueIn(const QImage& picture, int x) {
  double ink = 0.0;
  for (int y = 0; y < picture.height(); ++y) {
    const QColor pixel = picture.pixelColor(x, y);
    ink += std::max(0, pixel.blue() - pixel.red()) / 178.0;  // of 0x0072b2
  }
  return ink;
}

TEST_F(RoadPages, TheAssumedPartOfThePullIsThin) {
  const auto picture = [](double lastPointRpm) {
    const Profile profile =
        bike({{"/bike/engine/torque_curve",
               Json{{{"rpm", 2000}, {"torque_nm", 50}}, {{"rpm", lastPointRpm}, {"torque_nm", 50}}}},
              {"/proposed", Json{{"rear_teeth", 52}}}});
    const auto planned = std::make_shared<const Plan>(plan(profile));
    OpenPullChart chart;
    chart.resize(900, 420);
    chart.usePalette(QPalette(Qt::white));
    chart.ensureLaidOut();
    chart.show(planned, ui::UnitsShown());
    QImage image(chart.size(), QImage::Format_ARGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    chart.renderInto(painter, image.rect());
    // Top gear alone turns these: at 7000 rpm the curve is given, at 9000 not always.
    const auto column = [&](double rpm) {
      return qRound(chart.at(planned->proposed.model->speedMps(rpm, 2) * 3.6, 0).x());
    };
    return std::pair{blueIn(image, column(7000)), blueIn(image, column(9000))};
  };
  const auto [given, alsoGiven] = picture(10000);
  EXPECT_NEAR(alsoGiven, given, 0.3);
  const auto [before, assumed] = picture(8000);
  EXPECT_NEAR(before, given, 0.3) << "as thick as ever up to the last point";
  EXPECT_GT(assumed, 0.5);
  EXPECT_LT(assumed, 0.75 * before);
}

/// A run chart that can be asked what stands under its crosshair.
class OpenRunChart : public ui::RunChart {
 public:
  using RunChart::crosshairRows;
};

TEST_F(RoadPages, EngineSpeedsUnderTheCrosshairAreThoseOfTheSlippingWheel) {
  Profile profile = sampleBike("club-600");
  profile.ride->surfaces[Surface::Asphalt].slipPercent = 10;
  const auto planned = std::make_shared<const Plan>(plan(profile));
  OpenRunChart chart;
  chart.resize(900, 420);
  chart.show(planned, ui::UnitsShown());
  const auto points = standingStartTrace(planned->proposed).points;
  int asked = 0;
  for (std::size_t i = 1; i < points.size(); ++i) {
    const RunPoint &from = points[i - 1], &to = points[i];
    if (from.gear != 3 || to.gear != 3 || to.speedMps <= from.speedMps) continue;
    const auto rows = chart.crosshairRows((from.timeS + to.timeS) / 2);
    EXPECT_EQ(rows.back().values[1],
              ui::number(planned->proposed.model->rpm((from.speedMps + to.speedMps) / 2, 2), 0));
    ++asked;
  }
  EXPECT_GE(asked, 3);
}

TEST_F(RoadPages, EveryFieldThatAStudyMayLackHasAName) {
  const PullBike bare = pullBike(Bike{}, Ride{});
  for (const auto* lacks : {&bare.forceLacks, &bare.resistanceLacks, &bare.boundsLack})
    for (const QString& name : ui::fieldNames(*lacks)) EXPECT_FALSE(name.contains('.')) << name.toStdString();
}

TEST_F(RoadPages, ALeanAngleGivesTheSawASecondScale) {
  open(workedExample(), "Sawtooth");
  Profile upright = workedExample();
  upright.ride->leanDeg.reset();
  const QImage leaned = chart_->grab().toImage();
  open(upright, "Sawtooth");
  EXPECT_NE(chart_->grab().toImage(), leaned);
  EXPECT_FALSE(shown().proposed.leanFactor);
}

TEST_F(RoadPages, TheReadoutShowsTheFiguresThatArePicked) {
  open(workedExample(), "Sawtooth");
  ASSERT_TRUE((*window_)->readout().text().contains("Top speed ("));
  for (const char* name : {"Top speed and what limits it", "Quarter mile"})
    for (auto* action : (*window_)->findChildren<QAction*>())
      if (action->text() == name) action->trigger();
  EXPECT_TRUE((*window_)->readout().text().contains("1/4 mile"));
  EXPECT_FALSE((*window_)->readout().text().contains("Top speed ("));
  EXPECT_EQ(ui::preferences::figures().back(), ui::Figure::QuarterMile);
}

TEST_F(RoadPages, PicturesAndNumbersOfEachPageCanBeSaved) {
  QTemporaryDir folder;
  for (const char* page : {"Pull", "Acceleration"}) {
    open(workedExample(), page);
    for (const char* ending : {"png", "svg", "pdf"}) {
      const QString file = folder.filePath(QStringLiteral("%1.%2").arg(page, ending));
      EXPECT_EQ(chart_->savePicture(file), std::nullopt);
      EXPECT_GT(QFileInfo(file).size(), 2000);
    }
    auto* shownPage = qobject_cast<ui::Page*>((*window_)->findChild<QTabWidget*>()->currentWidget());
    EXPECT_GT(shownPage->csv().count('\n'), 20) << page;
    const auto rows = shownPage->numbers();
    ASSERT_GT(rows.size(), 5u) << page;
    for (const QStringList& row : rows) EXPECT_EQ(row.size(), rows[0].size()) << page;
  }
}

}  // namespace
}  // namespace layshaft::test
