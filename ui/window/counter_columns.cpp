// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/counter_columns.h"

#include <QGridLayout>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QScrollBar>
#include <QVBoxLayout>
#include <algorithm>

#include "core/study/offers.h"
#include "ui/charts/palette.h"
#include "ui/words/cautions.h"
#include "ui/words/counter_words.h"
#include "ui/words/plain_text.h"

namespace layshaft::ui {
namespace {

constexpr int kLineCount = 4;
constexpr int kColumnsWide = 2;  // of the grid for each choice: marks and words
enum Row { Heading, Sentence, FirstLine, Bars = FirstLine + kLineCount, Button, Key, Cautions };

/// Round a choice; strong while its button has the focus.
class ChoiceFrame : public QFrame {
 public:
  void setStrong(bool strong) {
    strong_ = strong;
    update();
  }

 protected:
  void paintEvent(QPaintEvent*) override {
    constexpr double kThin = 1.0, kStrong = 4.0, kCorner = 8.0;  // px
    const ChartPalette colours(palette(), QPalette::Window);
    const double width = strong_ ? kStrong : kThin;
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(strong_ ? colours.focus : colours.line, width));
    painter.drawRoundedRect(QRectF(rect()).adjusted(width, width, -width, -width), kCorner, kCorner);
  }

 private:
  bool strong_ = false;
};

/// Columns are equally wide whatever stands in them.
void letShrink(QWidget& widget) {
  QSizePolicy policy = widget.sizePolicy();
  policy.setHorizontalPolicy(QSizePolicy::Ignored);
  widget.setSizePolicy(policy);
}

QLabel* wrapping() {
  auto* label = new QLabel;
  label->setWordWrap(true);
  label->setTextFormat(Qt::PlainText);
  return label;
}

}  // namespace

CounterColumns::CounterColumns(QWidget* parent) : QScrollArea(parent) {
  setWidgetResizable(true);
  setFrameShape(QFrame::NoFrame);
  setFocusPolicy(Qt::NoFocus);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  auto* content = new QWidget;
  auto* grid = new QGridLayout(content);
  const int gap = fontMetrics().height() / 2;
  grid->setContentsMargins(gap / 2, 0, gap / 2, 0);
  grid->setHorizontalSpacing(gap);
  grid->setVerticalSpacing(gap / 2);
  for (int place = 0; place < static_cast<int>(kMostOffers); ++place)
    columns_.push_back(makeColumn(*grid, place));
  const int wide = kColumnsWide * static_cast<int>(kMostOffers);
  none_ = wrapping();
  none_->setAlignment(Qt::AlignCenter);
  none_->setText(tr("Nothing in reach that fits goes that way. Please ask what else can be done."));
  grid->addWidget(none_, Heading, 0, 1, wide);
  barsKey_ = wrapping();
  barsKey_->setText(tr("The bars: speed in each gear at full revs. Hatched: as it is now."));
  grid->addWidget(barsKey_, Key, 0, 1, wide);
  cautions_ = wrapping();
  cautions_->setAccessibleName(tr("Cautions"));
  grid->addWidget(cautions_, Cautions, 0, 1, wide);
  grid->setRowStretch(Bars, 1);
  setWidget(content);
  content->installEventFilter(this);
}

CounterColumns::Column CounterColumns::makeColumn(QGridLayout& grid, int place) {
  const int mark = kColumnsWide * place, words = mark + 1, margin = fontMetrics().averageCharWidth();
  Column column{.frame = new ChoiceFrame,
                .heading = wrapping(),
                .sentence = wrapping(),
                .lines = {},
                .bars = new SpeedBars,
                .button = new QPushButton};
  grid.addWidget(column.frame, Heading, mark, Button - Heading + 1, kColumnsWide);
  QFont bold = font();
  bold.setBold(true);
  column.heading->setFont(bold);
  column.heading->setContentsMargins(margin, margin, margin, 0);
  column.sentence->setContentsMargins(margin, 0, margin, 0);
  grid.addWidget(column.heading, Heading, mark, 1, kColumnsWide);
  grid.addWidget(column.sentence, Sentence, mark, 1, kColumnsWide);
  for (int line = 0; line < kLineCount; ++line) {
    column.lines.push_back({new QLabel, wrapping()});
    column.lines.back().mark->setContentsMargins(margin, 0, 0, 0);
    column.lines.back().words->setContentsMargins(0, 0, margin, 0);
    grid.addWidget(column.lines.back().mark, FirstLine + line, mark, Qt::AlignTop);
    grid.addWidget(column.lines.back().words, FirstLine + line, words, Qt::AlignTop);
  }
  column.bars->setContentsMargins(margin, 0, margin, 0);
  grid.addWidget(column.bars, Bars, mark, 1, kColumnsWide);
  column.button->setAutoDefault(true);  // Enter presses it
  column.button->setMinimumHeight(2 * fontMetrics().height());
  column.button->installEventFilter(this);
  auto* inset = new QWidget;
  auto* room = new QVBoxLayout(inset);
  room->setContentsMargins(margin, 0, margin, margin);
  room->addWidget(column.button);
  for (QWidget* part : std::initializer_list<QWidget*>{column.heading, column.sentence, column.bars, inset})
    letShrink(*part);
  for (const Line& line : column.lines) letShrink(*line.words);
  grid.addWidget(inset, Button, mark, 1, kColumnsWide);
  grid.setColumnStretch(words, 1);
  connect(column.button, &QPushButton::clicked, this, [this, place] { emit taken(place); });
  return column;
}

void CounterColumns::show(const std::vector<Choice>& choices, const UnitsShown& units) {
  double most = 0.0;
  for (const Choice& choice : choices) most = std::max(most, SpeedBars::mostMps(*choice.plan));
  const int focused = focusedColumn();
  shown_ = static_cast<int>(std::min(choices.size(), columns_.size()));
  QStringList cautions;
  for (int place = 0; place < static_cast<int>(columns_.size()); ++place) {
    Column& column = columns_[static_cast<std::size_t>(place)];
    setColumnVisible(column, place < shown_);
    if (place >= shown_) continue;
    const Choice& choice = choices[static_cast<std::size_t>(place)];
    fill(column, choice, units, most);
    column.bars->setVisible(most > 0.0);
    cautions << cautionsFor(*choice.plan, CautionPlace::Counter);
  }
  cautions.removeDuplicates();
  cautions_->setText(cautions.join(QLatin1Char(' ')));
  cautions_->setVisible(!cautions.isEmpty());
  barsKey_->setVisible(most > 0.0);
  none_->setVisible(shown_ == 0);
  if (focused >= shown_) takeFocus();
}

void CounterColumns::fill(Column& column, const Choice& choice, const UnitsShown& units, double mostMps) {
  const Plan& plan = *choice.plan;
  const QString parts = counterHeading(plan.proposed.setup);
  const QString heading =
      choice.name.isEmpty() ? parts : tr("%1 (%2)", "a pin's name and its teeth").arg(choice.name, parts);
  column.heading->setText(heading);
  column.sentence->setText(counterSentence(plan));
  const auto lines = counterLines(plan, units);
  for (std::size_t i = 0; i < column.lines.size(); ++i) {
    column.lines[i].mark->setText(worthMark(lines[i].worth));
    column.lines[i].mark->setAccessibleName(worthName(lines[i].worth));
    column.lines[i].words->setText(lines[i].words);
  }
  column.bars->show(choice.plan, units, mostMps);
  column.button->setText(choice.chosen ? tr("✓ Chosen") : tr("Choose This"));
  column.button->setAccessibleName(
      (choice.chosen ? tr("Chosen: %1", "teeth") : tr("Choose %1", "teeth")).arg(heading));
  column.button->setAccessibleDescription(counterDescription(plan, units));
}

void CounterColumns::setColumnVisible(Column& column, bool visible) {
  column.frame->setVisible(visible);
  column.heading->setVisible(visible);
  column.sentence->setVisible(visible);
  for (const Line& line : column.lines) {
    line.mark->setVisible(visible);
    line.words->setVisible(visible);
  }
  column.bars->setVisible(visible);
  column.button->parentWidget()->setVisible(visible);
}

void CounterColumns::takeFocus() {
  focusColumn(0);
}

void CounterColumns::focusColumn(int place) {
  if (shown_ == 0) return;
  QPushButton* button = columns_[static_cast<std::size_t>(std::clamp(place, 0, shown_ - 1))].button;
  button->setFocus();
  ensureWidgetVisible(button);
}

int CounterColumns::focusedColumn() const {
  for (std::size_t i = 0; i < columns_.size(); ++i)
    if (columns_[i].button->hasFocus()) return static_cast<int>(i);
  return -1;
}

void CounterColumns::markFocused() {
  for (const Column& column : columns_)
    static_cast<ChoiceFrame*>(column.frame)->setStrong(column.button->hasFocus());
}

bool CounterColumns::eventFilter(QObject* watched, QEvent* event) {
  if (event->type() == QEvent::MouseButtonPress && watched == widget()) {
    const QPoint at = static_cast<QMouseEvent*>(event)->position().toPoint();
    for (int place = 0; place < shown_; ++place)
      if (columns_[static_cast<std::size_t>(place)].frame->geometry().contains(at)) focusColumn(place);
  } else if (event->type() == QEvent::FocusIn || event->type() == QEvent::FocusOut) {
    markFocused();
  } else if (event->type() == QEvent::KeyPress && watched != widget()) {
    switch (static_cast<QKeyEvent*>(event)->key()) {
      case Qt::Key_Left:
        focusColumn(focusedColumn() - 1);
        return true;
      case Qt::Key_Right:
        focusColumn(focusedColumn() + 1);
        return true;
      case Qt::Key_Up:
        verticalScrollBar()->triggerAction(QAbstractSlider::SliderSingleStepSub);
        return true;
      case Qt::Key_Down:
        verticalScrollBar()->triggerAction(QAbstractSlider::SliderSingleStepAdd);
        return true;
      default:
        break;
    }
  }
  return QScrollArea::eventFilter(watched, event);
}

}  // namespace layshaft::ui
