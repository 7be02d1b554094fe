// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLineEdit>

#include "core/parts/tyre.h"

namespace layshaft::ui {

/// A line for a tyre size as it is printed. What is typed is checked as it is typed; a size that can be real
/// is taken at once, anything else leaves the bike as it is and says what is expected.
class TyreField : public QLineEdit {
  Q_OBJECT
 public:
  explicit TyreField(QWidget* parent = nullptr);

  void showTyre(const TyreSize& tyre);

 signals:
  void tyreTyped(const QString& size);
  void refused(const QString& why);

 protected:
  bool event(QEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;

 private:
  bool isHalfTyped() const;

  QString shown_;
};

}  // namespace layshaft::ui
