// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/chain_drawing.h"

#include <QTemporaryDir>

#include "core/plan.h"
#include "tests/ui/support.h"
#include "ui/charts/appearance.h"

namespace layshaft::test {
namespace {

/// The drawing of the chain run on its own. On the screen stock is kept as pixels while the proposal is
/// turned; in a saved picture all of it is painted afresh: both must look alike.
class ChainDrawingTest : public testing::Test {
 protected:
  ChainDrawingTest() { drawing_.resize(900, 480); }

  void show(const Profile& profile) {
    plan_ = std::make_shared<const Plan>(plan(planInput(profile), plan_.get()));
    drawing_.show(plan_, ui::UnitsShown(ui::UnitSystem::Metric));
  }
  void showTeeth(int front, int rear) {
    profile_.proposed.frontTeeth = Teeth::front(front).value();
    profile_.proposed.rearTeeth = Teeth::rear(rear).value();
    show(profile_);
  }
  QImage blank(double pixelRatio) const {
    QImage image(drawing_.size() * pixelRatio, QImage::Format_ARGB32_Premultiplied);
    image.setDevicePixelRatio(pixelRatio);
    image.fill(Qt::red);
    return image;
  }
  QImage onScreen(double pixelRatio) {
    QImage image = blank(pixelRatio);
    drawing_.render(&image);
    return image;
  }
  QImage afresh(double pixelRatio) {
    QImage image = blank(pixelRatio);
    QPainter painter(&image);
    drawing_.renderInto(painter, drawing_.rect());
    return image;
  }
  /// Levels of a colour by which the two differ at most.
  int difference(double pixelRatio = 1.0) {
    const QImage screen = onScreen(pixelRatio), fresh = afresh(pixelRatio);
    int most = 0;
    for (int y = 0; y < screen.height(); ++y)
      for (int x = 0; x < screen.width(); ++x) {
        const QRgb a = screen.pixel(x, y), b = fresh.pixel(x, y);
        most = std::max({most, std::abs(qRed(a) - qRed(b)), std::abs(qGreen(a) - qGreen(b)),
                         std::abs(qBlue(a) - qBlue(b))});
      }
    return most;
  }

  static constexpr int kRounding = 3;  // levels that edges may differ by
  Profile profile_ = sampleBike("club-600");
  SharedPlan plan_;
  ui::ChainDrawing drawing_;
};

TEST_F(ChainDrawingTest, LooksAsIfPaintedAfreshWhateverIsTurned) {
  for (const auto& [front, rear] : {std::pair{15, 43}, {15, 44}, {15, 45}, {14, 52}, {17, 36}, {16, 43}}) {
    showTeeth(front, rear);
    EXPECT_LE(difference(), kRounding) << front << '/' << rear;
  }
  for (const double turn : {0.013, 0.5, 1.0}) {
    drawing_.setTurn(turn);
    EXPECT_LE(difference(), kRounding) << turn << " of a turn";
  }
  profile_.stock.rearTeeth = Teeth::rear(47).value();
  show(profile_);
  EXPECT_LE(difference(), kRounding) << "another stock";
  profile_.bike.chainRun->adjusterBackMm = 40.0;
  show(profile_);
  EXPECT_LE(difference(), kRounding) << "another slot";
}

TEST_F(ChainDrawingTest, LooksAsIfPaintedAfreshZoomedAndSharp) {
  showTeeth(15, 44);
  for (const bool zoomed : {false, true, false}) {
    drawing_.setZoomed(zoomed);
    for (const double pixelRatio : {1.0, 2.0, 1.0})
      EXPECT_LE(difference(pixelRatio), kRounding) << pixelRatio << (zoomed ? " zoomed" : " whole");
  }
  drawing_.resize(700, 520);
  EXPECT_LE(difference(), kRounding) << "another size";
}

TEST_F(ChainDrawingTest, LooksAsIfPaintedAfreshInLightAndDarkAndInLargerType) {
  showTeeth(15, 44);
  EXPECT_LE(difference(), kRounding);
  QPalette dark;
  for (const auto role : {QPalette::Window, QPalette::Base}) dark.setColor(role, QColor(30, 30, 30));
  for (const auto role : {QPalette::WindowText, QPalette::Text}) dark.setColor(role, Qt::white);
  const QImage light = onScreen(1.0);
  drawing_.setPalette(dark);
  EXPECT_NE(onScreen(1.0), light);
  EXPECT_LE(difference(), kRounding) << "dark";
  QFont large = drawing_.font();
  large.setPointSizeF(1.5 * large.pointSizeF());
  drawing_.setFont(large);
  EXPECT_LE(difference(), kRounding) << "larger type";
}

TEST_F(ChainDrawingTest, StockStaysWhereItIsWhileTheRearTeethAreTurned) {
  profile_ = sampleBike("motocross-450");  // its countershaft is above the axle
  const auto place = [&](int rear) {
    showTeeth(13, rear);
    ui::ChainScene scene(*plan_, 0.0);
    scene.fitInto(QRectF(0, 0, 900, 400), {.over = 30, .under = 20, .side = 60});
    return scene.toPixels;
  };
  int moves = 0;
  for (int rear = 48; rear < 58; ++rear) moves += place(rear) == place(rear + 1) ? 0 : 1;
  EXPECT_LE(moves, 3) << "of ten steps";
}

TEST_F(ChainDrawingTest, NoLabelCoversAnother) {
  for (const QSize size : {QSize(890, 262), QSize(700, 240), QSize(900, 480)})
    for (const int front : {14, 16, 17})
      for (const int rear : {38, 45, 47}) {
        drawing_.resize(size);
        showTeeth(front, rear);
        const auto boxes = drawing_.labelBoxes();
        ASSERT_EQ(boxes.size(), 4u);
        for (std::size_t a = 0; a < boxes.size(); ++a)
          for (std::size_t b = 0; b < a; ++b)
            EXPECT_FALSE(boxes[a].intersects(boxes[b]))
                << a << " and " << b << ", " << front << '/' << rear << " in " << size.width();
      }
}

TEST_F(ChainDrawingTest, LabelsLeaveTheSprocketsInView) {
  for (const char* sample : {"club-600", "enduro-250", "motocross-450", "roadster-classic", "tourer-belt",
                             "two-stroke-125", "youth-85"})
    for (const QSize size :
         {QSize(560, 230), QSize(700, 240), QSize(890, 262), QSize(900, 480), QSize(2000, 1000)})
      for (const double points : {9.0, 12.0}) {
        profile_ = sampleBike(sample);
        QFont font = drawing_.font();
        font.setPointSizeF(points);
        drawing_.setFont(font);
        drawing_.resize(size);
        show(profile_);
        const auto labels = drawing_.labelBoxes();
        for (const QRectF& sprocket : drawing_.sprocketBoxes()) {
          double covered = 0.0;
          for (const QRectF& label : labels) {
            const QRectF both = label & sprocket;
            if (!both.isEmpty()) covered += both.width() * both.height();
          }
          EXPECT_LE(covered, 0.35 * sprocket.width() * sprocket.height())
              << sample << " in " << size.width() << " px, " << points << " pt";
        }
        for (const QRectF& label : labels)
          EXPECT_TRUE(QRectF(drawing_.rect()).contains(label)) << sample << " in " << size.width() << " px";
      }
}

TEST_F(ChainDrawingTest, ItsLeastSizeShowsTheLoop) {
  for (const char* sample : {"club-600", "tourer-belt"})
    for (const double points : {9.0, 13.5}) {
      profile_ = sampleBike(sample);
      QFont font = drawing_.font();
      font.setPointSizeF(points);
      drawing_.setFont(font);
      drawing_.resize(QSize(420, 100).expandedTo(drawing_.minimumSizeHint()));
      show(profile_);
      const auto sprockets = drawing_.sprocketBoxes();
      EXPECT_GE(sprockets[1].height(), 2 * drawing_.fontMetrics().height()) << sample << ", " << points;
      EXPECT_GE(sprockets[1].left(), sprockets[0].right()) << sample << ", " << points;
    }
}

TEST_F(ChainDrawingTest, SavedAsVectorsItHoldsNoPixels) {
  showTeeth(15, 44);
  onScreen(1.0);
  const QTemporaryDir folder;
  const auto saved = [&](const char* name) {
    const QString file = folder.filePath(QLatin1String(name));
    EXPECT_EQ(drawing_.savePicture(file), std::nullopt);
    return contentsOf(file.toStdString());
  };
  EXPECT_THAT(saved("chain.svg"), testing::Not(testing::HasSubstr("<image")));
  EXPECT_THAT(saved("chain.pdf"), testing::Not(testing::HasSubstr("/Subtype /Image")));
}

}  // namespace
}  // namespace layshaft::test
