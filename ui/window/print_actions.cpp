// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/print_actions.h"

#include <QBuffer>
#include <QDate>
#include <QLocale>
#include <QPrintDialog>
#include <QPrintPreviewDialog>

#include "core/report.h"
#include "ui/document/file_name.h"
#include "ui/document/preferences.h"
#include "ui/document/save_bytes.h"
#include "ui/window/file_actions.h"
#include "ui/window/main_window.h"
#include "ui/window/messages.h"
#include "ui/window/save_dialog.h"
#include "ui/window/sheets_dialog.h"
#include "ui/words/text_report.h"

namespace layshaft::ui {
namespace {

/// What the bike is by now: the window's own plan may be a frame behind.
SharedPlan planOf(MainWindow& window) {
  return std::make_shared<const Plan>(plan(window.document().profile()));
}

/// The report as bytes, in the format that the ending of the file stands for.
std::optional<QString> writeReport(MainWindow& window, const QString& file) {
  const auto endsIn = [&](const char* ending) {
    return file.endsWith(QLatin1String(ending), Qt::CaseInsensitive);
  };
  QBuffer out;
  out.open(QIODevice::WriteOnly);
  std::optional<QString> why;
  if (endsIn(".pdf") || endsIn(".png"))
    why = writeSheet(makeSheet(SheetKind::Bench, sheetInput(window)),
                     endsIn(".pdf") ? PictureFormat::Pdf : PictureFormat::Png, usualPaper(), out);
  else if (endsIn(".csv"))
    out.write(QByteArray::fromStdString(reportCsv(*planOf(window))));
  else if (endsIn(".json"))
    out.write(QByteArray::fromStdString(reportJson(*planOf(window))));
  else
    out.write(textReport(*planOf(window), window.units(), partsOnHand(window.document().profile())).toUtf8());
  return why ? why : saveBytes(file, out.data());
}

}  // namespace

SheetInput sheetInput(MainWindow& window) {
  return {.profile = window.document().profile(),
          .plan = planOf(window),
          .units = window.units(),
          .day = QDate::currentDate(),
          .shop = {preferences::shopLine(), Logo::fromFile(preferences::shopLogo())},
          .picked = preferences::figures()};
}

QPageSize usualPaper() {
  return QPageSize(QLocale().measurementSystem() == QLocale::ImperialUSSystem ? QPageSize::Letter
                                                                              : QPageSize::A4);
}

PrintActions::PrintActions(MainWindow& window) : QObject(&window), window_(window) {}

void PrintActions::addTo(QMenu& menu) {
  menu.addAction(tr("Save Re&port…"), this, &PrintActions::saveReport)
      ->setIcon(QIcon::fromTheme(QStringLiteral("document-export")));
  menu.addAction(tr("Print Previe&w…"), this, &PrintActions::preview)
      ->setIcon(QIcon::fromTheme(QStringLiteral("document-print-preview")));
  menu.addAction(tr("S&heets…"), this, &PrintActions::showSheets);
  QAction* print = menu.addAction(tr("P&rint…"), this, [this] {
    finishTyping(window_);
    this->print(SheetKind::Bench, sheetInput(window_));
  });
  print->setShortcut(QKeySequence::Print);
  print->setIcon(QIcon::fromTheme(QStringLiteral("document-print")));
}

void PrintActions::saveReport() {
  finishTyping(window_);
  saveExport(window_,
             {.word = QStringLiteral("report"),
              .title = tr("Save the Report"),
              .failure = tr("Report Not Saved"),
              .of = tr("report", "in a file's name"),
              .kinds = {{tr("PDF page"), QStringLiteral(".pdf")},
                        {tr("PNG picture"), QStringLiteral(".png")},
                        {tr("Text"), QStringLiteral(".txt")},
                        {tr("Comma-separated values"), QStringLiteral(".csv")},
                        {tr("JSON data"), QStringLiteral(".json")}}},
             [this](const QString& file) { return writeReport(window_, file); });
}

std::unique_ptr<QPrinter> PrintActions::makePrinter(SheetKind kind) {
  auto printer = std::make_unique<QPrinter>();
  printer->setResolution(sheetDpi());
  // Where it prints to a file, that is the name suggested.
  printer->setDocName(exportName(window_.document(), sheetWord(kind)));
  if (printer->outputFormat() == QPrinter::PdfFormat)
    printer->setOutputFileName(exportPath(window_.document(), sheetWord(kind), QStringLiteral(".pdf")));
  if (layout_.isValid()) {
    printer->setPageLayout(layout_);
  } else {
    // What the printer has in it, where it says so; a file has the paper of the place.
    if (printer->outputFormat() == QPrinter::PdfFormat) printer->setPageSize(usualPaper());
    printer->setPageOrientation(QPageLayout::Portrait);
  }
  return printer;
}

void PrintActions::print(const Sheet& sheet, QPrinter& printer) {
  layout_ = printer.pageLayout();
  if (const auto why = paintSheet(sheet, printer))
    return warn(&window_, tr("Sheet Not Printed"),
                printer.outputFileName().isEmpty()
                    ? tr("The sheet was not printed: %1.").arg(*why)
                    : tr("%1: %2.", "file and what is wrong").arg(shownFile(printer.outputFileName()), *why));
  window_.say(printer.outputFileName().isEmpty()
                  ? tr("The sheet went to the printer %1.").arg(printer.printerName())
                  : tr("Saved to %1.").arg(shownFile(printer.outputFileName())));
}

void PrintActions::print(SheetKind kind, const SheetInput& input, const std::optional<QPageSize>& paper) {
  const auto printer = makePrinter(kind);
  if (paper) printer->setPageSize(*paper);
  QPrintDialog dialog(printer.get(), &window_);
  dialog.setWindowTitle(tr("Print the Sheet"));
  if (dialog.exec() == QDialog::Accepted) print(makeSheet(kind, input), *printer);
}

void PrintActions::showSheets() {
  finishTyping(window_);
  SheetsDialog(window_, *this).exec();
}

void PrintActions::preview() {
  finishTyping(window_);
  const BlockSheet sheet = makeSheet(SheetKind::Bench, sheetInput(window_));
  const auto printer = makePrinter(SheetKind::Bench);
  QPrintPreviewDialog dialog(printer.get(), &window_);
  dialog.setWindowTitle(tr("Print Preview"));
  connect(&dialog, &QPrintPreviewDialog::paintRequested, this, [this, &sheet](QPrinter* on) {
    layout_ = on->pageLayout();
    // What cannot be printed cannot be shown either; the dialog stays empty then.
    if (const auto why = paintSheet(sheet, *on)) window_.say(tr("No preview: %1.").arg(*why));
  });
  dialog.resize(dialog.size().expandedTo(window_.size() * 0.9));
  dialog.exec();
}

}  // namespace layshaft::ui
