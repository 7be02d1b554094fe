// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLabel>

#include "ui/pages/page.h"

namespace layshaft::ui {

/// One way to look at the laps of a bike: a page inside the Lap page.
class LapView : public Page {
  Q_OBJECT
 public:
  using Page::Page;

  /// What stands above the conditions while the view is looked at; null where nothing does. There once the
  /// view is built; whoever asks places it.
  virtual QWidget* beside() { return nullptr; }

 protected:
  /// For what is told in sentences above pictures and tables, which must not jump with each step.
  QLabel* makeWords(const QString& name) const {
    constexpr int kLines = 2;  // that the words have in any case
    auto* words = new QLabel;
    words->setWordWrap(true);
    words->setTextFormat(Qt::PlainText);  // it quotes names of the file
    words->setAccessibleName(name);
    words->setAlignment(Qt::AlignLeft | Qt::AlignTop);
    words->setMinimumHeight(kLines * fontMetrics().lineSpacing());
    return words;
  }
};

}  // namespace layshaft::ui
