// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDialog>
#include <vector>

#include "ui/words/key_figures.h"

class QLabel;
class QListWidget;
class QPushButton;

namespace layshaft::ui {

/// Picks the readout's figures and their order: a list to tick and to drag, which keys do, too.
class FiguresDialog : public QDialog {
  Q_OBJECT
 public:
  /// `picked` empty: the usual ones.
  FiguresDialog(SharedPlan plan, const std::vector<Figure>& picked, QWidget* parent = nullptr);

  /// What was chosen, in its order; empty: the usual ones, whatever they are.
  std::vector<Figure> chosen() const;

 private:
  void fill(const std::vector<Figure>& picked);
  void move(int by);
  void changed();
  std::vector<Figure> ticked() const;

  SharedPlan plan_;
  bool usual_;  ///< nothing was changed since they were the usual ones
  QListWidget* list_;
  QLabel* message_;
  QPushButton *up_, *down_, *accept_;
};

}  // namespace layshaft::ui
