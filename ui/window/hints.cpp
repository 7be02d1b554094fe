// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/hints.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>

#include "ui/document/preferences.h"

namespace layshaft::ui {

Hints::Hints(QWidget* parent) : QFrame(parent) {
  setFrameShape(QFrame::StyledPanel);
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(24, 6, 12, 6);
  auto* text =
      new QLabel(tr("<b>Above:</b> what the change does, in words and figures. <b>Middle:</b> the picture; "
                    "move the pointer over it to read it. <b>Below:</b> the drive line: turn the front or "
                    "rear teeth and watch. This is a sample; <i>File ▸ New Bike</i> starts your own."));
  text->setWordWrap(true);
  auto* dismiss = new QPushButton(tr("Got It"));
  connect(dismiss, &QPushButton::clicked, this, [this] {
    preferences::setHintsDismissed(true);
    hide();
  });
  row->addWidget(text, 1);
  row->addWidget(dismiss);
}

}  // namespace layshaft::ui
