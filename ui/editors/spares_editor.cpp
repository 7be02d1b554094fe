// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/spares_editor.h"

#include <QLabel>
#include <QLocale>
#include <QVBoxLayout>
#include <cmath>

#include "core/bike/words.h"
#include "core/limits.h"
#include "ui/words/choice_words.h"
#include "ui/words/field_table.h"
#include "ui/words/numbers.h"
#include "ui/words/plain_text.h"

namespace layshaft::ui {
namespace {

constexpr int kElongationDecimals = 2;

template <class Enum, std::size_t N>
QString wordOrEmpty(const std::optional<Enum>& value, const Words<Enum, N>& words) {
  return value ? choiceWord(wordFor(*value, words)) : QString();
}

QString sizeName(const ChainSize& size) {
  return QString::fromUtf8(size.name.data());
}

/// What the table does not show of a spare stays with the spare that is otherwise the same.
template <class Spare>
void keepExtras(Spare& spare, const std::vector<Spare>& before) {
  for (const Spare& candidate : before) {
    spare.extras = candidate.extras;
    if (spare == candidate) return;
  }
  spare.extras.clear();
}

/// A cell that is not understood: what it says and what was expected.
QString notUnderstood(const QString& cell, const QString& expected) {
  return SparesEditor::tr("“%1” is not understood; expected %2").arg(cell, expected);
}

QString readWhole(const QString& cell, const Limit& limit, const QString& what, int& into) {
  const auto value = typedNumber(cell, limit.high);
  if (!value || *value != std::floor(*value) || !limit.contains(*value))
    return notUnderstood(cell, what.arg(limit.low).arg(limit.high));
  into = static_cast<int>(*value);
  return {};
}

QString readState(const QString& cell, std::optional<SpareState>& into) {
  if (cell.isEmpty()) return {};
  into = typedChoice(cell, kSpareStateWords);
  return into ? QString()
              : notUnderstood(cell, SparesEditor::tr("one of: %1").arg(choiceList(kSpareStateWords)));
}

/// Front and rear are weighed alike.
const Field& massField() {
  return *fieldRow("spares_box.front[].mass_kg");
}

QString massText(const SpareSprocket& spare, const UnitsShown& units) {
  return spare.massKg ? shownText(massField(), *spare.massKg, units) : QString();
}

QString readMass(const QString& cell, const std::vector<SpareSprocket>& before, const UnitsShown& units,
                 std::optional<double>& into) {
  // A mass that nobody touched keeps every digit.
  for (const SpareSprocket& spare : before)
    if (massText(spare, units) == cell) {
      into = spare.massKg;
      return {};
    }
  const Limit& limit = limits::kSprocketMassKg;
  const double low = shownNumber(massField(), limit.low, units),
               high = shownNumber(massField(), limit.high, units);
  const auto typed = typedNumber(cell, high);
  if (typed) into = fileNumber(massField(), *typed, units);
  if (into && limit.contains(*into)) return {};
  return notUnderstood(cell, SparesEditor::tr("a mass from %1 to %2 %3")
                                 .arg(QLocale().toString(low, 'g', 4), QLocale().toString(high, 'g', 4),
                                      units.name(Quantity::Mass)));
}

QString readSprocket(const QStringList& cells, const Limit& teeth, const std::vector<SpareSprocket>& before,
                     const UnitsShown& units, SpareSprocket& into) {
  if (const QString why = readWhole(cells.value(0), teeth,
                                    SparesEditor::tr("a whole number of teeth from %1 to %2"), into.teeth);
      !why.isEmpty())
    return why;
  if (const QString size = cells.value(1); !size.isEmpty() && !(into.size = chainSize(size.toStdString())))
    return notUnderstood(size, SparesEditor::tr("a chain size such as 520"));
  if (const QString material = cells.value(2);
      !material.isEmpty() && !(into.material = typedChoice(material, kMaterialWords)))
    return notUnderstood(material, SparesEditor::tr("one of: %1").arg(choiceList(kMaterialWords)));
  if (const QString mass = cells.value(3); !mass.isEmpty())
    if (const QString why = readMass(mass, before, units, into.massKg); !why.isEmpty()) return why;
  return readState(cells.value(4), into.state);
}

QStringList sprocketCells(const SpareSprocket& spare, const UnitsShown& units) {
  return {QString::number(spare.teeth), spare.size ? sizeName(*spare.size) : QString(),
          wordOrEmpty(spare.material, kMaterialWords), massText(spare, units),
          wordOrEmpty(spare.state, kSpareStateWords)};
}

QStringList chainCells(const SpareChain& chain) {
  return {sizeName(chain.size), QString::number(chain.links), wordOrEmpty(chain.state, kSpareStateWords),
          chain.elongationPercent ? number(*chain.elongationPercent, kElongationDecimals) : QString()};
}

QString readElongation(const QString& cell, const std::vector<SpareChain>& before,
                       std::optional<double>& into) {
  // One that nobody touched keeps every digit.
  for (const SpareChain& spare : before)
    if (spare.elongationPercent && number(*spare.elongationPercent, kElongationDecimals) == cell) {
      into = spare.elongationPercent;
      return {};
    }
  const Limit& limit = limits::kElongationPercent;
  into = typedNumber(cell, limit.high);
  if (into && limit.contains(*into)) return {};
  return notUnderstood(cell,
                       SparesEditor::tr("an elongation from %1 to %2 %").arg(limit.low).arg(limit.high));
}

QString readChain(const QStringList& cells, const std::vector<SpareChain>& before, SpareChain& into) {
  const auto size = chainSize(cells.value(0).toStdString());
  if (!size) return notUnderstood(cells.value(0), SparesEditor::tr("a chain size such as 520"));
  into.size = *size;
  if (const QString why = readWhole(cells.value(1), limits::kLinks,
                                    SparesEditor::tr("a whole number of links from %1 to %2"), into.links);
      !why.isEmpty())
    return why;
  if (const QString length = cells.value(3); !length.isEmpty())
    if (const QString why = readElongation(length, before, into.elongationPercent); !why.isEmpty())
      return why;
  return readState(cells.value(2), into.state);
}

QString primaryWord() {
  return SparesEditor::tr("primary", "in a list of gears, the gears between crankshaft and clutch");
}

QStringList gearCells(const SpareGearPair& pair) {
  return {pair.gear == 0 ? primaryWord() : QString::number(pair.gear), QString::number(pair.driving),
          QString::number(pair.driven), shownName(pair.note)};
}

/// Nothing if it is no gear.
std::optional<int> gearIn(const QString& cell) {
  for (const QString& word : {primaryWord(), QStringLiteral("primary")})
    if (cell.compare(word, Qt::CaseInsensitive) == 0) return 0;
  const auto typed = typedNumber(cell, limits::kGearOrPrimary.high);
  if (!typed || *typed != std::floor(*typed) || !limits::kGearOrPrimary.contains(*typed)) return std::nullopt;
  return static_cast<int>(*typed);
}

QString readGearPair(const QStringList& cells, const std::vector<SpareGearPair>& before,
                     SpareGearPair& into) {
  const auto gear = gearIn(cells.value(0));
  if (!gear)
    return notUnderstood(
        cells.value(0),
        SparesEditor::tr("a gear from 1 to %1, or “%2”").arg(limits::kMostGears).arg(primaryWord()));
  into.gear = *gear;
  const QString teeth = SparesEditor::tr("a whole number of teeth from %1 to %2");
  if (const QString why = readWhole(cells.value(1), limits::kGearTeeth, teeth, into.driving); !why.isEmpty())
    return why;
  if (const QString why = readWhole(cells.value(2), limits::kGearTeeth, teeth, into.driven); !why.isEmpty())
    return why;
  const QString note = cells.value(3);
  if (note.toUcs4().size() > limits::kLongestRecordText)
    return SparesEditor::tr("the note is too long; at most %1 characters are kept")
        .arg(limits::kLongestRecordText);
  into.note = note.toStdString();
  // A note that nobody touched keeps every character.
  for (const SpareGearPair& pair : before)
    if (shownName(pair.note) == note) into.note = pair.note;
  return {};
}

QStringList sprocketTitles(const UnitsShown& units) {
  return {SparesEditor::tr("Teeth"), SparesEditor::tr("Size"), SparesEditor::tr("Material"),
          SparesEditor::tr("Mass, %1").arg(units.name(Quantity::Mass)), SparesEditor::tr("State")};
}

}  // namespace

SparesEditor::SparesEditor(Document& document, QWidget* parent) : QWidget(parent), document_(document) {
  new QVBoxLayout(this);
  fronts_.view = addTable(tr("Front sprockets or pulleys"), sprocketTitles(units_));
  rears_.view = addTable(tr("Rear sprockets or pulleys"), sprocketTitles(units_));
  chains_.view = addTable(tr("Chains"), {tr("Size"), tr("Links"), tr("State"), tr("Elongation, %")});
  gears_.view = addTable(tr("Gears"), {tr("Gear"), tr("Driving Teeth"), tr("Driven Teeth"), tr("Note")});
  auto* hint =
      new QLabel(tr("Material: %1. State: %2. Gear: its number, or “%3”. You can paste columns from a "
                    "spreadsheet.")
                     .arg(choiceList(kMaterialWords), choiceList(kSpareStateWords), primaryWord()));
  hint->setWordWrap(true);
  layout()->addWidget(hint);
  connect(&document_, &Document::loading, this, &SparesEditor::forget);
}

/// Nothing of what was typed is to be mended any more.
void SparesEditor::forget() {
  fronts_.pending = rears_.pending = chains_.pending = gears_.pending = false;
  if (!std::exchange(complaint_, QString()).isEmpty()) emit said(QString());
}

ColumnsTable* SparesEditor::addTable(const QString& title, const QStringList& columns) {
  auto* label = new QLabel(title);
  auto* table = new ColumnsTable(columns, limits::kMostSpares);
  table->setAccessibleName(title);
  label->setBuddy(table);
  layout()->addWidget(label);
  layout()->addWidget(table);
  connect(table, &ColumnsTable::refused, this, &SparesEditor::said);
  connect(table, &ColumnsTable::edited, this, &SparesEditor::read);
  return table;
}

template <class Spare>
std::vector<Spare> SparesEditor::readRows(Table<Spare>& table, const std::vector<Spare>& before,
                                          const std::function<QString(const QStringList&, Spare&)>& row,
                                          QStringList& complaints) {
  std::vector<Spare> spares;
  std::vector<std::optional<Spare>> inRow;
  table.pending = false;
  const auto rows = table.view->rows();
  for (std::size_t r = 0; r < rows.size(); ++r) {
    std::optional<Spare> spare(std::in_place);
    if (const QString why = row(rows[r], *spare); why.isEmpty()) {
      keepExtras(*spare, before);
    } else {
      table.pending = true;
      spare = r < table.inRow.size() ? table.inRow[r] : std::nullopt;
      complaints << (spare ? SparesEditor::tr("%1, row %2: %3; the box keeps what was there until corrected.")
                           : SparesEditor::tr("%1, row %2: %3; left out until corrected."))
                        .arg(table.view->accessibleName())
                        .arg(r + 1)
                        .arg(why);
    }
    if (spare && spares.size() >= static_cast<std::size_t>(limits::kMostSpares)) {
      table.pending = true;
      spare.reset();
      complaints << SparesEditor::tr("%1, row %2: the box holds no more than %3 of a kind; left out.")
                        .arg(table.view->accessibleName())
                        .arg(r + 1)
                        .arg(limits::kMostSpares);
    }
    if (spare) spares.push_back(*spare);
    inRow.push_back(std::move(spare));
  }
  table.inRow = std::move(inRow);
  return spares;
}

void SparesEditor::read() {
  const SparesBox old = document_.profile().sparesBox.value_or(SparesBox{});
  QStringList complaints;
  SparesBox box = old;  // with what has no table here
  box.front = readRows<SpareSprocket>(
      fronts_, old.front,
      [&](const QStringList& cells, SpareSprocket& into) {
        return readSprocket(cells, limits::kFrontTeeth, old.front, units_, into);
      },
      complaints);
  box.rear = readRows<SpareSprocket>(
      rears_, old.rear,
      [&](const QStringList& cells, SpareSprocket& into) {
        return readSprocket(cells, limits::kRearTeeth, old.rear, units_, into);
      },
      complaints);
  box.chains = readRows<SpareChain>(
      chains_, old.chains,
      [&](const QStringList& cells, SpareChain& into) { return readChain(cells, old.chains, into); },
      complaints);
  box.gearPairs = readRows<SpareGearPair>(
      gears_, old.gearPairs,
      [&](const QStringList& cells, SpareGearPair& into) { return readGearPair(cells, old.gearPairs, into); },
      complaints);
  written_ = box;
  complaint_ = complaints.join(QLatin1Char('\n'));
  emit said(complaint_);
  if (box == old) return;
  reading_ = true;
  document_.edit(
      {.field = QStringLiteral("spares, edit %1").arg(++step_), .title = tr("spares box"), .shown = {}},
      [&](Profile& p) {
        if (box == SparesBox{})
          p.sparesBox.reset();
        else
          p.sparesBox = box;
      });
  reading_ = false;
}

template <class Spare>
void SparesEditor::showRows(Table<Spare>& table, const std::vector<Spare>& spares,
                            const std::function<QStringList(const Spare&)>& cells) {
  if (table.pending) return;  // what is still to be mended is not written over
  std::vector<QStringList> rows;
  for (const Spare& spare : spares) rows.push_back(cells(spare));
  table.inRow.assign(spares.begin(), spares.end());
  table.view->showRows(rows);
}

void SparesEditor::refresh(const UnitsShown& units) {
  if (reading_) return;
  const SparesBox box = document_.profile().sparesBox.value_or(SparesBox{});
  if (!(box == written_)) {  // undone
    forget();
    written_ = box;
  }
  // What is still to be mended stays in the unit that it was typed in.
  if (!(units == units_) && !fronts_.pending && !rears_.pending) {
    units_ = units;
    for (auto* table : {fronts_.view, rears_.view}) table->setHorizontalHeaderLabels(sprocketTitles(units_));
  }
  const auto sprocket = [&](const SpareSprocket& spare) { return sprocketCells(spare, units_); };
  showRows<SpareSprocket>(fronts_, box.front, sprocket);
  showRows<SpareSprocket>(rears_, box.rear, sprocket);
  showRows<SpareChain>(chains_, box.chains, chainCells);
  showRows<SpareGearPair>(gears_, box.gearPairs, gearCells);
}

}  // namespace layshaft::ui
