// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/report_command.h"

#include <QCoreApplication>
#include <QIODevice>
#include <QPageSize>
#include <filesystem>
#include <memory>
#include <optional>

#include "app/command.h"
#include "core/file.h"
#include "core/profile_file.h"
#include "core/report.h"
#include "ui/document/file_name.h"
#include "ui/sheet/sheets.h"
#include "ui/words/csv_units.h"
#include "ui/words/plain_text.h"
#include "ui/words/problem_words.h"
#include "ui/words/text_report.h"

namespace layshaft::app {
namespace {

struct Say {
  Q_DECLARE_TR_FUNCTIONS(Report)
};

struct Request {
  QString file, format, output, paper;
  ui::UnitsShown units;
  std::optional<QString> track;  ///< another than the ride's
  QString complaint;             ///< empty if the words make sense
};

const QStringList kPapers{QStringLiteral("a4"), QStringLiteral("letter")};
const QStringList kFormats{QStringLiteral("text"), QStringLiteral("json"), QStringLiteral("csv"),
                           QStringLiteral("png"), QStringLiteral("pdf")};

Request requestFrom(const QStringList& arguments) {
  const QString format = QStringLiteral("--format"), units = QStringLiteral("--units"),
                paper = QStringLiteral("--paper"), track = QStringLiteral("--track");
  CommandLine line =
      commandLine(arguments, {format, units, paper, track}, {}, Say::tr("a bike profile is needed"));
  Request request;
  request.file = line.file;
  request.output = line.output();
  request.format = line.choice(format, QStringLiteral("text"), kFormats);
  request.paper = line.choice(paper, QStringLiteral("a4"), kPapers);
  request.units = ui::UnitsShown::fromWord(line.choice(units, request.units.word(), ui::UnitsShown::words()))
                      .value_or(request.units);
  if (line.has(track)) request.track = line.values.value(track);
  request.complaint = line.complaint;
  return request;
}

/// The track asked for becomes the one that is ridden; says which there are if it is none of them.
std::optional<QString> rideTrack(Profile& profile, const QString& name) {
  QStringList names;
  for (const Track& track : profile.tracks) {
    if (QString::fromStdString(track.name) == name) {
      if (!profile.ride) profile.ride.emplace();
      profile.ride->track = track.name;
      return std::nullopt;
    }
    names << ui::shownName(track.name);
  }
  if (names.isEmpty()) return Say::tr("no track %1: the bike has none").arg(name);
  return Say::tr("no track %1; the bike has: %2").arg(name, names.join(Say::tr(", ")));
}

bool isPicture(const QString& format) {
  return format == QLatin1String("png") || format == QLatin1String("pdf");
}

QPageSize paperOf(const Request& request) {
  return QPageSize(request.paper == QLatin1String("letter") ? QPageSize::Letter : QPageSize::A4);
}

std::optional<QString> write(const Profile& profile, const Plan& plan, const Request& request,
                             QIODevice& out) {
  const QString& format = request.format;
  const ui::UnitsShown& units = request.units;
  if (isPicture(format))
    return ui::writeSheet(
        ui::makeSheet(ui::SheetKind::Bench,
                      {.profile = profile, .plan = std::make_shared<const Plan>(plan), .units = units}),
        format == QLatin1String("pdf") ? ui::PictureFormat::Pdf : ui::PictureFormat::Png, paperOf(request),
        out);
  QByteArray text;
  if (format == QLatin1String("json"))
    text = QByteArray::fromStdString(reportJson(plan));
  else if (format == QLatin1String("csv"))
    text = QByteArray::fromStdString(ui::csvInUnits(reportCsv(plan), units));
  else
    text = ui::textReport(plan, units, ui::partsOnHand(profile)).toUtf8();
  if (out.write(text) != text.size()) return out.errorString();
  return std::nullopt;
}

}  // namespace

bool reportNeedsPainter(const QStringList& arguments) {
  const Request request = requestFrom(arguments);
  return isPicture(request.format);
}

int report(const QStringList& arguments) {
  const Request request = requestFrom(arguments);
  if (!request.complaint.isEmpty())
    return fail(kBadUsage, request.complaint +
                               Say::tr("; usage: layshaft report FILE [--format text|json|csv|png|pdf] "
                                       "[--units metric|imperial|mixed] [--paper a4|letter] [--track NAME] "
                                       "[--output FILE]"));
  const std::filesystem::path file = ui::pathOf(request.file), output = ui::pathOf(request.output);
  if (!request.output.isEmpty() && sameFile(file, output))
    return fail(kBadUsage, Say::tr("%1 is the bike profile itself; give --output another file")
                               .arg(ui::shownFile(request.output)));
  const auto loaded = loadProfile(file);
  if (!loaded) return failOf(request.file, ui::sentence(loaded.problem()));
  Profile profile = *loaded;
  if (request.track)
    if (const auto why = rideTrack(profile, *request.track)) return failOf(request.file, *why);
  const Plan plan = layshaft::plan(profile);

  return writeOutput(request.output, [&](QIODevice& out) { return write(profile, plan, request, out); });
}

}  // namespace layshaft::app
