// SPDX-License-Identifier: GPL-3.0-or-later
//
// The sheets of a workshop, as other programs read them.
#include "ui/sheet/sheets.h"

#include <QImage>
#include <QPainter>
#include <QTemporaryDir>

#include "tests/ui/on_paper.h"
#include "ui/words/cautions.h"
#include "ui/words/gear_words.h"
#include "ui/words/numbers.h"
#include "ui/words/parts_words.h"
#include "ui/words/work_order_words.h"

namespace layshaft::test {
namespace {

using ui::SheetKind;

const char* const kSheetSamples[] = {"adventure-twin",   "club-600",    "enduro-250",     "motocross-450",
                                     "roadster-classic", "tourer-belt", "two-stroke-125", "youth-85"};

class WorkshopSheets : public testing::Test {
 protected:
  QString words(SheetKind kind, const ui::SheetInput& input) {
    EXPECT_EQ(savePdf(ui::makeSheet(kind, input), file()), std::nullopt);
    return wordsOnPaper(file());
  }
  QString words(SheetKind kind, const Profile& profile) { return words(kind, sheetInputOf(profile)); }
  QString file() const { return folder_.filePath("sheet.pdf"); }

  QTemporaryDir folder_;
};

/// The worked example with all that sheets tell of.
Profile bikeForSheets() {
  Profile profile = sampleBike("club-600");
  profile.customer = "A Customer";
  profile.bike.chainRun->adjusterMarkMm = 2.5;
  profile.proposed.options.links = 112;
  profile.wear = Wear{};
  profile.wear->slackMm = LengthRange{30, 40};
  profile.wear->slackPosture = "on its side stand";
  profile.prices = Prices{.currency = "EUR", .parts = {{"joining_link", 7.5, {}}}, .extras = {}};
  return profile;
}

class SheetsOfSample : public WorkshopSheets, public testing::WithParamInterface<const char*> {};

/// On both papers, in all units: every word lies inside the page's margins, and the print
/// is not too small to read.
TEST_P(SheetsOfSample, NothingIsCutOff) {
  const char* const sample = GetParam();
  Profile profile = sampleBike(sample);
  profile.customer = "Somebody With a Long Name of Several Words";
  for (const SheetKind kind : ui::kSheetKinds)
    for (const auto paper : {QPageSize::A4, QPageSize::Letter})
      for (const auto system : {ui::UnitSystem::Metric, ui::UnitSystem::Imperial, ui::UnitSystem::Mixed}) {
        const std::string where = std::string(sample) + ", " + ui::sheetName(kind).toStdString() + ", " +
                                  QPageSize::name(paper).toStdString() + ", " +
                                  ui::UnitsShown(system).word().toStdString();
        const ui::BlockSheet sheet =
            ui::makeSheet(kind, sheetInputOf(profile, ui::UnitsShown(system), QDate(2026, 3, 9)));
        ASSERT_EQ(savePdf(sheet, file(), paper), std::nullopt);
        const WordBoxes boxes = wordBoxes(file());
        ASSERT_GT(boxes.words.size(), 30u) << where;
        const double margin = 0.29 * 72 - 1;  // 28/96 in, and a point for what hangs over
        for (const auto& [word, box] : boxes.words) {
          EXPECT_TRUE(boxes.page.adjusted(margin, margin, -margin, -margin).contains(box))
              << where << ": " << word.toStdString();
          EXPECT_FALSE(word.endsWith(QLatin1Char('/'))) << where << " parts a unit: " << word.toStdString();
        }
        const QSizeF room(boxes.page.width() / 72 * ui::sheetDpi() - 56,
                          boxes.page.height() / 72 * ui::sheetDpi() - 56);
        EXPECT_GE(sheet.scaleIn(room), 0.72) << where;  // 6.5 pt and more
      }
}

INSTANTIATE_TEST_SUITE_P(Samples, SheetsOfSample, testing::ValuesIn(kSheetSamples), [](const auto& name) {
  return QString(name.param).replace('-', '_').toStdString();
});

TEST_F(WorkshopSheets, ALongNameStaysOnThePaper) {
  Profile profile = bikeForSheets();
  profile.name = std::string(150, 'W');
  profile.customer = std::string(150, 'M');
  ui::SheetInput input = sheetInputOf(profile);
  input.shop.line = QString(200, 'S');
  for (const SheetKind kind : ui::kSheetKinds) {
    words(kind, input);
    const WordBoxes boxes = wordBoxes(file());
    for (const auto& [word, box] : boxes.words) EXPECT_TRUE(boxes.page.contains(box)) << word.toStdString();
  }
}

TEST_F(WorkshopSheets, BenchSheetHasAllThatIsAskedFor) {
  Profile profile = bikeForSheets();
  ui::SheetInput input = sheetInputOf(profile, ui::UnitsShown(), QDate(2026, 3, 9));
  input.shop.line = "The Shop at the Corner";
  const QString text = words(SheetKind::Bench, input);
  for (const QString& part :
       {QString("Bench sheet"), QString("The Shop at the Corner"), QString("A Customer"),
        QString::fromStdString(profile.name), QString("9 March 2026"), QString("Top speed"),
        QString("Final ratio"), QString("Road speed, km/h"), QString("112 links (stock 114)"),
        QString("Speedometer"), QString("Front sprocket"), QString("Customer's signature")})
    EXPECT_TRUE(text.contains(part)) << part.toStdString() << "\n" << text.toStdString();
  for (const Pin& pin : profile.pins)
    EXPECT_TRUE(text.contains(QString::fromStdString(pin.name))) << pin.name;
  for (const QString& caution : ui::cautionsFor(*input.plan, ui::CautionPlace::Paper))
    EXPECT_TRUE(text.contains(caution.simplified())) << caution.toStdString();
}

TEST_F(WorkshopSheets, PitCardHasWhatOneReadsFromTheSaddle) {
  const ui::SheetInput input = sheetInputOf(bikeForSheets());
  const QString text = words(SheetKind::PitCard, input);
  const SetupPlan& proposed = input.plan->proposed;
  EXPECT_TRUE(text.contains(ui::teethPair(proposed.setup)));
  EXPECT_TRUE(text.contains("112 links"));
  EXPECT_TRUE(text.contains("marks")) << text.toStdString();
  for (const GearFigures& gear : proposed.gearing.gears)
    if (gear.shiftSpeedMps) {
      EXPECT_TRUE(text.contains(ui::number(*gear.shiftSpeedMps * 3.6, 0))) << gear.gear << text.toStdString();
    }
  ASSERT_TRUE(proposed.road.run.drive);
  EXPECT_TRUE(text.contains("End of the straight: " + ui::gearOrdinal(proposed.road.run.drive->endGear)));
  double largest = 0;
  for (const auto& [word, box] : wordBoxes(file()).words) largest = std::max(largest, box.height());
  EXPECT_GT(largest, 60.0) << "points: big type";
}

TEST_F(WorkshopSheets, WorkOrderAndPartsHaveTheWordsOfTheirLists) {
  const Profile profile = bikeForSheets();
  const ui::SheetInput input = sheetInputOf(profile);
  const QString order = words(SheetKind::WorkOrder, input);
  const ui::WorkOrder steps = ui::workOrder(profile, *input.plan, input.units);
  for (const QStringList& part : {steps.remove, steps.fit, steps.set, steps.checks})
    for (const QString& step : part) EXPECT_TRUE(order.contains(step)) << step.toStdString();
  const QString parts = words(SheetKind::Parts, input);
  for (const PartLine& line : partsList(profile, *input.plan).lines)
    if (line.source != PartSource::Keep) {
      EXPECT_TRUE(QString(parts).remove(' ').contains(ui::partText(line).remove(' ')))
          << ui::partText(line).toStdString() << "\n"
          << parts.toStdString();
    }
  for (const QString& caution : ui::cautionsFor(*input.plan, ui::CautionPlace::Work)) {
    EXPECT_TRUE(order.contains(caution.simplified())) << caution.toStdString();
    EXPECT_TRUE(parts.contains(caution.simplified())) << caution.toStdString();
  }
}

TEST_F(WorkshopSheets, FontsAreInTheFileAndPicturesAreDrawn) {
  words(SheetKind::Bench, bikeForSheets());
  const QStringList fonts = readBy("pdffonts", {file()}).split('\n', Qt::SkipEmptyParts).mid(2);
  ASSERT_FALSE(fonts.isEmpty());
  for (const QString& font : fonts)
    EXPECT_TRUE(font.contains(QRegularExpression("\\byes +(yes|no) +yes"))) << font.toStdString();
  // Two lines of titles and nothing else.
  EXPECT_LE(readBy("pdfimages", {"-list", file()}).split('\n', Qt::SkipEmptyParts).size(), 2);
}

TEST_F(WorkshopSheets, BlackOnWhite) {
  const ui::BlockSheet sheet = ui::makeSheet(SheetKind::WorkOrder, sheetInputOf(bikeForSheets()));
  QBuffer out;
  out.open(QIODevice::WriteOnly);
  ASSERT_EQ(ui::writePng(sheet, QPageSize(QPageSize::A4), out), std::nullopt);
  const QImage page = QImage::fromData(out.data());
  EXPECT_EQ(page.pixel(2, 2), qRgb(255, 255, 255));
  int black = 0, coloured = 0;
  for (int y = 0; y < page.height(); y += 2)
    for (int x = 0; x < page.width(); x += 2) {
      const QColor at(page.pixel(x, y));
      black += at == Qt::black;
      coloured += at.saturation() > 40 && at.value() > 40;
    }
  EXPECT_GT(black, 1000);
  EXPECT_EQ(coloured, 0);
}

TEST_F(WorkshopSheets, LogosAreSvgPngOrJpegAndNothingElse) {
  const auto write = [&](const QString& name, const QByteArray& bytes) {
    QFile out(folder_.filePath(name));
    EXPECT_TRUE(out.open(QIODevice::WriteOnly));
    out.write(bytes);
    return out.fileName();
  };
  QImage picture(2400, 1200, QImage::Format_RGB32);
  picture.fill(Qt::red);
  for (const char* format : {"png", "jpg"}) {
    const QString name = folder_.filePath(QString("logo.") + format);
    ASSERT_TRUE(picture.save(name));
    const auto logo = ui::Logo::fromFile(name);
    ASSERT_TRUE(logo) << format;
    EXPECT_NEAR(logo->shape(), 2.0, 1e-9);
  }
  const QString drawing = write("logo.svg",
                                "<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 30 10'>"
                                "<rect width='30' height='10' fill='green'/></svg>");
  const auto logo = ui::Logo::fromFile(drawing);
  ASSERT_TRUE(logo);
  EXPECT_NEAR(logo->shape(), 3.0, 1e-9);
  QImage paper(100, 100, QImage::Format_RGB32);
  paper.fill(Qt::white);
  QPainter painter(&paper);
  logo->paint(painter, QRectF(0, 0, 100, 20));
  painter.end();
  EXPECT_EQ(paper.pixel(90, 10), qRgb(0, 128, 0)) << "at the right";
  EXPECT_EQ(paper.pixel(20, 10), qRgb(255, 255, 255)) << "no wider than its shape";
  for (const QString& bad : {write("a.png", "no picture"), write("a.svg", "<svg"), write("empty", ""),
                             folder_.filePath("gone.png"), folder_.path()}) {
    QString why;
    EXPECT_FALSE(ui::Logo::fromFile(bad, &why)) << bad.toStdString();
    EXPECT_FALSE(why.isEmpty()) << bad.toStdString();
  }
  ui::SheetInput input = sheetInputOf(bikeForSheets());
  input.shop.logo = logo;
  words(SheetKind::Bench, input);
  EXPECT_LE(readBy("pdfimages", {"-list", file()}).split('\n', Qt::SkipEmptyParts).size(), 2)
      << "a drawing stays one";
}

}  // namespace
}  // namespace layshaft::test
