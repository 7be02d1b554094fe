// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>

#include "core/parts/chain.h"

namespace layshaft::ui {

/// A run of chain to scale with its links counted between the two pins that are measured: links are counted,
/// not pins. Its accessible description says the same in words.
class ChainSketch : public QWidget {
  Q_OBJECT
 public:
  explicit ChainSketch(const ChainSize& size, QWidget* parent = nullptr);

  void setPitches(int pitches);

  QSize sizeHint() const override;
  QSize minimumSizeHint() const override { return sizeHint(); }

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  ChainSize size_;
  int pitches_;
};

}  // namespace layshaft::ui
