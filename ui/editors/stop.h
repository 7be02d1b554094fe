// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QString>
#include <functional>
#include <optional>
#include <vector>

#include "core/limits.h"
#include "core/plan.h"
#include "ui/document/setup_edits.h"
#include "ui/editors/calm_spin_box.h"
#include "ui/words/units_shown.h"

/// The table that the drive line is made from: one entry per stop, in sections that add up to a ratio.
namespace layshaft::ui {

class RatioBox;

/// What the stops work on, and whom they tell what became of an edit.
struct Strip {
  Document& document;
  Side side = Side::Proposed;
  UnitsShown units{};
  std::function<void(const std::optional<Problem>&)> report{};
  /// Of what an editor itself does not take.
  std::function<void(QWidget&, const QString&)> refuse{};

  SetupEdits edits() const { return SetupEdits(document, side); }
  const Profile& profile() const { return document.profile(); }
  const Setup& stock() const { return document.profile().stock; }
};

/// What is shown at one time. The setups are the document's, which may be a frame ahead of the plan.
struct Shown {
  const Engine& engine;
  const Setup& now;
  const Setup& stock;
  const Plan& plan;
  const SetupPlan& nowPlan;
  const UnitsShown& units;
};

/// What stands under an editor: stock's value and by how much the setup differs from it, or a note where
/// there is no stock of its own.
struct Under {
  QString text;
  QString difference{};  ///< empty while the value follows stock
  bool note = false;
};

/// One stop of the drive line.
struct Stop {
  const char* field;  ///< what it is called in every language
  QString label;      ///< with its mnemonic
  QString explanation;
  QWidget* editor;
  QString spokenName{};  ///< for screen readers and refusals, where the label alone does not tell
  std::function<QString(const UnitsShown&)> unit{};  ///< of its number, if it has one
  std::function<void(const Shown&)> show;
  std::function<Under(const Shown&)> under;
  std::function<void()> edit;
  std::function<void()> backToStock{};          ///< none for what both setups share
  std::function<bool(const Shown&)> isThere{};  ///< always, if there is none

  /// What it is called in a sentence.
  QString name() const;
};

/// Stops that belong together, with the ratio they add up to.
struct Section {
  std::vector<Stop> stops;
  std::function<QString(const Plan&)> sum{};
  /// Stops that come and go with the setup, behind the others: how many there are, and each by its place.
  std::function<std::size_t(const Shown&)> moreCount{};
  std::function<Stop(std::size_t)> more{};
};

// The sections in the order power flows. They keep `strip`, which must outlive them.
Section engineSection(Strip& strip);      ///< rev limit and shift point
Section gearboxSection(Strip& strip);     ///< primary and gears
Section finalDriveSection(Strip& strip);  ///< sprockets, chain or belt
Section wheelSection(Strip& strip);       ///< tyre and rollout

/// The unit of a stop whose number measures that.
std::function<QString(const UnitsShown&)> unitOf(Quantity quantity);
/// A whole number within a limit, as wide as `widest` needs.
WholeBox* wholeBox(const Limit& limit, int step, const QString& widest);
/// The same, that may be left open.
WholeBox* openWholeBox(const Limit& limit, int step, const QString& widest, const QString& openWords,
                       int start);
/// A ratio.
RatioBox* ratioBox(const Limit& limit, const QString& widest);
/// Room for that text and `extra` pixels, whatever is shown.
void fixWidth(QWidget* widget, const QString& widest, int extra);
/// Narrow boxes have no arrows: the arrow keys and the wheel step them, and ten gears still fit.
void narrow(QAbstractSpinBox* box, const QString& widest);

Under wholeUnder(int now, int stock);
Under openWholeUnder(const std::optional<int>& now, const std::optional<int>& stock);
Under ratioUnder(double now, double stock);
/// "1.9 → 2.0", or one number if they read alike.
QString stockTo(const QString& stock, const QString& proposed);

}  // namespace layshaft::ui
