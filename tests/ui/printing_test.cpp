// SPDX-License-Identifier: GPL-3.0-or-later
#include <QBuffer>
#include <QComboBox>
#include <QFileDialog>
#include <QLabel>
#include <QPdfWriter>
#include <QPrintDialog>
#include <QPrintPreviewDialog>
#include <QPrintPreviewWidget>
#include <QPrinter>
#include <QProcess>
#include <QTabWidget>
#include <QTemporaryDir>

#include "core/report.h"
#include "tests/ui/on_paper.h"
#include "tests/ui/what_is_said.h"
#include "ui/document/preferences.h"
#include "ui/pages/ladder_page.h"
#include "ui/sheet/sheets.h"
#include "ui/words/cautions.h"
#include "ui/words/text_report.h"

namespace layshaft::test {
namespace {

/// A sheet of so many pages, each with its number on it.
class Numbered : public ui::Sheet {
 public:
  explicit Numbered(int pages) : pages_(pages) {}
  QString title() const override { return "Numbered"; }
  int pageCount(const QSizeF&) const override { return pages_; }
  void paintPage(QPainter& painter, const QRectF& room, int page) const override {
    painter.drawText(room, Qt::AlignCenter, QString("page%1").arg(page + 1));
  }

 private:
  int pages_;
};

class Printing : public testing::Test, FreshSettings {
 protected:
  Printing() { QTest::qWait(30); }
  QAction& action(const QString& text) {
    for (auto* candidate : window_->findChildren<QAction*>())
      if (candidate->text().remove('&') == text) return *candidate;
    throw std::runtime_error("no action " + text.toStdString());
  }
  /// Saves by that action under a name, choosing the kind of file if one is named; the name that was
  /// suggested.
  QString save(const QString& actionText, const QString& name, const QString& kind = {}) {
    QString suggested;
    DialogAnswer dialog([&](QDialog& asked) {
      auto& files = dynamic_cast<QFileDialog&>(asked);
      suggested = files.selectedFiles().value(0);
      for (const QString& filter : files.nameFilters())
        if (!kind.isEmpty() && filter.contains(kind)) files.selectNameFilter(filter);
      typeFileName(files, folder_.filePath(name));
      QMetaObject::invokeMethod(&files, "accept");
    });
    action(actionText).trigger();
    EXPECT_TRUE(dialog.seen()) << actionText.toStdString();
    return suggested;
  }
  QString said() { return control<QLabel>(*window_, "Message").text(); }
  QByteArray contents(const QString& name) {
    return QByteArray::fromStdString(contentsOf(folder_.filePath(name).toStdString()));
  }

  QTemporaryDir folder_;
  Window window_{workedExample()};
};

TEST_F(Printing, TheReportIsSavedInTheFormatOfItsEnding) {
  save("Save Report…", "a.pdf");
  EXPECT_TRUE(contents("a.pdf").startsWith("%PDF-"));
  EXPECT_EQ(said(), "Saved to " + folder_.filePath("a.pdf") + ".");
  save("Save Report…", "a.PNG");
  EXPECT_TRUE(contents("a.PNG").startsWith("\x89PNG"));
  save("Save Report…", "a.txt");
  EXPECT_EQ(contents("a.txt"), ui::textReport(plan(window_.profile()), window_->units()).toUtf8())
      << "in the units of the window";
  save("Save Report…", "a.csv");
  EXPECT_EQ(contents("a.csv").toStdString(), reportCsv(plan(window_.profile())));
  save("Save Report…", "a.json");
  EXPECT_EQ(contents("a.json").toStdString(), reportJson(plan(window_.profile())));
}

TEST_F(Printing, AKindThatIsChosenGivesItsEndingAndIsRememberedWithTheFolder) {
  const QString first = save("Save Report…", "chosen", "*.txt");
  EXPECT_TRUE(first.endsWith(" report.pdf")) << first.toStdString();
  EXPECT_TRUE(QFile::exists(folder_.filePath("chosen.txt")));
  const QString next = save("Save Report…", "again.json");
  EXPECT_EQ(QFileInfo(next).path(), folder_.path());
  EXPECT_TRUE(next.endsWith(" report.txt")) << next.toStdString();
  const QString picture = save("Save Picture…", "p");
  EXPECT_EQ(QFileInfo(picture).path(), folder_.path()) << "one folder for all that is exported";
  EXPECT_TRUE(picture.endsWith(" sawtooth.png")) << "but each has a kind of its own";
}

TEST_F(Printing, EachPageSuggestsANameOfItsOwn) {
  const QString bikeFile = folder_.filePath("club-600.bike.json");
  ASSERT_EQ(window_->document().save(bikeFile), std::nullopt);
  auto* tabs = window_->findChild<QTabWidget*>();
  const QStringList pages{"sawtooth", "pull", "acceleration", "chain"};
  for (int page = 0; page < pages.size(); ++page) {
    tabs->setCurrentIndex(page);
    EXPECT_EQ(QFileInfo(save("Save Picture…", "p" + pages[page] + ".svg")).completeBaseName(),
              "club-600 – " + pages[page]);
    EXPECT_EQ(said(), "Saved to " + folder_.filePath("p" + pages[page] + ".svg") + ".");
  }
}

TEST_F(Printing, ABikeThatIsOpenIsNeverReplacedByAReport) {
  const QString bikeFile = folder_.filePath("mine.bike.json");
  ASSERT_EQ(window_->document().save(bikeFile), std::nullopt);
  const QByteArray before = contents("mine.bike.json");
  QString complaint;
  QTimer answering;
  bool chosen = false;
  QObject::connect(&answering, &QTimer::timeout, &answering, [&] {
    auto* dialog = qobject_cast<QDialog*>(QApplication::activeModalWidget());
    if (auto* files = qobject_cast<QFileDialog*>(dialog)) {
      if (std::exchange(chosen, true)) return;
      typeFileName(*files, bikeFile);
      QMetaObject::invokeMethod(files, "accept", Qt::QueuedConnection);
    } else if (auto* box = qobject_cast<QMessageBox*>(dialog)) {
      complaint = box->text();
      if (auto* yes = box->button(QMessageBox::Yes)) return yes->click();
      box->reject();
    }
  });
  answering.start(10);
  action("Save Report…").trigger();
  EXPECT_TRUE(complaint.contains("is a bike that is open")) << complaint.toStdString();
  EXPECT_EQ(contents("mine.bike.json"), before);
}

TEST_F(Printing, AReportThatCannotBeWrittenIsReported) {
  ui::preferences::setExportFolder(folder_.path());
  QString complaint;
  bool chosen = false;
  QTimer answering;
  QObject::connect(&answering, &QTimer::timeout, &answering, [&] {
    auto* dialog = qobject_cast<QDialog*>(QApplication::activeModalWidget());
    if (auto* files = qobject_cast<QFileDialog*>(dialog)) {
      if (std::exchange(chosen, true)) return files->reject();
      typeFileName(*files, folder_.filePath("gone/a.pdf"));
      QMetaObject::invokeMethod(files, "accept", Qt::QueuedConnection);
    } else if (auto* box = qobject_cast<QMessageBox*>(dialog)) {
      complaint = box->text();
      box->reject();
    }
  });
  answering.start(10);
  action("Save Report…").trigger();
  EXPECT_TRUE(complaint.contains("gone")) << complaint.toStdString();
  EXPECT_FALSE(said().startsWith("Saved")) << said().toStdString();
}

TEST_F(Printing, ThePrintDialogPrintsThePageIntoAFile) {
  EXPECT_EQ(action("Print…").shortcut(), QKeySequence(Qt::CTRL | Qt::Key_P));
  const QString file = folder_.filePath("printed.pdf");
  DialogAnswer dialog([&](QDialog& asked) {
    auto& print = dynamic_cast<QPrintDialog&>(asked);
    print.printer()->setOutputFileName(file);
    print.done(QDialog::Accepted);
  });
  action("Print…").trigger();
  ASSERT_TRUE(dialog.seen());
  const QString words = wordsOnPaper(file);
  EXPECT_TRUE(words.contains(QString::fromStdString(window_.profile().name))) << words.toStdString();
  EXPECT_TRUE(words.contains(QString::number(QDate::currentDate().year())));
  EXPECT_TRUE(words.contains("mph")) << "this desktop is British";
  EXPECT_TRUE(said().contains("printed.pdf")) << said().toStdString();
}

TEST_F(Printing, APrinterThatCannotIsReported) {
  const QString file = folder_.filePath("no such folder/printed.pdf");
  QString complaint;
  bool accepted = false;
  QTimer answering;
  QObject::connect(&answering, &QTimer::timeout, &answering, [&] {
    QWidget* dialog = QApplication::activeModalWidget();
    if (auto* print = qobject_cast<QPrintDialog*>(dialog); print && !std::exchange(accepted, true)) {
      print->printer()->setOutputFileName(file);
      print->done(QDialog::Accepted);
    } else if (auto* box = qobject_cast<QMessageBox*>(dialog)) {
      complaint = box->text();
      box->reject();
    }
  });
  answering.start(10);
  action("Print…").trigger();
  EXPECT_TRUE(complaint.contains("printed.pdf")) << complaint.toStdString();
}

TEST_F(Printing, ThePreviewShowsThePage) {
  bool painted = false;
  DialogAnswer dialog([&](QDialog& asked) {
    auto& preview = dynamic_cast<QPrintPreviewDialog&>(asked);
    auto* view = preview.findChild<QPrintPreviewWidget*>();
    painted = view && soon([&] { return view->pageCount() == 1; });
    preview.reject();
  });
  action("Print Preview…").trigger();
  EXPECT_TRUE(painted);
  EXPECT_EQ(said(), "");
}

TEST_F(Printing, AMenuOffersWhatThePageHasAndSaysWhyNot) {
  auto* menu = action("Export").menu<QMenu*>();
  emit menu->aboutToShow();
  EXPECT_TRUE(action("Save Picture…").isEnabled());
  auto* tabs = window_->findChild<QTabWidget*>();
  tabs->setCurrentWidget(window_->findChild<ui::LadderPage*>());
  ASSERT_FALSE(window_->currentPicture()) << "the ladder is a table";
  emit menu->aboutToShow();
  EXPECT_FALSE(action("Save Picture…").isEnabled());
  EXPECT_FALSE(action("Copy Picture").isEnabled());
  EXPECT_TRUE(action("Save Picture…").toolTip().contains("no picture"));
  EXPECT_TRUE(menu->toolTipsVisible());
  EXPECT_TRUE(action("Save Data…").isEnabled());
}

TEST_F(Printing, ASavedPictureSaysWhoseItIsAndWhatMustBeKnown) {
  const QString name = QString::fromStdString(window_.profile().name);
  auto* tabs = window_->findChild<QTabWidget*>();
  for (int page = 0; page < 4; ++page) {
    tabs->setCurrentIndex(page);
    QTest::qWait(20);
    const QString words = textsOf(*window_->currentPicture()).join(' ').simplified();
    EXPECT_TRUE(words.contains(name + ": stock")) << page << words.toStdString();
    if (page == 3) continue;  // its own cautions are looked for elsewhere
    for (const QString& caution : ui::cautionsFor(plan(window_.profile()), ui::CautionPlace::Readout))
      EXPECT_TRUE(words.contains(caution.simplified())) << page << words.toStdString();
  }
}

TEST_F(Printing, TheReportHasTheKeyFiguresThatWerePicked) {
  ui::preferences::setFigures({ui::Figure::FinalRatio, ui::Figure::Rollout});
  save("Save Report…", "picked.pdf");
  const QString words = wordsOnPaper(folder_.filePath("picked.pdf"));
  EXPECT_TRUE(words.contains("Final ratio")) << words.toStdString();
  EXPECT_TRUE(words.contains("Rollout, mm 1,939")) << words.toStdString();
  EXPECT_FALSE(words.contains("Pull in 1st")) << words.toStdString();
}

TEST_F(Printing, ASavedPictureSaysThatTheCurveIsEstimatedWhereThatCounts) {
  const QString estimated = "Estimated from peak power and torque";
  auto* tabs = window_->findChild<QTabWidget*>();
  const auto says = [&](int page) {
    tabs->setCurrentIndex(page);
    QTest::qWait(30);
    return textsOf(*window_->currentPicture()).join(' ').simplified().contains(estimated);
  };
  for (int page = 0; page < 3; ++page) EXPECT_FALSE(says(page)) << page;
  window_->document().edit({.field = "estimated", .title = "estimated", .shown = {}},
                           [](Profile& p) { p.bike.engine.curveEstimated = true; });
  QTest::qWait(50);
  EXPECT_FALSE(says(0)) << "the saw asks for no curve";
  EXPECT_TRUE(says(1)) << "pull";
  EXPECT_TRUE(says(2)) << "acceleration";
}

TEST(SheetPages, OnlyThosePrintedThatAreWantedEachOnAPageOfItsOwn) {
  QTemporaryDir folder;
  const QString file = folder.filePath("pages.pdf");
  QPrinter printer;
  printer.setResolution(ui::sheetDpi());
  printer.setOutputFileName(file);
  printer.setFromTo(2, 3);
  printer.setPrintRange(QPrinter::PageRange);
  ASSERT_EQ(ui::paintSheet(Numbered(4), printer), std::nullopt);
  EXPECT_EQ(wordsOnPaper(file), "page2 page3");
  printer.setFromTo(7, 8);
  const auto why = ui::paintSheet(Numbered(4), printer);
  ASSERT_TRUE(why);
  EXPECT_TRUE(why->contains('4'));
}

TEST(SheetPages, OfAPictureStandBelowOneAnother) {
  QBuffer one, three;
  one.open(QIODevice::WriteOnly);
  three.open(QIODevice::WriteOnly);
  ASSERT_EQ(ui::writePng(Numbered(1), QPageSize(QPageSize::A4), one), std::nullopt);
  ASSERT_EQ(ui::writePng(Numbered(3), QPageSize(QPageSize::A4), three), std::nullopt);
  EXPECT_EQ(QImage::fromData(three.data()).height(), 3 * QImage::fromData(one.data()).height());
}

/// A4 and US Letter, lying and standing, and half of A4: every word inside the margins and none lost.
TEST(BenchPaper, NothingIsCutOffWhateverThePaper) {
  Profile profile = sampleBike("club-600");
  profile.name = std::string(90, 'W') + " the long name of a bike";
  const ui::BlockSheet sheet =
      benchSheetOf(profile, ui::UnitsShown(ui::UnitSystem::Imperial), QDate(2026, 3, 9));
  QTemporaryDir folder;
  const QString file = folder.filePath("page.pdf");
  for (const auto id : {QPageSize::A4, QPageSize::Letter, QPageSize::A5})
    for (const auto turn : {QPageLayout::Landscape, QPageLayout::Portrait}) {
      const std::string where = QPageSize::name(id).toStdString() + std::to_string(turn);
      {
        QPdfWriter pdf(file);
        pdf.setResolution(ui::sheetDpi());
        pdf.setPageLayout(
            QPageLayout(QPageSize(id), turn, QMarginsF(10, 10, 10, 10), QPageLayout::Millimeter));
        ASSERT_EQ(ui::paintSheet(sheet, pdf), std::nullopt);
      }
      const WordBoxes boxes = wordBoxes(file);
      const double margin = 10 / 25.4 * 72 - 1;  // a point for what hangs over
      ASSERT_GT(boxes.words.size(), 60u) << where;
      for (const auto& [word, box] : boxes.words)
        EXPECT_TRUE(boxes.page.adjusted(margin, margin, -margin, -margin).contains(box))
            << where << ": " << word.toStdString();
      const QString words = wordsOnPaper(file);
      EXPECT_TRUE(words.contains("9 March 2026")) << where;
      EXPECT_TRUE(words.contains("WWW")) << where;
      for (const QString& caution : ui::cautionsFor(plan(profile), ui::CautionPlace::Paper))
        EXPECT_TRUE(words.contains(caution.simplified())) << where << words.toStdString();
    }
}

TEST(BenchPaper, HasNoDayUnlessItIsToldOne) {
  QTemporaryDir folder;
  const QString file = folder.filePath("page.pdf");
  ASSERT_EQ(savePdf(benchSheetOf(sampleBike("club-600")), file), std::nullopt);
  EXPECT_FALSE(wordsOnPaper(file).contains(QString::number(QDate::currentDate().year())));
}

}  // namespace
}  // namespace layshaft::test
