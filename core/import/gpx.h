// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string_view>

#include "core/import/recording.h"

namespace layshaft {

/// Reads the track points of GPX 1.1, all tracks and segments one after another; the points of its routes if
/// it has no track. Of a point it takes position, height and time, and the speed of GPX 1.0; what stands in
/// extensions is passed over. A point without height or time has none. UTF-8, UTF-16 or ISO 8859-1.
///
/// Problems, with line and column: NotXml; DocumentType, so that no entity is ever expanded or fetched;
/// TooDeep; NotARecording if the root is another; MissingKey, WrongType, NotFinite, OutOfRange and NotATime
/// of a point; WrongCount beyond the most points allowed. Time and memory grow with the length of the text
/// and no faster.
///
/// Source: GPX 1.1 Schema Documentation, www.topografix.com/GPX/1/1.
Result<Recording> readGpx(std::string_view text);

}  // namespace layshaft
