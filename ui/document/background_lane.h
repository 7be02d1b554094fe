// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>
#include <condition_variable>
#include <deque>
#include <functional>
#include <memory>
#include <mutex>
#include <thread>
#include <vector>

namespace layshaft::ui {

/// The threads on which long studies are worked out beside the planner: what is asked for takes turns, a part
/// of each, so that no long study keeps a short one waiting. They are started for the first task. Outlives
/// every `BackgroundWork` on it. Threads and locks are the standard library's, so that the thread sanitizer
/// sees what is handed over; it sees nothing of Qt's.
class BackgroundLane {
 public:
  BackgroundLane() = default;
  /// Waits for what is under way; work that has gone has told its parts to stop.
  ~BackgroundLane();

 private:
  friend class BackgroundWork;
  void add(std::function<void()> task);
  /// The same from a thread of the lane, behind all that waits.
  void addBehind(std::function<void()> task);
  void startThreads();
  void takeTasks(const std::stop_token& stop);

  std::mutex mutex_;
  std::condition_variable_any added_;
  std::deque<std::function<void()>> waiting_;  ///< guarded by the mutex
  std::vector<std::jthread> threads_;          ///< last: they use what is above until they are joined
};

/// One kind of long work. Each start is a request of its own: the latest wins, what an older one still brings
/// is dropped. Signals come in the thread that the object lives in.
class BackgroundWork : public QObject {
  Q_OBJECT
 public:
  /// Asked by a part of the work now and then: whether it may stop, because nobody wants its result any more.
  using Stopped = std::function<bool()>;
  /// Takes a result over, in the thread of the object; never called for a request that is not the latest.
  using Delivery = std::function<void()>;
  /// A part of the work, done on any thread; touches nothing but its own copies. What it throws is reported.
  using Part = std::function<Delivery(const Stopped&)>;

  explicit BackgroundWork(BackgroundLane& lane, QObject* parent = nullptr);
  ~BackgroundWork() override;

  void start(const std::vector<Part>& parts);
  void cancel();
  /// The same, and nothing is said of it: nobody is there any more who asked.
  void giveUp() { drop(); }
  bool running() const { return left_ > 0; }

 signals:
  void progressed(int done, int all);
  void finished();
  void cancelled();
  void failed(const QString& why);  ///< the request is over; what it brought so far stays
  void partOver();                  ///< from the thread of the part to the object itself alone

 private:
  struct Outcome;
  struct Request;
  static void takeTurn(BackgroundLane& lane, const std::shared_ptr<Request>& request);
  void drop();
  void collect();
  void arrived(const std::shared_ptr<Request>& request, const Outcome& outcome);

  BackgroundLane& lane_;
  std::shared_ptr<Request> latest_;
  int all_ = 0, left_ = 0;
};

}  // namespace layshaft::ui
