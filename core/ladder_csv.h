// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "core/study/ladder.h"

namespace layshaft {

/// The ladder as comma-separated values (RFC 4180 with plain line feeds): a row per pair in the order given,
/// units in the titles, full precision, a point in every number, empty where the profile lacks the data. An
/// aim's margin is in the aim's own measure (`AimOutcome`), which its title names for those of `asked`; of
/// lengths that fit, several in one field have blanks between.
std::string ladderCsv(const std::vector<LadderRow>& rows, const std::vector<Aim>& asked = {});

}  // namespace layshaft
