// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/track_painting.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "ui/charts/contrast.h"
#include "ui/charts/steady_range.h"
#include "ui/words/lap_words.h"
#include "ui/words/numbers.h"

namespace layshaft::ui {
namespace {

constexpr double kPieces = 160.0;                   // of a lap at least, so that colours change smoothly
constexpr double kThinnest = 2.0, kThickest = 7.0;  // px
constexpr double kTellingSPerM = 2e-5;              // won or lost: 2 ms on 100 m
constexpr double kAround = 30.0;                    // of a lap, either way
constexpr double kPaleShare = 0.55;

}  // namespace

std::vector<TrackPiece> trackPieces(const TrackLine& line) {
  std::vector<TrackPiece> pieces;
  const double longest = std::max(line.lengthM / kPieces, 1e-3);
  for (std::size_t i = 0; i + 1 < line.places.size(); ++i) {
    const TrackPlace &a = line.places[i], &b = line.places[i + 1];
    const int parts = std::max(1, static_cast<int>(std::ceil((b.distanceM - a.distanceM) / longest)));
    const auto at = [&](int part) {
      const double share = static_cast<double>(part) / parts;
      return std::pair{QPointF(a.xM + share * (b.xM - a.xM), a.yM + share * (b.yM - a.yM)),
                       a.distanceM + share * (b.distanceM - a.distanceM)};
    };
    for (int part = 0; part < parts; ++part) {
      const auto from = at(part), to = at(part + 1);
      pieces.push_back({from.first, to.first, from.second, to.second});
    }
  }
  return pieces;
}

TrackPainting::TrackPainting(const Scene& scene) : scene_(scene), metrics_(scene.font) {
  if (!scene_.book.laps()) return;
  const auto& points = scene_.book.proposed().points;
  const auto [low, high] =
      std::minmax_element(points.begin(), points.end(),
                          [](const LapPoint& a, const LapPoint& b) { return a.speedMps < b.speedMps; });
  slowestMps_ = low->speedMps;
  fastestMps_ = high->speedMps;
}

QPen TrackPainting::speedPen(double mps) const {
  const double share = fastestMps_ > slowestMps_ ? (mps - slowestMps_) / (fastestMps_ - slowestMps_) : 0.0;
  const QColor slow = scene_.colours.pinColour(0), fast = scene_.colours.proposed;
  return {mixed(slow, fast, share), kThinnest + share * (kThickest - kThinnest)};
}

QPen TrackPainting::gearPen(int gear) const {
  const double width = std::min(kThickest, kThinnest + 0.9 * (gear - 1));
  const QColor pale = standingOut(mixed(scene_.colours.proposed, scene_.colours.background, kPaleShare),
                                  {scene_.colours.background}, kLineContrast);
  return {gear % 2 == 0 ? pale : scene_.colours.proposed, width};
}

QPen TrackPainting::wonPen(double perMetre) const {
  if (std::abs(perMetre) < kTellingSPerM) return {scene_.colours.stock, kThinnest};
  QPen pen(perMetre > 0.0 ? scene_.colours.proposed : scene_.colours.pinColour(0), kThickest);
  if (perMetre < 0.0) pen.setDashPattern({0.5, 0.3});
  return pen;
}

/// Round about a place, but not beyond its part: what a gap of a shift does is not told by itself.
double TrackPainting::wonPerMetre(double distanceM) const {
  const double reach = scene_.book.lengthM / kAround;
  const LapPart* part = scene_.book.partAt(distanceM);
  const double from = std::max(part ? part->fromM : 0.0, distanceM - reach);
  const double to = std::min(part ? part->toM : scene_.book.lengthM, distanceM + reach);
  return to > from ? wonS(scene_.book.proposed(), from, to) / (to - from) : 0.0;
}

QPen TrackPainting::penOf(const TrackPiece& piece) const {
  QPen pen(scene_.colours.line, kThinnest);
  const double middle = (piece.fromM + piece.toM) / 2.0;
  const auto point = scene_.book.laps() ? lapAt(scene_.book.proposed(), middle) : std::nullopt;
  if (point) switch (scene_.colouring) {
      case TrackColouring::Speed:
        pen = speedPen(point->speedMps);
        break;
      case TrackColouring::Gear:
        if (point->gear) pen = gearPen(*point->gear);
        break;
      case TrackColouring::Won:
        pen = wonPen(wonPerMetre(middle));
        break;
    }
  // Square ends leave no gaps between pieces.
  pen.setCapStyle(pen.style() == Qt::SolidLine ? Qt::SquareCap : Qt::FlatCap);
  return pen;
}

void TrackPainting::paint(QPainter& painter) const {
  painter.fillRect(QRectF(QPointF(0, 0), scene_.size), scene_.colours.background);
  if (scene_.pieces.empty()) return;
  painter.setFont(scene_.font);
  painter.setRenderHint(QPainter::Antialiasing);
  for (const TrackPiece& piece : scene_.pieces) {
    painter.setPen(penOf(piece));
    painter.drawLine(scene_.toPixels.map(piece.from), scene_.toPixels.map(piece.to));
  }
  paintStart(painter);
  paintNames(painter);
  paintScale(painter);
}

/// A stroke across the start, and an arrow beside the road on the way from it.
void TrackPainting::paintStart(QPainter& painter) const {
  const TrackPiece& first = scene_.pieces.front();
  const QPointF at = scene_.toPixels.map(first.from), towards = scene_.toPixels.map(first.to) - at;
  const double length = std::hypot(towards.x(), towards.y());
  if (!(length > 0.0)) return;
  const QPointF along = towards / length, across(-along.y(), along.x());
  constexpr double kHalf = 9.0, kArrow = 9.0;
  painter.setPen(QPen(scene_.colours.text, 2, Qt::SolidLine, Qt::FlatCap));
  painter.drawLine(at - kHalf * across, at + kHalf * across);
  const QPointF foot = at + kHalf * 1.3 * across;
  painter.setBrush(scene_.colours.text);
  painter.setPen(Qt::NoPen);
  painter.drawPolygon(QPolygonF{foot + (kArrow + 8.0) * along, foot + 8.0 * along + 0.45 * kArrow * across,
                                foot + 8.0 * along - 0.45 * kArrow * across});
  painter.setPen(QPen(scene_.colours.text, 1.4));
  painter.drawLine(foot, foot + 8.0 * along);
  painter.setBrush(Qt::NoBrush);
}

void TrackPainting::putNear(QPainter& painter, LabelSpace& space, double distanceM, const QString& text,
                            const QColor& colour) const {
  const TrackPlace there = placeAt(*scene_.book.line, distanceM);
  const QPointF at = scene_.toPixels.map(QPointF(there.xM, there.yM));
  const QFontMetricsF metrics(painter.font());
  const QSizeF size(std::ceil(metrics.horizontalAdvance(text)), std::ceil(metrics.height()));
  std::vector<QRectF> places;
  for (const double gap : {6.0, 11.0, 18.0, 27.0}) {
    const double w = size.width(), h = size.height(), x = at.x(), y = at.y();
    for (const QPointF& corner :
         {QPointF(x + gap, y - h / 2), QPointF(x - gap - w, y - h / 2), QPointF(x - w / 2, y + gap),
          QPointF(x - w / 2, y - gap - h), QPointF(x + gap, y + gap), QPointF(x - gap - w, y - gap - h),
          QPointF(x + gap, y - gap - h), QPointF(x - gap - w, y + gap)})
      places.emplace_back(corner, size);
  }
  const auto place = space.put(places);
  if (!place) return;
  constexpr double kFarAway = 40.0;  // px: a name there would be another corner's
  if (std::hypot(place->center().x() - at.x(), place->center().y() - at.y()) > kFarAway + size.width() / 2.0)
    return;
  painter.setPen(colour);
  painter.drawText(*place, Qt::AlignCenter, text);
}

/// What is won or lost in each part, where that can be told.
void TrackPainting::paintTimes(QPainter& painter, LabelSpace& space) const {
  for (const LapPart& part : scene_.book.parts) {
    const double won = wonS(scene_.book.proposed(), part.fromM, part.toM);
    if (std::abs(won) >= kLapBandS)
      putNear(painter, space, (part.fromM + part.toM) / 2.0, wonText(won),
              scene_.colours.words(won > 0.0 ? scene_.colours.proposed : scene_.colours.pinColour(0)));
  }
}

/// Each gear where it begins.
void TrackPainting::paintGears(QPainter& painter, LabelSpace& space) const {
  const auto& points = scene_.book.proposed().points;
  for (std::size_t i = 0; i < points.size(); ++i)
    if (points[i].gear && (i == 0 || points[i - 1].gear != points[i].gear))
      putNear(painter, space, points[i].distanceM, number(*points[i].gear, 0), scene_.colours.proposed);
}

/// The names of corners; with them what the colours say.
void TrackPainting::paintNames(QPainter& painter) const {
  LabelSpace space(QRectF(QPointF(0, 0), scene_.size).adjusted(2, 2, -2, -2.0 * metrics_.height()));
  for (const TrackPiece& piece : scene_.pieces)
    space.avoid(QPolygonF{scene_.toPixels.map(piece.from), scene_.toPixels.map(piece.to)});
  constexpr double kStart = 14.0;  // px, of the stroke and its arrow
  space.take(QRectF(scene_.toPixels.map(scene_.pieces.front().from) - QPointF(kStart, kStart),
                    QSizeF(2.0 * kStart, 2.0 * kStart)));
  if (scene_.book.laps() && scene_.colouring == TrackColouring::Won) paintTimes(painter, space);
  if (scene_.book.laps() && scene_.colouring == TrackColouring::Gear) paintGears(painter, space);
  std::vector<std::size_t> bends;
  std::vector<double> slowness(scene_.book.parts.size(), 0.0);
  for (std::size_t i = 0; i < scene_.book.parts.size(); ++i) {
    if (!scene_.book.parts[i].bend) continue;
    bends.push_back(i);
    if (scene_.book.laps()) slowness[i] = partFigures(scene_.book, scene_.book.proposed(), i).minMps;
  }
  std::stable_sort(bends.begin(), bends.end(),
                   [&](std::size_t a, std::size_t b) { return slowness[a] < slowness[b]; });
  for (const std::size_t i : bends) {
    QString name = scene_.book.parts[i].name;
    if (scene_.book.laps() && scene_.colouring == TrackColouring::Speed)
      name = tr("%1 %2", "a corner and the lowest speed in it")
                 .arg(name, number(scene_.units.shown(Quantity::Speed, slowness[i]), 0));
    putNear(painter, space, (scene_.book.parts[i].fromM + scene_.book.parts[i].toM) / 2.0, name,
            scene_.colours.text);
  }
}

QString TrackPainting::legend() const {
  if (!scene_.book.laps()) return {};
  const auto speed = [&](double mps) { return number(scene_.units.shown(Quantity::Speed, mps), 0); };
  switch (scene_.colouring) {
    case TrackColouring::Gear:
      return tr("Each number is the gear from there on");
    case TrackColouring::Won:
      return tr("Solid: won, broken: lost, thin: equal; in s");
    case TrackColouring::Speed:
      break;
  }
  return tr("Thin %1 to thick %2 %3", "speeds and their unit")
      .arg(speed(slowestMps_), speed(fastestMps_), scene_.units.name(Quantity::Speed));
}

/// What the line means, and how long a stretch of a round length is.
void TrackPainting::paintScale(QPainter& painter) const {
  const QFontMetricsF metrics(painter.font());
  const double line = metrics.height(), bottom = scene_.size.height() - 4.0;
  const double pxPerShown = scene_.toPixels.m11() * scene_.units.si(Quantity::Length, 1.0);
  const double length = roundRange(0.0, std::max(0.16 * scene_.size.width() / pxPerShown, 1e-6), 1).step;
  const double px = length * pxPerShown;
  const QString words = scene_.units.withUnit(number(length, 0), Quantity::Length);
  painter.setPen(QPen(scene_.colours.text, 1));
  const QPointF from(8.0, bottom - 1.5 * line), to = from + QPointF(px, 0);
  painter.drawLine(from, to);
  for (const QPointF& end : {from, to}) painter.drawLine(end - QPointF(0, 3), end + QPointF(0, 3));
  painter.drawText(QPointF(to.x() + 6.0, from.y() + metrics.ascent() / 2.0 - 1.0), words);
  painter.setPen(scene_.colours.mutedText);
  painter.drawText(QRectF(8.0, bottom - line, scene_.size.width() - 16.0, line),
                   Qt::AlignLeft | Qt::AlignVCenter,
                   metrics.elidedText(legend(), Qt::ElideRight, scene_.size.width() - 16.0));
}

}  // namespace layshaft::ui
