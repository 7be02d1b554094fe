// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command.h"

#include <QBuffer>
#include <QCoreApplication>
#include <QFile>
#include <cstdio>
#include <filesystem>

#include "core/file.h"
#include "ui/document/file_name.h"
#include "ui/words/plain_text.h"
#include "ui/words/problem_words.h"

namespace layshaft::app {
namespace {

struct Say {
  Q_DECLARE_TR_FUNCTIONS(Command)
};

}  // namespace

void remark(const QString& message) {
  std::fprintf(stderr, "layshaft: %s\n", ui::onOneLine(message).toUtf8().constData());
}

int fail(int code, const QString& message) {
  remark(message);
  return code;
}

int failOf(const QString& file, const QString& why) {
  return fail(kBadInput, QStringLiteral("%1: %2").arg(ui::shownFile(file), why));
}

QString CommandLine::choice(const QString& option, const QString& usual, const QStringList& allowed) {
  const QString value = values.value(option, usual);
  if (!allowed.contains(value))
    complain(Say::tr("unknown %1 %2; allowed: %3", "%1 is an option such as \"format\"")
                 .arg(option.mid(2), value, allowed.join(Say::tr(", "))));
  return value;
}

CommandLine commandLine(const QStringList& words, const QStringList& options, const QStringList& marks,
                        const QString& needed) {
  CommandLine line;
  const QStringList all = options + QStringList{QStringLiteral("--output")};
  bool onlyFiles = false;
  for (qsizetype i = 0; i < words.size() && line.complaint.isEmpty(); ++i) {
    const QString& word = words[i];
    if (onlyFiles || !word.startsWith(QLatin1Char('-')) || word.size() == 1) {
      if (!line.file.isEmpty())
        line.complain(Say::tr("one file at a time; there is a second one, %1").arg(word));
      line.file = word;
      continue;
    }
    const auto sign = word.indexOf(QLatin1Char('='));
    const QString option = word.left(sign);
    if (word == QLatin1String("--"))
      onlyFiles = true;
    else if (marks.contains(word))
      line.values[word] = QString();
    else if (!all.contains(option))
      line.complain(Say::tr("unknown option %1").arg(word));
    else if (sign >= 0)
      line.values[option] = word.mid(sign + 1);
    else if (i + 1 < words.size())
      line.values[option] = words[++i];
    else
      line.complain(Say::tr("%1 needs a value").arg(option));
  }
  if (line.has(QStringLiteral("--output")) && line.output().isEmpty())
    line.complain(Say::tr("--output needs the name of a file"));
  if (line.file.isEmpty()) line.complain(needed);
  return line;
}

int writeOutput(const QString& output, const std::function<std::optional<QString>(QIODevice&)>& write) {
  if (output.isEmpty()) {
    QFile out;
    if (!out.open(stdout, QIODevice::WriteOnly))
      return fail(kBadInput, Say::tr("standard output: %1").arg(out.errorString()));
    const auto why = write(out);
    if (why || !out.flush())
      return fail(kBadInput, Say::tr("standard output: %1").arg(why.value_or(out.errorString())));
    return kSuccess;
  }
  const std::filesystem::path file = ui::pathOf(output);
  std::error_code error;
  if (std::filesystem::exists(file, error) && !std::filesystem::is_regular_file(file, error)) {
    // A pipe or a device is written to; replacing it by a file would take it away from whoever made it.
    QFile out(output);
    if (!out.open(QIODevice::WriteOnly | QIODevice::Unbuffered)) return failOf(output, out.errorString());
    const auto why = write(out);
    return why ? failOf(output, *why) : kSuccess;
  }
  QBuffer out;
  out.open(QIODevice::WriteOnly);
  if (const auto why = write(out)) return failOf(output, *why);
  const QByteArray& bytes = out.data();
  if (const auto problem = saveFile(file, {bytes.constData(), static_cast<std::size_t>(bytes.size())}))
    return failOf(output, ui::sentence(*problem));
  return kSuccess;
}

}  // namespace layshaft::app
