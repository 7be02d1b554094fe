// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/measure_dialog.h"

#include <QButtonGroup>
#include <QDateEdit>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QRadioButton>
#include <QVBoxLayout>
#include <algorithm>

#include "core/bike/words.h"
#include "core/limits.h"
#include "ui/charts/tooth_shapes.h"
#include "ui/editors/calm_spin_box.h"
#include "ui/editors/chain_sketch.h"
#include "ui/words/choice_words.h"
#include "ui/words/dates.h"
#include "ui/words/field_table.h"
#include "ui/words/use_words.h"
#include "ui/words/wear_words.h"

namespace layshaft::ui {
namespace {

constexpr int kFirstPlaces = 4, kMostPlacesHere = 12, kPlacesInARow = 4;
constexpr int kNotSeen = 99;         // beside the words of TeethSeen; a group gives negative ones itself
constexpr double kToothLines = 2.2;  // height of a tooth's drawing, in lines of the font

const Field& lengthField() {
  return *fieldRow("wear.measurements[].lengths_mm[]");
}

}  // namespace

MeasureDialog::MeasureDialog(const WearBook& book, const UnitsShown& units, const QDate& today,
                             QWidget* parent)
    : QDialog(parent), book_(book), units_(units), date_(new QDateEdit(today)) {
  setWindowTitle(tr("Measure Chain and Sprockets"));
  auto* column = new QVBoxLayout(this);
  addAdvice(*column);
  auto* form = new QFormLayout;
  form->setFieldGrowthPolicy(QFormLayout::FieldsStayAtSizeHint);
  column->addLayout(form);
  date_->setCalendarPopup(true);
  form->addRow(tr("&Day"), date_);
  addUse(*form);
  addLengths(*form);
  front_ = addTeeth(*form, tr("Front teeth"));
  rear_ = addTeeth(*form, tr("Rear teeth"));
  liftsOff_ = new CalmComboBox;
  liftsOff_->addItems({tr("Not tried"), flagOption(false), flagOption(true)});
  form->addRow(tr("Chain &lifts off the rear sprocket by half a tooth"), liftsOff_);
  note_ = new QLineEdit;
  note_->setMaxLength(limits::kLongestRecordText);
  note_->setMinimumWidth(fontMetrics().averageCharWidth() * 50);
  form->addRow(tr("&Note"), note_);
  findings_ = new QLabel;
  findings_->setWordWrap(true);
  findings_->setAccessibleName(tr("What the lengths come to"));
  findings_->setMinimumHeight(2 * fontMetrics().lineSpacing());
  column->addWidget(findings_);
  buttons_ = new QDialogButtonBox(QDialogButtonBox::Ok | QDialogButtonBox::Cancel);
  buttons_->button(QDialogButtonBox::Ok)->setText(tr("Add Measurement"));
  column->addWidget(buttons_);
  connect(buttons_, &QDialogButtonBox::accepted, this, &QDialog::accept);
  connect(buttons_, &QDialogButtonBox::rejected, this, &QDialog::reject);
  connect(liftsOff_, &QComboBox::currentIndexChanged, this, &MeasureDialog::check);
  connect(date_, &QDateEdit::dateChanged, this, &MeasureDialog::check);
  check();
}

void MeasureDialog::addAdvice(QLayout& column) {
  auto* advice = new QLabel(measuringAdvice().join(QLatin1Char('\n')));
  advice->setWordWrap(true);
  column.addWidget(advice);
  sketch_ = new ChainSketch(*book_.size);
  column.addWidget(sketch_);
  expected_ = new QLabel;
  expected_->setWordWrap(true);
  column.addWidget(expected_);
}

void MeasureDialog::addUse(QFormLayout& form) {
  const UseUnit unit = book_.figures.useUnit;
  use_ = new DecimalBox;
  use_->setDecimals(useDecimals(unit));
  use_->setMaximum(shownUse(unit, limits::kUse.high, units_));
  use_->setSuffix(QLatin1Char(' ') + useName(unit, units_));
  double last = book_.wear.chainFittedAt.value_or(0.0);
  for (const MeasuredElongation& one : book_.figures.measured) last = std::max(last, one.at.value_or(0.0));
  use_->allowNone(-1.0, 0.0, tr("Not given"), shownUse(unit, last, units_));
  use_->setValue(-1.0);
  use_->setAccessibleName(tr("Use of the bike"));
  connect(use_, &DecimalBox::valueChanged, this, &MeasureDialog::check);
  form.addRow(unit == UseUnit::Hours ? tr("Hour &meter") : tr("Odo&meter"), use_);
}

void MeasureDialog::addLengths(QFormLayout& form) {
  pitches_ = new WholeBox;
  pitches_->setRange(static_cast<int>(limits::kMeasuredPitches.low),
                     static_cast<int>(limits::kMeasuredPitches.high));
  pitches_->setValue(kUsualPitches);
  pitches_->setAccessibleName(tr("Links measured over"));
  connect(pitches_, &WholeBox::valueChanged, this, &MeasureDialog::check);
  form.addRow(tr("Links measured &over"), pitches_);
  auto* places = new QWidget;
  grid_ = new QGridLayout(places);
  grid_->setContentsMargins(0, 0, 0, 0);
  auto* more = new QPushButton(tr("One More &Place"));
  more->setAutoDefault(false);
  connect(more, &QPushButton::clicked, this, [this, more] {
    addPlace();
    places_.back()->setFocus();
    more->setEnabled(static_cast<int>(places_.size()) < kMostPlacesHere);
  });
  auto* both = new QHBoxLayout;
  both->addWidget(places);
  both->addWidget(more, 0, Qt::AlignBottom);
  for (int i = 0; i < kFirstPlaces; ++i) addPlace();
  auto* label = new QLabel(tr("Lengths, &one for each place"));
  label->setBuddy(places_.front());
  form.addRow(label, both);
}

void MeasureDialog::addPlace() {
  const Field& field = lengthField();
  const auto place = static_cast<int>(places_.size());
  auto* box = new DecimalBox;
  box->setAccessibleName(tr("Length at place %1").arg(place + 1));
  box->setDecimals(typedDecimals(field, units_));
  const double lowest = shownNumber(field, limits::kMeasuredLengthMm.low, units_);
  box->setMaximum(shownNumber(field, limits::kMeasuredLengthMm.high, units_));
  box->setSuffix(QLatin1Char(' ') + units_.name(Quantity::SmallLength));
  box->setSingleStep(units_.system() == UnitSystem::Imperial ? 0.01 : 0.1);
  box->allowNone(lowest - 1.0, lowest, tr("Not measured"), lowest);
  box->setValue(box->valueFor(std::nullopt));
  connect(box, &DecimalBox::valueChanged, this, &MeasureDialog::check);
  places_.push_back(box);
  grid_->addWidget(box, place / kPlacesInARow, place % kPlacesInARow);
  if (place >= kFirstPlaces) setTabOrder(places_[places_.size() - 2], box);  // else it would come last
}

QButtonGroup* MeasureDialog::addTeeth(QFormLayout& form, const QString& label) {
  auto* group = new QButtonGroup(this);
  auto* row = new QHBoxLayout;
  const auto add = [&](const QString& text, int id) {
    auto* button = new QRadioButton(text);
    button->setAccessibleName(tr("%1: %2", "which teeth, and how they look").arg(label, text));
    group->addButton(button, id);
    row->addWidget(button);
    return button;
  };
  add(tr("Not looked at"), kNotSeen)->setChecked(true);
  const ChartPalette colours(palette(), QPalette::Window);
  const int height = qRound(fontMetrics().lineSpacing() * kToothLines);
  for (const auto& [seen, word] : kTeethSeenWords) {
    auto* button = add(choiceOption(word), static_cast<int>(seen));
    const QPixmap drawing = teethSeenPixmap(seen, height, devicePixelRatioF(), colours);
    button->setIcon(drawing);
    button->setIconSize((QSizeF(drawing.size()) / drawing.devicePixelRatio()).toSize());
  }
  group->button(static_cast<int>(TeethSeen::Hooked))->setToolTip(tr("Hooked, pointed or broken"));
  connect(group, &QButtonGroup::idToggled, this, &MeasureDialog::check);
  row->addStretch();
  form.addRow(label, row);
  return group;
}

std::vector<double> MeasureDialog::lengthsMm() const {
  std::vector<double> lengths;
  for (const DecimalBox* place : places_)
    if (const auto length = place->optionalValue())
      lengths.push_back(fileNumber(lengthField(), *length, units_));
  return lengths;
}

std::optional<WearMeasurement> MeasureDialog::entry() const {
  const auto seen = [](const QButtonGroup& group) {
    const int id = group.checkedId();
    return id == kNotSeen ? std::nullopt : std::optional(static_cast<TeethSeen>(id));
  };
  WearMeasurement entry;
  entry.date = coreDate(date_->date());
  if (const auto use = use_->optionalValue()) entry.at = fileUse(book_.figures.useUnit, *use, units_);
  entry.lengthsMm = lengthsMm();
  if (pitches_->value() != kUsualPitches && !entry.lengthsMm.empty()) entry.pitches = pitches_->value();
  entry.front = seen(*front_);
  entry.rear = seen(*rear_);
  if (liftsOff_->currentIndex() > 0) entry.liftsOffHalfTooth = liftsOff_->currentIndex() == 2;
  entry.note = note_->text().toStdString();
  const bool found = !entry.lengthsMm.empty() || entry.front || entry.rear || entry.liftsOffHalfTooth;
  return found ? std::optional(entry) : std::nullopt;
}

void MeasureDialog::check() {
  if (!buttons_) return;
  const int pitches = pitches_->value();
  sketch_->setPitches(pitches);
  expected_->setText(expectedLengthWords(*book_.size, pitches, book_.figures.limitPercent, units_));
  // Stepping begins at a new chain's length.
  for (DecimalBox* place : places_)
    place->setStart(shownNumber(lengthField(), newLengthMm(*book_.size, pitches), units_));
  const auto now = entry();
  QStringList words{livePlacesWords(*book_.size, pitches, lengthsMm())};
  if (now && now->at)
    for (const MeasuredElongation& one : book_.figures.measured)
      if (one.at && !one.earlierChain && *one.at > *now->at) {
        words << tr("Less use than an earlier entry has: it is kept, but left out of the trend.");
        break;
      }
  if (now && !now->at && !now->lengthsMm.empty()) words << tr("Without the use it is not in the trend.");
  if (!now) words << tr("Type a length, or say what you saw of the teeth.");
  words.removeAll(QString());
  findings_->setText(words.join(QLatin1Char(' ')));
  buttons_->button(QDialogButtonBox::Ok)->setEnabled(now.has_value());
}

}  // namespace layshaft::ui
