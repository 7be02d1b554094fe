// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/document/background_lane.h"

#include <sys/resource.h>

#include <QThread>
#include <algorithm>
#include <atomic>
#include <exception>

namespace layshaft::ui {
namespace {

/// Turning a spin box goes before what the calling thread does from now on. The toolkit's own priorities do
/// nothing under the system's usual scheduling; here a niceness belongs to a thread.
void yieldToTheWindow() {
  constexpr int kNice = 10;  // common practice for work that nobody waits for at every step
  ::setpriority(PRIO_PROCESS, 0, kNice);
}

}  // namespace

BackgroundLane::BackgroundLane() {
  pool_.setMaxThreadCount(std::max(1, QThread::idealThreadCount()));
}

BackgroundLane::~BackgroundLane() {
  pool_.waitForDone();
}

/// What the parts of a request share with the object that started it.
struct BackgroundWork::Request {
  std::atomic<bool> stopped = false;
  std::mutex mutex;
  BackgroundWork* owner = nullptr;  ///< null once nobody waits; guarded by the mutex
};

BackgroundWork::BackgroundWork(BackgroundLane& lane, QObject* parent) : QObject(parent), lane_(lane) {}

BackgroundWork::~BackgroundWork() {
  drop();
}

void BackgroundWork::drop() {
  left_ = 0;
  if (!latest_) return;
  latest_->stopped = true;
  const std::lock_guard lock(latest_->mutex);
  latest_->owner = nullptr;
}

void BackgroundWork::start(const std::vector<Part>& parts) {
  drop();
  latest_ = std::make_shared<Request>();
  latest_->owner = this;
  all_ = left_ = static_cast<int>(parts.size());
  if (parts.empty()) {
    emit finished();
    return;
  }
  for (const Part& part : parts)
    lane_.pool_.start([part, request = latest_] {
      yieldToTheWindow();
      const auto stopped = [&request] { return request->stopped.load(); };
      if (stopped()) return;
      Delivery delivery;
      QString failure;
      try {
        delivery = part(stopped);
      } catch (const std::exception& error) {
        failure = QString::fromUtf8(error.what());
      } catch (...) {
        failure = QStringLiteral("?");
      }
      const std::lock_guard lock(request->mutex);
      if (!request->owner) return;
      QMetaObject::invokeMethod(
          request->owner,
          [owner = request->owner, request, delivery, failure] {
            owner->arrived(request, delivery, failure);
          },
          Qt::QueuedConnection);
    });
}

void BackgroundWork::cancel() {
  if (!running()) return;
  drop();
  emit cancelled();
}

void BackgroundWork::arrived(const std::shared_ptr<Request>& request, const Delivery& delivery,
                             const QString& failure) {
  // Whoever gets a result or a signal may start anew or cancel: then nothing more is said of this request.
  const auto over = [&] { return request != latest_ || !running(); };
  if (over()) return;
  if (!failure.isEmpty()) {
    drop();
    emit failed(tr("The calculation failed: %1").arg(failure));
    return;
  }
  if (delivery) delivery();
  if (over()) return;
  const int done = all_ - --left_;
  const bool last = left_ == 0;
  emit progressed(done, all_);
  if (last && request == latest_ && left_ == 0) emit finished();
}

}  // namespace layshaft::ui
