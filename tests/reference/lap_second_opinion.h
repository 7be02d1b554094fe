// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <algorithm>
#include <array>
#include <boost/numeric/odeint.hpp>
#include <cmath>
#include <limits>
#include <map>
#include <optional>
#include <stdexcept>
#include <vector>

#include "core/bike/profile.h"
#include "tests/reference/second_opinion.h"

/// A lap worked out a second time, by steps through time: Boost.odeint's Dormand-Prince steps of fixed
/// length, events found by halving the step in which they fall, every gear choice of every pull ridden for
/// itself.
namespace layshaft::test {

class LapOpinion {
 public:
  /// Shift points, as engine speeds, are given: another check is for them. So is the launch engine speed.
  LapOpinion(const Profile& profile, const Setup& setup, double axleShift, const Track& track,
             std::vector<double> shiftRpm, std::vector<double> bestRpm, double launchRpm)
      : shiftRpm_(std::move(shiftRpm)),
        launchRpm_(launchRpm),
        closed_(track.closed.value_or(false)),
        startMps_(track.startSpeedKmh.value_or(0.0) / 3.6) {
    const Ride ride = profile.ride.value_or(Ride{});
    const Chassis chassis = profile.bike.chassis.value();
    const SecondOpinion here(profile, setup, axleShift);
    const double widest =
        setup.options.crownRadiusMm ? *setup.options.crownRadiusMm / 1000 : setup.rearTyre.widthM() / 2;
    crown_ = std::min(1.0, widest / here.radius());
    idle_ = profile.bike.engine.idleRpm.value_or(0.0);
    limit_ = *profile.bike.engine.revLimitRpm;
    lowest_ = std::max(idle_, std::min(limit_, profile.bike.engine.torqueCurve->points().front().rpm));
    shiftTime_ = chassis.shiftTimeS.value_or(0.15);
    // A typed shift point out of reach on the ride's road gives way to the best one.
    for (std::size_t g = 0; g < shiftRpm_.size(); ++g) {
      stalls_.push_back(-1.0);
      if (profile.bike.engine.shiftRpm)
        for (double v = here.speedAt(shiftRpm_[g], g); v >= 0.0 && stalls_[g] < 0.0; v -= 0.01)
          if (!(here.acceleration(v, g) > 0.0)) stalls_[g] = v;
    }
    bestRpm_ = std::move(bestRpm);
    for (const TrackSegment& segment : track.segments) {
      Profile there = profile;
      Ride on = ride;
      on.slopePercent = segment.slopePercent.value_or(0.0);
      if (segment.surface) on.surface = segment.surface;
      there.ride = on;
      Piece piece{.length = segment.lengthM.value_or(0.0),
                  .curvature = segment.radiusM ? 1 / *segment.radiusM : 0.0,
                  .bike = SecondOpinion(there, setup, axleShift),
                  .stock = SecondOpinion(there, profile.stock)};
      if (segment.angleDeg) piece.length = *segment.radiusM * *segment.angleDeg * M_PI / 180;
      const double down = 9.80665 * std::cos(piece.bike.slope()), mu = piece.bike.gripOfSurface();
      piece.lateral = track.cornerSharePercent.value_or(90) / 100 * mu * down;
      if (track.maxLeanDeg)
        piece.lateral = std::min(piece.lateral, down * std::tan(*track.maxLeanDeg * M_PI / 180));
      if (segment.cornerSpeedKmh)
        piece.curvature = piece.lateral / std::pow(*segment.cornerSpeedKmh / 3.6, 2);
      piece.most = piece.curvature > 0 ? std::sqrt(piece.lateral / piece.curvature) : kFast;
      double brakes = mu;
      if (chassis.cgHeightMm && chassis.cgAheadOfRearAxleMm && chassis.wheelbaseMm)
        brakes =
            std::min(brakes, (*chassis.wheelbaseMm - *chassis.cgAheadOfRearAxleMm) / *chassis.cgHeightMm);
      piece.brakes = track.brakeSharePercent.value_or(80) / 100 * down * brakes;
      pieces_.push_back(std::move(piece));
    }
    if (closed_)
      std::rotate(pieces_.begin(),
                  std::min_element(pieces_.begin(), pieces_.end(),
                                   [](const Piece& a, const Piece& b) { return a.most < b.most; }),
                  pieces_.end());
    allow();
  }

  /// None where the bike stops for good.
  std::optional<double> seconds() {
    double start = closed_ ? pieces_.front().entry : std::min(startMps_, pieces_.front().entry);
    for (int i = 0; i < 100; ++i) {
      const double time = start >= pieces_.front().entry * (1 - 1e-9) ? onAllowed(0) : startsPull(0, start);
      if (!(time < kNever)) return std::nullopt;
      const double end = endOf(start);
      if (!closed_ || std::abs(end - start) < 1e-7 || i + 1 == 100) return time;
      start = end;
    }
    return std::nullopt;
  }

 private:
  static constexpr double kNever = std::numeric_limits<double>::infinity(), kFast = 300.0, kStep = 0.004,
                          kAsGoodAs = 1e-7;
  using State = std::array<double, 2>;  // metres into the piece, speed
  enum class What { Piece, Met, Turns, Limit, Time, Stop, Lap };

  struct Node {
    double left, mps, time;  ///< to the end of the piece
  };
  struct Piece {
    double length, curvature = 0, lateral = 0, most = 0, brakes = 0;
    SecondOpinion bike, stock;
    double entry = 0, exit = 0, held = 0, time = 0;
    bool rises = false;
    std::vector<Node> braking;
  };
  struct Place {
    double time;
    std::size_t piece;
    double metres, mps;
  };

  // ---- forces ----

  static double leftOver(const Piece& piece, double v) {
    const double used = v * v * piece.curvature / piece.lateral;
    return std::sqrt(std::max(0.0, 1 - used * used));
  }
  double rolled(const Piece& piece, double v) const {
    const double lean = std::atan(v * v * piece.curvature / (9.80665 * std::cos(piece.bike.slope())));
    return 1 - crown_ * (1 - std::cos(lean));
  }
  double rpm(const Piece& piece, double v, std::size_t gear) const {
    return piece.bike.rpmAt(v, gear) / rolled(piece, v);
  }
  /// `over`: the engine turned above the limiter when the step began; else no stage of it may see what comes
  /// beyond.
  double acceleration(const Piece& piece, double v, std::size_t gear, bool slips, bool over = false) const {
    const SecondOpinion& b = piece.bike;
    const double share = rolled(piece, v), turns = std::min(rpm(piece, v, gear), limit_);
    const double torque = slips ? b.torque(launchRpm_) : over ? 0.0 : b.torque(turns);
    const double mass =
        b.coastingMass() - b.rearMass() + (b.rearMass() + (slips ? 0 : b.engineMass(gear))) / share / share;
    const double resistance = b.resistance(v);
    const double free = (b.forceOf(torque, v, gear) / share - resistance) / mass;
    double grip = b.grip(v);
    if (std::isfinite(grip)) {
      const double e = leftOver(piece, v), contact = b.mass() * grip + resistance;
      if (contact > resistance)
        grip = resistance > 0 ? e * (contact - resistance) / b.mass() : (e * contact - resistance) / b.mass();
    }
    return std::min({free, grip, b.lift(v)});
  }
  double coasting(const Piece& piece, double v) const {
    const SecondOpinion& b = piece.bike;
    const double share = rolled(piece, v);
    return -b.resistance(v) / (b.coastingMass() - b.rearMass() + b.rearMass() / share / share);
  }
  static double slowing(const Piece& piece, double v) {
    const double resistance = piece.stock.resistance(v) / piece.stock.mass(), e = leftOver(piece, v);
    return resistance < 0 ? e * (piece.brakes + resistance) : e * piece.brakes + resistance;
  }

  // ---- steps ----

  template <class A>
  static State stepped(const A& a, const State& from, double dt) {
    boost::numeric::odeint::runge_kutta_dopri5<State> stepper;
    State to = from;
    stepper.do_step([&](const State& s, State& d, double) { d = {s[1], a(s[1])}; }, to, 0.0, dt);
    return to;
  }
  /// One step, or the part of it up to where `what` first says so; how long it took.
  template <class A, class Event>
  static double advance(State& now, const A& a, double dt, const Event& happens) {
    const State whole = stepped(a, now, dt);
    if (!happens(whole)) {
      now = whole;
      return dt;
    }
    double low = 0, high = dt;
    for (int i = 0; i < 50; ++i) {
      const double middle = (low + high) / 2;
      (happens(stepped(a, now, middle)) ? high : low) = middle;
    }
    now = stepped(a, now, high);
    return high;
  }

  // ---- the allowed speed ----

  void allow() {
    double after = closed_ ? pieces_.front().most : kFast;
    for (std::size_t i = pieces_.size(); i-- > 0;) {
      Piece& piece = pieces_[i];
      piece.exit = std::min(piece.most, after);
      piece.braking = {{0, piece.exit, 0}};
      State now{0, piece.exit};
      double time = 0;
      const auto ends = [&](const State& s) {
        return s[0] >= piece.length || s[1] >= piece.most * (1 - 1e-10);
      };
      while (!ends(now)) {
        time += advance(
            now, [&](double v) { return slowing(piece, std::min(v, piece.most)); }, kStep / 4, ends);
        piece.braking.push_back({now[0], now[1], time});
      }
      piece.entry = now[1];
      piece.held = std::max(0.0, piece.length - now[0]);
      piece.time = piece.held / piece.entry + time;
      after = piece.entry;
    }
    double before = closed_ ? pieces_.back().exit : kFast;
    for (Piece& piece : pieces_) {
      piece.rises = piece.entry > before * (1 + 1e-9);
      before = piece.exit;
    }
  }
  static double allowedAt(const Piece& piece, double metres) {
    if (metres <= piece.held) return piece.entry;
    const double left = piece.length - metres;
    const auto above = std::lower_bound(piece.braking.begin(), piece.braking.end(), left,
                                        [](const Node& node, double x) { return node.left < x; });
    if (above == piece.braking.begin()) return piece.exit;
    if (above == piece.braking.end()) return piece.entry;
    const Node &a = *(above - 1), &b = *above;
    return std::sqrt(std::lerp(a.mps * a.mps, b.mps * b.mps, (left - a.left) / (b.left - a.left)));
  }
  static double timeFrom(const Piece& piece, double metres, double v) {
    if (metres < piece.held) return (piece.held - metres) / piece.entry + piece.braking.back().time;
    const auto above = std::lower_bound(piece.braking.begin(), piece.braking.end(), v,
                                        [](const Node& node, double x) { return node.mps < x; });
    if (above == piece.braking.begin()) return 0;
    if (above == piece.braking.end()) return piece.braking.back().time;
    const Node &a = *(above - 1), &b = *above;
    return std::lerp(a.time, b.time, (v - a.mps) / (b.mps - a.mps));
  }
  /// A speed as good as the allowed one.
  static bool meets(const Piece& piece, const State& s) {
    return s[1] >= allowedAt(piece, std::min(s[0], piece.length)) * (1 - kAsGoodAs);
  }

  // ---- pulls ----

  What pullIn(std::size_t gear, bool slips, std::optional<double> leave, Place& at) const {
    const Piece& piece = pieces_[at.piece];
    State now{at.metres, at.mps};
    bool over = false;
    const auto a = [&](double v) { return acceleration(piece, std::max(v, 0.0), gear, slips, over); };
    // A bike that falls away from a bend's own speed does not meet it.
    const auto met = [&](const State& s) { return meets(piece, s) && (s[0] > piece.held || a(s[1]) >= 0); };
    const auto done = [&](What what) {
      at = {at.time, at.piece, now[0], now[1]};
      return what;
    };
    bool first = true;
    for (int steps = 0; steps < 1000000; ++steps) {
      over = !slips && rpm(piece, now[1], gear) > limit_ * (1 + 1e-9);
      if (now[0] >= piece.length * (1 - 1e-13)) return done(What::Piece);
      if (leave && rpm(piece, now[1], gear) >= *leave * (1 - 1e-11)) return done(What::Turns);
      if (!first && met(now)) return done(What::Met);
      if (now[1] >= piece.most * (1 - kAsGoodAs) && a(now[1]) >= 0) return done(What::Met);
      if (now[1] < 1e-4 && a(now[1]) <= 0) return done(What::Stop);
      first = false;
      const double turns = rpm(piece, now[1], gear);
      if (!slips && std::abs(turns - limit_) <= 1e-9 * limit_ && a(now[1] * (1 - 1e-8)) > 0) {
        // At the limiter the speed stays.
        double until = piece.length;
        if (now[1] > piece.exit) {
          double low = now[0], high = piece.length;
          for (int i = 0; i < 60; ++i) {
            const double middle = (low + high) / 2;
            (meets(piece, {middle, now[1]}) ? high : low) = middle;
          }
          until = high;
        }
        at.time += (until - now[0]) / now[1];
        now[0] = until;
        return done(now[1] > piece.exit ? What::Met : What::Piece);
      }
      const bool below = turns < limit_ * (1 - 1e-9);
      const auto happens = [&](const State& s) {
        const double n = rpm(piece, s[1], gear);
        return s[0] >= piece.length || s[1] <= 0 || met(s) || (leave && n >= *leave) ||
               (!slips && below && n >= limit_) || (over && n <= limit_);
      };
      // Where the bend leaves next to nothing along the road, in shorter steps.
      const double step = now[1] > 0.99 * piece.most ? kStep / 20 : kStep;
      at.time += advance(now, a, step, happens);
    }
    throw std::runtime_error("the lap opinion does not end");
  }

  What pull(std::size_t gear, bool slips, std::optional<double> leave, Place& at) const {
    for (;;) {
      const What what = pullIn(gear, slips, leave, at);
      if (what != What::Piece) return what;
      if (at.piece + 1 == pieces_.size()) return What::Lap;
      at = {at.time, at.piece + 1, 0, at.mps};
      if (at.mps >= pieces_[at.piece - 1].exit * (1 - kAsGoodAs)) return What::Met;
    }
  }

  What coast(Place& at) const {
    double left = shiftTime_;
    while (left > 1e-14) {
      const Piece& piece = pieces_[at.piece];
      State now{at.metres, at.mps};
      const auto a = [&](double v) { return coasting(piece, std::max(v, 0.0)); };
      const auto happens = [&](const State& s) {
        return s[0] >= piece.length || s[1] <= 0 || meets(piece, s);
      };
      const double took = advance(now, a, std::min(kStep, left), happens);
      left -= took;
      at = {at.time + took, at.piece, now[0], now[1]};
      if (now[1] <= 0) return What::Stop;
      if (now[0] >= piece.length) {
        if (at.piece + 1 == pieces_.size()) return What::Lap;
        at = {at.time, at.piece + 1, 0, at.mps};
        if (at.mps >= pieces_[at.piece - 1].exit * (1 - kAsGoodAs)) return What::Met;
      } else if (meets(piece, now)) {
        return What::Met;
      }
    }
    return What::Time;
  }

  /// How a pull ends that shifts so often; nothing where it may not.
  std::optional<What> ridden(std::size_t gear, bool slips, int shifts, Place& at) const {
    if (slips)
      if (const What what = pull(gear, true, launchRpm_, at); what != What::Turns)
        return shifts == 0 ? std::optional(what) : std::nullopt;
    for (;; ++gear, --shifts) {
      std::optional<double> leave;
      if (shifts > 0) leave = at.mps <= stalls_[gear] ? bestRpm_[gear] : shiftRpm_[gear];
      const What what = pull(gear, false, leave, at);
      if (what != What::Turns) return shifts == 0 ? std::optional(what) : std::nullopt;
      if (const What coasted = coast(at); coasted != What::Time)
        return shifts == 1 ? std::optional(coasted) : std::nullopt;
      const Piece& piece = pieces_[at.piece];
      if (rpm(piece, at.mps, gear + 1) >= limit_ || !(acceleration(piece, at.mps, gear + 1, false) > 0))
        return std::nullopt;
    }
  }

  /// Seconds to the end of the lap of a pull that begins at a joint.
  double startsPull(std::size_t joint, double mps) const {
    const Piece& piece = pieces_[joint];
    struct Way {
      std::size_t gear;
      bool slips;
    };
    std::vector<Way> ways;
    const std::size_t gears = piece.bike.gears();
    if (rpm(piece, mps, 0) < launchRpm_) ways.push_back({0, true});
    std::optional<std::size_t> above;
    for (std::size_t g = 0; g < gears && mps > 0; ++g) {
      const double turns = rpm(piece, mps, g), most = g + 1 < gears ? shiftRpm_[g] : limit_;
      if (turns >= lowest_ && turns <= most) ways.push_back({g, false});
      if (turns >= idle_) above = g;
    }
    if (ways.empty()) ways.push_back(above ? Way{*above, false} : Way{0, true});
    double best = kNever;
    for (const Way& way : ways)
      for (int shifts = 0; way.gear + std::size_t(shifts) < gears; ++shifts) {
        Place at{0, joint, 0, mps};
        const auto what = ridden(way.gear, way.slips, shifts, at);
        if (!what || *what == What::Stop) continue;
        double time = at.time;
        if (*what != What::Lap) {
          if (at.metres > 0 || at.piece == joint) {
            time += timeFrom(pieces_[at.piece], at.metres, at.mps);
            time += onAllowed(at.piece + 1);
          } else {
            time += onAllowed(at.piece);
          }
        }
        if (time < best) {
          best = time;
          endsAt_[{joint, mps}] = *what == What::Lap ? at.mps : pieces_.back().exit;
          nextOf_[{joint, mps}] = *what == What::Lap                   ? pieces_.size()
                                  : at.metres > 0 || at.piece == joint ? at.piece + 1
                                                                       : at.piece;
        }
      }
    return best;
  }

  bool holds(const Piece& piece, double v) const {
    for (std::size_t g = 0; g < piece.bike.gears(); ++g) {
      const double turns = rpm(piece, v, g);
      double force = turns > limit_ ? 0.0 : piece.bike.forceOf(piece.bike.torque(turns), v, g);
      if (g == 0 && turns < launchRpm_)
        force = std::max(force, piece.bike.forceOf(piece.bike.torque(launchRpm_), v, g));
      if (turns <= limit_ && force / rolled(piece, v) >= piece.bike.resistance(v)) return true;
    }
    return false;
  }
  bool begins(std::size_t joint) const {
    const Piece& piece = pieces_[joint];
    return piece.rises || (piece.held > 0 && !holds(piece, piece.entry));
  }
  double speedAt(std::size_t joint) const { return joint > 0 ? pieces_[joint - 1].exit : pieces_[0].entry; }

  /// Seconds to the end of the lap from a joint on the allowed speed.
  double onAllowed(std::size_t joint) const {
    double time = 0;
    for (; joint < pieces_.size(); ++joint) {
      if (begins(joint)) {
        const auto [known, isNew] = known_.try_emplace(joint, 0.0);
        if (isNew) {
          const double rest = startsPull(joint, speedAt(joint));
          known_[joint] = rest;
          return time + rest;
        }
        return time + known->second;
      }
      time += pieces_[joint].time;
    }
    return time;
  }

  /// The speed at the end of the lap that was chosen.
  double endOf(double start) const {
    std::size_t joint = 0;
    double mps = start;
    bool pulls = start < pieces_.front().entry * (1 - 1e-9);
    for (;;) {
      while (!pulls && joint < pieces_.size() && !begins(joint)) ++joint;
      if (joint >= pieces_.size()) return pieces_.back().exit;
      if (!pulls) mps = speedAt(joint);
      pulls = false;
      const std::size_t next = nextOf_.at({joint, mps});
      if (next >= pieces_.size()) return endsAt_.at({joint, mps});
      joint = next;
    }
  }

  std::vector<double> shiftRpm_, bestRpm_, stalls_;
  double launchRpm_;
  bool closed_;
  double startMps_, crown_ = 0, idle_ = 0, limit_ = 0, lowest_ = 0, shiftTime_ = 0;
  std::vector<Piece> pieces_;
  mutable std::map<std::size_t, double> known_;
  mutable std::map<std::pair<std::size_t, double>, double> endsAt_;
  mutable std::map<std::pair<std::size_t, double>, std::size_t> nextOf_;
};

}  // namespace layshaft::test
