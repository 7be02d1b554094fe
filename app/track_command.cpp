// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/track_command.h"

#include <QCoreApplication>
#include <QIODevice>
#include <optional>
#include <string>

#include "app/command.h"
#include "core/file.h"
#include "core/limits.h"
#include "core/number_text.h"
#include "core/track/recorded_track.h"
#include "core/track/track_csv.h"
#include "core/track_report.h"
#include "ui/document/file_name.h"
#include "ui/words/problem_words.h"

namespace layshaft::app {
namespace {

struct Say {
  Q_DECLARE_TR_FUNCTIONS(TrackCommand)
};

const QStringList kTrackFormats{QStringLiteral("json"), QStringLiteral("csv"), QStringLiteral("gpx")};

struct TrackRequest {
  QString file, output;
  QString format = QStringLiteral("json");
  std::optional<double> smoothingM;
  QString complaint;  ///< empty if the words make sense
};

void takeSmoothing(TrackRequest& request, const QString& value) {
  request.smoothingM = numberFromText(value.toStdString());
  if (request.complaint.isEmpty() &&
      !(request.smoothingM && limits::kSmoothingM.contains(*request.smoothingM)))
    request.complaint = Say::tr("--smooth needs %1 to %2 metres, not %3")
                            .arg(limits::kSmoothingM.low)
                            .arg(limits::kSmoothingM.high)
                            .arg(ui::shownFile(value));
}

TrackRequest requestOf(const QStringList& words) {
  TrackRequest request;
  bool onlyFiles = false;
  for (qsizetype i = 0; i < words.size() && request.complaint.isEmpty(); ++i) {
    const QString word = words[i];
    QString value;
    const auto takes = [&](const char* option) {
      return !onlyFiles && takeValue(words, i, QString::fromLatin1(option), value, request.complaint);
    };
    if (!onlyFiles && word == QLatin1String("--"))
      onlyFiles = true;
    else if (takes("--format"))
      request.format = value;
    else if (takes("--smooth"))
      takeSmoothing(request, value);
    else if (takes("--output")) {
      request.output = value;
      if (value.isEmpty() && request.complaint.isEmpty())
        request.complaint = Say::tr("--output needs the name of a file");
    } else if (!onlyFiles && word.startsWith(QLatin1Char('-')) && word.size() > 1)
      request.complaint = Say::tr("unknown option %1").arg(word);
    else if (!request.file.isEmpty())
      request.complaint = Say::tr("one file at a time; there is a second one, %1").arg(word);
    else
      request.file = word;
  }
  if (request.complaint.isEmpty() && request.file.isEmpty())
    request.complaint = Say::tr("a recording is needed: GPX, NMEA or a table of positions");
  if (request.complaint.isEmpty() && !kTrackFormats.contains(request.format))
    request.complaint =
        Say::tr("unknown format %1; allowed: %2").arg(request.format, kTrackFormats.join(Say::tr(", ")));
  return request;
}

}  // namespace

int track(const QStringList& arguments) {
  const TrackRequest request = requestOf(arguments);
  if (!request.complaint.isEmpty())
    return fail(
        kBadUsage,
        request.complaint + Say::tr("; usage: layshaft track FILE [--smooth METRES] [--format json|csv|gpx] "
                                    "[--output FILE]"));
  const std::filesystem::path file = ui::pathOf(request.file);
  if (!request.output.isEmpty() && sameFile(file, ui::pathOf(request.output)))
    return fail(
        kBadUsage,
        Say::tr("%1 is the recording itself; give --output another file").arg(ui::shownFile(request.output)));
  const auto recording = loadRecording(file);
  if (!recording) return failOf(request.file, ui::sentence(recording.problem()));
  const auto read = recordedTrack(*recording, {.smoothingM = request.smoothingM});
  if (!read) return failOf(request.file, ui::sentence(read.problem()));
  const std::string text = request.format == QLatin1String("csv")   ? pathCsv(read->path)
                           : request.format == QLatin1String("gpx") ? recordedTrackGpx(*read)
                                                                    : trackJson(*read);
  return writeOutput(request.output, [&](QIODevice& out) -> std::optional<QString> {
    const auto size = static_cast<qint64>(text.size());
    if (out.write(text.data(), size) != size) return out.errorString();
    return std::nullopt;
  });
}

}  // namespace layshaft::app
