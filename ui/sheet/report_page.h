// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDate>

#include "core/plan.h"
#include "ui/sheet/sheet.h"
#include "ui/words/key_figures.h"
#include "ui/words/units_shown.h"

namespace layshaft::ui {

class TextCache;

/// The report on one page: the bike's name, readout, sawtooth and speed per gear, and what must be known
/// before acting on it. Needs a QApplication, on any platform.
class ReportSheet : public Sheet {
 public:
  /// `day`: what stands beside the setups as the day it was made; none where it is not valid. `picked`: the
  /// key figures; empty: the usual ones.
  ReportSheet(SharedPlan plan, const UnitsShown& units, const QDate& day = {},
              std::vector<Figure> picked = {})
      : plan_(std::move(plan)), units_(units), day_(day), picked_(std::move(picked)) {}

  QString title() const override;
  int pageCount(const QSizeF&) const override { return 1; }
  void paintPage(QPainter& painter, const QRectF& room, int page) const override;

 private:
  void paint(QPainter& painter, const QSizeF& room) const;
  QString setupWords() const;
  QStringList foot() const;
  struct Parts;
  Parts partsIn(double width, TextCache& texts) const;

  SharedPlan plan_;
  UnitsShown units_;
  QDate day_;
  std::vector<Figure> picked_;
};

enum class PictureFormat { Png, Pdf };

/// The report on A4, without a day. Nothing if it worked, else what went wrong.
std::optional<QString> writeReportPage(const Plan& plan, const UnitsShown& units, PictureFormat format,
                                       QIODevice& out);

}  // namespace layshaft::ui
