// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QAbstractButton>
#include <QAbstractItemView>
#include <QAction>
#include <QComboBox>
#include <QDoubleSpinBox>
#include <QLabel>
#include <QLineEdit>
#include <QMenu>
#include <QMenuBar>
#include <QPlainTextEdit>
#include <QRegularExpression>
#include <QTabWidget>
#include <QTemporaryDir>
#include <functional>

#include "tests/ui/support.h"
#include "ui/charts/picture.h"

namespace layshaft::test {

/// Takes each text with where it stands.
using Hear = std::function<void(const QString& text, const std::string& where)>;

inline void hear(const QAbstractItemModel& model, const std::string& where, const Hear& take) {
  constexpr int kEnoughRows = 60;
  for (int c = 0; c < model.columnCount(); ++c) {
    take(model.headerData(c, Qt::Horizontal).toString(), where + ", header");
    take(model.headerData(c, Qt::Horizontal, Qt::ToolTipRole).toString(), where + ", header's tip");
    for (int r = 0; r < std::min(model.rowCount(), kEnoughRows); ++r)
      for (const int role : {Qt::DisplayRole, Qt::ToolTipRole})
        take(model.index(r, c).data(role).toString(), where + ", cell");
  }
}

/// Everything that a menu and what is in it say; menus of names are left out.
inline void hear(const QMenu& menu, const std::string& where, const Hear& take) {
  for (const QAction* action : menu.actions()) {
    take(action->text(), where);
    auto* more = action->menu<QMenu*>();
    if (!more || action->text().contains("Recent") || action->text().contains("Sample")) continue;
    emit more->aboutToShow();
    hear(*more, where + " > " + action->text().toStdString(), take);
  }
}

inline void hear(const QMenuBar& bar, const Hear& take) {
  for (const QAction* action : bar.actions()) {
    take(action->text(), "menu bar");
    hear(*action->menu<QMenu*>(), action->text().toStdString(), take);
  }
}

/// Everything that a widget and what is in it say, also to a screen reader.
inline void hear(const QWidget& widget, const std::string& where, const Hear& take) {
  const std::string here = where + ", " + widget.metaObject()->className();
  for (const QString& text :
       {widget.windowTitle(), widget.toolTip(), widget.accessibleName(), widget.accessibleDescription()})
    take(text, here);
  const auto box = [&](const auto* spin) {
    if (!spin) return;
    take(spin->suffix(), here);
    take(spin->specialValueText(), here);
  };
  if (auto* label = qobject_cast<const QLabel*>(&widget)) take(label->text(), here);
  if (auto* button = qobject_cast<const QAbstractButton*>(&widget)) take(button->text(), here);
  box(qobject_cast<const QSpinBox*>(&widget));
  box(qobject_cast<const QDoubleSpinBox*>(&widget));
  if (auto* edit = qobject_cast<const QLineEdit*>(&widget)) {
    take(edit->text(), here);
    take(edit->placeholderText(), here);
  }
  if (auto* choice = qobject_cast<const QComboBox*>(&widget))
    for (int i = 0; i < choice->count(); ++i) take(choice->itemText(i), here);
  if (auto* tabs = qobject_cast<const QTabWidget*>(&widget))
    for (int i = 0; i < tabs->count(); ++i) take(tabs->tabText(i), here);
  if (auto* view = qobject_cast<const QAbstractItemView*>(&widget); view && view->model())
    hear(*view->model(), here, take);
  for (const QObject* child : widget.children())
    if (auto* inner = qobject_cast<const QWidget*>(child);
        inner && !inner->isWindow() && !qobject_cast<const QMenu*>(inner))
      hear(*inner, where, take);
}

/// The texts of a picture as a vector file holds them.
inline QStringList textsOf(ui::Picture& picture) {
  QTemporaryDir folder;
  const QString file = folder.filePath("picture.svg");
  if (const auto why = picture.savePicture(file)) throw std::runtime_error(why->toStdString());
  const QString svg = QString::fromStdString(contentsOf(file.toStdString()));
  static const QRegularExpression text(QStringLiteral("<text[^>]*>([^<]*)</text>"));
  QStringList texts;
  for (auto it = text.globalMatch(svg); it.hasNext();)
    texts << it.next().captured(1).replace("&apos;", "'").replace("&amp;", "&");
  return texts;
}

}  // namespace layshaft::test
