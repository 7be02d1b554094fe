// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLabel>
#include <QWidget>

#include "ui/document/document.h"
#include "ui/editors/field_form.h"
#include "ui/words/units_shown.h"

namespace layshaft::ui {

class DecimalBox;

/// The manual's slack from low to high, in two fields. Written down once both are there and in order; what is
/// still wrong is said below them.
class SlackEditor : public QWidget {
  Q_OBJECT
 public:
  explicit SlackEditor(Document& document, QWidget* parent = nullptr);

  void refresh(const UnitsShown& units);

 signals:
  void refused(const QString& why);

 private:
  DecimalBox* addBox(const QString& name);
  void take();

  Document& document_;
  UnitsShown units_;
  DecimalBox *low_, *high_;
  QLabel* message_;
};

/// How the bike stands for that, below.
void addSlackPosture(FieldForm& form);

}  // namespace layshaft::ui
