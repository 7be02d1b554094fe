// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QSlider>
#include <vector>

namespace layshaft::ui {

/// A level slider with values marked below its groove.
class MarkedSlider : public QSlider {
  Q_OBJECT
 public:
  struct Mark {
    int value;
    QColor colour;
    bool operator==(const Mark&) const = default;
  };

  explicit MarkedSlider(QWidget* parent = nullptr) : QSlider(Qt::Horizontal, parent) {}

  /// Values outside the slider's range are left out.
  void setMarks(const std::vector<Mark>& marks);

  QSize sizeHint() const override;
  QSize minimumSizeHint() const override;

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  std::vector<Mark> marks_;
};

}  // namespace layshaft::ui
