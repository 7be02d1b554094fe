// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/track/gpx_out.h"

#include <gtest/gtest.h>
#include <unistd.h>

#include <array>
#include <cmath>
#include <cstdio>
#include <filesystem>
#include <fstream>

#include "tests/core/support.h"

namespace layshaft::test {
namespace {

// From GeographicLib 2.1.2: CartConvert -l LATITUDE LONGITUDE 0, the plane that touches the ellipsoid there.
// Its third coordinate, metres below the plane, is left out.
TEST(GpxOut, PlacesAreWhereAGeodesyLibraryHasThem) {
  const struct {
    GeoOrigin origin;
    double latitude, longitude, xM, yM, withinM;
  } rows[] = {
      {{47.5, 8}, 47.52, 8.03, 2259.448380, 2224.051743, 0.01},
      {{47.5, 8}, 47.48, 7.98, -1507.443488, -2223.413857, 0.01},
      {{47.5, 8}, 47.51, 7.97, -2259.877683, 1112.243055, 0.01},
      {{47.5, 8}, 47.45, 8.1, 7541.503324, -5554.152206, 0.1},
      {{60, 10}, 59.95, 10.1, 5588.415146, -5566.368970, 0.1},
      {{60, 10}, 60.05, 9.9, -5571.575196, 5574.845620, 0.1},
      {{-33.94, 151}, -33.93, 151.02, 1849.209909, 1109.031921, 0.01},
      {{-33.94, 151}, -33.95, 150.97, -2773.166263, -1109.619275, 0.01},
      {{0, 0}, 0.01, 0.01, 1113.194885, 1105.742753, 0.01},
      {{0, 0}, -0.02, 0.015, 1669.792242, -2211.485472, 0.01},
  };
  for (const auto& row : rows) {
    const GeoOrigin at = geographic({.xM = row.xM, .yM = row.yM}, row.origin);
    constexpr double kMetresPerDegree = 111200;  // near enough to tell centimetres
    EXPECT_NEAR((at.latitudeDeg - row.latitude) * kMetresPerDegree, 0, row.withinM) << row.latitude;
    EXPECT_NEAR((at.longitudeDeg - row.longitude) * kMetresPerDegree * std::cos(row.latitude * 0.017453), 0,
                row.withinM)
        << row.latitude;
  }
}

TEST(GpxOut, LongitudesStayOnTheGlobe) {
  const GeoOrigin east = geographic({.xM = 5000}, {0, 179.99});
  EXPECT_LT(east.longitudeDeg, -179.9);
  EXPECT_GE(east.longitudeDeg, -180.0);
  EXPECT_GT(geographic({.xM = -5000}, {0, -179.99}).longitudeDeg, 179.9);
}

/// What Python's XML parser (expat) finds in a GPX file: names, then a line for each point.
std::string readBack(const std::string& gpx) {
  std::string folder = (std::filesystem::temp_directory_path() / "layshaft-gpx-XXXXXX").string();
  if (!mkdtemp(folder.data())) throw std::runtime_error("no folder for temporary files");
  const std::string file = folder + "/track.gpx";
  std::ofstream(file, std::ios::binary) << gpx;
  const std::string command = "/usr/bin/python3 '" +
                              (sourceFolder() / "tests/reference/read_gpx.py").string() + "' '" + file +
                              "' 2>&1";
  std::string out;
  if (FILE* pipe = popen(command.c_str(), "r")) {
    std::array<char, 4096> buffer{};
    while (const std::size_t n = fread(buffer.data(), 1, buffer.size(), pipe)) out.append(buffer.data(), n);
    pclose(pipe);
  }
  std::filesystem::remove_all(folder);
  return out;
}

TEST(GpxOut, IsReadByAnotherParser) {
  Track track{.name = "Quarry <&> \"Heath\" ü \x01\xEF\xBF\xBE]]>", .closed = true};
  track.segments = {{.name = "Up & over", .lengthM = 100, .slopePercent = 75},
                    {.radiusM = 50, .angleDeg = 90}};
  const TrackLine line = trackLine(track);
  const Json found = Json::parse(readBack(trackGpx(track, line, {47.5, 8})));
  EXPECT_EQ(found["version"], "1.1");
  EXPECT_EQ(found["namespace"], "http://www.topografix.com/GPX/1/1");
  EXPECT_EQ(found["children"], (Json{"metadata", "wpt", "trk"})) << "in the order of the format";
  EXPECT_EQ(found["name"], "Quarry <&> \"Heath\" ü ]]>");
  EXPECT_EQ(found["waypoints"], (Json{"Up & over"}));
  ASSERT_EQ(found["points"].size(), line.places.size());
  EXPECT_EQ(found["points"][0], (Json{47.5, 8.0, 0.0}));
  EXPECT_EQ(found["points"][1][2], 60.0);
  for (std::size_t i = 0; i < line.places.size(); ++i) {
    const GeoOrigin at = geographic(line.places[i], {47.5, 8});
    EXPECT_NEAR(found["points"][i][0].get<double>(), at.latitudeDeg, 1e-8);
    EXPECT_NEAR(found["points"][i][1].get<double>(), at.longitudeDeg, 1e-8);
  }
}

TEST(GpxOut, IsWellFormedForEverySampleAndForNothing) {
  EXPECT_TRUE(Json::parse(readBack(trackGpx({.name = "Nothing"}, {})))["points"].empty());
  for (const auto& entry : std::filesystem::directory_iterator(sourceFolder() / "sample-profiles")) {
    const auto profile = loadProfile(entry.path());
    ASSERT_TRUE(profile) << entry.path();
    for (const Track& track : profile->tracks) {
      const TrackLine line = trackLine(track);
      EXPECT_EQ(Json::parse(readBack(trackGpx(track, line)))["points"].size(), line.places.size())
          << track.name;
    }
  }
}

}  // namespace
}  // namespace layshaft::test
