// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>

#include "core/import/recording.h"

namespace layshaft {

/// Whether one of the first lines is an NMEA 0183 sentence with a position.
bool holdsNmea(std::string_view text);

/// Reads the RMC and GGA sentences of an NMEA 0183 log, of whichever talker: position, height above sea
/// level, time, and speed over ground, which RMC gives in knots. Sentences of one time of day make one fix.
/// Without a date (GGA alone) times count on from midnight, over the next one too.
///
/// A sentence with a wrong checksum or none is left out and counted in `damaged`; a receiver that says it has
/// no position, in `noFix`. Other sentences and what stands before the `$` are passed over. Problems, with
/// line and column: BadChecksum if no sentence has a right one; WrongType, NotFinite, OutOfRange, NotOneOf
/// and NotATime of fields; WrongCount beyond the most points allowed.
///
/// Source: fields as receivers' handbooks list them; the checksum is the exclusive or of all between `$` and
/// `*`.
Result<Recording> readNmea(std::string_view text);

}  // namespace layshaft
