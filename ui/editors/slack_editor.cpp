// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/slack_editor.h"

#include <QHBoxLayout>
#include <QVBoxLayout>
#include <algorithm>

#include "core/limits.h"
#include "ui/document/record_edits.h"
#include "ui/editors/calm_spin_box.h"
#include "ui/words/field_table.h"
#include "ui/words/problem_words.h"

namespace layshaft::ui {
namespace {

const Field& slackField() {
  return *fieldRow("wear.slack_mm[]");
}

constexpr double kStartMm = 30.0;  // where stepping begins, in the middle of what manuals of road bikes give

}  // namespace

SlackEditor::SlackEditor(Document& document, QWidget* parent)
    : QWidget(parent),
      document_(document),
      low_(addBox(tr("Slack from"))),
      high_(addBox(tr("Slack to"))),
      message_(new QLabel) {
  auto* boxes = new QHBoxLayout;
  auto* label = new QLabel(tr("Slack by the manual"));
  label->setBuddy(low_);
  boxes->addWidget(label);
  boxes->addWidget(low_, 1);
  boxes->addWidget(new QLabel(tr("to", "between the ends of a range")));
  boxes->addWidget(high_, 1);
  message_->setWordWrap(true);
  message_->hide();
  // What is half typed belongs to the bike before.
  connect(&document_, &Document::loading, this, [this] {
    for (DecimalBox* box : {low_, high_}) showValue(*box, box->minimum());
  });
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addLayout(boxes);
  column->addWidget(message_);
}

DecimalBox* SlackEditor::addBox(const QString& name) {
  auto* box = new DecimalBox;
  box->setAccessibleName(name);
  box->setKeyboardTracking(false);
  box->whenRefused(
      [this, name](const RefusedNumber& refusal) { emit refused(refusedNumber(name, refusal)); });
  connect(box, &DecimalBox::valueChanged, this, [this] { take(); });
  return box;
}

void SlackEditor::refresh(const UnitsShown& units) {
  units_ = units;
  const Field& field = slackField();
  const auto& wear = document_.profile().wear;
  const auto slack = wear ? wear->slackMm : std::nullopt;
  const auto show = [&](DecimalBox& box, const std::optional<double>& mm) {
    const QSignalBlocker quiet(box);
    const double lowest = shownNumber(field, limits::kSlackMm.low, units);
    box.setDecimals(typedDecimals(field, units));
    box.setMaximum(shownNumber(field, limits::kSlackMm.high, units));
    box.allowNone(lowest - 1.0, lowest, tr("Not given"), shownNumber(field, kStartMm, units));
    box.setSuffix(QLatin1Char(' ') + units.name(Quantity::SmallLength));
    box.setSingleStep(units.system() == UnitSystem::Imperial ? 0.1 : 1.0);
    showValue(box, box.valueFor(mm ? std::optional(shownValue(field, *mm, units)) : std::nullopt));
  };
  // One end alone is still being typed.
  if (!slack && low_->isNone() != high_->isNone()) return;
  show(*low_, slack ? std::optional(slack->lowMm) : std::nullopt);
  show(*high_, slack ? std::optional(slack->highMm) : std::nullopt);
  message_->hide();
}

void SlackEditor::take() {
  const auto low = low_->optionalValue(), high = high_->optionalValue();
  RecordEdits edits(document_);
  const bool half = low.has_value() != high.has_value(), crossed = low && high && *low > *high;
  message_->setText(half ? tr("Both ends are needed.") : tr("The first is the smaller one."));
  message_->setVisible(half || crossed);
  if (half || crossed) return;
  // The last shown digit of a limit may lie a hair beyond it.
  const auto file = [&](double shown) {
    return std::clamp(fileNumber(slackField(), shown, units_), limits::kSlackMm.low, limits::kSlackMm.high);
  };
  if (const auto problem =
          edits.setSlack(low ? std::optional(LengthRange{file(*low), file(*high)}) : std::nullopt))
    emit refused(spokenSentence(*problem));
}

void addSlackPosture(FieldForm& form) {
  // Beside a picture there is no room for a label in front.
  static_cast<QFormLayout*>(form.layout())->setRowWrapPolicy(QFormLayout::WrapAllRows);
  form.layout()->setContentsMargins(0, 0, 0, 0);
  form.addField("wear.slack_posture");
  constexpr int kLines = 4;
  form.editorOf("wear.slack_posture")->setFixedHeight(kLines * form.fontMetrics().lineSpacing());
}

}  // namespace layshaft::ui
