// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/sheet/sheets.h"

#include <QCoreApplication>
#include <QFontMetricsF>
#include <QLocale>
#include <QPageSize>
#include <algorithm>

#include "ui/sheet/paper.h"
#include "ui/words/plain_text.h"

namespace layshaft::ui {
namespace {

struct Say {
  Q_DECLARE_TR_FUNCTIONS(Sheets)
};

constexpr double kLogoHeight = 3.6, kLogoShare = 0.35;  // of a line of text; of the width
constexpr double kHeadGap = 0.5;                        // of a line of text
constexpr double kLargestText = 1.25;                   // read at arm's length
constexpr double kLargestCard = 2.0;                    // a pit card is read from two metres away

/// Title and shop at the left, logo at the right.
Block letterhead(const Shop& shop, const QString& title) {
  const QFont titleFont = paperFont(16, true), lineFont = paperFont(10);
  const double line = QFontMetricsF(lineFont).height();
  const auto textWidth = [logo = shop.logo.has_value()](double width) {
    return logo ? (1.0 - kLogoShare) * width : width;
  };
  const auto textHeight = [=](double width) {
    return brokenHeight(titleFont, title, textWidth(width)) +
           (shop.line.isEmpty() ? 0.0 : brokenHeight(lineFont, shop.line, textWidth(width)));
  };
  return {.height =
              [=](double width) {
                return std::max(textHeight(width), shop.logo ? kLogoHeight * line : 0.0) + kHeadGap * line;
              },
          .paint =
              [=](QPainter& painter, const QRectF& area) {
                const double left = textWidth(area.width());
                drawBroken(painter, titleFont, QRectF(area.topLeft(), QSizeF(left, area.height())), title);
                const double under = brokenHeight(titleFont, title, left);
                drawBroken(painter, lineFont,
                           QRectF(area.left(), area.top() + under, left, area.height() - under), shop.line);
                if (shop.logo) shop.logo->paint(painter, area.adjusted(left, 0, 0, -kHeadGap * line));
              }};
}

}  // namespace

Block sheetHead(const SheetInput& input, const QString& title) {
  const Block head = letterhead(input.shop, title);
  const Block fields =
      fieldBlock({{Say::tr("Customer"), shownName(input.profile.customer).simplified()},
                  {Say::tr("Machine"), shownName(input.profile.name).simplified()},
                  {Say::tr("Date"),
                   input.day.isValid() ? QLocale().toString(input.day, QLocale::LongFormat) : QString()}});
  return {.height = [=](double width) { return head.height(width) + fields.height(width); },
          .paint =
              [=](QPainter& painter, const QRectF& area) {
                const double above = head.height(area.width());
                head.paint(painter, QRectF(area.topLeft(), QSizeF(area.width(), above)));
                fields.paint(painter, area.adjusted(0, above, 0, 0));
              }};
}

QString sheetName(SheetKind kind) {
  switch (kind) {
    case SheetKind::Bench:
      return Say::tr("Bench sheet");
    case SheetKind::PitCard:
      return Say::tr("Pit card");
    case SheetKind::WorkOrder:
      return Say::tr("Work order");
    case SheetKind::Parts:
      break;
  }
  return Say::tr("Parts to order");
}

QString sheetWord(SheetKind kind) {
  return sheetName(kind).toLower();
}

BlockSheet makeSheet(SheetKind kind, const SheetInput& input) {
  const QString title = Say::tr("%1 – %2", "a sheet and the bike")
                            .arg(sheetName(kind), shownName(input.profile.name).simplified());
  switch (kind) {
    case SheetKind::Bench:
      return {title, benchSheet(input)};
    case SheetKind::PitCard:
      return {title, pitCard(input), kLargestCard};
    case SheetKind::WorkOrder:
      return {title, workOrderSheet(input), kLargestText};
    case SheetKind::Parts:
      break;
  }
  return {title, partsSheet(input), kLargestText};
}

std::optional<QString> writeSheet(const Sheet& sheet, PictureFormat format, const QPageSize& paper,
                                  QIODevice& out) {
  return format == PictureFormat::Pdf ? writePdf(sheet, paper, out) : writePng(sheet, paper, out);
}

}  // namespace layshaft::ui
