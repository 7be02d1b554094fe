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
  /// Brings the editor of a key of the profile into view and gives it the focus. What is typed in the drive
  /// line alone has none here.
  void showFieldsFor(std::string_view key);

 protected:
  void showEvent(QShowEvent* event) override;

 private:
  FieldForm* addForm(const QString& title, const QString& heading);
  void buildBikeAndEngine();
  void buildChassisAndTyre();
  void buildChainRun();
  void buildSprockets();
  void buildRide();
  void buildSparesBox();
  /// Turns to the page that holds a widget and gives it the focus.
  void lead(QWidget* to);
  void say(const QString& message);

  Document& document_;
  UnitsShown units_;
  QTabWidget* tabs_;
  std::vector<FieldForm*> forms_;
  class CurveEditor* curve_ = nullptr;
  class SparesEditor* spares_ = nullptr;
  QLabel* message_;
};

}  // namespace layshaft::ui
