// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/bike/profile_change.h"

#include <tuple>
#include <type_traits>
#include <utility>

namespace layshaft {
namespace {

/// The parts that a profile is made of: together they are all of it. An edit changes one, rarely a few.
constexpr auto kParts = std::make_tuple(
    [](auto& p) -> auto& { return p.name; },              //
    [](auto& p) -> auto& { return p.notes; },             //
    [](auto& p) -> auto& { return p.customer; },          //
    [](auto& p) -> auto& { return p.bike.bikeClass; },    //
    [](auto& p) -> auto& { return p.bike.engine; },       //
    [](auto& p) -> auto& { return p.bike.chassis; },      //
    [](auto& p) -> auto& { return p.bike.chainRun; },     //
    [](auto& p) -> auto& { return p.bike.speedometer; },  //
    [](auto& p) -> auto& { return p.bike.extras; },       //
    [](auto& p) -> auto& { return p.stock; },             //
    [](auto& p) -> auto& { return p.proposed; },          //
    [](auto& p) -> auto& { return p.pins; },              //
    [](auto& p) -> auto& { return p.aims; },              //
    [](auto& p) -> auto& { return p.cruiseSpeedKmh; },    //
    [](auto& p) -> auto& { return p.ride; },              //
    [](auto& p) -> auto& { return p.sparesBox; },         //
    [](auto& p) -> auto& { return p.tracks; },            //
    [](auto& p) -> auto& { return p.wear; },              //
    [](auto& p) -> auto& { return p.records; },           //
    [](auto& p) -> auto& { return p.prices; },            //
    [](auto& p) -> auto& { return p.typical; },           //
    [](auto& p) -> auto& { return p.extras; });
constexpr std::size_t kCount = std::tuple_size_v<decltype(kParts)>;

template <class Part>
struct Step {
  Part before, after;
};

template <std::size_t I>
using PartType = std::remove_cvref_t<decltype(std::get<I>(kParts)(std::declval<Profile&>()))>;

template <std::size_t... I>
std::tuple<std::optional<Step<PartType<I>>>...> stepsOf(std::index_sequence<I...>);
using Steps = decltype(stepsOf(std::make_index_sequence<kCount>()));

/// Calls `f` with every place of the table, each as a constant of its own type.
template <class F>
void eachPart(F f) {
  [&]<std::size_t... I>(std::index_sequence<I...>) {
    (f(std::integral_constant<std::size_t, I>()), ...);
  }
  (std::make_index_sequence<kCount>());
}

std::size_t heldBy(const std::string& text) {
  return text.capacity();
}
template <class T>
std::size_t heldBy(const std::vector<T>& list) {
  return list.capacity() * sizeof(T);
}
std::size_t heldBy(const Engine& engine) {
  return engine.torqueCurve ? heldBy(engine.torqueCurve->points()) : 0;
}
std::size_t heldBy(const std::optional<SparesBox>& box) {
  return box ? heldBy(box->front) + heldBy(box->rear) + heldBy(box->chains) + heldBy(box->gearPairs) : 0;
}
std::size_t heldBy(const std::vector<Track>& tracks) {
  std::size_t all = tracks.capacity() * sizeof(Track);
  for (const Track& track : tracks) all += heldBy(track.segments);  // a path is shared
  return all;
}
template <class T>
std::size_t heldBy(const Entries<T>& entries) {
  // All but the newest are shared with the steps before.
  return entries.size() * sizeof(std::shared_ptr<const T>) + sizeof(T);
}
std::size_t heldBy(const std::optional<Wear>& wear) {
  return wear ? heldBy(wear->measurements) : 0;
}
std::size_t heldBy(const std::optional<Records>& records) {
  return records ? heldBy(records->services) + heldBy(records->trackNotes) : 0;
}
std::size_t heldBy(const std::optional<Prices>& prices) {
  return prices ? heldBy(prices->parts) : 0;
}
template <class Part>
std::size_t heldBy(const Part&) {
  return 0;
}

}  // namespace

struct ProfileChange::Parts {
  Steps steps;
};

ProfileChange::ProfileChange(const Profile& before, const Profile& after) {
  auto parts = std::make_shared<Parts>();
  eachPart([&](auto i) {
    const auto& part = std::get<i>(kParts);
    if (!(part(before) == part(after))) std::get<i>(parts->steps) = {part(before), part(after)};
  });
  parts_ = std::move(parts);
}

void ProfileChange::redo(Profile& profile) const {
  eachPart([&](auto i) {
    if (const auto& step = std::get<i>(parts_->steps)) std::get<i>(kParts)(profile) = step->after;
  });
}

void ProfileChange::undo(Profile& profile) const {
  eachPart([&](auto i) {
    if (const auto& step = std::get<i>(parts_->steps)) std::get<i>(kParts)(profile) = step->before;
  });
}

bool ProfileChange::changesNothing() const {
  bool nothing = true;
  eachPart([&](auto i) { nothing = nothing && !std::get<i>(parts_->steps); });
  return nothing;
}

ProfileChange ProfileChange::followedBy(const ProfileChange& next) const {
  auto both = std::make_shared<Parts>(*parts_);
  eachPart([&](auto i) {
    auto& step = std::get<i>(both->steps);
    const auto& later = std::get<i>(next.parts_->steps);
    if (!later) return;
    if (step)
      step->after = later->after;
    else
      step = later;
    if (step->before == step->after) step.reset();
  });
  return ProfileChange(std::move(both));
}

std::size_t ProfileChange::bytes() const {
  std::size_t all = sizeof(Parts);
  eachPart([&](auto i) {
    if (const auto& step = std::get<i>(parts_->steps)) all += heldBy(step->before) + heldBy(step->after);
  });
  return all;
}

}  // namespace layshaft
