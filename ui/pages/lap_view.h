// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "ui/pages/page.h"

namespace layshaft::ui {

/// One way to look at the laps of a bike: a page inside the Lap page.
class LapView : public Page {
  Q_OBJECT
 public:
  using Page::Page;

  /// What stands above the conditions while the view is looked at; null where nothing does. There once the
  /// view is built; whoever asks places it.
  virtual QWidget* beside() { return nullptr; }
};

}  // namespace layshaft::ui
