// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "core/study/asked.h"
#include "core/study/chain_run.h"
#include "core/study/fitted.h"
#include "core/study/gear_limits.h"
#include "core/study/gearing.h"
#include "core/study/run.h"
#include "core/study/top_speed.h"

namespace layshaft {

/// The figures of one setup that plan and ladder show alike.
struct SetupFigures {
  Fitted fitted;                           ///< what it changes about the bike, against stock
  std::shared_ptr<const RoadModel> model;  ///< null without an engine curve
  Gearing gearing;
  std::vector<GearPull> pull;                    ///< empty without an engine curve
  std::vector<std::optional<GearLimit>> limits;  ///< a gear each; empty without an engine curve
  std::optional<TopSpeed> topSpeed;
  RunFigures run;
  std::optional<ChainRunFigures> chainRun;
};

/// What a ladder may do without.
struct FiguresWanted {
  bool rollOns = true, limits = true;
};

/// Total: what there is no data for is left empty.
SetupFigures setupFigures(const Circumstances& given, const Asked& asked, const Setup& stock,
                          const Setup& setup, FiguresWanted wanted = {});

}  // namespace layshaft
