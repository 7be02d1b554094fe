// SPDX-License-Identifier: GPL-3.0-or-later
#include <QApplication>
#include <QIcon>
#include <QTimer>
#include <cstdio>

#include "app/command.h"
#include "app/ladder_command.h"
#include "app/report_command.h"
#include "app/track_command.h"
#include "app/translations.h"
#include "ui/charts/appearance.h"
#include "ui/document/file_name.h"
#include "ui/document/samples.h"
#include "ui/window/main_window.h"

namespace {

using namespace layshaft;

constexpr const char* kUsage =
    "usage: layshaft [FILE...]              opens each bike profile in a window\n"
    "       layshaft report FILE [--format text|json|csv|png|pdf] [--units metric|imperial|mixed]\n"
    "                       [--paper a4|letter] [--track NAME] [--output FILE]\n"
    "           the plan without a window; text, CSV and pictures in the units named (metric if none are),\n"
    "           JSON always in SI and metric units\n"
    "       layshaft ladder FILE [--format text|json|csv] [--by lap|drive|ratio] [--fits] [--output FILE]\n"
    "           every pair of sprockets in reach, those that fit first (only those with --fits); by lap "
    "time\n"
    "           if the bike has a track, else by ratio\n"
    "       layshaft track FILE [--smooth METRES] [--format json|csv|gpx] [--output FILE]\n"
    "           a lap out of a recording (GPX, NMEA, or a table with latitude and longitude or x and y) as\n"
    "           stretches of curvature and slope; a circle of METRES radius would be smoothed to half its "
    "size\n"
    "           (chosen from the recording if not given)\n"
    "       layshaft --help | --version\n";

void nameProgram() {
  QCoreApplication::setOrganizationName(QStringLiteral("Layshaft"));
  QCoreApplication::setApplicationName(QStringLiteral("Layshaft"));
  QCoreApplication::setApplicationVersion(QStringLiteral(LAYSHAFT_VERSION));
}

bool hasDisplay(const QStringList& arguments) {
  return qEnvironmentVariableIsSet("DISPLAY") || qEnvironmentVariableIsSet("WAYLAND_DISPLAY") ||
         qEnvironmentVariableIsSet("QT_QPA_PLATFORM") || arguments.contains(QStringLiteral("-platform"));
}

/// Standard error is for the report's own one line; what Qt has to say about its surroundings is not for
/// scripts.
void keepQtQuiet(QtMsgType type, const QMessageLogContext&, const QString& text) {
  if (type == QtFatalMsg) std::fprintf(stderr, "%s\n", text.toLocal8Bit().constData());
}

int runCommand(int argc, char** argv, int (*command)(const QStringList&), const QStringList& arguments) {
  qInstallMessageHandler(keepQtQuiet);
  QCoreApplication application(argc, argv);
  nameProgram();
  app::installTranslations(application);
  return command(arguments);
}

int runReport(int argc, char** argv, const QStringList& arguments) {
  qInstallMessageHandler(keepQtQuiet);
  if (!app::reportNeedsPainter(arguments)) return runCommand(argc, argv, app::report, arguments);
  // A picture never needs the display, even where there is one.
  qputenv("QT_QPA_PLATFORM", "offscreen");
  QApplication application(argc, argv);
  nameProgram();
  app::installTranslations(application);
  return app::report(arguments);
}

int unknownOption(const QString& word) {
  std::fprintf(stderr, "layshaft: unknown option %s; try layshaft --help\n",
               ui::shownFile(word).toUtf8().constData());
  return app::kBadUsage;
}

int runWindows(int argc, char** argv, const QStringList& arguments) {
  if (!hasDisplay(arguments)) {
    std::fputs("layshaft: there is no display to open a window on; layshaft report FILE needs none\n",
               stderr);
    return app::kBadInput;
  }
  QApplication application(argc, argv);
  nameProgram();
  app::installTranslations(application);
  QStringList files;
  for (int i = 1; i < argc; ++i) files << ui::nameOf(argv[i]);  // without what was for the toolkit
  for (const QString& word : files)
    if (word.startsWith(QLatin1Char('-'))) return unknownOption(word);
  QGuiApplication::setDesktopFileName(QStringLiteral("org.layshaft.Layshaft"));
  const Profile first = ui::firstSample();  // also makes the resources known
  QApplication::setWindowIcon(QIcon(QStringLiteral(":/layshaft.svg")));
  ui::applyAppearance(ui::preferences::appearance());

  auto* window = ui::MainWindow::create(first);
  window->show();
  for (const QString& file : files) window->openFile(file);
  if (files.isEmpty()) window->openLastFile();
  QTimer::singleShot(0, window, &ui::MainWindow::offerRecovery);
  return QApplication::exec();
}

}  // namespace

int main(int argc, char** argv) {
  QStringList arguments;
  for (int i = 1; i < argc; ++i) arguments << ui::nameOf(argv[i]);
  if (arguments.contains(QStringLiteral("--help")) || arguments.contains(QStringLiteral("-h"))) {
    std::fputs(kUsage, stdout);
    return app::kSuccess;
  }
  if (arguments.contains(QStringLiteral("--version"))) {
    std::puts("layshaft " LAYSHAFT_VERSION);
    return app::kSuccess;
  }
  if (arguments.value(0) == QLatin1String("report")) return runReport(argc, argv, arguments.mid(1));
  if (arguments.value(0) == QLatin1String("track"))
    return runCommand(argc, argv, app::track, arguments.mid(1));
  if (arguments.value(0) == QLatin1String("ladder"))
    return runCommand(argc, argv, app::ladder, arguments.mid(1));
  // With two dashes it is ours or nobody's; the toolkit's own options are sorted out once there is a window
  // system.
  if (const QString first = arguments.value(0); first.startsWith(QLatin1String("--")))
    return unknownOption(first);
  return runWindows(argc, argv, arguments);
}
