// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <vector>

#include "core/study/allowed_speed.h"

namespace layshaft::ui {

/// A piece of a track under one name: a segment, or of a recorded line a bend or what lies between two.
/// Distances on this page are from the start of the track, not from where a lap was worked out from.
struct LapPart {
  QString name;
  bool named = false;  ///< by the profile
  bool bend = false;
  double fromM = 0.0, toM = 0.0;
};

/// Places on a track that are no further apart are one.
inline constexpr double kSamePlaceM = 1e-6;

/// The parts of a track from its start on, without gaps. `allowed` is of the track and not refused.
std::vector<LapPart> lapParts(const Track& track, const AllowedSpeed& allowed);

}  // namespace layshaft::ui
