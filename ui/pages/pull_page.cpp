// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/pull_page.h"

#include <QButtonGroup>
#include <QHBoxLayout>
#include <QRadioButton>
#include <QVBoxLayout>

#include "core/report.h"
#include "ui/pages/side_scroll.h"
#include "ui/words/cautions.h"
#include "ui/words/csv_units.h"
#include "ui/words/pull_notes.h"
#include "ui/words/road_words.h"

namespace layshaft::ui {

PullPage::PullPage(MakeWidget conditions, QWidget* parent)
    : Page(parent), makeConditions_(std::move(conditions)) {}

void PullPage::build() {
  chart_ = new PullChart;
  stack_ = new QStackedWidget;
  lacking_ = new LackingPanel;
  notes_ = new QLabel;
  notes_->setWordWrap(true);
  notes_->setAlignment(Qt::AlignTop);
  stack_->addWidget(chart_);
  stack_->addWidget(lacking_);
  connect(lacking_, &LackingPanel::detailsWanted, this, &Page::detailsWanted);

  auto* side = new QWidget;
  auto* column = new QVBoxLayout(side);
  column->setContentsMargins(10, 6, 10, 6);
  auto* group = new QButtonGroup(this);
  const auto add = [&](const QString& name, PullMeasure measure) {
    auto* button = new QRadioButton(name);
    button->setChecked(measure == chart_->measure());
    group->addButton(button);
    column->addWidget(button);
    connect(button, &QRadioButton::toggled, this, [this, measure](bool on) {
      if (on) chart_->setMeasure(measure);
    });
    return button;
  };
  add(tr("Pull"), PullMeasure::Force);
  acceleration_ = add(tr("Acceleration, g"), PullMeasure::Acceleration);
  add(tr("Power at the wheel"), PullMeasure::Power);
  column->addWidget(makeConditions_());
  column->addWidget(notes_, 1);

  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(0);
  row->addWidget(stack_, 1);
  row->addWidget(new SideScroll(side, sideWidth()));
}

void PullPage::showPlan() {
  const PullBike& bike = *plan_->pullBike;
  acceleration_->setEnabled(bike.hasResistance());
  if (!bike.hasForce()) {
    lacking_->show(tr("The pull at the wheel needs the engine's torque curve."), bike.forceLacks);
    stack_->setCurrentWidget(lacking_);
    return;
  }
  stack_->setCurrentWidget(chart_);
  chart_->show(plan_, units_);
  QStringList notes;
  if (!bike.resistanceLacks.empty())
    notes << tr("For drag, top speed and acceleration: %1.")
                 .arg(fieldNames(bike.resistanceLacks).join(tr(", ")));
  if (!bike.boundsLack.empty())
    notes << tr("No grip or wheelie limit without %1.").arg(fieldNames(bike.boundsLack).join(tr(", ")));
  notes << pullNotes(*plan_, units_);
  notes << closedCourseCaution();
  const QString text = notes.join(QStringLiteral("\n\n"));
  if (notes_->text() != text) notes_->setText(text);
}

std::vector<QStringList> PullPage::numbers() const {
  return chart_ ? chart_->numbers() : std::vector<QStringList>();
}

QString PullPage::csv() const {
  return plan_ ? QString::fromStdString(csvInUnits(pullCsv(*plan_), units_)) : QString();
}

}  // namespace layshaft::ui
