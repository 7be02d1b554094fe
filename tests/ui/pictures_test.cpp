// SPDX-License-Identifier: GPL-3.0-or-later
#include <QClipboard>
#include <QFileDialog>
#include <QTemporaryDir>

#include "core/report.h"
#include "tests/ui/support.h"
#include "ui/pages/page.h"
#include "ui/pages/sawtooth_page.h"
#include "ui/words/csv_units.h"

namespace layshaft::test {
namespace {

/// Copying and saving the chart and its numbers.
class Pictures : public testing::Test {
 protected:
  Pictures() { QTest::qWait(30); }
  std::string saved(const char* name) {
    const QString file = folder_.filePath(QString::fromUtf8(name));
    EXPECT_EQ(window_->currentChart()->savePicture(file), std::nullopt);
    return contentsOf(file.toStdString());
  }

  QTemporaryDir folder_;
  Window window_{workedExample()};
};

TEST_F(Pictures, PngHasTwiceThePixelsOfTheScreenAndIsNotBlank) {
  const std::string bytes = saved("chart.png");
  EXPECT_EQ(bytes.substr(0, 8), "\x89PNG\r\n\x1a\n");
  const QImage image(folder_.filePath("chart.png"));
  const QSize chart = window_->currentChart()->viewport()->size() * 2;
  EXPECT_EQ(image.width(), chart.width());
  EXPECT_GT(image.height(), chart.height()) << "a heading and the cautions";
  EXPECT_LT(image.height(), chart.height() + 400);
  const QRgb accent = window_->currentChart()->colours().proposed.rgb();
  int accentPixels = 0;
  for (int y = 0; y < image.height(); y += 2)
    for (int x = 0; x < image.width(); ++x) accentPixels += image.pixel(x, y) == accent ? 1 : 0;
  EXPECT_GT(accentPixels, 200) << "the proposal is drawn in its colour";
}

TEST_F(Pictures, SvgIsSvgWithText) {
  const std::string bytes = saved("chart.svg");
  EXPECT_THAT(bytes, testing::StartsWith("<?xml"));
  EXPECT_THAT(bytes, testing::HasSubstr("<svg"));
  EXPECT_THAT(bytes, testing::HasSubstr("Rev limit"));
  EXPECT_THAT(bytes, testing::HasSubstr("</svg>"));
}

TEST_F(Pictures, PdfIsPdfOfOnePage) {
  const std::string bytes = saved("chart.pdf");
  EXPECT_THAT(bytes, testing::StartsWith("%PDF-"));
  EXPECT_THAT(bytes, testing::HasSubstr("%%EOF"));
  EXPECT_THAT(bytes, testing::HasSubstr("/Count 1"));
}

TEST_F(Pictures, EndingsInCapitalsWillDoAndOthersAreRefused) {
  EXPECT_EQ(saved("CHART.PNG").substr(1, 3), "PNG");
  for (const char* name : {"chart.jpg", "chart"}) {
    const auto why = window_->currentChart()->savePicture(folder_.filePath(name));
    ASSERT_TRUE(why) << name;
    EXPECT_TRUE(why->contains(".png"));
    EXPECT_FALSE(QFile::exists(folder_.filePath(name))) << "nothing half-written is left";
  }
}

TEST_F(Pictures, AFileThatCannotBeWrittenIsReported) {
  for (const char* name :
       {"no such folder/chart.png", "no such folder/chart.svg", "no such folder/chart.pdf"})
    EXPECT_TRUE(window_->currentChart()->savePicture(folder_.filePath(name)));
}

TEST_F(Pictures, TheCrosshairIsNotInThePicture) {
  const std::string without = saved("a.png");
  window_->currentChart()->setCrosshair(100.0);
  EXPECT_EQ(saved("b.png"), without);
  EXPECT_TRUE(window_->currentChart()->crosshairX());
}

TEST_F(Pictures, ANameWithoutAnEndingGetsOne) {
  const auto saveAs = [&](const QString& actionText, const QString& name) {
    DialogAnswer dialog([&](QDialog& asked) {
      auto& files = dynamic_cast<QFileDialog&>(asked);
      typeFileName(files, folder_.filePath(name));
      QMetaObject::invokeMethod(&files, "accept");
    });
    for (auto* action : window_->findChildren<QAction*>())
      if (action->text().remove('&') == actionText) action->trigger();
    EXPECT_TRUE(dialog.seen());
  };
  saveAs("Save Picture…", "chart");
  EXPECT_EQ(contentsOf(folder_.filePath("chart.png").toStdString()).substr(1, 3), "PNG");
  saveAs("Save Picture…", "chart.svg");
  EXPECT_THAT(contentsOf(folder_.filePath("chart.svg").toStdString()), testing::HasSubstr("<svg"));
  saveAs("Save Data…", "numbers");
  EXPECT_EQ(contentsOf(folder_.filePath("numbers.csv").toStdString()),
            ui::csvInUnits(reportCsv(plan(window_.profile())), window_->units()));
}

TEST_F(Pictures, TheChartIsCopiedAsAPicture) {
  QApplication::clipboard()->clear();
  window_->currentChart()->copyPicture();
  const QSize chart = window_->currentChart()->viewport()->size() * 2;
  EXPECT_EQ(QApplication::clipboard()->image().width(), chart.width());
  EXPECT_GT(QApplication::clipboard()->image().height(), chart.height());
}

TEST_F(Pictures, ACopyIsTold) {
  for (auto* action : window_->findChildren<QAction*>())
    if (action->text().remove('&') == "Copy Picture") action->trigger();
  EXPECT_EQ(control<QLabel>(*window_, "Message").text(), "Copied the picture of the page Sawtooth.");
}

TEST_F(Pictures, TheNumbersAreTheReportsCsv) {
  auto* page = window_->findChild<ui::SawtoothPage*>();
  EXPECT_EQ(page->csv().toStdString(), ui::csvInUnits(reportCsv(plan(window_.profile())), window_->units()));
  EXPECT_EQ(page->csv().count('\n'), 13) << "titles, and six gears of two setups";
  EXPECT_EQ(page->numbers().size(), 7u);
}

}  // namespace
}  // namespace layshaft::test
