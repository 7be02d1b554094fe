// SPDX-License-Identifier: GPL-3.0-or-later
//
// Charts and the chain drawing as who listens gets them: a graphic, a description, a crosshair that is a
// value.
#include "ui/charts/readable_picture.h"

#include <QAccessible>
#include <QTabWidget>

#include "tests/ui/support.h"
#include "ui/charts/chain_drawing.h"
#include "ui/document/preferences.h"
#include "ui/words/numbers.h"

namespace layshaft::test {
namespace {

struct Metric {
  Metric() { ui::preferences::setUnits(ui::UnitsShown(ui::UnitSystem::Metric)); }
};

class ReadPictures : public testing::Test, FreshSettings, Metric {
 protected:
  ReadPictures() : window_(workedExample()) { QTest::qWait(50); }
  ui::LiveChart& chartOf(const QString& page) {
    auto* tabs = window_->findChild<QTabWidget*>();
    for (int i = 0; i < tabs->count(); ++i)
      if (tabs->tabText(i) == page) tabs->setCurrentIndex(i);
    QTest::qWait(30);
    return *window_->currentChart();
  }
  static QAccessibleInterface& read(QWidget& widget) {
    return *QAccessible::queryAccessibleInterface(&widget);
  }
  static QString description(QWidget& widget) { return read(widget).text(QAccessible::Description); }

  Window window_;
};

TEST_F(ReadPictures, EachChartIsAGraphicThatSaysWhatItShowsAndWhereTheNumbersAre) {
  for (const char* page : {"Sawtooth", "Pull", "Acceleration"}) {
    ui::LiveChart& chart = chartOf(page);
    EXPECT_EQ(read(chart).role(), QAccessible::Chart) << page;
    EXPECT_EQ(read(chart).childCount(), 0) << page;
    const QString words = description(chart);
    EXPECT_TRUE(words.contains("Stock " + ui::teethPair(plan(window_.profile()).stock.setup) + ", proposed "))
        << page;
    EXPECT_TRUE(words.contains("Show Data as a Table")) << page << words.toStdString();
    EXPECT_FALSE(words.contains("%1")) << page;
  }
  const QString saw = description(chartOf("Sawtooth"));
  const Plan shown = plan(window_.profile());
  for (const SetupPlan* setup : {&shown.stock, &shown.proposed})
    EXPECT_TRUE(saw.contains(ui::number(*setup->gearing.gears.back().speedAtRevLimitMps * 3.6, 0) +
                             " km/h in gear 6"))
        << saw.toStdString();
  EXPECT_TRUE(saw.contains("rev limit of 15,200 rpm"));
}

TEST_F(ReadPictures, TheChainDrawingIsAGraphicThatSaysWhatItShows) {
  auto* tabs = window_->findChild<QTabWidget*>();
  for (int i = 0; i < tabs->count(); ++i)
    if (tabs->tabText(i) == "Chain") tabs->setCurrentIndex(i);
  QTest::qWait(30);
  auto* drawing = window_->findChild<ui::ChainDrawing*>();
  ASSERT_TRUE(drawing);
  EXPECT_EQ(read(*drawing).role(), QAccessible::Graphic);
  EXPECT_EQ(read(*drawing).valueInterface(), nullptr) << "it has no crosshair";
  const QString words = description(*drawing);
  EXPECT_TRUE(words.contains("links") && words.contains("Centres") && words.contains("one turn of the rear"))
      << words.toStdString();
  EXPECT_TRUE(words.contains("Show Data as a Table"));
}

TEST_F(ReadPictures, TheDescriptionFollowsTheProposal) {
  ui::LiveChart& chart = chartOf("Sawtooth");
  const QString before = description(chart);
  QTest::keyClick(&control<QAbstractSpinBox>(*window_, "Rear teeth"), Qt::Key_Up);
  QTest::qWait(30);
  EXPECT_NE(description(chart), before);
}

TEST_F(ReadPictures, TheCrosshairIsAValueThatKeysMoveAndWhatItReadsIsTheDescription) {
  for (const char* page : {"Sawtooth", "Pull", "Acceleration"}) {
    ui::LiveChart& chart = chartOf(page);
    const QString whole = description(chart);
    chart.setFocus();
    QTest::keyClick(&chart, Qt::Key_Right);
    QAccessibleValueInterface* value = read(chart).valueInterface();
    ASSERT_TRUE(value) << page;
    const double first = value->currentValue().toDouble();
    EXPECT_EQ(first, chart.crosshairX()) << page;
    const QString firstRead = read(chart).text(QAccessible::Value);
    EXPECT_TRUE(firstRead.contains("Stock ") && firstRead.contains("Proposed ")) << firstRead.toStdString();
    EXPECT_EQ(description(chart), firstRead) << page;
    QTest::keyClick(&chart, Qt::Key_Right);
    EXPECT_NEAR(value->currentValue().toDouble() - first, value->minimumStepSize().toDouble(), 1e-9) << page;
    EXPECT_NE(read(chart).text(QAccessible::Value), firstRead) << page;
    EXPECT_EQ(value->minimumValue().toDouble(), chart.xRange().low) << page;
    EXPECT_EQ(value->maximumValue().toDouble(), chart.xRange().high) << page;
    value->setCurrentValue(first);
    EXPECT_EQ(chart.crosshairX(), first) << "who listens can move it too";
    QTest::keyClick(&chart, Qt::Key_Escape);
    EXPECT_EQ(read(chart).text(QAccessible::Value), "") << page;
    EXPECT_EQ(description(chart), whole) << page << ": without a crosshair it is the whole again";
  }
}

TEST_F(ReadPictures, APointerThatPassesByIsNotReadOut) {
  ui::LiveChart& chart = chartOf("Sawtooth");
  control<QAbstractSpinBox>(*window_, "Rear teeth").setFocus();
  const QString whole = description(chart);
  chart.setCrosshair(120.0);
  EXPECT_EQ(description(chart), whole);
}

}  // namespace
}  // namespace layshaft::test
