// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "core/bike/profile.h"
#include "core/bike/words.h"
#include "ui/editors/field_form.h"

/// How fields of a form reach into the blocks of a profile.
namespace layshaft::ui {

/// Reaches a number inside a block of the profile that may not be there yet; setting makes the block.
template <class Block, class Member>
NumberField blockNumber(const QString& label, const QString& explanation, FileUnit unit, const Limit& limit,
                        int decimals, std::optional<Block>& (*block)(Profile&),
                        std::optional<Member> Block::*member, const QString& whenMissing = {}) {
  return {.label = label,
          .explanation = explanation,
          .unit = unit,
          .limit = limit,
          .decimals = decimals,
          .whenMissing = whenMissing,
          .get = [block, member](const Profile& p) -> std::optional<double> {
            Profile copy = p;  // reaching a block may make it
            const auto& b = block(copy);
            if (!b || !((*b).*member)) return std::nullopt;
            return static_cast<double>(*((*b).*member));
          },
          .set =
              [block, member](Profile& p, std::optional<double> x) {
                auto& b = block(p);
                if (!b) b.emplace();
                if (x)
                  (*b).*member = static_cast<Member>(*x);
                else
                  ((*b).*member).reset();
              }};
}

template <class Enum, std::size_t N, class Get>
ChoiceField choice(const QString& label, const QString& explanation, const Words<Enum, N>& words,
                   const QStringList& names, Get member) {
  return {.label = label,
          .explanation = explanation,
          .choices = names,
          .get =
              [words, member](const Profile& p) {
                Profile copy = p;  // reaching a block may make it
                const std::optional<Enum> value = member(copy);
                for (std::size_t i = 0; i < N; ++i)
                  if (value == words[i].first) return static_cast<int>(i) + 1;
                return 0;
              },
          .set =
              [words, member](Profile& p, int index) {
                std::optional<Enum>& value = member(p);
                if (index > 0)
                  value = words[static_cast<std::size_t>(index - 1)].first;
                else
                  value.reset();
              }};
}

inline std::optional<Chassis>& chassis(Profile& p) {
  return p.bike.chassis;
}
inline std::optional<ChainRun>& chainRun(Profile& p) {
  return p.bike.chainRun;
}
inline std::optional<Speedometer>& speedometer(Profile& p) {
  return p.bike.speedometer;
}
inline std::optional<Ride>& ride(Profile& p) {
  return p.ride;
}
inline std::optional<Air>& curveAir(Profile& p) {
  return p.bike.engine.curveAir;
}
inline std::optional<Drive>& drive(Profile& p) {
  if (!p.ride) p.ride.emplace();
  return p.ride->drive;
}

inline std::optional<RollOn>& rollOn(Profile& p) {
  if (!p.ride) p.ride.emplace();
  return p.ride->rollOn;
}

template <class Block>
Block& made(std::optional<Block>& block) {
  if (!block) block.emplace();
  return *block;
}

}  // namespace layshaft::ui
