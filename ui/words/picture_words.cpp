// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/words/picture_words.h"

#include <QCoreApplication>

#include "ui/words/cautions.h"
#include "ui/words/numbers.h"
#include "ui/words/plain_text.h"
#include "ui/words/road_words.h"

namespace layshaft::ui {
namespace {

struct Say {
  Q_DECLARE_TR_FUNCTIONS(PictureWords)
};

}  // namespace

QString pictureHeading(const Plan& plan) {
  return Say::tr("%1: stock %2, proposed %3", "bike and pairs")
      .arg(shownName(plan.bikeName).simplified(), teethPair(plan.stock.setup),
           teethPair(plan.proposed.setup));
}

QString pictureCaption(const Plan& plan, bool fromTorque) {
  QStringList sentences = cautionsFor(plan, CautionPlace::Readout);
  if (fromTorque && !plan.pullBike->typical.empty())
    sentences.prepend(Say::tr("Rests on values typical of the class of bike, not measured."));
  if (fromTorque) sentences.prepend(estimatedCurveWords(*plan.pullBike));
  sentences.removeAll(QString());
  return sentences.join(QLatin1Char(' '));
}

}  // namespace layshaft::ui
