// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/editors/ride_fields.h"

#include <QCoreApplication>

#include "ui/editors/profile_fields.h"

namespace layshaft::ui {
namespace {

QString tr(const char* text) {
  return QCoreApplication::translate("RideFields", text);
}

void add(FieldForm& form, const QString& label, const QString& explanation, FileUnit unit, const Limit& limit,
         int decimals, std::optional<double> Ride::*member, const QString& usual = {}) {
  form.addNumber(blockNumber(label, explanation, unit, limit, decimals, ride, member, usual));
}

Surface surfaceOf(const Profile& p) {
  return p.ride && p.ride->surface ? *p.ride->surface : Surface::Asphalt;
}

/// A value of the surface that is ridden on, in place of the usual one.
void addSurfaceValue(FieldForm& form, const QString& label, const QString& explanation, const Limit& limit,
                     std::optional<double> SurfaceValues::*member) {
  form.addNumber({.label = label,
                  .explanation = explanation,
                  .unit = FileUnit::Plain,
                  .limit = limit,
                  .decimals = 3,
                  .whenMissing = {},
                  .get = [member](const Profile& p) -> std::optional<double> {
                    if (!p.ride) return std::nullopt;
                    const auto own = p.ride->surfaces.find(surfaceOf(p));
                    return own == p.ride->surfaces.end() ? std::nullopt : own->second.*member;
                  },
                  .set =
                      [member](Profile& p, std::optional<double> x) {
                        if (!p.ride) p.ride.emplace();
                        SurfaceValues& own = p.ride->surfaces[surfaceOf(p)];
                        own.*member = x;
                        if (own == SurfaceValues{}) p.ride->surfaces.erase(surfaceOf(p));
                      }});
}

}  // namespace

void addConditions(FieldForm& form) {
  form.addChoice(choice(
      tr("Surface"), tr("What the rear tyre stands on."), kSurfaceWords,
      {tr("asphalt (usual)"), tr("asphalt"), tr("wet asphalt"), tr("hardpack"), tr("loam"), tr("sand")},
      [](Profile& p) -> std::optional<Surface>& { return made(p.ride).surface; }));
  addSurfaceValue(
      form, tr("Its grip"),
      tr("Grip of the surface chosen. Not given: the tyre's own on asphalt, 0.7 of it in the wet, 0.7 on "
         "hardpack, 0.8 on loam, 0.6 on sand."),
      limits::kGrip, &SurfaceValues::grip);
  addSurfaceValue(
      form, tr("Its rolling"),
      tr("Rolling resistance of the surface chosen. Not given: the tyre's own on asphalt, 0.04 on hardpack, "
         "0.07 on loam, 0.15 on sand."),
      limits::kRollingResistance, &SurfaceValues::rollingResistance);
  add(form, tr("Slope"), tr("Rise over run; positive is uphill."), FileUnit::Plain, limits::kSlopePercent, 1,
      &Ride::slopePercent, QStringLiteral("0"));
  add(form, tr("Headwind"), tr("Positive against the rider."), FileUnit::KilometrePerHour,
      limits::kHeadwindKmh, 0, &Ride::headwindKmh, QStringLiteral("0"));
  add(form, tr("Altitude"), tr("Sets the air pressure if that is not given."), FileUnit::Metre,
      limits::kAltitudeM, 0, &Ride::altitudeM, QStringLiteral("0"));
  add(form, tr("Temperature"),
      tr("Air temperature of the day. It does not fall with the altitude by itself."), FileUnit::Plain,
      limits::kAirTemperatureC, 0, &Ride::airTemperatureC, QStringLiteral("15"));
  add(form, tr("Pressure"),
      tr("Air pressure at the place itself, not reduced to sea level; from the altitude if not "
         "given."),
      FileUnit::Plain, limits::kAirPressureHpa, 0, &Ride::airPressureHpa);
  add(form, tr("Humidity"), tr("Relative humidity of the day."), FileUnit::Plain, limits::kPercent, 0,
      &Ride::humidityPercent, QStringLiteral("0"));
}

void addLaunchAndLean(FieldForm& form) {
  add(form, tr("Launch at"), tr("Engine speed at which the clutch slips when starting from rest."),
      FileUnit::Plain, limits::kLaunchRpm, 0, &Ride::launchRpm);
  add(form, tr("Lean"),
      tr("Lean angle in the corner that matters: the tyre rolls on a smaller radius there."), FileUnit::Plain,
      limits::kLeanDeg, 0, &Ride::leanDeg);
}

void addDrive(FieldForm& form) {
  form.addNumber(blockNumber(tr("Exit speed"), tr("Speed at the start of the straight."),
                             FileUnit::KilometrePerHour, limits::kSpeedKmh, 0, drive, &Drive::exitSpeedKmh));
  form.addNumber(blockNumber(tr("Straight"), tr("Length of the straight."), FileUnit::Metre,
                             limits::kDriveLengthM, 0, drive, &Drive::lengthM));
}

void addRollOn(FieldForm& form) {
  form.addNumber(blockNumber(tr("Roll on from"), tr("Speed at which the throttle is opened."),
                             FileUnit::KilometrePerHour, limits::kSpeedKmh, 0, rollOn, &RollOn::fromSpeedKmh,
                             QStringLiteral("80")));
  form.addNumber(blockNumber(tr("to"), tr("Speed at which the roll-on ends."), FileUnit::KilometrePerHour,
                             limits::kSpeedKmh, 0, rollOn, &RollOn::toSpeedKmh, QStringLiteral("120")));
  form.addNumber(blockNumber(tr("in gear"),
                             tr("The gear that the roll-on stays in; the last one if not given."),
                             FileUnit::Plain, limits::kGear, 0, rollOn, &RollOn::gear));
}

}  // namespace layshaft::ui
