// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/ladder_study.h"

#include <QThread>
#include <algorithm>

namespace layshaft::ui {

LadderStudy::LadderStudy(QObject* parent)
    : QObject(parent), stop_(std::make_shared<std::atomic<bool>>(false)) {
  pool_.setMaxThreadCount(std::max(1, QThread::idealThreadCount()));
  pool_.setThreadPriority(QThread::LowPriority);  // turning a spin box goes first
}

LadderStudy::~LadderStudy() {
  *stop_ = true;
  pool_.waitForDone();
}

void LadderStudy::start(const LadderInput& input, const LadderRange& range) {
  *stop_ = true;
  pool_.clear();
  stop_ = std::make_shared<std::atomic<bool>>(false);
  const int generation = ++generation_;
  parts_ = partsLeft_ = std::max(0, range.mostFront - range.fewestFront + 1);
  if (partsLeft_ == 0) {
    emit finished();
    return;
  }
  const auto ladder = std::make_shared<const Ladder>(input);
  for (int front = range.fewestFront; front <= range.mostFront; ++front)
    pool_.start([this, ladder, generation, stop = stop_, front, range] {
      auto rows =
          ladder->rows({front, front, range.fewestRear, range.mostRear}, [&] { return stop->load(); });
      if (*stop) return;
      // Delivered in the window's own thread; this object waits for the pool before it goes.
      QMetaObject::invokeMethod(this, [this, generation, done = std::move(rows)] {
        if (generation != generation_ || partsLeft_ == 0) return;
        --partsLeft_;
        emit rowsReady(done);
        emit progressed(parts_ - partsLeft_, parts_);
        if (partsLeft_ == 0) emit finished();
      });
    });
}

void LadderStudy::cancel() {
  if (!running()) return;
  *stop_ = true;
  pool_.clear();
  ++generation_;
  partsLeft_ = 0;
  emit cancelled();
}

}  // namespace layshaft::ui
