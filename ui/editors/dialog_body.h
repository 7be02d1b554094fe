// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QScrollArea>
#include <QVBoxLayout>

class QDialog;

namespace layshaft::ui {

/// What a dialog asks for, above its buttons: scrolls where the screen is too low for all of it, so that the
/// buttons stay in view. What has the focus is brought into view.
class DialogBody : public QScrollArea {
  Q_OBJECT
 public:
  explicit DialogBody(QWidget* parent = nullptr);

  QVBoxLayout& column() { return *column_; }

  QSize minimumSizeHint() const override;
  QSize sizeHint() const override;

 protected:
  void resizeEvent(QResizeEvent* event) override;

 private:
  QVBoxLayout* column_;
};

/// Gives a dialog the size of what is in it, as far as its screen has room.
void fitToScreen(QDialog& dialog);

}  // namespace layshaft::ui
