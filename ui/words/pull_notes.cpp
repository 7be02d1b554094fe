// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/pull_notes.h"

#include <QCoreApplication>

#include "ui/words/choice_words.h"
#include "ui/words/numbers.h"
#include "ui/words/road_words.h"

namespace layshaft::ui {
namespace {

struct PullNotes {
  Q_DECLARE_TR_FUNCTIONS(PullNotes)
};

QString beyondWords(const TorqueSpline::Beyond& beyond) {
  const QString sentence =
      beyond.falls
          ? PullNotes::tr(
                "Beyond the curve's last point, %1 rpm, the torque is assumed to go on "
                "falling as it does there.")
          : PullNotes::tr("Beyond the curve's last point, %1 rpm, the torque is assumed to stay level.");
  return sentence.arg(number(beyond.lastPointRpm, 0));
}

QString surfaceWords(const Plan& plan) {
  return PullNotes::tr(
             "The rolling resistance typed for %1, %2, counts instead of the one growing with speed.")
      .arg(choiceWord(wordFor(plan.input.shared.ride.surface.value_or(Surface::Asphalt), kSurfaceWords)),
           QLocale().toString(plan.road.rolling.base, 'g', 3));
}

QString slipWords(double slip) {
  return PullNotes::
      tr("Wheel slip %1 %: pull, acceleration and top speed are with it, gearing, speeds at the rev limit "
         "and cruise without.")
          .arg(number(100.0 * slip, 0));
}

}  // namespace

QStringList pullNotes(const Plan& plan, const UnitsShown& units) {
  QStringList notes;
  if (const QString estimated = estimatedCurveWords(*plan.pullBike); !estimated.isEmpty()) notes << estimated;
  if (const QString typical = typicalWords(*plan.pullBike, units); !typical.isEmpty()) notes << typical;
  if (const QString assumed = assumedWords(*plan.pullBike, units); !assumed.isEmpty()) notes << assumed;
  if (plan.pullBike->torque)
    if (const auto& beyond = plan.pullBike->torque->beyond()) notes << beyondWords(*beyond);
  if (plan.road.slip > 0.0) notes << slipWords(plan.road.slip);
  if (surfaceOverrulesForm(plan.input.shared.bike, plan.input.shared.ride)) notes << surfaceWords(plan);
  return notes;
}

}  // namespace layshaft::ui
