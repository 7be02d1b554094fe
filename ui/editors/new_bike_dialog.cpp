// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/new_bike_dialog.h"

#include <QComboBox>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QMessageBox>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

#include "core/bike/typical_bike.h"
#include "core/limits.h"
#include "core/profile_file.h"
#include "core/units.h"
#include "ui/editors/class_chooser.h"
#include "ui/editors/columns_table.h"
#include "ui/editors/dialog_body.h"
#include "ui/editors/peaks_dialog.h"
#include "ui/editors/typed_gears.h"
#include "ui/editors/typed_ratio.h"
#include "ui/editors/typed_reading.h"
#include "ui/words/numbers.h"
#include "ui/words/plain_text.h"
#include "ui/words/problem_words.h"

namespace layshaft::ui {
namespace {

constexpr int kLineWidth = 420;  // px: estimated peaks, with units, in one line

QString shortNumber(double x) {
  return QLocale().toString(x, 'g', 8).remove(QLocale().groupSeparator());
}

/// What a rider does on the open road, in round numbers of the units shown (common practice, no source).
double usualCruise(const UnitsShown& units) {
  constexpr double kMph = 70.0, kKmh = 110.0;
  return units.system() == UnitSystem::Metric ? kKmh : kMph;
}

}  // namespace

NewBikeDialog::NewBikeDialog(const std::vector<std::pair<QString, Profile>>& samples, QWidget* parent,
                             const UnitsShown& units)
    : QDialog(parent), samples_(samples), units_(units) {
  setWindowTitle(tr("New Bike"));
  auto* column = new QVBoxLayout(this);
  auto* body = new DialogBody;
  column->addWidget(body, 1);
  form_ = new QFormLayout;
  body->column().addLayout(form_);
  from_ = new QComboBox;
  from_->addItem(tr("Nothing: an empty sheet"));
  for (const auto& sample : samples_) from_->addItem(sample.first);
  form_->addRow(tr("&Start from"), from_);
  const auto addLine = [&](const QString& label, const QString& placeholder, const QString& explanation) {
    auto* edit = new QLineEdit;
    edit->setPlaceholderText(placeholder);
    edit->setToolTip(explanation);
    edit->setMinimumWidth(kLineWidth);
    form_->addRow(label, edit);
    connect(edit, &QLineEdit::textChanged, this, &NewBikeDialog::check);
    return edit;
  };
  name_ = addLine(tr("&Name"), tr("What the team calls it"), tr("Any name."));
  revLimit_ = addLine(tr("Rev &limit, rpm"), tr("May stay empty; for example %1").arg(number(12500, 0)),
                      tr("Where the limiter cuts in. Empty: speeds at the limit, pull and acceleration stay "
                         "unknown."));
  primary_ =
      addLine(tr("&Primary ratio"), tr("For example 1.955, or 43/22"),
              tr("Crankshaft turns per clutch turn, as a number or as teeth with the driven gear's first: "
                 "43/22, 43:22 or 43-22. Empty where all gears are given as revs at a speed: then it is "
                 "within the gear ratios; and where no gear ratios are given."));
  gears_ =
      addLine(tr("&Gear ratios"), tr("First to last, for example 2.4 1.944, or 36/15 35/18"),
              tr("May stay empty: teeth and tyre alone tell how far a change goes. First gear first, with "
                 "blanks between. Each a number, or teeth with the driven gear's "
                 "first, or the revs at a true road speed in %1: %2 is read as 5,000 rpm at 110.")
                  .arg(units_.name(Quantity::Speed), QStringLiteral("5000@110")));
  front_ = addLine(tr("&Front teeth"), tr("For example 17"), tr("On the countershaft."));
  rear_ = addLine(tr("&Rear teeth"), tr("For example 45"), tr("At the rear wheel."));
  tyre_ =
      addLine(tr("Rear &tyre"), tr("As printed, for example 180/55ZR17"), tr("The size on the sidewall."));
  drive_ = new QComboBox;
  drive_->addItem(tr("Not known"));
  for (const ChainSize& size : kChainSizes)
    drive_->addItem(
        tr("Chain %1").arg(QLatin1String(size.name.data(), static_cast<qsizetype>(size.name.size()))));
  drive_->addItem(tr("Toothed belt"));
  drive_->setToolTip(tr("With its length, and where it runs in Bike Details, it tells whether parts fit."));
  form_->addRow(tr("C&hain or belt"), drive_);
  links_ = addLine(tr("Lin&ks"), tr("For example 114; may stay empty"),
                   tr("Links of the chain, including the joining link."));
  beltPitch_ = addLine(tr("&Belt pitch, mm"), tr("For example 14; may stay empty"),
                       tr("Distance from tooth to tooth of the belt."));
  beltTeeth_ = addLine(tr("Belt t&eeth"), tr("For example 133; may stay empty"), tr("Teeth of the belt."));
  peaksShown_ = new QLabel;
  peaksShown_->setTextFormat(Qt::PlainText);
  auto* estimate = new QPushButton(tr("Est&imate From Peaks…"));
  estimate->setAutoDefault(false);
  estimate->setToolTip(
      tr("From highest torque and power with their engine speeds a curve is estimated, which "
         "pull, acceleration and top speed need."));
  estimate->setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
  form_->addRow(tr("Torque curve"), estimate);
  form_->addRow(QString(), peaksShown_);
  connect(estimate, &QPushButton::clicked, this, &NewBikeDialog::askForPeaks);
  class_ = new ClassChooser(tr("Leave out"));
  class_->setToolTip(
      tr("Fills mass, drag and what else is open with values typical of the class. They stay marked until "
         "you type your own."));
  form_->addRow(tr("Cl&ass of bike"), class_);
  cruise_ = addLine(tr("Cr&uise speed, %1").arg(units_.name(Quantity::Speed)), tr("May stay empty"),
                    tr("The speed whose revs are compared."));
  message_ = new QLabel;
  message_->setWordWrap(true);
  message_->setTextFormat(Qt::PlainText);  // it quotes what was typed
  message_->setMinimumHeight(message_->fontMetrics().lineSpacing() * 2);
  column->addWidget(message_);
  auto* unlocks = new QLabel(
      tr("Rev limit and gear ratios may stay empty: teeth and tyre alone tell how far a change goes. For "
         "gears whose ratio you do not know, give the revs at a true road speed in %1: %2 stands for "
         "5,000 "
         "rpm at 110. Later, in Bike Details: a torque curve and the chassis show pull, top speed and "
         "acceleration; where the chain or belt runs tells whether parts fit and which length to order; the "
         "speedometer's sensor tells what it will show; the spares box finds pairs you own.")
          .arg(units_.name(Quantity::Speed), QStringLiteral("5000@110")));
  unlocks->setWordWrap(true);
  unlocks->setForegroundRole(QPalette::PlaceholderText);
  body->column().addWidget(unlocks);
  body->column().addStretch();
  buttons_ = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel);
  buttons_->button(QDialogButtonBox::Ok)->setText(tr("Create"));
  column->addWidget(buttons_);
  cruise_->setText(shortNumber(usualCruise(units_)));
  connect(buttons_, &QDialogButtonBox::accepted, this, &QDialog::accept);
  connect(buttons_, &QDialogButtonBox::rejected, this, &QDialog::reject);
  connect(from_, &QComboBox::currentIndexChanged, this, &NewBikeDialog::startFrom);
  connect(drive_, &QComboBox::currentIndexChanged, this, &NewBikeDialog::check);
  check();
  fitToScreen(*this);
  name_->setFocus();
}

void NewBikeDialog::askForPeaks() {
  const auto typed = typedNumber(withoutRpm(revLimit_->text()), limits::kRevLimitRpm.high);
  const double revLimit = typed && limits::kRevLimitRpm.contains(*typed) ? *typed : limits::kRevLimitRpm.high;
  auto* dialog = new PeaksDialog(revLimit, units_, this);
  dialog->setAttribute(Qt::WA_DeleteOnClose);
  connect(dialog, &QDialog::accepted, this, [this, dialog] {
    peaks_ = dialog->peaks();
    check();
  });
  dialog->open();
}

void NewBikeDialog::startFrom(int index) {
  peaks_.reset();
  if (index <= 0) return;
  const Profile& sample = samples_[static_cast<std::size_t>(index - 1)].second;
  QStringList gears;
  for (const double ratio : sample.stock.gearRatios.values()) gears << shortNumber(ratio);
  name_->setText(tr("Copy of %1").arg(shownName(sample.name)));
  const auto& revLimit = sample.bike.engine.revLimitRpm;
  revLimit_->setText(revLimit ? QLocale().toString(*revLimit, 'g', 8) : QString());
  primary_->setText(shortNumber(sample.stock.primaryRatio));
  gears_->setText(gears.join(QLatin1Char(' ')));
  front_->setText(QString::number(sample.stock.frontTeeth.count()));
  rear_->setText(QString::number(sample.stock.rearTeeth.count()));
  tyre_->setText(QString::fromStdString(sample.stock.rearTyre.text()));
  const SetupOptions& options = sample.stock.options;
  int drive = 0;
  if (options.chainSize)
    drive = 1 + static_cast<int>(std::find(kChainSizes.begin(), kChainSizes.end(), *options.chainSize) -
                                 kChainSizes.begin());
  if (options.finalDrive == FinalDrive::Belt) drive = drive_->count() - 1;
  drive_->setCurrentIndex(drive);
  links_->setText(options.links ? QString::number(*options.links) : QString());
  beltPitch_->setText(options.beltPitchMm ? shortNumber(*options.beltPitchMm) : QString());
  beltTeeth_->setText(options.beltTeeth ? QString::number(*options.beltTeeth) : QString());
  cruise_->setText(cruiseText(sample));
}

QString NewBikeDialog::cruiseText(const Profile& sample) const {
  if (!sample.cruiseSpeedKmh) return shortNumber(usualCruise(units_));
  return shortNumber(units_.shown(Quantity::Speed, units::mpsFromKmh(*sample.cruiseSpeedKmh)));
}

bool NewBikeDialog::hasBelt() const {
  return drive_->currentIndex() == drive_->count() - 1;
}

bool NewBikeDialog::optionalLine(const QLineEdit& line, const QString& label, const Limit& limit, bool whole,
                                 std::optional<double>& value, QString& complaint) const {
  value.reset();
  if (line.text().trimmed().isEmpty()) return true;
  value = typedNumber(line.text(), limit.high);
  if (!inside(label, value, limit, complaint)) return false;
  if (!whole || *value == std::floor(*value)) return true;
  complaint = tr("%1: a whole number is expected.").arg(label);
  return false;
}

bool NewBikeDialog::putFinalDrive(SetupOptions& options, QString& complaint) const {
  std::optional<double> links, pitch, teeth;
  const auto whole = [](const std::optional<double>& x) {
    return x ? std::optional(static_cast<int>(*x)) : std::nullopt;
  };
  if (hasBelt()) {
    if (!optionalLine(*beltPitch_, tr("Belt pitch"), limits::kBeltPitchMm, false, pitch, complaint) ||
        !optionalLine(*beltTeeth_, tr("Belt teeth"), limits::kBeltTeeth, true, teeth, complaint))
      return false;
    options.finalDrive = FinalDrive::Belt;
    options.beltPitchMm = pitch;
    options.beltTeeth = whole(teeth);
    return true;
  }
  if (!optionalLine(*links_, tr("Links"), limits::kLinks, true, links, complaint)) return false;
  if (options.finalDrive == FinalDrive::Belt) options.finalDrive.reset();
  const int chosen = drive_->currentIndex() - 1;
  const auto size = chosen < 0 ? std::nullopt : std::optional(kChainSizes[static_cast<std::size_t>(chosen)]);
  // How far one chain is worn says nothing about another.
  if (options.chainSize != size || options.links != whole(links)) options.chainElongationPercent.reset();
  options.chainSize = size;
  options.links = whole(links);
  return true;
}

bool NewBikeDialog::putCruise(Profile& bike, QString& complaint) const {
  // A sample's speed that nobody touched keeps its digits.
  if (from_->currentIndex() > 0 && bike.cruiseSpeedKmh && cruise_->text() == cruiseText(bike)) return true;
  bike.cruiseSpeedKmh.reset();
  if (cruise_->text().trimmed().isEmpty()) return true;
  const auto speedMps = typedSpeedMps(cruise_->text(), units_);
  const auto kmh =
      speedMps ? std::optional(std::round(units::kmhFromMps(*speedMps) * 1e6) / 1e6) : std::nullopt;
  if (kmh && limits::kCruiseSpeedKmh.contains(*kmh)) {
    bike.cruiseSpeedKmh = kmh;
    return true;
  }
  const auto shown = [&](double limitKmh) {
    return QLocale().toString(units_.shown(Quantity::Speed, units::mpsFromKmh(limitKmh)), 'g', 3);
  };
  complaint = tr("Cruise speed: a speed from %1 to %2 %3 is expected, or nothing.")
                  .arg(shown(limits::kCruiseSpeedKmh.low), shown(limits::kCruiseSpeedKmh.high),
                       units_.name(Quantity::Speed));
  return false;
}

QString NewBikeDialog::wrong(const char* key, Problem problem) {
  problem.path = key + problem.path;
  return tr("%1.", "a whole sentence").arg(spokenSentence(problem));
}

void NewBikeDialog::keepTeeth(SetupOptions& options, double primary, const QStringList& gears) const {
  const Setup* sample = from_->currentIndex() > 0
                            ? &samples_[static_cast<std::size_t>(from_->currentIndex() - 1)].second.stock
                            : nullptr;
  // A sample's teeth stay with the ratios that nobody touched.
  if (const auto typed = typedTeeth(primary_->text()); typed || !sample || primary != sample->primaryRatio)
    options.primaryTeeth = typed;
  for (std::size_t i = 0; i < limits::kMostGears; ++i) {
    const QString text = gears.value(static_cast<qsizetype>(i));
    const bool samples = sample && i < sample->gearRatios.count() &&
                         typedRatio(text, limits::kGearRatio) == sample->gearRatios[i];
    if (const auto typed = typedTeeth(text); typed || !samples) setTeethOf(options.gearTeeth, i, typed);
  }
}

std::optional<Setup> NewBikeDialog::setup(const SetupOptions& options, QString& complaint) const {
  const QStringList parts = gearParts(gears_->text());
  // Readings have it within them, and without gears it tells nothing.
  const bool foldedIn = (areReadings(parts) || parts.isEmpty()) && primary_->text().trimmed().isEmpty();
  const auto primary = foldedIn ? std::optional(1.0) : typedRatio(primary_->text(), limits::kPrimaryRatio);
  if (!inside(tr("Primary ratio"), primary, limits::kPrimaryRatio, complaint)) return std::nullopt;
  const auto frontCount = typedNumber(front_->text(), limits::kFrontTeeth.high);
  const auto rearCount = typedNumber(rear_->text(), limits::kRearTeeth.high);
  const auto tyre = TyreSize::parse(tyre_->text().toStdString());
  const auto whole = [](const std::optional<double>& x, const Limit& limit) {
    return x && limit.contains(*x) && *x == std::floor(*x);
  };
  const bool geared = whole(frontCount, limits::kFrontTeeth) && whole(rearCount, limits::kRearTeeth) && tyre;
  SetupOptions known = options;
  keepTeeth(known, *primary, parts);
  // A reading can be turned into a ratio once teeth and tyre are there; until then those are what is asked
  // for.
  const auto setupWith = [&](const GearRatios& gears) {
    return Setup{*Teeth::front(static_cast<int>(*frontCount)),
                 *Teeth::rear(static_cast<int>(*rearCount)),
                 *tyre,
                 *primary,
                 gears,
                 known};
  };
  const auto ratioOf = [&](const QString& part) {
    return isReading(part) ? typedGear(part, units_, setupWith(GearRatios()))
                           : typedRatio(part, limits::kGearRatio);
  };
  const bool waiting = !geared && isReading(gears_->text());
  const auto ratios = waiting ? std::nullopt : typedGears(parts, units_, ratioOf, complaint);
  if (!ratios && !waiting) return std::nullopt;
  if (!inside(tr("Front teeth"), frontCount, limits::kFrontTeeth, complaint) ||
      !inside(tr("Rear teeth"), rearCount, limits::kRearTeeth, complaint))
    return std::nullopt;
  if (*frontCount != std::floor(*frontCount) || *rearCount != std::floor(*rearCount)) {
    complaint = tr("Teeth are whole numbers.");
    return std::nullopt;
  }
  if (!tyre) {
    complaint = wrong("stock.rear_tyre", tyre.problem());
    return std::nullopt;
  }
  return setupWith(*ratios);
}

std::optional<Profile> NewBikeDialog::build(QString& complaint) const {
  if (name_->text().trimmed().isEmpty()) {
    complaint = tr("The bike needs a name.");
    return std::nullopt;
  }
  const bool noLimit = revLimit_->text().trimmed().isEmpty();
  const auto revLimit =
      noLimit ? std::nullopt : typedNumber(withoutRpm(revLimit_->text()), limits::kRevLimitRpm.high);
  if (!noLimit && !inside(tr("Rev limit, rpm"), revLimit, limits::kRevLimitRpm, complaint))
    return std::nullopt;
  const Profile* sample = from_->currentIndex() > 0
                              ? &samples_[static_cast<std::size_t>(from_->currentIndex() - 1)].second
                              : nullptr;
  SetupOptions options;
  if (sample) {
    // What was measured on the sample's parts says nothing about others.
    options = sample->stock.options;
    const auto another = [](const QLineEdit& line, const Teeth& teeth) {
      return typedNumber(line.text()) != static_cast<double>(teeth.count());
    };
    const auto tyre = TyreSize::parse(tyre_->text().toStdString());
    if (!tyre || !sample->stock.rearTyre.sameTyre(*tyre)) forgetTyreMeasurements(options);
    if (another(*front_, sample->stock.frontTeeth)) forgetSprocketMeasurements(options.frontSprocket);
    if (another(*rear_, sample->stock.rearTeeth)) forgetSprocketMeasurements(options.rearSprocket);
  }
  const auto stock = setup(options, complaint);
  if (!stock) return std::nullopt;
  Profile result = sample ? *sample : Profile{.name = {}, .notes = {}, .bike = {}, .stock = *stock};
  result.notes.clear();
  result.stock = *stock;
  result.proposed = {};
  result.pins.clear();
  if (!putFinalDrive(result.stock.options, complaint) || !putCruise(result, complaint)) return std::nullopt;
  result.name = name_->text().trimmed().toStdString();
  result.bike.engine.revLimitRpm = revLimit;
  if (peaks_) {
    if (!revLimit) {
      complaint = tr("Rev limit, rpm: the estimated torque curve goes up to it.");
      return std::nullopt;
    }
    const auto curve = curveFromPeaks(*peaks_, *revLimit);
    if (!curve) {
      complaint = peaksRefused(curve.problem(), units_);
      return std::nullopt;
    }
    result.bike.engine.torqueCurve = *curve;
    result.bike.engine.curveEstimated = true;
    result.bike.engine.curveMeasuredAt.reset();  // data sheets tell of the crankshaft
    result.bike.engine.curveAir.reset();
  }
  if (const auto chosen = class_->chosen()) takeTypicalValues(result, chosen);
  if (const auto conflict = conflictIn(result)) {
    complaint = wrong("", *conflict);
    return std::nullopt;
  }
  return result;
}

std::optional<Profile> NewBikeDialog::profile() const {
  QString complaint;
  return build(complaint);
}

void NewBikeDialog::reject() {
  const auto lines = findChildren<QLineEdit*>();
  const bool typed = peaks_ || std::any_of(lines.begin(), lines.end(), [](const QLineEdit* line) {
                       return line->isModified() && !line->text().isEmpty();
                     });
  if (typed) {
    QMessageBox question(QMessageBox::Question, windowTitle(), tr("Discard what you have typed?"),
                         QMessageBox::Discard, this);
    QPushButton* keep = question.addButton(tr("Keep Editing"), QMessageBox::RejectRole);
    question.setDefaultButton(keep);
    question.setEscapeButton(keep);
    question.exec();
    if (question.clickedButton() != question.button(QMessageBox::Discard)) return;
  }
  QDialog::reject();
}

void NewBikeDialog::check() {
  const bool samples =
      from_->currentIndex() > 0 &&
      samples_[static_cast<std::size_t>(from_->currentIndex() - 1)].second.bike.engine.torqueCurve;
  peaksShown_->setText(peaks_    ? tr("Estimated from %1").arg(peaksWords(*peaks_, units_))
                       : samples ? tr("The sample's")
                                 : tr("None"));
  form_->setRowVisible(links_, !hasBelt());
  for (QLineEdit* line : {beltPitch_, beltTeeth_}) form_->setRowVisible(line, hasBelt());
  QString complaint;
  const bool good = build(complaint).has_value();
  message_->setText(complaint);
  buttons_->button(QDialogButtonBox::Ok)->setEnabled(good);
}

}  // namespace layshaft::ui
