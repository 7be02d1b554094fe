// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/document/gearbox_study.h"

#include <algorithm>

namespace layshaft::ui {
namespace {

constexpr std::size_t kLapsOfPart = 64;  // a tenth of a second at most: results come steadily

}  // namespace

void GearboxStudy::prepare(const GearboxInput& input) {
  start({[this, input](const Stopped&) -> Delivery {
    const PreparedGearboxes ready{
        .search = std::make_shared<const GearboxSearch>(input.ladder, *input.ladder.track, input.onHand),
        .pairs = pairsThatFit(input.ladder, usualRange(input.ladder))};
    return [this, ready] { emit prepared(ready); };
  }});
}

void GearboxStudy::attempt(const std::shared_ptr<const GearboxSearch>& search,
                           const std::vector<std::size_t>& gearboxes, const std::vector<PairTeeth>& pairs) {
  const std::size_t each = std::max<std::size_t>(1, kLapsOfPart / std::max<std::size_t>(1, pairs.size()));
  std::vector<Part> parts;
  for (std::size_t from = 0; from < gearboxes.size(); from += each) {
    const auto begin = gearboxes.begin() + static_cast<std::ptrdiff_t>(from);
    const std::vector<std::size_t> some(
        begin, begin + static_cast<std::ptrdiff_t>(std::min(each, gearboxes.size() - from)));
    parts.push_back([this, search, some, pairs](const Stopped& stopped) -> Delivery {
      std::vector<TriedGearbox> ready;
      for (const std::size_t gearbox : some) ready.push_back({gearbox, search->row(gearbox, pairs, stopped)});
      return [this, ready] { emit tried(ready); };
    });
  }
  start(parts);
}

void GearboxStudy::askBands(const std::shared_ptr<const GearboxSearch>& search,
                            const std::vector<GearboxRow>& rows) {
  std::vector<Part> parts;
  for (const GearboxRow& row : rows)
    parts.push_back([this, search, row](const Stopped&) -> Delivery {
      return [this, row, bandS = search->bandS(row)] { emit bandReady(row, bandS); };
    });
  start(parts);
}

}  // namespace layshaft::ui
