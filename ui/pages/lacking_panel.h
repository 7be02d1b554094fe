// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QLabel>
#include <QPushButton>
#include <QWidget>
#include <string_view>
#include <vector>

namespace layshaft::ui {

/// Stands in for a page's picture while the profile lacks what it needs: names the fields and leads there.
class LackingPanel : public QWidget {
  Q_OBJECT
 public:
  explicit LackingPanel(QWidget* parent = nullptr);

  /// `keys` of the profile that are missing; the button leads to the first.
  void show(const QString& what, const std::vector<std::string_view>& keys);
  /// Nothing is missing, but what is at `key` does not do; the button leads there.
  void showWrong(const QString& what, std::string_view key);

 signals:
  void detailsWanted(std::string_view key);

 private:
  QLabel* words_;
  std::string_view first_;
};

}  // namespace layshaft::ui
