// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <vector>

#include "core/plan.h"
#include "ui/document/setup_edits.h"
#include "ui/editors/calm_spin_box.h"
#include "ui/editors/station.h"
#include "ui/editors/tyre_field.h"
#include "ui/words/units_shown.h"

class QHBoxLayout;
class QLabel;
class QPushButton;

namespace layshaft::ui {

class FlowLayout;

/// The strip of controls in the order power flows, from the rev limit to the road, for the proposal or, by a
/// switch, for stock; between the stations the running ratios, so that the strip reads as a sum.
class DriveLine : public QWidget {
  Q_OBJECT
 public:
  explicit DriveLine(Document& document, QWidget* parent = nullptr);

  void show(const SharedPlan& plan, const UnitsShown& units);
  Side side() const { return side_; }
  void setSide(Side side);

  /// Gives the front teeth the focus: the first thing that most people turn.
  void focusTeeth();
  /// Shows a message at the foot of the strip; empty takes the last one away.
  void say(const QString& message);

 signals:
  void sideChanged(layshaft::ui::Side side);

 protected:
  bool event(QEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  /// Stations that belong together, with the ratio they add up to written under them.
  struct Group {
    QWidget* widget;
    QHBoxLayout* row;
    QLabel* sum;
  };
  Group addGroup(FlowLayout& flow);
  Station* addStation(Group& group, const QString& label, const QString& explanation, QWidget* editor);

  void buildEngine(FlowLayout& flow);
  void buildGearbox(FlowLayout& flow);
  void buildFinalDrive(FlowLayout& flow);
  void buildWheel(FlowLayout& flow);
  QWidget* buildFoot();
  void rebuildGears(std::size_t count);
  template <class Box>
  void tellRefusals(Box* box);
  void setTabOrder();
  void fitStrip();
  void editTyreNumbers();

  void refresh();
  void refreshEngine();
  void refreshGearbox(const Setup& shown, const Setup& stock);
  void refreshFinalDrive(const Setup& shown, const Setup& stock);
  void refreshTyre(const TyreSize& tyre, const TyreSize& stockTyre);
  /// `now` and `before` in metres, measured or estimated.
  void refreshRollout(const std::optional<double>& measuredMm, const std::optional<double>& stockMeasuredMm,
                      double now, double before);
  void refreshSums();

  SetupEdits edits() { return SetupEdits(document_, side_); }
  void report(const std::optional<Problem>& problem);

  Document& document_;
  QWidget* strip_;
  FlowLayout* flow_;
  Side side_ = Side::Proposed;
  SharedPlan plan_;
  UnitsShown units_;

  WholeBox* revLimit_;
  WholeBox* shift_;
  DecimalBox* primary_;
  std::vector<DecimalBox*> gears_;
  WholeBox* front_;
  WholeBox* rear_;
  CalmComboBox* chain_;
  WholeBox* links_;
  WholeBox* beltTeeth_;
  TyreField* tyre_;
  WholeBox* width_;
  WholeBox* aspect_;
  DecimalBox* rim_;
  DecimalBox* rollout_;

  Station *revLimitStation_, *shiftStation_, *primaryStation_, *frontStation_, *rearStation_, *chainStation_,
      *linksStation_, *beltStation_, *tyreStation_, *widthStation_, *aspectStation_, *rimStation_,
      *rolloutStation_;
  std::vector<Station*> gearStations_;
  Group engine_, gearbox_, final_, wheel_;
  QLabel* message_;
  QPushButton* sideSwitch_;
  QPushButton* allBack_;
};

}  // namespace layshaft::ui
