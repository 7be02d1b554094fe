// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/measure_sketch.h"

#include <cmath>
#include <set>

#include "tests/ui/support.h"
#include "ui/charts/palette.h"
#include "ui/editors/bike_details.h"
#include "ui/words/field_table.h"

namespace layshaft::test {
namespace {

using ui::Measure;
using ui::MeasureSketch;

constexpr Measure kMeasures[] = {Measure::CentreDistance,    Measure::SwingarmLength,
                                 Measure::SwingarmAngle,     Measure::CountershaftAhead,
                                 Measure::CountershaftAbove, Measure::Rollout};

QPalette darkPalette() {
  return QPalette(QColor(230, 230, 230), QColor(35, 38, 41), QColor(60, 60, 60), QColor(20, 20, 20),
                  QColor(40, 40, 40), QColor(230, 230, 230), QColor(30, 32, 35));
}

QImage drawn(Measure measure, const QPalette& palette, double scale = 1.0) {
  MeasureSketch sketch(measure, "Name");
  sketch.setPalette(palette);
  sketch.resize(sketch.sizeHint());
  QImage image((QSizeF(sketch.size()) * scale).toSize(), QImage::Format_RGB32);
  image.setDevicePixelRatio(scale);
  image.fill(palette.window().color());
  sketch.render(&image, QPoint(), QRegion(), QWidget::DrawChildren);
  return image;
}

/// Pixels of a colour, as far as smoothed edges leave it.
int inkOf(const QImage& image, const QColor& colour) {
  int count = 0;
  for (int y = 0; y < image.height(); ++y)
    for (int x = 0; x < image.width(); ++x) {
      const QColor pixel = image.pixelColor(x, y);
      const int off = std::abs(pixel.red() - colour.red()) + std::abs(pixel.green() - colour.green()) +
                      std::abs(pixel.blue() - colour.blue());
      count += off < 40 ? 1 : 0;
    }
  return count;
}

TEST(MeasureSketchTest, EachShowsAnArrowAndWordsInLightAndDark) {
  for (const QPalette& palette : {QPalette(QColor(Qt::white)), darkPalette()}) {
    const ui::ChartPalette colours(palette);
    for (const Measure measure : kMeasures) {
      const QImage image = drawn(measure, palette);
      EXPECT_GT(inkOf(image, colours.proposed), 15) << static_cast<int>(measure);
      EXPECT_GT(inkOf(image, colours.text), 30) << static_cast<int>(measure);
    }
  }
}

TEST(MeasureSketchTest, NoneLooksLikeAnother) {
  std::set<QByteArray> pictures;
  std::set<QString> words;
  for (const Measure measure : kMeasures) {
    const QImage image = drawn(measure, QPalette(QColor(Qt::white)));
    pictures.insert(QByteArray(reinterpret_cast<const char*>(image.constBits()), image.sizeInBytes()));
    words.insert(MeasureSketch(measure, "Name").accessibleDescription());
  }
  EXPECT_EQ(pictures.size(), std::size(kMeasures));
  EXPECT_EQ(words.size(), std::size(kMeasures));
  EXPECT_FALSE(words.contains(QString()));
}

TEST(MeasureSketchTest, AtTwiceTheScaleItHasTheDetailOfTwice) {
  const QPalette palette{QColor(Qt::white)};
  const ui::ChartPalette colours(palette);
  const int once = inkOf(drawn(Measure::SwingarmLength, palette), colours.proposed);
  EXPECT_GT(inkOf(drawn(Measure::SwingarmLength, palette, 2.0), colours.proposed), 3 * once);
}

TEST(MeasureSketchTest, StandsBesideTheFieldItIsOf) {
  ui::Document document(bike());
  ui::BikeDetails details(document);
  details.refresh(ui::UnitsShown());
  int seen = 0;
  for (const char* key :
       {"bike.chain_run.centre_distance_mm", "bike.chain_run.swingarm_length_mm",
        "bike.chain_run.swingarm_angle_deg", "bike.chain_run.countershaft_ahead_of_pivot_mm",
        "bike.chain_run.countershaft_above_pivot_mm", "bike.chassis.front_rollout_mm", "stock.rollout_mm"}) {
    ASSERT_TRUE(ui::measureOf(key)) << key;
    auto& editor = control<QDoubleSpinBox>(details, ui::fieldLabel(key));
    const auto sketches = editor.parentWidget()->findChildren<MeasureSketch*>();
    ASSERT_EQ(sketches.size(), 1) << key;
    EXPECT_TRUE(sketches[0]->accessibleName().contains(ui::fieldLabel(key)));
    ++seen;
  }
  EXPECT_EQ(details.findChildren<MeasureSketch*>().size(), seen);
  EXPECT_EQ(ui::measureOf("bike.chassis.mass_kg"), std::nullopt);
}

}  // namespace
}  // namespace layshaft::test
