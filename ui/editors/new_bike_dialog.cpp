// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/new_bike_dialog.h"

#include <QComboBox>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QRegularExpression>
#include <QVBoxLayout>
#include <cmath>

#include "core/limits.h"
#include "core/profile_file.h"
#include "ui/editors/columns_table.h"
#include "ui/words/numbers.h"
#include "ui/words/plain_text.h"
#include "ui/words/problem_words.h"

namespace layshaft::ui {
namespace {

QString shortNumber(double x) {
  return QLocale().toString(x, 'g', 8).remove(QLocale().groupSeparator());
}

/// A ratio may be typed as the tooth counts that make it.
std::optional<double> typedRatio(const QString& text, const Limit& limit) {
  const QStringList parts = text.split(QLatin1Char('/'));
  if (parts.size() == 1) return typedNumber(text, limit.high);
  if (parts.size() != 2) return std::nullopt;
  const auto driven = typedNumber(parts[0]), driving = typedNumber(parts[1]);
  if (!driven || !driving || *driving <= 0) return std::nullopt;
  return std::round(*driven / *driving * 1e6) / 1e6;
}

/// Between blanks a comma is a decimal mark, unless points are: "2,71 2,06", "2.71, 2.06" and "2.71,2.06" all
/// read.
QStringList ratioParts(const QString& text) {
  static const QRegularExpression blanks(QStringLiteral("[\\s;]+|,\\s+"));
  QStringList parts;
  for (const QString& part : text.split(blanks, Qt::SkipEmptyParts))
    parts << (part.contains(QLatin1Char('.')) ? part.split(QLatin1Char(','), Qt::SkipEmptyParts)
                                              : QStringList(part));
  return parts;
}

}  // namespace

NewBikeDialog::NewBikeDialog(const std::vector<std::pair<QString, Profile>>& samples, QWidget* parent)
    : QDialog(parent), samples_(samples) {
  setWindowTitle(tr("New Bike"));
  auto* column = new QVBoxLayout(this);
  auto* form = new QFormLayout;
  column->addLayout(form);
  from_ = new QComboBox;
  from_->addItem(tr("Nothing: an empty sheet"));
  for (const auto& sample : samples_) from_->addItem(sample.first);
  form->addRow(tr("&Start from"), from_);
  const auto addLine = [&](const QString& label, const QString& placeholder, const QString& explanation) {
    auto* edit = new QLineEdit;
    edit->setPlaceholderText(placeholder);
    edit->setToolTip(explanation);
    edit->setMinimumWidth(320);
    form->addRow(label, edit);
    connect(edit, &QLineEdit::textChanged, this, &NewBikeDialog::check);
    return edit;
  };
  name_ = addLine(tr("&Name"), tr("What the team calls it"), tr("Any name."));
  revLimit_ = addLine(tr("Rev &limit, rpm"), tr("For example %1").arg(number(12500, 0)),
                      tr("Where the limiter cuts in."));
  primary_ = addLine(tr("&Primary ratio"), tr("For example 1.955, or 76/36"),
                     tr("Crankshaft turns per clutch turn, as a number or as teeth."));
  gears_ = addLine(tr("&Gear ratios"), tr("First to last, for example 2.71 2.06 1.72 or 38/14 35/17"),
                   tr("First gear first, with blanks between; numbers or teeth."));
  front_ = addLine(tr("&Front teeth"), tr("For example 16"), tr("On the countershaft."));
  rear_ = addLine(tr("&Rear teeth"), tr("For example 43"), tr("At the rear wheel."));
  tyre_ =
      addLine(tr("Rear &tyre"), tr("As printed, for example 180/55ZR17"), tr("The size on the sidewall."));
  message_ = new QLabel;
  message_->setWordWrap(true);
  message_->setTextFormat(Qt::PlainText);  // it quotes what was typed
  message_->setMinimumHeight(message_->fontMetrics().lineSpacing() * 2);
  column->addWidget(message_);
  auto* unlocks =
      new QLabel(tr("This is all the sawtooth and the speedometer figures need. Later, in Bike Details: a "
                    "torque curve and the chassis show pull, top speed and acceleration; chain or belt data "
                    "tell whether parts fit and which length to order; the spares box finds pairs you own."));
  unlocks->setWordWrap(true);
  unlocks->setForegroundRole(QPalette::PlaceholderText);
  column->addWidget(unlocks);
  buttons_ = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel);
  buttons_->button(QDialogButtonBox::Ok)->setText(tr("Create"));
  column->addWidget(buttons_);
  connect(buttons_, &QDialogButtonBox::accepted, this, &QDialog::accept);
  connect(buttons_, &QDialogButtonBox::rejected, this, &QDialog::reject);
  connect(from_, &QComboBox::currentIndexChanged, this, &NewBikeDialog::startFrom);
  check();
}

void NewBikeDialog::startFrom(int index) {
  if (index <= 0) return;
  const Profile& sample = samples_[static_cast<std::size_t>(index - 1)].second;
  QStringList gears;
  for (const double ratio : sample.stock.gearRatios.values()) gears << shortNumber(ratio);
  name_->setText(tr("Copy of %1").arg(shownName(sample.name)));
  revLimit_->setText(QLocale().toString(sample.bike.engine.revLimitRpm, 'g', 8));
  primary_->setText(shortNumber(sample.stock.primaryRatio));
  gears_->setText(gears.join(QLatin1Char(' ')));
  front_->setText(QString::number(sample.stock.frontTeeth.count()));
  rear_->setText(QString::number(sample.stock.rearTeeth.count()));
  tyre_->setText(QString::fromStdString(sample.stock.rearTyre.text()));
}

bool NewBikeDialog::inside(const QString& label, const std::optional<double>& x, const Limit& limit,
                           QString& complaint) const {
  if (x && limit.contains(*x)) return true;
  complaint = tr("%1: a number from %2 to %3 is expected.")
                  .arg(label, QLocale().toString(limit.low, 'g', 6), QLocale().toString(limit.high, 'g', 6));
  return false;
}

QString NewBikeDialog::wrong(const char* key, Problem problem) {
  problem.path = key + problem.path;
  return tr("%1.", "a whole sentence").arg(spokenSentence(problem));
}

std::optional<GearRatios> NewBikeDialog::gears(QString& complaint) const {
  std::vector<double> ratios;
  for (const QString& part : ratioParts(gears_->text())) {
    const auto gear = typedRatio(part, limits::kGearRatio);
    if (!inside(tr("Gear ratios, “%1”").arg(part), gear, limits::kGearRatio, complaint)) return std::nullopt;
    ratios.push_back(*gear);
  }
  const auto gears = GearRatios::make(ratios);
  if (gears) return *gears;
  complaint = tr("Gear ratios: %1").arg(wrong("stock.gear_ratios", gears.problem()));
  return std::nullopt;
}

std::optional<Setup> NewBikeDialog::setup(QString& complaint) const {
  const auto primary = typedRatio(primary_->text(), limits::kPrimaryRatio);
  if (!inside(tr("Primary ratio"), primary, limits::kPrimaryRatio, complaint)) return std::nullopt;
  const auto ratios = gears(complaint);
  if (!ratios) return std::nullopt;
  const auto frontCount = typedNumber(front_->text(), limits::kFrontTeeth.high);
  const auto rearCount = typedNumber(rear_->text(), limits::kRearTeeth.high);
  if (!inside(tr("Front teeth"), frontCount, limits::kFrontTeeth, complaint) ||
      !inside(tr("Rear teeth"), rearCount, limits::kRearTeeth, complaint))
    return std::nullopt;
  if (*frontCount != std::floor(*frontCount) || *rearCount != std::floor(*rearCount)) {
    complaint = tr("Teeth are whole numbers.");
    return std::nullopt;
  }
  const auto tyre = TyreSize::parse(tyre_->text().toStdString());
  if (!tyre) {
    complaint = wrong("stock.rear_tyre", tyre.problem());
    return std::nullopt;
  }
  return Setup{*Teeth::front(static_cast<int>(*frontCount)),
               *Teeth::rear(static_cast<int>(*rearCount)),
               *tyre,
               *primary,
               *ratios,
               {}};
}

std::optional<Profile> NewBikeDialog::build(QString& complaint) const {
  if (name_->text().trimmed().isEmpty()) {
    complaint = tr("The bike needs a name.");
    return std::nullopt;
  }
  const auto revLimit = typedNumber(revLimit_->text(), limits::kRevLimitRpm.high);
  if (!inside(tr("Rev limit"), revLimit, limits::kRevLimitRpm, complaint)) return std::nullopt;
  auto stock = setup(complaint);
  if (!stock) return std::nullopt;

  Profile result{.name = {}, .notes = {}, .bike = {}, .stock = *stock};
  if (from_->currentIndex() > 0) {
    result = samples_[static_cast<std::size_t>(from_->currentIndex() - 1)].second;
    result.notes.clear();
    // What was measured on the sample's parts says nothing about others.
    SetupOptions options = result.stock.options;
    if (!result.stock.rearTyre.sameTyre(stock->rearTyre)) forgetTyreMeasurements(options);
    if (result.stock.frontTeeth != stock->frontTeeth) forgetSprocketMeasurements(options.frontSprocket);
    if (result.stock.rearTeeth != stock->rearTeeth) forgetSprocketMeasurements(options.rearSprocket);
    stock->options = options;
    result.stock = *stock;
    result.proposed = {};
    result.pins.clear();
  }
  result.name = name_->text().trimmed().toStdString();
  result.bike.engine.revLimitRpm = *revLimit;
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

void NewBikeDialog::check() {
  QString complaint;
  const bool good = build(complaint).has_value();
  message_->setText(complaint);
  buttons_->button(QDialogButtonBox::Ok)->setEnabled(good);
}

}  // namespace layshaft::ui
