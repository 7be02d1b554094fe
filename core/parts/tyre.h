// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/problem.h"

namespace layshaft {

// clang-format off
/// A motorcycle tyre size as printed on the sidewall. Invariant: a size that can be real.
///
/// Understood, in any case and with or without blanks, load index, speed symbol, M/C, TL or TT behind it:
///   metric          180/55ZR17, 180/55-17, 120/80 - 19, 130/90B16   width mm / aspect %, rim inches
///   racing metric   200/660R17                                      width mm / overall diameter mm, rim inches
///   code (inch)     3.00-21, 4.00 H 18, 4.25/85-18, 2 3/4-17        section inches [/ aspect %], rim inches
///   alphanumeric    MT90B16, MU85 HB16                              code letters, aspect %, rim inches
///
/// Nominal overall diameter, new and unloaded: metric sizes D = 25.4·rim + 2·W·A/100 (the form of UN R75 6.1.2, as
/// restated by tyre makers); code sizes by the section height that UN R75 Annex 5 lists for the section (from memory
/// of the standard), 100 % aspect where it lists none; alphanumeric sizes by their metric equivalent (trade charts).
/// Real tyres of one marked size differ by a few per cent between makers.
// clang-format on
class TyreSize {
 public:
  enum class Kind { Metric, RacingMetric, Code, Alphanumeric };

  /// Reads a size as people write it. Problem: BadTyreSize if it does not read as a size, ImpossibleTyre if
  /// it does but width, aspect or rim cannot be.
  static Result<TyreSize> parse(std::string_view text);

  /// The metric size with these numbers; `construction` is what stands before the rim, as in "ZR" or "-".
  static Result<TyreSize> metric(int widthMm, int aspectPercent, double rimInches,
                                 std::string_view construction = "-");

  const std::string& text() const { return text_; }  ///< as it was typed, without surrounding blanks
  Kind kind() const { return kind_; }
  const std::string& construction() const { return construction_; }  ///< "ZR", "B", "-" …
  double widthM() const { return widthM_; }                          ///< nominal section width
  double sectionHeightM() const { return sectionHeightM_; }
  double rimInches() const { return rimInches_; }
  double aspectPercent() const { return 100.0 * sectionHeightM_ / widthM_; }
  double diameterM() const;  ///< nominal overall diameter

  bool operator==(const TyreSize& other) const { return text_ == other.text_; }

  /// The same nominal tyre, however it was written.
  bool sameTyre(const TyreSize& other) const;

 private:
  TyreSize() = default;
  friend class TyreReader;

  std::string text_;
  std::string construction_;
  Kind kind_ = Kind::Metric;
  double widthM_ = 0.0;
  double sectionHeightM_ = 0.0;
  double rimInches_ = 0.0;
};

}  // namespace layshaft
