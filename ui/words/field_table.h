// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <optional>
#include <string_view>

#include "core/profile_file/access.h"
#include "ui/words/units_shown.h"

/// The words and measures of every field of a profile, once, by its key path: what forms, missing-data panels
/// and refusals call it, and how its number is read. Where it lives and what is allowed is the core's
/// business (`core/profile_file/access.h`).
namespace layshaft::ui {

/// The unit that a number has in the file; `Plain` is shown in the unit of its limit.
enum class FileUnit {
  Plain,
  Millimetre,
  Metre,
  Kilogram,
  KilometrePerHour,
  Celsius,
  Hectopascal,
  Bar,
  SquareMetre,
  KilogramSquareMetre,
  Kilonewton,
  PerKilometrePerHourSquared
};

struct TypicalRange {
  double low, high;
};

/// How a field is read and what stands in its place while it is open.
struct FieldMeasure {
  FileUnit unit = FileUnit::Plain;
  int decimals = 0;               ///< in the unit of the file; in another one as many as mean about as much
  std::optional<double> usual{};  ///< what is taken where it is open, in the unit of the file
  std::optional<TypicalRange> typical{};  ///< in the unit of the file
  const char* open = nullptr;             ///< of a choice: what "not given" is called
  std::string_view openMeans{};  ///< of a choice: the file's word that "not given" means; both are one choice
};

/// One row of the table. Words are untranslated here; the functions below look them up.
struct Field {
  std::string_view key;  ///< `[]` stands for any place in a list, `*` for any surface
  const char* label;     ///< as it stands in front of an editor; `%1` is the place in the list
  const char* name;      ///< as it stands in a sentence
  const char* help = nullptr;
  FieldMeasure measure{};
};

/// The row of a key path, null if there is none. A pin's fields are those of stock.
const Field* fieldRow(std::string_view key);

/// A field's name in front of an editor or a refusal; empty for a key that no row knows.
QString fieldLabel(std::string_view key);

/// A field's name in a sentence, as in "missing: the wheelbase"; the label where it has no other.
QString fieldName(std::string_view key);

/// What a field is, and what is typical, in the units shown.
QString fieldHelp(const Field& field, const FieldRule& rule, const UnitsShown& units);

/// What a choice is called while it is open.
QString openWord(const Field& field);

/// A number of the file in the unit shown, with every digit, and back.
double shownNumber(const Field& field, double inFile, const UnitsShown& units);
double fileNumber(const Field& field, double shown, const UnitsShown& units);
/// The decimals that a field is read with, and those that may be typed.
int shownDecimals(const Field& field, const UnitsShown& units);
int typedDecimals(const Field& field, const UnitsShown& units);
/// A number of the file as it is read: with the digits that were typed where these few say all of it, else
/// rounded to the field's own decimals.
double shownValue(const Field& field, double inFile, const UnitsShown& units);
/// The same, written.
QString shownText(const Field& field, double inFile, const UnitsShown& units);
/// A round step, in the unit shown.
double shownStep(const Field& field, const FieldRule& rule, const UnitsShown& units);
/// The unit that a field's numbers are shown in, empty for bare numbers.
QString shownUnit(const Field& field, const FieldRule& rule, const UnitsShown& units);
/// What a field is called by who reads it out: its name, and the unit of its number if it has one.
QString nameWithUnit(const QString& name, const QString& unit);
/// A unit of the file in the user's words, such as "rpm".
QString fileUnitWord(const char* unit);

}  // namespace layshaft::ui
