// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QCheckBox>

#include "core/bike/record_list.h"
#include "ui/editors/record_form.h"
#include "ui/words/units_shown.h"

/// The forms for what is written down by hand.
namespace layshaft::ui {

/// Work that was done. `start` is what the fields hold at first.
class ServiceDialog : public RecordForm {
  Q_OBJECT
 public:
  ServiceDialog(const Service& start, UseUnit useUnit, const UnitsShown& units, QWidget* parent = nullptr);
  /// As entered; of use where nothing is wrong.
  Service entry() const;

 private:
  QString complaint() const override;
  Service read(QString& complaint) const;

  UseUnit useUnit_;
  UnitsShown units_;
  QDateEdit* day_;
  QLineEdit* use_;
  QCheckBox *chain_, *front_, *rear_;
  QPlainTextEdit *parts_, *note_;
};

/// How a setup went. The setup is that of `start`.
class TrackNoteDialog : public RecordForm {
  Q_OBJECT
 public:
  explicit TrackNoteDialog(const TrackNote& start, QWidget* parent = nullptr);
  TrackNote entry() const;

 private:
  QString complaint() const override;
  TrackNote read(QString& complaint) const;

  TrackNote start_;
  QDateEdit* day_;
  QLineEdit *place_, *weather_, *gear_, *rpm_, *lapTime_;
  QComboBox *surface_, *limiter_, *rating_;
  QPlainTextEdit* words_;
};

/// Why an entry no longer counts.
class StrikeDialog : public RecordForm {
  Q_OBJECT
 public:
  StrikeDialog(const QString& entry, const Date& today, QWidget* parent = nullptr);
  Struck struck() const;

 private:
  QString complaint() const override;

  Date today_;
  QLineEdit* reason_;
};

}  // namespace layshaft::ui
