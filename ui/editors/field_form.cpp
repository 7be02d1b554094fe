// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/field_form.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QRegularExpression>
#include <QTimer>
#include <QVBoxLayout>
#include <algorithm>
#include <cassert>
#include <cmath>
#include <memory>

#include "core/bike/typical_bike.h"
#include "core/bike/words.h"
#include "ui/editors/calm_spin_box.h"
#include "ui/editors/field_relevance.h"
#include "ui/editors/measure_sketch.h"
#include "ui/editors/refusal_bubble.h"
#include "ui/words/choice_words.h"
#include "ui/words/numbers.h"
#include "ui/words/problem_words.h"

namespace layshaft::ui {
namespace {

constexpr int kTextWidth = 280;
constexpr double kLongestLine = 1000;  // characters: a text that may be longer gets several lines

/// The words of a field that are choices of their own beside "not given".
std::vector<std::string_view> ownWords(const Field& field, const FieldRule& rule) {
  std::vector<std::string_view> words;
  for (const std::string_view word : rule.words)
    if (word != field.measure.openMeans) words.push_back(word);
  return words;
}

/// The choices of a field, the first stands for "not given".
QStringList choicesOf(const Field& field, const FieldRule& rule) {
  QStringList choices{openWord(field)};
  if (rule.type == FieldRule::Type::Flag) return choices << flagOption(true) << flagOption(false);
  for (const std::string_view word : ownWords(field, rule)) choices << choiceOption(word);
  return choices;
}

int indexOf(const FieldValue& value, const Field& field, const FieldRule& rule) {
  if (const auto* flag = std::get_if<bool>(&value)) return *flag ? 1 : 2;
  const auto* word = std::get_if<std::string>(&value);
  const auto words = ownWords(field, rule);
  const auto found = word ? std::find(words.begin(), words.end(), *word) : words.end();
  return found == words.end() ? 0 : static_cast<int>(found - words.begin()) + 1;
}

FieldValue choiceAt(int index, const Field& field, const FieldRule& rule) {
  if (index <= 0) return {};
  if (rule.type == FieldRule::Type::Flag) return index == 1;
  return std::string(ownWords(field, rule)[static_cast<std::size_t>(index - 1)]);
}

std::optional<double> numberIn(const FieldValue& value) {
  const auto* x = std::get_if<double>(&value);
  return x ? std::optional(*x) : std::nullopt;
}

QString textIn(const FieldValue& value) {
  const auto* text = std::get_if<std::string>(&value);
  return text ? QString::fromStdString(*text) : QString();
}

std::vector<int> listIn(const FieldValue& value) {
  const auto* list = std::get_if<std::vector<int>>(&value);
  return list ? *list : std::vector<int>();
}

bool mayBeTypical(std::string_view key) {
  return std::any_of(kTypicalFields.begin(), kTypicalFields.end(),
                     [key](const TypicalField& field) { return field.key == key; });
}

QString listText(const FieldValue& value) {
  QStringList numbers;
  for (const int number : listIn(value)) numbers << QString::number(number);
  return numbers.join(QLatin1Char(' '));
}

}  // namespace

/// The figures of the surface that is ridden on have their own key.
std::string FieldForm::Bound::key(const Profile& profile) const {
  std::string key(field.key);
  const auto at = key.find('*');
  if (at == std::string::npos) return key;
  const Surface surface = profile.ride && profile.ride->surface ? *profile.ride->surface : Surface::Asphalt;
  return key.replace(at, 1, wordFor(surface, kSurfaceWords));
}

FieldValue FieldForm::Bound::value(const Profile& profile) const {
  return fieldValue(profile, key(profile));
}

FieldForm::FieldForm(Document& document, QWidget* parent)
    : QWidget(parent), document_(document), layout_(new QFormLayout(this)) {
  layout_->setFieldGrowthPolicy(QFormLayout::FieldsStayAtSizeHint);
  layout_->setRowWrapPolicy(QFormLayout::DontWrapRows);
}

void FieldForm::addFields(std::initializer_list<const char*> keys) {
  for (const char* key : keys) addField(key);
}

void FieldForm::addField(const char* key) {
  const Field* row = fieldRow(key);
  assert(row);
  Bound bound{*row, {}};
  const auto rule = fieldRule(bound.key(document_.profile()));
  assert(rule);
  bound.rule = *rule;
  const auto build = [&]() -> QWidget* {
    switch (rule->type) {
      case FieldRule::Type::Number:
      case FieldRule::Type::Whole:
        return addNumber(bound);
      case FieldRule::Type::Flag:
      case FieldRule::Type::Word:
        return addChoice(bound);
      case FieldRule::Type::Wholes:
        return addList(bound);
      case FieldRule::Type::Text:
        return rule->limit.high > kLongestLine ? addText(bound) : addLine(bound);
      case FieldRule::Type::TyreSize:
      case FieldRule::Type::Block:
        break;
    }
    return nullptr;  // has an editor of its own elsewhere
  };
  QWidget* editor = build();
  assert(editor);
  editors_[key] = editor;
}

QWidget* FieldForm::editorOf(std::string_view key) const {
  const auto found = editors_.find(key);
  return found == editors_.end() ? nullptr : found->second;
}

void FieldForm::addRow(const Bound& bound, QWidget* editor) {
  auto* label = new QLabel(bound.label());
  label->setBuddy(editor);
  editor->setAccessibleName(bound.label());
  QWidget* row = editor;
  if (const auto measure = measureOf(bound.field.key)) {
    row = new QWidget;
    auto* beside = new QHBoxLayout(row);
    beside->setContentsMargins(0, 0, 0, 0);
    beside->addWidget(editor);
    beside->addWidget(new MeasureSketch(*measure, bound.label()));
    beside->addStretch();
  }
  if (mayBeTypical(bound.field.key)) row = withTypicalMark(bound, row);
  layout_->addRow(label, row);
  rows_[std::string(bound.field.key)] = row;
  refreshers_.push_back([=, this, in = std::optional<UnitsShown>()]() mutable {
    if (in == units_) return;  // the words depend on nothing else
    in = units_;
    const QString help = fieldHelp(bound.field, bound.rule, units_);
    label->setToolTip(help);
    editor->setToolTip(help);
    if (bound.rule.type == FieldRule::Type::Number || bound.rule.type == FieldRule::Type::Whole)
      editor->setAccessibleName(nameWithUnit(bound.label(), shownUnit(bound.field, bound.rule, units_)));
  });
}

QWidget* FieldForm::withTypicalMark(const Bound& bound, QWidget* row) {
  auto* both = new QWidget;
  auto* column = new QVBoxLayout(both);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(1);
  column->addWidget(row);
  auto* mark = new QLabel;
  mark->setForegroundRole(QPalette::PlaceholderText);
  mark->hide();
  column->addWidget(mark);
  refreshers_.push_back([this, mark, key = bound.field.key] {
    const Profile& profile = document_.profile();
    const bool shown = isTypical(profile, key);
    const auto& bikeClass = profile.bike.bikeClass;
    const QString words =
        bikeClass ? tr("Typical: %1", "class of bike").arg(choiceWord(wordFor(*bikeClass, kBikeClassWords)))
                  : tr("Typical, not measured");
    if (mark->text() != words) mark->setText(words);
    if (mark->isHidden() == shown) mark->setVisible(shown);
  });
  return both;
}

void FieldForm::addEditor(const char* key, QWidget* editor) {
  const Field* row = fieldRow(key);
  assert(row);
  auto* label = new QLabel(fieldLabel(key));
  label->setBuddy(editor);
  editor->setAccessibleName(fieldLabel(key));
  const QString help = fieldHelp(*row, fieldRule(key).value_or(FieldRule()), units_);
  label->setToolTip(help);
  editor->setToolTip(help);
  layout_->addRow(label, editor);
  editors_[key] = editor;
}

void FieldForm::apply(const Bound& bound, const FieldValue& value) {
  const auto shown = [bound, units = units_](const Profile& p) {
    const FieldValue now = bound.value(p);
    if (const auto x = numberIn(now)) return shownText(bound.field, *x, units);
    if (bound.rule.type == FieldRule::Type::Wholes) return listText(now);
    if (bound.rule.type == FieldRule::Type::Text) return QString();
    if (std::holds_alternative<std::monostate>(now)) return openWord(bound.field);
    return choicesOf(bound.field, bound.rule).value(indexOf(now, bound.field, bound.rule));
  };
  EditName name{.field = QString::fromUtf8(bound.field.key.data()), .title = bound.label(), .shown = shown};
  if (bound.rule.type == FieldRule::Type::Text) name.shown = {};
  std::optional<Problem> refusal;
  const auto conflict = document_.edit(name, [&](Profile& p) { refusal = setField(p, bound.key(p), value); });
  const auto& problem = refusal ? refusal : conflict;
  if (!problem) {
    emit refused(QString());
    return;
  }
  refresh(units_);
  refuse(editorOf(bound.field.key), spokenSentence(*problem));
}

/// The value from before comes back first.
void FieldForm::refuse(QWidget* editor, const QString& why) {
  QTimer::singleShot(0, editor, [=, this] {
    RefusalBubble::near(*editor).say(*editor, why, document_);
    emit refused(why);
  });
}

QWidget* FieldForm::addNumber(const Bound& bound) {
  auto* box = new DecimalBox;
  box->setMinimumWidth(box->fontMetrics().horizontalAdvance(QStringLiteral("88 888.8 kg·m²")) + 30);
  // A half-typed number may break a rule that the whole one keeps: it counts when the typing ends.
  box->setKeyboardTracking(false);
  box->setGroupSeparatorShown(true);
  box->whenRefused([this, box, bound](const RefusedNumber& refusal) {
    refuse(box, refusedNumber(bound.label(), refusal));
  });
  addRow(bound, box);

  const auto shown = [this, bound](double x) { return shownNumber(bound.field, x, units_); };
  refreshers_.push_back([=, this] {
    const QSignalBlocker quiet(box);
    const FieldMeasure& measure = bound.field.measure;
    const double low = shown(bound.rule.limit.low), high = shown(bound.rule.limit.high);
    box->setDecimals(typedDecimals(bound.field, units_));
    box->setMaximum(high);
    box->setSingleStep(shownStep(bound.field, bound.rule, units_));
    const QString unit = shownUnit(bound.field, bound.rule, units_);
    const QString ending = unit.isEmpty() ? QString() : QLatin1Char(' ') + unit;
    const auto usual =
        measure.usual ? std::optional(shownValue(bound.field, *measure.usual, units_)) : std::nullopt;
    const QString words = usual
                              ? tr("%1%2 (usual)").arg(shownText(bound.field, *measure.usual, units_), ending)
                              : tr("Not given");
    box->allowNone(low - std::max(1.0, std::abs(low)), low, words, usual.value_or(std::max(low, 0.0)));
    box->setSuffix(ending);
    const auto value = numberIn(bound.value(document_.profile()));
    showValue(*box,
              box->valueFor(value ? std::optional(shownValue(bound.field, *value, units_)) : std::nullopt));
  });
  connect(box, &QDoubleSpinBox::valueChanged, this, [=, this] {
    const auto value = box->optionalValue();
    if (!value) return apply(bound, {});
    // The last shown digit of a limit may lie a hair beyond it.
    const Limit& limit = bound.rule.limit;
    apply(bound, std::clamp(fileNumber(bound.field, *value, units_), limit.low, limit.high));
  });
  return box;
}

QWidget* FieldForm::addChoice(const Bound& bound) {
  auto* box = new CalmComboBox;
  box->addItems(choicesOf(bound.field, bound.rule));
  addRow(bound, box);
  refreshers_.push_back([=, this] {
    box->setCurrentIndex(indexOf(bound.value(document_.profile()), bound.field, bound.rule));
  });
  connect(box, &QComboBox::activated, this, [=, this](int index) {
    if (index != indexOf(bound.value(document_.profile()), bound.field, bound.rule))
      apply(bound, choiceAt(index, bound.field, bound.rule));
  });
  return box;
}

/// A few whole numbers in one line, separated by blanks or commas.
QWidget* FieldForm::addList(const Bound& bound) {
  auto* edit = new QLineEdit;
  edit->setMinimumWidth(kTextWidth / 2);
  addRow(bound, edit);
  // The profile's numbers at the time when a text was refused: while they stay, it stays, to be mended.
  const auto refusedAt = std::make_shared<std::optional<FieldValue>>();
  connect(&document_, &Document::loading, edit, [refusedAt] { refusedAt->reset(); });
  refreshers_.push_back([=, this] {
    const FieldValue value = bound.value(document_.profile());
    if (*refusedAt == value) return;
    refusedAt->reset();
    if (const QString text = listText(value); !edit->hasFocus() && edit->text() != text) edit->setText(text);
  });
  connect(edit, &QLineEdit::editingFinished, this, [=, this] {
    const FieldValue before = bound.value(document_.profile());
    const auto keep = [&](const QString& why) {
      *refusedAt = before;
      refuse(edit, why);
    };
    std::vector<int> numbers;
    static const QRegularExpression between(QStringLiteral("[\\s,;]+"));
    for (const QString& part : edit->text().split(between, Qt::SkipEmptyParts)) {
      bool whole = false;
      numbers.push_back(part.toInt(&whole));
      const Limit& limit = bound.rule.limit;
      if (!whole || !limit.contains(numbers.back()))
        return keep(outsideAllowed(bound.label(), part, limit.low, limit.high));
    }
    if (static_cast<int>(numbers.size()) > bound.rule.most)
      return keep(tr("%1: at most %n numbers", nullptr, bound.rule.most).arg(bound.label()));
    refusedAt->reset();
    if (numbers == listIn(before)) return;
    apply(bound, numbers.empty() ? FieldValue() : FieldValue(numbers));
  });
  return edit;
}

QWidget* FieldForm::addLine(const Bound& bound) {
  auto* edit = new QLineEdit;
  edit->setMaxLength(static_cast<int>(bound.rule.limit.high));
  edit->setMinimumWidth(kTextWidth);
  addRow(bound, edit);
  refreshers_.push_back([=, this] {
    const QString text = textIn(bound.value(document_.profile()));
    if (edit->text() != text) edit->setText(text);
  });
  connect(edit, &QLineEdit::textEdited, this, [=, this](const QString& text) {
    if (text.trimmed().isEmpty() && bound.rule.needed) return;  // a bike keeps a name
    apply(bound, text.toStdString());
  });
  return edit;
}

QWidget* FieldForm::addText(const Bound& bound) {
  auto* edit = new QPlainTextEdit;
  edit->setTabChangesFocus(true);
  edit->setMinimumWidth(kTextWidth);
  addRow(bound, edit);
  refreshers_.push_back([=, this] {
    const QString text = textIn(bound.value(document_.profile()));
    if (edit->toPlainText() == text) return;
    const QSignalBlocker quiet(edit);
    edit->setPlainText(text);
  });
  connect(edit, &QPlainTextEdit::textChanged, this, [=, this] {
    QString text = edit->toPlainText();
    text.truncate(static_cast<int>(bound.rule.limit.high));
    apply(bound, text.toStdString());
  });
  return edit;
}

void FieldForm::addHeading(const QString& text) {
  addWords(text)->setForegroundRole(QPalette::PlaceholderText);
}

void FieldForm::addCaution(const QString& text) {
  addWords(text);
}

QLabel* FieldForm::addWords(const QString& text) {
  auto* label = new QLabel(text);
  label->setWordWrap(true);
  layout_->addRow(label);
  return label;
}

void FieldForm::refresh(const UnitsShown& units) {
  units_ = units;
  for (const auto& refresher : refreshers_) refresher();
  showWhatApplies();
}

void FieldForm::reveal(std::string_view key) {
  if (revealed_.emplace(key).second) showWhatApplies();
}

void FieldForm::showWhatApplies() {
  for (const auto& [key, row] : rows_) {
    const bool shown = revealed_.contains(key) || fieldApplies(key, document_.profile());
    if (shown == row->isHidden()) layout_->setRowVisible(row, shown);
  }
}

}  // namespace layshaft::ui
