// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/speed_bars.h"

#include <QPainter>
#include <algorithm>

#include "ui/charts/palette.h"
#include "ui/words/gear_words.h"
#include "ui/words/numbers.h"

namespace layshaft::ui {
namespace {

constexpr double kLines = 5.0;      // of text that the picture is high, the gears' numbers included
constexpr double kBarShare = 0.36;  // of a gear's width
constexpr double kBarMargin = 4.0;  // px

}  // namespace

SpeedBars::SpeedBars(QWidget* parent) : QWidget(parent) {
  exposeReadablePictures();
  setAccessibleName(tr("Speed in each gear"));
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::MinimumExpanding);
}

double SpeedBars::mostMps(const Plan& plan) {
  double most = 0.0;
  for (const SetupPlan* setup : {&plan.stock, &plan.proposed})
    for (const GearFigures& gear : setup->gearing.gears)
      most = std::max(most, gear.speedAtRevLimitMps.value_or(0.0));
  return most;
}

void SpeedBars::show(const SharedPlan& plan, const UnitsShown& units, double mostMps) {
  plan_ = plan;
  units_ = units;
  mostMps_ = mostMps;
  QStringList words;
  for (const GearFigures& gear : plan_->proposed.gearing.gears)
    if (gear.speedAtRevLimitMps)
      words << tr("%1 to %2", "a gear and its speed at the rev limit")
                   .arg(gearOrdinal(gear.gear),
                        units_.withUnit(number(units_.shown(Quantity::Speed, *gear.speedAtRevLimitMps), 0),
                                        Quantity::Speed));
  setAccessibleDescription(words.join(tr(", ", "between gears")));
  update();
}

QSize SpeedBars::sizeHint() const {
  return {8 * fontMetrics().averageCharWidth(), static_cast<int>(kLines * fontMetrics().height())};
}

void SpeedBars::paintEvent(QPaintEvent*) {
  if (!plan_ || mostMps_ <= 0.0) return;
  QPainter painter(this);
  const ChartPalette colours(palette(), QPalette::Window);
  const double words = fontMetrics().height();
  const QRectF plot = QRectF(contentsRect()).adjusted(kBarMargin, kBarMargin, -kBarMargin, -words);
  const auto &was = plan_->stock.gearing.gears, &is = plan_->proposed.gearing.gears;
  const auto gears = std::max(was.size(), is.size());
  const double width = plot.width() / static_cast<double>(gears), bar = kBarShare * width;
  const auto place = [&](std::size_t gear, double from, double mps) {
    const double height = plot.height() * mps / mostMps_;
    return QRectF(plot.left() + static_cast<double>(gear) * width + from, plot.bottom() - height, bar,
                  height);
  };
  for (std::size_t gear = 0; gear < gears; ++gear) {
    const double left = width / 2.0 - bar;
    if (gear < was.size()) {
      const QRectF box = place(gear, left, was[gear].speedAtRevLimitMps.value_or(0.0));
      painter.setPen(QPen(colours.stock, 1.0));
      painter.setBrush(QBrush(colours.stock, Qt::BDiagPattern));
      painter.drawRect(box);
    }
    if (gear < is.size())
      painter.fillRect(place(gear, left + bar, is[gear].speedAtRevLimitMps.value_or(0.0)), colours.proposed);
    painter.setPen(colours.text);
    painter.drawText(QRectF(plot.left() + static_cast<double>(gear) * width, plot.bottom(), width, words),
                     Qt::AlignCenter, number(static_cast<double>(gear + 1), 0));
  }
  painter.setPen(QPen(colours.line, 1.0));
  painter.drawLine(plot.bottomLeft(), plot.bottomRight());
}

}  // namespace layshaft::ui
