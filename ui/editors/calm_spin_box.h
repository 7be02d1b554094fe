// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QComboBox>
#include <QDoubleSpinBox>
#include <QInputMethodEvent>
#include <QKeyEvent>
#include <QLineEdit>
#include <QRegularExpression>
#include <QSignalBlocker>
#include <QSpinBox>
#include <QTimer>
#include <QValidator>
#include <QWheelEvent>
#include <cmath>
#include <functional>
#include <optional>
#include <type_traits>
#include <utility>

#include "ui/words/problem_words.h"
#include "ui/words/typed_units.h"

namespace layshaft::ui {

/// Undo, redo and the switch of the drive line are the window's, also while a field has the focus: what a
/// field shows is the document's, so a history of its own would only hide the document's. Only what is half
/// typed is the field's to take back. A field asks this first of each event; true: the event is left to the
/// window's shortcuts.
inline bool leftToWindow(QEvent& event) {
  if (event.type() != QEvent::ShortcutOverride) return false;
  const auto& key = static_cast<QKeyEvent&>(event);
  if (!key.matches(QKeySequence::Undo) && !key.matches(QKeySequence::Redo) &&
      key.keyCombination() != (Qt::CTRL | Qt::Key_E))
    return false;
  event.ignore();
  return true;
}

/// True for the keys that turn pages of the window, which never change the field they are pressed in.
inline bool turnsPages(const QKeyEvent& key) {
  return key.modifiers().testFlag(Qt::ControlModifier) &&
         (key.key() == Qt::Key_PageUp || key.key() == Qt::Key_PageDown);
}

/// A spin box that the wheel changes only while it has the focus: scrolling past it must never change a
/// number. Whoever comes to it has all of it selected, and who types where words stand for a value replaces
/// them.
template <class Base>
class CalmSpinBox : public Base {
 public:
  explicit CalmSpinBox(QWidget* parent = nullptr) : Base(parent) {
    this->setFocusPolicy(Qt::StrongFocus);  // not by the wheel
    this->setKeyboardTracking(true);
    this->setAlignment(Qt::AlignRight);
    this->lineEdit()->setAcceptDrops(false);  // a file dropped here is for the window
  }

  bool event(QEvent* event) override {
    if (leftToWindow(*event)) return false;
    // What an input method writes replaces words just as keys do.
    if (event->type() == QEvent::InputMethod && showsWords() &&
        writes(static_cast<QInputMethodEvent&>(*event)))
      this->lineEdit()->selectAll();
    return Base::event(event);
  }

 protected:
  void focusInEvent(QFocusEvent* event) override {
    Base::focusInEvent(event);
    if (event->reason() == Qt::OtherFocusReason) this->selectAll();  // the other reasons do it themselves
    if (event->reason() != Qt::MouseFocusReason) return;
    // The click that brings the focus still places the cursor; after it all is selected. The next click, in
    // the field that has the focus, only places the cursor.
    QTimer::singleShot(0, this, [this] {
      if (this->hasFocus()) this->selectAll();
    });
  }
  void keyPressEvent(QKeyEvent* event) override {
    if (turnsPages(*event)) return event->ignore();
    if (showsWords() && writes(*event)) this->lineEdit()->selectAll();
    Base::keyPressEvent(event);
  }
  /// True while words stand where a number could be.
  bool showsWords() const {
    return !this->specialValueText().isEmpty() && this->text() == this->specialValueText();
  }
  void wheelEvent(QWheelEvent* event) override {
    if (this->hasFocus())
      Base::wheelEvent(event);
    else
      event->ignore();
  }

 private:
  /// True for a key that puts text into the field or takes some out.
  static bool writes(const QKeyEvent& key) {
    if (key.key() == Qt::Key_Backspace || key.key() == Qt::Key_Delete || key.matches(QKeySequence::Paste))
      return true;
    const bool command = key.modifiers() & (Qt::ControlModifier | Qt::AltModifier | Qt::MetaModifier);
    return !command && !key.text().isEmpty() && key.text().at(0).isPrint();
  }
  static bool writes(const QInputMethodEvent& input) {
    return !input.commitString().isEmpty() || !input.preeditString().isEmpty();
  }
};

/// A spin box whose lowest value may stand for "not given", shown as words; stepping away from it starts
/// somewhere sensible, and emptying the field returns to it.
template <class Base, class Value>
class OptionalSpinBox : public CalmSpinBox<Base> {
 public:
  using CalmSpinBox<Base>::CalmSpinBox;

  /// `none` must lie below `lowest`, the lowest value allowed.
  void allowNone(Value none, Value lowest, const QString& words, Value start) {
    none_ = static_cast<Value>(std::floor(static_cast<double>(none)));  // no digits for the box to round away
    lowest_ = lowest;
    start_ = start;
    this->setMinimum(*none_);
    setNoneWords(words);
  }
  /// Told when typing begins, or a step is made outside of typing, while the value from before still stands.
  void whenBegun(std::function<void()> tell) { begun_ = std::move(tell); }
  /// Told what was typed when it is no number, outside what is allowed or in a unit that does not fit; the
  /// value from before the typing comes back.
  void whenRefused(std::function<void(const RefusedNumber&)> tell) { tell_ = std::move(tell); }
  /// The unit of its number, where the field does not show it: it may be typed behind a number.
  void setUnit(const QString& unit) { unit_ = unit; }

  void setNoneWords(const QString& words) {
    if (this->specialValueText() != words) this->setSpecialValueText(words);
  }
  void setStart(Value start) { start_ = start; }
  bool isNone() const { return none_ && this->value() == *none_; }
  std::optional<Value> optionalValue() const {
    return isNone() ? std::nullopt : std::optional<Value>(this->value());
  }
  Value valueFor(std::optional<Value> value) const { return value.value_or(none_.value_or(this->minimum())); }

  /// Something else than the user has changed the value: there is nothing to take back.
  void startAfresh() {
    typing_ = false;
    entered_.reset();
  }

  bool event(QEvent* event) override {
    if (event->type() == QEvent::ShortcutOverride &&
        static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape && canTakeBack()) {
      event->accept();
      return true;
    }
    if (event->type() == QEvent::ShortcutOverride &&
        static_cast<QKeyEvent*>(event)->matches(QKeySequence::Undo) && isHalfTyped()) {
      event->accept();
      return true;
    }
    // Text that comes by other ways than keys: an input method, the menu.
    if (event->type() == QEvent::InputMethod || event->type() == QEvent::ContextMenu) beginTyping();
    return CalmSpinBox<Base>::event(event);
  }

  void stepBy(int steps) override {
    begin();
    if (!std::exchange(typing_, false) && begun_) begun_();
    if (isNone()) {
      this->setValue(start_ + static_cast<Value>(steps) * this->singleStep());
      this->selectAll();
      return;
    }
    // Below the lowest value lies "not given", which a step does not reach by accident.
    const double stepped = static_cast<double>(this->value()) +
                           static_cast<double>(steps) * static_cast<double>(this->singleStep());
    if (none_ && stepped < static_cast<double>(lowest())) return this->setValue(lowest());
    Base::stepBy(steps);
  }

  Value valueFromText(const QString& text) const override {
    if (standsForNone(text)) return *none_;
    const QString number = inOwnUnit(withOwnBlanks(text));
    if (const auto rounded = roundedFrom(number)) return *rounded;
    return Base::valueFromText(number);
  }
  QValidator::State validate(QString& text, int& position) const override {
    text = withOwnBlanks(text);
    if (standsForNone(text)) return QValidator::Acceptable;
    if (beginsUnit(beforeSuffix(text), unit())) return QValidator::Intermediate;
    QString number = inOwnUnit(text);
    // A unit may still be on the way to one that fits; if not, it is refused with a word.
    if (number == text && withTypedUnit(text)) return QValidator::Intermediate;
    // A number that is not allowed may be typed, so that it can be refused with a word instead of losing a
    // digit.
    if (outside(number)) return QValidator::Intermediate;
    if (roundedFrom(number)) return QValidator::Acceptable;
    int end = static_cast<int>(number.size());
    const auto state = number == text ? Base::validate(text, position) : Base::validate(number, end);
    // Nor is any other key swallowed: what is no number is refused as it was typed.
    return state == QValidator::Invalid ? QValidator::Intermediate : state;
  }
  void fixup(QString& text) const override {
    const QString number = inOwnUnit(text);
    const bool withUnit = withTypedUnit(text).has_value();
    const bool otherUnit = withUnit && number == text;
    const bool outOfRange = !otherUnit && outside(number);
    if (!otherUnit && !outOfRange) {
      Base::fixup(text);
      int end = static_cast<int>(text.size());
      if (bare(text).isEmpty() || this->validate(text, end) == QValidator::Acceptable) return;
    }
    refuse({.typed = (withUnit || !outOfRange ? beforeSuffix(text) : text).trimmed(),
            .low = static_cast<double>(lowest()),
            .high = static_cast<double>(this->maximum()),
            .unit = unit(),
            .noNumber = !outOfRange,
            .notWhole = !outOfRange && std::is_integral_v<Value> && numberIn(number).has_value()});
    text = none_ && before_ == *none_ ? QString() : this->textFromValue(before_) + this->suffix();
  }

 protected:
  void keyPressEvent(QKeyEvent* event) override {
    if (event->key() == Qt::Key_Escape) {
      // With nothing to take back the key is the dialog's.
      if (canTakeBack()) return takeBack();
      return event->ignore();
    }
    if (event->matches(QKeySequence::Undo) && isHalfTyped()) return bringBack(this->value());
    beginTyping();
    CalmSpinBox<Base>::keyPressEvent(event);
    // What was confirmed stays: Escape takes back only what comes after it.
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) startAfresh();
  }
  void focusInEvent(QFocusEvent* event) override {
    CalmSpinBox<Base>::focusInEvent(event);
    // A menu or another window that was in front is no new visit of the field.
    if (event->reason() == Qt::PopupFocusReason || event->reason() == Qt::ActiveWindowFocusReason) return;
    startAfresh();
    before_ = this->value();
  }
  void focusOutEvent(QFocusEvent* event) override {
    Base::focusOutEvent(event);
    typing_ = false;
  }
  QAbstractSpinBox::StepEnabled stepEnabled() const override {
    return isNone() ? QAbstractSpinBox::StepUpEnabled | QAbstractSpinBox::StepDownEnabled
                    : Base::stepEnabled();
  }

  void refuse(const RefusedNumber& refused) const {
    if (tell_) tell_(refused);
  }
  QString unit() const { return unit_.isEmpty() ? this->suffix().trimmed() : unit_; }
  Value beforeTyping() const { return before_; }
  Value lowest() const { return lowest_.value_or(this->minimum()); }
  /// The text without its unit: deleting a number leaves the unit standing.
  QString bare(QString text) const {
    const QString unit = this->suffix().trimmed();
    text = text.trimmed();
    if (!unit.isEmpty() && text.endsWith(unit)) text.chop(unit.size());
    return text.trimmed();
  }

 private:
  void beginTyping() {
    begin();
    if (std::exchange(typing_, true)) return;
    before_ = this->value();
    if (begun_) begun_();
  }
  /// Keeps the value that stood before the first key or step of this visit.
  void begin() {
    if (!entered_) entered_ = this->value();
  }
  QString textOf(Value value) const {
    if (none_ && value == *none_) return this->specialValueText();
    return this->prefix() + this->textFromValue(value) + this->suffix();
  }
  bool canTakeBack() const {
    return entered_ && (this->value() != *entered_ || this->text() != textOf(*entered_));
  }
  /// Whether the text is not, or not yet, the value.
  bool isHalfTyped() const {
    QString text = this->text();
    if (text == textOf(this->value())) return false;
    int end = static_cast<int>(text.size());
    return this->validate(text, end) != QValidator::Acceptable || this->valueFromText(text) != this->value();
  }
  void takeBack() { bringBack(*std::exchange(entered_, std::nullopt)); }
  void bringBack(Value value) {
    typing_ = false;
    // Text that was not taken yet is not to be interpreted, and so refused, on its way out.
    {
      const QSignalBlocker quiet(this->lineEdit());
      this->lineEdit()->setText(textOf(value));
    }
    this->setValue(value);
    this->selectAll();
  }

  /// An emptied field and the words themselves, also as they are typed.
  bool standsForNone(const QString& text) const {
    if (!none_) return false;
    return bare(text).isEmpty() || text == this->specialValueText() ||
           bare(text).compare(this->specialValueText(), Qt::CaseInsensitive) == 0;
  }

  /// Where the locale groups digits by a blank, any blank that a keyboard or another program gives is that
  /// one.
  QString withOwnBlanks(QString text) const {
    const QString group = this->locale().groupSeparator();
    if (group.size() != 1 || !group[0].isSpace() || text == this->specialValueText()) return text;
    const auto end = text.endsWith(this->suffix()) ? text.size() - this->suffix().size() : text.size();
    for (qsizetype i = 1; i < end; ++i)
      if (text[i].isSpace() && text[i - 1].isDigit()) text[i] = group[0];
    return text;
  }

  /// What stands before the unit that the field shows itself.
  QString beforeSuffix(const QString& text) const {
    const QString suffix = this->suffix();
    return !suffix.isEmpty() && text.endsWith(suffix) ? text.chopped(suffix.size()) : text;
  }
  /// The number and the unit typed behind it.
  std::optional<NumberAndUnit> withTypedUnit(const QString& text) const {
    return text == this->specialValueText() ? std::nullopt : numberAndUnit(beforeSuffix(text));
  }
  /// A number with a unit that fits, or with the blank before one, as a number of the field; any other text
  /// as it is.
  QString inOwnUnit(const QString& text) const {
    const auto typed = withTypedUnit(text);
    if (!typed) {
      const QString number = beforeSuffix(text);
      return !number.isEmpty() && number.back().isSpace() ? number.trimmed() + this->suffix() : text;
    }
    if (const auto same = inUnitOf(unit(), 1.0, typed->unit); same == 1.0)
      return typed->number + this->suffix();
    bool ok = false;
    const double number =
        this->locale().toDouble(QString(typed->number).remove(this->locale().groupSeparator()), &ok);
    const auto converted = ok ? inUnitOf(unit(), number, typed->unit) : std::nullopt;
    if (!converted) {
      // Some of its own, on the way in or out, is no other one.
      const bool begun = unit().startsWith(typed->unit, Qt::CaseInsensitive);
      return begun ? typed->number + this->suffix() : text;
    }
    return this->locale().toString(*converted, 'f', decimalsTyped()) + this->suffix();
  }
  int decimalsTyped() const {
    if constexpr (requires { this->decimals(); })
      return this->decimals();
    else
      return 0;
  }

  std::optional<double> numberIn(const QString& text) const {
    bool ok = false;
    const double typed = this->locale().toDouble(bare(text).remove(this->locale().groupSeparator()), &ok);
    return ok ? std::optional(typed) : std::nullopt;
  }
  /// The value of a number that has more decimals than the box.
  std::optional<Value> roundedFrom(const QString& text) const {
    if constexpr (requires { this->decimals(); }) {
      static const QRegularExpression plain(QStringLiteral("^[+-]?\\d+[.,](\\d+)$"));
      const auto match = plain.match(bare(text));
      const auto typed = match.capturedLength(1) > this->decimals() ? numberIn(text) : std::nullopt;
      if (!typed || !bare(text).contains(this->locale().decimalPoint())) return std::nullopt;
      const double perUnit = std::pow(10.0, this->decimals());
      return std::round(*typed * perUnit) / perUnit;
    }
    return std::nullopt;
  }
  /// Whether a number was typed that is not allowed.
  bool outside(const QString& text) const {
    const auto typed = numberIn(text);
    return typed && (*typed < static_cast<double>(lowest()) || *typed > static_cast<double>(this->maximum()));
  }

  std::optional<Value> none_;
  std::optional<Value> lowest_;
  Value start_{};
  Value before_{};                ///< the value when the typing began
  std::optional<Value> entered_;  ///< the value before the user's first change of this visit
  bool typing_ = false;
  QString unit_;
  std::function<void()> begun_;
  std::function<void(const RefusedNumber&)> tell_;
};

/// A whole number, typed or stepped.
using WholeBox = OptionalSpinBox<QSpinBox, int>;

/// A decimal number. Digits beyond the shown ones are kept until the user changes the value, trailing zeros
/// are not shown beyond `leastDecimals`, and a number typed with more digits is rounded.
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

  QValidator::State validate(QString& text, int& position) const override {
    text = withOwnPoint(text);
    return OptionalSpinBox::validate(text, position);
  }
  double valueFromText(const QString& text) const override {
    return OptionalSpinBox::valueFromText(withOwnPoint(text));
  }

 private:
  /// Who is used to the other decimal sign types that: "1,9" where the locale writes 1.9 is never nineteen.
  /// The sign is taken for the decimal one unless it can stand before thousands.
  QString withOwnPoint(QString text) const {
    const QString group = locale().groupSeparator(), point = locale().decimalPoint();
    const QString other = point == QLatin1String(",") ? QStringLiteral(".") : QStringLiteral(",");
    if (text.count(other) != 1 || text.contains(point)) return text;
    const auto at = text.indexOf(other);
    qsizetype before = 0;
    for (qsizetype i = at; i > 0 && text[i - 1].isDigit(); --i) ++before;
    constexpr double kThousand = 1000.0;
    constexpr qsizetype kGroup = 3;
    const bool thousands = other == group && maximum() >= kThousand && before >= 1 && before <= kGroup;
    return thousands ? text : text.replace(at, other.size(), point);
  }

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
  if constexpr (requires { box.startAfresh(); }) box.startAfresh();
}

}  // namespace layshaft::ui
