// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QFrame>

class QLabel;

namespace layshaft::ui {

/// One short hint per area of the window, dismissible for ever.
class Hints : public QFrame {
  Q_OBJECT
 public:
  /// `sample`: whether the bike in the window is one of the samples.
  explicit Hints(bool sample, QWidget* parent = nullptr);

  bool isSample() const { return sample_; }
  void setSample(bool sample);

 private:
  QLabel* text_;
  bool sample_;
};

}  // namespace layshaft::ui
