// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/gears_dialog.h"

#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include "ui/editors/typed_gears.h"
#include "ui/editors/typed_ratio.h"

namespace layshaft::ui {

GearsDialog::GearsDialog(Document& document, const UnitsShown& units, QWidget* parent)
    : QDialog(parent), document_(document), units_(units) {
  setWindowTitle(tr("Gear Ratios"));
  auto* column = new QVBoxLayout(this);
  auto* form = new QFormLayout;
  column->addLayout(form);
  const auto addLine = [&](const QString& label, const QString& placeholder, const QString& explanation) {
    auto* edit = new QLineEdit;
    edit->setPlaceholderText(placeholder);
    edit->setToolTip(explanation);
    edit->setMinimumWidth(320);
    form->addRow(label, edit);
    connect(edit, &QLineEdit::textChanged, this, &GearsDialog::check);
    return edit;
  };
  gears_ = addLine(tr("&Gear ratios"), tr("First to last, for example 2.4 1.944, or 36/15 35/18"),
                   tr("First gear first, with blanks between. Each a number, or teeth with the driven gear's "
                      "first, or the revs at a true road speed in %1: %2 is read as 5,000 rpm at 110.")
                       .arg(units_.name(Quantity::Speed), QStringLiteral("5000@110")));
  primary_ = addLine(tr("&Primary ratio"), tr("For example 1.955, or 43/22"),
                     tr("Crankshaft turns per clutch turn, as a number or as teeth with the driven gear's "
                        "first. Empty where all gears are given as revs at a speed: then it is within the "
                        "gear ratios."));
  message_ = new QLabel;
  message_->setWordWrap(true);
  message_->setTextFormat(Qt::PlainText);  // it quotes what was typed
  message_->setMinimumHeight(message_->fontMetrics().lineSpacing() * 2);
  column->addWidget(message_);
  buttons_ = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel);
  column->addWidget(buttons_);
  connect(buttons_, &QDialogButtonBox::accepted, this, &GearsDialog::take);
  connect(buttons_, &QDialogButtonBox::rejected, this, &QDialog::reject);
  check();
}

std::optional<Setup> GearsDialog::typed(QString& complaint) const {
  Setup stock = document_.profile().stock;
  const QStringList parts = gearParts(gears_->text());
  if (parts.isEmpty()) {
    complaint = tr("Give at least one gear, as a ratio or as revs at a speed, as in %1.")
                    .arg(QStringLiteral("5000@110"));
    return std::nullopt;
  }
  const bool within = primary_->text().trimmed().isEmpty() && areReadings(parts);
  const auto primary = within ? std::optional(1.0) : typedRatio(primary_->text(), limits::kPrimaryRatio);
  if (!inside(tr("Primary ratio"), primary, limits::kPrimaryRatio, complaint)) return std::nullopt;
  stock.primaryRatio = *primary;
  const auto gears = typedGears(
      parts, units_, [&](const QString& part) { return typedGear(part, units_, stock); }, complaint);
  if (!gears) return std::nullopt;
  stock.gearRatios = *gears;
  stock.options.primaryTeeth = typedTeeth(primary_->text());
  stock.options.gearTeeth.clear();
  for (qsizetype i = 0; i < parts.size(); ++i)
    setTeethOf(stock.options.gearTeeth, static_cast<std::size_t>(i), typedTeeth(parts[i]));
  return stock;
}

void GearsDialog::check() {
  QString complaint;
  const bool good = typed(complaint).has_value();
  message_->setText(complaint);
  buttons_->button(QDialogButtonBox::Ok)->setEnabled(good);
}

void GearsDialog::take() {
  QString complaint;
  const auto stock = typed(complaint);
  if (!stock) return;
  document_.edit({.field = QStringLiteral("stock.gear_ratios"), .title = tr("gear ratios"), .shown = {}},
                 [&](Profile& profile) { profile.stock = *stock; });
  accept();
}

}  // namespace layshaft::ui
