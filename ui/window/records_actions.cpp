// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/records_actions.h"

#include <QDate>
#include <QFileDialog>
#include <QFileInfo>
#include <variant>

#include "core/file.h"
#include "core/records_csv.h"
#include "ui/document/file_name.h"
#include "ui/document/record_edits.h"
#include "ui/document/save_bytes.h"
#include "ui/editors/record_dialogs.h"
#include "ui/pages/records_page.h"
#include "ui/window/main_window.h"
#include "ui/window/messages.h"
#include "ui/window/save_dialog.h"
#include "ui/words/dates.h"
#include "ui/words/numbers.h"
#include "ui/words/plain_text.h"
#include "ui/words/problem_words.h"
#include "ui/words/record_words.h"

namespace layshaft::ui {
namespace {

constexpr std::size_t kLargestTableBytes = std::size_t{16} << 20;

Date today() {
  return coreDate(QDate::currentDate());
}

/// The setup with every key that it has, so that it keeps its meaning when stock becomes another.
SetupChange whole(const Setup& setup) {
  return {.frontTeeth = setup.frontTeeth,
          .rearTeeth = setup.rearTeeth,
          .rearTyre = setup.rearTyre,
          .primaryRatio = setup.primaryRatio,
          .gearRatios = setup.gearRatios.empty() ? std::nullopt : std::optional(setup.gearRatios),
          .options = setup.options};
}

Service serviceToStart(const Profile& profile) {
  Service start;
  start.date = today();
  start.at = latestUse(profile);
  return start;
}

TrackNote noteToStart(const Profile& profile, const UnitsShown& units) {
  TrackNote start;
  start.date = today();
  start.setup = whole(applied(profile.proposed, profile.stock));
  start.setup->options.extras = {};
  for (const RecordRef& ref : newestFirst(profile)) {
    if (ref.kind != RecordKind::TrackNote) continue;
    const TrackNote& note = profile.records->trackNotes[ref.index];
    if (note.struck || note.place.empty()) continue;
    start.place = note.place;
    break;
  }
  if (!profile.ride) return start;
  start.surface = profile.ride->surface;
  if (const auto& air = profile.ride->airTemperatureC)
    start.weather = units.withUnit(number(units.shown(Quantity::Temperature, *air), 0), Quantity::Temperature)
                        .toStdString();
  return start;
}

void askForService(MainWindow& window, const Service& start, const QString& title = QString()) {
  ServiceDialog dialog(start, useUnitOf(window.document().profile()), window.units(), &window);
  if (!title.isEmpty()) dialog.setWindowTitle(title);
  if (dialog.exec() != QDialog::Accepted) return;
  if (const auto problem = RecordEdits(window.document()).addService(dialog.entry()))
    window.say(spokenSentence(*problem));
}

/// An entry in a line, for the question about it.
QString entryWords(const Profile& profile, const RecordRef& ref, const UnitsShown& units) {
  const auto words = [&](const Date& day, const QString& text) {
    const QString what =
        RecordsActions::tr("%1 of %2", "kind of entry and day").arg(recordKindName(ref.kind), shownDate(day));
    return text.isEmpty() ? what : RecordsActions::tr("%1: %2", "an entry and what it says").arg(what, text);
  };
  switch (ref.kind) {
    case RecordKind::Service: {
      const Service& service = profile.records->services[ref.index];
      return words(service.date, recordText(service));
    }
    case RecordKind::TrackNote: {
      const TrackNote& note = profile.records->trackNotes[ref.index];
      return words(note.date, recordText(note));
    }
    case RecordKind::Measurement:
      break;
  }
  const WearMeasurement& measurement = profile.wear->measurements[ref.index];
  return words(measurement.date, recordText(measurement, units));
}

/// New as it was put on; of what the box has nothing is taken for new that is not said to be.
bool isNew(const PartLine& line) {
  return line.source == PartSource::Buy || (line.source == PartSource::Box && line.state == SpareState::New);
}

QString partWords(const PartLine& line) {
  switch (line.kind) {
    case PartKind::FrontSprocket:
      return RecordsActions::tr("front sprocket %1").arg(line.teeth);
    case PartKind::RearSprocket:
      return RecordsActions::tr("rear sprocket %1").arg(line.teeth);
    case PartKind::FrontPulley:
      return RecordsActions::tr("front pulley %1").arg(line.teeth);
    case PartKind::RearPulley:
      return RecordsActions::tr("rear pulley %1").arg(line.teeth);
    case PartKind::Chain:
      return line.source == PartSource::Cut
                 ? RecordsActions::tr("chain shortened to %1 links").arg(line.links)
                 : RecordsActions::tr("chain of %1 links").arg(line.links);
    case PartKind::JoiningLink:
      return RecordsActions::tr("joining link");
    case PartKind::Belt:
      return RecordsActions::tr("belt of %1 teeth").arg(line.teeth);
    case PartKind::RearTyre:
      break;
  }
  return RecordsActions::tr("rear tyre");
}

}  // namespace

void strikeRecord(MainWindow& window, const RecordRef& entry) {
  StrikeDialog dialog(entryWords(window.document().profile(), entry, window.units()), today(), &window);
  if (dialog.exec() == QDialog::Accepted) RecordEdits(window.document()).strike(entry, dialog.struck());
}

void offerServiceEntry(MainWindow& window, const PartsList& fitted) {
  Service start = serviceToStart(window.document().profile());
  QStringList parts;
  for (const PartLine& line : fitted.lines) {
    if (line.source == PartSource::Keep) continue;
    parts << partWords(line);
    if (!isNew(line)) continue;
    if (line.kind == PartKind::Chain) start.newChain = true;
    if (line.kind == PartKind::FrontSprocket) start.newFrontSprocket = true;
    if (line.kind == PartKind::RearSprocket) start.newRearSprocket = true;
  }
  start.parts = capitalised(parts.join(RecordsActions::tr(", "))).toStdString();
  askForService(window, start, RecordsActions::tr("Write Down What Was Fitted"));
}

RecordsActions::RecordsActions(MainWindow& window, RecordsPage& page) : QObject(&page), window_(window) {
  connect(&page, &RecordsPage::serviceWanted, this, &RecordsActions::newService);
  connect(&page, &RecordsPage::trackNoteWanted, this, &RecordsActions::newTrackNote);
  connect(&page, &RecordsPage::strikeWanted, this,
          [this](const RecordRef& entry) { strikeRecord(window_, entry); });
  connect(&page, &RecordsPage::setupWanted, this, &RecordsActions::propose);
  connect(&page, &RecordsPage::readWanted, this, &RecordsActions::read);
  connect(&page, &RecordsPage::writeWanted, this, &RecordsActions::write);
}

void RecordsActions::newService() {
  askForService(window_, serviceToStart(window_.document().profile()));
}

void RecordsActions::newTrackNote() {
  TrackNoteDialog dialog(noteToStart(window_.document().profile(), window_.units()), &window_);
  if (dialog.exec() != QDialog::Accepted) return;
  if (const auto problem = RecordEdits(window_.document()).addTrackNote(dialog.entry()))
    window_.say(spokenSentence(*problem));
}

void RecordsActions::propose(std::size_t trackNote) {
  if (const auto problem = RecordEdits(window_.document()).proposeSetupOf(trackNote))
    window_.say(spokenSentence(*problem));
}

void RecordsActions::read() {
  const QString& bike = window_.document().file();
  const QString file = QFileDialog::getOpenFileName(&window_, tr("Import Records"),
                                                    bike.isEmpty() ? QString() : QFileInfo(bike).path(),
                                                    tr("Tables (*.csv *.tsv *.txt);;All files (*)"));
  if (file.isEmpty()) return;
  const QString failure = tr("Records Not Imported");
  const auto text = readFile(pathOf(file), kLargestTableBytes);
  if (!text) return warnOfFile(&window_, failure, file, text.problem());
  const Profile& profile = window_.document().profile();
  const auto result = readRecordsCsv(*text, profile);
  if (const auto* refusal = std::get_if<CsvRefusal>(&result))
    return warnOfFile(&window_, failure, file, refusalWords(*refusal, profile));
  const auto& read = std::get<RecordsRead>(result);
  if (const auto problem = RecordEdits(window_.document()).add(read.entries))
    return warnOfFile(&window_, failure, file, spokenSentence(*problem));
  window_.say(importedWords(read));
}

void RecordsActions::write() {
  saveExport(window_,
             {.word = QStringLiteral("records"),
              .title = tr("Export Records"),
              .failure = tr("Records Not Exported"),
              .of = tr("records"),
              .kinds = {{tr("Comma-separated values"), QStringLiteral(".csv")}}},
             [this](const QString& file) -> std::optional<QString> {
               return saveBytes(file, QByteArray::fromStdString(recordsCsv(window_.document().profile())));
             });
}

}  // namespace layshaft::ui
