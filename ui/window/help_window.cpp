// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/help_window.h"

#include <QAction>
#include <QDialogButtonBox>
#include <QFile>
#include <QMenu>
#include <QMenuBar>
#include <QScreen>
#include <QTextBrowser>
#include <QVBoxLayout>

namespace layshaft::ui {
namespace {

QString plainName(const QAction& action) {
  QString name = action.text();
  return name.remove(QLatin1Char('&')).remove(QChar(0x2026));
}

QString row(const QString& name, const QAction& action) {
  QStringList keys;
  for (const QKeySequence& sequence : action.shortcuts()) keys << sequence.toString(QKeySequence::NativeText);
  return QStringLiteral("<tr><td>%1</td><td>%2</td></tr>")
      .arg(name.toHtmlEscaped(), keys.join(HelpWindow::tr(" or ", "between two shortcuts")).toHtmlEscaped());
}

QString rowsOf(const QMenu& menu, const QString& path) {
  QString rows;
  for (const QAction* action : menu.actions()) {
    const QString name = path + QStringLiteral(" ▸ ") + plainName(*action);
    if (const auto* more = action->menu<QMenu*>())
      rows += rowsOf(*more, name);
    else if (!action->shortcut().isEmpty())
      rows += row(name, *action);
  }
  return rows;
}

QString helpText(const QMainWindow& window) {
  QFile file(QStringLiteral(":/help/help.html"));
  if (!file.open(QIODevice::ReadOnly)) return {};
  return QString::fromUtf8(file.readAll()).replace(QLatin1String("<!--shortcuts-->"), shortcutTable(window));
}

}  // namespace

QString shortcutTable(const QMainWindow& window) {
  QString rows;
  for (const QAction* top : window.menuBar()->actions())
    if (const auto* menu = top->menu<QMenu*>()) rows += rowsOf(*menu, plainName(*top));
  // What no menu has, under the name that its tool tip gives.
  for (const QAction* action : window.actions())
    if (!action->shortcut().isEmpty() && !action->text().isEmpty()) rows += row(plainName(*action), *action);
  return QStringLiteral("<table cellpadding=\"4\">%1</table>").arg(rows);
}

HelpWindow::HelpWindow(QMainWindow& window) : QDialog(&window) {
  setAttribute(Qt::WA_DeleteOnClose);
  setWindowTitle(tr("Layshaft Help"));
  auto* text = new QTextBrowser;
  text->setAccessibleName(windowTitle());
  text->setOpenLinks(true);
  text->setHtml(helpText(window));
  auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close);
  connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::close);
  auto* column = new QVBoxLayout(this);
  column->addWidget(text, 1);
  column->addWidget(buttons);
  text->setFocus();
  resize(QSize(760, 640).boundedTo(window.screen()->availableSize() * 0.85));
}

}  // namespace layshaft::ui
