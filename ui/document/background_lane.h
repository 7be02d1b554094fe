// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QObject>
#include <QThreadPool>
#include <functional>
#include <memory>
#include <mutex>
#include <vector>

namespace layshaft::ui {

/// The threads on which long studies are worked out beside the planner, in the order in which they are asked
/// for. Outlives every `BackgroundWork` on it.
class BackgroundLane {
 public:
  BackgroundLane();
  /// Waits for what is under way; work that has gone has told its parts to stop.
  ~BackgroundLane();

 private:
  friend class BackgroundWork;
  QThreadPool pool_;
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
  bool running() const { return left_ > 0; }

 signals:
  void progressed(int done, int all);
  void finished();
  void cancelled();
  void failed(const QString& why);  ///< the request is over; what it brought so far stays

 private:
  struct Request;
  void drop();
  void arrived(const std::shared_ptr<Request>& request, const Delivery& delivery, const QString& failure);

  BackgroundLane& lane_;
  std::shared_ptr<Request> latest_;
  int all_ = 0, left_ = 0;
};

}  // namespace layshaft::ui
