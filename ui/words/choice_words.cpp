// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/choice_words.h"

#include <QCoreApplication>
#include <QStringList>
#include <algorithm>
#include <iterator>
#include <utility>

#include "ui/words/plain_text.h"

namespace layshaft::ui {
namespace {

struct ChoiceWords {
  Q_DECLARE_TR_FUNCTIONS(ChoiceWords)
 public:
  static constexpr std::pair<std::string_view, const char*> kWords[] = {
      {"sport", QT_TR_NOOP("sport bike")},
      {"naked", QT_TR_NOOP("naked bike")},
      {"tourer", QT_TR_NOOP("tourer")},
      {"lightweight", QT_TR_NOOP("lightweight, 125 class")},
      {"motocross", QT_TR_NOOP("motocross bike")},
      {"crankshaft", QT_TR_NOOP("crankshaft")},
      {"rear_wheel", QT_TR_NOOP("rear wheel")},
      {"constant", QT_TR_NOOP("constant")},
      {"speed_dependent", QT_TR_NOOP("rising with speed")},
      {"gearbox_output", QT_TR_NOOP("gearbox output")},
      {"front_wheel", QT_TR_NOOP("front wheel")},
      {"chain", QT_TR_NOOP("chain")},
      {"belt", QT_TR_NOOP("belt")},
      {"plain", QT_TR_NOOP("plain")},
      {"sealed", QT_TR_NOOP("sealed")},
      {"hours", QT_TR_NOOP("hours")},
      {"km", QT_TR_NOOP("kilometres")},
      {"good", QT_TR_NOOP("good")},
      {"hooked", QT_TR_NOOP("hooked")},
      {"steel", QT_TR_NOOP("steel")},
      {"aluminium", QT_TR_NOOP("aluminium")},
      {"asphalt", QT_TR_NOOP("asphalt")},
      {"wet_asphalt", QT_TR_NOOP("wet asphalt")},
      {"hardpack", QT_TR_NOOP("hardpack")},
      {"loam", QT_TR_NOOP("loam")},
      {"sand", QT_TR_NOOP("sand")},
      {"new", QT_TR_NOOP("new")},
      {"used", QT_TR_NOOP("used")},
      {"worn", QT_TR_NOOP("worn")},
      {"left", QT_TR_NOOP("left")},
      {"right", QT_TR_NOOP("right")},
      {"rev_at_speed", QT_TR_NOOP("rpm at a road speed")},
      {"cruise_below", QT_TR_NOOP("cruise below")},
      {"pull_gain", QT_TR_NOOP("more pull")},
      {"least_drive_time", QT_TR_NOOP("quickest to the end of the straight")},
      {"top_speed_at_least", QT_TR_NOOP("top speed at least")},
      {"rev_at_drive_end", QT_TR_NOOP("rpm at the end of the straight")},
      {"least_lap_time", QT_TR_NOOP("quickest round the lap")},
  };
};

/// What else people call a choice, English as the file's words are: common usage, no source.
constexpr std::pair<std::string_view, const char*> kSynonyms[] = {
    {"aluminium", "aluminum"},
    {"aluminium", "alu"},
    {"aluminium", "alum"},
    {"aluminium", "al"},
    {"aluminium", "alloy"},
    {"aluminium", "light alloy"},
    {"aluminium", "aluminium alloy"},
    {"aluminium", "aluminum alloy"},
    {"steel", "hardened steel"},
    {"steel", "carbon steel"},
    {"steel", "alloy steel"},
};

QString asInFile(std::string_view word) {
  return QString::fromUtf8(word.data(), static_cast<qsizetype>(word.size()));
}

}  // namespace

QString choiceWord(std::string_view fileWord) {
  for (const auto& [word, text] : ChoiceWords::kWords)
    if (word == fileWord) return ChoiceWords::tr(text);
  return asInFile(fileWord);
}

QString choiceOption(std::string_view fileWord) {
  return capitalised(choiceWord(fileWord));
}

QString flagOption(bool flag) {
  return flag ? ChoiceWords::tr("Yes") : ChoiceWords::tr("No");
}

QString choiceList(const std::vector<std::string_view>& fileWords) {
  QStringList list;
  for (const std::string_view word : fileWords) list << choiceWord(word);
  return list.join(ChoiceWords::tr(", ", "between the words of a list"));
}

bool meansWord(const QString& typed, std::string_view fileWord) {
  QString plain = typed.simplified();
  if (plain.endsWith(QLatin1Char('.'))) plain.chop(1);  // "alu."
  const auto is = [&](const QString& word) { return plain.compare(word, Qt::CaseInsensitive) == 0; };
  if (is(choiceWord(fileWord)) || is(asInFile(fileWord))) return true;
  return std::any_of(std::begin(kSynonyms), std::end(kSynonyms), [&](const auto& synonym) {
    return synonym.first == fileWord && is(QLatin1String(synonym.second));
  });
}

}  // namespace layshaft::ui
