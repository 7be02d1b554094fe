// SPDX-License-Identifier: GPL-3.0-or-later
#include <QClipboard>
#include <QComboBox>
#include <QImage>
#include <QLabel>
#include <QLineEdit>
#include <QPrintDialog>
#include <QPrintPreviewWidget>
#include <QPushButton>
#include <QTemporaryDir>

#include "tests/ui/on_paper.h"
#include "tests/ui/what_is_said.h"
#include "ui/document/preferences.h"
#include "ui/window/shop_dialog.h"

namespace layshaft::test {
namespace {

class SheetsWindow : public testing::Test, FreshSettings {
 protected:
  /// Opens the sheets, chooses one and does something with it.
  void withSheet(ui::SheetKind kind, const std::function<void(QDialog&)>& act) {
    DialogAnswer dialog([&](QDialog& asked) {
      box(asked, "Sheet").setCurrentIndex(static_cast<int>(kind));
      act(asked);
      asked.reject();
    });
    for (auto* action : window_->findChildren<QAction*>())
      if (action->text().remove('&') == "Sheets…") action->trigger();
    EXPECT_TRUE(dialog.seen());
  }
  static QComboBox& box(QDialog& dialog, const QString& label) {
    for (auto* text : dialog.findChildren<QLabel*>())
      if (text->text().remove('&') == label) return dynamic_cast<QComboBox&>(*text->buddy());
    throw std::runtime_error("no " + label.toStdString());
  }
  static QPushButton& button(QDialog& dialog, const QString& text) {
    for (auto* candidate : dialog.findChildren<QPushButton*>())
      if (candidate->text().remove('&') == text) return *candidate;
    throw std::runtime_error("no button " + text.toStdString());
  }

  QTemporaryDir folder_;
  Window window_{sampleBike("club-600")};
};

TEST_F(SheetsWindow, ShowsEachSheet) {
  for (const ui::SheetKind kind : ui::kSheetKinds)
    withSheet(kind, [&](QDialog& dialog) {
      auto* view = dialog.findChild<QPrintPreviewWidget*>();
      EXPECT_TRUE(view && soon([&] { return view->pageCount() == 1; }));
      EXPECT_EQ(button(dialog, "Copy as Text").isEnabled(), kind == ui::SheetKind::Parts);
    });
}

TEST_F(SheetsWindow, SavesThePaperThatIsChosen) {
  withSheet(ui::SheetKind::WorkOrder, [&](QDialog& dialog) {
    box(dialog, "Paper").setCurrentIndex(1);
    DialogAnswer name([&](QDialog& asked) {
      auto& files = dynamic_cast<QFileDialog&>(asked);
      EXPECT_TRUE(files.selectedFiles().value(0).endsWith(" work order.pdf"))
          << files.selectedFiles().value(0).toStdString();
      typeFileName(files, folder_.filePath("order.pdf"));
      QMetaObject::invokeMethod(&files, "accept");
    });
    button(dialog, "Save PDF…").click();
    EXPECT_TRUE(name.seen());
  });
  EXPECT_TRUE(wordsOnPaper(folder_.filePath("order.pdf")).startsWith("Work order"));
  EXPECT_EQ(wordBoxes(folder_.filePath("order.pdf")).page.size().toSize(), QSize(612, 792));
}

TEST_F(SheetsWindow, PrintsTheSheetThatIsShown) {
  withSheet(ui::SheetKind::PitCard, [&](QDialog& dialog) {
    DialogAnswer printing([&](QDialog& asked) {
      auto& print = dynamic_cast<QPrintDialog&>(asked);
      print.printer()->setOutputFileName(folder_.filePath("card.pdf"));
      print.done(QDialog::Accepted);
    });
    button(dialog, "Print…").click();
    EXPECT_TRUE(printing.seen());
  });
  EXPECT_TRUE(wordsOnPaper(folder_.filePath("card.pdf")).contains("End of the straight"));
}

TEST_F(SheetsWindow, PartsAreCopiedAsText) {
  withSheet(ui::SheetKind::Parts, [&](QDialog& dialog) { button(dialog, "Copy as Text").click(); });
  EXPECT_TRUE(QApplication::clipboard()->text().startsWith("Parts to order: "));
}

TEST_F(SheetsWindow, TheShopsLineAndLogoAreKeptAndStandAtTheHead) {
  QImage picture(40, 20, QImage::Format_RGB32);
  picture.fill(Qt::red);
  const QString file = folder_.filePath("logo.png");
  ASSERT_TRUE(picture.save(file));
  {
    ui::ShopDialog dialog;
    dialog.findChild<QLineEdit*>()->setText("  The Shop\tat the Corner ");
    dialog.useLogo(folder_.filePath("gone.png"));
    EXPECT_TRUE(control<QLabel>(dialog, "Message").text().contains("no such file"));
    dialog.useLogo(file);
    dialog.accept();
  }
  EXPECT_EQ(ui::preferences::shopLine(), "The Shop at the Corner");
  EXPECT_EQ(ui::preferences::shopLogo(), file);
  {
    ui::ShopDialog dialog;
    EXPECT_FALSE(control<QLabel>(dialog, "Logo").pixmap().isNull());
    dialog.useLogo({});
    dialog.reject();
  }
  EXPECT_EQ(ui::preferences::shopLogo(), file) << "what is not accepted is not kept";
  withSheet(ui::SheetKind::Bench,
            [&](QDialog& dialog) { EXPECT_FALSE(control<QLabel>(dialog, "Message").isVisible()); });
  QFile::remove(file);
  withSheet(ui::SheetKind::Bench, [&](QDialog& dialog) {
    EXPECT_TRUE(control<QLabel>(dialog, "Message").text().contains("cannot be read"));
  });
}

}  // namespace
}  // namespace layshaft::test
