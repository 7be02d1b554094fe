// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDialog>
#include <optional>
#include <vector>

#include "core/bike/records.h"
#include "ui/editors/calm_spin_box.h"
#include "ui/words/units_shown.h"
#include "ui/words/wear_book.h"

class QButtonGroup;
class QDateEdit;
class QDialogButtonBox;
class QFormLayout;
class QGridLayout;
class QLabel;
class QLineEdit;

namespace layshaft::ui {

class ChainSketch;

/// Leads through measuring a chain and looking at the sprockets: how it is done, what length to expect, and
/// fields for what was found. Says at once what the lengths come to and what looks wrong with them.
class MeasureDialog : public QDialog {
  Q_OBJECT
 public:
  /// The book's chain size must be known. `today`: the day that stands there to begin with.
  MeasureDialog(const WearBook& book, const UnitsShown& units, const QDate& today, QWidget* parent = nullptr);

  /// As entered; nothing while there is nothing to write down.
  std::optional<WearMeasurement> entry() const;

 private:
  void addAdvice(QLayout& column);
  void addUse(QFormLayout& form);
  void addLengths(QFormLayout& form);
  void addPlace();
  QButtonGroup* addTeeth(QFormLayout& form, const QString& label);
  void check();
  std::vector<double> lengthsMm() const;

  WearBook book_;
  UnitsShown units_;
  QDateEdit* date_;
  DecimalBox* use_;
  WholeBox* pitches_;
  QGridLayout* grid_;
  std::vector<DecimalBox*> places_;
  QButtonGroup *front_, *rear_;
  CalmComboBox* liftsOff_;
  QLineEdit* note_;
  ChainSketch* sketch_;
  QLabel *expected_, *findings_;
  QDialogButtonBox* buttons_ = nullptr;
};

}  // namespace layshaft::ui
