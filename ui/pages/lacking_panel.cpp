// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/lacking_panel.h"

#include <QVBoxLayout>

#include "ui/words/road_words.h"

namespace layshaft::ui {

LackingPanel::LackingPanel(QWidget* parent) : QWidget(parent), words_(new QLabel) {
  words_->setWordWrap(true);
  words_->setAlignment(Qt::AlignHCenter);
  auto* button = new QPushButton(tr("Fill Them In…"));
  connect(button, &QPushButton::clicked, this, [this] { emit detailsWanted(first_); });
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(80, 20, 80, 20);
  column->addStretch();
  column->addWidget(words_);
  column->addWidget(button, 0, Qt::AlignHCenter);
  column->addStretch();
}

void LackingPanel::show(const QString& what, const std::vector<std::string_view>& keys) {
  first_ = keys.empty() ? std::string_view() : keys.front();
  words_->setText(lackingWords(what, keys));
}

void LackingPanel::showWrong(const QString& what, std::string_view key) {
  first_ = key;
  words_->setText(what);
}

}  // namespace layshaft::ui
