// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDialog>
#include <optional>
#include <vector>

#include "ui/document/price_edits.h"

class QLabel;
class QLineEdit;
class QPushButton;

namespace layshaft::ui {

/// Asks what parts cost; a field that is left empty has no price.
class PricesDialog : public QDialog {
  Q_OBJECT
 public:
  explicit PricesDialog(TypedPrices prices, QWidget* parent = nullptr);

  /// As typed; none while one of them is no price.
  std::optional<TypedPrices> prices() const;

 private:
  struct Row {
    PricedPart part;
    QLineEdit* field;
    QString before;  ///< what the field showed at first, rounded
  };
  void check();

  TypedPrices before_;
  QLineEdit* currency_;
  std::vector<Row> rows_;
  QLabel* message_;
  QPushButton* accept_;
};

}  // namespace layshaft::ui
