// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLabel>
#include <QPointer>
#include <vector>

#include "ui/document/document.h"

namespace layshaft::ui {

/// Says beside a field why what was typed there is not taken. Each window has one: it lies above the layout,
/// directly below or above the field, goes with it, and leaves with the next edit, undo, change of field or
/// of page, or when it is clicked; never by itself, so that nobody reads against a clock.
class RefusalBubble : public QLabel {
  Q_OBJECT
 public:
  /// The one of a field's window.
  static RefusalBubble& near(const QWidget& field);
  /// Whether a field's description, as screen readers get it, is a refusal just now.
  static bool describes(const QWidget& field);

  /// Shows why, beside the field, and tells screen readers. False if the field is not to be seen: then
  /// another place must say it.
  bool say(QWidget& field, const QString& why, const Document& document);
  void dismiss();

 signals:
  void dismissed(const QString& why);

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;
  void paintEvent(QPaintEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;

 private:
  explicit RefusalBubble(QWidget* window);
  void place();
  void describe(QWidget* field);

  QPointer<QWidget> field_;
  std::vector<QPointer<QWidget>> followed_;  ///< the field and what it lies in: it moves with them
  std::vector<QPointer<QWidget>> described_;
  std::vector<QMetaObject::Connection> ends_;
  bool below_ = true;
  int tip_ = 0;  ///< px from the left edge to what points at the field
};

}  // namespace layshaft::ui
