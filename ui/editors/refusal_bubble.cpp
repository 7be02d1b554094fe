// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/refusal_bubble.h"

#include <QAccessible>
#include <QAccessibleWidget>
#include <QApplication>
#include <QComboBox>
#include <QEvent>
#include <QKeyEvent>
#include <QLineEdit>
#include <QMouseEvent>
#include <QPainter>
#include <QPainterPath>
#include <QTabWidget>
#include <algorithm>
#include <utility>

namespace layshaft::ui {
namespace {

constexpr int kTip = 6;       // px, what points at the field
constexpr int kAir = 4;       // px, to the edges of the window
constexpr int kWidest = 420;  // px, a line that is still read at a glance
constexpr int kPadding = 8;   // px, beside the words; half of it above and below
constexpr double kRound = 4;  // px

/// What of a widget is in view, in its window.
QRect inView(const QWidget& widget) {
  if (!widget.isVisible()) return {};
  const QWidget* window = widget.window();
  QRect rect(widget.mapTo(window, QPoint()), widget.size());
  for (const QWidget* around = &widget; around != window; around = around->parentWidget())
    rect &= QRect(around->parentWidget()->mapTo(window, QPoint()), around->parentWidget()->size());
  return rect;
}

/// An alert, whose name is what it says.
class SpokenAlert : public QAccessibleWidget {
 public:
  explicit SpokenAlert(QWidget* widget) : QAccessibleWidget(widget, QAccessible::AlertMessage) {}
  QString text(QAccessible::Text part) const override {
    return part == QAccessible::Name ? static_cast<QLabel*>(widget())->text() : QAccessibleWidget::text(part);
  }
};

QAccessibleInterface* alertOf(const QString&, QObject* object) {
  auto* bubble = qobject_cast<RefusalBubble*>(object);
  return bubble ? new SpokenAlert(bubble) : nullptr;
}

}  // namespace

RefusalBubble::RefusalBubble(QWidget* window) : QLabel(window) {
  setObjectName(QStringLiteral("refusal"));
  setTextFormat(Qt::PlainText);  // it quotes what was typed
  setWordWrap(true);
  setFocusPolicy(Qt::NoFocus);
  // The palette's own pair the other way round: as readable as all other text, and seen at once.
  setForegroundRole(QPalette::Window);
  hide();
}

RefusalBubble& RefusalBubble::near(const QWidget& field) {
  QAccessible::installFactory(alertOf);  // the same one twice is installed once
  QWidget* window = field.window();
  if (auto* there = window->findChild<RefusalBubble*>(QString(), Qt::FindDirectChildrenOnly)) return *there;
  return *new RefusalBubble(window);
}

bool RefusalBubble::describes(const QWidget& field) {
  const auto* there = field.window()->findChild<RefusalBubble*>(QString(), Qt::FindDirectChildrenOnly);
  return there && there->field_ && field.accessibleDescription() == there->text();
}

bool RefusalBubble::say(QWidget& field, const QString& why, const Document& document) {
  dismiss();
  if (!field.isVisible() || field.window() != window()) return false;
  field_ = &field;
  setText(why);
  for (QWidget* around = &field; around; around = around == window() ? nullptr : around->parentWidget()) {
    around->installEventFilter(this);
    followed_.emplace_back(around);
  }
  const auto end = [this] { dismiss(); };
  ends_.push_back(connect(&document, &Document::changed, this, end));
  ends_.push_back(connect(&field, &QObject::destroyed, this, end));
  const auto* line = qobject_cast<QLineEdit*>(&field);
  if (!line) line = field.findChild<QLineEdit*>();
  if (line) ends_.push_back(connect(line, &QLineEdit::textChanged, this, end));
  if (const auto* choice = qobject_cast<QComboBox*>(&field))
    ends_.push_back(connect(choice, &QComboBox::currentIndexChanged, this, end));
  ends_.push_back(connect(qApp, &QApplication::focusChanged, this, [this](const QWidget*, QWidget* now) {
    if (now && now->window() == window() && now != field_ && !field_->isAncestorOf(now)) dismiss();
  }));
  for (const auto* pages : window()->findChildren<QTabWidget*>())
    ends_.push_back(connect(pages, &QTabWidget::currentChanged, this, end));

  place();
  // A screen reader is at the field, or, after Tab, already at the next one.
  describe(&field);
  if (QWidget* focus = QApplication::focusWidget(); focus && focus->window() == window()) {
    describe(focus);
    // What is typed there comes after the refusal was read, also where it is no edit yet.
    const auto* typed = qobject_cast<QLineEdit*>(focus);
    if (!typed) typed = focus->findChild<QLineEdit*>();
    if (typed && typed != line) ends_.push_back(connect(typed, &QLineEdit::textChanged, this, end));
  }
  QAccessibleEvent alert(this, QAccessible::Alert);
  QAccessible::updateAccessibility(&alert);
  return true;
}

void RefusalBubble::describe(QWidget* field) {
  field->setAccessibleDescription(text());
  described_.emplace_back(field);
}

void RefusalBubble::dismiss() {
  if (followed_.empty()) return;
  for (const auto& around : std::exchange(followed_, {}))
    if (around) around->removeEventFilter(this);
  for (const auto& end : std::exchange(ends_, {})) disconnect(end);
  for (const auto& field : std::exchange(described_, {}))
    if (field && field->accessibleDescription() == text()) field->setAccessibleDescription(QString());
  field_ = nullptr;
  hide();
  const QString why = text();
  clear();
  emit dismissed(why);
}

void RefusalBubble::place() {
  const QRect at = field_ ? inView(*field_) : QRect();
  if (at.isEmpty()) return hide();  // scrolled away: it comes back with its field
  const QSize room = window()->size();
  const int widest = std::min(kWidest, room.width() - 2 * kAir);
  const QFontMetrics metrics = fontMetrics();
  const QRect words =
      metrics.boundingRect(QRect(0, 0, widest - 2 * kPadding, room.height()), Qt::TextWordWrap, text());
  const QSize size(words.width() + 2 * kPadding + 2, words.height() + kPadding + kTip);
  const int under = at.bottom() + 1, over = at.top() - size.height();
  below_ = under + size.height() <= room.height() || room.height() - under >= at.top();
  const int x = std::clamp(at.center().x() - size.width() / 2, kAir,
                           std::max(kAir, room.width() - size.width() - kAir));
  tip_ = std::clamp(at.center().x() - x, 2 * kTip, std::max(2 * kTip, size.width() - 2 * kTip));
  setContentsMargins(kPadding, kPadding / 2 + (below_ ? kTip : 0), kPadding,
                     kPadding / 2 + (below_ ? 0 : kTip));
  setGeometry(QRect(QPoint(x, below_ ? under : over), size));
  show();
  raise();
}

bool RefusalBubble::eventFilter(QObject* watched, QEvent* event) {
  switch (event->type()) {
    case QEvent::Hide:
      // Another page, or a window that closes; not one that is put away for a while.
      if (watched == field_ && !event->spontaneous()) dismiss();
      break;
    case QEvent::Move:
    case QEvent::Resize:
      place();
      break;
    case QEvent::ParentChange:
      dismiss();
      break;
    case QEvent::KeyPress:
      if (watched == field_ && static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape) dismiss();
      break;
    default:
      break;
  }
  return QLabel::eventFilter(watched, event);
}

void RefusalBubble::paintEvent(QPaintEvent* event) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  QPainterPath shape;
  shape.addRoundedRect(QRectF(rect()).adjusted(0, below_ ? kTip : 0, 0, below_ ? 0 : -kTip), kRound, kRound);
  const double foot = below_ ? kTip : height() - kTip, point = below_ ? 0 : height();
  QPainterPath tip(QPointF(tip_ - kTip, foot));
  tip.lineTo(tip_, point);
  tip.lineTo(tip_ + kTip, foot);
  painter.fillPath(shape | tip, palette().color(QPalette::WindowText));
  painter.end();
  QLabel::paintEvent(event);
}

void RefusalBubble::mousePressEvent(QMouseEvent* event) {
  event->accept();
  dismiss();
}

}  // namespace layshaft::ui
