// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/input.h"

#include <algorithm>

#include "core/bike/gears_taken.h"
#include "core/bike/pair.h"
#include "core/bike/track_rules.h"

namespace layshaft {
namespace {

template <class Part>
void forget(std::optional<Part>& part) {
  if (part) part->extras.clear();
}

template <class Part>
std::vector<Part> known(std::vector<Part> parts) {
  for (Part& part : parts) part.extras.clear();
  return parts;
}

SetupOptions known(SetupOptions options) {
  options.extras.clear();
  options.primaryTeeth.reset();  // the studies read the ratios
  options.gearTeeth.clear();
  options.chainKind.reset();  // it decides the wear limit, which is asked for on its own
  forget(options.frontSprocket);
  forget(options.rearSprocket);
  return options;
}

Setup known(Setup setup) {
  setup.options = known(std::move(setup.options));
  return setup;
}

TorqueCurve known(const TorqueCurve& curve) {
  const auto& points = curve.points();
  if (std::all_of(points.begin(), points.end(), [](const TorquePoint& p) { return p.extras.empty(); }))
    return curve;
  return TorqueCurve::make(known(points)).value();
}

Bike known(Bike bike) {
  bike.extras.clear();
  bike.engine.extras.clear();
  if (bike.engine.torqueCurve) bike.engine.torqueCurve = known(*bike.engine.torqueCurve);
  forget(bike.engine.curveAir);
  forget(bike.chassis);
  forget(bike.chainRun);
  forget(bike.speedometer);
  return bike;
}

Ride known(Ride ride) {
  ride.extras.clear();
  ride.unknownSurfaces.clear();
  ride.track.clear();  // only laps depend on it
  for (auto& [surface, values] : ride.surfaces) values.extras.clear();
  forget(ride.drive);
  forget(ride.rollOn);
  return ride;
}

Track known(Track track) {
  track.extras.clear();
  for (TrackSegment& segment : track.segments) segment.extras.clear();
  return track;
}

std::optional<Track> trackRidden(const Profile& profile) {
  const Track* track = trackOfTheRide(profile);
  return track ? std::optional(known(*track)) : std::nullopt;
}

Circumstances circumstancesOf(const Profile& profile) {
  return {.bike = known(profile.bike),
          .ride = known(profile.ride.value_or(Ride{})),
          .cruiseSpeedKmh = profile.cruiseSpeedKmh,
          .chainsOnHand = profile.sparesBox ? known(profile.sparesBox->chains) : std::vector<SpareChain>(),
          .gearsKnown = !profile.stock.gearRatios.empty(),
          .typical = profile.typical};
}

bool sameWeightAndSize(const std::optional<SprocketDetails>& a, const std::optional<SprocketDetails>& b) {
  const SprocketDetails x = a.value_or(SprocketDetails{}), y = b.value_or(SprocketDetails{});
  return x.massKg == y.massKg && x.size == y.size;
}

/// The proposal without its pair, if the spares box and stock give the pair the same sprockets.
SetupChange withoutOwnPair(const Profile& profile) {
  SetupChange bare = profile.proposed;
  bare.frontTeeth.reset();
  bare.rearTeeth.reset();
  bare.options.frontSprocket.reset();
  bare.options.rearSprocket.reset();
  const Setup now = applied(profile.proposed, profile.stock);
  const auto& box = profile.sparesBox;
  const SetupOptions fromBox =
      withPair(bare, profile.stock, box ? box->front : std::vector<SpareSprocket>(),
               box ? box->rear : std::vector<SpareSprocket>(), now.frontTeeth, now.rearTeeth)
          .options;
  const SetupOptions& own = profile.proposed.options;
  const bool same = sameWeightAndSize(own.frontSprocket, fromBox.frontSprocket) &&
                    sameWeightAndSize(own.rearSprocket, fromBox.rearSprocket);
  return same ? bare : profile.proposed;
}

/// Stock as it is by now: its chain as long as it was measured last, unless its length was typed.
Setup stockInUse(const Profile& profile) {
  Setup stock = known(profile.stock);
  stock.options.chainElongationPercent = elongationInUse(profile);
  return stock;
}

}  // namespace

PlanInput planInput(const Profile& profile) {
  const Setup stock = stockInUse(profile);
  PlanInput input{.bikeName = profile.name,
                  .shared = circumstancesOf(profile),
                  .stock = stock,
                  .proposed = known(applied(profile.proposed, stock)),
                  .pins = {},
                  .wear = wearInput(profile),
                  .track = trackRidden(profile)};
  for (const Pin& pin : profile.pins) input.pins.push_back({pin.name, known(applied(pin.change, stock))});
  return input;
}

LadderInput ladderInput(const Profile& profile) {
  LadderInput input{.shared = circumstancesOf(profile),
                    .stock = stockInUse(profile),
                    .proposed = withoutOwnPair(profile),
                    .fronts = {},
                    .rears = {},
                    .aims = known(profile.aims),
                    .track = trackRidden(profile)};
  input.proposed.options = known(std::move(input.proposed.options));
  if (profile.sparesBox) {
    input.fronts = known(profile.sparesBox->front);
    input.rears = known(profile.sparesBox->rear);
  }
  return input;
}

SeasonInput seasonInput(const Profile& profile) {
  SeasonInput input{.ladder = ladderInput(profile), .tracks = {}};
  input.ladder.aims.clear();
  input.ladder.track.reset();
  for (const Track& track : profile.tracks) input.tracks.push_back(known(track));
  return input;
}

GearboxInput gearboxInput(const Profile& profile) {
  GearboxInput input{.ladder = ladderInput(profile), .onHand = {}};
  input.ladder.aims.clear();
  if (profile.sparesBox) input.onHand = known(profile.sparesBox->gearPairs);
  for (SpareGearPair& pair : input.onHand) pair.note.clear();
  input.ladder.proposed = onStocksGearbox(input.ladder.proposed, input.ladder.stock, input.onHand);
  return input;
}

}  // namespace layshaft
