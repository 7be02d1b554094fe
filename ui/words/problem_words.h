// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>

#include "core/problem.h"

/// Sentences on what is wrong with something that a person or a file gave.
namespace layshaft::ui {

/// What is said of a typed number that is outside what is allowed, under the field's own name.
QString outsideAllowed(const QString& field, const QString& typed, double low, double high);

/// A number that a field does not take, as it was typed, and what the field takes.
struct RefusedNumber {
  QString typed;
  double low, high;
  QString unit{};         ///< the field's, empty for bare numbers
  bool noNumber = false;  ///< it is no number, or what stands behind the number is no unit of the field
  bool notWhole = false;  ///< it is a number, but the field takes whole ones
};
QString refusedNumber(const QString& field, const RefusedNumber& refused);

/// One clear sentence for a problem: key path, value, what is allowed. Never empty, ends without a full stop.
QString sentence(const Problem& problem);

/// The same for people at the window, who never see key paths: "gear 2: 3.5 must be below …".
QString spokenSentence(const Problem& problem);

}  // namespace layshaft::ui
