// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QVariantMap>
#include <QWidget>
#include <functional>
#include <utility>

#include "core/plan.h"
#include "ui/charts/live_chart.h"
#include "ui/words/units_shown.h"

namespace layshaft::ui {

/// Makes a widget that a page shows beside its picture, when the page is first shown; the page takes it over.
using MakeWidget = std::function<QWidget*()>;

/// One question's answer on screen. Takes plans and shows them; knows nothing of files, and asks no other
/// page. Until it is first shown it is empty, and while it is hidden it only remembers the latest plan.
class Page : public QWidget {
  Q_OBJECT
 public:
  using QWidget::QWidget;

  void take(const SharedPlan& plan, const UnitsShown& units) {
    plan_ = plan;
    units_ = units;
    if (isVisible())
      showPlan();
    else
      stale_ = true;
  }

  /// Makes what the page consists of, if that was not done yet.
  void ensureBuilt() {
    if (std::exchange(built_, true)) return;
    build();
    // What is made for a page that is in view already would be shown some events later, and not be filled
    // now.
    for (QWidget* part : findChildren<QWidget*>(QString(), Qt::FindDirectChildrenOnly))
      if (!part->isHidden() || !part->testAttribute(Qt::WA_WState_ExplicitShowHide)) part->show();
    if (LiveChart* picture = ownChart())
      connect(picture, &LiveChart::menuRequested, this, &Page::pictureMenuWanted);
    emit wasBuilt();
  }

  /// The page's chart; null if it has none.
  virtual LiveChart* chart() { return nullptr; }
  /// What the page is worked with by keys: its chart or table.
  virtual QWidget* mainPart() { return chart(); }
  /// Gives it the focus; while the page lacks data, what leads to them.
  void takeFocus() {
    if (QWidget* main = mainPart(); main && main->isVisible()) return main->setFocus(Qt::ShortcutFocusReason);
    for (QWidget* part : findChildren<QWidget*>())
      if (part->isVisible() && part->isEnabled() && (part->focusPolicy() & Qt::TabFocus))
        return part->setFocus(Qt::ShortcutFocusReason);
  }
  /// What can be copied and saved as a picture; null if there is none.
  virtual Picture* picture() { return chart(); }
  /// What the chart shows as a table: column titles, then rows.
  virtual std::vector<QStringList> numbers() const { return {}; }
  /// The same, as comma-separated values in the units shown.
  virtual QString csv() const { return {}; }

  /// How the user set the page up, for the next start; empty where there is nothing to set up.
  virtual QVariantMap state() const { return {}; }
  /// Sets it up so again; what is not understood is left as it is. Called once it is built.
  virtual void restore(const QVariantMap&) {}
  bool isBuilt() const { return built_; }

 signals:
  void wasBuilt();
  void cruiseDragged(double speedMps, int drag);
  void pictureMenuWanted(const QPoint& globalPosition);
  void detailsWanted(std::string_view key);  ///< the page lacks data: lead to where it is typed

 protected:
  virtual void build() = 0;
  virtual void showPlan() = 0;
  /// The chart whose menu is this page's; null where the chart is that of a page inside of it.
  virtual LiveChart* ownChart() { return chart(); }
  /// Width of the controls beside a picture, px.
  int sideWidth() const { return 30 * fontMetrics().averageCharWidth() + 80; }
  void showEvent(QShowEvent* event) override {
    QWidget::showEvent(event);
    ensureBuilt();
    if (plan_ && std::exchange(stale_, false)) showPlan();
  }

  SharedPlan plan_;
  UnitsShown units_;

 private:
  bool stale_ = false, built_ = false;
};

}  // namespace layshaft::ui
