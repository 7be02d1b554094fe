// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QCoreApplication>
#include <QString>
#include <optional>
#include <string>

#include "core/limits.h"
#include "core/problem.h"
#include "ui/document/document.h"

/// The verbs that say where and how laps are ridden. Each is one named, undoable edit.
namespace layshaft::ui {

/// How hard a rider goes on a track.
enum class TrackEffort { CornerShare, BrakeShare, MaxLean };

class TrackEdits {
  Q_DECLARE_TR_FUNCTIONS(TrackEdits)
 public:
  explicit TrackEdits(Document& document) : document_(document) {}

  /// The track of that name is ridden from now on. Refused where the bike has none of that name.
  std::optional<Problem> ride(const std::string& name);
  /// Of the track that is ridden; none for what is usual. Refused outside of what a file may hold; nothing
  /// where there is no track.
  std::optional<Problem> setEffort(TrackEffort effort, std::optional<double> value);

  /// Of the track that is ridden, as it is written down.
  std::optional<double> effort(TrackEffort effort) const;

 private:
  Document& document_;
};

/// The key in the file, below a track's own.
const char* keyOf(TrackEffort effort);
const Limit& limitOf(TrackEffort effort);
/// What it is called in front of a field.
QString effortLabel(TrackEffort effort);

}  // namespace layshaft::ui
