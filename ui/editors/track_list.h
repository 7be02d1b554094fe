// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <cstddef>
#include <optional>

#include "core/bike/profile.h"
#include "ui/words/units_shown.h"

class QGridLayout;
class QPushButton;
class QTreeWidget;

namespace layshaft::ui {

/// The bike's tracks by name, length and kind, the one that is ridden marked, and what can be done with them.
class TrackList : public QWidget {
  Q_OBJECT
 public:
  explicit TrackList(QWidget* parent = nullptr);

  /// The track that is looked at stays so; at first it is the one that is ridden.
  void show(const Profile& profile, const UnitsShown& units);
  using QWidget::show;
  std::optional<std::size_t> current() const;  ///< none where there are no tracks
  void look(std::size_t track);

 signals:
  void currentChanged();  ///< by the user
  void newWanted();
  void duplicateWanted();
  void removeWanted();
  void rideWanted();
  void importWanted();
  void anotherBikeWanted();
  void exportWanted();

 private:
  QPushButton* addButton(const QString& text, const QString& help, void (TrackList::*wanted)());
  void offer();

  QTreeWidget* list_;
  QGridLayout* buttons_;
  QPushButton *duplicate_, *remove_, *ride_, *export_;
  std::optional<std::size_t> ridden_;
  bool filling_ = false;  ///< nobody chooses
};

}  // namespace layshaft::ui
