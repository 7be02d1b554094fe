// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/figures_dialog.h"

#include <QDialogButtonBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QSignalBlocker>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/editors/dialog_body.h"

namespace layshaft::ui {

FiguresDialog::FiguresDialog(SharedPlan plan, const std::vector<Figure>& picked, QWidget* parent)
    : QDialog(parent), plan_(std::move(plan)), usual_(picked.empty()) {
  setWindowTitle(tr("Arrange Key Figures"));
  auto* column = new QVBoxLayout(this);
  auto* intro =
      new QLabel(tr("The ticked figures stand in the readout, in this order. Drag them, or move "
                    "one with Alt+Up and Alt+Down."));
  intro->setWordWrap(true);
  column->addWidget(intro);
  auto* row = new QHBoxLayout;
  list_ = new QListWidget;
  list_->setAccessibleName(tr("Key figures"));
  list_->setDragDropMode(QAbstractItemView::InternalMove);
  list_->setDefaultDropAction(Qt::MoveAction);
  row->addWidget(list_, 1);
  auto* buttons = new QVBoxLayout;
  const auto add = [&](const QString& text) {
    auto* button = new QPushButton(text);
    button->setAutoDefault(false);
    buttons->addWidget(button);
    return button;
  };
  up_ = add(tr("Move &Up"));
  down_ = add(tr("Move &Down"));
  auto* reset = add(tr("&Reset to Default"));
  buttons->addStretch();
  row->addLayout(buttons);
  column->addLayout(row);
  message_ = new QLabel;
  message_->setWordWrap(true);
  message_->setAccessibleName(tr("Message"));
  column->addWidget(message_);
  auto* box = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel);
  accept_ = box->button(QDialogButtonBox::Ok);
  column->addWidget(box);
  connect(box, &QDialogButtonBox::accepted, this, &QDialog::accept);
  connect(box, &QDialogButtonBox::rejected, this, &QDialog::reject);
  for (const auto& [button, key, by] :
       {std::tuple{up_, Qt::Key_Up, -1}, std::tuple{down_, Qt::Key_Down, +1}}) {
    auto* action = new QAction(button->text(), list_);
    action->setShortcut(QKeySequence(Qt::ALT | key));
    action->setShortcutContext(Qt::WidgetShortcut);
    list_->addAction(action);
    connect(action, &QAction::triggered, this, [this, by = by] { move(by); });
    connect(button, &QPushButton::clicked, action, &QAction::trigger);
  }
  connect(reset, &QPushButton::clicked, this, [this] {
    fill(figuresInReadout(*plan_, {}));
    usual_ = true;
  });
  connect(list_, &QListWidget::itemChanged, this, [this](QListWidgetItem* item) {
    if (item->checkState() == Qt::Checked && ticked().size() > kMostFigures) {
      const QSignalBlocker quiet(list_);
      item->setCheckState(Qt::Unchecked);
      message_->setText(tr("The readout has room for %n figures: untick one first.", nullptr,
                           static_cast<int>(kMostFigures)));
      return;
    }
    changed();
  });
  const auto moved = [this] { usual_ = false; };
  connect(list_->model(), &QAbstractItemModel::rowsMoved, this, moved);
  connect(list_->model(), &QAbstractItemModel::rowsInserted, this, moved);
  connect(list_, &QListWidget::currentRowChanged, this, [this](int at) {
    up_->setEnabled(at > 0);
    down_->setEnabled(at >= 0 && at + 1 < list_->count());
  });
  const bool wasUsual = usual_;
  fill(figuresInReadout(*plan_, picked));
  usual_ = wasUsual;
  constexpr int kFewestRows = 4;
  list_->setMinimumSize(list_->sizeHintForColumn(0) + 40, list_->sizeHintForRow(0) * kFewestRows);
  list_->setSizeAdjustPolicy(QAbstractScrollArea::AdjustToContents);
  fitToScreen(*this);
  list_->setFocus();
}

/// Those picked first, in their order; then all others.
void FiguresDialog::fill(const std::vector<Figure>& picked) {
  {
    const QSignalBlocker quiet(list_);
    list_->clear();
    std::vector<Figure> order = picked;
    for (int i = 0; i < kFigureCount; ++i)
      if (const auto figure = static_cast<Figure>(i);
          std::find(picked.begin(), picked.end(), figure) == picked.end())
        order.push_back(figure);
    for (std::size_t i = 0; i < order.size(); ++i) {
      const QString name = figureName(order[i]);
      auto* item = new QListWidgetItem(hasFigure(*plan_, order[i]) ? name : tr("%1 (lacks data)").arg(name));
      item->setFlags(Qt::ItemIsSelectable | Qt::ItemIsEnabled | Qt::ItemIsUserCheckable |
                     Qt::ItemIsDragEnabled);
      item->setData(Qt::UserRole, static_cast<int>(order[i]));
      item->setCheckState(i < picked.size() ? Qt::Checked : Qt::Unchecked);
      list_->addItem(item);
    }
  }
  list_->setCurrentRow(0);
  changed();
}

void FiguresDialog::move(int by) {
  const int from = list_->currentRow(), to = from + by;
  if (from < 0 || to < 0 || to >= list_->count()) return;
  list_->insertItem(to, list_->takeItem(from));
  list_->setCurrentRow(to);
}

void FiguresDialog::changed() {
  usual_ = false;
  const bool any = !ticked().empty();
  accept_->setEnabled(any);
  message_->setText(any ? QString() : tr("One figure at least stands in the readout."));
}

std::vector<Figure> FiguresDialog::ticked() const {
  std::vector<Figure> figures;
  for (int i = 0; i < list_->count(); ++i)
    if (list_->item(i)->checkState() == Qt::Checked)
      figures.push_back(static_cast<Figure>(list_->item(i)->data(Qt::UserRole).toInt()));
  return figures;
}

std::vector<Figure> FiguresDialog::chosen() const {
  return usual_ ? std::vector<Figure>() : ticked();
}

}  // namespace layshaft::ui
