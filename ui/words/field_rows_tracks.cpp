// SPDX-License-Identifier: GPL-3.0-or-later
#include <QCoreApplication>

#include "ui/words/field_rows.h"

namespace layshaft::ui::field_rows {
namespace {

struct TrackRows {
  Q_DECLARE_TR_FUNCTIONS(FieldTable)
 public:
  static constexpr Field kRows[] = {
      {"tracks", QT_TR_NOOP("Tracks"), QT_TR_NOOP("the tracks")},
      {"tracks[]", QT_TR_NOOP("Track %1"), QT_TR_NOOP("a track")},
      {"tracks[].name", QT_TR_NOOP("Track %1: name"), QT_TR_NOOP("a track's name")},
      {"tracks[].closed", QT_TR_NOOP("Track %1: closed"), QT_TR_NOOP("whether a track is closed"),
       QT_TR_NOOP("Whether a lap ends where it began. Empty: it does not, as on a hill climb.")},
      {"tracks[].start_speed_kmh",
       QT_TR_NOOP("Track %1: start speed"),
       QT_TR_NOOP("the speed at the start of a track"),
       QT_TR_NOOP("Speed at the start of a track that is not closed. Empty: a standing start."),
       {.unit = FileUnit::KilometrePerHour, .usual = 0.0, .typical = TypicalRange{0, 150}}},
      // Common practice, no source.
      {"tracks[].corner_share_percent",
       QT_TR_NOOP("Track %1: grip used in bends"),
       QT_TR_NOOP("the share of the grip that is used in bends"),
       QT_TR_NOOP("How much of the grip the rider uses in bends."),
       {.usual = 90.0, .typical = TypicalRange{60, 98}}},
      {"tracks[].brake_share_percent",
       QT_TR_NOOP("Track %1: grip used under brakes"),
       QT_TR_NOOP("the share of the grip that is used under brakes"),
       QT_TR_NOOP("How much of the grip the rider uses under brakes."),
       {.usual = 80.0, .typical = TypicalRange{50, 95}}},
      {"tracks[].max_lean_deg",
       QT_TR_NOOP("Track %1: most lean"),
       QT_TR_NOOP("the most lean on a track"),
       QT_TR_NOOP("Lean angle that the rider does not go beyond. Empty: grip alone decides."),
       {.typical = TypicalRange{35, 62}}},
      {"tracks[].segments", QT_TR_NOOP("Track %1: segments"), QT_TR_NOOP("the segments of a track")},
      {"tracks[].segments[]", QT_TR_NOOP("Track %1, segment %2"), QT_TR_NOOP("a segment")},
      {"tracks[].segments[].name", QT_TR_NOOP("Track %1, segment %2: name"), QT_TR_NOOP("a segment's name")},
      {"tracks[].segments[].length_m",
       QT_TR_NOOP("Track %1, segment %2: length"),
       QT_TR_NOOP("a segment's length"),
       QT_TR_NOOP("Length along the line you ride. A length alone is a straight."),
       {.unit = FileUnit::Metre, .typical = TypicalRange{10, 800}}},
      {"tracks[].segments[].radius_m",
       QT_TR_NOOP("Track %1, segment %2: radius"),
       QT_TR_NOOP("a bend's radius"),
       QT_TR_NOOP("Radius of the line you ride, with the angle or the length of the bend."),
       {.unit = FileUnit::Metre, .typical = TypicalRange{5, 300}}},
      {"tracks[].segments[].angle_deg",
       QT_TR_NOOP("Track %1, segment %2: angle"),
       QT_TR_NOOP("a bend's angle"),
       QT_TR_NOOP("By how much the bend turns: 90° is a right angle, 180° a hairpin."),
       {.typical = TypicalRange{15, 200}}},
      {"tracks[].segments[].corner_speed_kmh",
       QT_TR_NOOP("Track %1, segment %2: corner speed"),
       QT_TR_NOOP("the speed through a bend"),
       QT_TR_NOOP("Speed through the bend where you know it better than its radius."),
       {.unit = FileUnit::KilometrePerHour, .typical = TypicalRange{25, 200}}},
      {"tracks[].segments[].slope_percent",
       QT_TR_NOOP("Track %1, segment %2: slope"),
       QT_TR_NOOP("a segment's slope"),
       QT_TR_NOOP("Rise over run; positive is uphill. Empty: level."),
       {.decimals = 1, .usual = 0.0, .typical = TypicalRange{-15, 15}}},
      {"tracks[].segments[].surface", QT_TR_NOOP("Track %1, segment %2: surface"),
       QT_TR_NOOP("a segment's surface"),
       QT_TR_NOOP("What the tyres run on there. Empty: the surface of the ride.")},
      {"tracks[].segments[].turn", QT_TR_NOOP("Track %1, segment %2: turn"),
       QT_TR_NOOP("which way a bend goes"),
       QT_TR_NOOP("Which way the bend goes, for the map alone. Empty: left.")},
      {"tracks[].path", QT_TR_NOOP("Track %1: recorded line"), QT_TR_NOOP("a track's recorded line")},
      {"tracks[].path.spacing_m",
       QT_TR_NOOP("Track %1: length of a stretch"),
       QT_TR_NOOP("the length of a stretch"),
       nullptr,
       {.unit = FileUnit::Metre}},
      {"tracks[].path.curvature_per_km", QT_TR_NOOP("Track %1: curvature"), QT_TR_NOOP("the curvature")},
      {"tracks[].path.curvature_per_km[]", QT_TR_NOOP("Track %1, stretch %2: curvature"),
       QT_TR_NOOP("a stretch's curvature")},
      {"tracks[].path.slope_percent", QT_TR_NOOP("Track %1: slopes"), QT_TR_NOOP("the slopes")},
      {"tracks[].path.slope_percent[]", QT_TR_NOOP("Track %1, stretch %2: slope"),
       QT_TR_NOOP("a stretch's slope")},
      {"tracks[].path.x_m", QT_TR_NOOP("Track %1: places to the east"), QT_TR_NOOP("the places to the east")},
      {"tracks[].path.x_m[]",
       QT_TR_NOOP("Track %1, stretch %2: place to the east"),
       QT_TR_NOOP("a stretch's place to the east"),
       nullptr,
       {.unit = FileUnit::Metre}},
      {"tracks[].path.y_m", QT_TR_NOOP("Track %1: places to the north"),
       QT_TR_NOOP("the places to the north")},
      {"tracks[].path.y_m[]",
       QT_TR_NOOP("Track %1, stretch %2: place to the north"),
       QT_TR_NOOP("a stretch's place to the north"),
       nullptr,
       {.unit = FileUnit::Metre}},
      {"tracks[].path.curvature_noise_per_km", QT_TR_NOOP("Track %1: noise of the curvature"),
       QT_TR_NOOP("the noise of the curvature")},
      {"tracks[].path.smoothing_m",
       QT_TR_NOOP("Track %1: smoothing"),
       QT_TR_NOOP("how far the recorded line is smoothed"),
       nullptr,
       {.unit = FileUnit::Metre}},
      {"tracks[].path.source", QT_TR_NOOP("Track %1: recording"), QT_TR_NOOP("the recording")},
  };
};

}  // namespace

std::span<const Field> tracks() {
  return TrackRows::kRows;
}

}  // namespace layshaft::ui::field_rows
