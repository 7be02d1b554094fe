// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/prices_dialog.h"

#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QLocale>
#include <QPushButton>
#include <QVBoxLayout>

#include "core/limits.h"
#include "ui/editors/columns_table.h"
#include "ui/editors/dialog_body.h"
#include "ui/words/numbers.h"
#include "ui/words/parts_words.h"

namespace layshaft::ui {

PricesDialog::PricesDialog(TypedPrices prices, QWidget* parent)
    : QDialog(parent), before_(std::move(prices)), currency_(new QLineEdit(before_.currency)) {
  setWindowTitle(tr("Prices"));
  auto* whole = new QVBoxLayout(this);
  auto* body = new DialogBody;
  whole->addWidget(body, 1);
  QVBoxLayout* column = &body->column();
  auto* intro = new QLabel(
      tr("What you pay for a part, for the list of parts to order. They are kept with this bike."));
  intro->setWordWrap(true);
  column->addWidget(intro);
  auto* form = new QFormLayout;
  column->addLayout(form);
  currency_->setPlaceholderText(tr("As you write it, such as EUR or £"));
  currency_->setMaxLength(static_cast<int>(limits::kLongestName));
  form->addRow(tr("&Currency"), currency_);
  QLocale plain;  // a number that is edited has no separators of thousands
  plain.setNumberOptions(QLocale::OmitGroupSeparator);
  for (const auto& [part, word] : kPricedPartWords) {
    const auto known = before_.parts.find(part);
    auto* field =
        new QLineEdit(known == before_.parts.end() ? QString() : plain.toString(known->second, 'f', 2));
    field->setPlaceholderText(tr("No price"));
    field->setAlignment(Qt::AlignRight);
    connect(field, &QLineEdit::textChanged, this, &PricesDialog::check);
    form->addRow(pricedPartName(part), field);
    rows_.push_back({part, field, field->text()});
  }
  message_ = new QLabel;
  message_->setWordWrap(true);
  message_->setAccessibleName(tr("Message"));
  message_->setMinimumHeight(message_->fontMetrics().lineSpacing() * 2);
  whole->addWidget(message_);
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel);
  accept_ = buttons->button(QDialogButtonBox::Ok);
  whole->addWidget(buttons);
  connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
  check();
  fitToScreen(*this);
}

std::optional<TypedPrices> PricesDialog::prices() const {
  TypedPrices typed{.currency = currency_->text(), .parts = {}};
  for (const Row& row : rows_) {
    const QString text = row.field->text().trimmed();
    if (text.isEmpty()) continue;
    const auto price = typedNumber(text, limits::kPrice.high);
    if (!price || !limits::kPrice.contains(*price)) return std::nullopt;
    // What nobody touched stays as it was, to the last digit.
    typed.parts[row.part] = row.field->text() == row.before ? before_.parts.at(row.part) : *price;
  }
  return typed;
}

void PricesDialog::check() {
  const bool good = prices().has_value();
  message_->setText(good ? QString()
                         : tr("A price is a number from %1 to %2, or nothing.")
                               .arg(number(limits::kPrice.low, 0), number(limits::kPrice.high, 0)));
  accept_->setEnabled(good);
}

}  // namespace layshaft::ui
