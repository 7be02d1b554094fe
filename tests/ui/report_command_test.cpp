// SPDX-License-Identifier: GPL-3.0-or-later
#include <sys/stat.h>

#include <QTemporaryDir>
#include <fstream>

#include "core/report.h"
#include "tests/small_disk.h"
#include "tests/ui/on_paper.h"
#include "tests/ui/program.h"
#include "tests/ui/support.h"
#include "ui/words/csv_units.h"
#include "ui/words/text_report.h"

namespace layshaft::test {
namespace {

const char* const kSamples[] = {"club-600",         "adventure-twin", "enduro-250",     "motocross-450",
                                "roadster-classic", "tourer-belt",    "two-stroke-125", "youth-85"};

class ReportOfSample : public testing::TestWithParam<const char*> {
 protected:
  QByteArray report(const char* format) {
    const Outcome outcome = run({"report", samplePath(GetParam()), "--format", format});
    EXPECT_EQ(outcome.code, 0);
    EXPECT_EQ(outcome.err, "") << "a script's log stays clean";
    return outcome.out;
  }
  const Profile profile_ = sampleBike(GetParam());
};

TEST_P(ReportOfSample, Text) {
  const QString text = QString::fromUtf8(report("text"));
  EXPECT_TRUE(text.startsWith(QString::fromStdString(profile_.name) + '\n'));
  EXPECT_TRUE(text.contains("Final ratio"));
  EXPECT_TRUE(text.contains("closed course"));
  EXPECT_FALSE(text.contains("%1"));
}

TEST_P(ReportOfSample, Json) {
  EXPECT_EQ(report("json").toStdString(), reportJson(plan(profile_)));
}

TEST_P(ReportOfSample, Csv) {
  EXPECT_EQ(report("csv").toStdString(), ui::csvInUnits(reportCsv(plan(profile_)), ui::UnitsShown()));
}

TEST_P(ReportOfSample, Png) {
  const QImage page = QImage::fromData(report("png"), "PNG");
  ASSERT_FALSE(page.isNull());
  EXPECT_GT(page.height(), page.width()) << "the bench sheet stands upright";
  QSet<QRgb> colours;
  for (int y = 0; y < page.height(); y += 3)
    for (int x = 0; x < page.width(); x += 3) colours.insert(page.pixel(x, y));
  EXPECT_TRUE(colours.contains(qRgb(0x00, 0x72, 0xb2)))
      << "the proposal's blue, in print as in a light theme";
}

TEST_P(ReportOfSample, Pdf) {
  const QByteArray pdf = report("pdf");
  EXPECT_TRUE(pdf.startsWith("%PDF-"));
  EXPECT_TRUE(pdf.trimmed().endsWith("%%EOF"));
  EXPECT_TRUE(pdf.contains("/Count 1")) << "one page";
}

INSTANTIATE_TEST_SUITE_P(Samples, ReportOfSample, testing::ValuesIn(kSamples), [](const auto& name) {
  return QString(name.param).replace('-', '_').toStdString();
});

class ReportCommand : public testing::Test {
 protected:
  QString write(const QString& name, const std::string& text) const {
    const QString path = folder_.filePath(name);
    QFile file(path);
    if (!file.open(QIODevice::WriteOnly)) throw std::runtime_error("cannot write");
    file.write(text.data(), static_cast<qint64>(text.size()));
    return path;
  }
  const QString good_ = samplePath("club-600");
  QTemporaryDir folder_;
};

TEST_F(ReportCommand, IsTextUnlessToldOtherwise) {
  EXPECT_EQ(run({"report", good_}).out, run({"report", good_, "--format", "text"}).out);
  EXPECT_EQ(run({"report", "--format=csv", good_}).out, run({"report", good_, "--format", "csv"}).out);
}

TEST_F(ReportCommand, IsInTheUnitsNamed) {
  const Plan planned = plan(sampleBike("club-600"));
  const QByteArray json = run({"report", good_, "--format", "json"}).out,
                   metricPage = run({"report", good_, "--format", "png"}).out;
  for (const QString& word : ui::UnitsShown::words()) {
    const ui::UnitsShown units = *ui::UnitsShown::fromWord(word);
    EXPECT_EQ(run({"report", good_, "--units", word}).out,
              ui::textReport(planned, units, ui::partsOnHand(sampleBike("club-600"))).toUtf8());
    EXPECT_EQ(run({"report", "--units=" + word, "--format=csv", good_}).out.toStdString(),
              ui::csvInUnits(reportCsv(planned), units));
    EXPECT_EQ(run({"report", good_, "--units", word, "--format", "json"}).out, json)
        << "always SI and metric";
    EXPECT_EQ(run({"report", good_, "--units", word, "--format", "png"}).out == metricPage, word == "metric");
  }
}

TEST_F(ReportCommand, IsOnThePaperNamed) {
  const auto pageSize = [&](const QStringList& more) {
    const QString file = folder_.filePath("page.pdf");
    EXPECT_EQ(run(QStringList{"report", good_, "--format", "pdf", "--output", file} + more).code, 0);
    return wordBoxes(file).page.size().toSize();
  };
  EXPECT_EQ(pageSize({}), QSize(595, 842));  // ISO 216, in points
  EXPECT_EQ(pageSize({"--paper", "a4"}), QSize(595, 842));
  EXPECT_EQ(pageSize({"--paper=letter"}), QSize(612, 792));  // 8.5 by 11 inches
  expectOneLineError(run({"report", good_, "--paper", "a0"}), 2, {"a0", "a4, letter", "--paper"});
}

TEST_F(ReportCommand, UnitsNotKnownAreRefusedWithThoseThatAre) {
  expectOneLineError(run({"report", good_, "--units", "furlongs"}), 2,
                     {"furlongs", "metric, imperial, mixed", "--units"});
}

TEST_F(ReportCommand, OneToothIsOneWhateverTheDesktopsLanguage) {
  const QString file =
      write("one.json",
            with("/proposed", {{"rear_teeth", minimalProfile()["stock"]["rear_teeth"].get<int>() + 1}}));
  for (const char* language : {"C.UTF-8", "en_GB.UTF-8", "de_DE.UTF-8"}) {
    qputenv("LC_ALL", language);
    const Outcome outcome = run({"report", file});
    qunsetenv("LC_ALL");
    EXPECT_TRUE(QString::fromUtf8(outcome.out).contains("as one more tooth at the rear."))
        << language << ": " << outcome.out.left(300).toStdString();
  }
}

TEST_F(ReportCommand, WritesToAFile) {
  for (const char* format : {"text", "json", "csv"}) {
    const QString file = folder_.filePath(format);
    const Outcome outcome = run({"report", good_, "--format", format, "--output", file});
    EXPECT_EQ(outcome.code, 0);
    EXPECT_EQ(outcome.out, "");
    EXPECT_EQ(contentsOf(file.toStdString()), run({"report", good_, "--format", format}).out.toStdString());
  }
  const QString png = folder_.filePath("page.png"), pdf = folder_.filePath("page.pdf");
  EXPECT_EQ(run({"report", good_, "--format", "png", "--output", png}).code, 0);
  EXPECT_EQ(contentsOf(png.toStdString()).substr(1, 3), "PNG");
  EXPECT_EQ(run({"report", good_, "--format=pdf", "--output=" + pdf}).code, 0);
  EXPECT_EQ(contentsOf(pdf.toStdString()).substr(0, 5), "%PDF-");
}

TEST_F(ReportCommand, AnOutputThatCannotBeWrittenIsBadInput) {
  for (const char* format : {"text", "png", "pdf"}) {
    const QString file = folder_.filePath("no such folder/out");
    expectOneLineError(run({"report", good_, "--format", format, "--output", file}), 1, {file});
    expectOneLineError(run({"report", good_, "--format", format, "--output", folder_.path()}), 1,
                       {folder_.path()});
  }
}

TEST_F(ReportCommand, APipeIsWrittenToAndStaysAPipe) {
  const QString pipe = folder_.filePath("pipe");
  ASSERT_EQ(mkfifo(pipe.toLocal8Bit().constData(), 0600), 0);
  QProcess reader;
  reader.start("cat", {pipe});
  EXPECT_EQ(run({"report", good_, "--format", "csv", "--output", pipe}).code, 0);
  ASSERT_TRUE(reader.waitForFinished(10000));
  EXPECT_EQ(reader.readAllStandardOutput().toStdString(),
            ui::csvInUnits(reportCsv(plan(sampleBike("club-600"))), ui::UnitsShown()));
}

TEST_F(ReportCommand, AFullDiskIsReported) {
  for (const char* format : {"text", "json", "png", "pdf"}) {
    const Outcome outcome = run({"report", good_, "--format", format}, "/dev/full");
    EXPECT_EQ(outcome.code, 1) << format;
    EXPECT_EQ(outcome.err.count('\n'), 1) << outcome.err.toStdString();
    EXPECT_TRUE(outcome.err.contains("standard output")) << outcome.err.toStdString();
  }
}

TEST_F(ReportCommand, AFullDiskKeepsTheOldFile) {
  const SmallDisk disk;
  LAYSHAFT_NEEDS(disk);
  const QString file = QString::fromStdString(disk.file("out").string());
  std::ofstream(file.toStdString()) << "old";
  disk.fillUpTo(4096);
  for (const char* format : {"text", "json", "csv", "png", "pdf"}) {
    if (QString(format) == "text" || QString(format) == "csv") disk.fillUpTo(0);
    expectOneLineError(run({"report", good_, "--format", format, "--output", file}), 1, {file, "space"});
    EXPECT_EQ(contentsOf(file.toStdString()), "old") << format;
  }
}

TEST_F(ReportCommand, NeverWritesOverTheProfileItReads) {
  const std::string text = minimalProfile().dump();
  const QString file = write("bike.bike.json", text);
  ASSERT_TRUE(QFile::link(file, folder_.filePath("link.json")));
  for (const QString& output : {file, folder_.filePath("link.json"), folder_.filePath("./bike.bike.json")}) {
    expectOneLineError(run({"report", file, "--output", output}), 2, {"bike profile itself"});
    expectOneLineError(run({"report", output, "--format", "csv", "--output", file}), 2, {"itself"});
    EXPECT_EQ(contentsOf(file.toStdString()), text);
  }
}

TEST_F(ReportCommand, ReadsFromNoPipeAndNoDevice) {
  const QString pipe = folder_.filePath("pipe");
  ASSERT_EQ(mkfifo(pipe.toLocal8Bit().constData(), 0600), 0);
  for (const QString& odd : {pipe, QStringLiteral("/dev/zero"), QStringLiteral("/dev/null")})
    expectOneLineError(run({"report", odd}), 1, {odd, "pipe or a device"});
}

TEST_F(ReportCommand, AFileWhoseNameIsNoTextIsRead) {
  const OddFile file(folder_.path());
  const std::filesystem::path& odd = file.path;
  std::ofstream(odd) << minimalProfile().dump();
  QProcess shell;
  shell.start("/bin/sh", {"-c", "exec \"$0\" report \"$1/$(printf 'odd\\377\\376').bike.json\" --format csv",
                          QStringLiteral(LAYSHAFT_PROGRAM), folder_.path()});
  ASSERT_TRUE(shell.waitForFinished(60000));
  EXPECT_EQ(shell.exitCode(), 0) << shell.readAllStandardError().toStdString();
  EXPECT_FALSE(shell.readAllStandardOutput().isEmpty());
}

TEST_F(ReportCommand, NoControlCharacterOfANameReachesTheTerminal) {
  const std::string nasty =
      "Evil\x1b]0;title\x07\x1b[31m\xc2\x9b"
      "2J\xe2\x80\xae"
      "end";
  Json json = minimalProfile();
  json["name"] = nasty;
  json["pins"] = {{{"name", nasty}, {"rear_teeth", 45}}};
  const QString file = write("nasty\x1b[31m.bike.json", json.dump());
  for (const char* format : {"text", "csv"}) {
    const QString out = QString::fromUtf8(run({"report", file, "--format", format}).out);
    EXPECT_TRUE(out.contains("Evil")) << format;
    for (const QChar c : out) EXPECT_TRUE(c == '\n' || c.category() != QChar::Other_Control) << format;
    EXPECT_FALSE(out.contains(QChar(0x202e))) << format;
  }
  const Outcome wrong = run({"report", write("b\x1b[31m.bike.json", "{")});
  EXPECT_FALSE(wrong.err.contains('\x1b'));
}

TEST_F(ReportCommand, AFailedReportKeepsTheOldFile) {
  const QString file = write("out.json", "old");
  const QString bad = write("bad.bike.json", with("/stock/front_teeth", 5));
  EXPECT_EQ(run({"report", bad, "--format", "json", "--output", file}).code, 1);
  EXPECT_EQ(contentsOf(file.toStdString()), "old");
}

TEST_F(ReportCommand, WrongFilesAreOneLineNamingFileKeyAndReason) {
  const struct {
    std::string text;
    QStringList named;
  } wrongs[] = {
      {with("/stock/front_teeth", 5), {"stock.front_teeth", "5", "6 to 48"}},
      {with("/stock/gear_ratios", {2.0, 2.5}), {"stock.gear_ratios[1]", "2.5"}},
      {without("/stock/primary_ratio"), {"stock.primary_ratio", "missing"}},
      {with("/version", 99), {"version", "99", "newer"}},
      {with("/stock/rear_tyre", "bald\ntyre"), {"stock.rear_tyre", "bald"}},
      {with("/bike/engine/shift_rpm", 12000), {"bike.engine.shift_rpm", "12000"}},
      {"{", {"JSON", "line 1"}},
      {"", {"JSON"}},
      {"\xff\xfe", {"UTF-8"}},
  };
  int number = 0;
  for (const auto& wrong : wrongs) {
    const QString file = write(QStringLiteral("wrong-%1.bike.json").arg(++number), wrong.text);
    expectOneLineError(run({"report", file}), 1, QStringList(wrong.named) << file);
  }
}

TEST_F(ReportCommand, AMissingFileAndAFolderAreBadInput) {
  expectOneLineError(run({"report", folder_.filePath("missing.bike.json")}), 1, {"missing.bike.json"});
  expectOneLineError(run({"report", folder_.path()}), 1, {folder_.path(), "directory"});
}

TEST_F(ReportCommand, AFileNameWithALineFeedStaysOneLine) {
  expectOneLineError(run({"report", folder_.filePath("two\nlines.bike.json")}), 1, {"two", "lines"});
  const QString odd = write("odd\nname %1 “ü”.bike.json", minimalProfile().dump());
  EXPECT_EQ(run({"report", odd}).code, 0);
}

TEST_F(ReportCommand, WrongWordsAreBadUsage) {
  const QStringList wrongs[] = {{"report"},
                                {"report", good_, good_},
                                {"report", good_, "--format"},
                                {"report", good_, "--format", "jpeg"},
                                {"report", good_, "--format", "PNG"},
                                {"report", good_, "--format", ""},
                                {"report", good_, "--format", "png\npdf"},
                                {"report", good_, "--units"},
                                {"report", good_, "--units", "Imperial"},
                                {"report", good_, "--units=", "--format", "json"},
                                {"report", good_, "--output"},
                                {"report", good_, "--output", ""},
                                {"report", good_, "--verbose"},
                                {"report", "-x"}};
  for (const QStringList& words : wrongs) {
    const Outcome outcome = run(words);
    expectOneLineError(outcome, 2, {"usage: layshaft report FILE"});
  }
}

TEST_F(ReportCommand, WordsAfterTwoDashesAreFiles) {
  write("--format", minimalProfile().dump());
  QProcess program;
  program.setWorkingDirectory(folder_.path());
  program.start(QStringLiteral(LAYSHAFT_PROGRAM), {"report", "--", "--format"});
  ASSERT_TRUE(program.waitForFinished(60000));
  EXPECT_EQ(program.exitCode(), 0) << program.readAllStandardError().toStdString();
}

TEST_F(ReportCommand, HelpAndVersionNeedNoDisplay) {
  for (const char* word : {"--help", "--version"}) {
    const Outcome outcome = run({word});
    EXPECT_EQ(outcome.code, 0);
    EXPECT_FALSE(outcome.out.isEmpty());
    EXPECT_EQ(outcome.err, "");
  }
}

TEST_F(ReportCommand, AWindowWithoutADisplayIsExplainedInOneLine) {
  expectOneLineError(run({good_}), 1, {"display", "layshaft report"});
  EXPECT_EQ(run({"--nonsense"}).code, 2);
}

/// The window, started as from a desktop; which files it opened is seen by its list of recent ones.
class WindowCommand : public ReportCommand {
 protected:
  bool opens(const QStringList& arguments, const QString& file, bool platformInEnvironment) {
    QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
    environment.insert("HOME", folder_.path());
    environment.remove("XDG_CONFIG_HOME");
    environment.remove("QT_QPA_PLATFORM");
    if (platformInEnvironment) environment.insert("QT_QPA_PLATFORM", "offscreen");
    QProcess program;
    program.setProcessEnvironment(environment);
    program.start(QStringLiteral(LAYSHAFT_PROGRAM), arguments);
    const QString settings = folder_.filePath(".config/Layshaft/Layshaft.conf");
    const bool opened = soon([&] {
      return QFile::exists(settings) &&
             QString::fromStdString(contentsOf(settings.toStdString())).contains(file);
    });
    program.terminate();
    program.waitForFinished(20000);
    return opened;
  }
};

TEST_F(WindowCommand, OpensTheFilesItIsGiven) {
  const QString second = write("second.bike.json", minimalProfile().dump());
  EXPECT_TRUE(opens({good_, second}, "second.bike.json", true));
}

TEST_F(WindowCommand, TheToolkitsOwnOptionsAreNoFiles) {
  EXPECT_TRUE(opens({"-platform", "offscreen", good_}, "club-600.bike.json", false));
}

TEST_F(ReportCommand, ACommaDecimalDesktopGivesTheSameNumbers) {
  // Only the sentences follow the desktop; JSON and CSV are for programs.
  qputenv("LC_ALL", "de_DE.UTF-8");
  const QByteArray json = run({"report", good_, "--format", "json"}).out;
  const QByteArray csv = run({"report", good_, "--format", "csv"}).out;
  qunsetenv("LC_ALL");
  EXPECT_EQ(json.toStdString(), reportJson(plan(sampleBike("club-600"))));
  EXPECT_EQ(csv.toStdString(), ui::csvInUnits(reportCsv(plan(sampleBike("club-600"))), ui::UnitsShown()));
}

}  // namespace
}  // namespace layshaft::test
