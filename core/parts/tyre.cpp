// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/parts/tyre.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "core/limits.h"
#include "core/number_text.h"
#include "core/short_text.h"
#include "core/units.h"

namespace layshaft {
namespace {

/// Section width and twice the section height of code-designated tyres: UN R75 Annex 5, tables 3 and 4, from
/// memory.
struct CodeSection {
  double inches;
  int aspectPercent;  ///< as printed behind the section, 0 where none is
  double widthMm;
  double twiceHeightMm;
};
constexpr std::array kCodeSections{
    CodeSection{2.00, 0, 52, 110},  CodeSection{2.25, 0, 61, 124},   CodeSection{2.50, 0, 65, 136},
    CodeSection{2.75, 0, 75, 156},  CodeSection{3.00, 0, 80, 170},   CodeSection{3.25, 0, 89, 182},
    CodeSection{3.50, 0, 93, 192},  CodeSection{3.75, 0, 99, 204},   CodeSection{4.00, 0, 108, 214},
    CodeSection{4.25, 0, 112, 226}, CodeSection{4.50, 0, 123, 234},  CodeSection{5.00, 0, 129, 260},
    CodeSection{3.60, 0, 93, 158},  CodeSection{4.10, 0, 108, 184},  CodeSection{4.60, 0, 117, 197},
    CodeSection{5.10, 0, 129, 219}, CodeSection{4.25, 85, 112, 202},
};

/// Metric equivalents of the alphanumeric codes: retail charts, the first where a chart lists two.
struct LetterCode {
  char letter;
  int aspectPercent;  ///< as printed
  int widthMm;
  int metricAspectPercent;
};
constexpr std::array kLetterCodes{
    LetterCode{'H', 90, 80, 90},  LetterCode{'J', 90, 90, 90},  LetterCode{'M', 90, 100, 90},
    LetterCode{'N', 90, 110, 90}, LetterCode{'P', 85, 120, 80}, LetterCode{'R', 90, 120, 90},
    LetterCode{'T', 90, 130, 90}, LetterCode{'U', 90, 140, 90}, LetterCode{'U', 85, 140, 90},
    LetterCode{'V', 85, 150, 80},
};

constexpr std::string_view kSpeedSymbols = "BCDEFGJKLMNPQRSTUHVWYZ";

bool isDigit(char c) {
  return c >= '0' && c <= '9';
}
bool isLetter(char c) {
  return c >= 'A' && c <= 'Z';
}
bool isBlank(char c) {
  return c == ' ' || c == '\t';
}

/// Blanks that text pasted from a page brings along.
constexpr std::array<std::string_view, 4> kBlanks{" ", "\t", "\u00a0", "\u202f"};

std::string_view trimmed(std::string_view text) {
  bool again = true;
  while (again) {
    again = false;
    for (const std::string_view blank : kBlanks) {
      if (text.starts_with(blank)) {
        text.remove_prefix(blank.size());
        again = true;
      }
      if (text.ends_with(blank)) {
        text.remove_suffix(blank.size());
        again = true;
      }
    }
  }
  return text;
}

void replaceAll(std::string& text, std::string_view from, std::string_view to) {
  for (auto at = text.find(from); at != std::string::npos; at = text.find(from, at + to.size()))
    text.replace(at, from.size(), to);
}

/// Capitals, plain dashes and a decimal point, so that the reader sees one alphabet.
std::string inPlainLetters(std::string_view text) {
  std::string plain(trimmed(text));
  for (const char* dash : {"\u2010", "\u2011", "\u2012", "\u2013", "\u2014", "\u2212"})
    replaceAll(plain, dash, "-");
  replaceAll(plain, "\u00d7", "X");
  replaceAll(plain, "\u00a0", " ");
  replaceAll(plain, "\u202f", " ");
  for (char& c : plain) {
    if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
    if (c == ',') c = '.';
    if (c == '\t') c = ' ';
  }
  return plain;
}

}  // namespace

/// Reads one size from left to right; every step takes what it recognises off the front of `rest_`.
class TyreReader {
 public:
  explicit TyreReader(std::string_view typed) : plain_(inPlainLetters(typed)), rest_(plain_) {
    size_.text_ = std::string(trimmed(typed));
  }

  Result<TyreSize> read() {
    for (const auto form : {&TyreReader::alphanumeric, &TyreReader::inches, &TyreReader::metric}) {
      rest_ = plain_;
      if ((this->*form)()) return size_;
      if (problem_) return *problem_;
    }
    return Problem{.kind = Problem::Kind::BadTyreSize, .given = shortText(size_.text_)};
  }

 private:
  /// MT90B16: M, the letter of the width, the aspect, the construction, the rim.
  bool alphanumeric() {
    if (rest_.size() < 2 || rest_[0] != 'M' || !isLetter(rest_[1])) return false;
    const char letter = rest_[1];
    rest_.remove_prefix(2);
    blanks();
    const auto aspect = number();
    if (!aspect || aspect->decimals || !construction()) return false;
    const auto rim = rimAndService();
    if (!rim) return false;
    const auto sameLetter = std::find_if(kLetterCodes.begin(), kLetterCodes.end(),
                                         [&](const LetterCode& c) { return c.letter == letter; });
    if (sameLetter == kLetterCodes.end()) return false;
    const auto listed = std::find_if(sameLetter, kLetterCodes.end(), [&](const LetterCode& c) {
      return c.letter == letter && c.aspectPercent == aspect->value;
    });
    // A width letter with an aspect that the charts leave out: the aspect as it is printed.
    const double metricAspect = listed != kLetterCodes.end() ? listed->metricAspectPercent : aspect->value;
    return check("aspect", aspect->value, limits::kTyreAspectPercent) &&
           accept(TyreSize::Kind::Alphanumeric, sameLetter->widthMm,
                  sameLetter->widthMm * metricAspect / 100.0, *rim);
  }

  /// 3.00-21, 4.25/85-18, 2 3/4-17: a section in inches, told from a metric width by its decimals or
  /// fraction.
  bool inches() {
    const auto section = sectionInches();
    if (!section) return false;
    int aspect = 0;
    if (take('/')) {
      const auto printed = number();
      if (!printed || printed->decimals) return false;
      if (!check("aspect", printed->value, limits::kTyreAspectPercent)) return false;
      aspect = static_cast<int>(printed->value);
    }
    if (!construction()) return false;
    const auto rim = rimAndService();
    if (!rim || !check("width", *section, limits::kCodeSectionInches)) return false;
    const auto listed = std::find_if(kCodeSections.begin(), kCodeSections.end(), [&](const CodeSection& c) {
      return std::abs(c.inches - *section) < 1e-9 && c.aspectPercent == aspect;
    });
    const double plainWidthMm = *section * 25.4;
    const double widthMm = listed != kCodeSections.end() ? listed->widthMm : plainWidthMm;
    const double heightMm = listed != kCodeSections.end()
                                ? listed->twiceHeightMm / 2.0
                                : plainWidthMm * (aspect > 0 ? aspect / 100.0 : 1.0);
    return accept(TyreSize::Kind::Code, widthMm, heightMm, *rim);
  }

  bool metric() {
    const auto width = number();
    if (!width || width->decimals) return false;
    blanks();
    const bool divided = take('/') || take('-');
    blanks();
    if (!divided && !isBlank(before())) return false;
    const auto aspect = number();
    if (!aspect || aspect->decimals || !construction()) return false;
    const auto rim = rimAndService();
    if (!rim || !check("width", width->value, limits::kTyreWidthMm)) return false;
    if (limits::kRacingDiameterMm.contains(aspect->value)) {
      const double heightMm = (aspect->value - 25.4 * *rim) / 2.0;
      return check("rim", *rim, limits::kRimInches) &&
             check("aspect", 100.0 * heightMm / width->value, limits::kTyreAspectPercent) &&
             accept(TyreSize::Kind::RacingMetric, width->value, heightMm, *rim);
    }
    return check("aspect", aspect->value, limits::kTyreAspectPercent) &&
           accept(TyreSize::Kind::Metric, width->value, width->value * aspect->value / 100.0, *rim);
  }

  bool accept(TyreSize::Kind kind, double widthMm, double heightMm, double rim) {
    if (!check("rim", rim, limits::kRimInches)) return false;
    size_.kind_ = kind;
    size_.widthM_ = units::metresFromMillimetres(widthMm);
    size_.sectionHeightM_ = units::metresFromMillimetres(heightMm);
    size_.rimInches_ = rim;
    return true;
  }

  bool check(const char* part, double value, const Limit& limit) {
    if (limit.contains(value)) return true;
    problem_ = Problem{.kind = Problem::Kind::ImpossibleTyre,
                       .given = shortText(size_.text_),
                       .low = limit.low,
                       .high = limit.high,
                       .unit = limit.unit,
                       .part = part};
    return false;
  }

  struct Number {
    double value;
    bool decimals;
  };

  /// Up to three digits and, if any, one or two decimals: no tyre has longer numbers, so "5517" is not one.
  std::optional<Number> number() {
    std::size_t length = 0;
    while (length < rest_.size() && isDigit(rest_[length])) ++length;
    if (length == 0 || length > 3) return std::nullopt;
    bool decimals = false;
    if (length + 1 < rest_.size() && rest_[length] == '.' && isDigit(rest_[length + 1])) {
      decimals = true;
      std::size_t end = length + 1;
      while (end < rest_.size() && isDigit(rest_[end])) ++end;
      if (end - length > 3) return std::nullopt;
      length = end;
    }
    const auto value = numberFromText(rest_.substr(0, length));
    if (!value) return std::nullopt;
    skip(length);
    return Number{*value, decimals};
  }

  std::optional<double> sectionInches() {
    const auto whole = number();
    if (!whole) return std::nullopt;
    if (whole->decimals) return whole->value;
    // A fraction in quarters, as on moped tyres: "2 3/4".
    if (rest_.size() >= 4 && isBlank(rest_[0]) && isDigit(rest_[1]) && rest_[2] == '/' && isDigit(rest_[3]) &&
        (rest_.size() == 4 || !isDigit(rest_[4])) && rest_[3] != '0') {
      const double fraction = static_cast<double>(rest_[1] - '0') / static_cast<double>(rest_[3] - '0');
      if (fraction >= 1.0) return std::nullopt;
      skip(4);
      return whole->value + fraction;
    }
    return std::nullopt;
  }

  /// What stands between aspect and rim: a dash, a blank, or letters such as R, ZR, HB, H. Something must.
  bool construction() {
    const std::size_t before = rest_.size();
    blanks();
    std::string letters;
    while (!rest_.empty() && isLetter(rest_.front()) && letters.size() < 3) {
      letters += rest_.front();
      skip(1);
    }
    blanks();
    const bool dash = take('-') || (letters.empty() && take('/'));
    blanks();
    if (rest_.size() == before) return false;
    const bool fine = letters.empty() || letters == "X" ||
                      (letters.size() == 1 && kSpeedSymbols.find(letters[0]) != std::string_view::npos) ||
                      (letters.size() == 2 && kSpeedSymbols.find(letters[0]) != std::string_view::npos &&
                       (letters[1] == 'R' || letters[1] == 'B' || letters[1] == 'D'));
    size_.construction_ = letters.empty() || letters == "X" ? "-" : letters + (dash ? "-" : "");
    return fine;
  }

  /// The rim, and then only what a sidewall prints behind it. Nothing if something else is left over.
  std::optional<double> rimAndService() {
    const auto rim = number();
    if (!rim) return std::nullopt;
    if (!rest_.empty() && rest_.front() == '.') return std::nullopt;
    while (serviceMark()) {
    }
    if (!rest_.empty()) return std::nullopt;
    return rim->value;
  }

  bool serviceMark() {
    blanks();
    for (const std::string_view mark :
         {"M/C", "MC", "TL", "TT", "NHS", "REINF.", "REINF", "RF", "XL", "M+S", "M&S"}) {
      if (rest_.substr(0, mark.size()) != mark) continue;
      if (rest_.size() > mark.size() && isLetter(rest_[mark.size()])) continue;
      skip(mark.size());
      return true;
    }
    return loadAndSpeed();
  }

  /// (73W), 73W, 73 W, (W), 4PR.
  bool loadAndSpeed() {
    const std::string_view start = rest_;
    const bool bracket = take('(');
    blanks();
    std::size_t digits = 0;
    while (digits < 3 && !rest_.empty() && isDigit(rest_.front())) {
      skip(1);
      ++digits;
    }
    blanks();
    bool good = false;
    if (digits > 0 && rest_.substr(0, 2) == "PR") {
      skip(2);
      good = true;
    } else if ((digits >= 2 || bracket) && !rest_.empty() &&
               kSpeedSymbols.find(rest_.front()) != std::string_view::npos) {
      skip(1);
      good = true;
    }
    blanks();
    if (bracket) good = good && take(')');
    if (good && !rest_.empty() && (isLetter(rest_.front()) || isDigit(rest_.front())) && !isBlank(before()) &&
        !bracket)
      good = false;
    if (!good) rest_ = start;
    return good;
  }

  bool take(char c) {
    if (rest_.empty() || rest_.front() != c) return false;
    skip(1);
    return true;
  }
  void skip(std::size_t n) { rest_.remove_prefix(n); }
  void blanks() {
    while (!rest_.empty() && isBlank(rest_.front())) skip(1);
  }
  char before() const {
    const std::size_t at = plain_.size() - rest_.size();
    return at > 0 ? plain_[at - 1] : '\0';
  }

  std::string plain_;
  std::string_view rest_;
  TyreSize size_;
  std::optional<Problem> problem_;
};

Result<TyreSize> TyreSize::parse(std::string_view text) {
  constexpr std::size_t kLongestSize = 100;  // bytes; a sidewall prints far less
  if (text.size() > kLongestSize)
    return Problem{.kind = Problem::Kind::BadTyreSize, .given = shortText(text)};
  return TyreReader(text).read();
}

Result<TyreSize> TyreSize::metric(int widthMm, int aspectPercent, double rimInches,
                                  std::string_view construction) {
  return parse(std::to_string(widthMm) + "/" + std::to_string(aspectPercent) + std::string(construction) +
               numberText(rimInches));
}

double TyreSize::diameterM() const {
  return units::metresFromInches(rimInches_) + 2.0 * sectionHeightM_;
}

bool TyreSize::sameTyre(const TyreSize& other) const {
  return widthM_ == other.widthM_ && sectionHeightM_ == other.sectionHeightM_ &&
         rimInches_ == other.rimInches_;
}

}  // namespace layshaft
