// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/contrast.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace layshaft::ui {
namespace {

constexpr int kSteps = 64;  // fine enough that no step is seen

constexpr std::size_t kLevels = 256;

/// What each level of a channel gives: WCAG 2.1, with its own threshold of 0.03928. Kept, as a colour is
/// sought in many steps.
std::array<double, kLevels> linearLevels() {
  std::array<double, kLevels> levels{};
  for (std::size_t i = 0; i < kLevels; ++i) {
    const double channel = static_cast<double>(i) / (kLevels - 1);
    levels[i] = channel <= 0.03928 ? channel / 12.92 : std::pow((channel + 0.055) / 1.055, 2.4);
  }
  return levels;
}

/// Relative luminance, 0 to 1: WCAG 2.1.
double luminance(const QColor& colour) {
  static const std::array<double, kLevels> kLinear = linearLevels();
  const auto linear = [](int channel) { return kLinear[static_cast<std::size_t>(channel)]; };
  return 0.2126 * linear(colour.red()) + 0.7152 * linear(colour.green()) + 0.0722 * linear(colour.blue());
}

double leastContrast(const QColor& colour, const std::vector<QColor>& grounds) {
  double least = 21.0;
  for (const QColor& ground : grounds) least = std::min(least, contrast(colour, ground));
  return least;
}

/// How light a style may paint a button of that colour at most; common practice, a gradient upwards.
QColor lightestOf(const QColor& button) {
  constexpr int kPercent = 130;
  return button.lighter(kPercent);
}

}  // namespace

double contrast(const QColor& a, const QColor& b) {
  constexpr double kFlare = 0.05;
  const auto [low, high] = std::minmax({luminance(a), luminance(b)});
  return (high + kFlare) / (low + kFlare);
}

QColor mixed(const QColor& from, const QColor& to, double share) {
  const double kept = (1.0 - share) * from.alphaF();
  const auto channel = [&](int a, int b) {
    return static_cast<int>(std::lround(a * kept + b * (1.0 - kept)));
  };
  return {channel(from.red(), to.red()), channel(from.green(), to.green()), channel(from.blue(), to.blue())};
}

QColor standingOut(const QColor& colour, const std::vector<QColor>& grounds, double least) {
  const QColor start = grounds.empty() ? colour : mixed(colour, grounds.front(), 0.0);
  QColor best = start;
  double bestContrast = 0.0;
  if (leastContrast(start, grounds) >= least) return start;
  for (int step = 1; step <= kSteps; ++step)
    for (const QColor& end : {QColor(Qt::black), QColor(Qt::white)}) {
      const QColor candidate = mixed(start, end, static_cast<double>(step) / kSteps);
      const double reached = leastContrast(candidate, grounds);
      if (reached >= least) return candidate;
      if (reached <= bestContrast) continue;
      best = candidate;
      bestContrast = reached;
    }
  return best;
}

QColor mutedText(const QColor& text, const std::vector<QColor>& grounds) {
  constexpr double kMostGround = 0.4;  // more would be hard to read even where the contrast allows it
  for (int step = 0; step < kSteps; ++step) {
    const double share = kMostGround * (1.0 - static_cast<double>(step) / kSteps);
    const QColor candidate = mixed(text, grounds.front(), share);
    if (leastContrast(candidate, grounds) >= kTextContrast) return candidate;
  }
  return standingOut(text, grounds, kTextContrast);
}

QColor focusColour(const QPalette& palette, QPalette::ColorRole ground) {
  return standingOut(palette.color(QPalette::Highlight), {palette.color(ground)}, kLineContrast);
}

QColor markedGround(const QPalette& palette) {
  constexpr double kTint = 0.15;
  return mixed(palette.color(QPalette::Window), palette.color(QPalette::Highlight), kTint);
}

QPalette readable(QPalette palette) {
  for (const auto group : {QPalette::Active, QPalette::Inactive, QPalette::Disabled}) {
    const auto colour = [&](QPalette::ColorRole role) { return palette.color(group, role); };
    const QColor window = colour(QPalette::Window), base = colour(QPalette::Base),
                 alternate = colour(QPalette::AlternateBase), button = colour(QPalette::Button);
    const auto mend = [&](QPalette::ColorRole role, const std::vector<QColor>& grounds) {
      const QColor now = colour(role), better = standingOut(now, grounds, kTextContrast);
      if (better != now) palette.setColor(group, role, better);
    };
    palette.setCurrentColorGroup(group);
    const QColor marked = markedGround(palette);
    // What is disabled is muted, from the colours of what is not.
    if (group == QPalette::Disabled)
      for (const auto& [role, ground] :
           {std::pair{QPalette::WindowText, window}, {QPalette::Text, base}, {QPalette::ButtonText, button}})
        palette.setColor(group, role, mixed(palette.color(QPalette::Active, role), ground, 0.4));
    mend(QPalette::WindowText, {window, marked});
    mend(QPalette::Text, {base, alternate});
    mend(QPalette::ButtonText, {button, lightestOf(button)});
    mend(QPalette::ToolTipText, {colour(QPalette::ToolTipBase)});
    mend(QPalette::HighlightedText, {colour(QPalette::Highlight)});
    mend(QPalette::Link, {window, base});
    mend(QPalette::LinkVisited, {window, base});
    palette.setColor(
        group, QPalette::PlaceholderText,
        mutedText(palette.color(QPalette::Active, QPalette::WindowText), {window, base, alternate, marked}));
  }
  palette.setCurrentColorGroup(QPalette::Active);
  return palette;
}

}  // namespace layshaft::ui
