// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/ladder_command.h"

#include <QCoreApplication>
#include <QIODevice>
#include <algorithm>
#include <filesystem>
#include <optional>

#include "app/command.h"
#include "core/file.h"
#include "core/pairs_report.h"
#include "core/profile_file.h"
#include "core/units.h"
#include "ui/document/file_name.h"
#include "ui/words/aligned_table.h"
#include "ui/words/numbers.h"
#include "ui/words/problem_words.h"

namespace layshaft::app {
namespace {

struct Say {
  Q_DECLARE_TR_FUNCTIONS(LadderCommand)
};

const QString kFormat = QStringLiteral("--format"), kBy = QStringLiteral("--by"),
              kFits = QStringLiteral("--fits");

QStringList orders() {
  QStringList words;
  for (const auto& [order, word] : kPairOrderWords)
    words << QString::fromUtf8(word.data(), static_cast<qsizetype>(word.size()));
  return words;
}

QString text(const std::vector<ReachedPair>& pairs) {
  const auto figure = [](const std::optional<double>& value, int decimals) {
    return value ? ui::number(*value, decimals) : QStringLiteral("–");
  };
  const auto in = [](double (*unit)(double), const std::optional<double>& si) {
    return si ? std::optional(unit(*si)) : std::nullopt;
  };
  std::vector<QStringList> rows{{Say::tr("Pair"), Say::tr("Ratio"), Say::tr("Lap, s"), Say::tr("Straight, s"),
                                 Say::tr("Top speed, km/h"), Say::tr("Axle, mm"), Say::tr("Links"),
                                 Say::tr("Fits")}};
  for (const ReachedPair& pair : pairs)
    rows.push_back({QStringLiteral("%1/%2").arg(pair.frontTeeth).arg(pair.rearTeeth),
                    ui::number(pair.finalRatio, 3), figure(pair.lapS, 3), figure(pair.driveS, 3),
                    figure(in(units::kmhFromMps, pair.topSpeedMps), 1),
                    figure(in(units::millimetresFromMetres, pair.axleShiftM), 1),
                    pair.links ? QString::number(*pair.links) : QStringLiteral("–"),
                    pair.fits ? Say::tr("yes") : Say::tr("does not fit")});
  return ui::alignedTable(rows);
}

}  // namespace

int ladder(const QStringList& arguments) {
  CommandLine line = commandLine(arguments, {kFormat, kBy}, {kFits}, Say::tr("a bike profile is needed"));
  const QString format = line.choice(kFormat, QStringLiteral("text"),
                                     {QStringLiteral("text"), QStringLiteral("json"), QStringLiteral("csv")});
  const QString by = line.has(kBy) ? line.choice(kBy, QString(), orders()) : QString();
  if (!line.complaint.isEmpty())
    return fail(kBadUsage, line.complaint + Say::tr("; usage: layshaft ladder FILE [--format text|json|csv] "
                                                    "[--by lap|drive|ratio] [--fits] [--output FILE]"));
  const std::filesystem::path file = ui::pathOf(line.file);
  if (!line.output().isEmpty() && sameFile(file, ui::pathOf(line.output())))
    return fail(kBadUsage, Say::tr("%1 is the bike profile itself; give --output another file")
                               .arg(ui::shownFile(line.output())));
  const auto profile = loadProfile(file);
  if (!profile) return failOf(line.file, ui::sentence(profile.problem()));
  const PairOrder order =
      by.isEmpty() ? usualPairOrder(*profile) : *fromWord(by.toStdString(), kPairOrderWords);
  auto pairs = pairsInReach(*profile, order);
  const bool any = std::any_of(pairs.begin(), pairs.end(),
                               [&](const ReachedPair& pair) { return hasMeasure(pair, order); });
  if (!by.isEmpty() && !any)
    remark(Say::tr("%1: no pair has a %2 to stand by, so those that fit come first, then by ratio",
                   "%2 is the word of the option: lap or drive")
               .arg(ui::shownFile(line.file), by));
  if (line.has(kFits)) std::erase_if(pairs, [](const ReachedPair& pair) { return !pair.fits; });
  const QByteArray out = format == QLatin1String("json")
                             ? QByteArray::fromStdString(pairsJson(*profile, pairs))
                         : format == QLatin1String("csv") ? QByteArray::fromStdString(pairsCsv(pairs))
                                                          : text(pairs).toUtf8();
  return writeOutput(line.output(), [&](QIODevice& device) -> std::optional<QString> {
    if (device.write(out) != out.size()) return device.errorString();
    return std::nullopt;
  });
}

}  // namespace layshaft::app
