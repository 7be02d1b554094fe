// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/shop_dialog.h"

#include <QDialogButtonBox>
#include <QFileDialog>
#include <QFileInfo>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPixmap>
#include <QPushButton>
#include <QVBoxLayout>

#include "ui/document/file_name.h"
#include "ui/document/preferences.h"
#include "ui/sheet/logo.h"

namespace layshaft::ui {
namespace {

constexpr QSize kPictureSize(320, 110);
constexpr int kMargin = 8;

/// The logo on white, as on paper.
QPixmap shownOnPaper(const Logo& logo, double pixelRatio) {
  QPixmap pixels(kPictureSize * pixelRatio);
  pixels.setDevicePixelRatio(pixelRatio);
  pixels.fill(Qt::white);
  QPainter painter(&pixels);
  painter.setRenderHints(QPainter::Antialiasing | QPainter::SmoothPixmapTransform);
  logo.paint(painter, QRectF(QPointF(0, 0), kPictureSize).adjusted(kMargin, kMargin, -kMargin, -kMargin));
  return pixels;
}

}  // namespace

ShopDialog::ShopDialog(QWidget* parent)
    : QDialog(parent),
      line_(new QLineEdit(preferences::shopLine())),
      picture_(new QLabel),
      message_(new QLabel),
      remove_(new QPushButton(tr("&No Logo"))) {
  setWindowTitle(tr("Shop Line and Logo"));
  auto* column = new QVBoxLayout(this);
  auto* intro = new QLabel(tr("They stand at the head of every sheet that you print."));
  intro->setWordWrap(true);
  column->addWidget(intro);
  auto* form = new QFormLayout;
  column->addLayout(form);
  line_->setPlaceholderText(tr("Name, address, telephone"));
  form->addRow(tr("&Shop line"), line_);
  picture_->setFixedSize(kPictureSize);
  picture_->setFrameShape(QFrame::StyledPanel);
  picture_->setAlignment(Qt::AlignCenter);
  picture_->setAccessibleName(tr("Logo"));
  form->addRow(tr("Logo"), picture_);
  auto* choose = new QPushButton(tr("&Choose…"));
  choose->setAutoDefault(false);
  remove_->setAutoDefault(false);
  auto* row = new QHBoxLayout;
  row->addWidget(choose);
  row->addWidget(remove_);
  row->addStretch();
  form->addRow(QString(), row);
  message_->setWordWrap(true);
  message_->setTextFormat(Qt::PlainText);
  message_->setAccessibleName(tr("Message"));
  message_->setMinimumHeight(message_->fontMetrics().lineSpacing() * 2);
  column->addWidget(message_);
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel);
  column->addWidget(buttons);
  connect(buttons, &QDialogButtonBox::accepted, this, &ShopDialog::accept);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  connect(choose, &QPushButton::clicked, this, &ShopDialog::choose);
  connect(remove_, &QPushButton::clicked, this, [this] { useLogo({}); });
  useLogo({});
  if (const QString logo = preferences::shopLogo(); !logo.isEmpty()) useLogo(logo);
}

void ShopDialog::choose() {
  const QString file =
      QFileDialog::getOpenFileName(this, tr("Choose a Logo"), QFileInfo(logo_).absolutePath(),
                                   tr("Pictures (*.svg *.png *.jpg *.jpeg);;All files (*)"));
  if (!file.isEmpty()) useLogo(file);
}

void ShopDialog::useLogo(const QString& file) {
  message_->clear();
  if (!file.isEmpty()) {
    QString why;
    const auto logo = Logo::fromFile(file, &why);
    if (!logo) {
      message_->setText(tr("%1 is no logo: %2.", "a file and why").arg(shownFile(file), why));
      return;
    }
    picture_->setPixmap(shownOnPaper(*logo, devicePixelRatioF()));
    message_->setText(shownFile(file));
  } else {
    picture_->setText(tr("No logo"));
  }
  logo_ = file;
  remove_->setEnabled(!file.isEmpty());
}

void ShopDialog::accept() {
  preferences::setShopLine(line_->text().simplified());
  preferences::setShopLogo(logo_);
  QDialog::accept();
}

}  // namespace layshaft::ui
