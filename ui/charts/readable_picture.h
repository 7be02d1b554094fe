// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QWidget>
#include <optional>

namespace layshaft::ui {

/// A widget that is a picture, for the desktop's accessibility interface: a graphic with the widget's
/// accessible name and description, or a chart with a crosshair, whose place is a value that can be read and
/// moved.
class ReadablePicture {
 public:
  /// Where a crosshair can be, and how far a key moves it.
  struct CrosshairSpan {
    double low, high, step;
  };

  virtual ~ReadablePicture() = default;
  /// None for a picture without a crosshair.
  virtual std::optional<CrosshairSpan> crosshairSpan() const { return {}; }
  virtual std::optional<double> crosshairAt() const { return {}; }
  virtual void moveCrosshair(double) {}
  /// What is read at the crosshair, in words; empty while it is hidden.
  virtual QString crosshairWords() const { return {}; }
};

/// Makes known that widgets which are a ReadablePicture are read as pictures; more than once is the same.
/// To be called before such a widget gets its name, which makes the desktop ask what it is.
void exposeReadablePictures();

/// Tells who listens that the crosshair of `picture` is elsewhere.
void tellMovedCrosshair(QWidget& picture);

}  // namespace layshaft::ui
