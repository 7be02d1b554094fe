// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/run_page.h"

#include <QButtonGroup>
#include <QHBoxLayout>
#include <QRadioButton>
#include <QScrollArea>
#include <QVBoxLayout>

#include "core/report.h"
#include "ui/pages/side_scroll.h"
#include "ui/words/cautions.h"
#include "ui/words/csv_units.h"
#include "ui/words/road_words.h"

namespace layshaft::ui {
namespace {

constexpr int kFigureColumns = 5;

}  // namespace

RunPage::RunPage(MakeWidget drive, MakeWidget rollOn, QWidget* parent)
    : Page(parent), makeDrive_(std::move(drive)), makeRollOn_(std::move(rollOn)) {}

void RunPage::build() {
  chart_ = new RunChart;
  stack_ = new QStackedWidget;
  lacking_ = new LackingPanel;
  table_ = new FiguresTable(tr("Acceleration figures"), kFigureColumns);
  drive_ = new QLabel;
  stack_->addWidget(chart_);
  stack_->addWidget(lacking_);
  connect(lacking_, &LackingPanel::detailsWanted, this, &Page::detailsWanted);

  drive_->setWordWrap(true);
  drive_->setAccessibleName(tr("The straight in words"));

  auto* side = new QWidget;
  auto* column = new QVBoxLayout(side);
  column->setContentsMargins(10, 6, 10, 6);
  auto* switches = new QHBoxLayout;
  addSwitches(*switches);
  column->addLayout(switches);
  auto* forms = new QHBoxLayout;
  for (QWidget* form : {makeDrive_(), makeRollOn_()}) {
    form->layout()->setContentsMargins(0, 4, 8, 0);
    forms->addWidget(form);
  }
  column->addLayout(forms);
  column->addWidget(drive_);
  column->addWidget(table_, 1);
  constexpr int kFewestRows = 4;  // with the titles: in a low window the panel scrolls
  table_->setMinimumHeight(kFewestRows * 2 * fontMetrics().height());
  estimated_ = new QLabel;
  estimated_->setWordWrap(true);
  estimated_->hide();
  column->addWidget(estimated_);
  auto* closed = new QLabel(closedCourseCaution());
  closed->setWordWrap(true);
  column->addWidget(closed);
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(0);
  row->addWidget(stack_, 1);
  row->addWidget(new SideScroll(side, panelWidth()));
}

void RunPage::addSwitches(QBoxLayout& row) {
  const auto add = [&](QButtonGroup* group, const QString& name, bool checked, auto choose) {
    auto* button = new QRadioButton(name);
    button->setChecked(checked);
    group->addButton(button);
    row.addWidget(button);
    connect(button, &QRadioButton::toggled, this, [choose](bool on) {
      if (on) choose();
    });
  };
  auto* ride = new QButtonGroup(this);
  add(ride, tr("Standing start"), true, [this] { chart_->setRide(RunChart::Ride::StandingStart); });
  add(ride, tr("Straight"), false, [this] { chart_->setRide(RunChart::Ride::Drive); });
  row.addStretch();
  auto* over = new QButtonGroup(this);
  add(over, tr("Over time"), true, [this] { chart_->setOver(RunChart::Over::Time); });
  add(over, tr("Distance"), false, [this] { chart_->setOver(RunChart::Over::Distance); });
}

void RunPage::showPlan() {
  const PullBike& bike = *plan_->pullBike;
  if (!bike.accelerates()) {
    auto keys = bike.forceLacks;
    keys.insert(keys.end(), bike.resistanceLacks.begin(), bike.resistanceLacks.end());
    lacking_->show(tr("Acceleration needs the engine's torque curve, masses and drag area."), keys);
    stack_->setCurrentWidget(lacking_);
  } else {
    stack_->setCurrentWidget(chart_);
    chart_->show(plan_, units_);
  }
  QString words = driveWords(*plan_, units_);
  if (const QString start = standingStartWords(*plan_); !start.isEmpty()) words += QLatin1Char('\n') + start;
  if (drive_->text() != words) drive_->setText(words);

  QStringList guessed{estimatedCurveWords(bike), typicalWords(bike, units_)};
  guessed.removeAll(QString());
  if (const QString text = guessed.join(QLatin1Char('\n')); estimated_->text() != text)
    estimated_->setText(text);
  estimated_->setVisible(!guessed.isEmpty());
  table_->show(runTable(*plan_, units_));
}

std::vector<QStringList> RunPage::numbers() const {
  return plan_ ? runTable(*plan_, units_) : std::vector<QStringList>();
}

QString RunPage::csv() const {
  return plan_ ? QString::fromStdString(csvInUnits(runCsv(*plan_), units_)) : QString();
}

}  // namespace layshaft::ui
