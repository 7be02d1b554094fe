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

Stop revLimit(const Strip& strip) {
  constexpr const char* kKey = "bike.engine.rev_limit_rpm";
  auto* box = wholeBox(limits::kRevLimitRpm, 100, QStringLiteral("88 888"));
  box->setGroupSeparatorShown(true);
  return {
      .field = kKey,
      .label = EngineStops::tr("Rev &limit"),
      .explanation = EngineStops::tr(
          "Engine speed where the limiter cuts in, rpm. Part of the bike: both setups share it."),
      .editor = box,
      .unit = unitOf(Quantity::EngineSpeed),
      .show = [box](const Shown& s) { showValue(*box, static_cast<int>(std::lround(s.engine.revLimitRpm))); },
      .under = sharedNote,
      .edit =
          [&strip, box] {
            editEngine(
                strip, kKey, EngineStops::tr("rev limit"),
                [](const Engine& engine) { return number(engine.revLimitRpm, 0); },
                static_cast<double>(box->value()));
          }};
}

void showShiftPoint(WholeBox& box, const Shown& s) {
  const QSignalBlocker quiet(box);  // another limit, another range: not an edit
  const int limit = static_cast<int>(s.engine.revLimitRpm);
  box.setMaximum(limit);
  box.setStart(limit);
  box.setNoneWords(s.plan.shiftPoints == ShiftPointSource::Best ? EngineStops::tr("Best")
                                                                : EngineStops::tr("Limit"));
  std::optional<int> rpm;
  if (s.engine.shiftRpm) rpm = static_cast<int>(std::lround(*s.engine.shiftRpm));
  showValue(box, box.valueFor(rpm));
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
                    [](const Engine& engine) {
                      return engine.shiftRpm ? number(*engine.shiftRpm, 0) : EngineStops::tr("none");
                    },
                    rpm ? FieldValue(static_cast<double>(*rpm)) : FieldValue());
              }};
}

}  // namespace

Section engineSection(Strip& strip) {
  return {.stops = {revLimit(strip), shiftPoint(strip)}};
}

}  // namespace layshaft::ui
