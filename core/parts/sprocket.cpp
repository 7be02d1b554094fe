// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/parts/sprocket.h"

#include <string>

#include "core/limits.h"

namespace layshaft {
namespace {

std::optional<Problem> outside(int teeth, const Limit& limit) {
  if (limit.contains(teeth)) return std::nullopt;
  return Problem{.kind = Problem::Kind::OutOfRange,
                 .given = std::to_string(teeth),
                 .low = limit.low,
                 .high = limit.high,
                 .unit = limit.unit};
}

}  // namespace

Result<Teeth> Teeth::front(int teeth) {
  if (auto problem = outside(teeth, limits::kFrontTeeth)) return *problem;
  return Teeth(teeth);
}

Result<Teeth> Teeth::rear(int teeth) {
  if (auto problem = outside(teeth, limits::kRearTeeth)) return *problem;
  return Teeth(teeth);
}

}  // namespace layshaft
