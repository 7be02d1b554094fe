// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QCoreApplication>
#include <QFile>
#include <QProcess>
#include <QRegularExpression>
#include <QTemporaryDir>
#include <QTranslator>
#include <stdexcept>

namespace layshaft::test {

/// A language that nobody speaks: every text of the program between brackets and longer by 40 %. Made as any
/// translation is: the texts are collected from the sources, translated, compiled and loaded.
class PseudoLanguage {
 public:
  PseudoLanguage() {
    const QString texts = folder_.filePath("pseudo.ts"), compiled = folder_.filePath("pseudo.qm");
    const QString source = QStringLiteral(LAYSHAFT_SOURCE_DIR);
    said_ = run(LAYSHAFT_LUPDATE,
                {"-I", source, source + "/ui", source + "/app", "-target-language", "en_US", "-ts", texts});
    translate(texts);
    run(LAYSHAFT_LRELEASE, {texts, "-qm", compiled});
    if (!ours_.load(compiled)) throw std::runtime_error("the catalogue cannot be loaded");
  }

  /// What the collecting of texts printed.
  const QString& said() const { return said_; }
  void install() {
    QCoreApplication::installTranslator(&ours_);
    QCoreApplication::installTranslator(&toolkits_);
  }
  void remove() {
    QCoreApplication::removeTranslator(&ours_);
    QCoreApplication::removeTranslator(&toolkits_);
  }

  /// The text as the pseudo language has it; placeholders and mnemonics stay.
  static QString marked(const QString& text) {
    // Words of the text once more, without what means something: about 40 % longer.
    QString more = text;
    more.remove(QRegularExpression(QStringLiteral("%L?\\d+|%n|&|<[^>]*>|[^\\p{L}]")));
    return QChar(0x27E6) + text + more.left((text.size() * 2 + 4) / 5) + QChar(0x27E7);
  }

  /// The first letters outside all brackets, with what is around them; empty where every word is marked.
  static QString unmarked(const QString& text) {
    int depth = 0;
    for (qsizetype i = 0; i < text.size(); ++i) {
      if (text[i] == QChar(0x27E6)) ++depth;
      if (text[i] == QChar(0x27E7)) --depth;
      if (depth <= 0 && text[i].isLetter()) return text.mid(std::max<qsizetype>(0, i - 10), 60);
    }
    return {};
  }

 private:
  /// The toolkit's own words come from its own catalogue; here they only count as marked.
  class Toolkits : public QTranslator {
   public:
    QString translate(const char* context, const char* text, const char*, int) const override {
      const QByteArray owner(context);
      const bool its = owner.startsWith("Q") && !owner.contains("layshaft");
      return its && text && *text ? QChar(0x27E6) + QString::fromUtf8(text) + QChar(0x27E7) : QString();
    }
    bool isEmpty() const override { return false; }
  };

  static QString run(const char* program, const QStringList& arguments) {
    QProcess process;
    process.setProcessChannelMode(QProcess::MergedChannels);
    process.start(QString::fromUtf8(program), arguments);
    if (!process.waitForFinished(120000) || process.exitCode() != 0)
      throw std::runtime_error(std::string(program) + " failed");
    return QString::fromUtf8(process.readAll());
  }

  static QString escaped(const QString& text) { return text.toHtmlEscaped(); }

  static void translate(const QString& texts) {
    QFile file(texts);
    if (!file.open(QIODevice::ReadOnly)) throw std::runtime_error("no texts were collected");
    const QStringList lines = QString::fromUtf8(file.readAll()).split('\n');
    file.close();
    QString out, source;
    bool inSource = false;
    for (QString line : lines) {
      if (line.startsWith("<TS ")) line = "<TS version=\"2.1\" language=\"en_US\">";
      if (line.contains("<source>")) {
        source = line.section("<source>", 1);
        inSource = true;
      } else if (inSource) {
        source += '\n' + line;
      }
      if (inSource && line.contains("</source>")) {
        source = source.section("</source>", 0, 0);
        inSource = false;
      }
      QString plain = source;
      plain.replace("&lt;", "<").replace("&gt;", ">").replace("&quot;", "\"").replace("&apos;", "'");
      plain.replace("&amp;", "&");
      const QString translated = escaped(marked(plain));
      line.replace("<translation type=\"unfinished\"></translation>",
                   "<translation>" + translated + "</translation>");
      line.replace("<translation type=\"unfinished\">", "<translation>");
      line.replace("<numerusform></numerusform>", "<numerusform>" + translated + "</numerusform>");
      out += line + '\n';
    }
    if (!file.open(QIODevice::WriteOnly)) throw std::runtime_error("cannot write texts");
    file.write(out.toUtf8());
  }

  QTemporaryDir folder_;
  QString said_;
  QTranslator ours_;
  Toolkits toolkits_;
};

}  // namespace layshaft::test
