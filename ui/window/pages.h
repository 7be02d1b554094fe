// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QActionGroup>
#include <QTabWidget>
#include <initializer_list>
#include <vector>

#include "ui/editors/field_form.h"
#include "ui/pages/page.h"
#include "ui/words/compare_rows.h"

namespace layshaft::ui {

class AimEditor;
class ChainPage;
class ComparePage;
class GearboxesView;
class LadderPage;
class MainWindow;
class PairLapsView;
class RecordsPage;
class SeasonView;
class SlackEditor;
class TrackFields;
class WearPage;

/// The pages of a window and what they are wired to: each gets the plans, and what it asks for is done.
class Pages : public QTabWidget {
  Q_OBJECT
 public:
  explicit Pages(MainWindow& window);

  /// Its least height is that of its pages, whatever wraps inside of them: they scroll.
  bool hasHeightForWidth() const override { return false; }

  Page* current();
  /// Keeps for the next start which page is in view and how each was set up.
  void keepState() const;
  void show(const SharedPlan& plan, const UnitsShown& units);
  /// Brings what no plan depends on into view, after each change of the document.
  void follow(const Profile& profile);
  void setMotion(bool on);
  void pickRows(const std::vector<CompareFigure>& figures);  ///< of the comparison
  /// What a menu offers of the pages: each by its name, and the next and the previous one.
  QList<QAction*> pageActions() const;

 signals:
  void wanted();  ///< the user asked for a page, be it another one or the one that is there

 protected:
  void keyPressEvent(QKeyEvent* event) override;

 private:
  void addTurning();
  void addPageAction(int page);
  void choose(int page);
  void turn(int by);
  void tickCurrent();
  void add(Page* page, const QString& title);
  void addWear();
  void addLap();
  void addLadder();
  void addCompare();
  void addRecords();
  void proposePair(int frontTeeth, int rearTeeth);
  void sayProblem(const std::optional<Problem>& problem);
  QWidget* makeSlackFields();
  QWidget* makeLapFields();
  FieldForm* makeForm(std::initializer_list<void (*)(FieldForm&)> groups);
  void refreshForms();
  void dragCruise(double mps, int drag);

  MainWindow& window_;
  QActionGroup* choices_;    ///< an action for each page, in the order of the tabs
  QList<QAction*> turning_;  ///< next and previous
  std::vector<Page*> pages_;
  std::vector<FieldForm*> forms_;
  AimEditor* aims_ = nullptr;
  ChainPage* chain_ = nullptr;
  WearPage* wear_ = nullptr;
  SlackEditor* slack_ = nullptr;
  TrackFields* track_ = nullptr;
  PairLapsView* pairLaps_ = nullptr;
  SeasonView* season_ = nullptr;
  GearboxesView* gearboxes_ = nullptr;
  LadderPage* ladder_ = nullptr;
  ComparePage* compare_ = nullptr;
  RecordsPage* records_ = nullptr;
};

}  // namespace layshaft::ui
