// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/aim_editor.h"

#include <QHBoxLayout>
#include <QShortcut>
#include <QTimer>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

#include "core/bike/words.h"
#include "core/limits.h"
#include "core/number_text.h"
#include "core/units.h"
#include "ui/editors/refusal_bubble.h"
#include "ui/words/aim_words.h"
#include "ui/words/choice_words.h"
#include "ui/words/field_table.h"
#include "ui/words/problem_words.h"

namespace layshaft::ui {
namespace {

constexpr int kNoGear = 0;      // shown as "Top gear"
constexpr int kListWidth = 24;  // characters, of an aim's beginning

/// What has to be said for an aim of a kind.
struct Asks {
  bool gear = false, rpm = false, speed = false, percent = false;
};

Asks asksFor(Aim::Want want) {
  switch (want) {
    case Aim::Want::RevAtSpeed:
    case Aim::Want::CruiseBelow:
      return {.gear = true, .rpm = true, .speed = true};
    case Aim::Want::PullGain:
      return {.gear = true, .percent = true};
    case Aim::Want::TopSpeedAtLeast:
      return {.speed = true};
    case Aim::Want::RevAtDriveEnd:
      return {.gear = true, .rpm = true};
    case Aim::Want::LeastDriveTime:
    case Aim::Want::LeastLapTime:
      break;
  }
  return {};
}

}  // namespace

AimEditor::AimEditor(Document& document, QWidget* note, QWidget* parent)
    : QWidget(parent),
      document_(document),
      want_(new CalmComboBox),
      gear_(new WholeBox),
      speed_(new WholeBox),
      rpm_(new WholeBox),
      percent_(new WholeBox),
      list_(new QListWidget),
      add_(new QPushButton(tr("Add Aim"))),
      remove_(new QPushButton(tr("Remove Aim"))) {
  list_->setAccessibleName(tr("Aims"));
  constexpr int kLines = 2;
  list_->setMinimumHeight(kLines * list_->fontMetrics().height() + 2 * list_->frameWidth());
  list_->setMinimumWidth(list_->fontMetrics().averageCharWidth() * kListWidth);
  list_->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Ignored);  // no higher than what is beside it
  for (const auto& want : kAimWords) want_->addItem(choiceOption(want.second));
  want_->setAccessibleName(tr("Kind of aim"));
  const auto setUp = [this](WholeBox* box, const QString& name, int low, int high, int step, int value) {
    box->setRange(low, high);
    box->setSingleStep(step);
    box->setValue(value);
    box->setAccessibleName(name);
    box->setToolTip(name);
    box->whenRefused([this, box, name](const RefusedNumber& refusal) {
      // The value from before comes back first.
      QTimer::singleShot(0, box, [=, this] { refuse(box, refusedNumber(name, refusal)); });
    });
  };
  setUp(gear_, tr("Aim: gear"), kNoGear, limits::kMostGears, 1, kNoGear);
  gear_->setSpecialValueText(tr("Top gear"));
  setUp(speed_, tr("Aim: speed"), 5, static_cast<int>(limits::kSpeedKmh.high), 5, 110);
  setUp(rpm_, tr("Aim: engine speed"), static_cast<int>(limits::kAimRpm.low),
        static_cast<int>(limits::kAimRpm.high), 100, 5000);
  rpm_->setGroupSeparatorShown(true);
  setUp(percent_, tr("Aim: per cent"), static_cast<int>(limits::kAimPercent.low),
        static_cast<int>(limits::kAimPercent.high), 1, 5);
  rpm_->setSuffix(tr(" rpm"));
  rpm_->setAccessibleName(nameWithUnit(tr("Aim: engine speed"), units_.name(Quantity::EngineSpeed)));
  percent_->setSuffix(tr(" %"));
  connect(add_, &QPushButton::clicked, this, &AimEditor::add);
  connect(remove_, &QPushButton::clicked, this, &AimEditor::remove);
  connect(want_, &QComboBox::currentIndexChanged, this, &AimEditor::showFields);
  connect(list_, &QListWidget::currentRowChanged, this, [this](int row) { remove_->setEnabled(row >= 0); });
  remove_->setEnabled(false);
  auto* deleted = new QShortcut(QKeySequence::Delete, list_);
  deleted->setContext(Qt::WidgetShortcut);
  connect(deleted, &QShortcut::activated, this, &AimEditor::remove);

  auto* statement = new QHBoxLayout;
  for (QWidget* widget : std::initializer_list<QWidget*>{want_, gear_, rpm_, speed_, percent_, add_, remove_})
    statement->addWidget(widget);
  statement->addStretch();
  auto* left = new QWidget;
  auto* column = new QVBoxLayout(left);
  column->setContentsMargins(0, 0, 0, 0);
  column->addLayout(statement);
  if (note) column->addWidget(note);
  auto* halves = new QHBoxLayout(this);
  halves->setContentsMargins(0, 0, 0, 0);
  halves->addWidget(left);
  halves->addWidget(list_, 1);
  showFields();
  left->setMinimumWidth(
      left->sizeHint().width());  // the first kind asks for the most: the list stays where it is
}

void AimEditor::showFields() {
  const Asks asks = asksFor(want());
  gear_->setVisible(asks.gear);
  rpm_->setVisible(asks.rpm);
  speed_->setVisible(asks.speed);
  percent_->setVisible(asks.percent);
}

void AimEditor::add() {
  if (static_cast<int>(document_.profile().aims.size()) >= limits::kMostAims) {
    return refuse(add_, tr("There are %n aims already; remove one first.", nullptr, limits::kMostAims));
  }
  const Aim::Want kind = want();
  const Asks asks = asksFor(kind);
  Aim aim{.want = kind};
  if (asks.gear && gear_->value() != kNoGear) aim.gear = gear_->value();
  if (asks.speed) aim.speedKmh = withoutNoise(units::kmhFromMps(units_.si(Quantity::Speed, speed_->value())));
  if (asks.rpm) aim.rpm = rpm_->value();
  if (asks.percent) aim.percent = percent_->value();
  const auto& aims = document_.profile().aims;
  if (std::find(aims.begin(), aims.end(), aim) != aims.end()) {
    return refuse(add_, tr("This aim is already listed: %1.").arg(aimWords(aim, units_)));
  }
  const auto problem = document_.edit({.field = QStringLiteral("aim.%1").arg(document_.profile().aims.size()),
                                       .title = tr("aim: %1").arg(aimWords(aim, units_)),
                                       .shown = {}},
                                      [&](Profile& p) { p.aims.push_back(aim); });
  if (problem) return refuse(add_, spokenSentence(*problem));
  emit refused(QString());
}

void AimEditor::refuse(QWidget* beside, const QString& why) {
  RefusalBubble::near(*beside).say(*beside, why, document_);
  emit refused(why);
}

void AimEditor::remove() {
  const int row = list_->currentRow();
  const auto& aims = document_.profile().aims;
  if (row < 0 || row >= static_cast<int>(aims.size())) return;
  document_.edit({.field = QStringLiteral("aim.remove.%1").arg(row),
                  .title = tr("remove aim: %1").arg(aimWords(aims[static_cast<std::size_t>(row)], units_)),
                  .shown = {}},
                 [row](Profile& p) { p.aims.erase(p.aims.begin() + row); });
}

void AimEditor::refresh(const UnitsShown& units) {
  constexpr int kUsualKmh = 110, kUsualMph = 70;  // a number in one unit says nothing in another
  if (units_.name(Quantity::Speed) != units.name(Quantity::Speed))
    speed_->setValue(units.system() == UnitSystem::Metric ? kUsualKmh : kUsualMph);
  units_ = units;
  const double most = units.shown(Quantity::Speed, units::mpsFromKmh(limits::kSpeedKmh.high));
  speed_->setMaximum(static_cast<int>(most + 1e-9));
  speed_->setSuffix(QLatin1Char(' ') + units.name(Quantity::Speed));
  speed_->setAccessibleName(nameWithUnit(tr("Aim: speed"), units.name(Quantity::Speed)));
  QStringList words;
  for (const Aim& aim : document_.profile().aims) words << aimWords(aim, units);
  QStringList shown;
  for (int i = 0; i < list_->count(); ++i) shown << list_->item(i)->text();
  if (words == shown) return;
  list_->clear();
  list_->addItems(words);
}

}  // namespace layshaft::ui
