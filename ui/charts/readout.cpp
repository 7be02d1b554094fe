// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/readout.h"

#include <QAccessible>
#include <QCoreApplication>
#include <QEvent>
#include <QPainter>
#include <QResizeEvent>
#include <QStyle>
#include <QStyleOption>
#include <algorithm>
#include <array>
#include <cmath>

namespace layshaft::ui {
namespace {

constexpr double kSideMargin = 24.0;
constexpr double kTopMargin = 10.0;
constexpr int kLeastCharacters = 40;  // of the whole strip
constexpr double kSignGap = 6.0;      // between the warning sign and the headline
constexpr double kCellGap = 8.0;      // between two figures
constexpr double kUnitGap = 4.0;      // between a figure and its unit
constexpr double kSmallestPt = 7.0;   // common practice: the smallest size that is read on a screen
constexpr QStringView kArrow = u"\u200a→\u200a";

/// What must be known before acting, in one paragraph.
QString cautionLine(const Summary& summary) {
  return summary.cautions.join(QLatin1Char(' '));
}

QFont sized(const QFont& font, double factor, bool bold = false) {
  QFont result = font;
  result.setPointSizeF(std::max(9.0, font.pointSizeF() * factor));
  result.setBold(bold);
  return result;
}

struct Fonts {
  QFont headline, tightHeadline, detail, caution, label, value, valueBold, tightValue, unit;
  /// `cellWidth` is what a figure has: in a narrow one the values are smaller, so that "3,551→3,637 rpm"
  /// fits.
  explicit Fonts(const QFont& font, double cellWidth = 0)
      : headline(sized(font, 1.45, true)),
        tightHeadline(sized(font, 1.1, true)),
        detail(sized(font, 1.0)),
        caution(sized(font, 0.9)),
        label(sized(font, 0.92)),
        value(sized(font, valueFactor(font, cellWidth))),
        valueBold(sized(font, valueFactor(font, cellWidth), true)),
        tightValue(sized(font, kTightest)),
        unit(sized(font, 0.92)) {}

 private:
  static constexpr double kTightest = 0.85;
  static double valueFactor(const QFont& font, double cellWidth) {
    constexpr double kRoomy = 1.25, kTight = 0.95, kCharacters = 15;
    if (cellWidth <= 0) return kRoomy;
    return std::clamp(cellWidth / (kCharacters * QFontMetricsF(font).horizontalAdvance(QLatin1Char('0'))),
                      kTight, kRoomy);
  }
};

/// Where the parts of the readout stand, from its top margin on.
struct Heights {
  bool tight;  ///< the headline is too long for large letters
  double headline, detail, cautions, label, row, figures;
  double all() const { return kTopMargin + headline + 2 + detail + cautions + 6 + figures + 8; }
};

/// A figure's label, which breaks between words and never inside "km/h".
QString labelText(const KeyFigure& figure) {
  constexpr QChar kJoiner(0x2060);
  QString label = figure.label;
  return label.replace(QLatin1Char('/'), kJoiner + QStringLiteral("/") + kJoiner);
}

/// How the key figures stand: side by side where there is room to read them so, else in rows.
struct Grid {
  std::size_t columns, rows;
  double cellWidth;

  Grid(const QFont& font, double width, std::size_t figures) {
    constexpr double kReadable = 12.5;  // characters that a cell must have: "3,551→3,637 rpm", set tight
    const double least = kReadable * QFontMetricsF(font).horizontalAdvance(QLatin1Char('0')) + kCellGap;
    // Never fewer places than six, so that a figure stays where it was when another comes or goes.
    const std::size_t places = std::max<std::size_t>(std::min(figures, kMostFigures), 6);
    const auto fitting = static_cast<std::size_t>(std::max(width / least, 1.0));
    rows = (places + fitting - 1) / std::max<std::size_t>(fitting, 1);
    columns = (places + rows - 1) / rows;
    cellWidth = width / static_cast<double>(columns);
  }
};

/// The headline as it is read out: "Does not fit. Shorter …".
QString headlineText(const Summary& summary) {
  return summary.misfit.isEmpty()
             ? summary.headline
             : Readout::tr("%1. %2", "does not fit, and the headline").arg(summary.misfit, summary.headline);
}

Heights heightsFor(const Fonts& fonts, const Grid& grid, double width, const Summary& summary,
                   const std::vector<KeyFigure>& figures, TextCache& texts) {
  const QFontMetricsF headline(fonts.headline), detail(fonts.detail), label(fonts.label);
  const QString words = headlineText(summary);
  const double sign = summary.misfit.isEmpty() ? 0.0 : headline.height() + kSignGap;
  Heights heights{.tight = texts.width(fonts.headline, words) + sign > width,
                  .headline = headline.height(),
                  .detail = texts.wrappedHeight(fonts.detail, summary.detail, width),
                  .cautions = texts.wrappedHeight(fonts.caution, cautionLine(summary), width),
                  .label = label.height(),
                  .row = 0.0,
                  .figures = 0.0};
  if (heights.tight)
    heights.headline =
        std::max(heights.headline, texts.wrappedHeight(fonts.tightHeadline, words, width - sign));
  const double cell = grid.cellWidth - kCellGap;
  for (const KeyFigure& figure : figures)
    heights.label = std::max(heights.label, texts.wrappedHeight(fonts.label, labelText(figure), cell));
  heights.row = heights.label + label.height() + QFontMetricsF(fonts.value).height() + 4;
  heights.figures = heights.row * static_cast<double>(grid.rows);
  return heights;
}

/// A triangle with an exclamation mark, as high as the line.
void paintWarningSign(QPainter& painter, const QRectF& square, const ChartPalette& colours) {
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  const QRectF box = square.adjusted(1, 2, -1, -2);
  painter.setPen(QPen(colours.warning, 2.0, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
  painter.setBrush(faint(colours.warning, 40));
  const std::array<QPointF, 3> corners{QPointF(box.center().x(), box.top()), box.bottomRight(),
                                       box.bottomLeft()};
  painter.drawConvexPolygon(corners.data(), static_cast<int>(corners.size()));
  painter.setPen(QPen(colours.text, 2.2, Qt::SolidLine, Qt::RoundCap));
  const double x = box.center().x(), height = box.height();
  painter.drawLine(QPointF(x, box.top() + 0.38 * height), QPointF(x, box.top() + 0.64 * height));
  painter.drawPoint(QPointF(x, box.top() + 0.83 * height));
  painter.restore();
}

bool changes(const KeyFigure& figure) {
  return figure.stock != figure.proposed;
}

/// What one figure is written in.
struct FigureFonts {
  QFont value, bold, unit;
};

double figureWidth(const FigureFonts& fonts, const KeyFigure& figure, TextCache& texts) {
  const double unit = kUnitGap + texts.width(fonts.unit, figure.unit);
  const double stock = texts.width(fonts.value, figure.stock);
  if (!changes(figure)) return stock + unit;
  return stock + texts.width(fonts.value, kArrow.toString()) + texts.width(fonts.bold, figure.proposed) +
         unit;
}

/// The font, made smaller by half points until it fits or cannot be read any smaller.
template <class Fits>
QFont smallerUntil(QFont font, Fits fits) {
  while (!fits(font) && font.pointSizeF() > kSmallestPt)
    font.setPointSizeF(std::max(kSmallestPt, font.pointSizeF() - 0.5));
  return font;
}

/// More digits than usual are written smaller, so that no figure runs into the next one.
FigureFonts fittingFonts(const Fonts& fonts, const KeyFigure& figure, double width, TextCache& texts) {
  FigureFonts fitting{fonts.value, fonts.valueBold, fonts.unit};
  const auto with = [&](const QFont& value) {
    FigureFonts smaller{value, value, fonts.unit};
    smaller.bold.setBold(true);
    smaller.unit.setPointSizeF(std::min(value.pointSizeF(), fonts.unit.pointSizeF()));
    return smaller;
  };
  if (figureWidth(fitting, figure, texts) <= width) return fitting;
  return with(smallerUntil(fonts.tightValue, [&](const QFont& value) {
    return figureWidth(with(value), figure, texts) <= width;
  }));
}

void paintFigure(QPainter& painter, const QRectF& cell, double labelHeight, const Fonts& fonts,
                 const ChartPalette& colours, const KeyFigure& figure, TextCache& texts) {
  const QFontMetricsF valueMetrics(fonts.value);
  double y = cell.top();
  painter.setPen(colours.mutedText);
  const QString label = labelText(figure);
  // A short label stands just above its figure, whatever its neighbours need.
  const double high = texts.wrappedHeight(fonts.label, label, cell.width());
  texts.drawWrapped(painter, fonts.label, QRectF(cell.left(), y + labelHeight - high, cell.width(), high),
                    label);
  y += labelHeight;
  const FigureFonts own = fittingFonts(fonts, figure, cell.width(), texts);
  // On one line with the other figures, whatever their size.
  const double line = y + valueMetrics.ascent();
  double x = cell.left();
  const auto write = [&](const QFont& font, const QColor& colour, const QString& text) {
    painter.setPen(colour);
    texts.draw(painter, font, QPointF(x, line - QFontMetricsF(font).ascent()), text);
    x += texts.width(font, text);
  };
  if (changes(figure)) {
    write(own.value, colours.mutedText, figure.stock);
    write(own.value, colours.mutedText, kArrow.toString());
    write(own.bold, colours.proposed, figure.proposed);
  } else {
    write(own.value, colours.text, figure.stock);
  }
  x += kUnitGap;
  write(own.unit, colours.mutedText, figure.unit);
  y += valueMetrics.height();
  painter.setPen(colours.mutedText);
  QString difference = figure.difference;
  if (difference.isEmpty())
    difference = figure.stock == figure.proposed ? Readout::tr("As stock") : Readout::tr("Not comparable");
  const QFont differenceFont = smallerUntil(
      fonts.label, [&](const QFont& font) { return texts.width(font, difference) <= cell.width(); });
  texts.draw(painter, differenceFont, QPointF(cell.left(), y), difference);
}

}  // namespace

Readout::Readout(QWidget* parent) : QWidget(parent) {
  QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Fixed);
  policy.setHeightForWidth(true);
  setSizePolicy(policy);
  exposeReadableTexts();  // before the name makes the desktop ask what this is
  setAccessibleName(tr("Readout"));
  setFocusPolicy(Qt::TabFocus);  // so that it can be read at leisure
  setAttribute(Qt::WA_OpaquePaintEvent);
}

void Readout::show(const Plan& plan, const UnitsShown& units) {
  const QString before = QAccessible::isActive() ? text() : QString();
  summary_ = summary(plan, units);
  figures_ = keyFigures(plan, units, wanted_);
  if (QAccessible::isActive()) tellChangedText(*this, before, text());
  makeRoom();
  update();
}

int Readout::needed(int width) const {
  return static_cast<int>(std::ceil(heightFor(font(), width, summary_, figures_, texts_, low_)));
}

void Readout::setLow(bool low) {
  if (low == low_) return;
  low_ = low;
  room_ = {};
  makeRoom();
  updateGeometry();
}

void Readout::makeRoom() {
  const int before = room_.height();
  room_ = QSize(width(), std::max(needed(width()), room_.width() == width() ? before : 0));
  if (room_.height() != before) updateGeometry();
}

int Readout::heightForWidth(int width) const {
  return std::max(needed(width), room_.width() == width ? room_.height() : 0);
}

QString Readout::headline() const {
  return headlineText(summary_);
}

QString Readout::text() const {
  QStringList lines{headlineText(summary_), summary_.detail, cautionLine(summary_)};
  lines.removeAll(QString());
  for (const KeyFigure& figure : figures_) {
    QString value = figure.stock;
    if (figure.stock != figure.proposed)
      value = tr("%1 → %2", "stock and proposed").arg(figure.stock, figure.proposed);
    if (!figure.unit.isEmpty()) value = tr("%1 %2", "number and unit").arg(value, figure.unit);
    if (!figure.difference.isEmpty())
      value = tr("%1 (%2)", "figure and difference").arg(value, figure.difference);
    lines << tr("%1: %2", "what is measured, and the figure").arg(figure.label, value);
  }
  return lines.join(QLatin1Char('\n'));
}

double Readout::heightFor(const QFont& font, double width, const Summary& summary,
                          const std::vector<KeyFigure>& figures, TextCache& texts, bool low) {
  const double inside = width - 2 * kSideMargin;
  const Grid grid(font, inside, figures.size());
  const Fonts fonts(font, grid.cellWidth - kCellGap);
  // Two lines of words and three of cautions: the room that all but the longest need. In a low window one of
  // cautions, which most changes do with.
  const double usual = 2 * QFontMetricsF(fonts.detail).lineSpacing() + 2,
               usualCautions = (low ? 1 : 3) * QFontMetricsF(fonts.caution).lineSpacing();
  Heights heights = heightsFor(fonts, grid, inside, summary, figures, texts);
  const double spare = std::max(usual + usualCautions - heights.detail - heights.cautions, 0.0);
  return heights.all() + spare;
}

void Readout::paint(QPainter& painter, const QRectF& area, const QFont& font, const ChartPalette& colours,
                    const Summary& summary, const std::vector<KeyFigure>& figures, TextCache& texts) {
  const double width = area.width() - 2 * kSideMargin;
  const Grid grid(font, width, figures.size());
  const Fonts fonts(font, grid.cellWidth - kCellGap);
  const Heights heights = heightsFor(fonts, grid, width, summary, figures, texts);
  QRectF line(area.left() + kSideMargin, area.top() + kTopMargin, width, heights.headline);
  QRectF headline = line;
  if (!summary.misfit.isEmpty()) {
    const double size = QFontMetricsF(fonts.headline).height();
    paintWarningSign(painter, QRectF(line.left(), line.top(), size, size), colours);
    headline.setLeft(line.left() + size + kSignGap);
  }
  painter.setPen(colours.text);
  if (heights.tight)
    texts.drawWrapped(painter, fonts.tightHeadline, headline, headlineText(summary));
  else
    texts.draw(painter, fonts.headline, headline, Qt::AlignLeft, headlineText(summary));
  line = QRectF(line.left(), line.bottom() + 2, width, heights.detail);
  painter.setPen(colours.mutedText);
  texts.drawWrapped(painter, fonts.detail, line, summary.detail);
  line = QRectF(line.left(), line.bottom(), width, heights.cautions);
  painter.setPen(colours.text);
  texts.drawWrapped(painter, fonts.caution, line, cautionLine(summary));
  // The figures stand at the foot: where there is room to spare, it is above them.
  const QRectF first(line.left(), std::max(line.bottom() + 6, area.bottom() - 8 - heights.figures),
                     grid.cellWidth - kCellGap, heights.row);
  for (std::size_t i = 0; i < std::min(figures.size(), kMostFigures); ++i)
    paintFigure(painter,
                first.translated(static_cast<double>(i % grid.columns) * grid.cellWidth,
                                 static_cast<double>(i / grid.columns) * heights.row),
                heights.label, fonts, colours, figures[i], texts);
}

int Readout::leastWidth() const {
  return kLeastCharacters * fontMetrics().averageCharWidth();
}

QSize Readout::sizeHint() const {
  constexpr int kUsualWidth = 900;
  return {kUsualWidth, heightForWidth(std::max(width(), leastWidth()))};
}
QSize Readout::minimumSizeHint() const {
  return {leastWidth(), sizeHint().height()};
}

void Readout::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.fillRect(rect(), palette().color(QPalette::Window));
  paint(painter, rect(), font(), ChartPalette(palette(), QPalette::Window), summary_, figures_, texts_);
  if (!hasFocus()) return;
  QStyleOptionFocusRect frame;
  frame.initFrom(this);
  frame.rect = rect().adjusted(2, 2, -2, -2);
  style()->drawPrimitive(QStyle::PE_FrameFocusRect, &frame, &painter, this);
}

void Readout::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() != QEvent::FontChange) return;
  room_ = {};
  makeRoom();
}

void Readout::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  if (event->size().width() != event->oldSize().width()) makeRoom();
}

}  // namespace layshaft::ui
