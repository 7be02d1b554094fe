// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QMainWindow>
#include <memory>

#include "ui/charts/readout.h"
#include "ui/document/session.h"
#include "ui/editors/drive_line.h"
#include "ui/pages/page.h"
#include "ui/words/units_shown.h"

namespace layshaft::ui {

class BikeDetails;
class ContentScroll;
class FileActions;
class Pages;
class SpokenHeadline;
class ViewMenu;
class WindowPlace;

/// One window on a session: arranges readout, pages and drive line, and brings each the plan. What its menus
/// do is written where they are made.
class MainWindow : public QMainWindow {
  Q_OBJECT
 public:
  explicit MainWindow(Profile profile, QWidget* parent = nullptr);
  ~MainWindow() override;

  Session& session() { return *session_; }
  /// For another window on it.
  std::shared_ptr<Session> sharedSession() const { return session_; }
  Document& document() { return session_->document(); }
  const Document& document() const { return session_->document(); }
  Planner& planner() { return session_->planner(); }
  DriveLine& driveLine() { return *driveLine_; }
  Readout& readout() { return *readout_; }
  const UnitsShown& units() const { return units_; }
  Page* currentPage();
  QString currentPageTitle() const;
  QString currentPageName() const;  ///< as its tab calls it, in small letters
  LiveChart* currentChart();
  Picture* currentPicture();

  /// Opens a file here if this window holds nothing but an untouched sample, else in a window of its own.
  void openFile(const QString& file);
  /// Goes on with the file that was worked on last, where the user wants that.
  void openLastFile();
  /// Offers what a crashed program left behind.
  void offerRecovery();
  /// Opens the bike's details and moves the focus in, to the field with that key if one is named.
  /// What is typed elsewhere is asked for there: in the drive line, or in a dialog.
  void showDetails(std::string_view key = {});
  void askForGears();
  void closeDetails();
  /// Moves the focus into the bike's details, opened if need be, or back from there.
  void toggleDetailsFocus();
  /// Brings the pages into view, where a low or narrow window shows something else.
  void showPage();
  /// One line at the window's foot; empty takes the last one away.
  void say(const QString& message);

  /// Makes a window that lives until it is closed.
  static MainWindow* create(Profile profile);
  /// Shows a window on a bike of which nothing is on disk yet: closing it asks.
  static void showUnsaved(const Profile& profile);
  /// All that are open.
  static QList<MainWindow*> all();
  /// Brings what the program remembers into all windows, after something of it changed.
  static void allPreferencesChanged();

 signals:
  void detailsToggled(bool open);
  void preferencesTaken();  ///< units among them

 protected:
  void closeEvent(QCloseEvent* event) override;
  void changeEvent(QEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void dragEnterEvent(QDragEnterEvent* event) override;
  void dropEvent(QDropEvent* event) override;

 private:
  void buildMenus();
  void fitHeight();
  void sharePlace();
  void openDetails();
  void showPlan();
  void followDocument();
  void preferencesChanged();
  void updateTitle();

  std::shared_ptr<Session> session_;
  UnitsShown units_;
  Readout* readout_;
  ContentScroll* scroll_;  ///< readout, pages and details, one below the other
  QMainWindow* docks_;  ///< inside the window: docks take room from the pages, not from readout or drive line
  Pages* pages_;
  QWidget* pagesPlace_;  ///< what holds the pages
  DriveLine* driveLine_;
  BikeDetails* details_ = nullptr;
  FileActions* files_;
  SpokenHeadline* spoken_;
  ViewMenu* view_ = nullptr;
  WindowPlace* place_ = nullptr;
};

}  // namespace layshaft::ui
