// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/document/season_study.h"

#include <mutex>
#include <utility>

namespace layshaft::ui {

/// The ladder of a track, made by the first part that asks: it takes many laps, too many for the window.
class SeasonStudy::LadderOfTrack {
 public:
  LadderOfTrack(LadderInput input, Track track) : input_(std::move(input)), track_(std::move(track)) {}

  const LapLadder& ladder() {
    std::call_once(once_, [this] { ladder_.emplace(input_, track_); });
    return *ladder_;
  }

 private:
  LadderInput input_;
  Track track_;
  std::once_flag once_;
  std::optional<LapLadder> ladder_;
};

void SeasonStudy::start(const SeasonInput& input, const LadderRange& range,
                        const std::optional<PairTeeth>& another) {
  std::vector<Part> parts;
  ladders_.clear();
  for (std::size_t track = 0; track < input.tracks.size(); ++track) {
    const auto shared = std::make_shared<LadderOfTrack>(input.ladder, input.tracks[track]);
    ladders_.push_back(shared);
    const auto add = [&](const LadderRange& some) {
      parts.push_back([this, shared, track, some](const Stopped& stopped) -> Delivery {
        const LapLadder& ladder = shared->ladder();
        const SeasonPart part{.track = track,
                              .rows = ladder.rows(some, LapLadder::Bands::None, stopped),
                              .stockS = ladder.stockS(),
                              .refusal = ladder.allowed().refusal()};
        return [this, part] { emit partReady(part); };
      });
    };
    for (int front = range.fewestFront; front <= range.mostFront; ++front)
      add({front, front, range.fewestRear, range.mostRear});
    if (another) add({another->front, another->front, another->rear, another->rear});
  }
  BackgroundWork::start(parts);
}

void SeasonStudy::askBands(const std::vector<std::vector<SeasonDifference>>& sums) {
  BackgroundWork::start({[this, ladders = ladders_, sums](const Stopped& stopped) -> Delivery {
    std::vector<std::optional<double>> bandsS;
    for (const auto& differences : sums) {
      std::optional<double>& all = bandsS.emplace_back(0.0);
      for (const SeasonDifference& one : differences) {
        if (stopped()) return {};
        const auto bandS = ladders[one.track]->ladder().bandS(one.from, one.to);
        all = all && bandS ? std::optional(*all + *bandS) : std::nullopt;
      }
    }
    return [this, bandsS] { emit bandsReady(bandsS); };
  }});
}

}  // namespace layshaft::ui
