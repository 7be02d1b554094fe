// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>

#include "core/import/recording.h"

namespace layshaft {

/// Reads a table (`textTable`) with a row of titles: latitude and longitude in degrees, or x and y in metres;
/// height and time if they are there. Usual words in English, German and Spanish are known, in capitals or
/// small, with a unit or without; other columns are passed over. Units are degrees; m, km or ft; s, ms, clock
/// times (h:mm:ss) or moments (ISO 8601); without one degrees, metres and seconds are meant.
///
/// A row without a position, or a last row that is cut short, is left out and counted. Problems, with line
/// and the number of the cell: those of `textTable`; MissingColumn, ColumnTwice, NotOneOf for a unit that a
/// column cannot have; WrongType, NotFinite, OutOfRange and NotATime of cells; WrongCount for a row with too
/// few cells and beyond the most points allowed.
Result<Recording> readPositions(std::string_view text);

}  // namespace layshaft
