// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QDialog>
#include <optional>
#include <utility>
#include <vector>

#include "core/bike/profile.h"
#include "core/limits.h"
#include "core/parts/peak_curve.h"
#include "ui/words/units_shown.h"

class QComboBox;
class QDialogButtonBox;
class QFormLayout;
class QLabel;
class QLineEdit;

namespace layshaft::ui {

/// Asks for name, teeth and tyre; for what the sawtooth needs too, rev limit, primary and gear ratios (or
/// revs at a speed in each gear); and, if it is known, for the chain or belt, the class of bike and the
/// cruise speed. May start from a sample, which fills everything else too.
class NewBikeDialog : public QDialog {
  Q_OBJECT
 public:
  explicit NewBikeDialog(const std::vector<std::pair<QString, Profile>>& samples, QWidget* parent = nullptr,
                         const UnitsShown& units = UnitsShown());

  /// The bike as entered; nothing while something is missing or wrong.
  std::optional<Profile> profile() const;

  /// Asks first if something was typed.
  void reject() override;

 private:
  void startFrom(int sampleIndex);
  void askForPeaks();
  void check();
  // Each gives nothing and says why in `complaint` while something is missing or wrong.
  std::optional<Profile> build(QString& complaint) const;
  std::optional<Setup> setup(const SetupOptions& options, QString& complaint) const;
  bool optionalLine(const QLineEdit& line, const QString& label, const Limit& limit, bool whole,
                    std::optional<double>& value, QString& complaint) const;
  bool putFinalDrive(SetupOptions& options, QString& complaint) const;
  /// Into `options` the teeth of those gears whose ratio was typed as teeth.
  void keepTeeth(SetupOptions& options, double primary, const QStringList& gears) const;
  bool putCruise(Profile& bike, QString& complaint) const;
  QString cruiseText(const Profile& sample) const;
  bool hasBelt() const;
  /// What is said of a problem of the part that has this key.
  static QString wrong(const char* key, Problem problem);

  std::vector<std::pair<QString, Profile>> samples_;
  UnitsShown units_;
  QFormLayout* form_;
  QComboBox* from_;
  QLineEdit* name_;
  QLineEdit* revLimit_;
  QLineEdit* primary_;
  QLineEdit* gears_;
  QLineEdit* front_;
  QLineEdit* rear_;
  QLineEdit* tyre_;
  QComboBox* drive_;
  QLineEdit* links_;
  QLineEdit* beltPitch_;
  QLineEdit* beltTeeth_;
  class ClassChooser* class_;
  QLineEdit* cruise_;
  QLabel* peaksShown_;
  std::optional<EnginePeaks> peaks_;  ///< of a curve to be estimated
  QLabel* message_;
  QDialogButtonBox* buttons_;
};

}  // namespace layshaft::ui
