// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QCoreApplication>
#include <QString>
#include <optional>

#include "core/bike/gears_taken.h"
#include "core/bike/setup.h"
#include "core/limits.h"
#include "core/problem.h"
#include "ui/document/document.h"
#include "ui/words/units_shown.h"

/// The verbs that change a setup of the document. Each is one named, undoable edit, and each keeps what
/// follows stock following: a proposed value equal to stock's is not written down, and a part takes what
/// belongs to it along.
namespace layshaft::ui {

enum class Side { Stock, Proposed };

class SetupEdits {
  Q_DECLARE_TR_FUNCTIONS(SetupEdits)
 public:
  SetupEdits(Document& document, Side side) : document_(document), side_(side) {}

  Setup current() const;

  std::optional<Problem> setFrontTeeth(int teeth);
  std::optional<Problem> setRearTeeth(int teeth);
  std::optional<Problem> setPair(int frontTeeth, int rearTeeth);  ///< one step of the history
  std::optional<Problem> setTyre(const QString& size);
  /// With the teeth that make the ratio, if they are known. Those known before go with another ratio.
  std::optional<Problem> setPrimaryRatio(double ratio, const std::optional<GearTeeth>& teeth = std::nullopt);
  std::optional<Problem> setGearRatio(std::size_t gearIndex, double ratio,
                                      const std::optional<GearTeeth>& teeth = std::nullopt);
  std::optional<Problem> setGearCount(
      std::size_t count);  ///< adds gears a little taller than the last, or drops the last
  /// None: estimated from the tyre size. The history tells it in the units shown.
  std::optional<Problem> setRollout(std::optional<double> rolloutMm, const UnitsShown& units = UnitsShown());
  std::optional<Problem> setRollingAllowance(double percent);
  std::optional<Problem> setChainSize(std::optional<ChainSize> size);
  std::optional<Problem> setLinks(std::optional<int> links);
  std::optional<Problem> setBeltTeeth(std::optional<int> teeth);
  std::optional<Problem> setFinalDrive(FinalDrive drive);

  /// Proposes another setup as a whole, under a name of its own in the history.
  static void propose(Document& document, const QString& title, const SetupChange& change);
  /// Proposes gears of the spares box in stock's gearbox, or in the proposal's where that has others, with a
  /// pair: one step of the history.
  static std::optional<Problem> proposeGearbox(Document& document, const GearsTaken& gears, int frontTeeth,
                                               int rearTeeth);
  /// The proposal as it was before anyone touched it.
  static void clearProposal(Document& document);
  /// Keeps the proposal, with another pair, as a pin of that name; says why if there is no room for one more.
  static std::optional<QString> pin(Document& document, const QString& name, int frontTeeth, int rearTeeth);
  static void removePin(Document& document, std::size_t index);
  /// The proposal becomes stock; nothing is proposed any more. A speedometer that was not set anew reads on
  /// as it did with the proposal, as far as the limits of what it may read high allow.
  static void makeProposalStock(Document& document, bool speedometerSetAnew = true);

 private:
  /// `field` is the same in every language: by it the history knows what belongs to one step.
  std::optional<Problem> exchangeTeeth(const char* field, const QString& title, int frontTeeth, int rearTeeth,
                                       const std::function<QString(const Setup&)>& shown);
  /// Runs `set` on stock's Setup or on the proposal's SetupChange: their members have the same names.
  template <class Set>
  std::optional<Problem> edit(const char* field, const QString& title,
                              const std::function<QString(const Setup&)>& shown, Set set);
  /// The same for ratios of gears: whatever follows stock's keeps no teeth that make another one.
  template <class Set>
  std::optional<Problem> editRatios(const char* field, const QString& title,
                                    const std::function<QString(const Setup&)>& shown, Set set);
  EditName nameOf(const char* field, const QString& title,
                  const std::function<QString(const Setup&)>& shown) const;
  std::optional<Problem> outside(double value, const Limit& limit, const char* key) const;
  /// A part's problem with the setup's key of the part in front.
  Problem placed(const char* key, Problem problem) const;
  std::string keyOf(const std::string& key) const;  ///< with the setup's own in front

  Document& document_;
  Side side_;
};

}  // namespace layshaft::ui
