// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDialog>
#include <vector>

#include "ui/document/document.h"
#include "ui/editors/field_form.h"
#include "ui/words/units_shown.h"

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
  /// Brings the page to the front where a key of the profile is typed.
  void showFieldsFor(std::string_view key);

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
  void say(const QString& message);

  Document& document_;
  UnitsShown units_;
  QTabWidget* tabs_;
  std::vector<FieldForm*> forms_;
  class CurveEditor* curve_ = nullptr;
  class SparesEditor* spares_ = nullptr;
  FieldForm* chassis_ = nullptr;
  FieldForm* chainRun_ = nullptr;
  QLabel* message_;
};

}  // namespace layshaft::ui
