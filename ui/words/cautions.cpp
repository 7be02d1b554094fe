// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/cautions.h"

#include <QCoreApplication>

namespace layshaft::ui {
namespace {

struct Say {
  Q_DECLARE_TR_FUNCTIONS(Cautions)
};

}  // namespace

QString closedCourseCaution() {
  return Say::tr("Top speed, speeds near the rev limit and run figures are for a closed course.");
}

QStringList cautions() {
  return {
      Say::tr("Engine off and rear wheel clear of the ground before a hand goes near the chain."),
      Say::tr("Torque values, adjuster marks and chain slack: from the bike's own manual. Turn the wheel by "
              "hand and check brakes, chain guard and clearances."),
      closedCourseCaution(),
      Say::tr("Other gearing or another tyre size can change speedometer, traction control, ABS, emissions "
              "approval, insurance and warranty: ask a licensed workshop and follow local law.")};
}

}  // namespace layshaft::ui
