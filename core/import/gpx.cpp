// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/import/gpx.h"

#include <expat.h>

#include <memory>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "core/import/number_problem.h"
#include "core/import/time_text.h"
#include "core/limits.h"
#include "core/short_text.h"

namespace layshaft {
namespace {

constexpr char kBehindNamespace = ' ';  // an address has no blank
constexpr std::size_t kLongestValue = 100;

/// What an element is called, if GPX knows it; nothing for elements of others.
std::string_view gpxName(std::string_view name) {
  const auto end = name.rfind(kBehindNamespace);
  if (end == std::string_view::npos) return name;  // many a writer leaves the namespace out
  const std::string_view space = name.substr(0, end);
  const bool known =
      space == "http://www.topografix.com/GPX/1/1" || space == "http://www.topografix.com/GPX/1/0";
  return known ? name.substr(end + 1) : std::string_view();
}

/// Takes the points out of what the XML library reads to it.
class GpxReader {
 public:
  GpxReader() : parser_(XML_ParserCreateNS(nullptr, kBehindNamespace), &XML_ParserFree) {
    XML_SetUserData(parser_.get(), this);
    XML_SetElementHandler(
        parser_.get(),
        [](void* self, const char* name, const char** attributes) { of(self).begin(name, attributes); },
        [](void* self, const char*) { of(self).end(); });
    XML_SetCharacterDataHandler(parser_.get(), [](void* self, const char* text, int length) {
      of(self).takeText({text, static_cast<std::size_t>(length)});
    });
    XML_SetStartDoctypeDeclHandler(parser_.get(), [](void* self, const char*, const char*, const char*, int) {
      of(self).refuse({.kind = Problem::Kind::DocumentType});
    });
  }

  Result<Recording> read(std::string_view text) {
    // The library counts in int.
    constexpr std::size_t kPart = std::size_t{1} << 30;
    for (bool last = false; !last && !problem_;) {
      const std::string_view part = text.substr(0, kPart);
      text.remove_prefix(part.size());
      last = text.empty();
      if (XML_Parse(parser_.get(), part.data(), static_cast<int>(part.size()), last ? 1 : 0) != XML_STATUS_OK)
        refuse({.kind = Problem::Kind::NotXml});
    }
    if (problem_) return *problem_;
    Recording recording{.kind = Recording::Kind::Gpx};
    recording.fixes = trackPoints_.empty() ? std::move(routePoints_) : std::move(trackPoints_);
    return recording;
  }

 private:
  static GpxReader& of(void* self) { return *static_cast<GpxReader*>(self); }

  /// Keeps the first problem with its place and reads no further.
  void refuse(Problem problem) {
    if (problem_) return;
    problem.line = XML_GetCurrentLineNumber(parser_.get());
    problem.column = XML_GetCurrentColumnNumber(parser_.get()) + 1;
    problem_ = std::move(problem);
    XML_StopParser(parser_.get(), XML_FALSE);
  }

  void begin(const char* written, const char** attributes) {
    if (problem_) return;
    const std::string_view name = gpxName(written);
    if (++depth_ > limits::kDeepestXml)
      return refuse({.kind = Problem::Kind::TooDeep, .high = limits::kDeepestXml});
    if (depth_ == 1 && name != "gpx")
      return refuse({.kind = Problem::Kind::NotARecording, .allowed = {"GPX 1.1", "NMEA 0183", "CSV"}});
    if (pointDepth_ == 0 && (name == "trkpt" || name == "rtept")) {
      pointDepth_ = depth_;
      ofTrack_ = name == "trkpt";
      beginPoint(attributes);
    } else if (pointDepth_ != 0 && depth_ == pointDepth_ + 1) {
      value_ = name == "ele"     ? Value::Height
               : name == "time"  ? Value::Time
               : name == "speed" ? Value::Speed
                                 : Value::None;
      text_.clear();
    }
  }

  void end() {
    if (problem_) return;
    if (depth_ == pointDepth_) {
      endPoint();
      pointDepth_ = 0;
    } else if (pointDepth_ != 0 && depth_ == pointDepth_ + 1) {
      takeValue();
      value_ = Value::None;
    }
    --depth_;
  }

  void takeText(std::string_view text) {
    if (value_ != Value::None && depth_ == pointDepth_ + 1 && text_.size() <= kLongestValue) text_ += text;
  }

  void beginPoint(const char** attributes) {
    fix_ = {};
    std::string_view latitude, longitude;
    bool hasLatitude = false, hasLongitude = false;
    for (const char** pair = attributes; *pair != nullptr; pair += 2) {
      if (std::string_view(pair[0]) == "lat") {
        latitude = pair[1];
        hasLatitude = true;
      } else if (std::string_view(pair[0]) == "lon") {
        longitude = pair[1];
        hasLongitude = true;
      }
    }
    if (!hasLatitude || !hasLongitude)
      return refuse({.kind = Problem::Kind::MissingKey, .path = hasLatitude ? "lon" : "lat"});
    take(latitude, limits::kLatitudeDeg, "lat", fix_.north);
    take(longitude, limits::kLongitudeDeg, "lon", fix_.east);
  }

  void endPoint() {
    auto& points = ofTrack_ ? trackPoints_ : routePoints_;
    if (points.size() >= limits::kMostFixes)
      return refuse({.kind = Problem::Kind::WrongCount,
                     .path = "points",
                     .given = std::to_string(points.size() + 1),
                     .low = limits::kFewestFixes,
                     .high = limits::kMostFixes});
    points.push_back(fix_);
  }

  template <class Number>
  void take(std::string_view text, const Limit& limit, const char* name, Number& into) {
    auto number = numberWithin(text, limit, name);
    if (number)
      into = *number;
    else
      refuse(number.problem());
  }

  void takeValue() {
    const std::string_view text = withoutBlanks(text_);
    if (text.empty()) return;
    switch (value_) {
      case Value::Height:
        return take(text, limits::kHeightM, "ele", fix_.heightM);
      case Value::Speed:
        return take(text, limits::kRecordedSpeedMps, "speed", fix_.speedMps);
      case Value::Time:
        fix_.timeS = secondsFromMoment(text);
        if (!fix_.timeS)
          refuse({.kind = Problem::Kind::NotATime,
                  .path = "time",
                  .given = shortText(text),
                  .allowed = {"2026-05-12T10:11:12Z"}});
        return;
      case Value::None:
        return;
    }
  }

  enum class Value { None, Height, Time, Speed };

  std::unique_ptr<XML_ParserStruct, decltype(&XML_ParserFree)> parser_;
  std::vector<Fix> trackPoints_, routePoints_;
  std::optional<Problem> problem_;
  Fix fix_;
  bool ofTrack_ = true;
  int depth_ = 0;
  int pointDepth_ = 0;  ///< of the point that is open; 0 if none is
  Value value_ = Value::None;
  std::string text_;
};

}  // namespace

Result<Recording> readGpx(std::string_view text) {
  return GpxReader().read(text);
}

}  // namespace layshaft
