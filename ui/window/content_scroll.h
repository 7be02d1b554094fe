// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QScrollArea>
#include <QVBoxLayout>

namespace layshaft::ui {

/// What stands one below the other in a window: fills it where there is room, and scrolls where the window is
/// lower or narrower than its parts can be, so that each part can be reached. What has the focus is brought
/// into view.
class ContentScroll : public QScrollArea {
  Q_OBJECT
 public:
  explicit ContentScroll(QWidget* parent = nullptr);

  /// Parts with a stretch get what is left, and have at least their minimum size.
  QVBoxLayout& column() { return *column_; }

  /// Brings the top of a part into view, unless all of the part is there.
  void showTop(const QWidget& part);

  QSize minimumSizeHint() const override;
  QSize sizeHint() const override;

 protected:
  void resizeEvent(QResizeEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  int neededHeight(int width) const;
  void fit();

  QVBoxLayout* column_;
};

}  // namespace layshaft::ui
