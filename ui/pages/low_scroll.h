// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QScrollArea>

namespace layshaft::ui {

/// Shows what a page shows: in a low window it keeps its least height and is scrolled; at the side nothing
/// is cut.
class LowScroll : public QScrollArea {
 public:
  /// Takes `content` over.
  explicit LowScroll(QWidget* content, QWidget* parent = nullptr);

 protected:
  void resizeEvent(QResizeEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void fit();
};

}  // namespace layshaft::ui
