// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QScrollArea>

namespace layshaft::ui {

/// Holds what may need more width than a narrow window has, and scrolls it sideways alone: what stands above
/// and below keeps to the window's width.
class SidewaysScroll : public QScrollArea {
  Q_OBJECT
 public:
  explicit SidewaysScroll(QWidget* held, QWidget* parent = nullptr);

  QSize minimumSizeHint() const override;
  QSize sizeHint() const override;

 protected:
  void resizeEvent(QResizeEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;
};

}  // namespace layshaft::ui
