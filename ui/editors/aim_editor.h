// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QComboBox>
#include <QListWidget>
#include <QPushButton>
#include <QWidget>

#include "ui/document/document.h"
#include "ui/editors/calm_spin_box.h"
#include "ui/words/units_shown.h"

namespace layshaft::ui {

/// What the ladder is asked for: a line to state an aim, and beside it the list of those stated.
class AimEditor : public QWidget {
  Q_OBJECT
 public:
  /// `note` stands under the line.
  explicit AimEditor(Document& document, QWidget* note = nullptr, QWidget* parent = nullptr);

  void refresh(const UnitsShown& units);

 signals:
  void refused(const QString& why);

 private:
  void showFields();
  void add();
  void refuse(QWidget* beside, const QString& why);
  void remove();
  Aim::Want want() const { return static_cast<Aim::Want>(want_->currentIndex()); }

  Document& document_;
  UnitsShown units_;
  QComboBox* want_;
  WholeBox* gear_;
  WholeBox* speed_;
  WholeBox* rpm_;
  WholeBox* percent_;
  QListWidget* list_;
  QPushButton* add_;
  QPushButton* remove_;
};

}  // namespace layshaft::ui
