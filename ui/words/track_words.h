// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QStringList>

#include "core/bike/track.h"
#include "core/problem.h"
#include "core/track/laps.h"
#include "core/track/recorded_track.h"
#include "core/track/track_line.h"
#include "ui/words/units_shown.h"

/// Tracks, and recordings of them, in words.
namespace layshaft::ui {

/// Once along a track.
double trackLengthM(const Track& track);

/// A length of a track or a lap: "2.413 km", "412 m".
QString trackLengthText(double metres, const UnitsShown& units);

/// A distance of some metres, such as a gap: "1.2 m".
QString shortDistanceText(double metres, const UnitsShown& units);

/// What a track is made of: "Segments, closed".
QString trackKindWords(const Track& track);

/// How long a track is and whether it closes: "2.413 km; ends 12 m from its start, turned 4° too little."
QString trackShapeWords(const Track& track, const TrackLine& line, const UnitsShown& units);

/// Where a recorded line is from, and in what stretches it is kept.
QString recordedPathWords(const TrackPath& path, const UnitsShown& units);

/// A lap in a list to choose from. `number` counts from 1.
QString lapOption(const RecordedLap& lap, std::size_t number, const UnitsShown& units);

/// What there is to say of a track out of a recording, a sentence each: the lap, its gap, noise and smallest
/// radius, what was left out.
QStringList recordedTrackWords(const RecordedTrack& track, const UnitsShown& units);

/// Why nothing is read of a recording, beginning with its file's name.
QString recordingRefusalWords(const QString& file, const Problem& problem);

/// A name for a track from the name of a file.
QString trackNameFromFile(const QString& file);

}  // namespace layshaft::ui
