// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/record_form.h"

#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>
#include <cmath>

#include "ui/editors/columns_table.h"
#include "ui/editors/dialog_body.h"
#include "ui/words/dates.h"
#include "ui/words/problem_words.h"

namespace layshaft::ui {
namespace {

constexpr int kWideWords = 44;  // characters

}  // namespace

RecordForm::RecordForm(const QString& title, const QString& accept, QWidget* parent)
    : QDialog(parent), form_(new QFormLayout), message_(new QLabel) {
  setWindowTitle(title);
  auto* column = new QVBoxLayout(this);
  auto* body = new DialogBody;
  body->column().addLayout(form_);
  body->column().addStretch();
  column->addWidget(body, 1);
  form_->setFieldGrowthPolicy(QFormLayout::ExpandingFieldsGrow);
  message_->setWordWrap(true);
  message_->setTextFormat(Qt::PlainText);
  message_->setMinimumHeight(2 * message_->fontMetrics().lineSpacing());
  column->addWidget(message_);
  buttons_ = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel);
  buttons_->button(QDialogButtonBox::Ok)->setText(accept);
  column->addWidget(buttons_);
  connect(buttons_, &QDialogButtonBox::accepted, this, &QDialog::accept);
  connect(buttons_, &QDialogButtonBox::rejected, this, &QDialog::reject);
  setMinimumWidth(64 * fontMetrics().averageCharWidth());
}

void RecordForm::addRow(const QString& label, QWidget* field) {
  auto* words = new QLabel(label);
  words->setBuddy(field);
  field->setAccessibleName(QString(label).remove(QLatin1Char('&')));
  form_->addRow(words, field);
}

QDateEdit* RecordForm::addDay(const QString& label, const Date& day) {
  auto* field = new QDateEdit(calendarDate(day));
  field->setCalendarPopup(true);
  field->setDateRange({1900, 1, 1}, {2999, 12, 31});
  addRow(label, field);
  connect(field, &QDateEdit::dateChanged, this, &RecordForm::check);
  return field;
}

QLineEdit* RecordForm::addLine(const QString& label, const QString& text, const QString& tip) {
  auto* field = new QLineEdit(text);
  field->setToolTip(tip);
  addRow(label, field);
  connect(field, &QLineEdit::textChanged, this, &RecordForm::check);
  return field;
}

QPlainTextEdit* RecordForm::addText(const QString& label, const QString& text, const QString& tip) {
  auto* field = new QPlainTextEdit(text);
  field->setToolTip(tip);
  field->setTabChangesFocus(true);
  field->setFixedHeight(4 * field->fontMetrics().lineSpacing());
  addRow(label, field);
  connect(field, &QPlainTextEdit::textChanged, this, &RecordForm::check);
  return field;
}

QComboBox* RecordForm::addChoice(const QString& label, const QStringList& choices, int chosen) {
  auto* field = new QComboBox;
  field->addItems(choices);
  field->setCurrentIndex(chosen);
  addRow(label, field);
  connect(field, &QComboBox::currentIndexChanged, this, &RecordForm::check);
  return field;
}

QLabel* RecordForm::addWords(const QString& label, const QString& words) {
  auto* field = new QLabel(words);
  field->setTextFormat(Qt::PlainText);
  field->setWordWrap(true);
  const int wide = kWideWords * fontMetrics().averageCharWidth();
  field->setMinimumSize(wide, field->heightForWidth(wide));
  addRow(label, field);
  field->setAccessibleName(QString());  // its words are read
  return field;
}

Date RecordForm::dayOf(const QDateEdit& field) {
  return coreDate(field.date());
}

std::string RecordForm::textOf(const QLineEdit& field) {
  return field.text().trimmed().toStdString();
}

std::string RecordForm::textOf(const QPlainTextEdit& field) {
  return field.toPlainText().trimmed().toStdString();
}

QString RecordForm::nameOf(const QWidget& field) const {
  return field.accessibleName();
}

void RecordForm::say(QString& complaint, const QWidget& field, const QString& what) const {
  if (complaint.isEmpty()) complaint = tr("%1: %2", "field and what is wrong").arg(nameOf(field), what);
}

std::optional<double> RecordForm::numberOf(const QLineEdit& field, const Limit& limit,
                                           QString& complaint) const {
  const QString text = field.text().trimmed();
  if (text.isEmpty()) return std::nullopt;
  const auto number = typedNumber(text, limit.high);
  if (number && limit.contains(*number)) return number;
  if (complaint.isEmpty())
    complaint = refusedNumber(nameOf(field),
                              {.typed = text, .low = limit.low, .high = limit.high, .noNumber = !number});
  return std::nullopt;
}

std::optional<int> RecordForm::wholeOf(const QLineEdit& field, const Limit& limit, QString& complaint) const {
  const auto number = numberOf(field, limit, complaint);
  if (!number) return std::nullopt;
  if (*number == std::floor(*number)) return static_cast<int>(*number);
  if (complaint.isEmpty())
    complaint = refusedNumber(
        nameOf(field),
        {.typed = field.text().trimmed(), .low = limit.low, .high = limit.high, .notWhole = true});
  return std::nullopt;
}

void RecordForm::begin() {
  check();
  fitToScreen(*this);
}

void RecordForm::check() {
  const QString wrong = complaint();
  message_->setText(wrong);
  buttons_->button(QDialogButtonBox::Ok)->setEnabled(wrong.isEmpty());
}

}  // namespace layshaft::ui
