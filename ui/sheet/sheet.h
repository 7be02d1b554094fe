// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QIODevice>
#include <QPageLayout>
#include <QPainter>
#include <QRectF>
#include <QString>
#include <optional>

class QPagedPaintDevice;

namespace layshaft::ui {

/// Something that goes on paper. It lays itself out for the room it gets, so that nothing is cut off whatever
/// the paper.
class Sheet {
 public:
  virtual ~Sheet() = default;
  virtual QString title() const = 0;
  /// How the paper usually lies.
  virtual QPageLayout::Orientation orientation() const { return QPageLayout::Landscape; }
  /// Pages that it takes, each with that much room.
  virtual int pageCount(const QSizeF& room) const = 0;
  /// Paints one page, the first is 0. A point is as large as on the screen (`sheetDpi`).
  virtual void paintPage(QPainter& painter, const QRectF& room, int page) const = 0;
};

/// Dots per inch that sheets are laid out in: those in which texts are measured.
int sheetDpi();

/// Puts the pages that the device asks for on it, inside its margins. Nothing if it worked, else what went
/// wrong. To be called with a device of `sheetDpi`.
std::optional<QString> paintSheet(const Sheet& sheet, QPagedPaintDevice& device);

/// The sheet as a PDF on that paper, with narrow margins.
std::optional<QString> writePdf(const Sheet& sheet, const QPageSize& paper, QIODevice& out);

/// The sheet as one picture on that paper, page below page, with twice the pixels of the screen.
std::optional<QString> writePng(const Sheet& sheet, const QPageSize& paper, QIODevice& out);

}  // namespace layshaft::ui
