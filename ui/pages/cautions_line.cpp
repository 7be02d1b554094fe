// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/cautions_line.h"

#include <algorithm>

namespace layshaft::ui {

CautionsLine::CautionsLine(QWidget* parent) : QLabel(parent) {
  setAccessibleName(tr("Cautions"));
  setWordWrap(true);
  setContentsMargins(10, 2, 10, 4);
  QFont small = font();
  constexpr double kSmallest = 9.0;  // pt; a caution is never smaller
  small.setPointSizeF(std::max(kSmallest, small.pointSizeF() * 0.9));
  setFont(small);
}

void CautionsLine::show(const Plan& plan, CautionPlace place) {
  const QString words = cautionsFor(plan, place).join(QLatin1Char(' '));
  setVisible(!words.isEmpty());
  if (text() != words) setText(words);
}

}  // namespace layshaft::ui
