// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/compare_page.h"

#include <QClipboard>
#include <QGuiApplication>
#include <QHBoxLayout>
#include <QMimeData>
#include <QToolButton>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/words/aligned_table.h"
#include "ui/words/cautions.h"

namespace layshaft::ui {
namespace {

/// Cells between tabs, as spreadsheets take them from the clipboard.
QString tabbed(const std::vector<QStringList>& rows) {
  QString text;
  for (const QStringList& row : rows) text += row.join(QLatin1Char('\t')) + QLatin1Char('\n');
  return text;
}

/// The same as a table for mail and documents; what stands in the cells is no markup.
QString markedUp(const std::vector<QStringList>& rows) {
  QString text = QStringLiteral("<table border=\"1\" cellspacing=\"0\" cellpadding=\"3\">");
  for (const QStringList& row : rows) {
    const QString tag = &row == &rows.front() ? QStringLiteral("th") : QStringLiteral("td");
    text += QStringLiteral("<tr>");
    for (const QString& cell : row)
      text += QLatin1Char('<') + tag + QLatin1Char('>') + cell.toHtmlEscaped() + QStringLiteral("</") + tag +
              QLatin1Char('>');
    text += QStringLiteral("</tr>");
  }
  return text + QStringLiteral("</table>");
}

QToolButton* menuButton(const QString& name) {
  auto* button = new QToolButton;
  button->setText(name);
  button->setPopupMode(QToolButton::InstantPopup);
  button->setToolButtonStyle(Qt::ToolButtonTextOnly);
  button->setFocusPolicy(Qt::TabFocus);
  button->setMenu(new QMenu(button));
  return button;
}

}  // namespace

ComparePage::ComparePage(BackgroundLane& lane, QWidget* parent) : Page(parent), bandsWork_(lane) {
  constexpr int kRestMs = 200;
  untilBands_.setSingleShot(true);
  untilBands_.setInterval(kRestMs);
  connect(&untilBands_, &QTimer::timeout, this, &ComparePage::askForBands);
}

void ComparePage::askForBands() {
  bandsWork_.start(
      {[this, plan = plan_, known = bands_](const BackgroundWork::Stopped&) -> BackgroundWork::Delivery {
        return [this, plan, bands = LapBands::workedOut(*plan, known)] {
          if (plan_ != plan) return;  // of setups that are compared no more
          bands_ = bands;
          model_.show(made());
        };
      }});
}

void ComparePage::build() {
  auto* rows = menuButton(tr("Rows"));
  rows->setToolTip(tr("Choose what is compared"));
  fillRowsMenu(*rows->menu());
  auto* copy = menuButton(tr("Copy"));
  copy->setToolTip(tr("Copy the whole comparison"));
  copy->menu()->addAction(tr("For a &Spreadsheet"), this, &ComparePage::copyForSpreadsheet);
  copy->menu()->addAction(tr("As &Text"), this, &ComparePage::copyAsText);
  auto* legend =
      new QLabel(tr("Small figures: difference from stock. Where no value is better than another, "
                    "none is marked."));
  noPins_ = new QLabel(tr("Pinned pairs stand here beside stock and proposed: pin some on the Ladder page."));
  noPins_->setVisible(false);
  view_ = new CompareView(model_);
  connect(view_, &CompareView::copyWanted, this, &ComparePage::copyForSpreadsheet);
  auto* closed = new QLabel(closedCourseCaution());
  for (QLabel* label : {legend, noPins_, closed}) label->setWordWrap(true);

  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(10, 6, 10, 6);
  auto* controls = new QHBoxLayout;
  controls->addWidget(rows);
  controls->addWidget(copy);
  controls->addWidget(legend, 1);
  column->addLayout(controls);
  column->addWidget(noPins_);
  column->addWidget(view_, 1);
  column->addWidget(closed);
}

void ComparePage::fillRowsMenu(QMenu& menu) {
  QMenu* group = nullptr;
  std::optional<CompareGroup> its;
  for (const CompareFigure figure : allCompareFigures()) {
    if (const CompareGroup next = compareSpec(figure).group; its != next) {
      group = menu.addMenu(compareGroupName(next));
      its = next;
    }
    QAction* action = group->addAction(compareName(figure));
    action->setCheckable(true);
    rowActions_.push_back(action);
    connect(action, &QAction::triggered, this, &ComparePage::pickFromMenu);
  }
  menu.addSeparator();
  menu.addAction(tr("&All Rows"), this, [this] { emit rowsPicked(allCompareFigures()); });
  menu.addAction(tr("&Reset to Default"), this, [this] { emit rowsPicked(usualCompareFigures()); });
  checkMenu();
}

void ComparePage::pickFromMenu() {
  std::vector<CompareFigure> picked;
  for (std::size_t i = 0; i < rowActions_.size(); ++i)
    if (rowActions_[i]->isChecked()) picked.push_back(static_cast<CompareFigure>(i));
  emit rowsPicked(picked);
}

/// The last row stays: a comparison without any would be taken for one that was never chosen.
void ComparePage::checkMenu() {
  for (std::size_t i = 0; i < rowActions_.size(); ++i) {
    const bool on =
        std::find(figures_.begin(), figures_.end(), static_cast<CompareFigure>(i)) != figures_.end();
    rowActions_[i]->setChecked(on);
    rowActions_[i]->setEnabled(!on || figures_.size() > 1);
  }
}

void ComparePage::pick(const std::vector<CompareFigure>& figures) {
  figures_ = figures;
  checkMenu();
}

void ComparePage::use(PartsOnHand onHand) {
  if (onHand.fronts == onHand_.fronts && onHand.rears == onHand_.rears) return;
  onHand_ = std::move(onHand);
  if (plan_) take(plan_, units_);
}

/// At once where that is next to nothing, and at first sight, where there is nothing to guess from; on a long
/// line the difference is not told until its band is there.
void ComparePage::takeBands() {
  constexpr std::size_t kFewStretches = 40;
  untilBands_.stop();
  bandsWork_.cancel();
  if (!needLapBands(figures_)) return;
  const std::size_t stretches = plan_->laps ? plan_->laps->allowed().stretches().size() : 0;
  LapBands bands =
      stretches > kFewStretches ? LapBands::guessed(*plan_, bands_) : LapBands::workedOut(*plan_, bands_);
  if (!bands.isWhole() && stretches <= kStretchesForFirstSight) bands = LapBands::workedOut(*plan_, bands_);
  bands_ = std::move(bands);
  if (bands_.isGuessed() || !bands_.isWhole()) untilBands_.start();
}

void ComparePage::showPlan() {
  takeBands();
  model_.show(made());
  noPins_->setVisible(plan_->pins.empty());
}

/// Nothing of it is guessed.
CompareTable ComparePage::toBeKept() const {
  const LapBands bands = needLapBands(figures_) ? LapBands::workedOut(*plan_, bands_) : LapBands();
  return compareTable(*plan_, units_, figures_, onHand_, &bands);
}

std::vector<QStringList> ComparePage::numbers() const {
  return plan_ ? compareRows(toBeKept()) : std::vector<QStringList>();
}

QString ComparePage::csv() const {
  return plan_ ? compareCsv(toBeKept(), *plan_, units_) : QString();
}

void ComparePage::copyForSpreadsheet() {
  auto* mime = new QMimeData;  // the clipboard takes it over
  mime->setText(tabbed(numbers()));
  mime->setHtml(markedUp(numbers()));
  QGuiApplication::clipboard()->setMimeData(mime);
  emit copied(tr("Copied the comparison for a spreadsheet."));
}

void ComparePage::copyAsText() {
  QGuiApplication::clipboard()->setText(alignedTable(numbers()));
  emit copied(tr("Copied the comparison as text."));
}

}  // namespace layshaft::ui
