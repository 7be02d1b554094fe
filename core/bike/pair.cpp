// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/bike/pair.h"

#include <algorithm>

namespace layshaft {
namespace {

const std::vector<SpareSprocket> kNoSpares;

/// What a change says of a sprocket once its teeth have become others.
void exchange(std::optional<SprocketDetails>& details, const SpareSprocket* spare, bool asStock) {
  Extras kept = details ? details->extras : Extras{};
  if (asStock) {
    details.reset();
    if (!kept.empty())
      details = SprocketDetails{.size = {}, .material = {}, .massKg = {}, .extras = std::move(kept)};
    return;
  }
  forgetSprocketMeasurements(details);
  if (!spare || !(spare->size || spare->material || spare->massKg)) return;
  details = SprocketDetails{
      .size = spare->size, .material = spare->material, .massKg = spare->massKg, .extras = std::move(kept)};
}

}  // namespace

const SpareSprocket* spareSprocket(const std::vector<SpareSprocket>& spares, int teeth, const Setup& setup) {
  const auto found = std::find_if(spares.begin(), spares.end(), [&](const SpareSprocket& spare) {
    const bool runs = !spare.size || !setup.options.chainSize || *spare.size == *setup.options.chainSize;
    return spare.teeth == teeth && runs && spare.state != SpareState::Worn;
  });
  return found == spares.end() ? nullptr : &*found;
}

SetupChange withPair(SetupChange change, const Setup& stock, const std::vector<SpareSprocket>& fronts,
                     const std::vector<SpareSprocket>& rears, Teeth front, Teeth rear) {
  const Setup before = applied(change, stock);
  if (front != before.frontTeeth)
    exchange(change.options.frontSprocket, spareSprocket(fronts, front.count(), before),
             front == stock.frontTeeth);
  if (rear != before.rearTeeth)
    exchange(change.options.rearSprocket, spareSprocket(rears, rear.count(), before),
             rear == stock.rearTeeth);
  change.frontTeeth = front;
  change.rearTeeth = rear;
  return change;
}

SetupChange proposalWithPair(const Profile& profile, Teeth front, Teeth rear) {
  const auto& box = profile.sparesBox;
  return withPair(profile.proposed, profile.stock, box ? box->front : kNoSpares, box ? box->rear : kNoSpares,
                  front, rear);
}

SetupChange pinOfPair(const Profile& profile, Teeth front, Teeth rear) {
  SetupChange change = proposalWithPair(profile, front, rear);
  change.options.extras.clear();
  change = withoutStockValues(change, profile.stock);
  change.frontTeeth = front;
  change.rearTeeth = rear;
  return change;
}

bool samePin(const SetupChange& pin, const SetupChange& other, const Setup& stock) {
  return withoutStockValues(pin, stock) == withoutStockValues(other, stock);
}

std::vector<PinnedPair> pinnedPairs(const Profile& profile) {
  std::vector<PinnedPair> pairs;
  for (const Pin& pin : profile.pins) {
    const Setup setup = applied(pin.change, profile.stock);
    pairs.push_back(
        {setup.frontTeeth.count(), setup.rearTeeth.count(),
         samePin(pin.change, pinOfPair(profile, setup.frontTeeth, setup.rearTeeth), profile.stock)});
  }
  return pairs;
}

std::optional<std::size_t> pinOn(const std::vector<PinnedPair>& pins, int frontTeeth, int rearTeeth) {
  std::optional<std::size_t> found;
  for (std::size_t i = 0; i < pins.size(); ++i) {
    if (pins[i].frontTeeth != frontTeeth || pins[i].rearTeeth != rearTeeth) continue;
    if (pins[i].asProposed) return i;
    if (!found) found = i;
  }
  return found;
}

}  // namespace layshaft
