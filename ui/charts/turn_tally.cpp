// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/turn_tally.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>

#include "ui/words/chain_words.h"
#include "ui/words/numbers.h"

namespace layshaft::ui {
namespace {

constexpr double kTallyMargin = 12.0;  // px

struct Say {
  Q_DECLARE_TR_FUNCTIONS(TurnTally)
};

double sentenceHeight(const TallyStyle& style, const Plan& plan, double width) {
  return std::max(style.texts.wrappedHeight(style.boldFont, turnWords(plan), width - 2 * kTallyMargin),
                  QFontMetricsF(style.boldFont).height());
}

}  // namespace

double turnTallyHeight(const TallyStyle& style, const Plan& plan, double width) {
  return sentenceHeight(style, plan, width) + 3.6 * QFontMetricsF(style.boldFont).height();
}

void paintTurnTally(QPainter& painter, const QRectF& area, const Plan& plan, double turn,
                    const TallyStyle& style) {
  const double line = QFontMetricsF(style.boldFont).height();
  QRectF row(area.left() + kTallyMargin, area.top(), area.width() - 2 * kTallyMargin,
             sentenceHeight(style, plan, area.width()));
  painter.setPen(QPen(style.colours.line, 1));
  painter.drawLine(area.topLeft(), area.topRight());
  row.translate(0, line * 0.15);
  painter.setPen(style.colours.text);
  style.texts.drawWrapped(painter, style.boldFont, row, turnWords(plan));

  const auto turns = [&](const SetupPlan& setup) { return setup.gearing.finalRatio; };
  const double most = std::max(turns(plan.stock), turns(plan.proposed));
  const QString names[] = {Say::tr("Stock %1").arg(teethPair(plan.stock.setup)),
                           Say::tr("Proposed %1").arg(teethPair(plan.proposed.setup))};
  double nameWidth = 0.0;
  for (const QString& name : names) nameWidth = std::max(nameWidth, style.texts.width(style.boldFont, name));
  const QString sample = Say::tr("00.00 of 00.00 turns");
  const double room = row.width() - nameWidth - style.texts.width(style.font, sample) - 30.0;
  const double pitch = std::min(line * 1.7, room / std::max(1.0, std::ceil(most)));
  const double radius = std::min(line * 0.62, pitch * 0.44);
  double y = row.bottom() + line * 0.25;
  int index = 0;
  for (const SetupPlan* setup : {&plan.stock, &plan.proposed}) {
    const QColor colour = setup == &plan.stock ? style.colours.stock : style.colours.proposed;
    const double all = turns(*setup), done = all * turn;
    const QRectF here(row.left(), y, row.width(), line * 1.45);
    painter.setPen(colour);
    style.texts.draw(painter, style.boldFont, QRectF(here.left(), here.top(), nameWidth, here.height()),
                     Qt::AlignLeft, names[index++]);
    const double x0 = here.left() + nameWidth + 14.0;
    const int discs = static_cast<int>(std::ceil(all - 1e-9));
    for (int d = 0; d < discs; ++d) {
      const QRectF disc(x0 + d * pitch, here.center().y() - radius, 2 * radius, 2 * radius);
      const auto pie = [&](double from, double share) {
        // From straight up, the way the wheel turns in the picture.
        painter.drawPie(disc, static_cast<int>(std::lround(16 * (90.0 + 360.0 * from))),
                        static_cast<int>(std::lround(16 * 360.0 * share)));
      };
      const double whole = std::clamp(all - d, 0.0, 1.0), part = std::clamp(done - d, 0.0, 1.0);
      painter.setPen(QPen(colour, 1.2));
      painter.setBrush(faint(colour, 45));
      if (whole >= 1.0) {
        painter.drawEllipse(disc);
      } else {
        pie(0.0, whole);
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(style.colours.line, 1.0));
        painter.drawEllipse(disc);
        painter.setPen(QPen(colour, 1.2));
      }
      painter.setBrush(colour);
      if (part >= 1.0)
        painter.drawEllipse(disc);
      else if (part > 0.0)
        pie(0.0, part);
    }
    painter.setPen(style.colours.text);
    const QString count = turn > 0.0 && turn < 1.0
                              ? Say::tr("%1 of %2 turns").arg(number(done, 2), number(all, 2))
                              : Say::tr("%1 turns").arg(number(all, 2));
    style.texts.draw(painter, style.font,
                     QRectF(x0 + std::ceil(most - 1e-9) * pitch + 8.0, here.top(),
                            style.texts.width(style.font, sample) + 20.0, here.height()),
                     Qt::AlignLeft, count);
    y += line * 1.5;
  }
}

}  // namespace layshaft::ui
