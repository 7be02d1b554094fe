// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QMenu>
#include <QObject>

class QMainWindow;

namespace layshaft::ui {

/// Cut, Copy, Paste and Select All for whatever field or table of the window has the focus.
class ClipboardActions : public QObject {
  Q_OBJECT
 public:
  ClipboardActions(QMainWindow& window, QMenu& menu);

 private:
  enum Verb { Cut, Copy, Paste, SelectAll };
  void perform(Verb verb);
  bool possible(Verb verb) const;

  QMainWindow& window_;
};

}  // namespace layshaft::ui
