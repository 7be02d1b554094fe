// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDialog>

class QLabel;

namespace layshaft::ui {

class MainWindow;
class TracksEditor;

/// The bike's tracks beside its window, and what is done with files of them.
class TracksWindow : public QDialog {
  Q_OBJECT
 public:
  /// Shows the one of a window. It is kept when it is closed, with what is still to be mended in it.
  static void open(MainWindow& window);

  /// Asks which lap of a recording becomes a track.
  void importRecording(const QString& file);
  /// Asks which of the tracks of another profile to copy.
  void copyFrom(const QString& file);

 protected:
  void showEvent(QShowEvent* event) override;

 private:
  explicit TracksWindow(MainWindow& window);
  void askForRecording();
  void askForBike();
  void save(std::size_t track);

  MainWindow& window_;
  TracksEditor* tracks_;
  QLabel* message_;
};

}  // namespace layshaft::ui
