// SPDX-License-Identifier: GPL-3.0-or-later
#include <QCoreApplication>
#include <cmath>

#include "core/profile_file/access.h"
#include "ui/editors/stop.h"
#include "ui/words/numbers.h"

namespace layshaft::ui {
namespace {

struct EngineStops {
  Q_DECLARE_TR_FUNCTIONS(EngineStops)
};

Under sharedNote(const Shown&) {
  return {.text = EngineStops::tr("Both setups"), .note = true};
}

/// The engine is the bike's: an edit of it is no edit of a setup.
void editEngine(const Strip& strip, const char* key, const QString& title,
                const std::function<QString(const Engine&)>& shown, const FieldValue& value) {
  strip.report(strip.document.edit({.field = QString::fromUtf8(key),
                                    .title = title,
                                    .shown = [shown](const Profile& p) { return shown(p.bike.engine); }},
                                   [&](Profile& p) { setField(p, key, value); }));
}

std::optional<int> wholeRpm(const std::optional<double>& rpm) {
  return rpm ? std::optional(static_cast<int>(std::lround(*rpm))) : std::nullopt;
}

QString rpmWords(const std::optional<double>& rpm) {
  return rpm ? number(*rpm, 0) : EngineStops::tr("none");
}

Stop revLimit(const Strip& strip) {
  constexpr const char* kKey = "bike.engine.rev_limit_rpm";
  constexpr int kStart = 10000;  // a start to edit from
  auto* box =
      openWholeBox(limits::kRevLimitRpm, 100, QStringLiteral("88 888"), EngineStops::tr("Open"), kStart);
  box->setGroupSeparatorShown(true);
  return {
      .field = kKey,
      .label = EngineStops::tr("Rev &limit"),
      .explanation = EngineStops::tr(
          "Engine speed where the limiter cuts in, rpm. Part of the bike: both setups share it. Empty: not "
          "known, and neither are speeds at the limit, pull and acceleration."),
      .editor = box,
      .unit = unitOf(Quantity::EngineSpeed),
      .show = [box](const Shown& s) { showValue(*box, box->valueFor(wholeRpm(s.engine.revLimitRpm))); },
      .under = sharedNote,
      .edit =
          [&strip, box] {
            const auto rpm = box->optionalValue();
            editEngine(
                strip, kKey, EngineStops::tr("rev limit"),
                [](const Engine& engine) { return rpmWords(engine.revLimitRpm); },
                rpm ? FieldValue(static_cast<double>(*rpm)) : FieldValue());
          }};
}

void showShiftPoint(WholeBox& box, const Shown& s) {
  const QSignalBlocker quiet(box);  // another limit, another range: not an edit
  const int limit = static_cast<int>(s.engine.revLimitRpm.value_or(limits::kShiftRpm.high));
  box.setMaximum(limit);
  box.setStart(limit);
  box.setNoneWords(s.plan.shiftPoints == ShiftPointSource::Best ? EngineStops::tr("Best")
                                                                : EngineStops::tr("Limit"));
  showValue(box, box.valueFor(wholeRpm(s.engine.shiftRpm)));
}

Stop shiftPoint(const Strip& strip) {
  constexpr const char* kKey = "bike.engine.shift_rpm";
  auto* box = openWholeBox(limits::kShiftRpm, 100, QStringLiteral("88 888"), EngineStops::tr("Limit"),
                           static_cast<int>(limits::kRevLimitRpm.low));
  box->setGroupSeparatorShown(true);
  return {.field = kKey,
          .label = EngineStops::tr("&Shift at"),
          .explanation =
              EngineStops::tr("Engine speed at which you shift up, rpm. Empty: where the next gear pulls as "
                              "hard, if curve, masses and drag are known, else at the rev limit."),
          .editor = box,
          .unit = unitOf(Quantity::EngineSpeed),
          .show = [box](const Shown& s) { showShiftPoint(*box, s); },
          .under = sharedNote,
          .edit =
              [&strip, box] {
                const auto rpm = box->optionalValue();
                editEngine(
                    strip, kKey, EngineStops::tr("shift point"),
                    [](const Engine& engine) { return rpmWords(engine.shiftRpm); },
                    rpm ? FieldValue(static_cast<double>(*rpm)) : FieldValue());
              }};
}

}  // namespace

Section engineSection(Strip& strip) {
  return {.stops = {revLimit(strip), shiftPoint(strip)}};
}

}  // namespace layshaft::ui
