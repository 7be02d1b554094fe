// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/records_csv.h"

#include <algorithm>
#include <set>
#include <tuple>
#include <type_traits>
#include <unordered_set>
#include <utility>

#include "core/csv_table.h"
#include "core/limits.h"
#include "core/number_text.h"
#include "core/profile_file/entry_access.h"
#include "core/report.h"
#include "core/short_text.h"

namespace layshaft {
namespace {

using Type = FieldRule::Type;
using Why = CsvRefusal::Why;

constexpr std::string_view kKind = "kind", kDate = "date", kAt = "at", kStruckDate = "struck.date";
constexpr std::string_view kSetup = "setup.";

/// The keys of all kinds of entries, in the order of the columns.
constexpr std::string_view kKeys[] = {kDate,
                                      kAt,
                                      "place",
                                      "surface",
                                      "weather",
                                      "setup.front_teeth",
                                      "setup.rear_teeth",
                                      "gear_at_end",
                                      "rpm_at_end",
                                      "limiter_hit",
                                      "lap_time_s",
                                      "rating",
                                      "words",
                                      "new_chain",
                                      "new_front_sprocket",
                                      "new_rear_sprocket",
                                      "parts",
                                      "pitches",
                                      "lengths_mm",
                                      "front",
                                      "rear",
                                      "lifts_off_half_tooth",
                                      "note",
                                      kStruckDate,
                                      "struck.reason",
                                      "setup.rear_tyre",
                                      "setup.rollout_mm",
                                      "setup.rolling_allowance_percent",
                                      "setup.crown_radius_mm",
                                      "setup.tread_wear_mm",
                                      "setup.growth_per_kmh2",
                                      "setup.primary_ratio",
                                      "setup.primary_teeth",
                                      "setup.gear_ratios",
                                      "setup.gear_teeth",
                                      "setup.final_drive",
                                      "setup.chain_size",
                                      "setup.chain_kind",
                                      "setup.links",
                                      "setup.chain_elongation_percent",
                                      "setup.belt_pitch_mm",
                                      "setup.belt_teeth",
                                      "setup.front_sprocket.size",
                                      "setup.front_sprocket.material",
                                      "setup.front_sprocket.mass_kg",
                                      "setup.rear_sprocket.size",
                                      "setup.rear_sprocket.material",
                                      "setup.rear_sprocket.mass_kg"};

std::string useTitle(UseUnit unit) {
  return std::string(kAt) + '_' + std::string(wordFor(unit, kUseUnitWords));
}

std::string titleOf(std::string_view key, UseUnit unit) {
  if (key == kAt) return useTitle(unit);
  std::string title(key.starts_with(kSetup) ? key.substr(kSetup.size()) : key);
  std::replace(title.begin(), title.end(), '.', '_');
  return title;
}

// What the field list has no single value for.

std::string joined(const std::vector<double>& numbers) {
  std::string text;
  for (const double x : numbers) text += (text.empty() ? "" : " ") + numberText(x);
  return text;
}

/// Driven and driving, as people write it.
std::string teethText(const std::optional<GearTeeth>& teeth) {
  return teeth ? std::to_string(teeth->driven) + '/' + std::to_string(teeth->driving) : "-";
}

template <class Entry>
std::string blockText(const Entry& entry, std::string_view key) {
  if (key == kDate) return entry.date.text();
  if (key == kStruckDate) return entry.struck ? entry.struck->date.text() : std::string();
  if constexpr (std::is_same_v<Entry, WearMeasurement>) {
    if (key == "lengths_mm") return joined(entry.lengthsMm);
  } else if constexpr (std::is_same_v<Entry, TrackNote>) {
    if (!entry.setup) return {};
    const SetupOptions& options = entry.setup->options;
    if (key == "setup.gear_ratios")
      return entry.setup->gearRatios ? joined(entry.setup->gearRatios->values()) : std::string();
    if (key == "setup.primary_teeth")
      return options.primaryTeeth ? teethText(options.primaryTeeth) : std::string();
    std::string text;
    for (const auto& teeth : options.gearTeeth) text += (text.empty() ? "" : " ") + teethText(teeth);
    return text;
  }
  return {};
}

std::string valueText(const FieldValue& value) {
  if (const auto* number = std::get_if<double>(&value)) return numberText(*number);
  if (const auto* flag = std::get_if<bool>(&value)) return *flag ? "true" : "false";
  if (const auto* text = std::get_if<std::string>(&value)) return *text;
  return {};
}

template <class Entry>
std::string rowOf(const Entry& entry, RecordKind kind) {
  std::string row(wordFor(kind, kRecordKindWords));
  for (const std::string_view key : kKeys) {
    row += ',';
    const auto rule = entryRule<Entry>(key);
    if (!rule) continue;
    const std::string text =
        rule->type == Type::Block ? blockText(entry, key) : valueText(entryValue(entry, key));
    row += rule->type == Type::Text ? csvField(text) : text;  // of the rest nothing needs quotes
  }
  return row + '\n';
}

// Reading.

std::vector<std::string> words(std::string_view text) {
  std::vector<std::string> found;
  std::string word;
  for (const char c : std::string(text) + ' ') {
    if (c != ' ')
      word += c;
    else if (!word.empty())
      found.push_back(std::exchange(word, {}));
  }
  return found;
}

Problem wrongType(const std::string& given, const char* expected) {
  return {.kind = Problem::Kind::WrongType, .given = shortText(given), .allowed = {expected}};
}

/// What a cell says for a field of such a rule, or why it says nothing.
std::variant<FieldValue, Problem> valueIn(const std::string& cell, const FieldRule& rule) {
  switch (rule.type) {
    case Type::Number:
    case Type::Whole:
      if (const auto number = cellNumber(cell)) return FieldValue(*number);
      return wrongType(cell, rule.type == Type::Whole ? "whole number" : "number");
    case Type::Flag:
      for (const auto& [word, meant] :
           {std::pair{"true", true}, std::pair{"yes", true}, std::pair{"1", true}, std::pair{"false", false},
            std::pair{"no", false}, std::pair{"0", false}})
        if (inSmallLetters(cell) == word) return FieldValue(meant);
      return wrongType(cell, "true or false");
    case Type::Word:
      return FieldValue(inSmallLetters(cell));
    case Type::Text:
      return FieldValue(cellText(cell));
    case Type::TyreSize:
    case Type::Wholes:
    case Type::Block:
      break;
  }
  return FieldValue(cell);
}

std::variant<std::vector<double>, Problem> numbersIn(const std::string& cell) {
  std::vector<double> numbers;
  for (const std::string& word : words(cell)) {
    const auto number = cellNumber(word);
    if (!number) return wrongType(word, "number");
    numbers.push_back(*number);
  }
  return numbers;
}

std::optional<Problem> putTeeth(const std::string& word, std::optional<GearTeeth>& teeth) {
  const auto slash = word.find('/');
  const auto driven = numberFromText(std::string_view(word).substr(0, slash)),
             driving = slash == std::string::npos ? std::nullopt
                                                  : numberFromText(std::string_view(word).substr(slash + 1));
  const auto whole = [](const std::optional<double>& x) {
    return x && limits::kGearTeeth.contains(*x) && *x == static_cast<int>(*x);
  };
  if (!whole(driven) || !whole(driving)) return wrongType(word, "whole number");
  teeth = GearTeeth{.driving = static_cast<int>(*driving), .driven = static_cast<int>(*driven)};
  return std::nullopt;
}

std::optional<Problem> putDate(const std::string& cell, Date& date) {
  const auto day = Date::parse(cell);
  if (!day) return Problem{.kind = Problem::Kind::NotADate, .given = shortText(cell)};
  date = *day;
  return std::nullopt;
}

std::optional<Problem> putInSetup(SetupChange& setup, std::string_view key, const std::string& cell) {
  if (key == "setup.gear_ratios") {
    const auto numbers = numbersIn(cell);
    if (const auto* wrong = std::get_if<Problem>(&numbers)) return *wrong;
    const auto ratios = GearRatios::make(std::get<std::vector<double>>(numbers));
    if (!ratios) return ratios.problem();
    setup.gearRatios = *ratios;
    return std::nullopt;
  }
  if (key == "setup.primary_teeth") return putTeeth(cell, setup.options.primaryTeeth);
  std::size_t gear = 0;
  for (const std::string& word : words(cell)) {
    std::optional<GearTeeth> teeth;
    if (word != "-")
      if (auto problem = putTeeth(word, teeth)) return problem;
    setTeethOf(setup.options.gearTeeth, gear++, teeth);
  }
  return std::nullopt;
}

template <class Entry>
std::optional<Problem> putBlock(Entry& entry, std::string_view key, const std::string& cell) {
  if (key == kDate) return putDate(cell, entry.date);
  if (key == kStruckDate)
    return putDate(cell, entry.struck ? entry.struck->date : entry.struck.emplace().date);
  if constexpr (std::is_same_v<Entry, WearMeasurement>) {
    const auto numbers = numbersIn(cell);
    if (const auto* wrong = std::get_if<Problem>(&numbers)) return *wrong;
    entry.lengthsMm = std::get<std::vector<double>>(numbers);
  } else if constexpr (std::is_same_v<Entry, TrackNote>) {
    return putInSetup(entry.setup ? *entry.setup : entry.setup.emplace(), key, cell);
  }
  return std::nullopt;
}

/// A column of the file and what it means.
struct Column {
  std::size_t at;
  std::string title;
  std::string_view key;
};

/// Reads a table row by row into entries.
class Reading {
 public:
  Reading(const CsvTable& table, const Profile& profile)
      : table_(table), profile_(profile), unit_(useUnitOf(profile)) {}

  std::variant<RecordsRead, CsvRefusal> read() {
    if (table_.quoteLeftOpen)
      refuse({.why = Why::QuoteLeftOpen, .row = static_cast<int>(table_.rows.size())});
    else
      readTitles();
    forEachRecord(profile_, [&](const auto& entry, RecordRef ref) {
      known_.insert(rowOf(entry, ref.kind));
      noteUse(entry, kProfile);
    });
    for (std::size_t r = titlesAt_ + 1; r < table_.rows.size() && !refusal_; ++r)
      if (!table_.rows[r].empty()) readRow(r);
    checkUse();
    checkCounts();
    if (refusal_) return *refusal_;
    return std::move(read_);
  }

 private:
  static constexpr int kProfile = 0;  // the row of what is in the profile already

  void refuse(CsvRefusal refusal) {
    if (!refusal_) refusal_ = std::move(refusal);
  }

  void readTitles() {
    while (titlesAt_ < table_.rows.size() && table_.rows[titlesAt_].empty()) ++titlesAt_;
    const int row = static_cast<int>(titlesAt_) + 1;
    const std::string otherUse = useTitle(unit_ == UseUnit::Km ? UseUnit::Hours : UseUnit::Km);
    std::set<std::string_view> seen;
    const auto add = [&](std::size_t at, const std::string& title, std::string_view key) {
      if (!seen.insert(key).second) refuse({.why = Why::ColumnTwice, .row = row, .column = title});
      if (key == kKind)
        kindAt_ = at;
      else
        columns_.push_back({at, title, key});
    };
    const auto& titles = titlesAt_ < table_.rows.size() ? table_.rows[titlesAt_] : std::vector<std::string>();
    for (std::size_t c = 0; c < titles.size(); ++c) {
      const std::string title = inSmallLetters(titles[c]);
      const auto* key = std::find_if(std::begin(kKeys), std::end(kKeys), [&](std::string_view k) {
        return title == titleOf(k, unit_) || (k == kAt && title == kAt);
      });
      if (title == kKind)
        add(c, titles[c], kKind);
      else if (key != std::end(kKeys))
        add(c, titles[c], *key);
      else if (title == otherUse)
        refuse({.why = Why::OtherUseUnit, .row = row, .column = titles[c]});
      else if (!title.empty())
        read_.ignored.push_back(titles[c]);
    }
    for (const std::string_view needed : {kKind, kDate})
      if (!seen.contains(needed))
        refuse({.why = Why::ColumnMissing, .row = row, .column = std::string(needed)});
  }

  const std::string& cell(std::size_t r, std::size_t c) const {
    static const std::string kNone;
    return c < table_.rows[r].size() ? table_.rows[r][c] : kNone;
  }

  void readRow(std::size_t r) {
    const std::string& word = cell(r, kindAt_);
    const auto kind = fromWord(inSmallLetters(word), kRecordKindWords);
    if (!kind) {
      Problem problem{.kind = Problem::Kind::NotOneOf, .given = shortText(word)};
      for (const auto& known : kRecordKindWords) problem.allowed.emplace_back(known.second);
      return refuse({.why = Why::NoSuchKind,
                     .row = static_cast<int>(r) + 1,
                     .column = std::string(kKind),
                     .problem = problem});
    }
    switch (*kind) {
      case RecordKind::Service:
        return readEntry(r, *kind, read_.entries.services);
      case RecordKind::TrackNote:
        return readEntry(r, *kind, read_.entries.trackNotes);
      case RecordKind::Measurement:
        return readEntry(r, *kind, read_.entries.measurements);
    }
  }

  template <class Entry>
  void readEntry(std::size_t r, RecordKind kind, std::vector<Entry>& into) {
    const int row = static_cast<int>(r) + 1;
    Entry entry;
    for (const Column& column : columns_) {
      const std::string& text = cell(r, column.at);
      if (text.empty() && column.key != kDate) continue;
      const auto rule = entryRule<Entry>(column.key);
      if (!rule) return refuse({.why = Why::NotOfThisKind, .row = row, .column = column.title});
      if (auto problem = put(entry, column.key, *rule, text))
        return refuse({.why = Why::Cell, .row = row, .column = column.title, .problem = std::move(*problem)});
    }
    if (entry.struck && entry.struck->date == Date())  // a reason without a day
      return refuse({.why = Why::Cell,
                     .row = row,
                     .column = titleOf(kStruckDate, unit_),
                     .problem = {.kind = Problem::Kind::NotADate}});
    if (auto problem = entryProblem(entry)) {
      const auto column = std::find_if(columns_.begin(), columns_.end(),
                                       [&](const Column& c) { return problem->path.starts_with(c.key); });
      problem->path.clear();
      return refuse({.why = Why::Cell,
                     .row = row,
                     .column = column == columns_.end() ? std::string() : column->title,
                     .problem = std::move(*problem)});
    }
    if (known_.contains(rowOf(entry, kind))) {
      ++read_.known;
      return;
    }
    noteUse(entry, row);
    into.push_back(std::move(entry));
  }

  template <class Entry>
  static std::optional<Problem> put(Entry& entry, std::string_view key, const FieldRule& rule,
                                    const std::string& text) {
    auto problem = [&]() -> std::optional<Problem> {
      if (rule.type == Type::Block) return putBlock(entry, key, text);
      const auto value = valueIn(text, rule);
      if (const auto* wrong = std::get_if<Problem>(&value)) return *wrong;
      return setEntryField(entry, key, std::get<FieldValue>(value));
    }();
    if (problem) problem->path.clear();  // the column says it
    return problem;
  }

  template <class Entry>
  void noteUse(const Entry& entry, int row) {
    if constexpr (!std::is_same_v<Entry, TrackNote>)
      if (entry.at && !entry.struck) uses_.push_back({entry.date, *entry.at, row});
  }

  /// A bike's use only grows. What the profile holds already is not the file's fault.
  void checkUse() {
    if (refusal_) return;
    std::stable_sort(uses_.begin(), uses_.end(), [](const Use& a, const Use& b) {
      return std::tie(a.date, a.at) < std::tie(b.date, b.at);
    });
    const Use* most = nullptr;
    for (const Use& use : uses_) {
      if (!most || use.at >= most->at) {
        most = &use;
        continue;
      }
      const Use &wrong = use.row != kProfile ? use : *most, &other = use.row != kProfile ? *most : use;
      if (wrong.row == kProfile) continue;
      const auto column =
          std::find_if(columns_.begin(), columns_.end(), [](const Column& c) { return c.key == kAt; });
      return refuse({.why = Why::UseGoesBack,
                     .row = wrong.row,
                     .column = column->title,
                     .problem = {.kind = Problem::Kind::OutOfRange,
                                 .given = numberText(wrong.at),
                                 .low = other.at,
                                 .below = other.date.text()}});
    }
  }

  void checkCounts() {
    const auto check = [&](std::size_t held, std::size_t added) {
      if (held + added > static_cast<std::size_t>(limits::kMostRecords))
        refuse({.why = Why::TooMany, .problem = {.high = limits::kMostRecords}});
    };
    const auto& records = profile_.records;
    check(records ? records->services.size() : 0, read_.entries.services.size());
    check(records ? records->trackNotes.size() : 0, read_.entries.trackNotes.size());
    check(profile_.wear ? profile_.wear->measurements.size() : 0, read_.entries.measurements.size());
  }

  struct Use {
    Date date;
    double at;
    int row;
  };

  const CsvTable& table_;
  const Profile& profile_;
  const UseUnit unit_;
  std::size_t titlesAt_ = 0, kindAt_ = 0;
  std::vector<Column> columns_;
  std::unordered_set<std::string> known_;
  std::vector<Use> uses_;
  RecordsRead read_;
  std::optional<CsvRefusal> refusal_;
};

}  // namespace

std::string recordsCsv(const Profile& profile) {
  std::string out(kKind);
  for (const std::string_view key : kKeys) out += ',' + titleOf(key, useUnitOf(profile));
  out += '\n';
  forEachRecord(profile, [&](const auto& entry, RecordRef ref) { out += rowOf(entry, ref.kind); });
  return out;
}

std::variant<RecordsRead, CsvRefusal> readRecordsCsv(std::string_view text, const Profile& profile) {
  return Reading(csvTable(text), profile).read();
}

}  // namespace layshaft
