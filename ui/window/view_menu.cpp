// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/view_menu.h"

#include <QToolTip>
#include <algorithm>

#include "ui/charts/appearance.h"
#include "ui/editors/ticking_menu.h"
#include "ui/window/counter_view.h"
#include "ui/window/figures_dialog.h"
#include "ui/window/full_screen.h"
#include "ui/window/main_window.h"
#include "ui/window/shop_dialog.h"
#include "ui/words/key_figures.h"

namespace layshaft::ui {
namespace {

void keepFigures(const std::vector<Figure>& figures) {
  preferences::setFigures(figures);
  MainWindow::allPreferencesChanged();
}

}  // namespace

ViewMenu::ViewMenu(QMenuBar& bar, MainWindow& window, const QList<QAction*>& pages)
    : QObject(&window), window_(window) {
  QMenu* menu = bar.addMenu(tr("&View"));
  menu->addMenu(tr("&Page"))->addActions(pages);
  menu->addSeparator();
  units_ = addChoices(
      *menu->addMenu(tr("&Units")),
      {tr("&Metric: km/h, mm, N·m, kg"), tr("&Imperial: mph, in, lb·ft, lb"), tr("Mi&xed: mph, else metric")},
      [](int i) { preferences::setUnits(UnitsShown(static_cast<UnitSystem>(i))); });
  figuresMenu_ = new TickingMenu(tr("&Key Figures"), menu);
  menu->addMenu(figuresMenu_);
  addFigures(*figuresMenu_);
  motion_ = menu->addAction(tr("Anim&ations"), this, [](bool on) {
    preferences::setMotion(on);
    MainWindow::allPreferencesChanged();
  });
  motion_->setCheckable(true);
  appearance_ = addChoices(*menu->addMenu(tr("&Appearance")),
                           {tr("Follow &Desktop"), tr("&Light"), tr("Dar&k")}, [](int i) {
                             preferences::setAppearance(static_cast<Appearance>(i));
                             applyAppearance(static_cast<Appearance>(i));
                           });
  menu->addAction(tr("&Shop Line and Logo…"), this, [this] { ShopDialog(&window_).exec(); });
  menu->addSeparator();
  menu->addAction(tr("&Counter View"), this, [this] { CounterView::open(window_); });
  menu->addAction((new FullScreen(window))->action());
  refresh();
}

QActionGroup* ViewMenu::addChoices(QMenu& menu, const QStringList& names,
                                   const std::function<void(int)>& choose) {
  auto* group = new QActionGroup(this);
  for (int i = 0; i < names.size(); ++i) {
    QAction* action = menu.addAction(names[i]);
    action->setCheckable(true);
    group->addAction(action);
    connect(action, &QAction::triggered, this, [choose, i] {
      choose(i);
      MainWindow::allPreferencesChanged();
    });
  }
  return group;
}

void ViewMenu::addFigures(QMenu& menu) {
  for (int i = 0; i < kFigureCount; ++i) {
    QAction* action = menu.addAction(figureName(static_cast<Figure>(i)));
    action->setCheckable(true);
    figures_.push_back(action);
    connect(action, &QAction::triggered, this,
            [this, i](bool on) { pickFigure(static_cast<std::size_t>(i), on); });
  }
  menu.addSeparator();
  menu.addAction(tr("&Arrange…"), this, &ViewMenu::arrangeFigures);
  menu.addAction(tr("&Reset to Default"), this, [] { keepFigures({}); });
  connect(&menu, &QMenu::aboutToShow, this, &ViewMenu::tickFigures);
}

/// What is ticked stands in the readout; of the others it is said which this bike lacks the data for.
void ViewMenu::tickFigures() {
  const Plan& plan = window_.planner().current();
  const auto shown = figuresInReadout(plan, preferences::figures());
  for (std::size_t i = 0; i < figures_.size(); ++i) {
    const auto figure = static_cast<Figure>(i);
    figures_[i]->setChecked(std::find(shown.begin(), shown.end(), figure) != shown.end());
    figures_[i]->setText(hasFigure(plan, figure) ? figureName(figure)
                                                 : tr("%1 (lacks data)").arg(figureName(figure)));
  }
}

void ViewMenu::pickFigure(std::size_t index, bool on) {
  auto shown = figuresInReadout(window_.planner().current(), preferences::figures());
  const auto figure = static_cast<Figure>(index);
  if (on) {
    if (shown.size() >= kMostFigures)
      return refuse(*figures_[index], tr("The readout has room for %n figures: untick one first.", nullptr,
                                         static_cast<int>(kMostFigures)));
    shown.push_back(figure);
  } else {
    if (shown.size() == 1)
      return refuse(*figures_[index], tr("One figure stays in the readout: tick another one first."));
    shown.erase(std::remove(shown.begin(), shown.end(), figure), shown.end());
  }
  keepFigures(shown);
}

/// The menu is open and may cover the window's message: it is said beside the entry, too.
void ViewMenu::refuse(QAction& action, const QString& why) {
  tickFigures();
  window_.say(why);
  if (figuresMenu_->isVisible())
    QToolTip::showText(figuresMenu_->mapToGlobal(figuresMenu_->actionGeometry(&action).bottomLeft()), why,
                       figuresMenu_);
}

void ViewMenu::arrangeFigures() {
  FiguresDialog dialog(window_.planner().shared(), preferences::figures(), &window_);
  if (dialog.exec() == QDialog::Accepted) keepFigures(dialog.chosen());
}

void ViewMenu::refresh() {
  units_->actions().at(static_cast<int>(preferences::units().system()))->setChecked(true);
  appearance_->actions().at(static_cast<int>(preferences::appearance()))->setChecked(true);
  motion_->setChecked(preferences::motion());
  tickFigures();
}

}  // namespace layshaft::ui
