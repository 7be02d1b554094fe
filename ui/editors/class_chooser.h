// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "core/bike/bike.h"
#include "ui/editors/calm_spin_box.h"

namespace layshaft::ui {

/// A choice among the classes of bike, and none.
class ClassChooser : public CalmComboBox {
  Q_OBJECT
 public:
  /// `none` is what it is called to choose none.
  explicit ClassChooser(const QString& none, QWidget* parent = nullptr);

  std::optional<BikeClass> chosen() const;
  void show(const std::optional<BikeClass>& bikeClass);
};

}  // namespace layshaft::ui
