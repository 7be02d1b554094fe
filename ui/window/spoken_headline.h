// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>
#include <QPointer>
#include <QWidget>

namespace layshaft::ui {

/// What an edit did is said where the focus is: the readout's headline becomes the description of the field
/// that was turned, until the focus goes elsewhere. Who only hears the window need not leave the field to
/// learn it.
class SpokenHeadline : public QObject {
  Q_OBJECT
 public:
  explicit SpokenHeadline(QWidget& window);

  /// To be called with the headline of each new plan.
  void say(const QString& headline);

 private:
  void release(QWidget* before, QWidget* now);

  QWidget& window_;
  QPointer<QWidget> field_;  ///< the one that carries the headline
  QString own_;              ///< what its description was
  QString headline_;
};

}  // namespace layshaft::ui
