// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>
#include <QThreadPool>
#include <atomic>
#include <memory>
#include <vector>

#include "core/study/ladder.h"

namespace layshaft::ui {

/// Works a ladder out on threads of its own. Rows come in as they are ready; a new start or a cancel drops
/// what is still under way.
class LadderStudy : public QObject {
  Q_OBJECT
 public:
  explicit LadderStudy(QObject* parent = nullptr);
  ~LadderStudy() override;

  void start(const LadderInput& input, const LadderRange& range);
  void cancel();
  bool running() const { return partsLeft_ > 0; }

 signals:
  void rowsReady(const std::vector<layshaft::LadderRow>& rows);
  void progressed(int done, int all);
  void finished();
  void cancelled();

 private:
  QThreadPool pool_;
  std::shared_ptr<std::atomic<bool>> stop_;
  int generation_ = 0;
  int parts_ = 0, partsLeft_ = 0;
};

}  // namespace layshaft::ui
