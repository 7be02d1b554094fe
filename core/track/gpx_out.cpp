// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/track/gpx_out.h"

#include <algorithm>
#include <cmath>

#include "core/number_text.h"
#include "core/units.h"

namespace layshaft {
namespace {

// WGS84: NIMA TR8350.2, third edition, table 3.1.
constexpr double kSemiMajorAxisM = 6378137.0, kInverseFlattening = 298.257223563;

std::string rounded(double x, double perUnit) {
  return numberText(std::round(x * perUnit) / perUnit + 0.0);
}
std::string degrees(double deg) {
  constexpr double kPerDegree = 1e8;  // a millimetre
  return rounded(deg, kPerDegree);
}
std::string metres(double m) {
  constexpr double kPerMetre = 100.0;
  return rounded(m, kPerMetre);
}

/// Text between tags (XML 1.0, fifth edition, 2.2 and 2.4).
std::string escaped(const std::string& text) {
  std::string out;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const auto c = static_cast<unsigned char>(text[i]);
    // U+FFFE and U+FFFF are no characters of XML.
    if (text.compare(i, 2, "\xEF\xBF") == 0 && i + 2 < text.size() &&
        static_cast<unsigned char>(text[i + 2]) >= 0xBE) {
      i += 2;
    } else if (c == '&') {
      out += "&amp;";
    } else if (c == '<') {
      out += "&lt;";
    } else if (c == '>') {
      out += "&gt;";
    } else if (c == '\r') {
      out += "&#13;";  // a bare one would be read as a line feed
    } else if (c >= 0x20 || c == '\t' || c == '\n') {
      out += text[i];
    }
  }
  return out;
}

std::string point(const char* tag, const TrackPlace& place, const GeoOrigin& origin,
                  const std::string& more) {
  const GeoOrigin at = geographic(place, origin);
  return std::string("<") + tag + " lat=\"" + degrees(at.latitudeDeg) + "\" lon=\"" +
         degrees(at.longitudeDeg) + "\"><ele>" + metres(place.heightM) + "</ele>" + more + "</" + tag + ">\n";
}

}  // namespace

GeoOrigin geographic(const TrackPlace& place, const GeoOrigin& origin) {
  constexpr double kDegPerRad = 180.0 / units::kPi;
  constexpr double kFlattening = 1.0 / kInverseFlattening, kEccentricity2 = kFlattening * (2.0 - kFlattening);
  const double latitudeRad = origin.latitudeDeg / kDegPerRad, sine = std::sin(latitudeRad);
  const double tangent = std::tan(latitudeRad), w2 = 1.0 - kEccentricity2 * sine * sine;
  const double primeM = kSemiMajorAxisM / std::sqrt(w2), meridianM = primeM * (1.0 - kEccentricity2) / w2;
  const double eastRad = place.xM / (primeM * std::cos(latitudeRad)), northRad = place.yM / meridianM;
  // The second terms are what the meridians' convergence makes of a plane.
  const double latitude =
      origin.latitudeDeg +
      (northRad - place.xM * place.xM * tangent / (2.0 * meridianM * primeM)) * kDegPerRad;
  const double longitude = origin.longitudeDeg + eastRad * (1.0 + place.yM * tangent / primeM) * kDegPerRad;
  constexpr double kPole = 90.0, kTurn = 360.0, kHalf = 180.0;
  return {.latitudeDeg = std::clamp(latitude, -kPole, kPole),
          .longitudeDeg = longitude - kTurn * std::floor((longitude + kHalf) / kTurn)};
}

std::string trackGpx(const Track& track, const TrackLine& line, const GeoOrigin& origin) {
  const std::string name = "<name>" + escaped(track.name) + "</name>";
  std::string out =
      "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
      "<gpx version=\"1.1\" creator=\"Layshaft\" xmlns=\"http://www.topografix.com/GPX/1/1\">\n"
      "<metadata>" +
      name + "</metadata>\n";
  for (std::size_t i = 0; i < line.begins.size() && i < track.segments.size(); ++i)
    if (const std::string& segment = track.segments[i].name; !segment.empty())
      out += point("wpt", line.places[line.begins[i]], origin, "<name>" + escaped(segment) + "</name>");
  out += "<trk>" + name + "<trkseg>\n";
  for (const TrackPlace& place : line.places) out += point("trkpt", place, origin, {});
  return out + "</trkseg></trk>\n</gpx>\n";
}

}  // namespace layshaft
