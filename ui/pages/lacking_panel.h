// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLabel>
#include <QPushButton>
#include <QWidget>

namespace layshaft::ui {

/// Stands in for a page's picture while the profile lacks what it needs: names the fields and leads there.
class LackingPanel : public QWidget {
  Q_OBJECT
 public:
  explicit LackingPanel(QWidget* parent = nullptr);

  void show(const QString& what, const QStringList& fields);

 signals:
  void detailsWanted();

 private:
  QLabel* words_;
};

}  // namespace layshaft::ui
