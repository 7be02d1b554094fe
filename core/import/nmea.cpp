// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/import/nmea.h"

#include <algorithm>
#include <string>
#include <utility>

#include "core/import/nmea_sentence.h"
#include "core/import/number_problem.h"
#include "core/limits.h"
#include "core/units.h"

namespace layshaft {
namespace {

constexpr double kMpsPerKnot =
    1852.0 / units::kSecondsPerHour;  // exact: the international nautical mile, 1929
constexpr double kSecondsPerDay = 24.0 * units::kSecondsPerHour;
constexpr double kMostKnots = 2000.0;

/// Takes lines off a text.
class Lines {
 public:
  explicit Lines(std::string_view text) : rest_(text) {}
  /// The next line without its end; nothing behind the last one.
  std::optional<std::string_view> next() {
    if (rest_.empty()) return std::nullopt;
    const auto end = rest_.find_first_of("\r\n");
    const std::string_view line = rest_.substr(0, end);
    if (end == std::string_view::npos) {
      rest_ = {};
    } else {
      rest_.remove_prefix(rest_.substr(end).starts_with("\r\n") ? end + 2 : end + 1);
    }
    ++number_;
    return line;
  }
  std::size_t number() const { return number_; }

 private:
  std::string_view rest_;
  std::size_t number_ = 0;
};

/// What the sentences of one time of day say.
struct Epoch {
  std::string_view clock;
  double timeOfDayS = 0.0;
  std::optional<double> midnightS;
  std::optional<double> latitude, longitude, heightM, speedMps;
  bool noFix = false;
};

class NmeaReader {
 public:
  Result<Recording> read(std::string_view text) {
    Lines lines(text);
    while (const auto line = lines.next()) {
      const auto sentence = NmeaSentence::in(*line, lines.number());
      if (!sentence) continue;
      if (!sentence->whole()) {
        ++recording_.damaged;
        if (!damage_) damage_ = sentence->badChecksum();
        continue;
      }
      anyWhole_ = true;
      if (auto problem = take(*sentence)) return *problem;
    }
    endEpoch();
    if (!anyWhole_ && damage_) return *damage_;
    return std::move(recording_);
  }

 private:
  std::optional<Problem> take(const NmeaSentence& sentence) {
    if (sentence.field(1).empty()) {  // a receiver that has not seen a satellite yet knows no time
      ++recording_.noFix;
      return std::nullopt;
    }
    if (sentence.field(1) != epoch_.clock) {
      endEpoch();
      const auto time = sentence.timeOfDayS(1);
      if (!time) return time.problem();
      epoch_.clock = sentence.field(1);
      epoch_.timeOfDayS = *time;
    }
    if (recording_.fixes.size() >= limits::kMostFixes)
      return sentence.at(1, {.kind = Problem::Kind::WrongCount,
                             .path = "points",
                             .given = std::to_string(recording_.fixes.size() + 1),
                             .low = limits::kFewestFixes,
                             .high = limits::kMostFixes});
    return sentence.isRmc() ? takeRmc(sentence) : takeGga(sentence);
  }

  std::optional<Problem> takeRmc(const NmeaSentence& sentence) {
    constexpr std::size_t kStatus = 2, kLatitude = 3, kSpeed = 7, kDate = 9;
    if (sentence.field(kStatus) != "A") {
      epoch_.noFix = true;
      return std::nullopt;
    }
    if (auto problem = takePosition(sentence, kLatitude)) return problem;
    if (!sentence.field(kSpeed).empty()) {
      const auto knots = numberWithin(sentence.field(kSpeed), {0, kMostKnots, "kn"}, "speed");
      if (!knots) return sentence.at(kSpeed, knots.problem());
      epoch_.speedMps = *knots * kMpsPerKnot;
    }
    if (!sentence.field(kDate).empty()) {
      const auto midnight = sentence.midnightS(kDate);
      if (!midnight) return midnight.problem();
      epoch_.midnightS = *midnight;
    }
    return std::nullopt;
  }

  std::optional<Problem> takeGga(const NmeaSentence& sentence) {
    constexpr std::size_t kLatitude = 2, kQuality = 6, kHeight = 9;
    if (sentence.field(kQuality).empty() || sentence.field(kQuality) == "0") {
      epoch_.noFix = true;
      return std::nullopt;
    }
    if (auto problem = takePosition(sentence, kLatitude)) return problem;
    if (!sentence.field(kHeight).empty()) {
      const auto height = numberWithin(sentence.field(kHeight), limits::kHeightM, "height");
      if (!height) return sentence.at(kHeight, height.problem());
      epoch_.heightM = *height;
    }
    return std::nullopt;
  }

  std::optional<Problem> takePosition(const NmeaSentence& sentence, std::size_t latitudeAt) {
    const auto latitude = sentence.degrees(latitudeAt, "NS", limits::kLatitudeDeg.high);
    if (!latitude) return latitude.problem();
    const auto longitude = sentence.degrees(latitudeAt + 2, "EW", limits::kLongitudeDeg.high);
    if (!longitude) return longitude.problem();
    epoch_.latitude = *latitude;
    epoch_.longitude = *longitude;
    return std::nullopt;
  }

  void endEpoch() {
    const Epoch epoch = std::exchange(epoch_, {});
    if (epoch.clock.empty()) return;
    if (epoch.noFix || !epoch.latitude) {
      ++recording_.noFix;
      return;
    }
    if (epoch.midnightS)
      midnightS_ = *epoch.midnightS;
    else if (lastOfDayS_ && epoch.timeOfDayS < *lastOfDayS_ - kSecondsPerDay / 2.0)
      midnightS_ += kSecondsPerDay;
    lastOfDayS_ = epoch.timeOfDayS;
    recording_.fixes.push_back({.east = *epoch.longitude,
                                .north = *epoch.latitude,
                                .heightM = epoch.heightM,
                                .timeS = midnightS_ + epoch.timeOfDayS,
                                .speedMps = epoch.speedMps});
  }

  Recording recording_{.kind = Recording::Kind::Nmea};
  Epoch epoch_;
  double midnightS_ = 0.0;
  std::optional<double> lastOfDayS_;
  std::optional<Problem> damage_;  ///< the first
  bool anyWhole_ = false;
};

}  // namespace

bool holdsNmea(std::string_view text) {
  constexpr std::size_t kLookedAt = 200;  // receivers say who they are before they say where
  Lines lines(text);
  while (const auto line = lines.next()) {
    if (NmeaSentence::in(*line, lines.number())) return true;
    if (lines.number() >= kLookedAt) break;
  }
  return false;
}

Result<Recording> readNmea(std::string_view text) {
  return NmeaReader().read(text);
}

}  // namespace layshaft
