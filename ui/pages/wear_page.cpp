// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/wear_page.h"

#include <QHBoxLayout>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

#include "core/wear_csv.h"
#include "ui/pages/low_scroll.h"
#include "ui/pages/side_scroll.h"
#include "ui/words/plain_text.h"
#include "ui/words/wear_words.h"

namespace layshaft::ui {
namespace {

constexpr double kMostElongation = 3.0;  // per cent, at the slider's end
constexpr double kStepsPerPercent = 20.0;
constexpr int kColumns = 4;

int stepOf(double percent) {
  return static_cast<int>(std::lround(percent * kStepsPerPercent));
}

QLabel* words(const QString& name) {
  auto* label = new QLabel;
  label->setWordWrap(true);
  label->setAccessibleName(name);
  return label;
}

void say(QLabel* label, const QString& text) {
  label->setVisible(!text.isEmpty());
  if (label->text() != text) label->setText(text);
}

}  // namespace

WearPage::WearPage(MakeWidget makeSlack, QWidget* parent) : Page(parent), makeSlack_(std::move(makeSlack)) {}

void WearPage::build() {
  stack_ = new QStackedWidget;
  belt_ = words(tr("Wear of belts"));
  belt_->setAlignment(Qt::AlignCenter);
  belt_->setContentsMargins(80, 20, 80, 20);
  lacking_ = new LackingPanel;
  connect(lacking_, &LackingPanel::detailsWanted, this, &Page::detailsWanted);
  content_ = new QWidget;
  auto* row = new QHBoxLayout(content_);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(0);
  row->addWidget(new LowScroll(pictures()), 1);
  row->addWidget(new SideScroll(side(), 3 * sideWidth() / 2));
  for (QWidget* widget : std::initializer_list<QWidget*>{content_, lacking_, belt_})
    stack_->addWidget(widget);

  cautions_ = new CautionsLine;
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  column->addWidget(stack_, 1);
  column->addWidget(cautions_);
}

/// Verdict, and pictures side by side.
QWidget* WearPage::pictures() {
  verdict_ = words(tr("Verdict"));
  QFont bold = verdict_->font();
  bold.setBold(true);
  verdict_->setFont(bold);
  trendWords_ = words(tr("Limit and trend in words"));
  gauge_ = new WearGauge;
  trend_ = new WearTrend;
  auto* all = new QWidget;
  auto* column = new QVBoxLayout(all);
  column->setContentsMargins(10, 4, 6, 0);
  column->setSpacing(4);
  column->addWidget(verdict_);
  column->addWidget(trendWords_);
  auto* row = new QHBoxLayout;
  row->setSpacing(6);
  row->addWidget(gauge_);
  row->addLayout(teeth(), 1);
  row->addWidget(trend_, 1);
  column->addLayout(row, 1);
  return all;
}

QLayout* WearPage::teeth() {
  drawing_ = new ToothDrawing;
  connect(drawing_, &ToothDrawing::menuRequested, this, [this](const QPoint& at) {
    asked_ = drawing_;  // the menu that comes of it is the drawing's own
    emit pictureMenuWanted(at);
    asked_ = nullptr;
  });
  slider_ = new MarkedSlider;
  slider_->setRange(0, stepOf(kMostElongation));
  slider_->setPageStep(stepOf(0.5));
  slider_->setAccessibleName(tr("Elongation drawn"));
  slider_->setToolTip(tr("How much longer than new the chain of the drawing is, from 0 to 3 %."));
  connect(slider_, &QSlider::valueChanged, this,
          [this](int step) { drawing_->setElongation(step / kStepsPerPercent); });
  const auto jump = [this](const QString& text, const QString& tip) {
    auto* button = new QToolButton;
    button->setText(text);
    button->setToolTip(tip);
    return button;
  };
  toOwn_ = jump(tr("This Chain"), tr("Sets the drawing to what was measured last."));
  toLimit_ = jump(tr("Limit"), tr("Sets the drawing to the wear limit."));
  connect(toOwn_, &QToolButton::clicked, this,
          [this] { setElongation(book_->figures.elongationPercent.value_or(0.0)); });
  connect(toLimit_, &QToolButton::clicked, this, [this] { setElongation(book_->figures.limitPercent); });
  auto* bar = new QHBoxLayout;
  bar->addWidget(slider_, 1);
  bar->addWidget(toOwn_);
  bar->addWidget(toLimit_);
  auto* views = new QHBoxLayout;
  const auto view = [&](const QString& text, ToothDrawing::View which) {
    auto* button = new QRadioButton(text);
    button->setChecked(which == ToothDrawing::View::WornChain);
    connect(button, &QRadioButton::toggled, this, [this, which](bool on) {
      if (on) drawing_->setView(which);
    });
    views->addWidget(button);
  };
  view(tr("Worn chain on the teeth"), ToothDrawing::View::WornChain);
  view(tr("New chain on worn teeth"), ToothDrawing::View::NewChain);
  views->addStretch();
  auto* column = new QVBoxLayout;
  column->setSpacing(2);
  column->addLayout(views);
  column->addWidget(drawing_, 1);
  column->addLayout(bar);
  return column;
}

void WearPage::addTable(QLayout& column) {
  table_ = new FiguresTable(tr("Measurements"), kColumns);
  table_->setSelectionMode(QAbstractItemView::SingleSelection);
  table_->setSelectionBehavior(QAbstractItemView::SelectRows);
  table_->setFocusPolicy(Qt::StrongFocus);
  table_->showWhole();
  connect(table_, &QTableWidget::itemSelectionChanged, this, &WearPage::offerStriking);
  column.addWidget(table_);
}

/// Beside the pictures: what can be done, how long a chain should be, the measurements and the manual's
/// slack.
QWidget* WearPage::side() {
  auto* panel = new QWidget;
  auto* column = new QVBoxLayout(panel);
  column->setContentsMargins(6, 6, 10, 6);
  auto* measure = new QPushButton(tr("Measure…"));
  measure->setToolTip(tr("Shows how to measure, and writes down what you find."));
  connect(measure, &QPushButton::clicked, this, &WearPage::measuringWanted);
  strike_ = new QPushButton(tr("Strike Through…"));
  strike_->setToolTip(tr("Strikes the selected measurement through, with a reason; it stays in the table."));
  connect(strike_, &QPushButton::clicked, this, [this] {
    if (const auto entry = chosenEntry()) emit strikingWanted(*entry);
  });
  auto* buttons = new QHBoxLayout;
  buttons->addWidget(measure);
  buttons->addWidget(strike_);
  column->addLayout(buttons);
  mixes_ = words(tr("New beside worn"));
  expected_ = words(tr("Expected length"));
  column->addWidget(mixes_);
  column->addWidget(expected_);
  addTable(*column);
  column->addWidget(makeSlack_());
  column->addStretch();
  return panel;
}

void WearPage::use(const WearBook& book) {
  book_ = book;
  if (isBuilt() && isVisible()) showBook();
}

void WearPage::showEvent(QShowEvent* event) {
  Page::showEvent(event);
  showBook();
}

void WearPage::showBook() {
  if (!book_ || !plan_ || !isBuilt()) return;
  cautions_->show(*plan_, CautionPlace::WearPage);
  if (book_->belt) {
    belt_->setText(beltWearWords());
    return stack_->setCurrentWidget(belt_);
  }
  if (!book_->size) {
    lacking_->show(tr("How worn a chain is shows against its new length."), {"stock.chain_size"});
    return stack_->setCurrentWidget(lacking_);
  }
  stack_->setCurrentWidget(content_);
  showContent();
}

void WearPage::showContent() {
  const WearFigures& figures = book_->figures;
  say(verdict_, wearVerdictWords(figures));
  say(trendWords_, wearLimitWords(figures) + QLatin1Char(' ') + wearTrendWords(figures, units_));
  say(mixes_, wearMixWords(book_->mixes).join(QStringLiteral("\n\n")));
  say(expected_, expectedLengthWords(*book_->size, kUsualPitches, figures.limitPercent, units_));
  gauge_->show(figures);
  trend_->show(*book_, units_);
  drawing_->show(*book_, units_);
  const ChartPalette colours(palette(), QPalette::Window);
  std::vector<MarkedSlider::Mark> marks{{stepOf(figures.limitPercent), colours.warning}};
  if (figures.elongationPercent) marks.push_back({stepOf(*figures.elongationPercent), colours.proposed});
  slider_->setMarks(marks);
  toOwn_->setEnabled(figures.elongationPercent.has_value());
  if (figures.elongationPercent && figures.elongationPercent != ownElongation_)
    setElongation(*figures.elongationPercent);
  ownElongation_ = figures.elongationPercent;
  table_->show(measurementTable(*book_, units_));
  for (int row = 0; row < table_->rowCount(); ++row)  // where it does not all fit
    table_->item(row, 0)->setToolTip(asMarkup(table_->item(row, 0)->text()));
  offerStriking();
}

void WearPage::setElongation(double percent) {
  slider_->setValue(stepOf(percent));
  drawing_->setElongation(std::clamp(percent, 0.0, kMostElongation));  // finer than the slider
}

std::optional<std::size_t> WearPage::chosenEntry() const {
  const auto rows = table_->selectionModel()->selectedRows();
  const auto order = book_ ? measurementOrder(book_->wear) : std::vector<std::size_t>();
  if (rows.isEmpty() || rows.front().row() >= static_cast<int>(order.size())) return std::nullopt;
  return order[static_cast<std::size_t>(rows.front().row())];
}

void WearPage::offerStriking() {
  const auto entry = chosenEntry();
  strike_->setEnabled(entry && !book_->wear.measurements[*entry].struck);
}

Picture* WearPage::picture() {
  if (!stack_ || stack_->currentWidget() != content_) return nullptr;
  return asked_ ? asked_ : trend_;
}

std::vector<QStringList> WearPage::numbers() const {
  return book_ && !book_->belt ? measurementTable(*book_, units_) : std::vector<QStringList>();
}

QString WearPage::csv() const {
  return book_ && !book_->belt ? QString::fromStdString(wearCsv(book_->wear, book_->figures)) : QString();
}

}  // namespace layshaft::ui
