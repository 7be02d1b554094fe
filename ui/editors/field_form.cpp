// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/field_form.h"

#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QRegularExpression>
#include <QTimer>
#include <cmath>
#include <memory>

#include "core/units.h"
#include "ui/editors/calm_spin_box.h"
#include "ui/words/wording.h"

namespace layshaft::ui {
namespace {

constexpr int kTextWidth = 420;

struct Conversion {
  Quantity quantity;
  double siPerFileUnit;
};

Conversion conversionOf(FileUnit unit) {
  switch (unit) {
    case FileUnit::Millimetre:
      return {Quantity::SmallLength, units::metresFromMillimetres(1.0)};
    case FileUnit::Metre:
      return {Quantity::Length, 1.0};
    case FileUnit::Kilogram:
      return {Quantity::Mass, 1.0};
    case FileUnit::KilometrePerHour:
      return {Quantity::Speed, units::mpsFromKmh(1.0)};
    case FileUnit::Plain:
      break;
  }
  return {Quantity::Plain, 1.0};
}

}  // namespace

FieldForm::FieldForm(Document& document, QWidget* parent)
    : QWidget(parent), document_(document), layout_(new QFormLayout(this)) {
  layout_->setFieldGrowthPolicy(QFormLayout::FieldsStayAtSizeHint);
  layout_->setRowWrapPolicy(QFormLayout::DontWrapRows);
}

void FieldForm::addRow(const QString& name, const QString& explanation, QWidget* editor) {
  auto* label = new QLabel(name);
  label->setBuddy(editor);
  label->setToolTip(explanation);
  editor->setToolTip(explanation);
  editor->setAccessibleName(name);
  layout_->addRow(label, editor);
}

void FieldForm::apply(const EditName& name, const std::function<void(Profile&)>& change) {
  const auto problem = document_.edit(name, change);
  emit refused(problem ? spokenSentence(*problem) : QString());
  if (problem) refresh(units_);
}

void FieldForm::addNumber(const NumberField& field) {
  auto* box = new DecimalBox;
  box->setMinimumWidth(box->fontMetrics().horizontalAdvance(QStringLiteral("88 888.888 kg·m²")) + 30);
  // A half-typed number may break a rule that the whole one keeps: it counts when the typing ends.
  box->setKeyboardTracking(false);
  box->whenRefused([this, label = field.label](const QString& typed, double low, double high) {
    const QString message = outsideAllowed(label, typed, low, high);
    QTimer::singleShot(0, this, [this, message] { emit refused(message); });
  });
  addRow(field.label, field.explanation, box);

  const Conversion conversion = conversionOf(field.unit);
  const auto shown = [this, conversion](double file) {
    return withoutNoise(units_.shown(conversion.quantity, file * conversion.siPerFileUnit));
  };
  const auto file = [this, conversion](double value) {
    return withoutNoise(units_.si(conversion.quantity, value) / conversion.siPerFileUnit);
  };
  const QString unit = QString::fromUtf8(field.limit.unit);
  refreshers_.push_back([=, this] {
    const QSignalBlocker quiet(box);
    const double low = shown(field.limit.low), high = shown(field.limit.high);
    const int decimals = field.decimals + (field.unit == FileUnit::Plain ? 0 : 2);
    const double none = low - std::max(1.0, std::abs(low));
    box->setDecimals(decimals);
    box->setMaximum(high);
    box->setSingleStep(std::pow(10.0, -field.decimals) * (high - low > 200 && field.decimals == 0 ? 5 : 1));
    const QString suffix = field.unit == FileUnit::Plain ? unit : units_.name(conversion.quantity);
    const QString ending = suffix.isEmpty() ? QString() : QLatin1Char(' ') + suffix;
    const auto usual = numberFor(field.whenMissing);
    const QString words =
        usual ? tr("%1%2 (usual)").arg(QLocale().toString(shown(*usual), 'g', 6), ending) : tr("not given");
    box->allowNone(none, low, words, usual ? shown(*usual) : std::max(low, 0.0));
    box->setSuffix(ending);
    const auto value = field.get(document_.profile());
    showValue(*box, box->valueFor(value ? std::optional(shown(*value)) : std::nullopt));
  });
  connect(box, &QDoubleSpinBox::valueChanged, this, [=, this] {
    const auto value = box->optionalValue();
    const auto given = value ? std::optional(file(*value)) : std::nullopt;
    apply({.field = field.label,
           .title = field.label,
           .shown =
               [get = field.get](const Profile& p) {
                 const auto x = get(p);
                 return x ? QLocale().toString(*x, 'g', 6) : tr("not given");
               }},
          [&](Profile& p) { field.set(p, given); });
  });
}

std::optional<double> FieldForm::numberFor(const QString& text) {
  bool ok = false;
  const double x = QLocale::c().toDouble(text, &ok);
  return ok ? std::optional(x) : std::nullopt;
}

void FieldForm::addChoice(const ChoiceField& field) {
  auto* box = new CalmComboBox;
  box->addItems(field.choices);
  addRow(field.label, field.explanation, box);
  refreshers_.push_back([=, this] { box->setCurrentIndex(field.get(document_.profile())); });
  connect(box, &QComboBox::activated, this, [=, this](int index) {
    if (index == field.get(document_.profile())) return;
    apply({.field = field.label,
           .title = field.label,
           .shown = [field](const Profile& p) { return field.choices.value(field.get(p)); }},
          [&](Profile& p) { field.set(p, index); });
  });
}

void FieldForm::addList(const ListField& field) {
  auto* edit = new QLineEdit;
  edit->setMinimumWidth(kTextWidth / 2);
  addRow(field.label, field.explanation, edit);
  const auto words = [field](const Profile& p) {
    QStringList numbers;
    for (const int number : field.get(p)) numbers << QString::number(number);
    return numbers.join(QLatin1Char(' '));
  };
  // The profile's numbers at the time when a text was refused: while they stay, it stays, to be mended.
  const auto refusedAt = std::make_shared<std::optional<std::vector<int>>>();
  refreshers_.push_back([=, this] {
    if (*refusedAt == field.get(document_.profile())) return;
    refusedAt->reset();
    if (const QString text = words(document_.profile()); !edit->hasFocus() && edit->text() != text)
      edit->setText(text);
  });
  connect(edit, &QLineEdit::editingFinished, this, [=, this] {
    std::vector<int> numbers;
    static const QRegularExpression between(QStringLiteral("[\\s,;]+"));
    for (const QString& part : edit->text().split(between, Qt::SkipEmptyParts)) {
      bool whole = false;
      const int number = part.toInt(&whole);
      if (!whole || !field.limit.contains(number)) {
        *refusedAt = field.get(document_.profile());
        emit refused(outsideAllowed(field.label, part, field.limit.low, field.limit.high));
        return;
      }
      numbers.push_back(number);
    }
    if (static_cast<int>(numbers.size()) > field.most) {
      *refusedAt = field.get(document_.profile());
      emit refused(tr("%1: at most %2 numbers").arg(field.label).arg(field.most));
      return;
    }
    refusedAt->reset();
    if (numbers == field.get(document_.profile())) return;
    apply({.field = field.label, .title = field.label, .shown = words},
          [&](Profile& p) { field.set(p, numbers); });
  });
}

void FieldForm::addHeading(const QString& text) {
  auto* label = new QLabel(text);
  label->setWordWrap(true);
  label->setForegroundRole(QPalette::PlaceholderText);
  layout_->addRow(label);
}

void FieldForm::addText(const QString& label, const QString& explanation, bool multiline,
                        const std::function<std::string&(Profile&)>& member, int longest) {
  const auto get = [this, member] {
    Profile copy = document_.profile();
    return QString::fromStdString(member(copy));
  };
  const auto set = [this, member, label, longest](QString text) {
    text.truncate(longest);
    apply({.field = label, .title = label, .shown = {}}, [&](Profile& p) { member(p) = text.toStdString(); });
  };
  if (multiline) {
    auto* edit = new QPlainTextEdit;
    edit->setTabChangesFocus(true);
    edit->setMinimumWidth(kTextWidth);
    addRow(label, explanation, edit);
    refreshers_.push_back([=] {
      if (edit->toPlainText() == get()) return;
      const QSignalBlocker quiet(edit);
      edit->setPlainText(get());
    });
    connect(edit, &QPlainTextEdit::textChanged, this, [=] { set(edit->toPlainText()); });
    return;
  }
  auto* edit = new QLineEdit;
  edit->setMaxLength(longest);
  edit->setMinimumWidth(kTextWidth);
  addRow(label, explanation, edit);
  refreshers_.push_back([=] {
    if (edit->text() != get()) edit->setText(get());
  });
  connect(edit, &QLineEdit::textEdited, this, [=](const QString& text) {
    if (!text.trimmed().isEmpty()) set(text);  // a bike keeps a name
  });
}

void FieldForm::refresh(const UnitsShown& units) {
  units_ = units;
  for (const auto& refresher : refreshers_) refresher();
}

}  // namespace layshaft::ui
