// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/contrast.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "tests/ui/palettes.h"
#include "tests/ui/support.h"
#include "ui/charts/palette.h"

namespace layshaft::test {
namespace {

using ui::ChartPalette;
using ui::contrast;

/// The greys that are known as the last to pass and the first to fail on white, and pure colours: published
/// beside WCAG 2.1 (from memory).
TEST(Contrast, IsThePublishedOneOfKnownPairs) {
  EXPECT_DOUBLE_EQ(contrast(Qt::black, Qt::white), 21.0);
  EXPECT_NEAR(contrast(QColor(0x76, 0x76, 0x76), Qt::white), 4.54, 0.005);
  EXPECT_NEAR(contrast(QColor(0x77, 0x77, 0x77), Qt::white), 4.48, 0.005);
  EXPECT_NEAR(contrast(QColor(0x94, 0x94, 0x94), Qt::white), 3.03, 0.005);
  EXPECT_NEAR(contrast(Qt::red, Qt::white), 4.00, 0.005);
  EXPECT_NEAR(contrast(Qt::blue, Qt::white), 8.59, 0.005);
  EXPECT_NEAR(contrast(Qt::yellow, Qt::black), 19.56, 0.005);
}

TEST(Contrast, AColourThatStandsOutStaysAndAnotherMovesOnlyAsFarAsNeeded) {
  const QColor blue(0x00, 0x72, 0xb2), yellowish(0xe6, 0x9f, 0x00);
  EXPECT_EQ(ui::standingOut(blue, {Qt::white}, ui::kTextContrast), blue);
  const QColor darker = ui::standingOut(yellowish, {Qt::white}, ui::kLineContrast);
  EXPECT_GE(contrast(darker, Qt::white), 3.0);
  EXPECT_LT(contrast(darker, Qt::white), 3.2);
  EXPECT_NEAR(darker.hueF(), yellowish.hueF(), 0.01F);
}

TEST(Contrast, WhereNoColourStandsOutOfAllGroundsTheNearestIsTaken) {
  const QColor colour = ui::standingOut(Qt::gray, {Qt::white, QColor(0x23, 0x26, 0x29)}, ui::kTextContrast);
  EXPECT_GT(contrast(colour, Qt::white), 3.0);
  EXPECT_GT(contrast(colour, QColor(0x23, 0x26, 0x29)), 3.0);
}

TEST(Contrast, EveryColourOfAChartSuitsThePalettesOwnGround) {
  for (const auto& [name, palette] : palettes())
    for (const auto role : {QPalette::Base, QPalette::Window}) {
      SCOPED_TRACE(name);
      const ChartPalette colours(palette, role);
      const QColor ground = palette.color(role);
      EXPECT_EQ(colours.background, ground);
      for (const QColor& colour : {colours.text, colours.mutedText, colours.stock, colours.proposed,
                                   colours.warning, colours.marker})
        for (const QColor& under : {ground, colours.panel})
          EXPECT_GE(contrast(colour, under), 4.5) << colour.name().toStdString();
      for (const QColor& colour : {colours.line, colours.panelBorder, colours.focus})
        EXPECT_GE(contrast(colour, ground), 3.0) << colour.name().toStdString();
      for (int pin = 0; pin < 4; ++pin) {
        EXPECT_GE(contrast(colours.pinColour(pin), ground), 3.0) << pin;
        EXPECT_GE(contrast(colours.pinColour(pin), palette.color(QPalette::Window)), 3.0) << pin;
        EXPECT_GE(contrast(colours.words(colours.pinColour(pin)), colours.panel), 4.5) << pin;
      }
      EXPECT_GT(contrast(colours.grid, ground), 1.15) << "faint, and still seen";
    }
}

TEST(Contrast, AReadablePaletteHasReadableTextOnEveryGround) {
  for (const auto& [name, palette] : palettes()) {
    SCOPED_TRACE(name);
    const QPalette readable = ui::readable(palette);
    EXPECT_EQ(ui::readable(readable), readable) << "once is enough";
    for (const auto group : {QPalette::Active, QPalette::Inactive, QPalette::Disabled}) {
      const auto between = [&](QPalette::ColorRole text, QPalette::ColorRole ground) {
        return contrast(readable.color(group, text), readable.color(group, ground));
      };
      EXPECT_GE(between(QPalette::WindowText, QPalette::Window), 4.5);
      EXPECT_GE(between(QPalette::Text, QPalette::Base), 4.5);
      EXPECT_GE(between(QPalette::Text, QPalette::AlternateBase), 4.5);
      EXPECT_GE(between(QPalette::ButtonText, QPalette::Button), 4.5);
      EXPECT_GE(between(QPalette::HighlightedText, QPalette::Highlight), 4.5);
      EXPECT_GE(between(QPalette::PlaceholderText, QPalette::Window), 4.5);
      EXPECT_GE(between(QPalette::PlaceholderText, QPalette::Base), 4.5);
      EXPECT_GE(between(QPalette::Link, QPalette::Window), 4.5);
    }
    EXPECT_NE(readable.color(QPalette::PlaceholderText), readable.color(QPalette::WindowText))
        << "it stands back";
  }
}

using Triple = std::array<double, 3>;

/// How it looks without the green-sensitive cones, in linear RGB: Machado, Oliveira and Fernandes 2009,
/// deuteranopia, severity 1.0 (from memory).
constexpr std::array<Triple, 3> kDeuteranopia{Triple{0.367322, 0.860646, -0.227968},
                                              Triple{0.280085, 0.672501, 0.047413},
                                              Triple{-0.011820, 0.042940, 0.968881}};

/// CIE L*a*b* under D65 of linear sRGB: IEC 61966-2-1 and CIE 1976 (from memory).
Triple labOf(const Triple& rgb) {
  const auto f = [](double t) {
    return t > 216.0 / 24389.0 ? std::cbrt(t) : (24389.0 / 27.0 * t + 16.0) / 116.0;
  };
  const double x = f((0.4124564 * rgb[0] + 0.3575761 * rgb[1] + 0.1804375 * rgb[2]) / 0.95047),
               y = f(0.2126729 * rgb[0] + 0.7151522 * rgb[1] + 0.0721750 * rgb[2]),
               z = f((0.0193339 * rgb[0] + 0.1191920 * rgb[1] + 0.9503041 * rgb[2]) / 1.08883);
  return {116.0 * y - 16.0, 500.0 * (x - y), 200.0 * (y - z)};
}

/// Distance of two colours as seen without green, CIE 1976.
double seenApart(const QColor& a, const QColor& b) {
  const auto seen = [](const QColor& colour) {
    const auto linear = [](double c) {
      return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
    };
    const Triple rgb{linear(colour.redF()), linear(colour.greenF()), linear(colour.blueF())};
    Triple result{};
    for (std::size_t i = 0; i < 3; ++i)
      for (std::size_t j = 0; j < 3; ++j) result[i] += kDeuteranopia[i][j] * rgb[j];
    for (double& channel : result) channel = std::clamp(channel, 0.0, 1.0);
    return labOf(result);
  };
  const Triple one = seen(a), other = seen(b);
  return std::hypot(one[0] - other[0], one[1] - other[1], one[2] - other[2]);
}

/// Whether nobody takes one dash for the other: another number of marks, or marks twice as long. Common
/// practice.
bool clearlyOther(const QPen& a, const QPen& b) {
  const auto marks = [](const QPen& pen) {
    return pen.style() == Qt::SolidLine ? 0 : pen.dashPattern().size() / 2;
  };
  if (marks(a) != marks(b)) return true;
  if (marks(a) == 0) return false;
  const auto longest = [](const QPen& pen) { return pen.dashPattern().first(); };
  return std::max(longest(a), longest(b)) >= 2.0 * std::min(longest(a), longest(b));
}

TEST(ColourBlindness, TheMatrixLeavesGreysAsTheyAreAndConfusesWhatItShould) {
  for (const Triple& row : kDeuteranopia) EXPECT_NEAR(row[0] + row[1] + row[2], 1.0, 1e-5);
  EXPECT_NEAR(seenApart(Qt::black, Qt::white), 100.0, 0.01);
  const QColor red(0xb0, 0x40, 0x40), green(0x78, 0x78, 0x30);
  EXPECT_LT(seenApart(red, green), seenApart(QColor(0x40, 0x40, 0xb0), green) / 2);
}

TEST(ColourBlindness, SetupsAreToldApartByColourOrDash) {
  for (const auto& [name, palette] : palettes()) {
    const ChartPalette colours(palette);
    std::vector<QPen> pens{colours.stockPen(), colours.proposedPen()};
    for (int pin = 0; pin < 4; ++pin) pens.push_back(colours.pinPen(pin));
    for (std::size_t i = 0; i < pens.size(); ++i)
      for (std::size_t j = 0; j < i; ++j)
        EXPECT_TRUE(seenApart(pens[i].color(), pens[j].color()) >= 15.0 || clearlyOther(pens[i], pens[j]))
            << name << ": " << i << " and " << j << ", " << seenApart(pens[i].color(), pens[j].color());
    for (std::size_t pin = 2; pin < pens.size(); ++pin)
      EXPECT_TRUE(clearlyOther(pens[pin], pens.front())) << "also in grey, on paper: pin " << pin - 1;
  }
}

}  // namespace
}  // namespace layshaft::test
