// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QStringList>
#include <QTableWidget>
#include <vector>

namespace layshaft::ui {

/// Figures beside a picture: a name and a few short columns, read and copied, never edited.
class FiguresTable : public QTableWidget {
  Q_OBJECT
 public:
  FiguresTable(const QString& name, int columns, QWidget* parent = nullptr);

  /// Column titles, then rows. Cells that say the same stay as they are.
  void show(const std::vector<QStringList>& rows);

  /// A row at a time can be chosen.
  void letChoose();
  /// The first rows get a box to tick before their name, the others none.
  void tick(const std::vector<bool>& rows);
  /// What it shows is out of date: greyed, until it is not.
  void fade(bool faded);

  /// As high as all of its rows, for a place that scrolls as a whole; what is too wide still scrolls
  /// sideways.
  void showWhole() {
    whole_ = true;
    setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  }

 protected:
  void resizeEvent(QResizeEvent* event) override;

 private:
  void fitColumns();

  bool whole_ = false;
  std::vector<int>
      widest_;  ///< each column's greatest width so far: columns that breathe with a step would jump
};

}  // namespace layshaft::ui
