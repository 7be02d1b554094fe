// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QCoreApplication>
#include <cstddef>
#include <optional>

#include "core/bike/record_list.h"
#include "core/problem.h"
#include "core/records_csv.h"
#include "ui/document/document.h"

/// The verbs that write down what was measured and done. Each is one named, undoable edit; an entry is added
/// or struck through, never changed or taken away.
namespace layshaft::ui {

class RecordEdits {
  Q_DECLARE_TR_FUNCTIONS(RecordEdits)
 public:
  explicit RecordEdits(Document& document) : document_(document) {}

  /// Refused where the book is full, or where a number is outside what a file may hold.
  std::optional<Problem> addMeasurement(const WearMeasurement& entry);

  /// With a new chain whose use is given, that is where the chain on the bike was fitted from now on; what
  /// was typed of the old one's elongation no longer holds, and is taken out of stock.
  std::optional<Problem> addService(const Service& entry);
  std::optional<Problem> addTrackNote(const TrackNote& entry);
  /// All of what was read of a table, as one step.
  std::optional<Problem> add(const RecordEntries& entries);
  /// An entry that is struck through already keeps its first reason; one that is not there is left alone. A
  /// chain that was fitted by a service which no longer counts was fitted when the services that count say.
  void strike(const RecordRef& ref, const Struck& why);
  /// The setup that a track note tells becomes the proposal; nothing where it tells none.
  std::optional<Problem> proposeSetupOf(std::size_t trackNote);

  /// The manual's slack; none where it is not known. Refused where it is outside what a file may hold or the
  /// lower end is above the higher.
  std::optional<Problem> setSlack(const std::optional<LengthRange>& slack);

 private:
  Document& document_;
};

}  // namespace layshaft::ui
