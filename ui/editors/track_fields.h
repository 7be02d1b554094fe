// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFormLayout>
#include <QWidget>
#include <utility>
#include <vector>

#include "ui/document/document.h"
#include "ui/document/track_edits.h"
#include "ui/words/units_shown.h"

namespace layshaft::ui {

class CalmComboBox;
class DecimalBox;

/// Which track is ridden, and how hard: beside the picture that it changes.
class TrackFields : public QWidget {
  Q_OBJECT
 public:
  explicit TrackFields(Document& document, QWidget* parent = nullptr);

  void refresh(const UnitsShown& units);

 signals:
  void refused(const QString& why);

 private:
  void addChoice();
  void addEffort(TrackEffort effort);
  void take(DecimalBox& box, TrackEffort effort);
  void refuse(QWidget& field, const QString& why);

  Document& document_;
  QFormLayout* layout_;
  CalmComboBox* tracks_ = nullptr;
  std::vector<std::pair<TrackEffort, DecimalBox*>> efforts_;
};

}  // namespace layshaft::ui
