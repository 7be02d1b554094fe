// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPointer>
#include <QWidget>
#include <optional>
#include <string_view>
#include <vector>

#include "core/plan.h"
#include "ui/editors/station.h"
#include "ui/editors/stop.h"
#include "ui/editors/tyre_field.h"
#include "ui/words/units_shown.h"

class QButtonGroup;
class QHBoxLayout;
class QLabel;
class QPushButton;
class QScrollArea;

namespace layshaft::ui {

class FlowLayout;
class PinMenu;
class RefusalBubble;

/// The strip of controls in the order power flows, from the rev limit to the road, for the proposal or, by a
/// switch, for stock; between the stations the running ratios, so that the strip reads as a sum. What its
/// stops are, each section's table says (`stop.h`).
class DriveLine : public QWidget {
  Q_OBJECT
 public:
  explicit DriveLine(Document& document, QWidget* parent = nullptr);

  void show(const SharedPlan& plan, const UnitsShown& units);
  Side side() const { return strip_.side; }
  void setSide(Side side);

  /// Gives the front teeth the focus: the first thing that most people turn.
  void focusTeeth();
  /// Gives the focus to the stop of a key of the profile; false if there is none.
  bool focusField(std::string_view key);
  /// Whether it stands in one row and scrolls sideways rather than take a second one: for low windows.
  void setOneRow(bool on);
  PinMenu& pins() { return *pins_; }
  /// Shows a message at the foot of the strip; empty takes the last one away.
  void say(const QString& message);

 signals:
  void sideChanged(layshaft::ui::Side side);

 protected:
  bool event(QEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void paintEvent(QPaintEvent* event) override;

 private:
  struct Placed {
    Stop stop;
    Station* station;
  };
  /// A section's stations, with the ratio they add up to written under them.
  struct Group {
    Section section;
    QHBoxLayout* row;
    QLabel* sum;
    std::vector<Placed> placed;
  };
  void addGroup(Section section);
  void place(Group& group, Stop stop);
  void nameAloud(const Stop& stop);
  void fitCount(Group& group, std::size_t count);
  QWidget* buildFoot();
  QPushButton* addSide(QHBoxLayout& row, Side side, const QString& text);
  void dressForSide();
  void setTabOrder();
  void fitStrip();

  void refresh();
  void refreshGroup(Group& group, const Shown& shown);
  void report(const std::optional<Problem>& problem);
  /// Says why an edit is not taken: beside its editor and at the foot.
  void refuse(QWidget& editor, const QString& why);
  void refuseSoon(QWidget& editor, const QString& why);
  void finishTyping(QWidget* editor);
  void forgetTyping();

  Strip strip_;
  QWidget* stripWidget_;
  QScrollArea* stripScroll_;
  bool oneRow_ = false;
  FlowLayout* flow_;
  SharedPlan plan_;
  std::vector<Group> groups_;
  QPointer<QWidget> edited_;     ///< the editor whose edit is being made
  bool editing_ = false;         ///< it is being made now
  QPointer<QWidget> halfTyped_;  ///< the editor in which what is typed now is refused
  bool boxRefused_ = false;  ///< the box of it has refused its text and goes back to the value from before
  QString refusedWhy_;       ///< why the document refuses it
  std::optional<Profile> untyped_;   ///< as all was when the typing began
  QPointer<RefusalBubble> refusal_;  ///< the one that the foot follows
  QLabel* message_;
  QLabel* title_;
  QButtonGroup* sides_;  ///< the two parts of the switch, by their side
  QPushButton* allBack_;
  PinMenu* pins_;
};

}  // namespace layshaft::ui
