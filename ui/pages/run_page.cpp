// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/run_page.h"

#include <QButtonGroup>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QRadioButton>
#include <QScrollArea>
#include <QVBoxLayout>

#include "core/report.h"
#include "ui/road_words.h"

namespace layshaft::ui {
namespace {

constexpr int kFigureColumns = 5;

}  // namespace

RunPage::RunPage(QWidget* drive, QWidget* rollOn, QWidget* parent)
    : Page(parent),
      chart_(new RunChart),
      stack_(new QStackedWidget),
      lacking_(new LackingPanel),
      table_(new QTableWidget(0, kFigureColumns)),
      drive_(new QLabel) {
  stack_->addWidget(chart_);
  stack_->addWidget(lacking_);
  connect(lacking_, &LackingPanel::detailsWanted, this, &Page::detailsWanted);

  table_->setAccessibleName(tr("Figures of the runs"));
  table_->setEditTriggers(QAbstractItemView::NoEditTriggers);
  table_->setSelectionMode(QAbstractItemView::NoSelection);
  table_->setFocusPolicy(Qt::TabFocus);
  table_->setShowGrid(false);
  table_->setFrameShape(QFrame::NoFrame);
  table_->verticalHeader()->hide();
  table_->verticalHeader()->setDefaultSectionSize(table_->fontMetrics().height() + 4);
  table_->horizontalHeader()->setSectionResizeMode(QHeaderView::Fixed);
  table_->setTabKeyNavigation(false);
  table_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  drive_->setWordWrap(true);
  drive_->setAccessibleName(tr("The drive in words"));

  auto* side = new QWidget;
  auto* column = new QVBoxLayout(side);
  column->setContentsMargins(10, 6, 10, 6);
  auto* switches = new QHBoxLayout;
  const auto add = [&](QButtonGroup* group, const QString& name, bool checked, auto choose) {
    auto* button = new QRadioButton(name);
    button->setChecked(checked);
    group->addButton(button);
    switches->addWidget(button);
    connect(button, &QRadioButton::toggled, this, [choose](bool on) {
      if (on) choose();
    });
  };
  auto* ride = new QButtonGroup(this);
  add(ride, tr("standing start"), true, [this] { chart_->setRide(RunChart::Ride::StandingStart); });
  add(ride, tr("drive"), false, [this] { chart_->setRide(RunChart::Ride::Drive); });
  switches->addStretch();
  auto* over = new QButtonGroup(this);
  add(over, tr("over time"), true, [this] { chart_->setOver(RunChart::Over::Time); });
  add(over, tr("distance"), false, [this] { chart_->setOver(RunChart::Over::Distance); });
  column->addLayout(switches);
  auto* forms = new QHBoxLayout;
  for (QWidget* form : {drive, rollOn}) {
    form->layout()->setContentsMargins(0, 4, 8, 0);
    forms->addWidget(form);
  }
  column->addLayout(forms);
  column->addWidget(drive_);
  column->addWidget(table_, 1);
  auto* closed = new QLabel(tr("Run and top-speed figures are for a closed course."));
  closed->setWordWrap(true);
  column->addWidget(closed);
  side->setFixedWidth(panelWidth());

  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(0);
  row->addWidget(stack_, 1);
  row->addWidget(side);
}

void RunPage::showPlan() {
  const PullBike& bike = *plan_->pullBike;
  if (!bike.accelerates()) {
    auto keys = bike.forceLacks;
    keys.insert(keys.end(), bike.resistanceLacks.begin(), bike.resistanceLacks.end());
    lacking_->show(tr("A run needs the engine's torque curve, masses and drag area."), fieldNames(keys));
    stack_->setCurrentWidget(lacking_);
  } else {
    stack_->setCurrentWidget(chart_);
    chart_->show(*plan_, units_);
  }
  if (const QString words = driveWords(*plan_, units_); drive_->text() != words) drive_->setText(words);

  const auto rows = runTable(*plan_, units_);
  table_->setHorizontalHeaderLabels(rows.front());
  table_->setRowCount(static_cast<int>(rows.size()) - 1);
  for (std::size_t r = 1; r < rows.size(); ++r)
    for (int c = 0; c < kFigureColumns; ++c) {
      const int line = static_cast<int>(r) - 1;
      const QString& text = rows[r][c];
      if (QTableWidgetItem* item = table_->item(line, c)) {
        if (item->text() != text) item->setText(text);
        continue;
      }
      auto* item = new QTableWidgetItem(text);
      item->setTextAlignment(c == 0 ? Qt::AlignLeft | Qt::AlignVCenter : Qt::AlignRight | Qt::AlignVCenter);
      table_->setItem(line, c, item);
    }
  int taken = table_->fontMetrics().averageCharWidth() * 7;  // margins and the bar
  for (int c = 1; c < kFigureColumns; ++c) {
    const int width = table_->fontMetrics().horizontalAdvance(
        c + 1 < kFigureColumns ? rows.front()[c] + QStringLiteral("00") : QStringLiteral("±0.0000"));
    table_->setColumnWidth(c, width);
    taken += width;
  }
  table_->setColumnWidth(0, panelWidth() - taken);
}

std::vector<QStringList> RunPage::numbers() const {
  return plan_ ? runTable(*plan_, units_) : std::vector<QStringList>();
}

QString RunPage::csv() const {
  return plan_ ? QString::fromStdString(runCsv(*plan_)) : QString();
}

}  // namespace layshaft::ui
