// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/document/background_lane.h"

#include <sys/resource.h>

#include <algorithm>
#include <atomic>
#include <exception>
#include <utility>

namespace layshaft::ui {
namespace {

/// Turning a spin box goes before what the calling thread does from now on. The toolkit's own priorities do
/// nothing under the system's usual scheduling; here a niceness belongs to a thread.
void yieldToTheWindow() {
  constexpr int kNice = 10;  // common practice for work that nobody waits for at every step
  ::setpriority(PRIO_PROCESS, 0, kNice);
}

/// One core stays the window's.
std::size_t threadCount() {
  return std::max(2u, std::thread::hardware_concurrency()) - 1;
}

}  // namespace

// Members go in reverse order: the threads are told to stop and joined first.
BackgroundLane::~BackgroundLane() = default;

void BackgroundLane::add(std::function<void()> task) {
  {
    const std::lock_guard lock(mutex_);
    waiting_.push_back(std::move(task));
  }
  startThreads();
  added_.notify_one();
}

void BackgroundLane::addBehind(std::function<void()> task) {
  {
    const std::lock_guard lock(mutex_);
    waiting_.push_back(std::move(task));
  }
  added_.notify_one();
}

void BackgroundLane::startThreads() {
  if (!threads_.empty()) return;
  for (std::size_t i = 0; i < threadCount(); ++i)
    threads_.emplace_back([this](const std::stop_token& stop) { takeTasks(stop); });
}

void BackgroundLane::takeTasks(const std::stop_token& stop) {
  yieldToTheWindow();
  while (true) {
    std::unique_lock lock(mutex_);
    if (!added_.wait(lock, stop, [this] { return !waiting_.empty(); })) return;
    const std::function<void()> task = std::move(waiting_.front());
    waiting_.pop_front();
    lock.unlock();
    task();
  }
}

/// What a part of a request came to.
struct BackgroundWork::Outcome {
  Delivery delivery;
  QString failure;  ///< empty if there is none
};

/// What the parts of a request share with the object that started it.
struct BackgroundWork::Request {
  std::atomic<bool> stopped = false;
  std::mutex mutex;
  std::deque<Part> parts;           ///< not yet begun; guarded by the mutex
  BackgroundWork* owner = nullptr;  ///< null once nobody waits; guarded by the mutex
  std::deque<Outcome> outcomes;     ///< not yet collected; guarded by the mutex
};

BackgroundWork::BackgroundWork(BackgroundLane& lane, QObject* parent) : QObject(parent), lane_(lane) {
  connect(this, &BackgroundWork::partOver, this, &BackgroundWork::collect, Qt::QueuedConnection);
}

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
  latest_->owner = this;  // no part knows of it yet
  all_ = left_ = static_cast<int>(parts.size());
  if (parts.empty()) {
    emit finished();
    return;
  }
  latest_->parts.assign(parts.begin(), parts.end());
  for (std::size_t i = 0; i < std::min(threadCount(), parts.size()); ++i)
    lane_.add([&lane = lane_, request = latest_] { takeTurn(lane, request); });
}

/// A part of a request on a thread of the lane; the next one waits for its turn.
void BackgroundWork::takeTurn(BackgroundLane& lane, const std::shared_ptr<Request>& request) {
  const auto stopped = [&request] { return request->stopped.load(); };
  Part part;
  {
    const std::lock_guard lock(request->mutex);
    if (stopped() || request->parts.empty()) return;
    part = std::move(request->parts.front());
    request->parts.pop_front();
  }
  Outcome outcome;
  try {
    outcome.delivery = part(stopped);
  } catch (const std::exception& error) {
    outcome.failure = QString::fromUtf8(error.what());
  } catch (...) {
    outcome.failure = QStringLiteral("?");
  }
  const std::lock_guard lock(request->mutex);
  if (!request->owner) return;
  request->outcomes.push_back(std::move(outcome));
  emit request->owner->partOver();
  if (!request->parts.empty()) lane.addBehind([&lane, request] { takeTurn(lane, request); });
}

void BackgroundWork::cancel() {
  if (!running()) return;
  drop();
  emit cancelled();
}

// One outcome each time, so that keys and mouse are heard in between.
void BackgroundWork::collect() {
  const std::shared_ptr<Request> request = latest_;
  Outcome outcome;
  {
    const std::lock_guard lock(request->mutex);
    if (request->outcomes.empty()) return;
    outcome = std::move(request->outcomes.front());
    request->outcomes.pop_front();
  }
  arrived(request, outcome);
}

void BackgroundWork::arrived(const std::shared_ptr<Request>& request, const Outcome& outcome) {
  // Whoever gets a result or a signal may start anew or cancel: then nothing more is said of this request.
  const auto over = [&] { return request != latest_ || !running(); };
  if (over()) return;
  if (!outcome.failure.isEmpty()) {
    drop();
    emit failed(tr("The calculation failed: %1").arg(outcome.failure));
    return;
  }
  if (outcome.delivery) outcome.delivery();
  if (over()) return;
  const int done = all_ - --left_;
  const bool last = left_ == 0;
  emit progressed(done, all_);
  if (last && request == latest_ && left_ == 0) emit finished();
}

}  // namespace layshaft::ui
