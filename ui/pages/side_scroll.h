// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QScrollArea>

namespace layshaft::ui {

/// The controls beside a picture: as wide as they need, whatever they come to say, so that only a low window
/// makes them scroll and nothing is cut at the side.
class SideScroll : public QScrollArea {
  Q_OBJECT
 public:
  /// `least`: px that it has in any case.
  SideScroll(QWidget* side, int least, QWidget* parent = nullptr);

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void fit();

  int least_;
};

}  // namespace layshaft::ui
