// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <QStringList>
#include <optional>
#include <vector>

#include "core/study/gearbox_search.h"

/// What the gears on hand make, in words and as a table for other programs.
namespace layshaft::ui {

/// "2nd 29/16, 5th 24/21": the gears that are put in, their teeth as they are typed; what it is without any.
QString gearsText(const GearsTaken& taken);

/// The quickest gearbox, as far as they are tried.
struct QuickestGearbox {
  GearsTaken taken;
  GearboxRow row;
  std::optional<double> bandS;        ///< once it is known
  std::optional<GearboxRow> without;  ///< the same search with no other gears
  bool all = true;                    ///< every gearbox was tried
};

/// How many gearboxes there are, and what the quickest gains on stock round the track.
QString gearboxesWords(const GearboxChoices& choices, const std::string& track,
                       const std::optional<QuickestGearbox>& quickest);

/// Comma-separated values. `bands` has one for each row, none where it was not worked out.
QString gearboxesCsv(const GearboxChoices& choices, const std::vector<GearboxRow>& rows,
                     const std::vector<std::optional<double>>& bands);

}  // namespace layshaft::ui
