// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDialog>
#include <optional>

#include "core/parts/peak_curve.h"
#include "ui/words/units_shown.h"

class QComboBox;
class QDialogButtonBox;
class QLabel;
class QLineEdit;

namespace layshaft::ui {

/// What is said of peaks from which no curve can be estimated.
QString peaksRefused(const Problem& problem, const UnitsShown& units);

/// The peaks in a line: "65.5 N·m at 11,500 rpm, 83.7 kW at 13,000 rpm".
QString peaksWords(const EnginePeaks& peaks, const UnitsShown& units);

/// Asks for an engine's highest torque and power, each with its engine speed and, if it is typed, its unit;
/// says what is wrong with them until a curve can be estimated.
class PeaksDialog : public QDialog {
  Q_OBJECT
 public:
  PeaksDialog(double revLimitRpm, const UnitsShown& units, QWidget* parent = nullptr);

  /// As entered; nothing while something is missing or wrong.
  std::optional<EnginePeaks> peaks() const;
  /// The curve estimated from them.
  std::optional<TorqueCurve> curve() const;

 private:
  std::optional<EnginePeaks> typed(QString& complaint) const;
  void check();

  double revLimitRpm_;
  QLineEdit* torque_;
  QComboBox* torqueUnit_;
  QLineEdit* torqueRpm_;
  QLineEdit* power_;
  QComboBox* powerUnit_;
  QLineEdit* powerRpm_;
  QLabel* message_;
  QDialogButtonBox* buttons_;
};

}  // namespace layshaft::ui
