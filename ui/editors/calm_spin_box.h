// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QComboBox>
#include <QDoubleSpinBox>
#include <QSignalBlocker>
#include <QSpinBox>
#include <QValidator>
#include <QWheelEvent>
#include <optional>

namespace layshaft::ui {

/// A spin box that the wheel changes only while it has the focus: scrolling past it must never change a
/// number.
template <class Base>
class CalmSpinBox : public Base {
 public:
  explicit CalmSpinBox(QWidget* parent = nullptr) : Base(parent) {
    this->setFocusPolicy(Qt::StrongFocus);  // not by the wheel
    this->setKeyboardTracking(true);
    this->setAlignment(Qt::AlignRight);
  }

 protected:
  void wheelEvent(QWheelEvent* event) override {
    if (this->hasFocus())
      Base::wheelEvent(event);
    else
      event->ignore();
  }
};

/// A spin box whose lowest value may stand for "not given", shown as words; stepping away from it starts
/// somewhere sensible, and emptying the field returns to it.
template <class Base, class Value>
class OptionalSpinBox : public CalmSpinBox<Base> {
 public:
  using CalmSpinBox<Base>::CalmSpinBox;

  /// `none` must lie below every allowed value.
  void allowNone(Value none, const QString& words, Value start) {
    none_ = none;
    start_ = start;
    this->setMinimum(none);
    setNoneWords(words);
  }
  void setNoneWords(const QString& words) {
    if (this->specialValueText() != words) this->setSpecialValueText(words);
  }
  void setStart(Value start) { start_ = start; }
  bool isNone() const { return none_ && this->value() == *none_; }
  std::optional<Value> optionalValue() const {
    return isNone() ? std::nullopt : std::optional<Value>(this->value());
  }
  Value valueFor(std::optional<Value> value) const { return value.value_or(none_.value_or(this->minimum())); }

  void stepBy(int steps) override {
    if (!isNone()) return Base::stepBy(steps);
    this->setValue(start_ + static_cast<Value>(steps) * this->singleStep());
    this->selectAll();
  }

  Value valueFromText(const QString& text) const override {
    return none_ && text.trimmed().isEmpty() ? *none_ : Base::valueFromText(text);
  }
  QValidator::State validate(QString& text, int& position) const override {
    if (none_ && text.trimmed().isEmpty()) return QValidator::Acceptable;
    return Base::validate(text, position);
  }

 protected:
  QAbstractSpinBox::StepEnabled stepEnabled() const override {
    return isNone() ? QAbstractSpinBox::StepUpEnabled | QAbstractSpinBox::StepDownEnabled
                    : Base::stepEnabled();
  }

 private:
  std::optional<Value> none_;
  Value start_{};
};

/// A whole number, typed or stepped.
using WholeBox = OptionalSpinBox<QSpinBox, int>;

/// A decimal number. Digits beyond the shown ones are kept until the user changes the value, and trailing
/// zeros are not shown beyond `leastDecimals`.
class DecimalBox : public OptionalSpinBox<QDoubleSpinBox, double> {
 public:
  explicit DecimalBox(QWidget* parent = nullptr, int leastDecimals = 0)
      : OptionalSpinBox(parent), leastDecimals_(leastDecimals) {}

  QString textFromValue(double value) const override {
    QString text = QDoubleSpinBox::textFromValue(value);
    const QString point = locale().decimalPoint();
    const auto at = text.indexOf(point);
    if (at < 0) return text;
    while (text.size() - at - point.size() > leastDecimals_ && text.endsWith(QLatin1Char('0'))) text.chop(1);
    if (text.endsWith(point)) text.chop(point.size());
    return text;
  }

 private:
  int leastDecimals_;
};

/// A choice that the wheel changes only while it has the focus.
class CalmComboBox : public QComboBox {
 public:
  explicit CalmComboBox(QWidget* parent = nullptr) : QComboBox(parent) { setFocusPolicy(Qt::StrongFocus); }

 protected:
  void wheelEvent(QWheelEvent* event) override {
    if (hasFocus())
      QComboBox::wheelEvent(event);
    else
      event->ignore();
  }
};

/// Shows a value without that counting as an edit, and without disturbing what is being typed.
template <class Box, class Value>
void showValue(Box& box, Value value) {
  if (box.value() == value) return;
  const QSignalBlocker quiet(box);
  box.setValue(value);
}

}  // namespace layshaft::ui
