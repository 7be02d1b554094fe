// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/typed_ratio.h"

#include <QRegularExpression>
#include <cmath>

#include "ui/editors/columns_table.h"

namespace layshaft::ui {
namespace {

/// Two counts with a stroke, a colon, a dash or a division sign between; the second may still be missing.
QRegularExpressionMatch teethIn(const QString& text) {
  static const QRegularExpression teeth(
      QStringLiteral("^\\s*(\\d{1,3})\\s*[/:\\-\\x{2013}\\x{00F7}]\\s*(\\d{0,3})\\s*$"));
  return teeth.match(text);
}

}  // namespace

bool readsAsTeeth(const QString& text) {
  return teethIn(text).hasMatch();
}

std::optional<GearTeeth> typedTeeth(const QString& text) {
  const auto match = teethIn(text);
  const GearTeeth teeth{.driving = match.captured(2).toInt(), .driven = match.captured(1).toInt()};
  return limits::kGearTeeth.contains(teeth.driving) && limits::kGearTeeth.contains(teeth.driven)
             ? std::optional(teeth)
             : std::nullopt;
}

std::optional<double> ratioOfTeeth(const QString& text) {
  const auto teeth = typedTeeth(text);
  if (!teeth) return std::nullopt;
  constexpr double kSixDecimals = 1e6;
  return std::round(teeth->ratio() * kSixDecimals) / kSixDecimals;
}

std::optional<double> typedRatio(const QString& text, const Limit& limit) {
  return readsAsTeeth(text) ? ratioOfTeeth(text) : typedNumber(text, limit.high);
}

RatioBox::RatioBox(QWidget* parent, int leastDecimals) : DecimalBox(parent, leastDecimals) {
  // After the box itself has taken the text.
  connect(lineEdit(), &QLineEdit::textChanged, this, [this] {
    if (teethTyped_ && teeth()) teethTyped_();
  });
}

std::optional<GearTeeth> RatioBox::teeth() const {
  const auto typed = typedTeeth(text());
  return typed && valueFromText(text()) == value() ? typed : std::nullopt;
}

bool RatioBox::readsAsMore(const QString& text) const {
  return readsAsTeeth(text) || (ratioRead_ && text.contains(QLatin1Char('@')));
}

std::optional<double> RatioBox::ratioOf(const QString& text) const {
  return readsAsTeeth(text) ? ratioOfTeeth(text) : ratioRead_(text);
}

QValidator::State RatioBox::validate(QString& text, int& position) const {
  if (!readsAsMore(text)) return DecimalBox::validate(text, position);
  const auto ratio = ratioOf(text);
  return ratio && *ratio >= minimum() && *ratio <= maximum() ? QValidator::Acceptable
                                                             : QValidator::Intermediate;
}

double RatioBox::valueFromText(const QString& text) const {
  if (!readsAsMore(text)) return DecimalBox::valueFromText(text);
  // As exact as a typed number, so that the box does not find another value in the text it shows of it.
  const double perUnit = std::pow(10.0, decimals());
  return std::round(ratioOf(text).value_or(value()) * perUnit) / perUnit;
}

void RatioBox::fixup(QString& text) const {
  if (!readsAsMore(text)) return DecimalBox::fixup(text);
  refuse({.typed = text.trimmed(), .low = minimum(), .high = maximum(), .noNumber = !ratioOf(text)});
  text = textFromValue(beforeTyping());  // on the way to 27/0 the box holds 2
}

}  // namespace layshaft::ui
