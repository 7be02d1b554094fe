// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/counter_question.h"

#include <QLabel>
#include <QVBoxLayout>

namespace layshaft::ui {
namespace {

constexpr int kButtonLines = 3;  // of text that a button is high at least: easily met by a finger

}  // namespace

CounterQuestion::CounterQuestion(const QString& question, const std::vector<Answer>& answers, QWidget* parent)
    : QWidget(parent) {
  auto* column = new QVBoxLayout(this);
  const int line = fontMetrics().height();
  column->setSpacing(line);
  column->setContentsMargins(2 * line, 0, 2 * line, 0);
  column->addStretch();
  auto* asked = new QLabel(question);
  asked->setAlignment(Qt::AlignCenter);
  asked->setWordWrap(true);
  QFont bold = font();
  bold.setBold(true);
  asked->setFont(bold);
  column->addWidget(asked);
  for (const Answer& answer : answers) {
    auto* button = new QPushButton(answer.name + QLatin1Char('\n') + answer.meaning);
    button->setAccessibleName(answer.name);
    button->setAccessibleDescription(answer.meaning);
    button->setAutoDefault(true);  // Enter presses it
    button->setMinimumHeight(kButtonLines * line);
    const std::size_t index = buttons_.size();
    connect(button, &QPushButton::clicked, this, [this, index] {
      last_ = index;
      emit answered(static_cast<int>(index));
    });
    column->addWidget(button);
    buttons_.push_back(button);
  }
  column->addStretch();
}

void CounterQuestion::takeFocus() {
  buttons_[last_]->setFocus();
}

}  // namespace layshaft::ui
