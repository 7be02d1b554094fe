// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPushButton>
#include <QWidget>
#include <vector>

namespace layshaft::ui {

/// A screen of the counter view with one question and a large button for each answer.
class CounterQuestion : public QWidget {
  Q_OBJECT
 public:
  struct Answer {
    QString name, meaning;
  };
  CounterQuestion(const QString& question, const std::vector<Answer>& answers, QWidget* parent = nullptr);

  /// Gives the focus to the answer that was chosen last, at first to the first one.
  void takeFocus();

 signals:
  void answered(int answer);

 private:
  std::vector<QPushButton*> buttons_;
  std::size_t last_ = 0;
};

}  // namespace layshaft::ui
