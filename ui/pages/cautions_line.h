// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLabel>

#include "ui/words/cautions.h"

namespace layshaft::ui {

/// The cautions of a page, below all of it and never scrolled out of view.
class CautionsLine : public QLabel {
  Q_OBJECT
 public:
  explicit CautionsLine(QWidget* parent = nullptr);
  void show(const Plan& plan, CautionPlace place);
};

}  // namespace layshaft::ui
