// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "core/bike/profile.h"
#include "core/bike/track.h"
#include "core/problem.h"

/// What has to agree between the values of a track.
namespace layshaft {

/// A segment has a length alone, a radius with an angle or a length, or a length with the speed through it.
/// NotASegment, without a path, where it has anything else.
std::optional<Problem> segmentProblem(const TrackSegment& segment);

/// What is wrong with a track on its own, by key paths in the track: its segments, a path beside segments
/// (OnlyOneOf), lists of a path that are not as long as its curvature or x without y (WrongCount). A track
/// with neither segments nor path is one that somebody has only begun.
std::optional<Problem> trackProblem(const Track& track);

/// The first thing wrong with the tracks of a profile: each of them, a name that two have (NameTaken), a ride
/// on a track that is not there (NotOneOf; MissingKey where there are none at all).
std::optional<Problem> tracksProblem(const Profile& profile);

/// The track that is ridden: the one that the ride names, else the first; null where there is none.
const Track* trackOfTheRide(const Profile& profile);

}  // namespace layshaft
