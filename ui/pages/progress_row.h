// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QProgressBar>
#include <QPushButton>
#include <QWidget>

#include "ui/document/background_lane.h"

namespace layshaft::ui {

/// How far long work is, with what stops it; after a stop or a failure with what starts it again. There only
/// while one of them is.
class ProgressRow : public QWidget {
  Q_OBJECT
 public:
  /// `stopped` says what a stop has left.
  ProgressRow(BackgroundWork& work, const QString& stopped, QWidget* parent = nullptr);

  /// The work was asked for anew.
  void begin();

 signals:
  void againWanted();

 private:
  void offer(bool again);

  QProgressBar* bar_;
  QPushButton *stop_, *again_;
};

}  // namespace layshaft::ui
