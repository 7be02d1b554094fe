// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <functional>
#include <optional>

#include "core/limits.h"
#include "core/parts/gearbox.h"
#include "ui/editors/calm_spin_box.h"

namespace layshaft::ui {

/// Whether a text is, or is on the way to, two tooth counts: "27/16", "27:16", "27-16", "27/".
bool readsAsTeeth(const QString& text);

/// The ratio that two tooth counts make, the driven gear's first: "27/16", "27:16" and "27-16" are 1.6875.
/// Nothing unless both are whole numbers of teeth above zero.
std::optional<double> ratioOfTeeth(const QString& text);

/// The two counts themselves.
std::optional<GearTeeth> typedTeeth(const QString& text);

/// A ratio as it is typed: a number, or the teeth that make it, to six decimals; nothing if it is neither.
std::optional<double> typedRatio(const QString& text, const Limit& limit);

/// A box for a ratio that takes tooth counts too, and readings if it is told how. What gives no ratio is
/// refused as a number is.
class RatioBox : public DecimalBox {
 public:
  explicit RatioBox(QWidget* parent = nullptr, int leastDecimals = 0);

  /// The teeth that the text in the box names, if they make its value.
  std::optional<GearTeeth> teeth() const;
  /// Takes "5000@110", too: `ratio` gives what is read from it, or nothing.
  void readReadings(std::function<std::optional<double>(const QString&)> ratio) {
    ratioRead_ = std::move(ratio);
  }
  /// Told when teeth are typed, also where they make the ratio that the box has already.
  void whenTeethTyped(std::function<void()> tell) { teethTyped_ = std::move(tell); }

  QValidator::State validate(QString& text, int& position) const override;
  double valueFromText(const QString& text) const override;
  void fixup(QString& text) const override;

 private:
  /// Whether the text is no number but something that a ratio follows from.
  bool readsAsMore(const QString& text) const;
  std::optional<double> ratioOf(const QString& text) const;

  std::function<std::optional<double>(const QString&)> ratioRead_;
  std::function<void()> teethTyped_;
};

}  // namespace layshaft::ui
