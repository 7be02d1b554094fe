// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/station.h"

#include <QAbstractSpinBox>
#include <QEvent>
#include <QLineEdit>
#include <QVBoxLayout>

namespace layshaft::ui {
namespace {

void setTextIfChanged(QLabel* label, const QString& text) {
  if (label->text() != text) label->setText(text);
}

QString withoutMnemonic(QString label) {
  return label.remove(QLatin1Char('&'));
}

}  // namespace

SteadyPlace::SteadyPlace(QWidget* held, QWidget* parent) : QWidget(parent), held_(held) {
  held->setParent(this);
  setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
}

QSize SteadyPlace::sizeHint() const {
  return held_->sizeHint();
}

void SteadyPlace::resizeEvent(QResizeEvent*) {
  held_->setFixedSize(size());
}

Station::Station(const QString& label, const QString& explanation, QWidget* editor, QWidget* parent)
    : QWidget(parent),
      label_(new QLabel(label)),
      editor_(editor),
      stock_(new QLabel),
      back_(new QToolButton) {
  label_->setBuddy(editor);
  label_->installEventFilter(this);
  label_->setAlignment(Qt::AlignHCenter);
  stock_->setAlignment(Qt::AlignHCenter);
  stock_->setForegroundRole(QPalette::PlaceholderText);
  editor->setAccessibleName(withoutMnemonic(label));
  editor->setToolTip(explanation);
  label_->setToolTip(explanation);

  back_->setAutoRaise(true);
  back_->setFocusPolicy(Qt::TabFocus);
  back_->setToolTip(tr("Back to stock"));
  back_->setAccessibleName(tr("%1 back to stock").arg(withoutMnemonic(label)));
  QFont bold = back_->font();
  bold.setBold(true);
  back_->setFont(bold);
  back_->setVisible(false);

  // As wide as it ever gets, so that nothing moves when the label turns bold.
  QFont boldLabel = label_->font();
  boldLabel.setBold(true);
  label_->setMinimumWidth(QFontMetrics(boldLabel).horizontalAdvance(withoutMnemonic(label)) + 2);

  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(1);
  column->addWidget(label_);
  column->addWidget(editor_);
  // Their places stay while they are empty, so that the strip does not grow and shrink.
  column->addWidget(new SteadyPlace(stock_));
  column->addWidget(new SteadyPlace(back_));
  connect(back_, &QToolButton::clicked, this, [this] {
    editor_->setFocus();  // the button is about to hide: the focus stays at the station
    emit backToStock();
  });
}

void Station::focusEditor() {
  editor_->setFocus(Qt::ShortcutFocusReason);
  if (auto* box = qobject_cast<QAbstractSpinBox*>(editor_)) box->selectAll();
  if (auto* line = qobject_cast<QLineEdit*>(editor_)) line->selectAll();
}

/// The mnemonic selects all of a field that has the focus already, too: who types then writes the whole
/// value.
bool Station::eventFilter(QObject* watched, QEvent* event) {
  if (watched != label_ || event->type() != QEvent::Shortcut) return QWidget::eventFilter(watched, event);
  focusEditor();
  return true;
}

void Station::showStock(const QString& stock, const QString& difference) {
  const bool differs = !difference.isEmpty();
  setTextIfChanged(stock_, stock);
  QString backText = differs ? difference + QStringLiteral(" ↺") : QString();
  // Where both do not fit side by side the difference matters more than the sign of the way back.
  if (back_->fontMetrics().horizontalAdvance(backText) + 4 > width() && width() > 0) backText = difference;
  if (back_->text() != backText) back_->setText(backText);
  if (back_->isHidden() == differs) back_->setVisible(differs);
  if (label_->font().bold() != differs) {
    QFont font = label_->font();
    font.setBold(differs);
    label_->setFont(font);
    editor_->setFont(font);
  }
  // Following stock is told by muted text, differing by bold and by the difference: never by colour alone.
  const QPalette::ColorRole role = differs ? QPalette::WindowText : QPalette::PlaceholderText;
  if (label_->foregroundRole() != role) label_->setForegroundRole(role);
}

void Station::showNote(const QString& note) {
  setTextIfChanged(stock_, note);
  if (!back_->isHidden()) back_->setVisible(false);
}

}  // namespace layshaft::ui
