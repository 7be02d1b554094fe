// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/sprocket_fields.h"

#include <QCoreApplication>
#include <algorithm>

#include "ui/editors/profile_fields.h"

namespace layshaft::ui {
namespace {

QString tr(const char* text) {
  return QCoreApplication::translate("SprocketFields", text);
}

/// A choice of chain sizes; the first entry stands for none.
ChoiceField sizeChoice(const QString& label, const QString& explanation, const QString& none,
                       const std::function<std::optional<ChainSize>&(Profile&)>& member) {
  QStringList names{none};
  for (const ChainSize& size : kChainSizes) names << QString::fromUtf8(size.name.data());
  return {.label = label,
          .explanation = explanation,
          .choices = names,
          .get =
              [member](const Profile& p) {
                Profile copy = p;  // reaching a block may make it
                const auto value = member(copy);
                const auto found =
                    value ? std::find(kChainSizes.begin(), kChainSizes.end(), *value) : kChainSizes.end();
                return found == kChainSizes.end() ? 0 : static_cast<int>(found - kChainSizes.begin()) + 1;
              },
          .set =
              [member](Profile& p, int index) {
                auto& value = member(p);
                if (index > 0)
                  value = kChainSizes[static_cast<std::size_t>(index - 1)];
                else
                  value.reset();
              }};
}

SetupOptions& stockOptions(Profile& p) {
  return p.stock.options;
}
SetupOptions& proposedOptions(Profile& p) {
  return p.proposed.options;
}

/// A whole or broken number among a setup's options.
template <class Number>
NumberField optionNumber(SetupOptions& (*options)(Profile&), const QString& label, const QString& explanation,
                         FileUnit unit, const Limit& limit, int decimals,
                         std::optional<Number> SetupOptions::*member, const QString& usual = {}) {
  return {.label = label,
          .explanation = explanation,
          .unit = unit,
          .limit = limit,
          .decimals = decimals,
          .whenMissing = usual,
          .get = [options, member](const Profile& p) -> std::optional<double> {
            Profile copy = p;
            const auto& value = options(copy).*member;
            return value ? std::optional(static_cast<double>(*value)) : std::nullopt;
          },
          .set =
              [options, member](Profile& p, std::optional<double> x) {
                if (x)
                  options(p).*member = static_cast<Number>(*x);
                else
                  (options(p).*member).reset();
              }};
}

using Reach = std::optional<SprocketDetails>& (*)(Profile&);

/// A proposed sprocket of which nothing is said follows stock again.
template <class Field>
Field leavingNothingEmpty(Field field, Reach reach) {
  field.set = [set = field.set, reach](Profile& p, auto value) {
    set(p, value);
    if (reach(p) == SprocketDetails{}) reach(p).reset();
  };
  return field;
}

void addSprocket(FieldForm& form, const QString& whose, Reach reach) {
  const auto choose = [&](const ChoiceField& field) { form.addChoice(leavingNothingEmpty(field, reach)); };
  const QString same = tr("as the chain it came with");
  choose(sizeChoice(tr("%1: cut for").arg(whose),
                    tr("Chain size of its teeth; a chain of another size does not run on it."), same,
                    [reach](Profile& p) -> std::optional<ChainSize>& { return made(reach(p)).size; }));
  choose(choice(tr("%1: material").arg(whose), tr("Its mass is estimated from it until it is weighed."),
                kMaterialWords, {tr("not known"), tr("steel"), tr("aluminium")},
                [reach](Profile& p) -> std::optional<SprocketMaterial>& { return made(reach(p)).material; }));
  form.addNumber(leavingNothingEmpty(
      blockNumber(tr("%1: mass").arg(whose),
                  tr("Weighed. Pull and runs count the difference from stock where both were weighed."),
                  FileUnit::Kilogram, limits::kSprocketMassKg, 3, reach, &SprocketDetails::massKg),
      reach));
}

}  // namespace

void addStockLoop(FieldForm& form) {
  form.addChoice(choice(tr("Final drive"), tr("Chain, or toothed belt."), kFinalDriveWords,
                        {tr("chain (usual)"), tr("chain"), tr("belt")},
                        [](Profile& p) -> std::optional<FinalDrive>& { return p.stock.options.finalDrive; }));
  form.addChoice(
      sizeChoice(tr("Chain size"), tr("Of stock's chain."), tr("not known"),
                 [](Profile& p) -> std::optional<ChainSize>& { return p.stock.options.chainSize; }));
  form.addNumber(optionNumber(stockOptions, tr("Links"), tr("Of stock's chain, the joining one counted."),
                              FileUnit::Plain, limits::kLinks, 0, &SetupOptions::links));
  form.addNumber(optionNumber(stockOptions, tr("Chain elongation"),
                              tr("By how much stock's chain has grown longer with wear, per cent."),
                              FileUnit::Plain, limits::kElongationPercent, 2,
                              &SetupOptions::chainElongationPercent, QStringLiteral("0")));
  form.addNumber(optionNumber(stockOptions, tr("Belt pitch"), tr("Distance from tooth to tooth of the belt."),
                              FileUnit::Millimetre, limits::kBeltPitchMm, 2, &SetupOptions::beltPitchMm));
  form.addNumber(optionNumber(stockOptions, tr("Belt teeth"), tr("Of stock's belt."), FileUnit::Plain,
                              limits::kBeltTeeth, 0, &SetupOptions::beltTeeth));
  form.addList(
      {.label = tr("Belt lengths on sale"),
       .explanation = tr("Lengths in teeth that the belt can be had in: no other can be fitted."),
       .limit = limits::kBeltTeeth,
       .most = limits::kMostBeltLengths,
       .get =
           [](const Profile& p) {
             return p.bike.chainRun ? p.bike.chainRun->beltLengthsTeeth : std::vector<int>();
           },
       .set = [](Profile& p,
                 const std::vector<int>& lengths) { made(p.bike.chainRun).beltLengthsTeeth = lengths; }});
}

void addProposedLoop(FieldForm& form) {
  form.addHeading(tr("The proposal's own, where it differs; chain size and links are in the drive line."));
  form.addChoice(
      choice(tr("Proposed: final drive"), tr("Chain, or toothed belt."), kFinalDriveWords,
             {tr("as stock"), tr("chain"), tr("belt")},
             [](Profile& p) -> std::optional<FinalDrive>& { return p.proposed.options.finalDrive; }));
  form.addNumber(optionNumber(proposedOptions, tr("Proposed: chain elongation"),
                              tr("0 for a new chain; one that is left open is as worn as stock's."),
                              FileUnit::Plain, limits::kElongationPercent, 2,
                              &SetupOptions::chainElongationPercent));
  form.addNumber(optionNumber(proposedOptions, tr("Proposed: belt pitch"),
                              tr("Distance from tooth to tooth of the belt."), FileUnit::Millimetre,
                              limits::kBeltPitchMm, 2, &SetupOptions::beltPitchMm));
  form.addNumber(optionNumber(proposedOptions, tr("Proposed: belt teeth"), tr("Of the proposed belt."),
                              FileUnit::Plain, limits::kBeltTeeth, 0, &SetupOptions::beltTeeth));
}

void addSprockets(FieldForm& form) {
  addSprocket(form, tr("Stock front"),
              [](Profile& p) -> std::optional<SprocketDetails>& { return p.stock.options.frontSprocket; });
  addSprocket(form, tr("Stock rear"),
              [](Profile& p) -> std::optional<SprocketDetails>& { return p.stock.options.rearSprocket; });
  form.addHeading(
      tr("The proposal's own. Of a sprocket of which anything is said here nothing follows stock."));
  addSprocket(form, tr("Proposed front"),
              [](Profile& p) -> std::optional<SprocketDetails>& { return p.proposed.options.frontSprocket; });
  addSprocket(form, tr("Proposed rear"),
              [](Profile& p) -> std::optional<SprocketDetails>& { return p.proposed.options.rearSprocket; });
}

}  // namespace layshaft::ui
