// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/charts/readable_text.h"

#include <QAccessible>
#include <QAccessibleWidget>
#include <QLabel>
#include <QTextDocumentFragment>
#include <algorithm>

namespace layshaft::ui {
namespace {

/// A text that is only read: it has no selection, and its cursor, where reading goes on, moves nothing on
/// screen.
class ReadText : public QAccessibleWidget, public QAccessibleTextInterface {
 public:
  explicit ReadText(QWidget* widget) : QAccessibleWidget(widget, QAccessible::StaticText) {}

  void* interface_cast(QAccessible::InterfaceType type) override {
    if (type == QAccessible::TextInterface) return static_cast<QAccessibleTextInterface*>(this);
    return QAccessibleWidget::interface_cast(type);
  }
  QAccessible::State state() const override {
    QAccessible::State state = QAccessibleWidget::state();
    state.readOnly = true;
    state.multiLine = true;
    return state;
  }

  void selection(int, int* startOffset, int* endOffset) const override { *startOffset = *endOffset = 0; }
  int selectionCount() const override { return 0; }
  void addSelection(int, int) override {}
  void removeSelection(int) override {}
  void setSelection(int, int, int) override {}
  int cursorPosition() const override { return std::min(cursor_, characterCount()); }
  void setCursorPosition(int position) override { cursor_ = std::clamp(position, 0, characterCount()); }
  QString text(int startOffset, int endOffset) const override {
    return whole().mid(startOffset, endOffset - startOffset);
  }
  QString text(QAccessible::Text part) const override { return QAccessibleWidget::text(part); }
  int characterCount() const override { return static_cast<int>(whole().size()); }
  // It is painted as one piece: each character is somewhere in it.
  QRect characterRect(int) const override { return rect(); }
  int offsetAtPoint(const QPoint&) const override { return 0; }
  void scrollToSubstring(int, int) override {}
  QString attributes(int, int* startOffset, int* endOffset) const override {
    *startOffset = 0;
    *endOffset = characterCount();
    return {};
  }

 private:
  QString whole() const {
    if (const auto* read = dynamic_cast<const ReadableText*>(widget())) return read->readableText();
    const auto* label = static_cast<const QLabel*>(widget());
    const bool rich = label->textFormat() == Qt::RichText ||
                      (label->textFormat() == Qt::AutoText && Qt::mightBeRichText(label->text()));
    return rich ? QTextDocumentFragment::fromHtml(label->text()).toPlainText() : label->text();
  }

  int cursor_ = 0;
};

/// A label with a name of its own would be read by that name alone.
bool isNamedLabel(QObject* object) {
  const auto* label = qobject_cast<QLabel*>(object);
  return label && !label->accessibleName().isEmpty();
}

QAccessibleInterface* readTextOf(const QString&, QObject* object) {
  if (!dynamic_cast<ReadableText*>(object) && !isNamedLabel(object)) return nullptr;
  return new ReadText(static_cast<QWidget*>(object));
}

}  // namespace

void exposeReadableTexts() {
  QAccessible::installFactory(readTextOf);  // the same one twice is installed once
}

void tellChangedText(QWidget& widget, const QString& before, const QString& now) {
  if (!QAccessible::isActive() || before == now) return;
  QAccessibleTextUpdateEvent event(&widget, 0, before, now);
  QAccessible::updateAccessibility(&event);
}

}  // namespace layshaft::ui
