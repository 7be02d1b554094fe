// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/hints.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>

#include "ui/document/preferences.h"

namespace layshaft::ui {

Hints::Hints(bool sample, QWidget* parent) : QFrame(parent), text_(new QLabel), sample_(sample) {
  setFrameShape(QFrame::StyledPanel);
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(24, 6, 12, 6);
  text_->setWordWrap(true);
  setSample(sample);
  auto* dismiss = new QPushButton(tr("Got It"));
  dismiss->setAutoDefault(true);  // Enter presses it, as Space does
  connect(dismiss, &QPushButton::clicked, this, [this] {
    preferences::setHintsDismissed(true);
    hide();
  });
  row->addWidget(text_, 1);
  row->addWidget(dismiss);
}

void Hints::setSample(bool sample) {
  sample_ = sample;
  const QString areas =
      tr("<b>Above:</b> what the change does, in words and figures. <b>Middle:</b> the picture; move the "
         "pointer "
         "over it to read it. <b>Below:</b> the drive line: turn the front or rear teeth and watch.");
  text_->setText(
      sample
          ? tr("%1 This is a sample; <i>File ▸ New Bike</i> starts your own.", "after the areas").arg(areas)
          : areas);
}

}  // namespace layshaft::ui
