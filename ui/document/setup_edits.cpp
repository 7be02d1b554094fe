// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/document/setup_edits.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/bike/pair.h"
#include "core/bike/words.h"
#include "core/defaults.h"
#include "core/limits.h"
#include "core/number_text.h"
#include "core/study/adopted.h"
#include "core/units.h"
#include "ui/words/choice_words.h"
#include "ui/words/gearbox_words.h"
#include "ui/words/numbers.h"
#include "ui/words/plain_text.h"
#include "ui/words/problem_words.h"

namespace layshaft::ui {
namespace {

Setup setupOf(const Profile& profile, Side side) {
  return side == Side::Stock ? profile.stock : applied(profile.proposed, profile.stock);
}

QString orNone(const std::optional<int>& value) {
  return value ? number(*value, 0) : SetupEdits::tr("none");
}

/// A ratio with as many decimals as it has been given, three at least.
QString ratioWords(double ratio) {
  const bool threeTell = std::abs(ratio * 1000.0 - std::round(ratio * 1000.0)) < 1e-9;
  return number(ratio, threeTell ? 3 : 4);
}

/// The ratio, and the teeth that make it where they are known.
QString ratioWords(double ratio, const std::optional<GearTeeth>& teeth) {
  return teeth ? SetupEdits::tr("%1 (%2)", "ratio and the teeth that make it")
                     .arg(ratioWords(ratio), teethWords(*teeth))
               : ratioWords(ratio);
}

}  // namespace

Setup SetupEdits::current() const {
  return setupOf(document_.profile(), side_);
}

std::string SetupEdits::keyOf(const std::string& key) const {
  return (side_ == Side::Stock ? "stock." : "proposed.") + key;
}

std::optional<Problem> SetupEdits::outside(double value, const Limit& limit, const char* key) const {
  if (limit.contains(value)) return std::nullopt;
  return Problem{.kind = Problem::Kind::OutOfRange,
                 .path = keyOf(key),
                 .given = numberText(value),
                 .low = limit.low,
                 .high = limit.high,
                 .unit = limit.unit};
}

Problem SetupEdits::placed(const char* key, Problem problem) const {
  problem.path = keyOf(key + problem.path);
  return problem;
}

EditName SetupEdits::nameOf(const char* field, const QString& title,
                            const std::function<QString(const Setup&)>& shown) const {
  EditName name{.field = QString::fromStdString(keyOf(field)),
                .title = (side_ == Side::Stock ? tr("stock %1") : tr("proposed %1")).arg(title),
                .shown = {}};
  if (shown) name.shown = [side = side_, shown](const Profile& p) { return shown(setupOf(p, side)); };
  return name;
}

template <class Set>
std::optional<Problem> SetupEdits::edit(const char* field, const QString& title,
                                        const std::function<QString(const Setup&)>& shown, Set set) {
  return document_.edit(nameOf(field, title, shown), [&](Profile& profile) {
    if (side_ == Side::Stock) {
      set(profile.stock);
    } else {
      set(profile.proposed);
      profile.proposed = withoutStockValues(profile.proposed, profile.stock);
    }
  });
}

std::optional<Problem> SetupEdits::setFrontTeeth(int count) {
  return exchangeTeeth("front_teeth", tr("front teeth"), count, current().rearTeeth.count(),
                       [](const Setup& s) { return number(s.frontTeeth.count(), 0); });
}

std::optional<Problem> SetupEdits::setRearTeeth(int count) {
  return exchangeTeeth("rear_teeth", tr("rear teeth"), current().frontTeeth.count(), count,
                       [](const Setup& s) { return number(s.rearTeeth.count(), 0); });
}

std::optional<Problem> SetupEdits::setPair(int frontTeeth, int rearTeeth) {
  return exchangeTeeth("pair", tr("pair"), frontTeeth, rearTeeth,
                       [](const Setup& s) { return teethPair(s); });
}

std::optional<Problem> SetupEdits::exchangeTeeth(const char* field, const QString& title, int frontTeeth,
                                                 int rearTeeth,
                                                 const std::function<QString(const Setup&)>& shown) {
  const auto front = Teeth::front(frontTeeth), rear = Teeth::rear(rearTeeth);
  if (!front) return placed("front_teeth", front.problem());
  if (!rear) return placed("rear_teeth", rear.problem());
  if (side_ == Side::Proposed) {
    const SetupChange exchanged = proposalWithPair(document_.profile(), *front, *rear);
    return edit(field, title, shown, [&](auto& setup) {
      setup.frontTeeth = exchanged.frontTeeth.value();
      setup.rearTeeth = exchanged.rearTeeth.value();
      setup.options.frontSprocket = exchanged.options.frontSprocket;
      setup.options.rearSprocket = exchanged.options.rearSprocket;
    });
  }
  return document_.edit(nameOf(field, title, shown), [&](Profile& profile) {
    const bool frontChanges = profile.stock.frontTeeth != *front,
               rearChanges = profile.stock.rearTeeth != *rear;
    // What follows stock's teeth gets another sprocket, too.
    const auto follow = [&](SetupChange& change) {
      if (frontChanges && !change.frontTeeth) forgetSprocketMeasurements(change.options.frontSprocket);
      if (rearChanges && !change.rearTeeth) forgetSprocketMeasurements(change.options.rearSprocket);
    };
    follow(profile.proposed);
    for (Pin& pin : profile.pins) follow(pin.change);
    if (frontChanges) forgetSprocketMeasurements(profile.stock.options.frontSprocket);
    if (rearChanges) forgetSprocketMeasurements(profile.stock.options.rearSprocket);
    profile.stock.frontTeeth = *front;
    profile.stock.rearTeeth = *rear;
  });
}

std::optional<QString> SetupEdits::pin(Document& document, const QString& name, int frontTeeth,
                                       int rearTeeth) {
  const Profile& profile = document.profile();
  if (static_cast<int>(profile.pins.size()) >= limits::kMostPins)
    return tr("There are %n pins already; remove one first.", nullptr, limits::kMostPins);
  const auto front = Teeth::front(frontTeeth), rear = Teeth::rear(rearTeeth);
  if (!front) return spokenSentence(front.problem());
  if (!rear) return spokenSentence(rear.problem());
  const SetupChange change = pinOfPair(profile, *front, *rear);
  for (const Pin& pin : profile.pins)
    if (samePin(pin.change, change, profile.stock))
      return tr("That is pinned already: %1.").arg(shownName(pin.name));
  document.edit({.field = QStringLiteral("pin.%1").arg(name), .title = tr("pin %1").arg(name), .shown = {}},
                [&](Profile& p) { p.pins.push_back({.name = name.toStdString(), .change = change}); });
  return std::nullopt;
}

void SetupEdits::removePin(Document& document, std::size_t index) {
  if (index >= document.profile().pins.size()) return;
  const QString name = shownName(document.profile().pins[index].name);
  document.edit(
      {.field = QStringLiteral("unpin.%1").arg(name), .title = tr("remove pin %1").arg(name), .shown = {}},
      [index](Profile& p) { p.pins.erase(p.pins.begin() + static_cast<std::ptrdiff_t>(index)); });
}

std::optional<Problem> SetupEdits::setTyre(const QString& size) {
  const auto tyre = TyreSize::parse(size.toStdString());
  if (!tyre) return placed("rear_tyre", tyre.problem());
  const bool another = !current().rearTyre.sameTyre(*tyre);
  const auto shown = [](const Setup& s) { return QString::fromStdString(s.rearTyre.text()); };
  const auto set = [&](auto& setup) {
    setup.rearTyre = *tyre;
    if (another) forgetTyreMeasurements(setup.options);
  };
  if (side_ == Side::Proposed) return edit("rear_tyre", tr("rear tyre"), shown, set);
  return document_.edit(nameOf("rear_tyre", tr("rear tyre"), shown), [&](Profile& profile) {
    set(profile.stock);
    // A proposal that rolls on stock's tyre gets the new one, and with it nothing
    // measured.
    if (another && !profile.proposed.rearTyre) forgetTyreMeasurements(profile.proposed.options);
  });
}

template <class Set>
std::optional<Problem> SetupEdits::editRatios(const char* field, const QString& title,
                                              const std::function<QString(const Setup&)>& shown, Set set) {
  return document_.edit(nameOf(field, title, shown), [&](Profile& profile) {
    if (side_ == Side::Stock)
      set(profile.stock);
    else
      set(profile.proposed);
    forgetOtherGearTeeth(profile.proposed, profile.stock);
    for (Pin& pin : profile.pins) forgetOtherGearTeeth(pin.change, profile.stock);
    if (side_ == Side::Proposed) profile.proposed = withoutStockValues(profile.proposed, profile.stock);
  });
}

std::optional<Problem> SetupEdits::setPrimaryRatio(double ratio, const std::optional<GearTeeth>& teeth) {
  if (auto problem = outside(ratio, limits::kPrimaryRatio, "primary_ratio")) return problem;
  const bool another = teeth || current().primaryRatio != ratio;
  return editRatios(
      "primary_ratio", tr("primary ratio"),
      [](const Setup& s) { return ratioWords(s.primaryRatio, s.options.primaryTeeth); },
      [&](auto& setup) {
        setup.primaryRatio = ratio;
        if (another) setup.options.primaryTeeth = teeth;
      });
}

std::optional<Problem> SetupEdits::setGearRatio(std::size_t gearIndex, double ratio,
                                                const std::optional<GearTeeth>& teeth) {
  std::vector<double> ratios = current().gearRatios.values();
  const double before = ratios.at(gearIndex);
  ratios[gearIndex] = ratio;
  auto changed = GearRatios::make(ratios);
  if (!changed) return placed("gear_ratios", changed.problem());
  const auto shown = [gearIndex](const Setup& s) {
    return gearIndex < s.gearRatios.count()
               ? ratioWords(s.gearRatios[gearIndex], teethOf(s.options.gearTeeth, gearIndex))
               : QString();
  };
  const std::string key = "gear_ratios[" + std::to_string(gearIndex) + "]";
  const char* field = key.c_str();
  const QString title = tr("gear %1").arg(gearIndex + 1);
  const auto set = [&](auto& setup) {
    setup.gearRatios = *changed;
    if (teeth || ratio != before) setTeethOf(setup.options.gearTeeth, gearIndex, teeth);
  };
  if (side_ == Side::Proposed) return editRatios(field, title, shown, set);
  // Stock's gear moves, and the same gear of the proposal with it where it had followed.
  return document_.edit(nameOf(field, title, shown), [&](Profile& profile) {
    set(profile.stock);
    if (auto& ownRatios = profile.proposed.gearRatios) {
      std::vector<double> own = ownRatios->values();
      if (gearIndex < own.size() && own[gearIndex] == before) {
        own[gearIndex] = ratio;
        if (auto followed = GearRatios::make(own)) ownRatios = *followed;
      }
    }
    forgetOtherGearTeeth(profile.proposed, profile.stock);
    for (Pin& pin : profile.pins) forgetOtherGearTeeth(pin.change, profile.stock);
  });
}

std::optional<Problem> SetupEdits::setGearCount(std::size_t count) {
  std::vector<double> ratios = current().gearRatios.values();
  if (ratios.empty()) return placed("gear_ratios", {.kind = Problem::Kind::MissingKey});
  constexpr double kNextGear = 0.9;  // a start to edit from, not a recommendation
  while (ratios.size() < count) ratios.push_back(std::round(ratios.back() * kNextGear * 1000.0) / 1000.0);
  ratios.resize(count);
  auto changed = GearRatios::make(ratios);
  if (!changed) return placed("gear_ratios", changed.problem());
  return editRatios(
      "gear_ratios", tr("number of gears"),
      [](const Setup& s) { return number(static_cast<double>(s.gearRatios.count()), 0); },
      [&](auto& setup) {
        setup.gearRatios = *changed;
        if (setup.options.gearTeeth.size() > count) {
          setup.options.gearTeeth.resize(count);
          setTeethOf(setup.options.gearTeeth, count, std::nullopt);
        }
      });
}

std::optional<Problem> SetupEdits::setRollout(std::optional<double> rolloutMm, const UnitsShown& units) {
  if (rolloutMm)
    if (auto problem = outside(*rolloutMm, limits::kRolloutMm, "rollout_mm")) return problem;
  return edit(
      "rollout_mm", tr("rollout"),
      [units](const Setup& s) {
        if (!s.options.rolloutMm) return tr("from the size");
        const double shown =
            units.shown(Quantity::SmallLength, units::metresFromMillimetres(*s.options.rolloutMm));
        return units.withUnit(number(shown, units.rolloutDecimals()), Quantity::SmallLength);
      },
      [&](auto& setup) { setup.options.rolloutMm = rolloutMm; });
}

std::optional<Problem> SetupEdits::setRollingAllowance(double percent) {
  if (auto problem = outside(percent, limits::kRollingAllowancePercent, "rolling_allowance_percent"))
    return problem;
  return edit(
      "rolling_allowance_percent", tr("rolling allowance"),
      [](const Setup& s) {
        return tr("%1 %").arg(
            number(s.options.rollingAllowancePercent.value_or(defaults::kRollingAllowancePercent), 1));
      },
      [&](auto& setup) { setup.options.rollingAllowancePercent = percent; });
}

std::optional<Problem> SetupEdits::setChainSize(std::optional<ChainSize> size) {
  return edit(
      "chain_size", tr("chain size"),
      [](const Setup& s) {
        return s.options.chainSize ? QString::fromUtf8(s.options.chainSize->name.data()) : tr("none");
      },
      [&](auto& setup) { setup.options.chainSize = size; });
}

std::optional<Problem> SetupEdits::setLinks(std::optional<int> links) {
  if (links)
    if (auto problem = outside(*links, limits::kLinks, "links")) return problem;
  return edit(
      "links", tr("links"), [](const Setup& s) { return orNone(s.options.links); },
      [&](auto& setup) { setup.options.links = links; });
}

std::optional<Problem> SetupEdits::setBeltTeeth(std::optional<int> teeth) {
  if (teeth)
    if (auto problem = outside(*teeth, limits::kBeltTeeth, "belt_teeth")) return problem;
  return edit(
      "belt_teeth", tr("belt teeth"), [](const Setup& s) { return orNone(s.options.beltTeeth); },
      [&](auto& setup) { setup.options.beltTeeth = teeth; });
}

std::optional<Problem> SetupEdits::setFinalDrive(FinalDrive drive) {
  return edit(
      "final_drive", tr("final drive"),
      [](const Setup& s) {
        return choiceWord(wordFor(s.options.finalDrive.value_or(FinalDrive::Chain), kFinalDriveWords));
      },
      [&](auto& setup) { setup.options.finalDrive = drive; });
}

void SetupEdits::propose(Document& document, const QString& title, const SetupChange& change) {
  document.edit({.field = QStringLiteral("proposal.whole"), .title = title, .shown = {}},
                [&](Profile& profile) { profile.proposed = withoutStockValues(change, profile.stock); });
}

std::optional<Problem> SetupEdits::proposeGearbox(Document& document, const GearsTaken& gears, int frontTeeth,
                                                  int rearTeeth) {
  const Profile& profile = document.profile();
  const SetupEdits proposal(document, Side::Proposed);
  const auto front = Teeth::front(frontTeeth), rear = Teeth::rear(rearTeeth);
  if (!front) return proposal.placed("front_teeth", front.problem());
  if (!rear) return proposal.placed("rear_teeth", rear.problem());
  const auto onHand = profile.sparesBox ? profile.sparesBox->gearPairs : std::vector<SpareGearPair>();
  const auto change = withGears(
      onStocksGearbox(proposalWithPair(profile, *front, *rear), profile.stock, onHand), profile.stock, gears);
  if (!change) return proposal.placed("", change.problem());
  const QString title =
      tr("propose %1 with %2", "gears, pair").arg(gearsText(gears), pairText(frontTeeth, rearTeeth));
  return document.edit({.field = QStringLiteral("proposal.gearbox.") + title, .title = title, .shown = {}},
                       [&](Profile& p) { p.proposed = withoutStockValues(*change, p.stock); });
}

void SetupEdits::clearProposal(Document& document) {
  document.edit({.field = QStringLiteral("proposal.clear"), .title = tr("all back to stock"), .shown = {}},
                [](Profile& profile) {
                  profile.proposed = SetupChange{.options = {.extras = profile.proposed.options.extras}};
                });
}

void SetupEdits::makeProposalStock(Document& document, bool speedometerSetAnew) {
  document.edit(
      {.field = QStringLiteral("proposal.adopt"), .title = tr("make the proposal stock"), .shown = {}},
      [speedometerSetAnew](Profile& profile) {
        const auto readsHigh = speedometerSetAnew ? std::nullopt : readsHighPercentCarried(profile);
        profile = adopted(profile);
        if (readsHigh)
          profile.bike.speedometer->readsHighPercent =
              std::clamp(*readsHigh, limits::kReadsHighPercent.low, limits::kReadsHighPercent.high);
      });
}

}  // namespace layshaft::ui
