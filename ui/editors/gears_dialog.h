// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDialog>
#include <optional>

#include "core/bike/setup.h"
#include "ui/document/document.h"
#include "ui/words/units_shown.h"

class QDialogButtonBox;
class QLabel;
class QLineEdit;

namespace layshaft::ui {

/// Asks for the gearbox of a bike of which it is not known yet, and gives it to stock.
class GearsDialog : public QDialog {
  Q_OBJECT
 public:
  GearsDialog(Document& document, const UnitsShown& units, QWidget* parent = nullptr);

 private:
  /// Stock with the gears as typed; nothing, and why, while something is missing or wrong.
  std::optional<Setup> typed(QString& complaint) const;
  void check();
  void take();

  Document& document_;
  UnitsShown units_;
  QLineEdit* primary_;
  QLineEdit* gears_;
  QLabel* message_;
  QDialogButtonBox* buttons_;
};

}  // namespace layshaft::ui
