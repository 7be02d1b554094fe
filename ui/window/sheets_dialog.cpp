// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/sheets_dialog.h"

#include <QApplication>
#include <QBuffer>
#include <QCheckBox>
#include <QClipboard>
#include <QComboBox>
#include <QDialogButtonBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QPrintPreviewWidget>
#include <QPushButton>
#include <QVBoxLayout>

#include "ui/document/preferences.h"
#include "ui/document/save_bytes.h"
#include "ui/window/main_window.h"
#include "ui/window/print_actions.h"
#include "ui/window/save_dialog.h"
#include "ui/window/shop_dialog.h"
#include "ui/words/parts_words.h"

namespace layshaft::ui {
namespace {

constexpr std::array kPapers{QPageSize::A4, QPageSize::Letter};

}  // namespace

SheetsDialog::SheetsDialog(MainWindow& window, PrintActions& printing)
    : QDialog(&window),
      window_(window),
      printing_(printing),
      input_(sheetInput(window)),
      printer_(std::make_unique<QPrinter>()),
      kinds_(new QComboBox),
      papers_(new QComboBox),
      message_(new QLabel) {
  setWindowTitle(tr("Sheets"));
  for (const SheetKind kind : kSheetKinds) kinds_->addItem(sheetName(kind));
  for (const auto paper : kPapers) papers_->addItem(QPageSize::name(paper));
  papers_->setCurrentIndex(usualPaper().id() == QPageSize::Letter ? 1 : 0);
  printer_->setResolution(sheetDpi());
  printer_->setPageSize(paper());
  preview_ = new QPrintPreviewWidget(printer_.get());
  preview_->setAccessibleName(tr("The sheet as it will be on paper"));
  auto* column = new QVBoxLayout(this);
  auto* choices = new QHBoxLayout;
  const auto choice = [&](const QString& text, QComboBox* box) {
    auto* label = new QLabel(text);
    label->setBuddy(box);
    choices->addWidget(label);
    choices->addWidget(box);
  };
  choice(tr("&Sheet"), kinds_);
  choice(tr("Pa&per"), papers_);
  auto* wide = new QCheckBox(tr("Fit &width"));
  connect(wide, &QCheckBox::toggled, preview_, [this](bool on) {
    if (on)
      preview_->fitToWidth();
    else
      preview_->fitInView();
  });
  choices->addWidget(wide);
  choices->addStretch();
  auto* shop = new QPushButton(tr("Shop Line and &Logo…"));
  shop->setAutoDefault(false);
  choices->addWidget(shop);
  column->addLayout(choices);
  column->addWidget(preview_, 1);
  message_->setWordWrap(true);
  message_->setTextFormat(Qt::PlainText);
  message_->setAccessibleName(tr("Message"));
  message_->hide();
  column->addWidget(message_);
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close);
  const auto add = [&](const QString& text, void (SheetsDialog::*act)()) {
    auto* button = buttons->addButton(text, QDialogButtonBox::ActionRole);
    connect(button, &QPushButton::clicked, this, act);
    return button;
  };
  copy_ = add(tr("&Copy as Text"), &SheetsDialog::copyText);
  add(tr("Save P&DF…"), &SheetsDialog::save);
  add(tr("P&rint…"), &SheetsDialog::print);
  column->addWidget(buttons);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  connect(shop, &QPushButton::clicked, this, &SheetsDialog::editShop);
  connect(preview_, &QPrintPreviewWidget::paintRequested, this, [this](QPrinter* on) {
    // What cannot be printed cannot be shown either; the preview stays empty then.
    if (const auto why = paintSheet(sheet(), *on)) window_.say(tr("No preview: %1.").arg(*why));
  });
  connect(kinds_, &QComboBox::currentIndexChanged, this, &SheetsDialog::refresh);
  connect(papers_, &QComboBox::currentIndexChanged, this, &SheetsDialog::refresh);
  resize(size().expandedTo(window.size() * 0.9));
  preview_->fitInView();
  refresh();
}

SheetKind SheetsDialog::kind() const {
  return kSheetKinds[static_cast<std::size_t>(kinds_->currentIndex())];
}

QPageSize SheetsDialog::paper() const {
  return QPageSize(kPapers[static_cast<std::size_t>(papers_->currentIndex())]);
}

void SheetsDialog::refresh() {
  printer_->setPageSize(paper());
  printer_->setPageOrientation(QPageLayout::Portrait);
  const bool text = kind() == SheetKind::Parts;
  copy_->setEnabled(text);
  copy_->setToolTip(text ? QString() : tr("The parts to order can be copied as text."));
  const QString logo = preferences::shopLogo();
  const bool lost = !logo.isEmpty() && !input_.shop.logo;
  message_->setText(lost ? tr("The logo cannot be read and is left out: Shop Line and Logo… chooses another.")
                         : QString());
  message_->setVisible(lost);
  preview_->updatePreview();
}

void SheetsDialog::print() {
  printing_.print(kind(), input_, paper());
}

void SheetsDialog::save() {
  saveExport(window_,
             {.word = QStringLiteral("sheet"),
              .title = tr("Save the Sheet"),
              .failure = tr("Sheet Not Saved"),
              .of = sheetWord(kind()),
              .kinds = {{tr("PDF page"), QStringLiteral(".pdf")}}},
             [this](const QString& file) -> std::optional<QString> {
               QBuffer out;
               out.open(QIODevice::WriteOnly);
               if (const auto why = writePdf(sheet(), paper(), out)) return why;
               return saveBytes(file, out.data());
             });
}

void SheetsDialog::copyText() {
  QApplication::clipboard()->setText(orderText(input_.profile, *input_.plan, input_.units));
}

void SheetsDialog::editShop() {
  ShopDialog dialog(this);
  if (dialog.exec() != QDialog::Accepted) return;
  input_ = sheetInput(window_);
  refresh();
}

}  // namespace layshaft::ui
