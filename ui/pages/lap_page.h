// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLabel>
#include <QStackedWidget>
#include <QTabBar>
#include <QVBoxLayout>
#include <vector>

#include "ui/pages/lap_view.h"

namespace layshaft::ui {

/// Laps of the track that is ridden, looked at in several ways; the conditions that all of them depend on
/// stand beside them. While the bike has no lap the first view says what that takes.
class LapPage : public Page {
  Q_OBJECT
 public:
  /// `conditions` edit what the laps depend on.
  explicit LapPage(MakeWidget conditions, QWidget* parent = nullptr);

  /// `word` is what settings call the view. Before the page is first shown.
  void add(LapView* view, const QString& title, const QString& word);

  LiveChart* chart() override;
  Picture* picture() override;
  QWidget* mainPart() override;
  std::vector<QStringList> numbers() const override;
  QString csv() const override;
  QVariantMap state() const override;
  void restore(const QVariantMap& state) override;

 protected:
  void build() override;
  void showPlan() override;
  LiveChart* ownChart() override { return nullptr; }

 private:
  struct Place {
    LapView* view;
    QString word;
  };
  QWidget* side();
  LapView* view() const;
  bool laps() const;  ///< stock and proposal both do
  void look();
  void placeBeside(LapView& view);

  MakeWidget makeConditions_;
  std::vector<Place> views_;
  QTabBar* bar_;
  QStackedWidget* stack_;
  QVBoxLayout* side_ = nullptr;
  QLabel* honesty_ = nullptr;
};

}  // namespace layshaft::ui
