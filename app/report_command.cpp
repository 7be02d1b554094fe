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
#include "ui/words/problem_words.h"
#include "ui/words/text_report.h"

namespace layshaft::app {
namespace {

struct Say {
  Q_DECLARE_TR_FUNCTIONS(Report)
};

struct Request {
  QString file;
  QString format = QStringLiteral("text");
  QString output;
  ui::UnitsShown units;
  QString paper = QStringLiteral("a4");
  QString complaint;  ///< empty if the words make sense
};

const QStringList kPapers{QStringLiteral("a4"), QStringLiteral("letter")};
const QStringList kFormats{QStringLiteral("text"), QStringLiteral("json"), QStringLiteral("csv"),
                           QStringLiteral("png"), QStringLiteral("pdf")};

Request requestFrom(const QStringList& arguments) {
  Request request;
  bool onlyFiles = false;
  for (qsizetype i = 0; i < arguments.size() && request.complaint.isEmpty(); ++i) {
    const QString word = arguments[i];
    QString value;
    const auto takeThe = [&](const QString& option) {
      return takeValue(arguments, i, option, value, request.complaint);
    };
    if (!onlyFiles && word == QLatin1String("--"))
      onlyFiles = true;
    else if (!onlyFiles && takeThe(QStringLiteral("--format")))
      request.format = value;
    else if (!onlyFiles && takeThe(QStringLiteral("--units"))) {
      const auto units = ui::UnitsShown::fromWord(value);
      if (units)
        request.units = *units;
      else if (request.complaint.isEmpty())
        request.complaint =
            Say::tr("unknown units %1; allowed: %2").arg(value, ui::UnitsShown::words().join(Say::tr(", ")));
    } else if (!onlyFiles && takeThe(QStringLiteral("--paper"))) {
      request.paper = value;
      if (!kPapers.contains(value) && request.complaint.isEmpty())
        request.complaint = Say::tr("unknown paper %1; allowed: %2").arg(value, kPapers.join(Say::tr(", ")));
    } else if (!onlyFiles && takeThe(QStringLiteral("--output"))) {
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
    request.complaint = Say::tr("a bike profile is needed");
  if (request.complaint.isEmpty() && !kFormats.contains(request.format))
    request.complaint =
        Say::tr("unknown format %1; allowed: %2").arg(request.format, kFormats.join(Say::tr(", ")));
  return request;
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
    text = ui::textReport(plan, units).toUtf8();
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
    return fail(
        kBadUsage,
        request.complaint + Say::tr("; usage: layshaft report FILE [--format text|json|csv|png|pdf] "
                                    "[--units metric|imperial|mixed] [--paper a4|letter] [--output FILE]"));
  const std::filesystem::path file = ui::pathOf(request.file), output = ui::pathOf(request.output);
  if (!request.output.isEmpty() && sameFile(file, output))
    return fail(kBadUsage, Say::tr("%1 is the bike profile itself; give --output another file")
                               .arg(ui::shownFile(request.output)));
  const auto profile = loadProfile(file);
  if (!profile) return failOf(request.file, ui::sentence(profile.problem()));
  const Plan plan = layshaft::plan(*profile);

  return writeOutput(request.output, [&](QIODevice& out) { return write(*profile, plan, request, out); });
}

}  // namespace layshaft::app
