// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/cautions.h"

#include <QCoreApplication>
#include <algorithm>

#include "core/defaults.h"
#include "ui/words/numbers.h"
#include "ui/words/wear_words.h"

namespace layshaft::ui {
namespace {

struct Say {
  Q_DECLARE_TR_FUNCTIONS(Cautions)
};

QString beforeWork(Caution caution, bool belt) {
  if (caution == Caution::Alignment)
    return belt ? Say::tr(
                      "Align the wheel. Axle and pulley fasteners to the manual's torque, new locking parts. "
                      "Re-check tension at the tightest point. Check brake and ABS sensor; pump the brake "
                      "before riding.")
                : Say::tr(
                      "Align the wheel. Axle and sprocket fasteners to the manual's torque, new locking "
                      "parts. Re-check slack at the tightest point. Check brake and ABS sensor; pump the "
                      "brake before riding.");
  return Say::tr(
      "Key out, neutral, bike steady on a stand. Turn the wheel by hand only, with fingers and rags away "
      "from where chain or belt meets a sprocket or pulley.");
}

QString ofTheChain(Caution caution) {
  switch (caution) {
    case Caution::JoiningLink:
      return Say::tr(
          "Join only with a new joining link made for that chain. Rivet link: proper tool, never reused. "
          "Clip link: closed end leads in the direction of travel.");
    case Caution::SlackLimit:
      return Say::tr(
          "Slack comes from the manual, in the manual's posture. The figure here is a limit below which the "
          "chain binds at the swingarm angle given, never a setting.");
    case Caution::BeltTension:
      return Say::tr("Belt tension: by the manual's method.");
    case Caution::OddLinks:
      return Say::tr("Does not fit properly: use an even number of links.");
    default:
      break;
  }
  return Say::tr(
             "Past the wear limit: replace chain and both sprockets as a set. Assumed limit: %1 %, that of a "
             "sealed chain; a plain chain's is %2 %.")
      .arg(number(defaults::kSealedChainWearLimitPercent, 1),
           number(defaults::kPlainChainWearLimitPercent, 1));
}

QString ofTheRoad(Caution caution, bool belt) {
  switch (caution) {
    case Caution::TyreSize:
      return Say::tr(
          "Only sizes approved for bike and rim, with the load and speed rating; check swingarm clearance.");
    case Caution::SpeedometerLow:
      return Say::tr(
          "Speedometer reads below true speed: outside UN Regulation 39, not for the road until "
          "recalibrated.");
    case Caution::SpeedometerHigh:
      return Say::tr("Speedometer reads more high than UN Regulation 39 allows.");
    case Caution::ShorterGearing:
      return Say::tr("Downshifts over-rev at a lower road speed; the front lifts more easily.");
    case Caution::WheelSpeedRatios:
      return belt ? Say::tr(
                        "Tyre size changes wheel-speed ratios: ABS and traction control can be affected. "
                        "Pulleys change what a gearbox sensor sees. Ask a qualified workshop; follow local "
                        "law, insurance and warranty.")
                  : Say::tr(
                        "Tyre size changes wheel-speed ratios: ABS and traction control can be affected. "
                        "Sprockets change what a gearbox sensor sees. Ask a qualified workshop; follow local "
                        "law, insurance and warranty.");
    default:
      break;
  }
  return belt ? Say::tr(
                    "Pulleys change what a gearbox sensor sees. Ask a qualified workshop; follow local law, "
                    "insurance and warranty.")
              : Say::tr(
                    "Sprockets change what a gearbox sensor sees. Ask a qualified workshop; follow local "
                    "law, insurance and warranty.");
}

bool linksAreTakenOutOrOrdered(const Setup& stock, const ChainRunFigures& run, const Setup& setup) {
  if (isBelt(stock) || stock.options.chainSize != setup.options.chainSize || stock.options.links != run.links)
    return true;
  // Also where the page names a length that would be one of several.
  return std::any_of(run.lengthsThatFit.begin(), run.lengthsThatFit.end(), [&](const FittingLength& l) {
    return l.shortenBy.value_or(0) > 0 || (run.fits == false && l.shortenBy != 0);
  });
}

/// Then a chain is ordered, whatever its length.
bool setIsWorn(const Plan& plan) {
  return plan.wear && plan.wear->set == WearVerdict::Replace;
}

bool someGearIsShorter(const Plan& plan) {
  constexpr double kNoticeablePercent = 0.05;  // as a step of no size
  if (plan.stock.gearing.gears.empty()) return plan.proposed.change.gearingPercent >= kNoticeablePercent;
  const auto changes = gearChangesPercent(plan.stock.gearing, plan.proposed.gearing);
  return std::any_of(changes.begin(), changes.end(), [](double c) { return c >= kNoticeablePercent; });
}

/// The strictest usual limit, unless the profile says more.
bool chainIsPastLimit(const Plan& plan) {
  const double limit = plan.wear ? plan.wear->limitPercent : defaults::kSealedChainWearLimitPercent;
  return plan.proposed.setup.options.chainElongationPercent.value_or(0.0) >= limit;
}

/// The same caution where the profile tells which limit counts, or that it is the sprockets that are worn.
QString wornWords(const Plan& plan) {
  if (!plan.wear) return cautionText(Caution::WornChain, false);
  if (!chainIsPastLimit(plan)) return wearVerdictWords(*plan.wear);
  return Say::tr("Past the wear limit: replace chain and both sprockets as a set. %1", "the limit")
      .arg(wearLimitWords(*plan.wear));
}

/// Whether a plan needs a caution at all, wherever it stands.
bool needs(const Plan& plan, Caution caution) {
  const Setup &stock = plan.stock.setup, &setup = plan.proposed.setup;
  const auto& run = plan.proposed.chainRun;
  const bool belt = isBelt(setup), otherTyre = !stock.rearTyre.sameTyre(setup.rearTyre);
  const auto verdict = plan.proposed.speedometer ? plan.proposed.speedometer->verdict : std::nullopt;
  switch (caution) {
    case Caution::JoiningLink:
      return !belt && ((run && linksAreTakenOutOrOrdered(stock, *run, setup)) || setIsWorn(plan));
    case Caution::SlackLimit:
      return run && !belt && run->swingarm && run->swingarm->tightSpot;
    case Caution::BeltTension:
      return belt;
    case Caution::OddLinks:
      return run && run->offsetLink;
    case Caution::WornChain:
      return !belt && (chainIsPastLimit(plan) || setIsWorn(plan));
    case Caution::TyreSize:
    case Caution::WheelSpeedRatios:
      return otherTyre;
    case Caution::SpeedometerLow:
      return verdict == SpeedometerVerdict::ReadsLow;
    case Caution::SpeedometerHigh:
      return verdict == SpeedometerVerdict::ReadsHigh;
    case Caution::ShorterGearing:
      return someGearIsShorter(plan);
    case Caution::GearboxSensor:  // said with the tyre's where there is another
      return !otherTyre && plan.proposed.change.finalRatioPercent != 0.0 &&
             plan.input.shared.bike.speedometer &&
             plan.input.shared.bike.speedometer->sensor == SpeedSensor::GearboxOutput;
    case Caution::Hands:
    case Caution::Alignment:
    case Caution::ClosedCourse:
      break;
  }
  return true;
}

/// What may be said at each place, in order.
const std::vector<Caution>& saidAt(CautionPlace place) {
  static const std::vector<Caution> readout{
      Caution::OddLinks,       Caution::WornChain, Caution::SpeedometerLow,   Caution::SpeedometerHigh,
      Caution::ShorterGearing, Caution::TyreSize,  Caution::WheelSpeedRatios, Caution::ClosedCourse};
  // A mechanic does the work: the customer is told what the ride, the law and the purse ask.
  static const std::vector<Caution> counter{
      Caution::OddLinks,         Caution::WornChain,      Caution::SpeedometerLow,
      Caution::SpeedometerHigh,  Caution::ShorterGearing, Caution::TyreSize,
      Caution::WheelSpeedRatios, Caution::GearboxSensor,  Caution::ClosedCourse};
  static const std::vector<Caution> chainPage{
      Caution::Hands,       Caution::Alignment, Caution::JoiningLink, Caution::SlackLimit,
      Caution::BeltTension, Caution::OddLinks,  Caution::WornChain,   Caution::GearboxSensor};
  static const std::vector<Caution> wearPage{Caution::Hands, Caution::Alignment, Caution::BeltTension,
                                             Caution::WornChain};
  static const std::vector<Caution> work{
      Caution::Hands,           Caution::Alignment,        Caution::JoiningLink,  Caution::BeltTension,
      Caution::OddLinks,        Caution::WornChain,        Caution::TyreSize,     Caution::SpeedometerLow,
      Caution::SpeedometerHigh, Caution::WheelSpeedRatios, Caution::GearboxSensor};
  static const std::vector<Caution> paper{
      Caution::Hands,          Caution::Alignment,       Caution::JoiningLink,    Caution::SlackLimit,
      Caution::BeltTension,    Caution::OddLinks,        Caution::WornChain,      Caution::TyreSize,
      Caution::SpeedometerLow, Caution::SpeedometerHigh, Caution::ShorterGearing, Caution::WheelSpeedRatios,
      Caution::GearboxSensor,  Caution::ClosedCourse};
  switch (place) {
    case CautionPlace::Readout:
      return readout;
    case CautionPlace::Counter:
      return counter;
    case CautionPlace::ChainPage:
      return chainPage;
    case CautionPlace::WearPage:
      return wearPage;
    case CautionPlace::Work:
      return work;
    case CautionPlace::Paper:
      break;
  }
  return paper;
}

}  // namespace

QString cautionText(Caution caution, bool belt) {
  switch (caution) {
    case Caution::Hands:
    case Caution::Alignment:
      return beforeWork(caution, belt);
    case Caution::JoiningLink:
    case Caution::SlackLimit:
    case Caution::BeltTension:
    case Caution::OddLinks:
    case Caution::WornChain:
      return ofTheChain(caution);
    case Caution::TyreSize:
    case Caution::SpeedometerLow:
    case Caution::SpeedometerHigh:
    case Caution::ShorterGearing:
    case Caution::WheelSpeedRatios:
    case Caution::GearboxSensor:
      return ofTheRoad(caution, belt);
    case Caution::ClosedCourse:
      break;
  }
  return closedCourseCaution();
}

std::vector<Caution> cautionsAt(const Plan& plan, CautionPlace place) {
  std::vector<Caution> needed;
  for (const Caution caution : saidAt(place))
    if (needs(plan, caution)) needed.push_back(caution);
  return needed;
}

QStringList cautionsFor(const Plan& plan, CautionPlace place) {
  QStringList words;
  for (const Caution caution : cautionsAt(plan, place))
    words << (caution == Caution::WornChain ? wornWords(plan)
                                            : cautionText(caution, isBelt(plan.proposed.setup)));
  return words;
}

QStringList allCautions() {
  QStringList words;
  for (const Caution caution : saidAt(CautionPlace::Paper))
    if (caution != Caution::GearboxSensor) words << cautionText(caution, false);  // with the tyre's
  return words;
}

QString closedCourseCaution() {
  return Say::tr("Top speed, speeds at the rev limit and times: closed course only.");
}

QString closedCourseMark() {
  return Say::tr("closed course");
}

QString speedometerWords(const Plan& plan) {
  const auto& figures = plan.proposed.speedometer;
  if (!figures || !figures->verdict) return {};
  switch (*figures->verdict) {
    case SpeedometerVerdict::ReadsLow:
      return cautionText(Caution::SpeedometerLow, false);
    case SpeedometerVerdict::ReadsHigh:
      return cautionText(Caution::SpeedometerHigh, false);
    case SpeedometerVerdict::Within:
      break;
  }
  return Say::tr("Speedometer reads within UN Regulation 39.");
}

}  // namespace layshaft::ui
