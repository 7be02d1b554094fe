// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/study/parts_list.h"

#include <algorithm>

#include "core/bike/pair.h"
#include "core/bike/record_list.h"
#include "core/study/fitted.h"

namespace layshaft {
namespace {

bool worn(const std::optional<SpareState>& state) {
  return state == SpareState::Worn;
}

PricedPart pricedPart(const PartLine& line) {
  switch (line.kind) {
    case PartKind::FrontSprocket:
      return PricedPart::FrontSprocket;
    case PartKind::RearSprocket:
      return line.material == SprocketMaterial::Aluminium ? PricedPart::RearAluminium : PricedPart::RearSteel;
    case PartKind::Chain:
      return line.chainKind == ChainKind::Plain ? PricedPart::ChainPlain : PricedPart::ChainSealed;
    case PartKind::JoiningLink:
      return PricedPart::JoiningLink;
    case PartKind::FrontPulley:
      return PricedPart::FrontPulley;
    case PartKind::RearPulley:
      return PricedPart::RearPulley;
    case PartKind::Belt:
      return PricedPart::Belt;
    case PartKind::RearTyre:
      break;
  }
  return PricedPart::RearTyre;
}

class Lister {
 public:
  Lister(const Profile& profile, const Plan& plan)
      : profile_(profile),
        plan_(plan),
        stock_(plan.stock.setup),
        setup_(plan.proposed.setup),
        belt_(isBelt(setup_)) {
    list_.wornSet = !belt_ && plan.wear && plan.wear->set == WearVerdict::Replace;
  }

  PartsList list() && {
    addWheel(SprocketPlace::Front);
    addWheel(SprocketPlace::Rear);
    if (belt_)
      addBelt();
    else
      addChain();
    if (!setup_.rearTyre.sameTyre(stock_.rearTyre))
      add({.kind = PartKind::RearTyre, .source = PartSource::Buy});
    addMixes();
    addCost();
    return std::move(list_);
  }

 private:
  void add(PartLine line) {
    if (line.source == PartSource::Buy) line.price = priceOf(profile_, pricedPart(line));
    list_.lines.push_back(line);
  }

  bool sameDrive() const { return isBelt(stock_) == belt_; }

  void addWheel(SprocketPlace place) {
    const bool front = place == SprocketPlace::Front;
    const int teeth = (front ? setup_.frontTeeth : setup_.rearTeeth).count();
    const int before = (front ? stock_.frontTeeth : stock_.rearTeeth).count();
    const auto& details = front ? setup_.options.frontSprocket : setup_.options.rearSprocket;
    PartLine line{.kind = belt_   ? (front ? PartKind::FrontPulley : PartKind::RearPulley)
                          : front ? PartKind::FrontSprocket
                                  : PartKind::RearSprocket,
                  .source = PartSource::Keep,
                  .teeth = teeth,
                  .size = belt_ ? std::nullopt : cutFor(stock_, setup_, place),
                  .material = details ? details->material : std::nullopt,
                  .mass = sprocketMass(stock_, setup_, place)};
    const bool otherSize = !belt_ && setup_.options.chainSize != stock_.options.chainSize;
    if (teeth != before || otherSize || !sameDrive() || list_.wornSet) {
      static const std::vector<SpareSprocket> kNone;
      const auto& box = profile_.sparesBox;
      const auto& spares = !box ? kNone : front ? box->front : box->rear;
      const SpareSprocket* spare = spareSprocket(spares, teeth, setup_);
      line.source = spare ? PartSource::Box : PartSource::Buy;
      if (spare) {
        line.state = spare->state;
        if (spare->material) line.material = spare->material;
        if (spare->massKg) line.mass = SprocketMass{*spare->massKg, false};
      }
    }
    add(line);
  }

  /// A chain on hand of that size that is long enough and not worn: the one that least is cut from.
  const SpareChain* spareChain(int links) const {
    const SpareChain* best = nullptr;
    if (!profile_.sparesBox) return best;
    for (const SpareChain& chain : profile_.sparesBox->chains) {
      const double limit = plan_.wear ? plan_.wear->limitPercent
                                      : wearLimit(std::nullopt, profile_.stock.options.chainKind).percent;
      if (chain.size != *setup_.options.chainSize || chain.links < links || worn(chain.state)) continue;
      if (chain.elongationPercent.value_or(0.0) >= limit) continue;
      if (!best || chain.links < best->links) best = &chain;
    }
    return best;
  }

  void addChain() {
    const SetupOptions& own = setup_.options;
    if (!own.links || !own.chainSize) return;
    PartLine line{.kind = PartKind::Chain,
                  .source = PartSource::Keep,
                  .links = *own.links,
                  .size = own.chainSize,
                  .chainKind = applied(profile_.proposed, profile_.stock).options.chainKind};
    const bool sameSize = sameDrive() && own.chainSize == stock_.options.chainSize;
    const int before = sameSize ? stock_.options.links.value_or(0) : 0;
    if (list_.wornSet || before < *own.links) {
      const int even = *own.links + *own.links % 2;
      const SpareChain* spare = spareChain(even);
      line.source = spare ? PartSource::Box : PartSource::Buy;
      line.links = even;
      if (spare) {
        line.takeOut = spare->links - even;
        line.state = spare->state;
        line.elongationPercent = spare->elongationPercent;
      }
    } else if (before > *own.links) {
      line.source = PartSource::Cut;
      line.takeOut = before - *own.links;
    }
    add(line);
    // A new chain brings its own; every other joint wants a new one.
    if (line.source != PartSource::Keep && line.source != PartSource::Buy)
      add({.kind = PartKind::JoiningLink,
           .source = PartSource::Buy,
           .size = line.size,
           .chainKind = line.chainKind});
  }

  void addBelt() {
    const SetupOptions& own = setup_.options;
    if (!own.beltTeeth) return;
    const bool same = sameDrive() && own.beltTeeth == stock_.options.beltTeeth &&
                      own.beltPitchMm == stock_.options.beltPitchMm;
    add({.kind = PartKind::Belt,
         .source = same ? PartSource::Keep : PartSource::Buy,
         .teeth = *own.beltTeeth});
  }

  const PartLine* find(PartKind kind) const {
    const auto found = std::find_if(list_.lines.begin(), list_.lines.end(),
                                    [&](const PartLine& l) { return l.kind == kind; });
    return found == list_.lines.end() ? nullptr : &*found;
  }
  bool isNew(PartKind kind) const {
    const PartLine* line = find(kind);
    return line && (line->source == PartSource::Buy ||
                    (line->source == PartSource::Box && line->state == SpareState::New));
  }
  bool isBought(PartKind kind) const {
    const PartLine* line = find(kind);
    return line && line->source == PartSource::Buy;
  }

  void addMixes() {
    if (belt_ || !plan_.wear) return;
    list_.mixes = wearMixes(*plan_.wear, {.chain = isNew(PartKind::Chain),
                                          .front = isNew(PartKind::FrontSprocket),
                                          .rear = isNew(PartKind::RearSprocket)});
  }

  void addCost() {
    std::optional<double> sum = 0.0;
    for (const PartLine& line : list_.lines)
      if (line.source == PartSource::Buy)
        sum = sum && line.price ? std::optional(*sum + *line.price) : std::nullopt;
    if (list_.buysAnything()) list_.singleParts = sum;
    if (belt_) return;
    const bool wholeSet =
        isBought(PartKind::Chain) && isBought(PartKind::FrontSprocket) && isBought(PartKind::RearSprocket);
    const auto kit = priceOf(profile_, PricedPart::Kit);
    if (wholeSet) list_.kit = kit;
    list_.life = expectedLife();
    if (const auto set = setPrice(kit); set && list_.life && list_.life->use > 0.0)
      list_.costPerUse = *set / list_.life->use;
  }

  /// Of chain and both sprockets, bought now or not.
  std::optional<double> setPrice(const std::optional<double>& kit) const {
    std::optional<double> single = 0.0;
    for (const PartKind kind : {PartKind::Chain, PartKind::FrontSprocket, PartKind::RearSprocket}) {
      const PartLine* line = find(kind);
      const auto price = line ? priceOf(profile_, pricedPart(*line)) : std::nullopt;
      single = single && price ? std::optional(*single + *price) : std::nullopt;
    }
    if (!kit || !single) return kit ? kit : single;
    return std::min(*kit, *single);
  }

  std::optional<ExpectedLife> expectedLife() const {
    std::vector<double> fittings;
    if (profile_.records)
      for (std::size_t i = 0; i < profile_.records->services.size(); ++i)
        if (const Service& service = profile_.records->services[i];
            !service.struck && service.newChain.value_or(false) && service.at)
          fittings.push_back(*service.at);
    std::sort(fittings.begin(), fittings.end());
    if (fittings.size() >= 2 && fittings.back() > fittings.front())
      return ExpectedLife{(fittings.back() - fittings.front()) / static_cast<double>(fittings.size() - 1),
                          LifeSource::OwnRecords};
    if (plan_.wear && plan_.wear->endOfLife) {
      const double use = plan_.wear->endOfLife->at - plan_.wear->chainFittedAt.value_or(0.0);
      if (use > 0.0) return ExpectedLife{use, LifeSource::OwnTrend};
    }
    return ExpectedLife{useUnitOf(profile_) == UseUnit::Hours ? kUsualMotocrossLifeHours : kLongRoadLifeKm,
                        LifeSource::Reference};
  }

  const Profile& profile_;
  const Plan& plan_;
  const Setup& stock_;
  const Setup& setup_;
  bool belt_;
  PartsList list_;
};

}  // namespace

std::optional<double> priceOf(const Profile& profile, PricedPart part) {
  if (!profile.prices) return std::nullopt;
  for (const PartPrice& price : profile.prices->parts)
    if (price.part == wordFor(part, kPricedPartWords)) return price.price;
  return std::nullopt;
}

bool PartsList::buysAnything() const {
  return std::any_of(lines.begin(), lines.end(),
                     [](const PartLine& line) { return line.source == PartSource::Buy; });
}

PartsList partsList(const Profile& profile, const Plan& plan) {
  return Lister(profile, plan).list();
}

std::vector<MaterialChoice> rearMaterials(const Profile& profile, const Plan& plan) {
  const Setup& setup = plan.proposed.setup;
  if (isBelt(setup)) return {};
  std::vector<MaterialChoice> choices;
  for (const auto& [material, priced] : {std::pair{SprocketMaterial::Steel, PricedPart::RearSteel},
                                         std::pair{SprocketMaterial::Aluminium, PricedPart::RearAluminium}}) {
    MaterialChoice choice{material, std::nullopt, priceOf(profile, priced)};
    if (const auto size = cutFor(plan.stock.setup, setup, SprocketPlace::Rear))
      choice.massKg =
          estimatedMassKg(sprocketShape(*size, setup.rearTeeth.count()), SprocketPlace::Rear, material);
    choices.push_back(choice);
  }
  return choices;
}

}  // namespace layshaft
