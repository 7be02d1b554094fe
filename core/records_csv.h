// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "core/bike/record_list.h"
#include "core/problem.h"

/// The records of a bike as a table: a row for each entry, whatever its kind.
namespace layshaft {

/// All entries, in the order of the profile, as comma-separated values (RFC 4180 with plain line feeds).
/// Columns are `kind`, then the keys that entries have in the profile file, in its units; those of a note's
/// setup without `setup.`, underscores for points, and the use as `at_hours` or `at_km`. Keys that this
/// version does not know are left out.
std::string recordsCsv(const Profile& profile);

struct RecordEntries {
  std::vector<WearMeasurement> measurements;
  std::vector<Service> services;
  std::vector<TrackNote> trackNotes;
  std::size_t size() const { return measurements.size() + services.size() + trackNotes.size(); }
};

/// What was read of a table.
struct RecordsRead {
  RecordEntries entries;             ///< to be added, in the order of the rows
  std::size_t known = 0;             ///< rows that say what an entry of the profile says already
  std::vector<std::string> ignored;  ///< titles of columns that nothing is known of
};

/// Why a table was not read: the first thing that is wrong.
struct CsvRefusal {
  enum class Why {
    Cell,           ///< `problem`
    NoSuchKind,     ///< `problem`, in the column of kinds
    NotOfThisKind,  ///< a filled cell that entries of the row's kind do not have
    UseGoesBack,    ///< less use than an earlier entry has, or more than a later one: `problem.low`
    OtherUseUnit,   ///< the use is counted in the other unit on this bike
    ColumnMissing,
    ColumnTwice,
    QuoteLeftOpen,
    TooMany,  ///< `problem.high` entries of a kind are the most
  };
  Why why{};
  int row = 0;           ///< as spreadsheets count, from 1, the titles being the first
  std::string column{};  ///< its title; empty where it is about the whole row or file
  Problem problem{};
};

/// Reads such a table: titles in any order, `kind` and `date` needed; separated by commas, semicolons or
/// tabs, with decimal point or comma. All of it or nothing.
std::variant<RecordsRead, CsvRefusal> readRecordsCsv(std::string_view text, const Profile& profile);

}  // namespace layshaft
