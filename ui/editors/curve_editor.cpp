// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/curve_editor.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QLocale>
#include <QPushButton>
#include <QSet>
#include <QVBoxLayout>
#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "core/limits.h"
#include "core/number_text.h"
#include "core/units.h"
#include "ui/editors/calm_spin_box.h"
#include "ui/editors/peaks_dialog.h"
#include "ui/words/numbers.h"
#include "ui/words/problem_words.h"

namespace layshaft::ui {
namespace {

bool isPower(CurveUnit unit) {
  return unit == CurveUnit::Kilowatt || unit == CurveUnit::Horsepower || unit == CurveUnit::MetricHorsepower;
}

/// N·m or W per unit.
double factorOf(CurveUnit unit) {
  switch (unit) {
    case CurveUnit::PoundFoot:
      return units::kNewtonMetresPerPoundFoot;
    case CurveUnit::Kilowatt:
      return 1000.0;
    case CurveUnit::Horsepower:
      return units::kWattsPerMechanicalHorsepower;
    case CurveUnit::MetricHorsepower:
      return units::kWattsPerMetricHorsepower;
    case CurveUnit::NewtonMetre:
      break;
  }
  return 1.0;
}

std::optional<double> torqueOf(double rpm, double value, CurveUnit unit) {
  if (!isPower(unit)) return value * factorOf(unit);
  if (!(rpm > 0.0)) return std::nullopt;
  return units::torqueFromPower(value * factorOf(unit), rpm);
}

/// A number that the table wrote itself, as it was written before thousands were grouped: its separators say
/// nothing about how others write theirs.
QString withoutGroups(QString cell) {
  return cell.remove(QLocale().groupSeparator());
}

double valueOf(const TorquePoint& point, CurveUnit unit) {
  if (!isPower(unit)) return point.torqueNm / factorOf(unit);
  return point.torqueNm * units::radPerSecondFromRpm(point.rpm) / factorOf(unit);
}

/// The digits that were typed in that unit, if they were: at most `kTypedDecimals`, and nothing behind them.
constexpr int kTypedDecimals = 3;
std::optional<double> asTyped(const TorquePoint& point, CurveUnit unit) {
  const double value = valueOf(point, unit);
  const double few = QString::number(value, 'f', kTypedDecimals).toDouble();
  constexpr double kNoise = 1e-10;  // the file keeps twelve digits
  return std::abs(few - value) <= kNoise * std::abs(value) ? std::optional(few) : std::nullopt;
}

/// The unit that a curve was typed in, where its digits tell. Of N·m, which every file is in, they do not.
std::optional<CurveUnit> typedUnit(const TorqueCurve& curve) {
  const auto typedIn = [&](CurveUnit unit) {
    int telling = 0;
    for (const TorquePoint& point : curve.points()) {
      if (!asTyped(point, unit)) return false;
      telling += point.torqueNm > 0.0 ? 1 : 0;
    }
    return telling >= 2;
  };
  if (typedIn(CurveUnit::NewtonMetre)) return std::nullopt;
  for (const CurveUnit unit :
       {CurveUnit::PoundFoot, CurveUnit::Horsepower, CurveUnit::Kilowatt, CurveUnit::MetricHorsepower})
    if (typedIn(unit)) return unit;
  return std::nullopt;
}

}  // namespace

std::optional<CurveUnit> curveUnitIn(const QString& title) {
  QString word = title.toLower();
  for (const QChar drop : {QLatin1Char(' '), QLatin1Char('-'), QLatin1Char('.'), QLatin1Char('*')})
    word.remove(drop);
  word.remove(QChar(0xb7)).remove(QChar(0x22c5));
  const auto has = [&](const char* part) { return word.contains(QLatin1String(part)); };
  if (has("lbft") || has("lbsft") || has("ftlb") || has("lbfft") || has("poundf"))
    return CurveUnit::PoundFoot;
  if (has("nm") || has("newton")) return CurveUnit::NewtonMetre;
  if (has("kw") || has("kilowatt")) return CurveUnit::Kilowatt;
  if (has("metrichp") || has("metrichorse")) return CurveUnit::MetricHorsepower;
  if (has("hp") || has("horse")) return CurveUnit::Horsepower;
  if (has("ps") || has("(cv") || word == QLatin1String("cv")) return CurveUnit::MetricHorsepower;
  return std::nullopt;
}

CurveEditor::CurveEditor(Document& document, QWidget* parent)
    : QWidget(parent), document_(document), unit_(new CalmComboBox), preview_(new CurvePreview) {
  auto* explanation =
      new QLabel(tr("Full-throttle curve, engine speed rising. Paste two columns from a spreadsheet, engine "
                    "speed in rpm first; a heading with a unit sets it."));
  explanation->setWordWrap(true);
  unit_->addItems(
      {tr("Torque, N·m"), tr("Torque, lb·ft"), tr("Power, kW"), tr("Power, hp"), tr("Power, PS")});
  unit_->setAccessibleName(tr("Second column"));
  unit_->setToolTip(
      tr("What the second column is in. The bike keeps torque in N·m; here it is shown as chosen."));
  auto* label = new QLabel(tr("Second column"));
  label->setBuddy(unit_);
  table_ = new ColumnsTable({tr("Engine Speed, rpm"), unit_->currentText()}, limits::kMostCurvePoints);
  table_->setAccessibleName(tr("Torque curve"));

  auto* choice = new QHBoxLayout;
  choice->addWidget(label);
  choice->addWidget(unit_);
  choice->addStretch();
  auto* estimate = new QPushButton(tr("Estimate From &Peaks…"));
  estimate->setToolTip(tr("Takes a curve estimated from the highest torque and power of a data sheet."));
  choice->addWidget(estimate);
  connect(estimate, &QPushButton::clicked, this, &CurveEditor::estimate);
  table_->setMinimumHeight(table_->verticalHeader()->defaultSectionSize() * 7);
  preview_->setMinimumHeight(preview_->fontMetrics().height() * 9);
  auto* column = new QVBoxLayout(this);
  column->addWidget(explanation);
  column->addLayout(choice);
  column->addWidget(table_, 3);
  estimated_ = new QLabel(tr("Estimated from peak power and torque."));
  estimated_->setWordWrap(true);
  estimated_->hide();
  column->addWidget(estimated_);
  column->addWidget(preview_, 2);

  connect(table_, &ColumnsTable::refused, this, &CurveEditor::said);
  connect(table_, &ColumnsTable::titlesPasted, this, [this](const QStringList& titles) {
    if (const auto named = curveUnitIn(titles.value(1))) {
      unitChosen_ = true;
      unit_->setCurrentIndex(static_cast<int>(*named));
      nameColumns();
    }
  });
  connect(table_, &ColumnsTable::pasted, this, [this] { pasted_ = true; });
  connect(table_, &ColumnsTable::edited, this, &CurveEditor::read);
  connect(&document_, &Document::loading, this, [this] {
    if (std::exchange(pending_, false)) emit said(QString());
  });
  connect(unit_, &QComboBox::activated, this, [this] {
    unitChosen_ = true;
    if (!pending_) return showPoints();
    nameColumns();
    read();
  });
}

QStringList CurveEditor::cellsOf(const TorquePoint& point) const {
  const auto text = [](double x) { return QLocale().toString(x, 'g', 6); };
  if (unit() == CurveUnit::NewtonMetre) return {text(point.rpm), text(point.torqueNm)};
  constexpr double kHundredths = 100.0;  // nobody reads a curve finer in a unit that it was not typed in
  return {
      text(point.rpm),
      text(asTyped(point, unit()).value_or(std::round(valueOf(point, unit()) * kHundredths) / kHundredths))};
}

std::vector<std::optional<double>> CurveEditor::numbersIn(const std::vector<QStringList>& rows, int column,
                                                          double highest) const {
  QSet<QString> own;
  if (const auto& curve = document_.profile().bike.engine.torqueCurve)
    for (const TorquePoint& point : curve->points()) own << cellsOf(point)[column];
  std::vector<QString> cells;
  for (const QStringList& row : rows) {
    const QString cell = row.value(column);
    cells.push_back(own.contains(cell) ? withoutGroups(cell) : cell);
  }
  return columnNumbers(cells, highest);
}

void CurveEditor::read() {
  const bool pasted = std::exchange(pasted_, false);
  const auto rows = table_->rows();
  const auto rpms = numbersIn(rows, 0, limits::kCurveRpm.high);
  const auto numbers = numbersIn(rows, 1, limits::kCurveTorqueNm.high);
  const auto& old = document_.profile().bike.engine.torqueCurve;
  std::vector<TorquePoint> points;
  for (std::size_t r = 0; r < rows.size(); ++r) {
    const auto torque = rpms[r] && numbers[r] ? torqueOf(*rpms[r], *numbers[r], unit()) : std::nullopt;
    if (!torque) {
      for (int c = 0; c < table_->columnCount(); ++c)
        if (rows[r].value(c).isEmpty())
          return refuse(tr("Row %1 has no number under “%2” yet; the curve is taken once every row has both.")
                            .arg(r + 1)
                            .arg(table_->horizontalHeaderItem(c)->text()));
      return refuse(tr("Row %1: “%2” is not understood; engine speed in rpm and %3 are expected.")
                        .arg(r + 1)
                        .arg(rows[r].join(QLatin1Char(' ')), unit_->currentText()));
    }
    TorquePoint point{.rpm = *rpms[r], .torqueNm = withoutNoise(*torque)};
    // A point that nobody touched keeps every digit, and what the table does not show of it.
    if (old)
      for (const TorquePoint& before : old->points())
        if (before.rpm == point.rpm) {
          if (cellsOf(before) == rows[r]) point.torqueNm = before.torqueNm;
          point.extras = before.extras;
        }
    points.push_back(std::move(point));
  }
  // Runs are also recorded from the top down. What is typed is never put in another order: a digit may lack.
  const bool falling = pasted && points.size() > 1 &&
                       std::adjacent_find(points.begin(), points.end(), [](const auto& a, const auto& b) {
                         return a.rpm <= b.rpm;
                       }) == points.end();
  if (falling) std::reverse(points.begin(), points.end());
  const EditName name{.field = QStringLiteral("bike.engine.torque_curve, edit %1").arg(++step_),
                      .title = tr("torque curve"),
                      .shown = {}};
  std::optional<TorqueCurve> curve;
  if (!points.empty()) {
    auto made = TorqueCurve::make(points);
    if (!made) {
      Problem problem = made.problem();
      problem.path = "bike.engine.torque_curve" + problem.path;
      return refuse(spokenSentence(problem));
    }
    curve = *made;
  }
  pending_ = false;
  reading_ = true;
  const auto conflict = document_.edit(name, [&](Profile& p) {
    if (p.bike.engine.torqueCurve != curve) p.bike.engine.curveEstimated.reset();
    p.bike.engine.torqueCurve = curve;
  });
  reading_ = false;
  if (conflict) return refuse(spokenSentence(*conflict));
  if (falling) showPoints();
  if (points.empty()) {
    emit said(QString());
  } else {
    const QString taken =
        tr("%1 points read: %2 to %3 rpm, second column read as %4.")
            .arg(points.size())
            .arg(number(points.front().rpm, 0), number(points.back().rpm, 0), unit_->currentText());
    emit said(falling ? tr("Engine speed was falling, so the rows were sorted. %1").arg(taken) : taken);
  }
  showPicture();
}

void CurveEditor::estimate() {
  const auto& limit = document_.profile().bike.engine.revLimitRpm;
  if (!limit)
    return emit said(
        tr("The estimate goes up to the rev limit: give it first, in the drive line below the pages."));
  auto* dialog = new PeaksDialog(*limit, units_, this);
  dialog->setAttribute(Qt::WA_DeleteOnClose);
  connect(dialog, &QDialog::accepted, this, [this, dialog] {
    const auto curve = dialog->curve();
    if (!curve) return;
    pending_ = false;
    const auto conflict =
        document_.edit({.field = QStringLiteral("bike.engine.torque_curve, edit %1").arg(++step_),
                        .title = tr("estimated torque curve"),
                        .shown = {}},
                       [&](Profile& p) {
                         p.bike.engine.torqueCurve = curve;
                         p.bike.engine.curveEstimated = true;
                         // Data sheets tell of the crankshaft.
                         if (p.bike.engine.curveMeasuredAt == CurvePlace::RearWheel)
                           p.bike.engine.curveMeasuredAt.reset();
                       });
    if (conflict) return refuse(spokenSentence(*conflict));
    showPoints();
    emit said(tr("The curve is estimated from %1.").arg(peaksWords(*dialog->peaks(), units_)));
  });
  dialog->open();
}

void CurveEditor::refuse(const QString& why) {
  pending_ = true;
  before_ = document_.profile().bike.engine.torqueCurve;
  emit said(why);
}

void CurveEditor::nameColumns() {
  table_->setHorizontalHeaderLabels({tr("Engine Speed, rpm"), unit_->currentText()});
}

void CurveEditor::showPoints() {
  nameColumns();
  const Engine& engine = document_.profile().bike.engine;
  if (pending_ && engine.torqueCurve == before_) return;
  pending_ = false;
  std::vector<QStringList> rows;
  if (engine.torqueCurve)
    for (const TorquePoint& point : engine.torqueCurve->points()) rows.push_back(cellsOf(point));
  table_->showRows(rows);
  showPicture();
}

void CurveEditor::showPicture() {
  const Engine& engine = document_.profile().bike.engine;
  estimated_->setVisible(engine.torqueCurve && engine.curveEstimated.value_or(false));
  preview_->show(engine.torqueCurve, engine.revLimitRpm, units_);
}

void CurveEditor::focusFirstCell() {
  table_->setCurrentCell(0, 0);
  table_->setFocus(Qt::OtherFocusReason);
}

void CurveEditor::refresh(const UnitsShown& units) {
  units_ = units;
  if (!unitChosen_ && !reading_ && !pending_) {
    const auto& curve = document_.profile().bike.engine.torqueCurve;
    const CurveUnit usual =
        units.system() == UnitSystem::Imperial ? CurveUnit::PoundFoot : CurveUnit::NewtonMetre;
    unit_->setCurrentIndex(static_cast<int>(curve ? typedUnit(*curve).value_or(usual) : usual));
  }
  if (!reading_) showPoints();
}

}  // namespace layshaft::ui
