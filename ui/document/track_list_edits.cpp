// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/document/track_list_edits.h"

#include <algorithm>

#include "core/limits.h"
#include "core/number_text.h"
#include "ui/words/plain_text.h"

namespace layshaft::ui {
namespace {

QString keyOf(std::size_t track, const char* key) {
  return QStringLiteral("tracks[%1].%2").arg(track).arg(QLatin1String(key));
}

bool isTaken(const Profile& profile, const std::string& name) {
  return std::any_of(profile.tracks.begin(), profile.tracks.end(),
                     [&](const Track& track) { return track.name == name; });
}

/// What a name has to be.
std::optional<Problem> nameProblem(const QString& name) {
  const auto characters = name.toUcs4().size();
  if (characters >= 1 && characters <= limits::kLongestName) return std::nullopt;
  return Problem{.kind = Problem::Kind::OutOfRange,
                 .path = "tracks[].name",
                 .given = std::to_string(characters),
                 .low = 1,
                 .high = limits::kLongestName,
                 .unit = "characters"};
}

}  // namespace

std::string freeTrackName(const Profile& profile, const std::string& wanted) {
  constexpr qsizetype kRoomForNumber = 8;
  if (!isTaken(profile, wanted)) return wanted;
  const auto letters = QString::fromStdString(wanted).toUcs4().mid(0, limits::kLongestName - kRoomForNumber);
  const QString start = QString::fromUcs4(reinterpret_cast<const char32_t*>(letters.data()), letters.size());
  for (int number = 2;; ++number)
    if (const auto name = QStringLiteral("%1 %2").arg(start).arg(number).toStdString();
        !isTaken(profile, name))
      return name;
}

QString TrackListEdits::nameOfTrack(std::size_t track) const {
  return shownName(document_.profile().tracks[track].name);
}

std::optional<Problem> TrackListEdits::add(Track track) {
  return add(std::vector<Track>{std::move(track)});
}

std::optional<Problem> TrackListEdits::add(const std::vector<Track>& tracks) {
  if (tracks.empty()) return std::nullopt;
  const auto& old = document_.profile().tracks;
  if (const auto all = old.size() + tracks.size(); all > static_cast<std::size_t>(limits::kMostTracks))
    return Problem{.kind = Problem::Kind::WrongCount,
                   .path = "tracks",
                   .given = std::to_string(all),
                   .high = limits::kMostTracks};
  for (const Track& track : tracks)
    if (auto problem = nameProblem(QString::fromStdString(track.name))) return problem;
  const QString title = tracks.size() == 1 ? tr("new track %1").arg(shownName(tracks.front().name))
                                           : tr("%n new tracks", nullptr, static_cast<int>(tracks.size()));
  return document_.edit(
      {.field = QStringLiteral("tracks, %1 and more").arg(old.size()), .title = title, .shown = {}},
      [&](Profile& profile) {
        for (Track track : tracks) {
          track.name = freeTrackName(profile, track.name);
          profile.tracks.push_back(std::move(track));
        }
      });
}

std::optional<Problem> TrackListEdits::duplicate(std::size_t track) {
  return has(track) ? add(document_.profile().tracks[track]) : std::nullopt;
}

std::optional<Problem> TrackListEdits::remove(std::size_t track) {
  if (!has(track)) return std::nullopt;
  return document_.edit({.field = QStringLiteral("tracks, without %1").arg(nameOfTrack(track)),
                         .title = tr("removal of track %1").arg(nameOfTrack(track)),
                         .shown = {}},
                        [&](Profile& profile) {
                          const auto gone = profile.tracks.begin() + static_cast<std::ptrdiff_t>(track);
                          if (profile.ride && profile.ride->track == gone->name) profile.ride->track.clear();
                          profile.tracks.erase(gone);
                        });
}

std::optional<Problem> TrackListEdits::rename(std::size_t track, const QString& name) {
  if (!has(track)) return std::nullopt;
  const QString wanted = name.simplified();
  if (auto problem = nameProblem(wanted)) return problem;
  const auto shown = [track](const Profile& profile) {
    return track < profile.tracks.size() ? shownName(profile.tracks[track].name) : QString();
  };
  return document_.edit({.field = keyOf(track, "name"), .title = tr("track's name"), .shown = shown},
                        [&](Profile& profile) {
                          std::string& now = profile.tracks[track].name;
                          const bool ridden = profile.ride && profile.ride->track == now;
                          now = wanted.toStdString();
                          if (ridden) profile.ride->track = now;
                        });
}

std::optional<Problem> TrackListEdits::setClosed(std::size_t track, bool closed) {
  if (!has(track) || document_.profile().tracks[track].closed.value_or(false) == closed) return std::nullopt;
  const auto shown = [track](const Profile& profile) {
    if (track >= profile.tracks.size()) return QString();
    return profile.tracks[track].closed.value_or(false) ? tr("closed") : tr("open");
  };
  return document_.edit(
      {.field = keyOf(track, "closed"), .title = tr("track %1").arg(nameOfTrack(track)), .shown = shown},
      [&](Profile& profile) { profile.tracks[track].closed = closed; });
}

std::optional<Problem> TrackListEdits::setStartSpeed(std::size_t track, std::optional<double> speedKmh) {
  if (!has(track)) return std::nullopt;
  const Limit& limit = limits::kSpeedKmh;
  if (speedKmh && !limit.contains(*speedKmh))
    return Problem{.kind = Problem::Kind::OutOfRange,
                   .path = keyOf(track, "start_speed_kmh").toStdString(),
                   .given = numberText(*speedKmh),
                   .low = limit.low,
                   .high = limit.high,
                   .unit = limit.unit};
  return document_.edit({.field = keyOf(track, "start_speed_kmh"),
                         .title = tr("start speed of %1", "a track").arg(nameOfTrack(track)),
                         .shown = {}},
                        [&](Profile& profile) { profile.tracks[track].startSpeedKmh = speedKmh; });
}

std::optional<Problem> TrackListEdits::setSegments(std::size_t track,
                                                   const std::vector<TrackSegment>& segments, int step) {
  if (!has(track)) return std::nullopt;
  return document_.edit({.field = keyOf(track, "segments, edit %1").arg(step),
                         .title = tr("segments of %1", "a track").arg(nameOfTrack(track)),
                         .shown = {}},
                        [&](Profile& profile) { profile.tracks[track].segments = segments; });
}

}  // namespace layshaft::ui
