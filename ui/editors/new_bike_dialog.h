// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDialog>
#include <optional>
#include <utility>
#include <vector>

#include "core/bike/profile.h"
#include "core/limits.h"

class QComboBox;
class QDialogButtonBox;
class QLabel;
class QLineEdit;

namespace layshaft::ui {

/// Asks for what the sawtooth needs and no more: name, rev limit, primary and gear ratios, teeth and tyre.
/// May start from a sample, which fills everything else too.
class NewBikeDialog : public QDialog {
  Q_OBJECT
 public:
  explicit NewBikeDialog(const std::vector<std::pair<QString, Profile>>& samples, QWidget* parent = nullptr);

  /// The bike as entered; nothing while something is missing or wrong.
  std::optional<Profile> profile() const;

 private:
  void startFrom(int sampleIndex);
  void check();
  // Each gives nothing and says why in `complaint` while something is missing or wrong.
  std::optional<Profile> build(QString& complaint) const;
  std::optional<Setup> setup(QString& complaint) const;
  std::optional<GearRatios> gears(QString& complaint) const;
  bool inside(const QString& label, const std::optional<double>& x, const Limit& limit,
              QString& complaint) const;
  /// What is said of a problem of the part that has this key.
  static QString wrong(const char* key, Problem problem);

  std::vector<std::pair<QString, Profile>> samples_;
  QComboBox* from_;
  QLineEdit* name_;
  QLineEdit* revLimit_;
  QLineEdit* primary_;
  QLineEdit* gears_;
  QLineEdit* front_;
  QLineEdit* rear_;
  QLineEdit* tyre_;
  QLabel* message_;
  QDialogButtonBox* buttons_;
};

}  // namespace layshaft::ui
