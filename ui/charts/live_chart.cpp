// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/live_chart.h"

#include <QContextMenuEvent>
#include <QGraphicsItem>
#include <QGraphicsLayout>
#include <QKeyEvent>
#include <QLocale>
#include <QMouseEvent>
#include <QPainter>
#include <algorithm>
#include <cmath>
#include <limits>

#include "ui/words/chart_words.h"

namespace layshaft::ui {
namespace {

constexpr double kTopMargin = 10.0;
constexpr double kMarkerReach = 6.0;  // how near the pointer must be to take hold of the marker, px
constexpr double kKeyStepsPerTick = 10.0;

}  // namespace

/// Everything that lies under the series: the paper and the grid. Qt's own grid lines and axis lines are
/// antialiased one by one, which costs about a third of a step; upright and level lines need none.
class ChartGround : public QGraphicsItem {
 public:
  explicit ChartGround(LiveChart& chart) : chart_(chart) { setZValue(-10); }

  void moved() { prepareGeometryChange(); }
  QRectF boundingRect() const override { return chart_.scene_.sceneRect(); }
  void paint(QPainter* painter, const QStyleOptionGraphicsItem*, QWidget*) override {
    painter->fillRect(boundingRect(), chart_.colours().background);
    const QRectF plot = chart_.plotArea();
    painter->setRenderHint(QPainter::Antialiasing, false);
    // Filled, not drawn: the same pixels for an eighth of the cost.
    const auto upright = [&](double x, const QColor& colour) {
      painter->fillRect(QRectF(x - 0.5, plot.top(), 1.0, plot.height()), colour);
    };
    const auto level = [&](double y, const QColor& colour) {
      painter->fillRect(QRectF(plot.left(), y - 0.5, plot.width(), 1.0), colour);
    };
    const ChartPalette& colours = chart_.colours();
    for (const double x : ticks(chart_.xRange())) upright(chart_.at(x, 0).x(), colours.grid);
    for (const double y : ticks(chart_.yRange())) level(chart_.at(0, y).y(), colours.grid);
    upright(plot.left(), colours.line);
    level(plot.bottom(), colours.line);
  }

 private:
  LiveChart& chart_;
};

/// The page's own painting above the series, in one item for the plot and one for the foot: one paint call
/// each, whatever they hold.
class ChartOverlay : public QGraphicsItem {
 public:
  enum class Part { Plot, Foot };
  ChartOverlay(LiveChart& chart, Part part) : chart_(chart), part_(part) { setZValue(10); }

  void moved() { prepareGeometryChange(); }
  QRectF boundingRect() const override {
    return part_ == Part::Plot ? chart_.plotArea().adjusted(-1, -1, chart_.rightMargin(), 0)
                               : chart_.footArea();
  }
  void paint(QPainter* painter, const QStyleOptionGraphicsItem*, QWidget*) override {
    if (part_ == Part::Plot)
      chart_.paintOver(*painter);
    else
      chart_.paintFoot(*painter);
  }

 private:
  LiveChart& chart_;
  Part part_;
};

/// The upright line under the pointer and the table of what it reads.
class CrosshairItem : public QGraphicsItem {
 public:
  explicit CrosshairItem(LiveChart& chart) : chart_(chart) { setZValue(20); }

  void moveTo(std::optional<double> x) {
    prepareGeometryChange();
    rows_.clear();
    at_ = x;
    if (x) {
      title_ = chart_.crosshairTitle(*x);
      rows_ = chart_.crosshairRows(*x);
      sceneX_ = chart_.at(*x, 0).x();
    }
    setVisible(x.has_value() && !rows_.empty());
    if (isVisible()) place();
    update();
  }

  QRectF panel() const { return isVisible() ? panel_ : QRectF(); }
  QRectF boundingRect() const override {
    const QRectF plot = chart_.plotArea();
    return QRectF(sceneX_ - 1, plot.top(), 2, chart_.scene_.sceneRect().bottom() - plot.top())
        .united(panel_)
        .adjusted(-2, -2, 2, 2);
  }

  void paint(QPainter* painter, const QStyleOptionGraphicsItem*, QWidget*) override {
    const ChartPalette& colours = chart_.colours();
    const QRectF plot = chart_.plotArea();
    painter->setPen(QPen(colours.mutedText, 1));
    painter->drawLine(QPointF(sceneX_, plot.top()), QPointF(sceneX_, chart_.scene_.sceneRect().bottom()));
    painter->setRenderHint(QPainter::Antialiasing);
    painter->setPen(QPen(colours.panelBorder, 1));
    painter->setBrush(colours.panel);
    painter->drawRoundedRect(panel_, 4, 4);

    const auto names = chart_.setupNames();
    const auto setupColours = chart_.setupColours();
    QRectF line(panel_.left() + padding_, panel_.top() + padding_ / 2, firstWidth_, lineHeight_);
    const QFont font = font_;
    painter->setPen(colours.text);
    chart_.texts_.draw(*painter, boldFont_, line, Qt::AlignLeft, title_);
    const auto values = [&](const QRectF& from, const QStringList& texts) {
      QRectF cell(from.right(), from.top(), columnWidth_, lineHeight_);
      for (qsizetype i = 0; i < texts.size(); ++i, cell.translate(columnWidth_, 0)) {
        painter->setPen(setupColours[static_cast<std::size_t>(i)]);
        chart_.texts_.draw(*painter, font, cell, Qt::AlignRight, texts[i]);
      }
    };
    QStringList shortNames;
    for (const QString& name : names)
      shortNames << QFontMetricsF(font).elidedText(name, Qt::ElideRight, columnWidth_ - columnGap_);
    values(line, shortNames);
    for (const CrosshairRow& row : rows_) {
      line.translate(0, lineHeight_);
      painter->setPen(colours.mutedText);
      chart_.texts_.draw(*painter, font, line, Qt::AlignLeft, row.name);
      values(line, row.values);
    }
  }

 private:
  /// How it is set: closer in a small chart.
  struct Style {
    double widestName, columnGap, padding, lineShare, typeShare;
    bool brief;
  };
  static constexpr Style kRoomy{96.0, 14.0, 8.0, 1.15, 1.0, false}, kClose{46.0, 8.0, 4.0, 1.0, 0.85, true};

  void place() {
    const QRectF plot = chart_.plotArea();
    for (const Style& style : {kRoomy, kClose}) {
      if (style.brief) rows_ = chart_.briefRows(*at_);
      const QSizeF size = measure(style);
      const double covered = putPanel(size);
      if (covered == 0.0 && size.height() <= 0.85 * plot.height() && size.width() <= 0.6 * plot.width())
        return;
    }
  }

  /// Beside the line that is read, where the least of what is to be kept clear is covered; says how much.
  double putPanel(const QSizeF& size) {
    const QRectF plot = chart_.plotArea();
    // Of a chart that is scrolled, what is in view.
    const QRectF inView = chart_.viewport()->visibleRegion().boundingRect();
    const QRectF scene = inView.height() > size.height() ? inView : chart_.scene_.sceneRect();
    const auto clear = chart_.keptClear();
    std::vector<double> tops{plot.bottom() - size.height() - 10, plot.top() + 10,
                             scene.bottom() - size.height() - 4};
    for (const QRectF& area : clear) {
      tops.push_back(area.top() - size.height() - 4);
      tops.push_back(area.bottom() + 4);
    }
    double least = std::numeric_limits<double>::infinity(), covered = 0.0;
    for (const double left : {sceneX_ + 10, sceneX_ - 10 - size.width()})
      for (const double top : tops) {
        QRectF inside(QPointF(left, top), size);
        inside.moveLeft(std::clamp(left, scene.left(), std::max(scene.left(), scene.right() - size.width())));
        inside.moveTop(std::clamp(top, scene.top(), std::max(scene.top(), scene.bottom() - size.height())));
        double over = 0.0;
        for (const QRectF& area : clear) {
          const QRectF both = inside & area;
          over += both.isEmpty() ? 0.0 : both.width() * both.height();
        }
        // Rather over that than over the line that is read; rather over the plot than over what is below it.
        const double cost =
            over + (inside.left() != left ? 1e6 : 0.0) + (inside.bottom() > plot.bottom() ? 1.0 : 0.0);
        if (cost >= least) continue;
        least = cost;
        covered = over;
        panel_ = inside;
      }
    return covered;
  }

  QSizeF measure(const Style& style) {
    font_ = chart_.chartFont();
    font_.setPointSizeF(font_.pointSizeF() * style.typeShare);
    boldFont_ = font_;
    boldFont_.setBold(true);
    const QFontMetricsF metrics(boldFont_);
    padding_ = style.padding;
    columnGap_ = style.columnGap;
    lineHeight_ = std::ceil(metrics.height() * style.lineShare);
    columnWidth_ = 0;
    // A pin's name may be a sentence: it is cut so that all setups stay in view.
    for (const QString& name : chart_.setupNames())
      columnWidth_ = std::max(columnWidth_, std::min(metrics.horizontalAdvance(name), style.widestName));
    firstWidth_ = metrics.horizontalAdvance(title_);
    for (const CrosshairRow& row : rows_) {
      firstWidth_ = std::max(firstWidth_, metrics.horizontalAdvance(row.name));
      for (const QString& value : row.values)
        columnWidth_ = std::max(columnWidth_, metrics.horizontalAdvance(value));
    }
    columnWidth_ += columnGap_;
    const auto columns = static_cast<double>(chart_.setupNames().size());
    return {firstWidth_ + columns * columnWidth_ + 2 * padding_,
            static_cast<double>(rows_.size() + 1) * lineHeight_ + padding_};
  }

  LiveChart& chart_;
  std::optional<double> at_;
  QString title_;
  std::vector<CrosshairRow> rows_;
  double sceneX_ = 0;
  double lineHeight_ = 0, columnWidth_ = 0, firstWidth_ = 0, padding_ = 0, columnGap_ = 0;
  QFont font_, boldFont_;
  QRectF panel_;
};

LiveChart::LiveChart(QWidget* parent) : QGraphicsView(parent), colours_(palette()) {
  exposeReadablePictures();
  scene_.setSceneRect(QRectF(0, 0, 1, 1));  // an unset one would be worked out from items that ask for it
  setScene(&scene_);
  setFrameShape(QFrame::NoFrame);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setRenderHint(QPainter::Antialiasing);
  viewport()->setAutoFillBackground(false);  // the ground fills it
  viewport()->setAttribute(Qt::WA_OpaquePaintEvent);
  // The minimal mode splits antialiased lines over many small rectangles, which costs more than one large
  // one.
  setViewportUpdateMode(BoundingRectViewportUpdate);
  setFocusPolicy(Qt::StrongFocus);
  setAcceptDrops(false);  // a file dropped here is for the window
  viewport()->setAcceptDrops(false);
  setMouseTracking(true);
  viewport()->setMouseTracking(true);

  chart_ = new QChart;
  chart_->setAnimationOptions(QChart::NoAnimation);
  chart_->legend()->hide();
  chart_->setBackgroundVisible(false);
  chart_->setMargins({});
  chart_->setAcceptHoverEvents(false);
  chart_->setLocalizeNumbers(true);  // as every other number is written
  scene_.addItem(chart_);
  x_ = new QValueAxis(chart_);
  y_ = new QValueAxis(chart_);
  chart_->addAxis(x_, Qt::AlignBottom);
  chart_->addAxis(y_, Qt::AlignLeft);
  for (QValueAxis* axis : {x_, y_}) {
    axis->setTickType(QValueAxis::TicksDynamic);
    axis->setTickAnchor(0.0);
    axis->setTruncateLabels(false);
    axis->setGridLineVisible(false);
    axis->setLineVisible(false);
  }
  ground_ = new ChartGround(*this);
  overlay_ = new ChartOverlay(*this, ChartOverlay::Part::Plot);
  foot_ = new ChartOverlay(*this, ChartOverlay::Part::Foot);
  crosshair_ = new CrosshairItem(*this);
  crosshair_->setVisible(false);
  scene_.addItem(ground_);
  scene_.addItem(overlay_);
  scene_.addItem(foot_);
  scene_.addItem(crosshair_);
}

LiveChart::~LiveChart() {
  // The items refer to this object; the scene must not outlive them by a paint.
  setScene(nullptr);
}

void LiveChart::makeFonts() {
  font_ = font();
  font_.setPointSizeF(std::max(9.0, font_.pointSizeF() * 0.92));
  boldFont_ = font_;
  boldFont_.setBold(true);
}

double LiveChart::axisLabelHeight() const {
  return QFontMetricsF(chartFont()).height() + 8.0;
}

QLineSeries* LiveChart::addLine() {
  auto* series = new QLineSeries(chart_);
  chart_->addSeries(series);
  series->attachAxis(x_);
  series->attachAxis(y_);
  lines_.push_back(series);
  return series;
}

void LiveChart::feed(QLineSeries* series, const QList<QPointF>& points) {
  if (series->points() != points) series->replace(points);
}

void LiveChart::setRanges(const AxisRange& x, const AxisRange& y) {
  const auto apply = [](QValueAxis* axis, AxisRange& current, const AxisRange& wanted) {
    if (current == wanted) return;
    current = wanted;
    axis->setTickInterval(wanted.step);
    axis->setLabelFormat(wanted.step < 1.0 ? QStringLiteral("%.1f") : QStringLiteral("%.0f"));
    axis->setRange(wanted.low, wanted.high);
  };
  const bool moved = !(xRange_ == x) || !(yRange_ == y);
  apply(x_, xRange_, x);
  apply(y_, yRange_, y);
  if (moved) layOut();
}

void LiveChart::layOut() {
  const QSizeF size = viewport()->size();
  if (size.isEmpty()) return;
  ground_->moved();
  scene_.setSceneRect(QRectF(QPointF(0, 0), size));
  chart_->setGeometry(scene_.sceneRect());
  const QFontMetricsF metrics(chartFont());
  const double left = metrics.horizontalAdvance(QLocale().toString(std::max(std::abs(yRange_.high), 10.0),
                                                                   'f', yRange_.step < 1 ? 1 : 0)) +
                      22.0;
  const double bottom = axisLabelHeight() + footHeight();
  plot_ = QRectF(left, kTopMargin, std::max(10.0, size.width() - left - rightMargin()),
                 std::max(10.0, size.height() - kTopMargin - bottom));
  overlay_->moved();
  foot_->moved();
  chart_->setPlotArea(plot_);
  chart_->layout()->invalidate();  // else the axes keep their old place until some later event
  chart_->layout()->activate();
  updateOverlay();
  emit laidOut(plot_);
}

QSize LiveChart::minimumSizeHint() const {
  constexpr double kLines = 7.0;
  constexpr QSize kLeast(320, 180);
  const double plot = kLines * QFontMetricsF(chartFont()).height();
  const double height = kTopMargin + plot + axisLabelHeight() + footHeight();
  return kLeast.expandedTo({kLeast.width(), static_cast<int>(std::ceil(height))});
}

void LiveChart::ensureLaidOut() {
  viewport()->resize(size());
  applyPalette();
  layOut();
}

void LiveChart::updateOverlay() {
  overlayChanged();
  overlay_->update();
  foot_->update();
  if (crosshairX_) crosshair_->moveTo(crosshairX_);
}

std::optional<ReadablePicture::CrosshairSpan> LiveChart::crosshairSpan() const {
  return CrosshairSpan{xRange_.low, xRange_.high, xRange_.step / kKeyStepsPerTick};
}

QRectF LiveChart::crosshairPanel() const {
  return crosshair_->panel();
}

QString LiveChart::crosshairWords() const {
  if (!crosshairX_) return {};
  QStringList rows;
  for (const CrosshairRow& row : crosshairRows(*crosshairX_))
    if (const QString words = readingWords(row.name, setupNames(), row.values); !words.isEmpty())
      rows << words;
  return readingWords(spokenTitle(*crosshairX_), rows);
}

void LiveChart::describe() {
  setAccessibleDescription(hasFocus() && crosshairX_ ? crosshairWords() : inWords());
}

QRectF LiveChart::footArea() const {
  const double top = plot_.bottom() + axisLabelHeight();
  return {0, top, scene_.sceneRect().width(), std::max(0.0, scene_.sceneRect().bottom() - top)};
}

QPointF LiveChart::at(double x, double y) const {
  const double across = xRange_.high > xRange_.low ? (x - xRange_.low) / (xRange_.high - xRange_.low) : 0.0;
  const double up = yRange_.high > yRange_.low ? (y - yRange_.low) / (yRange_.high - yRange_.low) : 0.0;
  return {plot_.left() + across * plot_.width(), plot_.bottom() - up * plot_.height()};
}

double LiveChart::xAt(double sceneX) const {
  return xRange_.low + (sceneX - plot_.left()) / plot_.width() * (xRange_.high - xRange_.low);
}

void LiveChart::setCrosshair(std::optional<double> x) {
  if (x) x = std::clamp(*x, xRange_.low, xRange_.high);
  if (x == crosshairX_) return;
  crosshairX_ = x;
  crosshair_->moveTo(x);
  emit crosshairMoved();
  if (!hasFocus()) return;  // a pointer that passes by is not read out
  describe();
  tellMovedCrosshair(*this);
}

void LiveChart::usePalette(const QPalette& palette) {
  ownPalette_ = true;
  colours_ = ChartPalette(palette);
  applyPalette();
}

void LiveChart::applyPalette() {
  makeFonts();
  for (QValueAxis* axis : {x_, y_}) {
    axis->setLabelsBrush(colours_.mutedText);
    axis->setLabelsFont(chartFont());
  }
  recolour();
  ground_->update();
  updateOverlay();
}

bool LiveChart::event(QEvent* event) {
  // Tab leads to the next control of the window, not to parts of the picture, where it would never come out.
  if (event->type() == QEvent::KeyPress) {
    const int key = static_cast<QKeyEvent*>(event)->key();
    if (key == Qt::Key_Tab || key == Qt::Key_Backtab) return QWidget::event(event);
  }
  return QGraphicsView::event(event);
}

void LiveChart::paintEvent(QPaintEvent* event) {
  QGraphicsView::paintEvent(event);
  if (!hasFocus()) return;
  QPainter painter(viewport());
  painter.setPen(QPen(colours_.focus, 2));
  painter.drawRect(viewport()->rect().adjusted(1, 1, -1, -1));
}

void LiveChart::focusInEvent(QFocusEvent*) {
  viewport()->update();  // the scene is not told: nothing in it takes keys
}

void LiveChart::focusOutEvent(QFocusEvent*) {
  viewport()->update();
  if (!viewport()->underMouse()) setCrosshair(std::nullopt);
  describe();
}

void LiveChart::resizeEvent(QResizeEvent* event) {
  QGraphicsView::resizeEvent(event);
  layOut();
}

void LiveChart::changeEvent(QEvent* event) {
  QGraphicsView::changeEvent(event);
  if (event->type() != QEvent::PaletteChange && event->type() != QEvent::FontChange) return;
  if (!ownPalette_) colours_ = ChartPalette(palette());
  applyPalette();
  layOut();
}

bool LiveChart::overMarker(const QPointF& scene) const {
  const auto marker = markerX();
  return marker && scene.y() <= plot_.bottom() && std::abs(at(*marker, 0).x() - scene.x()) <= kMarkerReach;
}

void LiveChart::mouseMoveEvent(QMouseEvent* event) {
  const QPointF scene = mapToScene(event->position().toPoint());
  if (dragging_) {
    emit markerDragged(std::clamp(xAt(scene.x()), xRange_.low, xRange_.high), drag_);
    return;
  }
  viewport()->setCursor(overMarker(scene) ? Qt::SizeHorCursor : Qt::ArrowCursor);
  if (scene.x() >= plot_.left() && scene.x() <= plot_.right())
    setCrosshair(xAt(scene.x()));
  else
    setCrosshair(std::nullopt);
}

void LiveChart::mousePressEvent(QMouseEvent* event) {
  if (event->button() == Qt::LeftButton && overMarker(mapToScene(event->position().toPoint()))) {
    dragging_ = true;
    ++drag_;
    setCrosshair(std::nullopt);
  }
}

void LiveChart::mouseReleaseEvent(QMouseEvent*) {
  dragging_ = false;
}

void LiveChart::leaveEvent(QEvent* event) {
  QGraphicsView::leaveEvent(event);
  setCrosshair(std::nullopt);
}

void LiveChart::keyPressEvent(QKeyEvent* event) {
  const double step = xRange_.step / kKeyStepsPerTick;
  const double from = crosshairX_.value_or((xRange_.low + xRange_.high) / 2.0);
  switch (event->key()) {
    case Qt::Key_Left:
      return setCrosshair(from - step);
    case Qt::Key_Right:
      return setCrosshair(from + step);
    case Qt::Key_Home:
      return setCrosshair(xRange_.low);
    case Qt::Key_End:
      return setCrosshair(xRange_.high);
    case Qt::Key_Escape:
      if (crosshairX_) return setCrosshair(std::nullopt);
      break;
    default:
      break;
  }
  QGraphicsView::keyPressEvent(event);
}

void LiveChart::contextMenuEvent(QContextMenuEvent* event) {
  emit menuRequested(event->globalPos());
}

void LiveChart::renderInto(QPainter& painter, const QRectF& target) {
  const bool crosshair = crosshair_->isVisible();
  crosshair_->setVisible(false);
  painter.setRenderHint(QPainter::Antialiasing);
  scene_.render(&painter, target, scene_.sceneRect(), Qt::KeepAspectRatio);
  crosshair_->setVisible(crosshair);
}

}  // namespace layshaft::ui
