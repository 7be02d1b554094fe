// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLabel>
#include <QToolButton>
#include <QWidget>

namespace layshaft::ui {

/// Holds a widget whose text changes while a value is turned. It gives the widget all of its own size, fixed,
/// so that a new text never asks the layouts of the window to start afresh: that costs more than painting it.
class SteadyPlace : public QWidget {
  Q_OBJECT
 public:
  explicit SteadyPlace(QWidget* held, QWidget* parent = nullptr);

  QSize sizeHint() const override;
  QSize minimumSizeHint() const override { return {0, sizeHint().height()}; }

 protected:
  void resizeEvent(QResizeEvent* event) override;

 private:
  QWidget* held_;
};

/// One stop of the drive line: its name, the editor of the value, stock's value muted under it, and, where
/// the proposal differs, the difference and a way back to stock.
class Station : public QWidget {
  Q_OBJECT
 public:
  Station(const QString& label, const QString& explanation, QWidget* editor, QWidget* parent = nullptr);

  QWidget* editor() const { return editor_; }
  QWidget* backButton() const { return back_; }
  /// Gives the editor the focus with all of it selected, also where it has the focus already.
  void focusEditor();

  /// `stock` as people read it; `difference` is empty while the value follows stock.
  void showStock(const QString& stock, const QString& difference);
  /// Under a field that has no stock of its own.
  void showNote(const QString& note);

 signals:
  void backToStock();

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  QLabel* label_;
  QWidget* editor_;
  QLabel* stock_;
  QToolButton* back_;
};

}  // namespace layshaft::ui
