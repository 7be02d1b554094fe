// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/drive_line.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QTimer>
#include <QVBoxLayout>
#include <cmath>

#include "core/limits.h"
#include "core/units.h"
#include "ui/editors/flow_layout.h"
#include "ui/words/plain_text.h"
#include "ui/words/wording.h"

namespace layshaft::ui {
namespace {

constexpr int kRatioDecimals = 4;
constexpr double kRatioStep = 0.01;

void fixWidth(QWidget* widget, const QString& widest, int extra) {
  widget->setFixedWidth(widget->fontMetrics().horizontalAdvance(widest) + extra);
}

/// Narrow boxes have no arrows: the arrow keys and the wheel step them, and ten gears still fit.
void narrow(QAbstractSpinBox* box, const QString& widest) {
  box->setButtonSymbols(QAbstractSpinBox::NoButtons);
  box->setAlignment(Qt::AlignHCenter);
  fixWidth(box, widest, 18);
}

QString wholeDifference(int shown, int stock) {
  return shown == stock ? QString() : signedNumber(shown - stock, 0);
}

QString ratioText(double ratio) {
  return number(ratio, 3);
}

QString ratioDifference(double shown, double stock) {
  return shown == stock ? QString() : signedNumber(shown - stock, std::abs(shown - stock) < 0.0095 ? 3 : 2);
}

QString stockTo(const QString& stock, const QString& proposed) {
  return stock == proposed ? stock : QStringLiteral("%1 → %2").arg(stock, proposed);
}

QString optionalWhole(const std::optional<int>& value) {
  return value ? number(*value, 0) : QStringLiteral("–");
}

}  // namespace

DriveLine::DriveLine(Document& document, QWidget* parent) : QWidget(parent), document_(document) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(10, 4, 10, 4);
  column->setSpacing(2);
  strip_ = new QWidget;
  flow_ = new FlowLayout(strip_);
  flow_->setContentsMargins(0, 0, 0, 0);
  flow_->setSpacing(8);
  buildEngine(*flow_);
  buildGearbox(*flow_);
  buildFinalDrive(*flow_);
  buildWheel(*flow_);
  column->addWidget(strip_);
  column->addWidget(buildFoot());
  setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
  for (WholeBox* box : {revLimit_, shift_, front_, rear_, links_, beltTeeth_, width_, aspect_})
    tellRefusals(box);
  for (DecimalBox* box : {primary_, rim_, rollout_}) tellRefusals(box);
}

template <class Box>
void DriveLine::tellRefusals(Box* box) {
  box->whenRefused([this, box](const QString& typed, double low, double high) {
    const QString message = outsideAllowed(box->accessibleName(), typed, low, high);
    // The value from before comes back next, as an edit that is fine: the message goes up after that.
    QTimer::singleShot(0, this, [this, message] { say(message); });
  });
  // What was refused does not stay in a box that has been left.
  connect(box, &Box::editingFinished, this, [this] { refresh(); });
}

bool DriveLine::event(QEvent* event) {
  // A station came, went or changed its size: the rows may break elsewhere.
  if (event->type() == QEvent::LayoutRequest) fitStrip();
  return QWidget::event(event);
}

void DriveLine::resizeEvent(QResizeEvent* event) {
  QWidget::resizeEvent(event);
  fitStrip();
}

void DriveLine::fitStrip() {
  strip_->setFixedHeight(flow_->neededHeight(width() - layout()->contentsMargins().left() -
                                             layout()->contentsMargins().right()));
}

DriveLine::Group DriveLine::addGroup(FlowLayout& flow) {
  auto* widget = new QWidget;
  auto* column = new QVBoxLayout(widget);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(1);
  auto* row = new QHBoxLayout;
  row->setSpacing(4);
  column->addLayout(row);
  auto* sum = new QLabel;
  sum->setAlignment(Qt::AlignHCenter);
  column->addWidget(new SteadyPlace(sum));
  flow.addWidget(widget);
  return {widget, row, sum};
}

Station* DriveLine::addStation(Group& group, const QString& label, const QString& explanation,
                               QWidget* editor) {
  auto* station = new Station(label, explanation, editor);
  group.row->addWidget(station);
  return station;
}

void DriveLine::buildEngine(FlowLayout& flow) {
  engine_ = addGroup(flow);
  revLimit_ = new WholeBox;
  revLimit_->setRange(static_cast<int>(limits::kRevLimitRpm.low),
                      static_cast<int>(limits::kRevLimitRpm.high));
  revLimit_->setSingleStep(100);
  revLimit_->setGroupSeparatorShown(true);
  fixWidth(revLimit_, QStringLiteral("88 888"), 34);
  revLimitStation_ = addStation(
      engine_, tr("rev &limit"),
      tr("The engine speed at which the limiter cuts in, rpm. It is the bike's: both setups have it."),
      revLimit_);
  connect(revLimit_, &QSpinBox::valueChanged, this, [this](int rpm) {
    report(document_.edit({.field = QStringLiteral("revLimit"),
                           .title = tr("rev limit"),
                           .shown = [](const Profile& p) { return number(p.bike.engine.revLimitRpm, 0); }},
                          [rpm](Profile& p) { p.bike.engine.revLimitRpm = rpm; }));
  });

  shift_ = new WholeBox;
  shift_->setMaximum(static_cast<int>(limits::kShiftRpm.high));
  shift_->setSingleStep(100);
  shift_->setGroupSeparatorShown(true);
  shift_->allowNone(static_cast<int>(limits::kShiftRpm.low) - 1, static_cast<int>(limits::kShiftRpm.low),
                    tr("limit"), static_cast<int>(limits::kRevLimitRpm.low));
  fixWidth(shift_, QStringLiteral("88 888"), 34);
  shiftStation_ = addStation(engine_, tr("&shift at"),
                             tr("The engine speed at which the rider shifts up, rpm. Empty: where the next "
                                "gear pulls as hard, as far as "
                                "curve, masses and drag are known, else at the rev limit."),
                             shift_);
  connect(shift_, &QSpinBox::valueChanged, this, [this] {
    const auto rpm = shift_->optionalValue();
    report(document_.edit({.field = QStringLiteral("shift"),
                           .title = tr("shift point"),
                           .shown =
                               [](const Profile& p) {
                                 return p.bike.engine.shiftRpm ? number(*p.bike.engine.shiftRpm, 0)
                                                               : tr("none");
                               }},
                          [rpm](Profile& p) {
                            if (rpm)
                              p.bike.engine.shiftRpm = *rpm;
                            else
                              p.bike.engine.shiftRpm.reset();
                          }));
  });
}

void DriveLine::buildGearbox(FlowLayout& flow) {
  gearbox_ = addGroup(flow);
  primary_ = new DecimalBox(nullptr, 2);
  primary_->setDecimals(kRatioDecimals);
  primary_->setRange(limits::kPrimaryRatio.low, limits::kPrimaryRatio.high);
  primary_->setSingleStep(kRatioStep);
  narrow(primary_, QStringLiteral("8.8888"));
  primaryStation_ =
      addStation(gearbox_, tr("&primary"), tr("Primary ratio: crankshaft turns per clutch turn."), primary_);
  connect(primary_, &QDoubleSpinBox::valueChanged, this,
          [this](double ratio) { report(edits().setPrimaryRatio(ratio)); });
  connect(primaryStation_, &Station::backToStock, this,
          [this] { report(edits().setPrimaryRatio(document_.profile().stock.primaryRatio)); });
}

void DriveLine::rebuildGears(std::size_t count) {
  while (gearStations_.size() > count) {
    delete gearStations_.back();
    gearStations_.pop_back();
    gears_.pop_back();
  }
  while (gearStations_.size() < count) {
    const std::size_t g = gearStations_.size();
    auto* box = new DecimalBox(nullptr, 2);
    box->setDecimals(kRatioDecimals);
    box->setRange(limits::kGearRatio.low, limits::kGearRatio.high);
    box->setSingleStep(kRatioStep);
    narrow(box, QStringLiteral("8.888"));
    // Alt+1 … Alt+9 and Alt+0 for the tenth.
    const QString label = g == 0   ? tr("gear &1")
                          : g == 9 ? QStringLiteral("1&0")
                                   : QStringLiteral("&%1").arg(g + 1);
    auto* station = addStation(
        gearbox_, label,
        tr("Ratio of gear %1: clutch turns per countershaft turn. Each gear is below the one before.")
            .arg(g + 1),
        box);
    box->setAccessibleName(tr("gear %1 ratio").arg(g + 1));
    connect(box, &QDoubleSpinBox::valueChanged, this,
            [this, g](double ratio) { report(edits().setGearRatio(g, ratio)); });
    connect(station, &Station::backToStock, this, [this, g] {
      const GearRatios& stock = document_.profile().stock.gearRatios;
      if (g < stock.count()) report(edits().setGearRatio(g, stock[g]));
    });
    tellRefusals(box);
    gears_.push_back(box);
    gearStations_.push_back(station);
  }
  setTabOrder();
}

void DriveLine::buildFinalDrive(FlowLayout& flow) {
  final_ = addGroup(flow);
  front_ = new WholeBox;
  front_->setRange(static_cast<int>(limits::kFrontTeeth.low), static_cast<int>(limits::kFrontTeeth.high));
  fixWidth(front_, QStringLiteral("888"), 34);
  frontStation_ = addStation(final_, tr("fro&nt teeth"),
                             tr("Teeth of the front (countershaft) sprocket. Fewer is shorter: more pull, "
                                "less speed in every gear."),
                             front_);
  connect(front_, &QSpinBox::valueChanged, this, [this](int teeth) { report(edits().setFrontTeeth(teeth)); });
  connect(frontStation_, &Station::backToStock, this,
          [this] { report(edits().setFrontTeeth(document_.profile().stock.frontTeeth.count())); });

  chain_ = new CalmComboBox;
  chain_->addItem(QStringLiteral("–"));
  for (const ChainSize& size : kChainSizes) chain_->addItem(QString::fromUtf8(size.name.data()));
  fixWidth(chain_, QStringLiteral("888"), 40);
  chainStation_ =
      addStation(final_, tr("&chain"), tr("Chain size: the number stamped on the side plates."), chain_);
  connect(chain_, &QComboBox::activated, this, [this](int index) {
    report(edits().setChainSize(index > 0 ? std::optional(kChainSizes[static_cast<std::size_t>(index - 1)])
                                          : std::nullopt));
  });
  connect(chainStation_, &Station::backToStock, this,
          [this] { report(edits().setChainSize(document_.profile().stock.options.chainSize)); });

  links_ = new WholeBox;
  links_->setMaximum(static_cast<int>(limits::kLinks.high));
  links_->setSingleStep(2);
  links_->allowNone(static_cast<int>(limits::kLinks.low) - 1, static_cast<int>(limits::kLinks.low),
                    QStringLiteral("–"), 110);
  fixWidth(links_, QStringLiteral("888"), 34);
  linksStation_ = addStation(final_, tr("lin&ks"), tr("Number of chain links, counted all round."), links_);
  connect(links_, &QSpinBox::valueChanged, this,
          [this] { report(edits().setLinks(links_->optionalValue())); });
  connect(linksStation_, &Station::backToStock, this,
          [this] { report(edits().setLinks(document_.profile().stock.options.links)); });

  beltTeeth_ = new WholeBox;
  beltTeeth_->setMaximum(static_cast<int>(limits::kBeltTeeth.high));
  beltTeeth_->allowNone(static_cast<int>(limits::kBeltTeeth.low) - 1,
                        static_cast<int>(limits::kBeltTeeth.low), QStringLiteral("–"), 130);
  fixWidth(beltTeeth_, QStringLiteral("888"), 34);
  beltStation_ = addStation(final_, tr("&drive belt"), tr("Number of teeth of the drive belt."), beltTeeth_);
  beltTeeth_->setAccessibleName(tr("belt teeth"));
  connect(beltTeeth_, &QSpinBox::valueChanged, this,
          [this] { report(edits().setBeltTeeth(beltTeeth_->optionalValue())); });
  connect(beltStation_, &Station::backToStock, this,
          [this] { report(edits().setBeltTeeth(document_.profile().stock.options.beltTeeth)); });

  rear_ = new WholeBox;
  rear_->setRange(static_cast<int>(limits::kRearTeeth.low), static_cast<int>(limits::kRearTeeth.high));
  fixWidth(rear_, QStringLiteral("888"), 34);
  rearStation_ = addStation(
      final_, tr("&rear teeth"),
      tr("Teeth of the rear wheel's sprocket. More is shorter: more pull, less speed in every gear."), rear_);
  connect(rear_, &QSpinBox::valueChanged, this, [this](int teeth) { report(edits().setRearTeeth(teeth)); });
  connect(rearStation_, &Station::backToStock, this,
          [this] { report(edits().setRearTeeth(document_.profile().stock.rearTeeth.count())); });
}

void DriveLine::buildWheel(FlowLayout& flow) {
  wheel_ = addGroup(flow);
  tyre_ = new TyreField;
  fixWidth(tyre_, QStringLiteral("180/55ZR17"), 26);
  tyreStation_ = addStation(
      wheel_, tr("rear &tyre"),
      tr("Tyre size as it is printed on the sidewall: 180/55ZR17, 120/80-19, 4.00-18, MT90B16 …"), tyre_);
  connect(tyre_, &TyreField::tyreTyped, this, [this](const QString& size) { report(edits().setTyre(size)); });
  connect(tyre_, &TyreField::refused, this, &DriveLine::say);
  connect(tyreStation_, &Station::backToStock, this, [this] {
    report(edits().setTyre(QString::fromStdString(document_.profile().stock.rearTyre.text())));
  });

  const auto tyreNumber = [this](auto* box, const Limit& limit, double step, const QString& widest) {
    using Value = decltype(box->value());
    box->setRange(static_cast<Value>(limit.low), static_cast<Value>(limit.high));
    box->setSingleStep(static_cast<Value>(step));
    narrow(box, widest);
    connect(box, &std::remove_pointer_t<decltype(box)>::valueChanged, this, [this] { editTyreNumbers(); });
  };
  width_ = new WholeBox;
  aspect_ = new WholeBox;
  rim_ = new DecimalBox;
  rim_->setDecimals(1);
  tyreNumber(width_, limits::kTyreWidthMm, 10, QStringLiteral("888"));
  tyreNumber(aspect_, limits::kTyreAspectPercent, 5, QStringLiteral("888"));
  tyreNumber(rim_, limits::kRimInches, 1, QStringLiteral("88.8"));
  widthStation_ = addStation(wheel_, tr("&width"), tr("Nominal section width of a metric tyre, mm."), width_);
  aspectStation_ = addStation(wheel_, tr("&aspect"),
                              tr("Section height of a metric tyre in per cent of its width."), aspect_);
  rimStation_ = addStation(wheel_, tr("ri&m"), tr("Rim diameter, inches."), rim_);
  const auto stockTyre = [this]() -> const TyreSize& { return document_.profile().stock.rearTyre; };
  connect(widthStation_, &Station::backToStock, this, [this, stockTyre] {
    width_->setValue(static_cast<int>(std::lround(units::millimetresFromMetres(stockTyre().widthM()))));
  });
  connect(aspectStation_, &Station::backToStock, this, [this, stockTyre] {
    aspect_->setValue(static_cast<int>(std::lround(stockTyre().aspectPercent())));
  });
  connect(rimStation_, &Station::backToStock, this,
          [this, stockTyre] { rim_->setValue(stockTyre().rimInches()); });

  rollout_ = new DecimalBox;
  rollout_->setDecimals(2);
  fixWidth(rollout_, QStringLiteral("≈ 8888.88"), 34);
  rolloutStation_ = addStation(
      wheel_, tr("r&ollout"),
      tr("Distance for one turn of the rear wheel with the rider on, measured: mark, roll one turn, measure. "
         "Empty: estimated from the tyre size, good to about ±2 %."),
      rollout_);
  connect(rollout_, &QDoubleSpinBox::valueChanged, this, [this] {
    const auto shown = rollout_->optionalValue();
    std::optional<double> mm;
    if (shown) mm = withoutNoise(units::millimetresFromMetres(units_.si(Quantity::SmallLength, *shown)));
    report(edits().setRollout(mm));
  });
  connect(rolloutStation_, &Station::backToStock, this, [this] {
    // What was measured on stock's tyre says nothing about another one.
    const Setup& stock = document_.profile().stock;
    const bool sameTyre = edits().current().rearTyre.sameTyre(stock.rearTyre);
    report(edits().setRollout(sameTyre ? stock.options.rolloutMm : std::nullopt));
  });
}

QWidget* DriveLine::buildFoot() {
  auto* foot = new QWidget;
  auto* row = new QHBoxLayout(foot);
  row->setContentsMargins(0, 0, 0, 0);
  sideSwitch_ = new QPushButton;
  sideSwitch_->setCheckable(true);
  sideSwitch_->setToolTip(tr("The strip edits the proposal. Press to edit the stock setup instead."));
  connect(sideSwitch_, &QPushButton::toggled, this,
          [this](bool stock) { setSide(stock ? Side::Stock : Side::Proposed); });
  allBack_ = new QPushButton(tr("All back to stock"));
  allBack_->setToolTip(tr("Takes back everything that is proposed."));
  connect(allBack_, &QPushButton::clicked, this, [this] { SetupEdits::clearProposal(document_); });
  message_ = new QLabel;
  message_->setWordWrap(false);
  message_->setTextFormat(Qt::PlainText);  // it may quote what a file holds
  message_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
  message_->setAccessibleName(tr("Message"));
  row->addWidget(sideSwitch_);
  row->addWidget(message_, 1);
  row->addWidget(allBack_);
  return foot;
}

void DriveLine::setTabOrder() {
  std::vector<QWidget*> order{revLimit_, shift_, primary_};
  order.insert(order.end(), gears_.begin(), gears_.end());
  for (QWidget* widget : std::initializer_list<QWidget*>{front_, chain_, links_, beltTeeth_, rear_, tyre_,
                                                         width_, aspect_, rim_, rollout_})
    order.push_back(widget);
  for (std::size_t i = 0; i + 1 < order.size(); ++i) QWidget::setTabOrder(order[i], order[i + 1]);
}

void DriveLine::editTyreNumbers() {
  const auto size = TyreSize::metric(width_->value(), aspect_->value(), rim_->value(),
                                     edits().current().rearTyre.construction());
  if (size)
    report(edits().setTyre(QString::fromStdString(size->text())));
  else
    report(size.problem());
}

void DriveLine::setSide(Side side) {
  if (side == side_) return;
  side_ = side;
  sideSwitch_->setChecked(side == Side::Stock);
  refresh();
  emit sideChanged(side);
}

void DriveLine::show(const SharedPlan& plan, const UnitsShown& units) {
  plan_ = plan;
  units_ = units;
  refresh();
}

void DriveLine::refresh() {
  if (!plan_) return;
  // Figures are the plan's; what the fields hold is the document's, which may be a frame ahead of the plan.
  const Setup& stock = document_.profile().stock;
  const Setup shown = edits().current();
  const SetupPlan& shownPlan = side_ == Side::Stock ? plan_->stock : plan_->proposed;
  refreshEngine();
  refreshGearbox(shown, stock);
  refreshFinalDrive(shown, stock);
  refreshTyre(shown.rearTyre, stock.rearTyre);
  refreshRollout(shown.options.rolloutMm, stock.options.rolloutMm, shownPlan.gearing.rollout.metres,
                 plan_->stock.gearing.rollout.metres);
  refreshSums();
  sideSwitch_->setText(side_ == Side::Stock ? tr("Editing stock") : tr("Editing the proposal"));
  const bool proposes = !document_.profile().proposed.changesNothing();
  if (allBack_->isEnabled() != proposes) allBack_->setEnabled(proposes);
}

void DriveLine::focusTeeth() {
  front_->setFocus();
}

void DriveLine::refreshEngine() {
  const Engine& engine = document_.profile().bike.engine;
  showValue(*revLimit_, static_cast<int>(std::lround(engine.revLimitRpm)));
  const QSignalBlocker quiet(shift_);  // another limit, another range: not an edit
  shift_->setMaximum(static_cast<int>(engine.revLimitRpm));
  shift_->setStart(static_cast<int>(engine.revLimitRpm));
  shift_->setNoneWords(plan_->shiftPoints == ShiftPointSource::Best ? tr("best") : tr("limit"));
  showValue(*shift_,
            shift_->valueFor(engine.shiftRpm ? std::optional(static_cast<int>(std::lround(*engine.shiftRpm)))
                                             : std::nullopt));
  revLimitStation_->showNote(tr("both setups"));
  shiftStation_->showNote(tr("both setups"));
}

void DriveLine::refreshGearbox(const Setup& shown, const Setup& stock) {
  showValue(*primary_, shown.primaryRatio);
  primaryStation_->showStock(ratioText(stock.primaryRatio),
                             ratioDifference(shown.primaryRatio, stock.primaryRatio));
  if (gears_.size() != shown.gearRatios.count()) rebuildGears(shown.gearRatios.count());
  for (std::size_t g = 0; g < gears_.size(); ++g) {
    showValue(*gears_[g], shown.gearRatios[g]);
    if (g < stock.gearRatios.count())
      gearStations_[g]->showStock(ratioText(stock.gearRatios[g]),
                                  ratioDifference(shown.gearRatios[g], stock.gearRatios[g]));
    else
      gearStations_[g]->showNote(tr("new"));
  }
}

void DriveLine::refreshFinalDrive(const Setup& shown, const Setup& stock) {
  showValue(*front_, shown.frontTeeth.count());
  frontStation_->showStock(number(stock.frontTeeth.count(), 0),
                           wholeDifference(shown.frontTeeth.count(), stock.frontTeeth.count()));
  showValue(*rear_, shown.rearTeeth.count());
  rearStation_->showStock(number(stock.rearTeeth.count(), 0),
                          wholeDifference(shown.rearTeeth.count(), stock.rearTeeth.count()));

  const bool belt = shown.options.finalDrive == FinalDrive::Belt;
  chainStation_->setVisible(!belt);
  linksStation_->setVisible(!belt);
  beltStation_->setVisible(belt);
  const auto sizeName = [](const std::optional<ChainSize>& size) {
    return size ? QString::fromUtf8(size->name.data()) : QStringLiteral("–");
  };
  chain_->setCurrentText(sizeName(shown.options.chainSize));
  chainStation_->showStock(sizeName(stock.options.chainSize),
                           shown.options.chainSize == stock.options.chainSize ? QString() : tr("other"));
  showValue(*links_, links_->valueFor(shown.options.links));
  linksStation_->showStock(optionalWhole(stock.options.links),
                           wholeDifference(shown.options.links.value_or(0), stock.options.links.value_or(0)));
  showValue(*beltTeeth_, beltTeeth_->valueFor(shown.options.beltTeeth));
  beltStation_->showStock(
      optionalWhole(stock.options.beltTeeth),
      wholeDifference(shown.options.beltTeeth.value_or(0), stock.options.beltTeeth.value_or(0)));
}

void DriveLine::refreshTyre(const TyreSize& tyre, const TyreSize& stockTyre) {
  tyre_->showTyre(tyre);
  tyreStation_->showStock(QString::fromStdString(stockTyre.text()),
                          tyre.sameTyre(stockTyre) ? QString() : tr("other"));

  // Width, aspect and rim are what a metric size is made of; other sizes are one piece.
  const bool metric = tyre.kind() == TyreSize::Kind::Metric;
  const auto inStep = [&](auto* box, Station* station, double value, double stockValue) {
    using Value = decltype(box->value());
    box->setEnabled(metric);
    showValue(*box, static_cast<Value>(value));
    station->showStock(number(stockValue, 0),
                       metric && value != stockValue ? signedNumber(value - stockValue, 0) : QString());
  };
  const auto rounded = [](double x) { return std::round(x * 10.0) / 10.0; };
  inStep(width_, widthStation_, rounded(units::millimetresFromMetres(tyre.widthM())),
         rounded(units::millimetresFromMetres(stockTyre.widthM())));
  inStep(aspect_, aspectStation_, std::round(tyre.aspectPercent()), std::round(stockTyre.aspectPercent()));
  inStep(rim_, rimStation_, tyre.rimInches(), stockTyre.rimInches());
}

void DriveLine::refreshRollout(const std::optional<double>& measuredMm,
                               const std::optional<double>& stockMeasuredMm, double now, double before) {
  const auto length = [&](double metres) { return units_.shown(Quantity::SmallLength, metres); };
  const int decimals = units_.system() == UnitSystem::Imperial ? 2 : 0;
  {
    const QSignalBlocker quiet(rollout_);  // another unit, another range: not an edit
    const double roundTo = std::pow(10.0, decimals);
    const double low = length(units::metresFromMillimetres(limits::kRolloutMm.low));
    rollout_->setMaximum(length(units::metresFromMillimetres(limits::kRolloutMm.high)));
    rollout_->allowNone(low - 1, low, QStringLiteral("≈ %1").arg(number(length(now), decimals)),
                        std::round(length(now) * roundTo) / roundTo);
  }
  showValue(*rollout_,
            rollout_->valueFor(measuredMm ? std::optional(length(units::metresFromMillimetres(*measuredMm)))
                                          : std::nullopt));
  const QString stockText =
      QStringLiteral("%1 %2").arg(number(length(before), decimals), units_.name(Quantity::SmallLength));
  // Another tyre's rollout differs by itself; only a measured one can be taken back here.
  if (measuredMm == stockMeasuredMm || !measuredMm)
    rolloutStation_->showStock(stockText, QString());
  else
    rolloutStation_->showStock(stockText, signedNumber(length(now) - length(before), decimals));
}

void DriveLine::refreshSums() {
  const auto beforeChain = [](const SetupPlan& p) {
    return p.setup.primaryRatio * p.gearing.gears.back().ratio;
  };
  const auto overall = [](const SetupPlan& p) { return p.gearing.gears.back().overallRatio; };
  const SetupPlan& stock = plan_->stock;
  const SetupPlan& proposed = plan_->proposed;
  const auto setText = [](QLabel* label, const QString& text) {
    if (label->text() != text) label->setText(text);
  };
  const auto lastGear = proposed.gearing.gears.back().gear;
  setText(gearbox_.sum, tr("gear %1 up to the sprockets: %2")
                            .arg(lastGear)
                            .arg(stockTo(number(beforeChain(stock), 3), number(beforeChain(proposed), 3))));
  setText(final_.sum,
          tr("final %1")
              .arg(stockTo(number(stock.gearing.finalRatio, 3), number(proposed.gearing.finalRatio, 3))));
  setText(wheel_.sum, tr("overall in %1: %2 engine turns per wheel turn")
                          .arg(lastGear)
                          .arg(stockTo(number(overall(stock), 2), number(overall(proposed), 2))));
}

void DriveLine::report(const std::optional<Problem>& problem) {
  say(problem ? spokenSentence(*problem) : QString());
  // A refused value must not stay in a box that is not being typed into.
  if (problem && plan_ && !qobject_cast<QAbstractSpinBox*>(focusWidget())) refresh();
}

void DriveLine::say(const QString& message) {
  message_->setText(message);
  message_->setToolTip(asMarkup(message));
}

}  // namespace layshaft::ui
