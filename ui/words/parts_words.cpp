// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/parts_words.h"

#include <QCoreApplication>

#include "core/bike/record_list.h"
#include "core/bike/words.h"
#include "core/defaults.h"
#include "core/study/fitted.h"
#include "ui/words/aligned_table.h"
#include "ui/words/cautions.h"
#include "ui/words/choice_words.h"
#include "ui/words/numbers.h"
#include "ui/words/plain_text.h"
#include "ui/words/use_words.h"

namespace layshaft::ui {
namespace {

struct Say {
  Q_DECLARE_TR_FUNCTIONS(PartsWords)
};

QString kindName(PartKind kind) {
  switch (kind) {
    case PartKind::FrontSprocket:
      return Say::tr("Front sprocket");
    case PartKind::RearSprocket:
      return Say::tr("Rear sprocket");
    case PartKind::Chain:
      return Say::tr("Chain");
    case PartKind::JoiningLink:
      return Say::tr("Joining link");
    case PartKind::FrontPulley:
      return Say::tr("Front pulley");
    case PartKind::RearPulley:
      return Say::tr("Rear pulley");
    case PartKind::Belt:
      return Say::tr("Belt");
    case PartKind::RearTyre:
      break;
  }
  return Say::tr("Rear tyre");
}

QString partSays(const QStringList& words) {
  return words.join(Say::tr(", ", "between what a part is"));
}

/// How good a part of the box is: "used, 0.6 % elongation".
QString stateText(const PartLine& line) {
  QStringList words;
  if (line.state) words << choiceWord(wordFor(*line.state, kSpareStateWords));
  if (line.elongationPercent) words << Say::tr("%1 % elongation").arg(number(*line.elongationPercent, 1));
  return partSays(words);
}

QString useText(double use, UseUnit unit, const UnitsShown& units) {
  if (unit == UseUnit::Hours) return Say::tr("%1 h", "hours").arg(number(use, 0));
  const QString shown = number(shownUse(unit, use, units), 0);
  return units.inMiles() ? Say::tr("%1 miles").arg(shown) : Say::tr("%1 km").arg(shown);
}

QString lifeText(const ExpectedLife& life, UseUnit unit, const UnitsShown& units) {
  const QString use = useText(life.use, unit, units);
  switch (life.source) {
    case LifeSource::OwnRecords:
      return Say::tr("Expected life %1: from new chain to new chain in this bike's records.").arg(use);
    case LifeSource::OwnTrend:
      return Say::tr("Expected life %1: where the measured trend reaches the wear limit.").arg(use);
    case LifeSource::Reference:
      break;
  }
  return (unit == UseUnit::Hours
              ? Say::tr("Expected life %1: usual in motocross, common practice; measure your own.")
              : Say::tr("Expected life %1: a long life on the road, common practice; measure your own."))
      .arg(use);
}

QString costText(const Profile& profile, double perUse, const UnitsShown& units) {
  if (useUnitOf(profile) == UseUnit::Hours)
    return Say::tr("Chain and sprockets then cost %1 an hour.").arg(priceText(profile, perUse));
  constexpr double kThousand = 1000.0;
  const QString price = priceText(profile, perUse * fileUse(UseUnit::Km, kThousand, units));
  return units.inMiles() ? Say::tr("Chain and sprockets then cost %1 per 1,000 miles.").arg(price)
                         : Say::tr("Chain and sprockets then cost %1 per 1,000 km.").arg(price);
}

QString mixText(WearMix mix) {
  switch (mix) {
    case WearMix::NewSprocketUnderWornChain:
      return Say::tr("A worn chain ruins a new sprocket: replace chain and both sprockets as a set.");
    case WearMix::NewChainOverWornSprockets:
      return Say::tr("Worn sprockets ruin a new chain: replace chain and both sprockets as a set.");
    case WearMix::FrontSprocketLeftOld:
      break;
  }
  return Say::tr("A new chain and rear sprocket would run on the old front sprocket: replace it, too.");
}

}  // namespace

QString partText(const PartLine& line) {
  QStringList words{kindName(line.kind)};
  if (line.teeth > 0) words << Say::tr("%n teeth", nullptr, line.teeth);
  if (line.size) words << QString::fromUtf8(line.size->name.data());
  if (line.links > 0) words << Say::tr("%n links", nullptr, line.links);
  if (line.material) words << choiceWord(wordFor(*line.material, kMaterialWords));
  if (line.chainKind) words << choiceWord(wordFor(*line.chainKind, kChainKindWords));
  if (line.kind == PartKind::JoiningLink) words << Say::tr("rivet or clip, as made for that chain");
  if (line.kind == PartKind::Chain && line.source == PartSource::Buy)
    words << Say::tr("with its joining link, rivet or clip");
  return partSays(words);
}

QString partSourceText(const PartLine& line) {
  switch (line.source) {
    case PartSource::Keep:
      return Say::tr("stays on the bike");
    case PartSource::Cut:
      return Say::tr("take %n links out of the bike's chain", nullptr, line.takeOut);
    case PartSource::Buy:
      return Say::tr("to buy");
    case PartSource::Box:
      break;
  }
  const QString state = stateText(line);
  const QString box = state.isEmpty() ? Say::tr("from the spares box")
                                      : Say::tr("from the spares box (%1)", "how good it is").arg(state);
  return line.takeOut > 0 ? partSays({box, Say::tr("take %n links out", nullptr, line.takeOut)}) : box;
}

QString pricedPartName(PricedPart part) {
  switch (part) {
    case PricedPart::ChainPlain:
      return Say::tr("Chain, plain");
    case PricedPart::ChainSealed:
      return Say::tr("Chain, sealed");
    case PricedPart::FrontSprocket:
      return Say::tr("Front sprocket");
    case PricedPart::RearSteel:
      return Say::tr("Rear sprocket, steel");
    case PricedPart::RearAluminium:
      return Say::tr("Rear sprocket, aluminium");
    case PricedPart::JoiningLink:
      return Say::tr("Joining link");
    case PricedPart::Kit:
      return Say::tr("Kit: chain and both sprockets");
    case PricedPart::FrontPulley:
      return Say::tr("Front pulley");
    case PricedPart::RearPulley:
      return Say::tr("Rear pulley");
    case PricedPart::Belt:
      return Say::tr("Belt");
    case PricedPart::RearTyre:
      break;
  }
  return Say::tr("Rear tyre");
}

QString priceText(const Profile& profile, const std::optional<double>& price) {
  if (!price) return Say::tr("–");
  const QString currency = profile.prices ? shownName(profile.prices->currency) : QString();
  const QString amount = number(*price, 2);
  return currency.isEmpty() ? amount : Say::tr("%1 %2", "amount and currency").arg(amount, currency);
}

OrderTable orderTable(const Profile& profile, const PartsList& list) {
  OrderTable table{{{Say::tr("Part"), Say::tr("From"), Say::tr("Price")}}, {false}};
  for (const PartLine& line : list.lines) {
    if (line.source == PartSource::Keep) continue;
    table.rows.push_back(
        {line.kind == PartKind::RearTyre
             ? partSays({partText(line),
                         QString::fromStdString(applied(profile.proposed, profile.stock).rearTyre.text())})
             : partText(line),
         partSourceText(line), line.source == PartSource::Buy ? priceText(profile, line.price) : QString()});
    table.crossedOff.push_back(line.source != PartSource::Buy);
  }
  return table;
}

std::vector<QStringList> choiceTable(const Profile& profile, const Plan& plan, const UnitsShown& units) {
  if (isBelt(plan.proposed.setup)) return {};
  std::vector<QStringList> rows{
      {Say::tr("To Choose From"), Say::tr("Wear"), Say::tr("Mass"), Say::tr("Price")}};
  for (const MaterialChoice& choice : rearMaterials(profile, plan)) {
    const bool steel = choice.material == SprocketMaterial::Steel;
    const QString mass =
        choice.massKg
            ? Say::tr("≈ %1", "an estimated mass")
                  .arg(units.withUnit(number(units.shown(Quantity::Mass, *choice.massKg), 2), Quantity::Mass))
            : Say::tr("–");
    rows.push_back({pricedPartName(steel ? PricedPart::RearSteel : PricedPart::RearAluminium),
                    steel ? Say::tr("slower than aluminium") : Say::tr("faster than steel"), mass,
                    priceText(profile, choice.price)});
  }
  const auto addChain = [&](PricedPart part, double limit) {
    rows.push_back({pricedPartName(part), Say::tr("usual limit %1 % elongation").arg(number(limit, 0)),
                    Say::tr("–"), priceText(profile, priceOf(profile, part))});
  };
  addChain(PricedPart::ChainPlain, defaults::kPlainChainWearLimitPercent);
  addChain(PricedPart::ChainSealed, defaults::kSealedChainWearLimitPercent);
  return rows;
}

QStringList orderNotes(const Profile& profile, const PartsList& list, const UnitsShown& units) {
  QStringList notes;
  if (list.wornSet) notes << Say::tr("Worn out: replace chain and both sprockets as a set.");
  for (const WearMix mix : list.mixes) notes << mixText(mix);
  if (!list.buysAnything()) notes << Say::tr("Nothing has to be bought.");
  if (list.singleParts)
    notes << Say::tr("Single parts: %1.").arg(priceText(profile, list.singleParts));
  else if (list.buysAnything())
    notes << Say::tr("Single parts: no sum, for a price is missing. Prices are typed under Edit ▸ Prices.");
  if (list.kit) notes << Say::tr("As a kit: %1.").arg(priceText(profile, list.kit));
  if (list.life) notes << lifeText(*list.life, useUnitOf(profile), units);
  if (list.costPerUse) notes << costText(profile, *list.costPerUse, units);
  return notes;
}

QString orderText(const Profile& profile, const Plan& plan, const UnitsShown& units) {
  const PartsList list = partsList(profile, plan);
  QString out =
      Say::tr("Parts to order: %1", "the bike's name").arg(shownName(profile.name)) + QStringLiteral("\n\n");
  const OrderTable table = orderTable(profile, list);
  for (std::size_t i = 1; i < table.rows.size(); ++i) {
    const QStringList& row = table.rows[i];
    const QString mark = table.crossedOff[i] ? QStringLiteral("[x] ") : QStringLiteral("[ ] ");
    QStringList cells = row;
    cells.removeAll(QString());
    cells.removeAll(Say::tr("–"));
    out += mark + cells.join(Say::tr("; ", "between what is said of a part")) + QLatin1Char('\n');
  }
  if (table.rows.size() > 1) out += QLatin1Char('\n');
  for (const QString& note : orderNotes(profile, list, units)) out += note + QLatin1Char('\n');
  if (const auto choices = choiceTable(profile, plan, units); !choices.empty())
    out += QLatin1Char('\n') + alignedTable(choices);
  out += QLatin1Char('\n');
  for (const QString& caution : cautionsFor(plan, CautionPlace::Work)) out += caution + QLatin1Char('\n');
  return out;
}

}  // namespace layshaft::ui
