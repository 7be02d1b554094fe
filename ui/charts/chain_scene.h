// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPainter>
#include <QTransform>
#include <optional>

#include "core/parts/chain_path.h"
#include "core/plan.h"
#include "ui/charts/palette.h"

namespace layshaft::ui {

constexpr double kSlotHalfHeightM = 0.008;  // of the axle's slot

/// One setup's loop as it is drawn.
struct ChainLoop {
  const SetupPlan* setup;
  ChainPair pair;
  std::optional<ChainPath> path;  ///< none where the chain does not reach
  double centreM;
};

/// Px that the labels need round the drawing.
struct LabelRoom {
  double over, under, side;
};

/// Stock's and the proposal's loop, and where on the screen they are: all that is to scale in the picture of
/// the chain run.
struct ChainScene {
  /// Both setups of the plan, which must outlive the scene, must have a chain run.
  ChainScene(const Plan& plan, double turn);

  /// Both loops into `area`, with room for the labels. The scale changes in steps, not with every tooth, and
  /// stock stays where it is.
  void fitInto(const QRectF& area, const LabelRoom& labels);
  /// The axle and its slot alone.
  void zoomInto(const QRectF& area);

  /// What is stock's: swingarm, slot and the ghost of its loop. The same whatever is proposed, as long as
  /// `toPixels` is.
  void paintStock(QPainter& painter, const ChartPalette& colours) const;
  void paintProposal(QPainter& painter, const ChartPalette& colours) const;

  const Plan& plan;
  ChainLoop stock, proposed;
  double turn;          ///< of the rear wheel, 0 to 1
  QTransform toPixels;  ///< from metres along and across the line from countershaft to axle
};

}  // namespace layshaft::ui
