// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QWidget>
#include <optional>
#include <string_view>

namespace layshaft::ui {

/// What of a bike is taken with a tape or an angle gauge.
enum class Measure {
  CentreDistance,
  SwingarmLength,
  SwingarmAngle,
  CountershaftAhead,
  CountershaftAbove,
  Rollout
};

/// What is measured for the field with that key, if a sketch of it helps.
std::optional<Measure> measureOf(std::string_view key);

/// A small sketch, not to scale, of where a measure begins and ends, front of the bike to the left as in the
/// chain drawing. Its accessible description says the same in words.
class MeasureSketch : public QWidget {
  Q_OBJECT
 public:
  /// `name`: what the field is called.
  MeasureSketch(Measure measure, const QString& name, QWidget* parent = nullptr);

  QSize sizeHint() const override;
  QSize minimumSizeHint() const override { return sizeHint(); }

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  QString inWords() const;

  Measure measure_;
};

}  // namespace layshaft::ui
