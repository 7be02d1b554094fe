// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLabel>
#include <QPushButton>
#include <QRadioButton>
#include <QStackedWidget>
#include <QToolButton>
#include <cstddef>
#include <optional>

#include "ui/charts/marked_slider.h"
#include "ui/charts/tooth_drawing.h"
#include "ui/charts/wear_gauge.h"
#include "ui/charts/wear_trend.h"
#include "ui/pages/cautions_line.h"
#include "ui/pages/figures_table.h"
#include "ui/pages/lacking_panel.h"
#include "ui/pages/page.h"
#include "ui/words/wear_book.h"

namespace layshaft::ui {

/// How worn chain and sprockets are: the verdict, a gauge, the teeth with the chain on them, the trend over
/// use and the measurements. What is asked for is done by the window.
class WearPage : public Page {
  Q_OBJECT
 public:
  /// `makeSlack`: the fields of the manual's slack.
  explicit WearPage(MakeWidget makeSlack, QWidget* parent = nullptr);

  void use(const WearBook& book);
  const std::optional<WearBook>& book() const { return book_; }

  LiveChart* chart() override { return trend_; }
  /// The trend; the teeth while the menu is open that was asked for on them.
  Picture* picture() override;
  std::vector<QStringList> numbers() const override;
  QString csv() const override;

 signals:
  void measuringWanted();
  void strikingWanted(std::size_t index);  ///< the place of the entry in the profile's list

 protected:
  void build() override;
  void showPlan() override { showBook(); }
  void showEvent(QShowEvent* event) override;

 private:
  QWidget* pictures();
  QLayout* teeth();
  QWidget* side();
  void addTable(QLayout& column);
  void showBook();
  void showContent();
  void setElongation(double percent);
  void offerStriking();
  std::optional<std::size_t> chosenEntry() const;

  MakeWidget makeSlack_;
  std::optional<WearBook> book_;
  std::optional<double> ownElongation_;  ///< that the slider was set to when it was measured
  QLabel *verdict_ = nullptr, *trendWords_ = nullptr, *mixes_ = nullptr, *expected_ = nullptr,
         *belt_ = nullptr;
  CautionsLine* cautions_ = nullptr;
  QStackedWidget* stack_ = nullptr;
  LackingPanel* lacking_ = nullptr;
  QWidget* content_ = nullptr;
  WearGauge* gauge_ = nullptr;
  ToothDrawing* drawing_ = nullptr;
  Picture* asked_ = nullptr;
  MarkedSlider* slider_ = nullptr;
  QToolButton *toOwn_ = nullptr, *toLimit_ = nullptr;
  WearTrend* trend_ = nullptr;
  FiguresTable* table_ = nullptr;
  QPushButton* strike_ = nullptr;
};

}  // namespace layshaft::ui
