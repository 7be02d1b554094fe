// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/document/track_edits.h"

#include <QLocale>

#include "core/bike/track_rules.h"
#include "core/limits.h"
#include "core/number_text.h"
#include "ui/words/plain_text.h"

namespace layshaft::ui {
namespace {

struct TrackEditsWords {
  Q_DECLARE_TR_FUNCTIONS(TrackEdits)
};

std::optional<double> Track::*memberOf(TrackEffort effort) {
  switch (effort) {
    case TrackEffort::CornerShare:
      return &Track::cornerSharePercent;
    case TrackEffort::BrakeShare:
      return &Track::brakeSharePercent;
    case TrackEffort::MaxLean:
      break;
  }
  return &Track::maxLeanDeg;
}

/// As the history calls it.
QString titleOf(TrackEffort effort, const QString& track) {
  switch (effort) {
    case TrackEffort::CornerShare:
      return TrackEditsWords::tr("grip used in bends of %1", "a track").arg(track);
    case TrackEffort::BrakeShare:
      return TrackEditsWords::tr("grip used on the brakes of %1", "a track").arg(track);
    case TrackEffort::MaxLean:
      break;
  }
  return TrackEditsWords::tr("most lean on %1", "a track").arg(track);
}

/// The place of the track that is ridden; none where there is none.
std::optional<std::size_t> ridden(const Profile& profile) {
  const Track* track = trackOfTheRide(profile);
  return track ? std::optional(static_cast<std::size_t>(track - profile.tracks.data())) : std::nullopt;
}

}  // namespace

std::optional<Problem> TrackEdits::ride(const std::string& name) {
  const Track* now = trackOfTheRide(document_.profile());
  if (now && now->name == name) return std::nullopt;
  const auto shown = [](const Profile& profile) {
    const Track* track = trackOfTheRide(profile);
    return track ? shownName(track->name) : QString();
  };
  return document_.edit({.field = QStringLiteral("ride.track"), .title = tr("track"), .shown = shown},
                        [&](Profile& profile) {
                          if (!profile.ride) profile.ride.emplace();
                          profile.ride->track = name;
                        });
}

std::optional<Problem> TrackEdits::setEffort(TrackEffort effort, std::optional<double> value) {
  const auto index = ridden(document_.profile());
  if (!index) return std::nullopt;
  const std::string key = "tracks[" + std::to_string(*index) + "]." + keyOf(effort);
  const Limit& limit = limitOf(effort);
  if (value && !limit.contains(*value))
    return Problem{.kind = Problem::Kind::OutOfRange,
                   .path = key,
                   .given = numberText(*value),
                   .low = limit.low,
                   .high = limit.high,
                   .unit = limit.unit};
  const auto member = memberOf(effort);
  const auto shown = [index, member, effort](const Profile& profile) {
    if (*index >= profile.tracks.size()) return QString();
    const auto& now = profile.tracks[*index].*member;
    if (!now) return effort == TrackEffort::MaxLean ? tr("not given") : tr("usual");
    return (effort == TrackEffort::MaxLean ? tr("%1°") : tr("%1 %")).arg(QLocale().toString(*now));
  };
  const QString track = shownName(document_.profile().tracks[*index].name);
  return document_.edit(
      {.field = QString::fromStdString(key), .title = titleOf(effort, track), .shown = shown},
      [&](Profile& profile) { profile.tracks[*index].*member = value; });
}

std::optional<double> TrackEdits::effort(TrackEffort effort) const {
  const Track* track = trackOfTheRide(document_.profile());
  return track ? track->*memberOf(effort) : std::nullopt;
}

const char* keyOf(TrackEffort effort) {
  switch (effort) {
    case TrackEffort::CornerShare:
      return "corner_share_percent";
    case TrackEffort::BrakeShare:
      return "brake_share_percent";
    case TrackEffort::MaxLean:
      break;
  }
  return "max_lean_deg";
}

const Limit& limitOf(TrackEffort effort) {
  return effort == TrackEffort::MaxLean ? limits::kMaxLeanDeg : limits::kShareOfGripPercent;
}

QString effortLabel(TrackEffort effort) {
  switch (effort) {
    case TrackEffort::CornerShare:
      return TrackEditsWords::tr("Grip used in bends");
    case TrackEffort::BrakeShare:
      return TrackEditsWords::tr("Grip used on the brakes");
    case TrackEffort::MaxLean:
      break;
  }
  return TrackEditsWords::tr("Most lean");
}

}  // namespace layshaft::ui
