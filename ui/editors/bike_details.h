// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDockWidget>
#include <QPointer>
#include <vector>

#include "ui/document/document.h"
#include "ui/editors/field_form.h"
#include "ui/words/units_shown.h"

class QLabel;
class QTabWidget;

namespace layshaft::ui {

/// Everything about the bike that is not in the drive line: engine curve, chassis, chain run, speedometer,
/// ride and spares box. A dock beside the pages, so that the chart stays in view; every edit is live and can
/// be undone.
class BikeDetails : public QDockWidget {
  Q_OBJECT
 public:
  explicit BikeDetails(Document& document, QWidget* parent = nullptr);

  void refresh(const UnitsShown& units);
  /// Brings the editor of a key of the profile into view and gives it the focus. What is typed in the drive
  /// line alone has none here.
  void showFieldsFor(std::string_view key);
  /// Gives the focus to the field that had it last, or the first.
  void takeFocus();
  bool holdsFocus() const;
  /// Gives the focus back to where it was; typed text is taken.
  void giveFocusBack();

 signals:
  void leftForNowhere();  ///< the focus is to go back, but where it was is gone

 protected:
  bool event(QEvent* event) override;
  void showEvent(QShowEvent* event) override;
  void closeEvent(QCloseEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void addList();
  void addPage(QWidget* page, const QString& title);
  /// Remembers what has the focus now, as one of these fields or as the place to go back to.
  void noteFocus();
  /// Docked or set free, the fields keep the focus that they had.
  void keepFocus();
  FieldForm* addForm(const QString& title, const QString& heading);
  void buildBikeAndEngine();
  void buildChassisAndTyre();
  /// Makes the bike one of the class chosen, with what is usual in it where nothing is given.
  void takeTypical();
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
  class ClassChooser* class_ = nullptr;
  class CurveEditor* curve_ = nullptr;
  class SparesEditor* spares_ = nullptr;
  QLabel* message_;
  QPointer<QWidget> outside_;  ///< what had the focus before it came here
  QPointer<QWidget> inside_;   ///< what had it here last
  bool hadFocus_ = false;      ///< when things were settled last
};

}  // namespace layshaft::ui
