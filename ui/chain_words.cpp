// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/chain_words.h"

#include <QCoreApplication>
#include <cmath>

#include "ui/wording.h"

namespace layshaft::ui {
namespace {

QString tr(const char* text) {
  return QCoreApplication::translate("ChainWords", text);
}

/// "3.7 mm back", "2.1 mm forward", "stays".
QString shiftWords(double shiftM, const UnitsShown& units) {
  const int decimals = units.system() == UnitSystem::Imperial ? 2 : 1;
  const QString size = number(std::abs(units.shown(Quantity::SmallLength, shiftM)), decimals);
  if (size == number(0.0, decimals)) return tr("stays where it is");
  return (shiftM > 0.0 ? tr("moves %1 %2 back") : tr("moves %1 %2 forward"))
      .arg(size, units.name(Quantity::SmallLength));
}

bool isBelt(const SetupPlan& setup) {
  return setup.setup.options.finalDrive.value_or(FinalDrive::Chain) == FinalDrive::Belt;
}

}  // namespace

QString misfitWords(Misfit misfit, const SetupPlan& setup, const UnitsShown& units) {
  switch (misfit) {
    case Misfit::AxleTooFarForward:
    case Misfit::AxleTooFarBack:
      return tr("the axle %1, beyond its slot").arg(shiftWords(setup.chainRun->axleShiftM, units));
    case Misfit::FrontTooLarge:
      return tr("the front sprocket is too large for its place");
    case Misfit::FrontTooSmall:
      return tr("the front sprocket is smaller than allowed");
    case Misfit::RearTooLarge:
      return tr("the rear sprocket is too large for its place");
    case Misfit::RearTooSmall:
      return tr("the rear sprocket is smaller than allowed");
    case Misfit::MixedSizes:
      return tr("the chain's size is not that of the sprockets that stay");
    case Misfit::ChainDoesNotReach:
      break;
  }
  return tr("the chain does not reach round");
}

QString lengthWords(const std::vector<FittingLength>& lengths, const UnitsShown& units) {
  QStringList words;
  for (const FittingLength& length : lengths)
    words << tr("%1 (axle %2)").arg(length.links).arg(shiftWords(length.axleShiftM, units));
  return words.join(tr(", "));
}

QString fitWords(const Plan& plan, const SetupPlan& setup, const UnitsShown& units) {
  const auto& run = setup.chainRun;
  if (!run) return {};
  const QString loop =
      isBelt(setup) ? tr("a belt of %1 teeth").arg(run->links) : tr("%1 links").arg(run->links);
  if (run->fits.value_or(true)) {
    const bool asStock = plan.stock.chainRun && std::abs(run->axleShiftM) < 1e-6;
    if (asStock) return {};
    const QString axle = tr("the axle %1").arg(shiftWords(run->axleShiftM, units));
    return run->fits ? tr("Fits with %1: %2.").arg(loop, axle)
                     : tr("With %1 %2; how far it may go is not given.").arg(loop, axle);
  }
  QStringList reasons;
  for (const Misfit misfit : run->misfits) reasons << misfitWords(misfit, setup, units);
  QString words = tr("Does not fit with %1: %2.").arg(loop, reasons.join(tr(", ")));
  if (!run->lengthsThatFit.empty())
    words += QLatin1Char(' ') + tr("Would fit: %1.").arg(lengthWords(run->lengthsThatFit, units));
  return words;
}

}  // namespace layshaft::ui
