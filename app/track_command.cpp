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

/// The smoothing length asked for, in metres; none where none is.
std::optional<double> smoothingIn(CommandLine& line) {
  const QString option = QStringLiteral("--smooth");
  if (!line.has(option)) return std::nullopt;
  const QString value = line.values.value(option);
  const auto metres = numberFromText(value.toStdString());
  if (!(metres && limits::kSmoothingM.contains(*metres)))
    line.complain(Say::tr("--smooth needs %1 to %2 metres, not %3")
                      .arg(limits::kSmoothingM.low)
                      .arg(limits::kSmoothingM.high)
                      .arg(ui::shownFile(value)));
  return metres;
}

}  // namespace

int track(const QStringList& arguments) {
  CommandLine line = commandLine(arguments, {QStringLiteral("--format"), QStringLiteral("--smooth")}, {},
                                 Say::tr("a recording is needed: GPX, NMEA or a table of positions"));
  const auto smoothingM = smoothingIn(line);
  const QString format = line.choice(QStringLiteral("--format"), QStringLiteral("json"), kTrackFormats);
  if (!line.complaint.isEmpty())
    return fail(
        kBadUsage,
        line.complaint + Say::tr("; usage: layshaft track FILE [--smooth METRES] [--format json|csv|gpx] "
                                 "[--output FILE]"));
  const std::filesystem::path file = ui::pathOf(line.file);
  if (!line.output().isEmpty() && sameFile(file, ui::pathOf(line.output())))
    return fail(
        kBadUsage,
        Say::tr("%1 is the recording itself; give --output another file").arg(ui::shownFile(line.output())));
  const auto recording = loadRecording(file);
  if (!recording) return failOf(line.file, ui::sentence(recording.problem()));
  const auto read = recordedTrack(*recording, {.smoothingM = smoothingM});
  if (!read) return failOf(line.file, ui::sentence(read.problem()));
  const std::string text = format == QLatin1String("csv")   ? pathCsv(read->path)
                           : format == QLatin1String("gpx") ? recordedTrackGpx(*read)
                                                            : trackJson(*read);
  return writeOutput(line.output(), [&](QIODevice& out) -> std::optional<QString> {
    const auto size = static_cast<qint64>(text.size());
    if (out.write(text.data(), size) != size) return out.errorString();
    return std::nullopt;
  });
}

}  // namespace layshaft::app
