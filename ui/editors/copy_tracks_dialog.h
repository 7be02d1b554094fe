// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDialog>
#include <vector>

#include "core/bike/track.h"
#include "ui/words/units_shown.h"

class QListWidget;

namespace layshaft::ui {

/// Asks which of another bike's tracks to copy.
class CopyTracksDialog : public QDialog {
  Q_OBJECT
 public:
  CopyTracksDialog(const std::vector<Track>& tracks, const QString& bike, const UnitsShown& units,
                   QWidget* parent = nullptr);

  std::vector<Track> chosen() const;

 private:
  std::vector<Track> tracks_;
  QListWidget* list_;
};

}  // namespace layshaft::ui
