// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QCoreApplication>
#include <QLocale>
#include <QString>
#include <QStringList>
#include <optional>

namespace layshaft::ui {

/// What a displayed number measures.
enum class Quantity {
  Speed,
  Length,
  SmallLength,
  Torque,
  Mass,
  EngineSpeed,
  Ratio,
  Percent,
  Force,
  Power,
  Time,
  Temperature,
  AirPressure,
  TyrePressure,
  Area,
  Inertia,
  Strength,     ///< of a chain: a force too large for the unit of forces
  SpeedGrowth,  ///< a share per speed squared
  Plain
};

enum class UnitSystem { Metric, Imperial, Mixed };

/// The units that people see; files and studies never know them.
/// Metric: km/h, m and mm, N·m, kg, °C, hPa, bar. Imperial: mph, ft and in, lb·ft, lb, °F, inHg, psi. Mixed:
/// mph, else metric.
class UnitsShown {
  Q_DECLARE_TR_FUNCTIONS(UnitsShown)
 public:
  explicit UnitsShown(UnitSystem system = UnitSystem::Metric) : system_(system) {}

  /// What the desktop's region would expect.
  static UnitsShown forLocale(const QLocale& locale);

  /// The units of a word, as settings and commands write it; none for a word not known.
  static std::optional<UnitsShown> fromWord(const QString& word);
  /// All the words, in the order of the systems.
  static QStringList words();
  QString word() const { return words().at(static_cast<int>(system_)); }

  UnitSystem system() const { return system_; }
  /// Whether speeds are read in miles per hour: then starts go to 60 and roll-ons from 50 to 75.
  bool inMiles() const { return system_ != UnitSystem::Metric; }

  /// Shown value of an SI value (m/s, m, N·m, kg, Pa; temperature in °C, engine speed in rpm, ratios and per
  /// cent as they are) and back.
  double shown(Quantity quantity, double si) const;
  double si(Quantity quantity, double shown) const;
  /// Decimals that a length of the chain run is read with: a tenth of a millimetre, a hundredth of an inch.
  int decimals(Quantity quantity) const;
  /// The same of a rollout: a millimetre, a tenth of an inch.
  int rolloutDecimals() const { return system_ == UnitSystem::Imperial ? 1 : 0; }
  QString name(Quantity quantity) const;  ///< "km/h", empty for bare numbers
  /// "49.7 mph": a speed that somebody chose, which is no estimate: with a tenth where it is not a whole
  /// number.
  QString chosenSpeed(double mps) const;
  /// "205 km/h": a number that is written already, and its unit.
  QString withUnit(const QString& number, Quantity quantity) const;

  bool operator==(const UnitsShown&) const = default;

 private:
  double factor(Quantity quantity) const;  ///< SI per shown unit, of all but temperature

  UnitSystem system_;
};

}  // namespace layshaft::ui
