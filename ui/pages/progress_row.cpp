// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/progress_row.h"

#include <QHBoxLayout>

namespace layshaft::ui {

ProgressRow::ProgressRow(BackgroundWork& work, const QString& stopped, QWidget* parent)
    : QWidget(parent),
      bar_(new QProgressBar),
      stop_(new QPushButton(tr("Stop"))),
      again_(new QPushButton(tr("Recalculate"))) {
  constexpr int kBarWidth = 90;
  bar_->setTextVisible(false);
  bar_->setMaximumWidth(kBarWidth);
  bar_->setAccessibleName(tr("Progress"));
  again_->setToolTip(stopped);
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(0, 0, 0, 0);
  row->addWidget(bar_);
  row->addWidget(stop_);
  row->addWidget(again_);
  again_->setVisible(false);
  setVisible(false);  // shown before it has its place it would be a window of its own
  connect(stop_, &QPushButton::clicked, &work, &BackgroundWork::cancel);
  connect(again_, &QPushButton::clicked, this, &ProgressRow::againWanted);
  connect(&work, &BackgroundWork::progressed, this, [this](int done, int all) {
    bar_->setMaximum(all);
    bar_->setValue(done);
  });
  connect(&work, &BackgroundWork::finished, this, [this] { setVisible(false); });
  const auto stoppedNow = [this] { offer(true); };
  connect(&work, &BackgroundWork::cancelled, this, stoppedNow);
  connect(&work, &BackgroundWork::failed, this, stoppedNow);
}

void ProgressRow::begin() {
  bar_->setValue(0);
  offer(false);
}

void ProgressRow::offer(bool again) {
  bar_->setVisible(!again);
  stop_->setVisible(!again);
  again_->setVisible(again);
  setVisible(true);
}

}  // namespace layshaft::ui
