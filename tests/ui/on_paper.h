// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFile>
#include <QProcess>
#include <QRectF>
#include <QRegularExpression>
#include <QString>
#include <QStringList>
#include <memory>
#include <optional>
#include <utility>
#include <vector>

#include "tests/ui/support.h"
#include "ui/sheet/sheets.h"

/// What stands on printed pages, as another program reads them.
namespace layshaft::test {

inline ui::SheetInput sheetInputOf(const Profile& profile, const ui::UnitsShown& units = ui::UnitsShown(),
                                   const QDate& day = {}) {
  return {
      .profile = profile, .plan = std::make_shared<const Plan>(plan(profile)), .units = units, .day = day};
}

inline ui::BlockSheet benchSheetOf(const Profile& profile, const ui::UnitsShown& units = ui::UnitsShown(),
                                   const QDate& day = {}) {
  return ui::makeSheet(ui::SheetKind::Bench, sheetInputOf(profile, units, day));
}

inline std::optional<QString> savePdf(const ui::Sheet& sheet, const QString& file,
                                      QPageSize::PageSizeId paper = QPageSize::A4) {
  QFile out(file);
  if (!out.open(QIODevice::WriteOnly)) return out.errorString();
  return ui::writePdf(sheet, QPageSize(paper), out);
}

/// What a program of Debian's poppler-utils says of a PDF.
inline QString readBy(const char* program, const QStringList& arguments) {
  QProcess reader;
  reader.start(program, arguments);
  EXPECT_TRUE(reader.waitForFinished(20000)) << program << " is in Debian's poppler-utils";
  return QString::fromUtf8(reader.readAllStandardOutput());
}

/// The words of a PDF as another program reads them; `more` are options of Debian's poppler-utils.
inline QString wordsOnPaper(const QString& file, const QStringList& more = {}) {
  return readBy("pdftotext", QStringList{"-raw"} << more << file << "-")
      .normalized(QString::NormalizationForm_KC)
      .simplified();
}

/// Where each word stands on its page, by the same reader, and the page.
struct WordBoxes {
  QRectF page;
  std::vector<std::pair<QString, QRectF>> words;
};

inline WordBoxes wordBoxes(const QString& file) {
  const QString text = readBy("pdftotext", {"-bbox", file, "-"});
  WordBoxes boxes;
  static const QRegularExpression page("<page width=\"([\\d.]+)\" height=\"([\\d.]+)\"");
  const auto size = page.match(text);
  boxes.page = QRectF(0, 0, size.captured(1).toDouble(), size.captured(2).toDouble());
  static const QRegularExpression word(
      "<word xMin=\"([-\\d.]+)\" yMin=\"([-\\d.]+)\" xMax=\"([-\\d.]+)\" yMax=\"([-\\d.]+)\">([^<]*)<");
  for (auto it = word.globalMatch(text); it.hasNext();) {
    const auto match = it.next();
    boxes.words.emplace_back(match.captured(5),
                             QRectF(QPointF(match.captured(1).toDouble(), match.captured(2).toDouble()),
                                    QPointF(match.captured(3).toDouble(), match.captured(4).toDouble())));
  }
  return boxes;
}

}  // namespace layshaft::test
