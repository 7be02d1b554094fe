// SPDX-License-Identifier: GPL-3.0-or-later
// What is painted under the palettes that desktops bring, measured in the pictures.
#include <QCheckBox>
#include <QRadioButton>
#include <algorithm>
#include <map>

#include "tests/ui/drive_line.h"
#include "tests/ui/palettes.h"
#include "ui/charts/contrast.h"
#include "ui/charts/readout.h"
#include "ui/charts/sawtooth_chart.h"
#include "ui/editors/new_bike_dialog.h"
#include "ui/window/main_window.h"

namespace layshaft::test {
namespace {

using ui::contrast;

/// Letters are painted at four times the size, so that they have pixels of their full colour.
constexpr double kScale = 4.0;

QImage grabbed(QWidget& widget, const QRect& part) {
  QImage picture((QSizeF(part.size()) * kScale).toSize(), QImage::Format_RGB32);
  picture.setDevicePixelRatio(kScale);
  picture.fill(widget.palette().color(QPalette::Window));
  widget.render(&picture, QPoint(), QRegion(part));
  return picture;
}

QImage grabbed(QWidget& widget) {
  return grabbed(widget, widget.rect());
}

/// The colour of most pixels.
QColor groundOf(const QImage& picture) {
  std::map<QRgb, int> counts;
  for (int y = 0; y < picture.height(); ++y)
    for (int x = 0; x < picture.width(); ++x) ++counts[picture.pixel(x, y)];
  return QColor(std::max_element(counts.begin(), counts.end(), [](const auto& a, const auto& b) {
                  return a.second < b.second;
                })->first);
}

/// How much the ink stands out of its ground: the strongest of what covers more than a few pixels.
double inkContrast(const QImage& picture, const QColor& ground) {
  std::map<QRgb, int> counts;
  for (int y = 0; y < picture.height(); ++y)
    for (int x = 0; x < picture.width(); ++x) ++counts[picture.pixel(x, y)];
  constexpr int kFew = 8;
  double most = 1.0;
  for (const auto& [colour, count] : counts)
    if (count > kFew) most = std::max(most, contrast(QColor(colour), ground));
  return most;
}

double inkContrast(const QImage& picture) {
  return inkContrast(picture, groundOf(picture));
}

std::string saidOf(const QLabel& label) {
  return label.text().toStdString();
}

class UnderEveryPalette : public testing::TestWithParam<int>, FreshSettings {
 protected:
  NamedPalette given_ = palettes()[static_cast<std::size_t>(GetParam())];
  UnderPalette under_{given_.palette};
};

TEST_P(UnderEveryPalette, LabelsOfWindowDriveLineAndFormsAreRead) {
  Window window(workedExample());
  ui::NewBikeDialog dialog({});
  dialog.show();
  std::vector<QWidget*> parents{&*window, &dialog};
  int seen = 0;
  for (QWidget* parent : parents)
    for (auto* label : parent->findChildren<QLabel*>()) {
      if (!label->isVisible() || label->text().isEmpty() || label->size().isEmpty() ||
          !label->pixmap().isNull())
        continue;
      ++seen;
      EXPECT_GE(inkContrast(grabbed(*label)), 4.5) << given_.name << ": " << saidOf(*label);
    }
  EXPECT_GT(seen, 40);
}

TEST_P(UnderEveryPalette, StocksSideOfTheDriveLineIsReadToo) {
  Window window(workedExample());
  window->driveLine().setSide(ui::Side::Stock);
  int seen = 0;
  for (auto* label : window->driveLine().findChildren<QLabel*>()) {
    if (!label->isVisible() || label->text().isEmpty() || label->size().isEmpty()) continue;
    ++seen;
    QImage picture =
        grabbed(window->driveLine(), QRect(label->mapTo(&window->driveLine(), QPoint()), label->size()));
    EXPECT_GE(inkContrast(picture), 4.5) << given_.name << ": " << saidOf(*label);
  }
  EXPECT_GT(seen, 20);
}

TEST_P(UnderEveryPalette, WhichSideIsEditedIsSeenAtOnce) {
  Window window(workedExample());
  for (const ui::Side edited : {ui::Side::Proposed, ui::Side::Stock}) {
    window->driveLine().setSide(edited);
    QCoreApplication::processEvents();
    // Inside the outline. A ground may shade from top to bottom: what counts is beside the words.
    const auto side = [&](const char* name) {
      auto& button = control<QAbstractButton>(window->driveLine(), QString::fromUtf8(name));
      return grabbed(button, button.rect().adjusted(4, 4, -4, -4));
    };
    const auto beside = [](const QImage& picture) { return picture.pixelColor(4, picture.height() / 2); };
    const QImage proposed = side("Edit the proposal"), stock = side("Edit stock");
    EXPECT_GE(contrast(beside(proposed), beside(stock)), 3.0) << given_.name;
    for (const QImage& picture : {proposed, stock})
      EXPECT_GE(inkContrast(picture, beside(picture)), 4.5) << given_.name;
  }
}

TEST_P(UnderEveryPalette, EveryLineOfTheReadoutIsRead) {
  Window window(workedExample());
  ui::Readout& readout = window->readout();
  const QImage picture = grabbed(readout);
  // Row by row: what has ink has enough of it.
  const QColor ground = groundOf(picture);
  EXPECT_EQ(ground, QApplication::palette().color(QPalette::Window));
  std::vector<QImage> lines;
  int from = -1;
  for (int y = 0; y < picture.height(); ++y) {
    bool ink = false;
    for (int x = 0; x < picture.width() && !ink; ++x) ink = picture.pixelColor(x, y) != ground;
    if (ink && from < 0) from = y;
    if (!ink && from >= 0) {
      if (y - from > 12) lines.push_back(picture.copy(0, from, picture.width(), y - from));
      from = -1;
    }
  }
  EXPECT_GE(lines.size(), 4U);
  for (const QImage& line : lines) EXPECT_GE(inkContrast(line), 4.5) << given_.name;
}

TEST_P(UnderEveryPalette, TheChartsNumbersAxesAndRingAreSeen) {
  Window window(workedExample());
  ui::LiveChart& chart = *window->currentChart();
  QRect plot;
  QObject::connect(&chart, &ui::LiveChart::laidOut, &chart,
                   [&plot](const QRectF& area) { plot = area.toRect(); });
  chart.ensureLaidOut();
  QWidget& view = *chart.viewport();
  view.update();
  const QImage numbers = grabbed(view, QRect(0, plot.top() + 4, plot.left() - 6, plot.height() - 4));
  EXPECT_EQ(groundOf(numbers), QApplication::palette().color(QPalette::Base)) << given_.name;
  EXPECT_GE(inkContrast(numbers), 4.5) << given_.name;
  const QImage axis = grabbed(view, QRect(plot.left() - 3, plot.bottom() - 40, 6, 12));
  EXPECT_GE(inkContrast(axis), 3.0) << given_.name;
  chart.setFocus(Qt::TabFocusReason);
  QCoreApplication::processEvents();
  ASSERT_TRUE(chart.hasFocus());
  EXPECT_GE(inkContrast(grabbed(view, QRect(0, 20, 5, 60))), 3.0) << given_.name;
}

TEST_P(UnderEveryPalette, UntickedBoxesFieldsAndFocusRingsAreSeen) {
  QWidget window;
  auto* column = new QVBoxLayout(&window);
  auto* box = new QCheckBox;
  auto* round = new QRadioButton;
  auto* line = new QLineEdit;
  auto* spin = new QSpinBox;
  auto* combo = new QComboBox;
  auto* button = new QPushButton;
  auto* readout = new ui::Readout;
  for (QWidget* widget : std::initializer_list<QWidget*>{box, round, line, spin, combo, button, readout})
    column->addWidget(widget);
  showActive(window);
  button->setFocus();
  // The edges alone: the middle of an outline's left side, with the window beside it.
  const auto edge = [&](QWidget& widget) {
    const QRect at(widget.mapTo(&window, QPoint()), widget.size());
    return grabbed(window, QRect(at.left() - 2, at.center().y() - 2, 5, 4));
  };
  for (QWidget* widget : std::initializer_list<QWidget*>{line, spin, combo, button})
    EXPECT_GE(inkContrast(edge(*widget)), 3.0) << given_.name << ": " << widget->metaObject()->className();
  for (QWidget* widget : std::initializer_list<QWidget*>{box, round})
    EXPECT_GE(inkContrast(grabbed(*widget)), 3.0) << given_.name << ": " << widget->metaObject()->className();
  readout->setFocus(Qt::TabFocusReason);
  window.setAttribute(Qt::WA_KeyboardFocusChange);
  EXPECT_GE(inkContrast(grabbed(*readout, QRect(0, 10, 6, 20))), 3.0) << given_.name;
}

INSTANTIATE_TEST_SUITE_P(Palettes, UnderEveryPalette, testing::Range(0, 6));

/// The desktop may change its palette at any time; what is open follows it and stays readable.
TEST(ReadablePalettes, AnOpenWindowFollowsTheDesktop) {
  Window window(workedExample());
  QApplication::setPalette(darkWithoutPlaceholder());
  QCoreApplication::processEvents();
  const QPalette now = window->palette();
  EXPECT_EQ(now.color(QPalette::Window), darkWithoutPlaceholder().color(QPalette::Window));
  EXPECT_GE(contrast(now.color(QPalette::PlaceholderText), now.color(QPalette::Window)), 4.5);
  EXPECT_TRUE(window->currentChart()->colours().dark);
  ui::applyAppearance(ui::Appearance::Desktop);
  QCoreApplication::processEvents();
  EXPECT_FALSE(window->currentChart()->colours().dark);
}

}  // namespace
}  // namespace layshaft::test
