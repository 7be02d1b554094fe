// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/details_dialog.h"

#include <QDialogButtonBox>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QTabWidget>
#include <QVBoxLayout>

#include "core/bike/words.h"
#include "core/units.h"
#include "ui/editors/curve_editor.h"
#include "ui/editors/profile_fields.h"
#include "ui/editors/ride_fields.h"
#include "ui/editors/spares_editor.h"
#include "ui/editors/sprocket_fields.h"
#include "ui/words/wording.h"

namespace layshaft::ui {
DetailsDialog::DetailsDialog(Document& document, QWidget* parent)
    : QDialog(parent), document_(document), tabs_(new QTabWidget), message_(new QLabel) {
  setWindowTitle(tr("Bike details"));
  message_->setWordWrap(true);
  message_->setTextFormat(Qt::PlainText);  // it quotes what was typed
  message_->setMinimumHeight(message_->fontMetrics().lineSpacing() * 2);
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::close);
  buttons->button(QDialogButtonBox::Close)->setAutoDefault(false);  // Enter ends the typing, not the dialog
  auto* column = new QVBoxLayout(this);
  column->addWidget(tabs_, 1);
  column->addWidget(message_);
  column->addWidget(buttons);
  buildBike();
  buildEngine();
  buildChassis();
  buildTyre();
  buildChainRun();
  buildSprockets();
  buildSpeedometer();
  buildRide();
  buildSparesBox();
  connect(&document_, &Document::changed, this, [this] {
    if (isVisible()) refresh(units_);
  });
  resize(840, 620);
}

FieldForm* DetailsDialog::addForm(const QString& title, const QString& heading) {
  auto* form = new FieldForm(document_);
  if (!heading.isEmpty()) form->addHeading(heading);
  auto* scroll = new QScrollArea;
  scroll->setWidget(form);
  scroll->setWidgetResizable(true);
  scroll->setFrameShape(QFrame::NoFrame);
  tabs_->addTab(scroll, title);
  connect(form, &FieldForm::refused, this, &DetailsDialog::say);
  forms_.push_back(form);
  return form;
}

void DetailsDialog::buildBike() {
  FieldForm* form = addForm(tr("Bike"), QString());
  form->addText(
      tr("Name"), tr("What the bike is called in the team."), false,
      [](Profile& p) -> std::string& { return p.name; }, limits::kLongestName);
  form->addText(
      tr("Notes"), tr("Anything worth keeping with the bike."), true,
      [](Profile& p) -> std::string& { return p.notes; }, limits::kLongestNotes);
  form->addNumber(
      {.label = tr("Cruise speed"),
       .explanation = tr("A road speed at which the engine's revs matter to you; marked in the charts."),
       .unit = FileUnit::KilometrePerHour,
       .limit = limits::kCruiseSpeedKmh,
       .decimals = 0,
       .whenMissing = {},
       .get = [](const Profile& p) { return p.cruiseSpeedKmh; },
       .set = [](Profile& p, std::optional<double> x) { p.cruiseSpeedKmh = x; }});
}

void DetailsDialog::buildEngine() {
  FieldForm* form = addForm(tr("Engine"), tr("The torque curve and what belongs to it."));
  const auto engineNumber = [form](const QString& label, const QString& explanation, const Limit& limit,
                                   int decimals, std::optional<double> Engine::*member,
                                   const QString& usual = {}) {
    form->addNumber({.label = label,
                     .explanation = explanation,
                     .unit = FileUnit::Plain,
                     .limit = limit,
                     .decimals = decimals,
                     .whenMissing = usual,
                     .get = [member](const Profile& p) { return p.bike.engine.*member; },
                     .set = [member](Profile& p, std::optional<double> x) { p.bike.engine.*member = x; }});
  };
  engineNumber(tr("Idle speed"), tr("Engine speed at idle; gears are not counted on below it."),
               limits::kIdleRpm, 0, &Engine::idleRpm);
  engineNumber(tr("Rotating inertia"),
               tr("Crankshaft, clutch basket and what turns with them, referred to the crankshaft."),
               limits::kEngineInertiaKgm2, 4, &Engine::rotatingInertiaKgm2, QStringLiteral("0"));
  form->addChoice(choice(
      tr("Curve measured at"), tr("A rear-wheel curve has the losses of the drive train in it already."),
      kCurvePlaceWords, {tr("crankshaft (usual)"), tr("crankshaft"), tr("rear wheel")},
      [](Profile& p) -> std::optional<CurvePlace>& { return p.bike.engine.curveMeasuredAt; }));
  const QString air = tr("The air that the curve is given for.");
  form->addNumber(blockNumber(tr("Curve: air temperature"), air, FileUnit::Plain, limits::kAirTemperatureC, 0,
                              curveAir, &Air::temperatureC, QStringLiteral("15")));
  form->addNumber(blockNumber(tr("Curve: air pressure"), air, FileUnit::Plain, limits::kAirPressureHpa, 0,
                              curveAir, &Air::pressureHpa, QStringLiteral("1013.25")));
  form->addNumber(blockNumber(tr("Curve: humidity"), air, FileUnit::Plain, limits::kPercent, 0, curveAir,
                              &Air::humidityPercent, QStringLiteral("0")));

  curve_ = new CurveEditor(document_);
  tabs_->addTab(curve_, tr("Torque curve"));
  connect(curve_, &CurveEditor::said, this, &DetailsDialog::say);
}

void DetailsDialog::buildChassis() {
  FieldForm* form = chassis_ = addForm(
      tr("Chassis"), tr("Unlocks pull, top speed and runs. The centre of gravity is with the rider seated."));
  const auto add = [form](const QString& label, const QString& explanation, FileUnit unit, const Limit& limit,
                          int decimals, std::optional<double> Chassis::*member, const QString& usual = {}) {
    form->addNumber(blockNumber(label, explanation, unit, limit, decimals, chassis, member, usual));
  };
  add(tr("Mass without rider"), tr("Ready to ride: fuel, oil, battery."), FileUnit::Kilogram, limits::kMassKg,
      0, &Chassis::massKg);
  add(tr("Rider"), tr("Rider with everything worn."), FileUnit::Kilogram, limits::kRiderMassKg, 0,
      &Chassis::riderMassKg, QStringLiteral("75"));
  add(tr("Wheelbase"), tr("Axle to axle with the stock chain and sprockets."), FileUnit::Millimetre,
      limits::kWheelbaseMm, 0, &Chassis::wheelbaseMm);
  add(tr("Centre of gravity height"), tr("Above the ground, rider seated."), FileUnit::Millimetre,
      limits::kCgHeightMm, 0, &Chassis::cgHeightMm);
  add(tr("Centre of gravity ahead of rear axle"), tr("Along the ground, rider seated."), FileUnit::Millimetre,
      limits::kCgAheadMm, 0, &Chassis::cgAheadOfRearAxleMm);
  add(tr("Drag area"), tr("Drag coefficient times frontal area."), FileUnit::Plain, limits::kDragAreaM2, 3,
      &Chassis::dragAreaM2);
  add(tr("Drag height"), tr("Height at which the air pushes; the centre of gravity's if not given."),
      FileUnit::Millimetre, limits::kDragHeightMm, 0, &Chassis::dragHeightMm);
  add(tr("Rolling resistance"), tr("Force to roll over weight, on the road."), FileUnit::Plain,
      limits::kRollingResistance, 4, &Chassis::rollingResistance, QStringLiteral("0.015"));
  form->addChoice(choice(tr("Rolling resistance form"),
                         tr("Constant, or growing with speed by the published form for motorcycle tyres."),
                         kRollingResistanceWords,
                         {tr("constant (usual)"), tr("constant"), tr("growing with speed")},
                         [](Profile& p) -> std::optional<RollingResistanceForm>& {
                           return made(p.bike.chassis).rollingResistanceForm;
                         }));
  add(tr("Tyre pressure"), tr("Used by the form that grows with speed."), FileUnit::Plain,
      limits::kTyrePressureBar, 2, &Chassis::tyrePressureBar);
  add(tr("Drive-train efficiency"), tr("Share of the crankshaft's power that reaches the wheel."),
      FileUnit::Plain, limits::kEfficiency, 3, &Chassis::drivetrainEfficiency, QStringLiteral("0.9"));
  add(tr("Front wheel inertia"), tr("Wheel, tyre and discs about the axle."), FileUnit::Plain,
      limits::kWheelInertiaKgm2, 3, &Chassis::frontWheelInertiaKgm2, QStringLiteral("0"));
  add(tr("Rear wheel inertia"), tr("Wheel, tyre, disc and stock sprocket about the axle."), FileUnit::Plain,
      limits::kWheelInertiaKgm2, 3, &Chassis::rearWheelInertiaKgm2, QStringLiteral("0"));
  add(tr("Front rollout"), tr("Distance for one turn of the front wheel."), FileUnit::Millimetre,
      limits::kRolloutMm, 0, &Chassis::frontRolloutMm);
  add(tr("Tyre grip"), tr("Greatest push over load of the rear tyre on dry asphalt."), FileUnit::Plain,
      limits::kGrip, 2, &Chassis::tyreGrip);
  add(tr("Shift time"), tr("How long the drive is broken while shifting up."), FileUnit::Plain,
      limits::kShiftTimeS, 2, &Chassis::shiftTimeS, QStringLiteral("0.15"));
}

void DetailsDialog::buildTyre() {
  FieldForm* form = addForm(tr("Tyre"), tr("The stock setup's tyre, beyond its size."));
  const auto add = [form](const QString& label, const QString& explanation, FileUnit unit, const Limit& limit,
                          int decimals, std::optional<double> SetupOptions::*member,
                          const QString& usual = {}) {
    form->addNumber({.label = label,
                     .explanation = explanation,
                     .unit = unit,
                     .limit = limit,
                     .decimals = decimals,
                     .whenMissing = usual,
                     .get = [member](const Profile& p) { return p.stock.options.*member; },
                     .set = [member](Profile& p, std::optional<double> x) { p.stock.options.*member = x; }});
  };
  add(tr("Rolling allowance"),
      tr("By how much a loaded tyre's rollout is less than its free circumference; only for estimates from "
         "the size."),
      FileUnit::Plain, limits::kRollingAllowancePercent, 1, &SetupOptions::rollingAllowancePercent,
      QStringLiteral("2"));
  add(tr("Tread worn off"), tr("Depth of tread gone since new; only for estimates from the size."),
      FileUnit::Millimetre, limits::kTreadWearMm, 1, &SetupOptions::treadWearMm, QStringLiteral("0"));
  add(tr("Crown radius"), tr("Radius of the tread's cross-section; half the width if not given."),
      FileUnit::Millimetre, limits::kCrownRadiusMm, 0, &SetupOptions::crownRadiusMm);
  add(tr("Growth with speed"),
      tr("Rollout grows by this share times the square of the speed in km/h; 0 if you have not measured it."),
      FileUnit::Plain, limits::kGrowthPerKmh2, 9, &SetupOptions::growthPerKmh2, QStringLiteral("0"));
}

void DetailsDialog::buildChainRun() {
  FieldForm* form = chainRun_ =
      addForm(tr("Chain run"), tr("Engine off and rear wheel clear of the ground before a hand goes near the "
                                  "chain. Slack and torque values: from the bike's own manual."));
  const auto add = [form](const QString& label, const QString& explanation, FileUnit unit, const Limit& limit,
                          int decimals, auto member) {
    form->addNumber(blockNumber(label, explanation, unit, limit, decimals, chainRun, member));
  };
  add(tr("Centre distance"), tr("Countershaft to rear axle, measured with the stock pair and chain."),
      FileUnit::Millimetre, limits::kCentreDistanceMm, 1, &ChainRun::centreDistanceMm);
  add(tr("Adjuster travel forward"), tr("How far the axle can still move forward from there."),
      FileUnit::Millimetre, limits::kAdjusterMm, 1, &ChainRun::adjusterForwardMm);
  add(tr("Adjuster travel back"), tr("How far the axle can still move back from there."),
      FileUnit::Millimetre, limits::kAdjusterMm, 1, &ChainRun::adjusterBackMm);
  add(tr("Largest front sprocket"), tr("Most teeth that clear the cover and the case."), FileUnit::Plain,
      limits::kFrontTeeth, 0, &ChainRun::largestFrontTeeth);
  add(tr("Smallest front sprocket"), tr("Fewest teeth that clear the swingarm and the seal."),
      FileUnit::Plain, limits::kFrontTeeth, 0, &ChainRun::smallestFrontTeeth);
  add(tr("Largest rear sprocket"), tr("Most teeth that clear swingarm and guard."), FileUnit::Plain,
      limits::kRearTeeth, 0, &ChainRun::largestRearTeeth);
  add(tr("Smallest rear sprocket"), tr("Fewest teeth that clear the carrier."), FileUnit::Plain,
      limits::kRearTeeth, 0, &ChainRun::smallestRearTeeth);
  add(tr("Chain tensile strength"), tr("Minimum tensile strength that the chain's maker states."),
      FileUnit::Plain, limits::kTensileStrengthKn, 1, &ChainRun::tensileStrengthKn);
  add(tr("Swingarm length"), tr("Pivot to rear axle."), FileUnit::Millimetre, limits::kSwingarmLengthMm, 0,
      &ChainRun::swingarmLengthMm);
  add(tr("Swingarm angle"), tr("Of the line from axle to pivot, positive when the pivot is higher."),
      FileUnit::Plain, limits::kSwingarmAngleDeg, 1, &ChainRun::swingarmAngleDeg);
  add(tr("Countershaft ahead of pivot"), tr("Along the ground."), FileUnit::Millimetre,
      limits::kCountershaftOffsetMm, 0, &ChainRun::countershaftAheadOfPivotMm);
  add(tr("Countershaft above pivot"), tr("Upwards."), FileUnit::Millimetre, limits::kCountershaftOffsetMm, 0,
      &ChainRun::countershaftAbovePivotMm);
  addStockLoop(*form);
  addProposedLoop(*form);
}

void DetailsDialog::buildSprockets() {
  addSprockets(*addForm(tr("Sprockets"),
                        tr("Stock's. Weighed masses are counted in pull and runs, estimates only shown.")));
}

void DetailsDialog::buildSpeedometer() {
  FieldForm* form = addForm(
      tr("Speedometer"),
      tr("Changed gearing or tyre size can change what it shows, and may need approval: follow local law."));
  form->addChoice(
      choice(tr("Sensor"), tr("What the speedometer counts."), kSpeedSensorWords,
             {tr("not known"), tr("gearbox output"), tr("rear wheel"), tr("front wheel")},
             [](Profile& p) -> std::optional<SpeedSensor>& { return made(p.bike.speedometer).sensor; }));
  form->addNumber(blockNumber(tr("Reads high by"), tr("By how much it shows too much with the stock parts."),
                              FileUnit::Plain, limits::kReadsHighPercent, 1, speedometer,
                              &Speedometer::readsHighPercent, QStringLiteral("0")));
}

void DetailsDialog::buildRide() {
  FieldForm* form = addForm(tr("Ride"), tr("Where and how the bike is ridden."));
  addConditions(*form);
  addLaunchAndLean(*form);
  addDrive(*form);
  addRollOn(*form);
}

void DetailsDialog::buildSparesBox() {
  spares_ = new SparesEditor(document_);
  tabs_->addTab(spares_, tr("Spares box"));
  connect(spares_, &SparesEditor::said, this, &DetailsDialog::say);
}

void DetailsDialog::showFieldsFor(std::string_view key) {
  const auto under = [key](std::string_view block) { return key.substr(0, block.size()) == block; };
  QWidget* page = nullptr;
  if (under("bike.engine.torque_curve"))
    page = curve_;
  else if (under("bike.chassis"))
    page = chassis_;
  else if (under("stock") || under("proposed"))
    page = chainRun_;
  for (int i = 0; page && i < tabs_->count(); ++i)
    if (tabs_->widget(i) == page || tabs_->widget(i)->isAncestorOf(page)) tabs_->setCurrentIndex(i);
}

void DetailsDialog::refresh(const UnitsShown& units) {
  units_ = units;
  for (FieldForm* form : forms_) form->refresh(units);
  curve_->refresh(units);
  spares_->refresh();
}

void DetailsDialog::showEvent(QShowEvent* event) {
  QDialog::showEvent(event);
  say(spares_->complaint());  // what else was refused last time is not in the fields any more
}

void DetailsDialog::say(const QString& message) {
  message_->setText(message);
}

}  // namespace layshaft::ui
