// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDialog>
#include <vector>

#include "ui/document.h"
#include "ui/editors/columns_table.h"
#include "ui/editors/field_form.h"
#include "ui/units_shown.h"

class QLabel;
class QTabWidget;

namespace layshaft::ui {

/// Everything about the bike that is not in the drive line: engine curve, chassis, chain run, speedometer,
/// ride and spares box. Stays open beside the window; every edit is live and can be undone.
class DetailsDialog : public QDialog {
  Q_OBJECT
 public:
  explicit DetailsDialog(Document& document, QWidget* parent = nullptr);

  void refresh(const UnitsShown& units);

 protected:
  void showEvent(QShowEvent* event) override;

 private:
  FieldForm* addForm(const QString& title, const QString& heading);
  void buildBike();
  void buildEngine();
  void buildChassis();
  void buildChainRun();
  void buildSprockets();
  void buildTyre();
  void buildSpeedometer();
  void buildRide();
  void buildSparesBox();
  void readSpares();
  void refreshSpares();
  void say(const QString& message);

  Document& document_;
  UnitsShown units_;
  QTabWidget* tabs_;
  std::vector<FieldForm*> forms_;
  class CurveEditor* curve_ = nullptr;
  ColumnsTable* spareFronts_ = nullptr;
  ColumnsTable* spareRears_ = nullptr;
  ColumnsTable* spareChains_ = nullptr;
  QLabel* message_;
  bool reading_ = false;  ///< a table is being read: what the user is typing stays as it is
};

}  // namespace layshaft::ui
