// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/chain_page.h"

#include <QHBoxLayout>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

#include "core/report.h"
#include "ui/pages/low_scroll.h"
#include "ui/words/cautions.h"
#include "ui/words/chain_labels.h"
#include "ui/words/chain_words.h"
#include "ui/words/csv_units.h"

namespace layshaft::ui {
namespace {

constexpr int kColumns = 4;
constexpr int kFrameMs = 16;
constexpr double kSecondsPerTurn = 6.0;  // slow enough to count along
constexpr int kWholeTurn = 3600;         // of the slider

}  // namespace

void ChainPage::build() {
  stack_ = new QStackedWidget;
  buildView();
  lacking_ = new LackingPanel;
  connect(lacking_, &LackingPanel::detailsWanted, this, &Page::detailsWanted);
  stack_->addWidget(view_);
  stack_->addWidget(lacking_);
  auto* row = new QHBoxLayout;
  row->setSpacing(0);
  row->addWidget(stack_, 1);
  row->addWidget(words());
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  column->addLayout(row, 1);
  cautions_ = new CautionsLine;
  column->addWidget(cautions_);

  clock_.setInterval(kFrameMs);
  connect(&clock_, &QTimer::timeout, this, [this] {
    const double turn = drawing_->turn() + kFrameMs / 1000.0 / kSecondsPerTurn;
    setTurn(turn);
    if (turn >= 1.0) play_->setChecked(false);
  });
  setMotion(motion_);
}

/// The drawing, and below it what turns it.
void ChainPage::buildView() {
  drawing_ = new ChainDrawing;
  connect(drawing_, &ChainDrawing::menuRequested, this, &Page::pictureMenuWanted);
  connect(drawing_, &ChainDrawing::turned, this, &ChainPage::setTurn);
  auto* content = new QWidget;
  auto* column = new QVBoxLayout(content);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  column->addWidget(drawing_, 1);
  column->addLayout(turnBar());
  view_ = new LowScroll(content);
}

QLayout* ChainPage::turnBar() {
  auto* bar = new QHBoxLayout;
  bar->setContentsMargins(10, 2, 10, 4);
  play_ = new QToolButton;
  play_->setText(tr("Animate"));
  play_->setCheckable(true);
  play_->setToolTip(tr("Rolls the rear wheel of the picture forward by one turn."));
  connect(play_, &QToolButton::toggled, this, &ChainPage::play);
  // As wide as either text: what stands beside it must not jump.
  play_->setMinimumWidth(play_->fontMetrics().horizontalAdvance(tr("Stop") + QStringLiteral("000")));
  bar->addWidget(play_);
  const auto stepButton = [&](const QString& text, const QString& name, int teeth) {
    auto* button = new QToolButton;
    button->setText(text);
    button->setAccessibleName(name);
    button->setToolTip(name);
    button->setAutoRepeat(true);
    connect(button, &QToolButton::clicked, this, [this, teeth] { step(teeth); });
    bar->addWidget(button);
  };
  stepButton(QStringLiteral("−1"), tr("One link back"), -1);
  stepButton(QStringLiteral("+1"), tr("One link on"), +1);
  slider_ = new QSlider(Qt::Horizontal);
  slider_->setRange(0, kWholeTurn);
  slider_->setSingleStep(kWholeTurn / 100);
  slider_->setPageStep(kWholeTurn / 10);
  slider_->setAccessibleName(tr("Turn of the rear wheel"));
  slider_->setToolTip(
      tr("Turns the rear wheel on the picture, up to one turn. You can also drag the rear of the drawing "
         "round."));
  connect(slider_, &QSlider::valueChanged, this,
          [this](int value) { drawing_->setTurn(static_cast<double>(value) / kWholeTurn); });
  bar->addWidget(slider_, 1);
  auto* zoom = new QCheckBox(tr("Zoom to the axle"));
  connect(zoom, &QCheckBox::toggled, drawing_, &ChainDrawing::setZoomed);
  bar->addWidget(zoom);
  return bar;
}

/// Beside the picture: whether it fits, and the figures.
QWidget* ChainPage::words() {
  table_ = new FiguresTable(tr("Figures of chain or belt"), kColumns);
  table_->showWhole();
  verdict_ = new QLabel;
  notes_ = new QLabel;
  slack_ = new QLabel;
  for (QLabel* label : {verdict_, notes_, slack_}) label->setWordWrap(true);
  slack_->setTextFormat(Qt::PlainText);  // it quotes what was typed
  slack_->setAccessibleName(tr("The manual's slack"));
  useSlack(slackWords_);
  verdict_->setAccessibleName(tr("Whether it fits"));
  notes_->setAccessibleName(tr("Weight and suspension in words"));
  auto* side = new QWidget;
  auto* inside = new QVBoxLayout(side);
  inside->setContentsMargins(10, 6, 10, 6);
  inside->addWidget(verdict_);
  inside->addWidget(slack_);
  inside->addWidget(table_);
  inside->addWidget(notes_);
  inside->addStretch();
  auto* scroll = new QScrollArea;
  scroll->setWidget(side);
  scroll->setWidgetResizable(true);
  scroll->setFrameShape(QFrame::NoFrame);
  scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  scroll->setFixedWidth(3 * sideWidth() / 2);
  return scroll;
}

void ChainPage::showPlan() {
  cautions_->show(*plan_, CautionPlace::ChainPage);
  const auto lacks = chainRunLacks(plan_->stock.setup, plan_->proposed.setup);
  if (!lacks.empty()) {
    play_->setChecked(false);
    const auto stock = driveLoop(plan_->stock.setup);
    // It is all there and still no run: the length does not do.
    if (stock && !plan_->stock.chainRun)
      lacking_->showWrong(
          isBelt(plan_->stock.setup)
              ? tr("Stock's belt of %n teeth is too short for its pulleys.", nullptr, stock->links)
              : tr("Stock's chain of %n links is too short for its sprockets.", nullptr, stock->links),
          lacks.front());
    else
      lacking_->show(
          tr("This page needs the size and length of the chain, or the pitch and teeth of the belt."), lacks);
    stack_->setCurrentWidget(lacking_);
    for (QWidget* widget : std::initializer_list<QWidget*>{table_, verdict_, notes_}) widget->hide();
    return;
  }
  stack_->setCurrentWidget(view_);
  drawing_->show(plan_, units_);
  const auto say = [](QLabel* label, const QStringList& paragraphs) {
    const QString words = paragraphs.join(QStringLiteral("\n\n"));
    label->setVisible(!words.isEmpty());
    if (label->text() != words) label->setText(words);
  };
  say(verdict_, chainVerdict(*plan_, units_));
  say(notes_, chainNotes(*plan_, units_));
  table_->show(chainTable(*plan_, units_));
  table_->setVisible(true);
}

void ChainPage::useSlack(const QString& words) {
  slackWords_ = words;
  if (!slack_) return;
  slack_->setVisible(!words.isEmpty());
  if (slack_->text() != words) slack_->setText(words);
}

void ChainPage::setMotion(bool on) {
  motion_ = on;
  if (!play_) return;
  if (!on) play_->setChecked(false);
  play_->setVisible(on);
}

void ChainPage::setTurn(double turn) {
  slider_->setValue(static_cast<int>(std::lround(turn * kWholeTurn)));
  drawing_->setTurn(turn);  // finer than the slider
}

void ChainPage::step(int teeth) {
  if (!plan_) return;
  play_->setChecked(false);
  const int rear = plan_->proposed.setup.rearTeeth.count();
  // From wherever it stands to the next whole link.
  const double links = drawing_->turn() * rear;
  const double next = teeth > 0 ? std::floor(links + 1e-6) + 1.0 : std::ceil(links - 1e-6) - 1.0;
  setTurn(std::clamp(next / rear, 0.0, 1.0));
}

void ChainPage::play(bool on) {
  play_->setText(on ? tr("Stop") : tr("Animate"));
  if (!on) return clock_.stop();
  if (drawing_->turn() >= 1.0) setTurn(0.0);
  clock_.start();
}

void ChainPage::hideEvent(QHideEvent* event) {
  Page::hideEvent(event);
  if (play_) play_->setChecked(false);
}

std::vector<QStringList> ChainPage::numbers() const {
  return plan_ ? chainTable(*plan_, units_) : std::vector<QStringList>();
}

QString ChainPage::csv() const {
  return plan_ ? QString::fromStdString(csvInUnits(chainRunCsv(*plan_), units_)) : QString();
}

}  // namespace layshaft::ui
