// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLayout>
#include <vector>

namespace layshaft::ui {

/// Lays widgets out from left to right and starts a new row where the width runs out; rows share spare width
/// evenly.
class FlowLayout : public QLayout {
 public:
  explicit FlowLayout(QWidget* parent = nullptr) : QLayout(parent) {}
  ~FlowLayout() override;

  void addItem(QLayoutItem* item) override { items_.push_back(item); }
  int count() const override { return static_cast<int>(items_.size()); }
  QLayoutItem* itemAt(int index) const override;
  QLayoutItem* takeAt(int index) override;
  Qt::Orientations expandingDirections() const override { return {}; }
  /// The height that the rows need at that width. Whoever owns the layout sets it: a layout that asked for it
  /// by itself would claim the height of its narrowest shape as the least the window may have.
  int neededHeight(int width) const { return place(QRect(0, 0, width, 0), false); }
  /// The width in which all of it stands in one row.
  int rowWidth() const;
  QSize sizeHint() const override { return minimumSize(); }
  QSize minimumSize() const override;
  void setGeometry(const QRect& rect) override;

 private:
  int place(const QRect& rect, bool move) const;
  std::vector<QLayoutItem*> items_;
};

}  // namespace layshaft::ui
