// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAction>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QRadioButton>
#include <QStackedWidget>
#include <QTableView>
#include <optional>

#include "ui/charts/note_chart.h"
#include "ui/pages/page.h"
#include "ui/pages/records_model.h"

namespace layshaft::ui {

/// What was done, measured and tried, the newest first, and what came of each final ratio that was ridden.
class RecordsPage : public Page {
  Q_OBJECT
 public:
  explicit RecordsPage(QWidget* parent = nullptr);

  /// What is written down in the profile, after each change of it.
  void use(const Profile& profile);

  LiveChart* chart() override { return chart_; }
  Picture* picture() override;
  QWidget* mainPart() override { return table_; }
  std::vector<QStringList> numbers() const override;
  QString csv() const override;
  QVariantMap state() const override;
  void restore(const QVariantMap& state) override;

 signals:
  void serviceWanted();
  void trackNoteWanted();
  void strikeWanted(const layshaft::RecordRef& entry);
  void setupWanted(std::size_t trackNote);  ///< that note's setup is to become the proposal
  void readWanted();                        ///< a table out of a file
  void writeWanted();                       ///< all records into one

 protected:
  void build() override;
  void showPlan() override;

 private:
  QLayout* makeBar();
  QTableView* makeTable();
  QWidget* makeSide();
  void makeActions();
  void showRecords();
  void showChart();
  void sayWhatCanBeDone();
  void openRowMenu(const QPoint& at);
  std::optional<int> currentRow() const;  ///< of the model

  std::optional<Profile> profile_;  ///< as the records were last; copies share their entries
  bool dirty_ = true;
  bool ownWidths_ = false;  ///< columns are as wide as they were set or fitted once
  RecordsModel model_;
  RecordsFilter filter_{&model_};
  UnitsShown shownIn_;
  QTableView* table_ = nullptr;
  QLineEdit* search_ = nullptr;
  QComboBox* kind_ = nullptr;
  QLabel *empty_ = nullptr, *noChart_ = nullptr;
  NoteChart* chart_ = nullptr;
  QStackedWidget* stack_ = nullptr;
  QRadioButton *lapTime_ = nullptr, *rating_ = nullptr;
  QPushButton *strike_ = nullptr, *propose_ = nullptr;
  QAction *strikeAction_ = nullptr, *proposeAction_ = nullptr;
};

}  // namespace layshaft::ui
