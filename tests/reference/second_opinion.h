// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <array>
#include <boost/math/interpolators/pchip.hpp>
#include <boost/math/tools/roots.hpp>
#include <boost/numeric/odeint.hpp>
#include <cmath>
#include <limits>
#include <optional>
#include <string>
#include <vector>

#include "core/bike/profile.h"

/// The run worked out a second time by other means: Boost.Math's monotone interpolation, the forces written
/// down anew from the profile's own units, and Boost.odeint's Dormand-Prince steps through time with the
/// events found on its dense output. Shares no line with the studies.
namespace layshaft::test {

class SecondOpinion {
 public:
  explicit SecondOpinion(const Profile& profile, const Setup& setup, double axleShift = 0.0)
      : engine_(profile.bike.engine),
        chassis_(profile.bike.chassis.value_or(Chassis{})),
        ride_(profile.ride.value_or(Ride{})),
        limit_(*engine_.revLimitRpm) {
    const double final = double(setup.rearTeeth.count()) / setup.frontTeeth.count();
    for (const double ratio : setup.gearRatios.values())
      overall_.push_back(setup.primaryRatio * ratio * final);
    rollout_ = setup.options.rolloutMm
                   ? *setup.options.rolloutMm / 1000.0
                   : M_PI * (setup.rearTyre.diameterM() *
                                 (1 - setup.options.rollingAllowancePercent.value_or(2.0) / 100) -
                             2 * setup.options.treadWearMm.value_or(0.0) / 1000);
    growth_ = setup.options.growthPerKmh2.value_or(0.0) * 3.6 * 3.6;
    radius_ = rollout_ / (2 * M_PI);
    mass_ = chassis_.massKg.value() + chassis_.riderMassKg.value_or(75.0);
    const double front = chassis_.frontRolloutMm ? *chassis_.frontRolloutMm / 1000.0 / (2 * M_PI) : radius_;
    frontMass_ = chassis_.frontWheelInertiaKgm2.value_or(0.0) / std::pow(front, 2);
    rolling_ = mass_ + frontMass_ + chassis_.rearWheelInertiaKgm2.value_or(0.0) / std::pow(radius_, 2);
    addSprockets(profile.stock, setup);
    theta_ = std::atan(ride_.slopePercent.value_or(0.0) / 100.0);
    wind_ = ride_.headwindKmh.value_or(0.0) / 3.6;
    const double kelvin = ride_.airTemperatureC.value_or(15.0) + 273.15;
    const double pressure = ride_.airPressureHpa
                                ? *ride_.airPressureHpa * 100.0
                                : 101325.0 * std::pow(1 - 0.0065 * ride_.altitudeM.value_or(0.0) / 288.15,
                                                      9.80665 / (287.05287 * 0.0065));
    const auto vapour = [](double celsius, double percent) {
      return percent / 100 * 611.2 * std::exp(17.62 * celsius / (243.12 + celsius));
    };
    const double wet = vapour(kelvin - 273.15, ride_.humidityPercent.value_or(0.0));
    density_ = (pressure - wet) / 287.05287 / kelvin + wet / 461.495 / kelvin;
    const auto factor = [](double dryPa, double celsius) {
      return 1.18 * (99000.0 / dryPa) * std::sqrt((celsius + 273) / 298) - 0.18;
    };
    const Air given = engine_.curveAir.value_or(Air{});
    if (engine_.torqueFollowsAir.value_or(true))
      torqueFactor_ =
          factor(given.pressureHpa.value_or(1013.25) * 100 -
                     vapour(given.temperatureC.value_or(15.0), given.humidityPercent.value_or(0.0)),
                 given.temperatureC.value_or(15.0)) /
          factor(pressure - wet, kelvin - 273.15);
    efficiency_ =
        engine_.curveMeasuredAt == CurvePlace::RearWheel ? 1.0 : chassis_.drivetrainEfficiency.value_or(0.9);
    b_ = chassis_.cgAheadOfRearAxleMm ? std::optional(*chassis_.cgAheadOfRearAxleMm / 1000 + axleShift)
                                      : std::nullopt;
    l_ = chassis_.wheelbaseMm ? std::optional(*chassis_.wheelbaseMm / 1000 + axleShift) : std::nullopt;
    if (chassis_.cgHeightMm) h_ = *chassis_.cgHeightMm / 1000;
    hd_ = chassis_.dragHeightMm ? *chassis_.dragHeightMm / 1000 : h_.value_or(0.0);
    settleSurface();
    buildCurve();
  }

  double torque(double rpm) const {
    if (rpm > limit_ * (1 + 1e-12)) return 0.0;
    const auto& points = engine_.torqueCurve->points();
    if (rpm <= points.front().rpm) return points.front().torqueNm;
    if (rpm >= points.back().rpm)
      return std::max(0.0, points.back().torqueNm + fallAtEnd() * (rpm - points.back().rpm));
    if (curve_) return (*curve_)(rpm);
    for (std::size_t i = 1; i < points.size(); ++i)
      if (rpm <= points[i].rpm)
        return std::lerp(points[i - 1].torqueNm, points[i].torqueNm,
                         (rpm - points[i - 1].rpm) / (points[i].rpm - points[i - 1].rpm));
    return 0.0;
  }
  /// The tyre as it has grown at a speed, against its size at walking pace.
  double grown(double v) const { return 1 + growth_ * v * v; }
  /// The wheel turns faster than it rolls by what slips.
  double rpmAt(double v, std::size_t gear) const {
    return 60 * (v / (1 - slip_)) * overall_[gear] / (rollout_ * grown(v));
  }
  double speedAt(double rpm, std::size_t gear) const {
    const double walking = (1 - slip_) * rpm / 60 * rollout_ / overall_[gear];
    if (growth_ <= 0 || walking <= 0) return walking;
    // The engine speed rises with the road speed until the tyre has grown to twice its size.
    std::uintmax_t most = 200;
    const auto [lo, hi] = boost::math::tools::bisect([&](double v) { return walking * grown(v) - v; },
                                                     walking, 1 / std::sqrt(growth_),
                                                     boost::math::tools::eps_tolerance<double>(52), most);
    return (lo + hi) / 2;
  }
  double limitSpeed(std::size_t gear) const { return speedAt(limit_, gear); }
  std::size_t gears() const { return overall_.size(); }
  /// Speeds at which a force in a gear has a kink or a jump, rising.
  std::vector<double> kinks(std::size_t gear) const {
    std::vector<double> speeds{165 / 3.6, std::max(0.0, -wind_)};
    for (const auto& point : engine_.torqueCurve->points()) speeds.push_back(speedAt(point.rpm, gear));
    const TorquePoint& last = engine_.torqueCurve->points().back();
    if (fallAtEnd() < 0)
      if (const double nothingLeft = last.rpm - last.torqueNm / fallAtEnd(); nothingLeft < limit_)
        speeds.push_back(speedAt(nothingLeft, gear));
    std::sort(speeds.begin(), speeds.end());
    return speeds;
  }

  double drag(double v) const {
    return 0.5 * density_ * chassis_.dragAreaM2.value() * (v + wind_) * std::abs(v + wind_);
  }
  double resistance(double v) const {
    double c = constantRolling_;
    if (pressure_) {
      const double kmh = v * 3.6, p = *pressure_;
      c = kmh <= 165 ? 0.0085 + 0.018 / p + 1.59e-6 * kmh * kmh / p : 0.018 / p + 2.91e-6 * kmh * kmh / p;
    }
    return drag(v) + mass_ * 9.80665 * (std::cos(theta_) * c + std::sin(theta_));
  }
  double force(double v, std::size_t gear) const {
    return efficiency_ * torqueFactor_ * torque(rpmAt(v, gear)) * overall_[gear] / (radius_ * grown(v));
  }
  /// At the wheel, of a torque at the crankshaft or wherever the curve was measured.
  double forceOf(double torqueNm, double v, std::size_t gear) const {
    return efficiency_ * torqueFactor_ * torqueNm * overall_[gear] / (radius_ * grown(v));
  }
  double mass() const { return mass_; }
  double radius() const { return radius_; }
  double slope() const { return theta_; }
  double gripOfSurface() const { return grip_.value(); }
  /// What the rear wheel and the engine add to the mass, upright; the rest does not change with lean.
  double rearMass() const { return rolling_ - mass_ - frontMass_; }
  double engineMass(std::size_t gear) const { return massIn(gear) - rolling_; }
  double massIn(std::size_t gear) const {
    return rolling_ + engine_.rotatingInertiaKgm2.value_or(0.0) * std::pow(overall_[gear] / radius_, 2);
  }
  double coastingMass() const { return rolling_; }
  double unbounded(double v, std::size_t gear) const {
    return (force(v, gear) - resistance(v)) / massIn(gear);
  }
  // The bounds by trial instead of by formula: the greatest acceleration at which the wheels stay in balance.
  // Infinite without the data.
  double lift(double v) const {
    if (!h_ || !b_) return std::numeric_limits<double>::infinity();
    // Front load is weight·b/l less what acceleration, slope and drag move back; it ends at zero.
    return (weight() * *b_ - drag(v) * hd_ - along() * *h_) / (mass_ * *h_);
  }
  double grip(double v) const {
    if (!h_ || !b_ || !l_ || !grip_ || *grip_ * *h_ >= *l_) return std::numeric_limits<double>::infinity();
    // Rear load at acceleration A: R(A) = (weight·(l−b) + (m·A + along)·h + drag·hd)/l, thrust m·A + Fr ≤
    // μ·R(A): one line through two points of the surplus of grip over thrust.
    const auto surplus = [&](double A) {
      return *grip_ * (weight() * (*l_ - *b_) + (mass_ * A + along()) * *h_ + drag(v) * hd_) / *l_ -
             (mass_ * A + resistance(v));
    };
    const double s0 = surplus(0), s1 = surplus(1);
    return s0 / (s0 - s1);
  }
  double bound(double v) const { return std::min(lift(v), grip(v)); }
  double acceleration(double v, std::size_t gear) const { return std::min(unbounded(v, gear), bound(v)); }
  double slipping(double v, double launchRpm, std::size_t gear = 0) const {
    const double push =
        efficiency_ * torqueFactor_ * torque(launchRpm) * overall_[gear] / (radius_ * grown(v));
    return std::min((push - resistance(v)) / rolling_, bound(v));
  }

  struct End {
    double time, distance, speed;
  };

  /// Where a run shifts, as road speeds of every gear but the last: as wished, and instead of that in a gear
  /// which stops pulling before. Without the second list no wish is out of reach.
  struct Shifts {
    std::vector<double> wished, best;
  };
  Shifts shiftsAt(const std::vector<double>& rpm) const {
    Shifts shifts;
    for (std::size_t g = 0; g < rpm.size(); ++g) shifts.wished.push_back(speedAt(rpm[g], g));
    return shifts;
  }

  /// A first gear, slipping at a launch engine speed or not, and how many shifts are made.
  struct Way {
    std::size_t gear;
    std::optional<double> launchRpm;
    int shifts;
  };

  std::optional<End> run(double v0, const Way& way, const std::vector<double>& shiftRpm, double distance,
                         double tolerance) const {
    return run(v0, way, shiftsAt(shiftRpm), distance, tolerance, std::nullopt);
  }
  /// Until a distance; none if it never moves or a shift ends in a gear that does not pull. With a longest
  /// step, in seconds, and halts at the kinks no step leaps over a dip of the curve that grip or lift hide
  /// from the error estimate on both sides; without, it steps as it likes.
  std::optional<End> run(double v0, const Way& way, const Shifts& shifts, double distance, double tolerance,
                         std::optional<double> longestStep) const {
    const auto until = [&](End& now, const auto& a, double speed, std::size_t g) {
      std::vector<double> halts;
      if (longestStep) halts = kinks(g);
      halts.push_back(speed);
      for (const double halt : halts) {
        if (halt != speed && (halt <= now.speed || halt >= speed)) continue;
        // Beyond the halt as at it, so that the step which ends there is not led by what comes later.
        const auto upToHalt = [&](double v) { return a(std::min(v, halt)); };
        if (advance(now, upToHalt, halt, distance, tolerance, longestStep.value_or(0.0))) return true;
      }
      return false;
    };
    End now{0, 0, v0};
    std::size_t gear = way.gear;
    if (way.launchRpm) {
      if (!(slipping(v0, *way.launchRpm, gear) > 0)) return std::nullopt;
      const auto a = [&](double v) { return slipping(v, *way.launchRpm, gear); };
      if (until(now, a, speedAt(*way.launchRpm, gear), gear)) return now;
    } else if (!(acceleration(v0, gear) > 0)) {
      return std::nullopt;
    }
    for (int left = way.shifts;; --left) {
      const bool last = gear + 1 == gears() || left == 0;
      double top = last ? limitSpeed(gear) : shifts.wished[gear];
      if (!last && !shifts.best.empty() && stopsBelow(top, now.speed, gear)) top = shifts.best[gear];
      // Where the resistance jumps over the pull the speed stands: no step could hold it there.
      constexpr double kJumpMps = 165 / 3.6;
      const bool stuck = pressure_ && top > kJumpMps && now.speed <= kJumpMps &&
                         acceleration(kJumpMps, gear) > 0 && acceleration(kJumpMps * (1 + 1e-15), gear) <= 0;
      if (stuck) top = kJumpMps;
      const auto a = [&](double v) { return acceleration(v, gear); };
      if (top > now.speed && until(now, a, top, gear)) return now;
      if (last || stuck) {
        now.time += (distance - now.distance) / now.speed;
        now.distance = distance;
        return now;
      }
      if (coastThrough(now, distance, tolerance)) return now;
      ++gear;
      if (now.speed >= limitSpeed(gear) || !(acceleration(now.speed, gear) > 0)) return std::nullopt;
    }
  }

 private:
  double weight() const { return mass_ * 9.80665 * std::cos(theta_); }
  double along() const { return mass_ * 9.80665 * std::sin(theta_); }

  /// The slope at the last point where it falls: the interpolation's own there, or that of the last line.
  double fallAtEnd() const {
    const auto& points = engine_.torqueCurve->points();
    const TorquePoint &last = points.back(), &before = *(points.end() - 2);
    return std::min(
        0.0, curve_ ? curve_->prime(last.rpm) : (last.torqueNm - before.torqueNm) / (last.rpm - before.rpm));
  }

  using State = std::array<double, 2>;  // distance, speed

  /// Sprockets that were weighed before and after: their kilograms, and their turning as rings from 0.4 of
  /// the pitch radius to it, the front one's by the square of the final ratio.
  void addSprockets(const Setup& stock, const Setup& now) {
    const auto add = [&](const std::optional<SprocketDetails>& before, int teethBefore,
                         const std::optional<SprocketDetails>& after, int teethAfter, double turns) {
      if (!before || !before->massKg || !after || !after->massKg) return;
      const auto pitchOf = [](const Setup& setup) {
        return setup.options.finalDrive == FinalDrive::Belt ? *setup.options.beltPitchMm
                                                            : setup.options.chainSize->pitchMm;
      };
      const auto inertia = [](double kg, double pitchMm, int teeth) {
        return kg / 2 * 1.16 * std::pow(pitchMm / 2000 / std::sin(M_PI / teeth), 2);
      };
      const double more = *after->massKg - *before->massKg;
      mass_ += more;
      rolling_ += more + (inertia(*after->massKg, pitchOf(now), teethAfter) -
                          inertia(*before->massKg, pitchOf(stock), teethBefore)) *
                             std::pow(turns / radius_, 2);
    };
    const int nf = now.frontTeeth.count(), nr = now.rearTeeth.count();
    add(stock.options.frontSprocket, stock.frontTeeth.count(), now.options.frontSprocket, nf,
        double(nr) / nf);
    add(stock.options.rearSprocket, stock.rearTeeth.count(), now.options.rearSprocket, nr, 1.0);
  }

  bool stopsBelow(double until, double from, std::size_t gear) const {
    for (double v = from; v < until; v += 0.01)
      if (!(acceleration(v, gear) > 0)) return true;
    return until > from && !(acceleration(until, gear) > 0);
  }

  void settleSurface() {
    const Surface surface = ride_.surface.value_or(Surface::Asphalt);
    const auto own = ride_.surfaces.find(surface);
    const SurfaceValues typed = own == ride_.surfaces.end() ? SurfaceValues{} : own->second;
    struct Row {
      Surface surface;
      double grip, rolling;
    };
    static constexpr Row kOffRoad[] = {
        {Surface::Hardpack, 0.7, 0.04}, {Surface::Loam, 0.8, 0.07}, {Surface::Sand, 0.6, 0.15}};
    grip_ = chassis_.tyreGrip;
    if (grip_ && surface == Surface::WetAsphalt) *grip_ *= 0.7;
    constantRolling_ = chassis_.rollingResistance.value_or(0.015);
    if (chassis_.rollingResistanceForm == RollingResistanceForm::SpeedDependent)
      pressure_ = chassis_.tyrePressureBar.value_or(2.5);
    for (const Row& row : kOffRoad)
      if (row.surface == surface) {
        grip_ = row.grip;
        constantRolling_ = row.rolling;
        pressure_.reset();
      }
    if (typed.grip) grip_ = typed.grip;
    slip_ = typed.slipPercent.value_or(0.0) / 100;
    if (typed.rollingResistance) {
      constantRolling_ = *typed.rollingResistance;
      pressure_.reset();
    }
  }

  void buildCurve() {
    const auto& points = engine_.torqueCurve->points();
    if (points.size() < 4) return;
    std::vector<double> x, y;
    for (const auto& p : points) {
      x.push_back(p.rpm);
      y.push_back(p.torqueNm);
    }
    // The library takes the end slopes; they are those of SciPy's PchipInterpolator.
    const auto end = [&](std::size_t i0, std::size_t i1, std::size_t i2) {
      const double h0 = x[i1] - x[i0], h1 = x[i2] - x[i1];
      const double d0 = (y[i1] - y[i0]) / h0, d1 = (y[i2] - y[i1]) / h1;
      double slope = ((2 * h0 + h1) * d0 - h0 * d1) / (h0 + h1);
      if (slope * d0 <= 0)
        slope = 0;
      else if (d0 * d1 <= 0 && std::abs(slope) > 3 * std::abs(d0))
        slope = 3 * d0;
      return slope;
    };
    const std::size_t n = x.size();
    const double left = end(0, 1, 2), right = end(n - 1, n - 2, n - 3);
    curve_.emplace(std::move(x), std::move(y), left, right);
  }

  /// Steps until speed or distance is reached; true if it was the distance.
  template <class Acceleration>
  bool advance(End& now, const Acceleration& a, double untilSpeed, double untilDistance, double tolerance,
               double longestStep) const {
    namespace ode = boost::numeric::odeint;
    const auto system = [&](const State& s, State& d, double) { d = {s[1], a(s[1])}; };
    auto stepper =
        ode::make_dense_output(tolerance, tolerance, longestStep, ode::runge_kutta_dopri5<State>());
    stepper.initialize(State{now.distance, now.speed}, now.time, 1e-3);
    for (int i = 0; i < 1000000; ++i) {
      const auto [t0, t1] = stepper.do_step(system);
      const State& s = stepper.current_state();
      const bool tooFast = s[1] >= untilSpeed, tooFar = s[0] >= untilDistance;
      if (!tooFast && !tooFar) continue;
      const auto at = [&](double t) {
        State result;
        stepper.calc_state(t, result);
        return result;
      };
      const auto found = [&](int which, double target) {
        std::uintmax_t most = 100;
        const auto f = [&](double t) { return at(t)[std::size_t(which)] - target; };
        if (f(t0) >= 0) return t0;
        const auto [lo, hi] =
            boost::math::tools::bisect(f, t0, t1, boost::math::tools::eps_tolerance<double>(48), most);
        return (lo + hi) / 2;
      };
      double t = std::numeric_limits<double>::infinity();
      if (tooFast) t = found(1, untilSpeed);
      bool far = false;
      if (tooFar)
        if (const double there = found(0, untilDistance); there < t) {
          t = there;
          far = true;
        }
      const State end = at(t);
      now = {t, far ? untilDistance : end[0], far ? end[1] : untilSpeed};
      return far;
    }
    throw std::runtime_error("the second opinion does not end");
  }

  bool coastThrough(End& now, double untilDistance, double tolerance) const {
    namespace ode = boost::numeric::odeint;
    const double seconds = chassis_.shiftTimeS.value_or(0.15);
    if (seconds <= 0) return false;
    const auto system = [&](const State& s, State& d, double) {
      d = {s[1], s[1] > 0 || resistance(s[1]) < 0 ? -resistance(s[1]) / rolling_ : 0.0};
    };
    const auto after = [&](double t) {
      State s{now.distance, now.speed};
      ode::integrate_adaptive(ode::make_controlled(tolerance, tolerance, ode::runge_kutta_dopri5<State>()),
                              system, s, 0.0, t, std::min(t, 1e-3));
      return s;
    };
    const State end = after(seconds);
    if (end[0] < untilDistance) {
      now = {now.time + seconds, end[0], end[1]};
      return false;
    }
    std::uintmax_t most = 100;
    const auto [lo, hi] =
        boost::math::tools::bisect([&](double t) { return after(t)[0] - untilDistance; }, 1e-12, seconds,
                                   boost::math::tools::eps_tolerance<double>(40), most);
    now = {now.time + lo, untilDistance, after(lo)[1]};
    return true;
  }

  Engine engine_;
  Chassis chassis_;
  Ride ride_;
  double limit_;
  std::vector<double> overall_;
  double rollout_ = 0, radius_ = 0, growth_ = 0, mass_ = 0, rolling_ = 0, theta_ = 0, wind_ = 0, density_ = 0;
  double frontMass_ = 0;
  double torqueFactor_ = 1, efficiency_ = 1, hd_ = 0, constantRolling_ = 0, slip_ = 0;
  std::optional<double> b_, l_, h_, grip_, pressure_;
  std::optional<boost::math::interpolators::pchip<std::vector<double>>> curve_;
};

}  // namespace layshaft::test
