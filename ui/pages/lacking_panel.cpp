// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/lacking_panel.h"

#include <QVBoxLayout>

namespace layshaft::ui {

LackingPanel::LackingPanel(QWidget* parent) : QWidget(parent), words_(new QLabel) {
  words_->setWordWrap(true);
  words_->setAlignment(Qt::AlignHCenter);
  auto* button = new QPushButton(tr("Fill them in…"));
  connect(button, &QPushButton::clicked, this, &LackingPanel::detailsWanted);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(80, 20, 80, 20);
  column->addStretch();
  column->addWidget(words_);
  column->addWidget(button, 0, Qt::AlignHCenter);
  column->addStretch();
}

void LackingPanel::show(const QString& what, const QStringList& fields) {
  words_->setText(tr("%1 Missing: %2.").arg(what, fields.join(tr(", "))));
}

}  // namespace layshaft::ui
