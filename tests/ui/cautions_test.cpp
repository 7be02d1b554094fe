// SPDX-License-Identifier: GPL-3.0-or-later
//
// What people must know before they act is on every report: in words, on paper and in the picture.
#include "ui/words/cautions.h"

#include <QBuffer>
#include <QFile>
#include <QImage>
#include <QProcess>
#include <QRegularExpression>
#include <QTemporaryDir>

#include "tests/ui/on_paper.h"
#include "tests/ui/support.h"
#include "ui/words/text_report.h"

namespace layshaft::test {
namespace {

/// A word of the printed page and where it stands, in shares of the page.
struct PrintedWord {
  QString text;
  QRectF place;
};

class CautionsOnPaper : public testing::Test {
 protected:
  QByteArray page(ui::PictureFormat format) {
    QBuffer out;
    out.open(QIODevice::WriteOnly);
    EXPECT_EQ(ui::writeSheet(benchSheetOf(profile_), format, QPageSize(QPageSize::A4), out), std::nullopt);
    return out.data();
  }
  QString readFromPdf(const QStringList& options) {
    QFile file(folder_.filePath("page.pdf"));
    EXPECT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(page(ui::PictureFormat::Pdf));
    file.close();
    QProcess reader;
    reader.start("pdftotext", options + QStringList{file.fileName(), "-"});
    EXPECT_TRUE(reader.waitForFinished(20000)) << "pdftotext is in Debian's poppler-utils";
    // Fonts write some letters as one, such as ff.
    return QString::fromUtf8(reader.readAllStandardOutput()).normalized(QString::NormalizationForm_KC);
  }
  std::vector<PrintedWord> printedWords() {
    const QString boxes = readFromPdf({"-bbox"});
    static const QRegularExpression size("<page width=\"([\\d.]+)\" height=\"([\\d.]+)\"");
    static const QRegularExpression word(
        "<word xMin=\"([\\d.]+)\" yMin=\"([\\d.]+)\" xMax=\"([\\d.]+)\" yMax=\"([\\d.]+)\">([^<]*)</word>");
    const auto whole = size.match(boxes);
    const double width = whole.captured(1).toDouble(), height = whole.captured(2).toDouble();
    std::vector<PrintedWord> words;
    for (auto it = word.globalMatch(boxes); it.hasNext();) {
      const auto match = it.next();
      const auto share = [&](int group, double of) { return match.captured(group).toDouble() / of; };
      words.push_back(
          {match.captured(5).replace("&apos;", "'"),
           QRectF(QPointF(share(1, width), share(2, height)), QPointF(share(3, width), share(4, height)))});
    }
    return words;
  }

  const Profile profile_ = sampleBike("club-600");
  const Plan plan_ = plan(profile_);
  QTemporaryDir folder_;
};

TEST_F(CautionsOnPaper, ThePdfHasThemAll) {
  const QString text = readFromPdf({"-raw"}).simplified();
  ASSERT_GE(ui::cautionsFor(plan_, ui::CautionPlace::Paper).size(), 4);
  for (const QString& caution : ui::cautionsFor(plan_, ui::CautionPlace::Paper))
    EXPECT_TRUE(text.contains(caution)) << caution.toStdString() << "\nis not in\n" << text.toStdString();
}

TEST_F(CautionsOnPaper, TheTextReportEndsWithThem) {
  EXPECT_TRUE(ui::textReport(plan_, ui::UnitsShown())
                  .endsWith('\n' + ui::cautionsFor(plan_, ui::CautionPlace::Paper).join('\n') + '\n'));
}

/// Paper and picture are one page: where a word of a caution stands on paper there is ink in the picture.
TEST_F(CautionsOnPaper, ThePictureHasInkWhereThePaperHasTheirWords) {
  const QImage picture = QImage::fromData(page(ui::PictureFormat::Png), "PNG");
  ASSERT_FALSE(picture.isNull());
  const QStringList wanted = ui::cautionsFor(plan_, ui::CautionPlace::Paper).join(' ').split(' ');
  const auto words = printedWords();
  ASSERT_GT(words.size(), static_cast<std::size_t>(wanted.size()));
  // They are the last that is written before the chart: found by their first word.
  std::size_t first = 0;
  const auto startsAt = [&](std::size_t at) {
    for (qsizetype i = 0; i < wanted.size(); ++i)
      if (at + static_cast<std::size_t>(i) >= words.size() ||
          words[at + static_cast<std::size_t>(i)].text != wanted[i])
        return false;
    return true;
  };
  while (first < words.size() && !startsAt(first)) ++first;
  ASSERT_LT(first, words.size()) << "the words of the cautions follow each other on paper";
  for (qsizetype i = 0; i < wanted.size(); ++i) {
    const PrintedWord& word = words[first + static_cast<std::size_t>(i)];
    const QRect area(static_cast<int>(word.place.left() * picture.width()),
                     static_cast<int>(word.place.top() * picture.height()),
                     static_cast<int>(word.place.width() * picture.width()),
                     static_cast<int>(word.place.height() * picture.height()));
    int ink = 0;
    for (int y = area.top(); y <= area.bottom(); ++y)
      for (int x = area.left(); x <= area.right(); ++x) ink += qGray(picture.pixel(x, y)) < 160 ? 1 : 0;
    EXPECT_GT(ink, 8 * word.text.size()) << word.text.toStdString();
  }
}

}  // namespace
}  // namespace layshaft::test
