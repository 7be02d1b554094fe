// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/peaks_dialog.h"

#include <QComboBox>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>
#include <array>
#include <cmath>
#include <span>

#include "core/limits.h"
#include "core/units.h"
#include "ui/editors/columns_table.h"
#include "ui/editors/dialog_body.h"
#include "ui/words/numbers.h"
#include "ui/words/typed_units.h"

namespace layshaft::ui {
namespace {

struct Say {
  Q_DECLARE_TR_FUNCTIONS(PeaksDialog)
};

constexpr double kWattsPerKilowatt = 1000.0;
/// N·m per unit, in the order of the choice.
constexpr std::array kTorqueUnits{1.0, units::kNewtonMetresPerPoundFoot};
/// kW per unit, likewise.
constexpr std::array kPowerUnits{1.0, units::kWattsPerMechanicalHorsepower / kWattsPerKilowatt,
                                 units::kWattsPerMetricHorsepower / kWattsPerKilowatt};

/// A figure as it is shown in a unit.
struct InUnit {
  double perUnit;
  QString name;
};

/// The units that a figure may be in, and how much of the first each is.
struct UnitChoice {
  QStringList names;
  std::span<const double> perUnit;
  int chosen = 0;
};

/// A figure in the unit chosen, or in another one of the choice that stands behind it.
std::optional<double> typedFigure(const QString& text, const UnitChoice& units, double highest) {
  const auto typed = numberAndUnit(text);
  const auto x = typedNumber(typed ? typed->number : text, highest);
  if (!x) return std::nullopt;
  if (!typed) return *x * units.perUnit[static_cast<std::size_t>(units.chosen)];
  for (int i = 0; i < units.names.size(); ++i)
    if (inUnitOf(units.names[i], 1.0, typed->unit) == 1.0)
      return *x * units.perUnit[static_cast<std::size_t>(i)];
  return std::nullopt;
}

UnitChoice choiceOf(const QComboBox& box, std::span<const double> perUnit) {
  UnitChoice choice{.names = {}, .perUnit = perUnit, .chosen = box.currentIndex()};
  for (int i = 0; i < box.count(); ++i) choice.names << box.itemText(i);
  return choice;
}

/// The ends of what is allowed, in tenths that are allowed too.
QString lowEnd(double low, double perUnit) {
  constexpr double kTenths = 10.0;
  return QLocale().toString(std::ceil(low / perUnit * kTenths) / kTenths, 'f', 1);
}
QString highEnd(double high, double perUnit) {
  constexpr double kTenths = 10.0;
  return QLocale().toString(std::floor(high / perUnit * kTenths) / kTenths, 'f', 1);
}

QString refused(const Problem& problem, const InUnit& torque, const InUnit& power) {
  const QString low = number(problem.low, 0), high = number(problem.high, 0);
  if (problem.path == "torque_nm")
    return Say::tr("Highest torque: a number from %1 to %2 %3 is expected.")
        .arg(lowEnd(problem.low, torque.perUnit), highEnd(problem.high, torque.perUnit), torque.name);
  if (problem.path == "torque_rpm")
    return Say::tr("Engine speed of the highest torque: %1 to %2 rpm is expected, below the rev limit.")
        .arg(low, high);
  if (problem.path == "power_rpm")
    return Say::
        tr("Engine speed of the highest power: %1 to %2 rpm is expected, above that of the highest torque "
           "and not above the rev limit.")
            .arg(low, high);
  return Say::tr(
             "Highest power: %1 to %2 %3 goes with that torque. Less is what the engine gives at its highest "
             "torque already, and more would take a higher torque than the highest.")
      .arg(lowEnd(problem.low, power.perUnit), highEnd(problem.high, power.perUnit), power.name);
}

}  // namespace

QString peaksRefused(const Problem& problem, const UnitsShown& units) {
  return refused(problem, {units.si(Quantity::Torque, 1.0), units.name(Quantity::Torque)},
                 {units.si(Quantity::Power, 1.0) / kWattsPerKilowatt, units.name(Quantity::Power)});
}

QString peaksWords(const EnginePeaks& peaks, const UnitsShown& units) {
  const auto in = [&](Quantity quantity, double si) {
    return units.withUnit(number(units.shown(quantity, si), 1), quantity);
  };
  return Say::tr("%1 at %2 rpm, %3 at %4 rpm", "torque, its engine speed, power, its engine speed")
      .arg(in(Quantity::Torque, peaks.torqueNm), number(peaks.torqueRpm, 0),
           in(Quantity::Power, peaks.powerKw * kWattsPerKilowatt), number(peaks.powerRpm, 0));
}

PeaksDialog::PeaksDialog(double revLimitRpm, const UnitsShown& units, QWidget* parent)
    : QDialog(parent), revLimitRpm_(revLimitRpm), torqueUnit_(new QComboBox), powerUnit_(new QComboBox) {
  setWindowTitle(tr("Estimate From Peaks"));
  auto* column = new QVBoxLayout(this);
  auto* explanation =
      new QLabel(tr("An estimate takes the place of a torque curve until you have one: a smooth line through "
                    "the highest torque and the highest power of a data sheet. It stays marked as estimated "
                    "wherever it counts."));
  explanation->setWordWrap(true);
  auto* body = new DialogBody;
  column->addWidget(body, 1);
  body->column().addWidget(explanation);
  auto* form = new QFormLayout;
  body->column().addLayout(form);
  body->column().addStretch();
  torqueUnit_->addItems({tr("N·m"), tr("lb·ft")});
  powerUnit_->addItems({tr("kW"), tr("hp"), tr("PS")});
  const bool imperial = units.system() == UnitSystem::Imperial;
  torqueUnit_->setCurrentIndex(imperial ? 1 : 0);
  powerUnit_->setCurrentIndex(imperial ? 1 : 0);
  const auto addRow = [&](const QString& label, const QString& example, QComboBox* unit) {
    auto* line = new QLineEdit;
    line->setPlaceholderText(example);
    connect(line, &QLineEdit::textChanged, this, &PeaksDialog::check);
    if (!unit) {
      form->addRow(label, line);
      return line;
    }
    auto* both = new QHBoxLayout;
    both->addWidget(line, 1);
    both->addWidget(unit);
    auto* buddy = new QLabel(label);
    buddy->setBuddy(line);
    form->addRow(buddy, both);
    connect(unit, &QComboBox::currentIndexChanged, this, &PeaksDialog::check);
    return line;
  };
  torque_ = addRow(tr("Highest &torque"), tr("For example %1").arg(number(65.5, 1)), torqueUnit_);
  torqueUnit_->setAccessibleName(tr("Unit of the torque"));
  torqueRpm_ = addRow(tr("&At, rpm"), tr("For example %1").arg(number(11500, 0)), nullptr);
  torqueRpm_->setAccessibleName(tr("Engine speed of the highest torque, rpm"));
  power_ = addRow(tr("Highest &power"), tr("For example %1").arg(number(83.7, 1)), powerUnit_);
  powerUnit_->setAccessibleName(tr("Unit of the power"));
  powerRpm_ = addRow(tr("At, &rpm"), tr("For example %1").arg(number(13000, 0)), nullptr);
  powerRpm_->setAccessibleName(tr("Engine speed of the highest power, rpm"));
  message_ = new QLabel;
  message_->setWordWrap(true);
  message_->setTextFormat(Qt::PlainText);  // it quotes what was typed
  message_->setMinimumHeight(message_->fontMetrics().lineSpacing() * 3);
  column->addWidget(message_);
  buttons_ = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel);
  buttons_->button(QDialogButtonBox::Ok)->setText(tr("Estimate"));
  column->addWidget(buttons_);
  connect(buttons_, &QDialogButtonBox::accepted, this, &QDialog::accept);
  connect(buttons_, &QDialogButtonBox::rejected, this, &QDialog::reject);
  check();
  fitToScreen(*this);
}

std::optional<EnginePeaks> PeaksDialog::typed(QString& complaint) const {
  static constexpr std::array kOne{1.0};
  const UnitChoice torqueUnits = choiceOf(*torqueUnit_, kTorqueUnits),
                   powerUnits = choiceOf(*powerUnit_, kPowerUnits),
                   rpm{.names = {tr("rpm")}, .perUnit = kOne};
  struct Asked {
    const QLineEdit& line;
    QString name;
    const UnitChoice& units;
    double highest;
    double& value;
  };
  EnginePeaks peaks{};
  const Asked asked[] = {
      {*torque_, tr("Highest torque"), torqueUnits, limits::kCurveTorqueNm.high, peaks.torqueNm},
      {*torqueRpm_, tr("Engine speed of the highest torque"), rpm, limits::kCurveRpm.high, peaks.torqueRpm},
      {*power_, tr("Highest power"), powerUnits, limits::kCurveTorqueNm.high, peaks.powerKw},
      {*powerRpm_, tr("Engine speed of the highest power"), rpm, limits::kCurveRpm.high, peaks.powerRpm}};
  if (std::all_of(std::begin(asked), std::end(asked),
                  [](const Asked& a) { return a.line.text().isEmpty(); })) {
    complaint = tr("Each of the four is a number; they stand on the engine's data sheet.");
    return std::nullopt;
  }
  for (const Asked& a : asked) {
    const QString text = a.line.text().trimmed();
    const auto value = typedFigure(text, a.units, a.highest);
    if (value) {
      a.value = *value;
      continue;
    }
    complaint = text.isEmpty() ? tr("%1: a number is still missing.").arg(a.name)
                               : tr("%1: “%2” is not understood. A number is expected; its unit may be %3.")
                                     .arg(a.name, text, a.units.names.join(tr(", ", "between units")));
    return std::nullopt;
  }
  const auto curve = curveFromPeaks(peaks, revLimitRpm_);
  if (curve) return peaks;
  const auto shown = [](const UnitChoice& units) {
    return InUnit{units.perUnit[static_cast<std::size_t>(units.chosen)], units.names[units.chosen]};
  };
  complaint = refused(curve.problem(), shown(torqueUnits), shown(powerUnits));
  return std::nullopt;
}

std::optional<EnginePeaks> PeaksDialog::peaks() const {
  QString complaint;
  return typed(complaint);
}

std::optional<TorqueCurve> PeaksDialog::curve() const {
  const auto entered = peaks();
  if (!entered) return std::nullopt;
  return *curveFromPeaks(*entered, revLimitRpm_);
}

void PeaksDialog::check() {
  QString complaint;
  const bool good = typed(complaint).has_value();
  message_->setText(complaint);
  buttons_->button(QDialogButtonBox::Ok)->setEnabled(good);
}

}  // namespace layshaft::ui
