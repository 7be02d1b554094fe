// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/compare_view.h"

#include <QApplication>
#include <QCoreApplication>
#include <QHeaderView>
#include <QKeyEvent>
#include <QPainter>
#include <QStyledItemDelegate>
#include <algorithm>

namespace layshaft::ui {
namespace {

constexpr int kMargin = 6;            // px, at either side of a cell
constexpr int kLeastCharacters = 25;  // of a column: mark, figure and difference
constexpr int kMostCharacters = 42;   // more would only pull the columns apart
constexpr double kSmall = 0.85;       // of the size of the figures

/// A cell: the mark to the left, the figure where all figures end, the difference small behind it.
class CompareCellDelegate : public QStyledItemDelegate {
  Q_DECLARE_TR_FUNCTIONS(CompareCellDelegate)
 public:
  using QStyledItemDelegate::QStyledItemDelegate;

  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    const QPalette& colours = option.palette;
    painter->save();
    if (index.data(CompareModel::kGroupRole).toBool()) {
      painter->fillRect(option.rect, colours.color(QPalette::AlternateBase));
    } else {
      const bool best = index.data(CompareModel::kBestRole).toBool();
      QFont small = option.font, figure = option.font;
      small.setPointSizeF(option.font.pointSizeF() * kSmall);
      figure.setBold(best);
      const QRect inner = option.rect.adjusted(kMargin, 0, -kMargin, 0);
      const int behind = QFontMetrics(small).horizontalAdvance(QStringLiteral("+00,000.0")) + kMargin;
      QRect place = inner.adjusted(0, 0, -behind, 0);
      painter->setPen(colours.color(QPalette::Text));
      painter->setFont(small);
      if (best) {
        const QString mark = tr("◆ best", "mark at the best value of a row");
        painter->drawText(inner, Qt::AlignLeft | Qt::AlignVCenter, mark);
        place.setLeft(place.left() + QFontMetrics(small).horizontalAdvance(mark) + kMargin);
      }
      const QString difference = index.data(CompareModel::kDifferenceRole).toString();
      if (!difference.isEmpty()) painter->drawText(inner, Qt::AlignRight | Qt::AlignVCenter, difference);
      painter->setFont(figure);
      const QFontMetrics metrics(figure);
      const QString text = index.data().toString();
      // Words that are longer than a figure may have the room behind it, too.
      if (difference.isEmpty() && metrics.horizontalAdvance(text) > place.width())
        place.setRight(inner.right());
      painter->drawText(place, Qt::AlignRight | Qt::AlignVCenter,
                        metrics.elidedText(text, Qt::ElideRight, place.width()));
    }
    if (option.state & QStyle::State_HasFocus) {
      QStyleOptionFocusRect focus;
      focus.QStyleOption::operator=(option);
      focus.backgroundColor = colours.color(QPalette::Base);
      (option.widget ? option.widget->style() : QApplication::style())
          ->drawPrimitive(QStyle::PE_FrameFocusRect, &focus, painter, option.widget);
    }
    painter->restore();
  }
};

}  // namespace

CompareView::CompareView(CompareModel& model, QWidget* parent) : QTableView(parent), model_(model) {
  setAccessibleName(tr("Comparison"));
  setItemDelegate(new CompareCellDelegate(this));
  setSelectionMode(QAbstractItemView::NoSelection);
  setTabKeyNavigation(false);
  setFrameShape(QFrame::NoFrame);
  setWordWrap(false);
  setCornerButtonEnabled(false);
  setHorizontalScrollMode(QAbstractItemView::ScrollPerPixel);
  QHeaderView &names = *verticalHeader(), &titles = *horizontalHeader();
  names.setSectionResizeMode(QHeaderView::Fixed);
  names.setDefaultSectionSize(fontMetrics().height() + 6);
  names.setSectionsClickable(false);
  names.setHighlightSections(false);
  titles.setSectionResizeMode(QHeaderView::Fixed);
  titles.setSectionsClickable(false);
  titles.setHighlightSections(false);
  titles.setTextElideMode(Qt::ElideRight);
  setModel(&model);
  // After the headers, which know of a new column only then.
  connect(&model, &QAbstractItemModel::modelReset, this, &CompareView::shapeAnew);
}

void CompareView::shapeAnew() {
  clearSpans();
  for (int row = 0; row < model_.rowCount(); ++row)
    if (model_.isGroup(row)) setSpan(row, 0, 1, model_.columnCount());
  fitColumns();
}

/// As wide as there is room for, within what is well read; more columns than that are scrolled.
void CompareView::fitColumns() {
  if (model_.columnCount() == 0) return;
  const int character = fontMetrics().averageCharWidth();
  const int width = std::clamp(viewport()->width() / model_.columnCount(), kLeastCharacters * character,
                               kMostCharacters * character);
  for (int c = 0; c < model_.columnCount(); ++c)
    if (columnWidth(c) != width) setColumnWidth(c, width);
}

void CompareView::resizeEvent(QResizeEvent* event) {
  QTableView::resizeEvent(event);
  fitColumns();
}

void CompareView::changeEvent(QEvent* event) {
  QTableView::changeEvent(event);
  if (event->type() == QEvent::FontChange)
    verticalHeader()->setDefaultSectionSize(fontMetrics().height() + 6);
}

/// While the table has the focus, what is copied is the table, whatever a menu has on the same key.
bool CompareView::event(QEvent* event) {
  if (event->type() == QEvent::ShortcutOverride &&
      static_cast<QKeyEvent*>(event)->matches(QKeySequence::Copy)) {
    event->accept();
    return true;
  }
  return QTableView::event(event);
}

void CompareView::keyPressEvent(QKeyEvent* event) {
  if (event->matches(QKeySequence::Copy)) return emit copyWanted();
  QTableView::keyPressEvent(event);
}

}  // namespace layshaft::ui
