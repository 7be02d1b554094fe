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

int fail(int code, const QString& message) {
  std::fprintf(stderr, "layshaft: %s\n", ui::onOneLine(message).toUtf8().constData());
  return code;
}

int failOf(const QString& file, const QString& why) {
  return fail(kBadInput, QStringLiteral("%1: %2").arg(ui::shownFile(file), why));
}

bool takeValue(const QStringList& words, qsizetype& at, const QString& option, QString& value,
               QString& complaint) {
  const QString& word = words[at];
  if (word == option) {
    if (at + 1 >= words.size())
      complaint = Say::tr("%1 needs a value").arg(option);
    else
      value = words[++at];
    return true;
  }
  if (!word.startsWith(option + QLatin1Char('='))) return false;
  value = word.mid(option.size() + 1);
  return true;
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
