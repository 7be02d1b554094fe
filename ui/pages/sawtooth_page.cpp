// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/sawtooth_page.h"

#include <QToolButton>
#include <QVBoxLayout>

#include "core/report.h"
#include "ui/words/chart_words.h"
#include "ui/words/csv_units.h"
#include "ui/words/gear_table.h"

namespace layshaft::ui {

void SawtoothPage::build() {
  chart_ = new SawtoothChart;
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  stack_ = new QStackedWidget;
  lacking_ = new LackingPanel;
  stack_->addWidget(chart_);
  stack_->addWidget(lacking_);
  connect(lacking_, &LackingPanel::detailsWanted, this, &Page::detailsWanted);
  column->addWidget(stack_);
  // In the upper left of the plot: above first gear's climb a saw is always empty.
  // Beside the chart, not inside of it: screen readers do not look into a chart's view.
  auto* teeth = new QToolButton(this);
  teeth_ = teeth;
  teeth->setText(tr("Teeth only"));
  teeth->setCheckable(true);
  teeth->setToolTip(tr("Starts the engine-speed axis just below the lowest engine speed after a shift."));
  connect(chart_, &LiveChart::laidOut, teeth, [this, teeth] {
    teeth->adjustSize();
    teeth->move(stack_->pos() + chart_->pos() + chart_->freeCorner().toPoint());
    teeth->raise();
    chart_->reserveCorner(teeth->size());
  });
  connect(teeth, &QToolButton::toggled, chart_, &SawtoothChart::setTeethOnly);
  connect(chart_, &LiveChart::markerDragged, this,
          [this](double shown, int drag) { emit cruiseDragged(units_.si(Quantity::Speed, shown), drag); });
}

void SawtoothPage::showPlan() {
  const auto lacks = sawtoothLacks(*plan_);
  teeth_->setVisible(lacks.empty());
  stack_->setCurrentWidget(lacks.empty() ? static_cast<QWidget*>(chart_) : lacking_);
  if (lacks.empty())
    chart_->show(plan_, units_);
  else
    lacking_->show(sawtoothNeeds(), lacks);
}

std::vector<QStringList> SawtoothPage::numbers() const {
  return plan_ ? gearTable(*plan_, units_) : std::vector<QStringList>();
}

QString SawtoothPage::csv() const {
  return plan_ ? QString::fromStdString(csvInUnits(reportCsv(*plan_), units_)) : QString();
}

}  // namespace layshaft::ui
