// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/contrast.h"

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

}  // namespace
}  // namespace layshaft::test
