// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/window/view_menu.h"

#include <algorithm>

#include "ui/charts/appearance.h"
#include "ui/window/full_screen.h"
#include "ui/window/main_window.h"
#include "ui/words/key_figures.h"

namespace layshaft::ui {

ViewMenu::ViewMenu(QMenuBar& bar, QWidget& window, const QList<QAction*>& pages) : QObject(&window) {
  QMenu* menu = bar.addMenu(tr("&View"));
  menu->addMenu(tr("&Page"))->addActions(pages);
  menu->addSeparator();
  units_ = addChoices(
      *menu->addMenu(tr("&Units")),
      {tr("&Metric: km/h, mm, N·m, kg"), tr("&Imperial: mph, in, lb·ft, lb"), tr("Mi&xed: mph, else metric")},
      [](int i) { preferences::setUnits(UnitsShown(static_cast<UnitSystem>(i))); });
  addFigures(*menu->addMenu(tr("&Key Figures")));
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
  menu->addSeparator();
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
    connect(action, &QAction::triggered, this, &ViewMenu::pickFigures);
  }
  menu.addSeparator();
  menu.addAction(tr("&Reset to Default"), this, [] {
    preferences::setFigures({});
    MainWindow::allPreferencesChanged();
  });
}

void ViewMenu::pickFigures() {
  std::vector<Figure> picked;
  for (std::size_t i = 0; i < figures_.size(); ++i)
    if (figures_[i]->isChecked()) picked.push_back(static_cast<Figure>(i));
  preferences::setFigures(picked);
  MainWindow::allPreferencesChanged();
}

void ViewMenu::refresh() {
  units_->actions().at(static_cast<int>(preferences::units().system()))->setChecked(true);
  appearance_->actions().at(static_cast<int>(preferences::appearance()))->setChecked(true);
  motion_->setChecked(preferences::motion());
  const auto picked = preferences::figures();
  for (std::size_t i = 0; i < figures_.size(); ++i) {
    const bool on = std::find(picked.begin(), picked.end(), static_cast<Figure>(i)) != picked.end();
    figures_[i]->setChecked(on);
    // The readout has room for so many; one must go before another comes.
    figures_[i]->setEnabled(on || picked.size() < kMostFigures);
  }
}

}  // namespace layshaft::ui
