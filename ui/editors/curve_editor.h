// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QComboBox>
#include <QLabel>
#include <QWidget>

#include "ui/document/document.h"
#include "ui/editors/columns_table.h"
#include "ui/editors/curve_preview.h"
#include "ui/words/units_shown.h"

namespace layshaft::ui {

/// What the second column of a curve may be in; power is turned into torque at its engine speed.
enum class CurveUnit { NewtonMetre, PoundFoot, Kilowatt, Horsepower, MetricHorsepower };

/// The unit that a column's title names, if it does.
std::optional<CurveUnit> curveUnitIn(const QString& title);

/// The engine's torque curve as two columns, with a picture of what was understood. Edits are live.
class CurveEditor : public QWidget {
  Q_OBJECT
 public:
  explicit CurveEditor(Document& document, QWidget* parent = nullptr);

  void refresh(const UnitsShown& units);
  /// Where the typing of a curve begins.
  void focusFirstCell();

 signals:
  void said(const QString& message);

 private:
  CurveUnit unit() const { return static_cast<CurveUnit>(unit_->currentIndex()); }
  void read();
  /// Asks for the peaks of a data sheet and takes the curve estimated from them.
  void estimate();
  /// Says why the rows are not taken; they stay as they are typed until they can be, or until the bike has
  /// another curve.
  void refuse(const QString& why);
  void nameColumns();
  void showPoints();
  void showPicture();
  QStringList cellsOf(const TorquePoint& point) const;
  /// The numbers of a column, none above `highest`.
  std::vector<std::optional<double>> numbersIn(const std::vector<QStringList>& rows, int column,
                                               double highest) const;

  Document& document_;
  UnitsShown units_;
  QComboBox* unit_;
  ColumnsTable* table_;
  CurvePreview* preview_;
  QLabel* estimated_;  ///< shown while the curve is an estimate
  bool unitChosen_ = false;
  bool reading_ = false;               ///< what is being typed stays as it is
  bool pasted_ = false;                ///< the rows to be read next come from elsewhere
  bool pending_ = false;               ///< the table holds rows that could not be taken
  std::optional<TorqueCurve> before_;  ///< the curve that the bike had then
  int step_ = 0;                       ///< each edit of the table is a step of its own
};

}  // namespace layshaft::ui
