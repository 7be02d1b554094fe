// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QMainWindow>
#include <initializer_list>
#include <vector>

#include "ui/document/document.h"
#include "ui/document/file_watch.h"
#include "ui/document/recovery.h"
#include "ui/editors/drive_line.h"
#include "ui/editors/field_form.h"
#include "ui/pages/page.h"
#include "ui/planner.h"
#include "ui/preferences.h"
#include "ui/readout.h"

class QActionGroup;
class QTabWidget;
class QVBoxLayout;

namespace layshaft::ui {

class DetailsDialog;

/// One window: one document, its readout, pages and drive line. Several may be open at once.
class MainWindow : public QMainWindow {
  Q_OBJECT
 public:
  explicit MainWindow(Profile profile, QWidget* parent = nullptr);
  ~MainWindow() override;

  Document& document() { return document_; }
  Planner& planner() { return planner_; }
  DriveLine& driveLine() { return *driveLine_; }
  Readout& readout() { return *readout_; }
  LiveChart* currentChart();

  /// Opens a file here if this window holds nothing but an untouched sample, else in a window of its own.
  void openFile(const QString& file);
  /// Offers what a crashed program left behind.
  void offerRecovery();

  /// Makes a window that lives until it is closed.
  static MainWindow* create(Profile profile);

 protected:
  void closeEvent(QCloseEvent* event) override;
  void dragEnterEvent(QDragEnterEvent* event) override;
  void dropEvent(QDropEvent* event) override;

 private:
  void buildMenus();
  void buildFileMenu();
  void buildEditMenu();
  void buildViewMenu();
  void buildChartMenu(QMenu* menu);
  void buildBikeMenu();
  void buildHelpMenu();
  void buildHints(QVBoxLayout* column);
  void rebuildRecent(QMenu* menu);
  void rebuildPins(QMenu* menu);
  void buildFigureMenu(QMenu* menu);
  void checkFigures();
  void pickFigures();
  void refreshForms();
  FieldForm* addForm(std::initializer_list<void (*)(FieldForm&)> groups);

  void showPlan(const Plan& plan);
  void preferencesChanged();
  void updateTitle();
  void updateRevert();
  static QString recoveryQuestion(const Recovered& work);
  void recover(const Recovered& work);
  Page* currentPage();
  Picture* currentPicture();

  void newBike();
  void open();
  bool save();
  bool saveAs();
  bool saveTo(const QString& file);
  void revert();
  bool mayDiscard();
  void savePicture();
  void saveNumbers();
  void showNumbers();
  void showDetails();
  void changeGearCount(int by);

  Document document_;
  RecoveryCopy recovery_;
  FileWatch watch_;
  bool toldOfOther_ = false;  ///< that the file was changed by somebody else
  Planner planner_;
  UnitsShown units_;
  Readout* readout_;
  QTabWidget* tabs_;
  std::vector<Page*> pages_;
  std::vector<FieldForm*> forms_;
  class AimEditor* aims_ = nullptr;
  class ChainPage* chain_ = nullptr;
  class LadderPage* ladder_ = nullptr;
  std::vector<QAction*> figureChoices_;
  DriveLine* driveLine_;
  DetailsDialog* details_ = nullptr;
  QAction* revert_ = nullptr;
  QAction* motion_ = nullptr;
  QActionGroup* unitChoices_ = nullptr;
  QActionGroup* appearanceChoices_ = nullptr;
};

}  // namespace layshaft::ui
