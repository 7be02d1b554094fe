// SPDX-License-Identifier: GPL-3.0-or-later
#include <QCoreApplication>

#include "ui/editors/stop.h"
#include "ui/words/numbers.h"

namespace layshaft::ui {
namespace {

struct FinalDriveStops {
  Q_DECLARE_TR_FUNCTIONS(FinalDriveStops)
};

QString openText() {
  return QStringLiteral("–");
}

bool isBelt(const Shown& s) {
  return s.now.options.finalDrive == FinalDrive::Belt;
}
bool isChain(const Shown& s) {
  return !isBelt(s);
}

QString sizeName(const std::optional<ChainSize>& size) {
  return size ? QString::fromUtf8(size->name.data()) : openText();
}

Stop frontTeeth(const Strip& strip) {
  auto* box = wholeBox(limits::kFrontTeeth, 1, QStringLiteral("888"));
  return {.field = "front_teeth",
          .label = FinalDriveStops::tr("Fro&nt teeth"),
          .explanation = FinalDriveStops::tr("Teeth in front, on the countershaft. Fewer teeth: shorter "
                                             "gearing, with more pull and less speed in every gear."),
          .editor = box,
          .show = [box](const Shown& s) { showValue(*box, s.now.frontTeeth.count()); },
          .under =
              [](const Shown& s) { return wholeUnder(s.now.frontTeeth.count(), s.stock.frontTeeth.count()); },
          .edit = [&strip, box] { strip.report(strip.edits().setFrontTeeth(box->value())); },
          .backToStock =
              [&strip] { strip.report(strip.edits().setFrontTeeth(strip.stock().frontTeeth.count())); }};
}

Stop chainSize(const Strip& strip) {
  auto* box = new CalmComboBox;
  box->addItem(openText());
  for (const ChainSize& size : kChainSizes) box->addItem(QString::fromUtf8(size.name.data()));
  fixWidth(box, QStringLiteral("888"), 40);
  return {
      .field = "chain_size",
      .label = FinalDriveStops::tr("&Chain"),
      .explanation = FinalDriveStops::tr("Chain size: the number stamped on the side plates."),
      .editor = box,
      .show = [box](const Shown& s) { box->setCurrentText(sizeName(s.now.options.chainSize)); },
      .under =
          [](const Shown& s) {
            const bool same = s.now.options.chainSize == s.stock.options.chainSize;
            return Under{.text = sizeName(s.stock.options.chainSize),
                         .difference = same ? QString() : FinalDriveStops::tr("different")};
          },
      .edit =
          [&strip, box] {
            const auto chosen = static_cast<std::size_t>(box->currentIndex());
            strip.report(strip.edits().setChainSize(chosen > 0 ? std::optional(kChainSizes[chosen - 1])
                                                               : std::nullopt));
          },
      .backToStock = [&strip] { strip.report(strip.edits().setChainSize(strip.stock().options.chainSize)); },
      .isThere = isChain};
}

Stop links(const Strip& strip) {
  constexpr int kStart = 110;  // common practice: where a step starts when nothing is given
  auto* box = openWholeBox(limits::kLinks, 2, QStringLiteral("888"), openText(), kStart);
  return {.field = "links",
          .label = FinalDriveStops::tr("Lin&ks"),
          .explanation = FinalDriveStops::tr("Links all round, including the joining link."),
          .editor = box,
          .show = [box](const Shown& s) { showValue(*box, box->valueFor(s.now.options.links)); },
          .under = [](const Shown& s) { return openWholeUnder(s.now.options.links, s.stock.options.links); },
          .edit = [&strip, box] { strip.report(strip.edits().setLinks(box->optionalValue())); },
          .backToStock = [&strip] { strip.report(strip.edits().setLinks(strip.stock().options.links)); },
          .isThere = isChain};
}

Stop beltTeeth(const Strip& strip) {
  constexpr int kStart = 130;  // common practice, as above
  auto* box = openWholeBox(limits::kBeltTeeth, 1, QStringLiteral("888"), openText(), kStart);
  return {
      .field = "belt_teeth",
      .label = FinalDriveStops::tr("&Drive belt"),
      .explanation = FinalDriveStops::tr("Number of teeth of the drive belt."),
      .editor = box,
      .spokenName = FinalDriveStops::tr("Belt teeth"),
      .show = [box](const Shown& s) { showValue(*box, box->valueFor(s.now.options.beltTeeth)); },
      .under =
          [](const Shown& s) { return openWholeUnder(s.now.options.beltTeeth, s.stock.options.beltTeeth); },
      .edit = [&strip, box] { strip.report(strip.edits().setBeltTeeth(box->optionalValue())); },
      .backToStock = [&strip] { strip.report(strip.edits().setBeltTeeth(strip.stock().options.beltTeeth)); },
      .isThere = isBelt};
}

Stop rearTeeth(const Strip& strip) {
  auto* box = wholeBox(limits::kRearTeeth, 1, QStringLiteral("888"));
  return {
      .field = "rear_teeth",
      .label = FinalDriveStops::tr("&Rear teeth"),
      .explanation = FinalDriveStops::tr("Teeth at the rear wheel. More teeth: shorter gearing, with more "
                                         "pull and less speed in every gear."),
      .editor = box,
      .show = [box](const Shown& s) { showValue(*box, s.now.rearTeeth.count()); },
      .under = [](const Shown& s) { return wholeUnder(s.now.rearTeeth.count(), s.stock.rearTeeth.count()); },
      .edit = [&strip, box] { strip.report(strip.edits().setRearTeeth(box->value())); },
      .backToStock = [&strip] { strip.report(strip.edits().setRearTeeth(strip.stock().rearTeeth.count())); }};
}

QString finalSum(const Plan& plan) {
  return FinalDriveStops::tr("Final %1")
      .arg(stockTo(number(plan.stock.gearing.finalRatio, 3), number(plan.proposed.gearing.finalRatio, 3)));
}

}  // namespace

Section finalDriveSection(Strip& strip) {
  return {.stops = {frontTeeth(strip), chainSize(strip), links(strip), beltTeeth(strip), rearTeeth(strip)},
          .sum = finalSum};
}

}  // namespace layshaft::ui
