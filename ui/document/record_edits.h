// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QCoreApplication>
#include <cstddef>
#include <optional>

#include "core/bike/records.h"
#include "core/problem.h"
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
  /// An entry that is struck through already keeps its first reason; one that is not there is left alone.
  void strikeMeasurement(std::size_t index, const Struck& why);

  /// The manual's slack; none where it is not known. Refused where it is outside what a file may hold or the
  /// lower end is above the higher.
  std::optional<Problem> setSlack(const std::optional<LengthRange>& slack);

 private:
  Document& document_;
};

}  // namespace layshaft::ui
