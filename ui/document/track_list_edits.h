// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QCoreApplication>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "core/bike/track.h"
#include "core/problem.h"
#include "ui/document/document.h"

/// The verbs that change which tracks a bike has, and what they are made of. Each is one named, undoable
/// edit.
namespace layshaft::ui {

class TrackListEdits {
  Q_DECLARE_TR_FUNCTIONS(TrackListEdits)
 public:
  explicit TrackListEdits(Document& document) : document_(document) {}

  /// A track at the end of the list, under its own name or, if that is taken, one with a number behind it.
  /// Refused where the list is full or the name empty.
  std::optional<Problem> add(Track track);
  /// The same of several, such as another bike's, as one step: all of them or none.
  std::optional<Problem> add(const std::vector<Track>& tracks);
  std::optional<Problem> duplicate(std::size_t track);
  /// Where it was ridden by name, the first one of the others is from now on.
  std::optional<Problem> remove(std::size_t track);
  /// A ride on it goes on. Refused where the name is empty, too long, or another track's.
  std::optional<Problem> rename(std::size_t track, const QString& name);
  std::optional<Problem> setClosed(std::size_t track, bool closed);
  /// At the start of an open track, km/h; none for a standing start. Refused outside of what a file may hold.
  std::optional<Problem> setStartSpeed(std::size_t track, std::optional<double> speedKmh);
  /// What the track is made of; each time a step of its own, for somebody typed it. `step` tells such steps
  /// apart.
  std::optional<Problem> setSegments(std::size_t track, const std::vector<TrackSegment>& segments, int step);

 private:
  bool has(std::size_t track) const { return track < document_.profile().tracks.size(); }
  QString nameOfTrack(std::size_t track) const;

  Document& document_;
};

/// A name that no track of the profile has: the wanted one, or with a number behind it.
std::string freeTrackName(const Profile& profile, const std::string& wanted);

}  // namespace layshaft::ui
