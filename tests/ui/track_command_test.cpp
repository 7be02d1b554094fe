// SPDX-License-Identifier: GPL-3.0-or-later
#include <QTemporaryDir>

#include "core/track/track_csv.h"
#include "core/track_report.h"
#include "tests/core/recordings.h"
#include "tests/ui/program.h"

namespace layshaft::test {
namespace {

class TrackCommand : public testing::Test {
 protected:
  static Outcome track(const QStringList& words) { return run(QStringList{QStringLiteral("track")} + words); }
  QString write(const char* name, const std::string& text) const {
    const QString path = folder_.filePath(QString::fromUtf8(name));
    QFile file(path);
    if (!file.open(QIODevice::WriteOnly)) throw std::runtime_error("cannot write");
    file.write(text.data(), static_cast<qint64>(text.size()));
    return path;
  }
  static void expectRefusal(const QStringList& words, int code, const QStringList& named) {
    expectOneLineError(track(words), code, named);
  }
  const std::string text_ = gpxCircle(700);
  QTemporaryDir folder_;
};

TEST_F(TrackCommand, GivesWhatTheCoreFinds) {
  const QString file = write("circle.gpx", text_);
  const auto recording = readRecording(text_, "circle.gpx");
  const auto expected = recordedTrack(*recording), smooth = recordedTrack(*recording, {.smoothingM = 25.0});
  const Outcome plain = track({file});
  EXPECT_EQ(plain.err, "");
  EXPECT_EQ(plain.code, 0);
  EXPECT_EQ(plain.out.toStdString(), trackJson(*expected));
  EXPECT_EQ(track({"--format=csv", file}).out.toStdString(), pathCsv(expected->path));
  EXPECT_EQ(track({file, "--format", "gpx"}).out.toStdString(), recordedTrackGpx(*expected));
  EXPECT_EQ(track({file, "--smooth", "25"}).out.toStdString(), trackJson(*smooth));
  EXPECT_NE(trackJson(*smooth), trackJson(*expected));
}

TEST_F(TrackCommand, WritesAFile) {
  const QString file = write("circle.gpx", text_), out = folder_.filePath("circle.csv");
  EXPECT_EQ(track({file, "--format", "csv", "--output", out}).code, 0);
  EXPECT_EQ(contentsOf(out.toStdString()), pathCsv(recordedTrack(*readRecording(text_, ""))->path));
  expectRefusal({file, "--output", file}, 2, {"is the recording itself"});
}

TEST_F(TrackCommand, SaysWhereARecordingIsWrong) {
  const QString bad = write("bad.csv", "time;lat;lon\n0;48;11\n1;48,5;NaN\n");
  expectRefusal({bad}, 1, {"bad.csv", "lon", "line 3, column 3", "NaN"});
  expectRefusal({write("bomb.gpx", "<!DOCTYPE gpx [<!ENTITY a \"b\">]><gpx>&a;</gpx>")}, 1,
                {"line 1, column", "DOCTYPE"});
  expectRefusal({write("letter.txt", "Dear all")}, 1, {"letter.txt", "GPX 1.1, NMEA 0183, CSV"});
  expectRefusal({folder_.filePath("nothing.gpx")}, 1, {"nothing.gpx", "cannot be read"});
  expectRefusal({folder_.path()}, 1, {"cannot be read"});
}

TEST_F(TrackCommand, SaysWhatItNeeds) {
  const QString file = write("circle.gpx", text_);
  expectRefusal({}, 2, {"a recording is needed", "usage: layshaft track FILE"});
  expectRefusal({file, "--smooth"}, 2, {"--smooth needs a value"});
  for (const char* value : {"wide", "-1", "201", "nan", ""})
    expectRefusal({file, "--smooth", value}, 2, {"--smooth needs 0 to 200 metres"});
  expectRefusal({file, "--format", "png"}, 2, {"unknown format png", "json, csv, gpx"});
  expectRefusal({file, "--track", "x"}, 2, {"unknown option --track"});
  expectRefusal({file, file}, 2, {"one file at a time"});
}

}  // namespace
}  // namespace layshaft::test
