// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/import/gpx.h"

#include "core/limits.h"
#include "tests/core/recordings.h"
#include "tests/core/support.h"

namespace layshaft::test {
namespace {

Recording gpxRead(const std::string& text) {
  const auto recording = readGpx(text);
  if (!recording) throw std::runtime_error("refused at line " + std::to_string(recording.problem().line));
  return *recording;
}

Problem gpxProblem(const std::string& text) {
  const auto recording = readGpx(text);
  EXPECT_FALSE(recording.ok()) << text.substr(0, 200);
  return recording ? Problem{} : recording.problem();
}

TEST(Gpx, TakesPositionHeightAndTimeOfAllTrackPoints) {
  const Recording recording = gpxRead(R"(<?xml version="1.0"?>
<gpx xmlns="http://www.topografix.com/GPX/1/1" version="1.1" creator="a">
<metadata><name>not &lt;a&gt; point</name><time>2020-01-01T00:00:00Z</time></metadata>
<wpt lat="1" lon="2"><ele>3</ele></wpt>
<rte><rtept lat="4" lon="5"/></rte>
<trk><name>one</name><trkseg>
<trkpt lat="48.5" lon="-11.25"><ele> 512.5 </ele><time>2026-05-12T10:00:00.5Z</time><sat>9</sat></trkpt>
<trkpt lon="180" lat="-90"/>
</trkseg><trkseg><trkpt lat="+1.5e1" lon="0"><time>2026-05-12T12:00:00+02:00</time></trkpt></trkseg></trk>
<trk><trkseg><trkpt lat="3" lon="4"><ele/></trkpt></trkseg></trk></gpx>)");
  EXPECT_EQ(recording.kind, Recording::Kind::Gpx);
  EXPECT_TRUE(recording.onEarth);
  // 2026-05-12T10:00:00Z by `date -u -d … +%s` (GNU coreutils).
  const std::vector<Fix> expected{
      {.east = -11.25, .north = 48.5, .heightM = 512.5, .timeS = 1778580000.5},
      {.east = 180, .north = -90},
      {.east = 0, .north = 15, .timeS = 1778580000.0},
      {.east = 4, .north = 3},
  };
  EXPECT_EQ(recording.fixes, expected);
}

TEST(Gpx, PassesOverWhatIsNotGpx) {
  const Recording recording =
      gpxRead(R"(<g:gpx xmlns:g="http://www.topografix.com/GPX/1/1" xmlns:e="urn:other" version="1.1">
<g:trk><g:trkseg><g:trkpt lat="1" lon="2" e:lat="50"><e:ele>9</e:ele><g:extensions><g:ele>7</g:ele><e:time>x</e:time>
</g:extensions><g:ele>8</g:ele></g:trkpt><e:trkpt lat="99" lon="999"/></g:trkseg></g:trk></g:gpx>)");
  EXPECT_EQ(recording.fixes, (std::vector<Fix>{{.east = 2, .north = 1, .heightM = 8}}));
}

TEST(Gpx, ReadsRoutesWhereThereIsNoTrackAndTheSpeedOfItsFirstVersion) {
  EXPECT_EQ(gpxRead("<gpx><rte><rtept lat='1' lon='2'/><rtept lat='3' lon='4'/></rte></gpx>").fixes.size(),
            2U);
  EXPECT_EQ(gpxRead("<gpx xmlns='http://www.topografix.com/GPX/1/0'><trk><trkseg><trkpt lat='1' lon='2'>"
                    "<speed>12.5</speed></trkpt></trkseg></trk></gpx>")
                .fixes.at(0)
                .speedMps,
            12.5);
}

TEST(Gpx, ReadsOtherEncodings) {
  EXPECT_EQ(gpxRead("<?xml version='1.0' encoding='ISO-8859-1'?><gpx><trk><name>\xE4</name><trkseg>"
                    "<trkpt lat='1' lon='2'/></trkseg></trk></gpx>")
                .fixes.size(),
            1U);
  std::string wide = "\xFF\xFE";
  for (const char c : std::string("<gpx><trk><trkseg><trkpt lat='1' lon='2'/></trkseg></trk></gpx>"))
    wide += {c, '\0'};
  EXPECT_EQ(gpxRead(wide).fixes.size(), 1U);
}

TEST(Gpx, WhatIsWrongIsNamedWithItsPlace) {
  struct Row {
    const char* point;
    Problem problem;
  };
  // The points stand in line 4 of the text.
  for (const Row& row : {
           Row{"<trkpt lat=\"91\" lon=\"2\"/>",
               {.kind = Kind::OutOfRange,
               .path = "lat",
               .given = "91",
               .low = -90,
               .high = 90,
               .unit = "°",
               .line = 4,
               .column = 1}},
           Row{"  <trkpt lat=\"1\" lon=\"-180.5\"/>",
               {.kind = Kind::OutOfRange,
               .path = "lon",
               .given = "-180.5",
               .low = -180,
               .high = 180,
               .unit = "°",
               .line = 4,
               .column = 3}},
           Row{"<trkpt lat=\"NaN\" lon=\"2\"/>",
               {.kind = Kind::NotFinite, .path = "lat", .given = "NaN", .line = 4, .column = 1}},
           Row{"<trkpt lat=\"1e999\" lon=\"2\"/>",
               {.kind = Kind::NotFinite, .path = "lat", .given = "1e999", .line = 4, .column = 1}},
           Row{"<trkpt lat=\"48,5\" lon=\"2\"/>",
               {.kind = Kind::WrongType,
               .path = "lat",
               .given = "48,5",
               .allowed = {"number"},
               .line = 4,
               .column = 1}},
           Row{"<trkpt lat=\"\" lon=\"2\"/>",
               {.kind = Kind::WrongType, .path = "lat", .allowed = {"number"}, .line = 4, .column = 1}},
           Row{"<trkpt lat=\"1\"/>", {.kind = Kind::MissingKey, .path = "lon", .line = 4, .column = 1}},
           Row{"<trkpt lat=\"1\" lon=\"2\">\n<ele>high</ele></trkpt>",
               {.kind = Kind::WrongType,
               .path = "ele",
               .given = "high",
               .allowed = {"number"},
               .line = 5,
               .column = 10}},
           Row{"<trkpt lat=\"1\" lon=\"2\">\n<ele>20000</ele></trkpt>",
               {.kind = Kind::OutOfRange,
               .path = "ele",
               .given = "20000",
               .low = -1000,
               .high = 10000,
               .unit = "m",
               .line = 5,
               .column = 11}},
           Row{"<trkpt lat=\"1\" lon=\"2\"><time>noon</time></trkpt>",
               {.kind = Kind::NotATime,
               .path = "time",
               .given = "noon",
               .allowed = {"2026-05-12T10:11:12Z"},
               .line = 4,
               .column = 34}},
           Row{"<trkpt lat=\"1\" lon=\"2\"></trk>", {.kind = Kind::NotXml, .line = 4, .column = 26}},
           Row{"<trkpt lat=\"1\" lat=\"2\" lon=\"2\"/>", {.kind = Kind::NotXml, .line = 4, .column = 16}},
           Row{"&nobody;", {.kind = Kind::NotXml, .line = 4, .column = 1}},
       })
    EXPECT_EQ(gpxProblem(gpxOf(std::string(row.point) + "\n")), row.problem) << row.point;
}

TEST(Gpx, RefusesWhatDeclaresEntities) {
  const std::string laughs =
      "<?xml version=\"1.0\"?>\n<!DOCTYPE gpx [<!ENTITY a \"lol\"><!ENTITY b "
      "\"&a;&a;&a;&a;&a;&a;&a;&a;\">]>\n"
      "<gpx><name>&b;</name></gpx>";
  const std::size_t column = std::string("<!DOCTYPE gpx [").size();
  EXPECT_EQ(gpxProblem(laughs), (Problem{.kind = Kind::DocumentType, .line = 2, .column = column}));
  const std::string external =
      "<!DOCTYPE gpx [<!ENTITY x SYSTEM \"file:///etc/passwd\">]><gpx><name>&x;</name></gpx>";
  EXPECT_EQ(gpxProblem(external).kind, Kind::DocumentType);
  EXPECT_EQ(gpxProblem("<!DOCTYPE gpx SYSTEM \"http://example.invalid/x.dtd\"><gpx/>").kind,
            Kind::DocumentType);
}

TEST(Gpx, RefusesWhatIsNoGpxAtAll) {
  const Problem html = gpxProblem("<html>\n<body/></html>");
  EXPECT_EQ(html.kind, Kind::NotARecording);
  EXPECT_EQ(html.line, 1U);
  EXPECT_EQ(gpxProblem("<gpx xmlns=\"urn:another\"/>").kind, Kind::NotARecording);
  EXPECT_EQ(gpxProblem("<gpx><trk>").kind, Kind::NotXml) << "cut short";
}

TEST(Gpx, RefusesDepthsThatNobodyNeeds) {
  std::string deep = "<gpx>";
  for (int i = 0; i < 200000; ++i) deep += "<a>";
  EXPECT_EQ(
      gpxProblem(deep),
      (Problem{.kind = Kind::TooDeep, .high = limits::kDeepestXml, .line = 1, .column = 5 + 3 * 63 + 1}));
}

TEST(Gpx, LongTextsInsideAPointCostNothing) {
  const Recording recording = gpxRead(
      gpxOf("<trkpt lat=\"1\" lon=\"2\"><name>" + std::string(5000000, 'x') + "</name><ele>7</ele></trkpt>"));
  EXPECT_EQ(recording.fixes.at(0).heightM, 7.0);
  EXPECT_EQ(
      gpxProblem(gpxOf("<trkpt lat=\"1\" lon=\"2\"><ele>" + std::string(5000000, '1') + "</ele></trkpt>"))
          .path,
      "ele");
}

}  // namespace
}  // namespace layshaft::test
