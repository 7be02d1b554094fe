// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <functional>
#include <set>
#include <string>

#include "ui/document/season_study.h"
#include "ui/pages/figures_table.h"
#include "ui/pages/lap_view.h"
#include "ui/pages/progress_row.h"
#include "ui/words/season_words.h"

namespace layshaft::ui {

/// All tracks of the bike at once: each one's quickest pair, and the one pair that loses least over those
/// that are ticked.
class SeasonView : public LapView {
  Q_OBJECT
 public:
  explicit SeasonView(BackgroundLane& lane, QWidget* parent = nullptr);

  /// What the laps are worked out from, once per change of it.
  void use(SeasonInput input);

  QWidget* mainPart() override { return table_; }
  std::vector<QStringList> numbers() const override;
  QString csv() const override;
  QVariantMap state() const override;
  void restore(const QVariantMap& state) override;

 signals:
  void pairChosen(int frontTeeth, int rearTeeth);
  void trackChosen(const std::string& name);

 protected:
  void build() override;
  void showPlan() override;
  void showEvent(QShowEvent* event) override;
  void hideEvent(QHideEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;

 private:
  /// What the laps in view, or those under way, are worked out from.
  struct Question {
    SeasonInput input;
    LadderRange range;
    std::optional<PairTeeth> another;  ///< a proposal outside of the range
    bool operator==(const Question&) const = default;
  };

  FiguresTable* makeTable(const QString& name, int columns);
  void addAction(QWidget& to, const QString& text, const QList<QKeySequence>& keys,
                 const std::function<void()>& act);
  QLayout* makeBar();
  void watchStudy();
  Question question() const;
  void work();
  std::string nameOnBike(const std::string& track) const;
  bool isLeftOut(const std::string& track) const { return leftOut_.count(nameOnBike(track)) > 0; }
  SeasonBook bookOf(const Question& question) const;
  void add(const SeasonPart& part);
  void reckon();
  void askBands();
  void present();
  void placeTables();
  void choose(int track, bool chosen);
  void toggleTrack();
  void sayWhatIsChosen();
  bool outdated() const;
  std::optional<std::size_t> trackAtCursor() const;
  std::optional<PairTeeth> pairAtCursor(const FiguresTable& table) const;
  void proposeFrom(const FiguresTable& table);
  void ride();

  SeasonStudy study_;
  std::optional<SeasonInput> input_;
  std::optional<Question> asked_, shown_;  ///< of the book that comes, and the one in view
  SeasonBook book_, coming_;
  bool askingBands_ = false;       ///< that is what is under way
  std::set<std::string> leftOut_;  ///< tracks that are not part of the season, by bike and name
  PairTeeth stock_{0, 0}, proposed_{0, 0};
  QLabel* words_ = nullptr;
  FiguresTable *table_ = nullptr, *pairs_ = nullptr;
  FiguresTable* chosenIn_ = nullptr;  ///< the one of them whose cursor moved last
  QBoxLayout* tables_ = nullptr;
  ProgressRow* progress_ = nullptr;
  QPushButton *propose_ = nullptr, *ride_ = nullptr;
};

}  // namespace layshaft::ui
